//! Good requests.

use notchwright_web::api;
use wasm_bindgen_test::wasm_bindgen_test;

use crate::script::{JOINT, at, flaw, is_ok, joint_with, js, list, number, text};

/// Handbook example, derived: 140 / 9 = 15.5556, and six passes clear an inner socket of 15.6056 with a
/// kerf of 3.2 that overlaps by 0.3.
#[wasm_bindgen_test]
fn a_box_joint_is_planned() {
    let reply = api::box_joint(js(JOINT));
    assert_eq!(flaw(&reply), None);
    assert!(is_ok(&reply));
    assert_eq!(number(&reply, "plan.count"), 9.0);
    assert!((number(&reply, "plan.fingerWidth") - 15.5556).abs() < 5e-5);
    assert_eq!(number(&reply, "plan.depthA"), 18.0);
    assert_eq!(number(&reply, "plan.depthB"), 12.0);
    let sets = list(&reply, "plan.sets");
    assert_eq!(sets.len(), 2);
    assert_eq!(text(&sets[0], "board"), "a");
    let stops = list(&sets[0], "stops");
    let inner = stops.iter().filter(|stop| number(stop, "socket") == 0.0);
    assert_eq!(inner.count(), 6);
    for (i, stop) in stops.iter().enumerate() {
        assert_eq!(number(stop, "number"), (i + 1) as f64);
        // Derived: reading = turns · lead + division · lead / 80, with lead = 25.4 / 16.
        let turns = number(stop, "turns") + number(stop, "division") / 80.0;
        assert!((number(stop, "reading") - turns * 25.4 / 16.0).abs() < 1e-9);
    }
    assert_eq!(at(&reply, "plan.dryFit.clash"), false);
    assert!(!list(&reply, "notes").is_empty());
}

#[wasm_bindgen_test]
fn what_is_left_out_takes_its_default() {
    let plain = api::box_joint(js(JOINT));
    let spelt_out = api::box_joint(joint_with(
        "{ glueGap: 0.05, proud: 0, first: 'pin', zero: { kind: 'touch' }, groove: null, saw: undefined }",
    ));
    let text = |reply| js_sys::JSON::stringify(&reply).unwrap();
    assert_eq!(text(plain), text(spelt_out));
}

#[wasm_bindgen_test]
fn every_layout_is_understood() {
    for (layout, count) in [
        ("{ kind: 'count', count: 7 }", Some(7.0)),
        ("{ kind: 'finger', width: 20 }", Some(7.0)),
        ("{ kind: 'onePass', leftover: 'far' }", None),
        (
            "{ kind: 'pattern', weights: [1, 2, 3], mirrored: true }",
            Some(5.0),
        ),
    ] {
        let reply = api::box_joint(joint_with(&format!("{{ layout: {layout} }}")));
        assert_eq!(flaw(&reply), None, "{layout}");
        assert!(
            is_ok(&reply),
            "{layout}: {:?}",
            crate::script::problems(&reply)
        );
        if let Some(count) = count {
            assert_eq!(number(&reply, "plan.count"), count, "{layout}");
        }
    }
}

#[wasm_bindgen_test]
fn numbers_of_fingers_are_offered() {
    let reply = api::box_joint_choices(js(
        "{ width: 140, a: { thickness: 12 }, b: { thickness: 18 }, cutter: { kerf: 3.2 }, screw: { lead: 2, divisions: 100 } }",
    ));
    assert_eq!(flaw(&reply), None);
    let choices = list(&reply, "plan.choices");
    let nine = choices.iter().find(|choice| number(choice, "count") == 9.0);
    let nine = nine.expect("nine fingers of 15.6 mm are sensible");
    assert_eq!(number(nine, "passesPerSocket"), 6.0);
    assert!(!text(nine, "reason").is_empty());
}

/// Derived: 3.2 + 3.2 + 3.2 = 9.6.
#[wasm_bindgen_test]
fn a_stack_is_built() {
    let reply = api::cutter_stack(js(
        "{ outer: [3.2, 3.2], chippers: [3.2, 1.6], shims: [0.1], want: 9.62 }",
    ));
    assert_eq!(flaw(&reply), None);
    assert!((number(&reply, "plan.nearest.width") - 9.6).abs() < 1e-9);
    assert!((number(&reply, "plan.above.width") - 9.7).abs() < 1e-9);
    assert_eq!(list(&reply, "plan.nearest.uses.chippers").len(), 1);
}

/// Derived: 15.2 − 4 · 3 = 3.2.
#[wasm_bindgen_test]
fn a_kerf_is_measured() {
    let reply = api::kerf_from_slot(js("{ steps: 5, step: 3, slotWidth: 15.2 }"));
    assert!((number(&reply, "plan.kerf") - 3.2).abs() < 1e-9);
}

/// One inch is 25.4 mm exactly (NIST SP 811, from memory).
#[wasm_bindgen_test]
fn lengths_are_read_and_written() {
    let reply = api::parse_length(js("{ text: '1 1/2\"', unit: 'mm' }"));
    assert!((number(&reply, "plan.mm") - 38.1).abs() < 1e-9);
    let reply = api::format_length(js("{ mm: 38.1, unit: 'in' }"));
    assert_eq!(text(&reply, "plan.text"), "1 1/2\"");
    let reply = api::format_length(js("{ mm: 38.1, unit: 'in', fraction: 1 }"));
    assert_eq!(at(&reply, "plan.exact"), false);
}
