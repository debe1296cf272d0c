//! The page.

use wasm_bindgen::prelude::wasm_bindgen;

/// Starts the page in the element `app`.
#[wasm_bindgen(js_name = startPage)]
pub fn start_page() {}
