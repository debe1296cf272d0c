//! Bad requests.

use notchwright_web::api;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::script::{at, flaw, is_ok, joint_with, js, list, number, problems, text};

#[wasm_bindgen_test]
fn all_problems_come_at_once_unknown_fields_too() {
    let reply = api::box_joint(js("{
        width: -5, a: { thickness: '12' }, b: {}, cutter: { kerf: NaN, colour: 'red' },
        screw: { lead: 2, threadsPerInch: 12, divisions: 80.5 },
        layout: { kind: 'pattern', weights: [1, 'two', 3] }, frist: 'pin'
    }"));
    assert_eq!(flaw(&reply), None);
    let mut found = problems(&reply);
    found.sort();
    assert_eq!(
        found,
        [
            "a.thickness: wrong-kind",
            "b.thickness: missing",
            "cutter.colour: unknown-field",
            "cutter.kerf: not-finite",
            "frist: unknown-field",
            "layout.weights.1: wrong-kind",
            "screw.divisions: not-whole",
            "screw.threadsPerInch: conflict",
            "width: too-small",
        ]
    );
}

#[wasm_bindgen_test]
fn an_unknown_field_alone_is_refused() {
    let reply = api::box_joint(joint_with("{ species: 'oak' }"));
    assert_eq!(problems(&reply), ["species: unknown-field"]);
    // What would work is among what it says.
    assert!(text(&list(&reply, "problems")[0], "message").contains("glueGap"));
}

#[wasm_bindgen_test]
fn a_bound_that_was_passed_is_named() {
    let reply = api::box_joint(joint_with("{ width: 1 }"));
    let problem = &list(&reply, "problems")[0];
    assert_eq!(number(problem, "limit"), 2.0);
    assert_eq!(text(problem, "code"), "too-small");
    assert!(at(&reply, "plan").is_undefined());
}

#[wasm_bindgen_test]
fn numbers_that_are_none_are_refused_each_in_its_way() {
    for (width, code) in [
        ("NaN", "not-finite"),
        ("Infinity", "not-finite"),
        ("-Infinity", "not-finite"),
        ("1e308", "too-large"),
        ("-0", "too-small"),
        ("undefined", "missing"),
        ("null", "missing"),
        ("'140'", "wrong-kind"),
        ("true", "wrong-kind"),
        ("[140]", "wrong-kind"),
        ("{ mm: 140 }", "wrong-kind"),
        ("new Date()", "wrong-kind"),
        ("new Number(140)", "wrong-kind"),
    ] {
        let reply = api::box_joint(joint_with(&format!("{{ width: {width} }}")));
        let found = problems(&reply);
        let expected = format!("width: {code}");
        assert!(found.contains(&expected), "{width}: {found:?}");
        assert!(!is_ok(&reply));
    }
}

#[wasm_bindgen_test]
fn the_other_tools_refuse_as_well() {
    let reply = api::box_joint_choices(js("{ width: 140, layout: 1 }"));
    let found = problems(&reply);
    for expected in ["layout: unknown-field", "a: missing", "screw: missing"] {
        assert!(found.contains(&expected.to_owned()), "{found:?}");
    }
    let reply = api::cutter_stack(js("{ outer: [], shims: [Infinity], want: 9, thin: 1 }"));
    assert_eq!(
        problems(&reply),
        ["thin: unknown-field", "shims.0: not-finite"]
    );
    let reply = api::kerf_from_slot(js("{ steps: 2.5, step: 0, slotWidth: 'w' }"));
    assert_eq!(problems(&reply)[0], "steps: not-whole");
    let reply = api::parse_length(js("{ text: 12, unit: 'ell' }"));
    assert_eq!(problems(&reply), ["unit: unknown-word", "text: wrong-kind"]);
    let reply = api::format_length(js("{ mm: NaN, unit: 'mm', fraction: 0 }"));
    assert_eq!(problems(&reply), ["mm: not-finite", "fraction: too-small"]);
}
