//! The page, and the functions the compiled module answers.

pub mod answer;
pub mod effect;
pub mod keep;
pub mod model;
pub mod msg;
pub mod notice;
pub mod state;
pub mod update;

use wasm_bindgen::prelude::wasm_bindgen;

/// Starts the page in the element `app`.
#[wasm_bindgen(js_name = startPage)]
pub fn start_page() {}
