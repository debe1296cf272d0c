//! What no honest script hands over.

use wasm_bindgen::JsValue;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::script::{JOINT, TOOLS, flaw, is_ok, joint_with, js, problems};

#[wasm_bindgen_test]
fn whatever_is_no_request_is_refused() {
    for request in [
        "undefined",
        "null",
        "0",
        "NaN",
        "'140'",
        "true",
        "10n",
        "10n ** 40n",
        "Symbol('width')",
        "() => 140",
        "class Joint {}",
        "[]",
        "[[[[[[[[[[[[1]]]]]]]]]]]]",
        "new Map([['width', 140]])",
        "new Set([1])",
        "new Uint8Array(9)",
        "new ArrayBuffer(9)",
        "new Date(NaN)",
        "/x/",
        "new Error('x')",
        "new Proxy({}, { ownKeys() { throw 1 } })",
        "new Proxy({}, { get() { throw 1 }, has() { throw 1 } })",
        "Promise.resolve({})",
        "globalThis",
        "{}",
        "Object.create(null)",
        "{ get width() { throw new Error('no') } }",
        "{ width: { valueOf() { throw 1 }, toString() { throw 1 } } }",
        "{ [Symbol.iterator]() { throw 1 } }",
        "(() => { const all = {}; all.width = all; all.a = all; return all })()",
        "(() => { const list = []; list.push(list); return { outer: list, layout: { weights: list } } })()",
        "{ outer: new Array(4294967295), want: 9 }",
        "{ text: 'x'.repeat(1e6), unit: 'mm' }",
        "{ text: '\\ud800', unit: '\\udfff' }",
        "{ ['\\ud800']: 1 }",
        "Object.fromEntries(Array.from({ length: 1e5 }, (_, i) => ['k' + i, i]))",
    ] {
        for (name, tool) in TOOLS {
            let reply = tool(js(request));
            assert_eq!(flaw(&reply), None, "{name}({request})");
            assert!(!is_ok(&reply), "{name}({request})");
        }
    }
}

#[wasm_bindgen_test]
fn the_place_that_is_no_plain_data_is_named() {
    for (change, problem) in [
        ("{ width: () => 140 }", "width: wrong-kind"),
        ("{ cutter: { kerf: Symbol() } }", "cutter.kerf: wrong-kind"),
        (
            "{ cutter: { get kerf() { throw 1 } } }",
            "cutter.kerf: wrong-kind",
        ),
    ] {
        let reply = (TOOLS[0].1)(joint_with(change));
        assert_eq!(problems(&reply), [problem]);
    }
}

#[wasm_bindgen_test]
fn a_prototype_is_no_request_and_its_name_no_door() {
    let reply = (TOOLS[0].1)(js(&format!("Object.create({JOINT})")));
    assert!(!is_ok(&reply));
    let request = js("JSON.parse('{\"__proto__\": {\"width\": 140}}')");
    let reply = (TOOLS[0].1)(request);
    assert!(problems(&reply).contains(&"__proto__: unknown-field".to_owned()));
    assert_eq!(js("({}).width"), JsValue::UNDEFINED);
}

#[wasm_bindgen_test]
fn a_getter_runs_once_and_what_it_gave_counts() {
    let request = js(&format!(
        "Object.defineProperty({JOINT}, 'width', {{ get() {{ globalThis.times = (globalThis.times || 0) + 1; \
         return globalThis.times === 1 ? 140 : NaN }} }})"
    ));
    assert!(is_ok(&(TOOLS[0].1)(request)));
}
