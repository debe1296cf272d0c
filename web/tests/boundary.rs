//! The exported functions in a browser: plain objects in, plain objects out.
#![cfg(target_arch = "wasm32")]
#![allow(
    clippy::indexing_slicing,
    clippy::unwrap_used,
    reason = "a test may fail in this way"
)]

use notchwright_web::api;
use wasm_bindgen::JsValue;
use wasm_bindgen_test::{wasm_bindgen_test, wasm_bindgen_test_configure};

wasm_bindgen_test_configure!(run_in_browser);

/// What a script would write, and what it would print.
fn ask(function: fn(JsValue) -> JsValue, request: &str) -> serde_json::Value {
    let request = js_sys::JSON::parse(request).unwrap();
    let reply = js_sys::JSON::stringify(&function(request)).unwrap();
    serde_json::from_str(&String::from(reply)).unwrap()
}

// Derived: an inch is 25.4 mm by definition.
#[wasm_bindgen_test]
fn a_length_is_read() {
    let reply = ask(api::parse_length, r#"{ "text": "3/4\"", "unit": "mm" }"#);
    assert_eq!(reply["ok"], true, "{reply}");
    assert!(
        (reply["plan"]["mm"].as_f64().unwrap() - 19.05).abs() < 1e-9,
        "{reply}"
    );
}

#[wasm_bindgen_test]
fn a_refusal_is_an_answer_too() {
    let reply = ask(
        api::parse_length,
        r#"{ "text": "wide", "unit": "mm", "colour": 1 }"#,
    );
    assert_eq!(reply["ok"], false, "{reply}");
    let fields: Vec<_> = reply["problems"]
        .as_array()
        .unwrap()
        .iter()
        .map(|it| &it["field"])
        .collect();
    assert_eq!(fields, ["colour", "text"]);
}
