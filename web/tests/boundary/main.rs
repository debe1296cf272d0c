//! The exported functions, called in a browser as scripts call them.
#![cfg(target_arch = "wasm32")]
#![allow(
    clippy::expect_used,
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "a test may fail in this way"
)]

mod hostile;
mod problems;
mod random;
mod replies;
mod script;

wasm_bindgen_test::wasm_bindgen_test_configure!(run_in_browser);
