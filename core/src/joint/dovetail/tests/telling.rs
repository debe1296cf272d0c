//! What the notes say, and when.

use super::super::{DovetailRequest, MeasuredRequest, SlopeRequest, dovetail};
use super::{board, cutter, request, screw};
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::ScrewRequest;
use crate::given::Given;
use crate::problem::Severity;

fn codes(request: &DovetailRequest) -> Vec<&'static str> {
    let notes = dovetail(request).unwrap().notes;
    notes.iter().map(|note| note.code).collect()
}

fn with(change: fn(&mut DovetailRequest)) -> DovetailRequest {
    let mut request = request();
    change(&mut request);
    request
}

fn alternate() -> CutterRequest {
    let grind = GrindRequest {
        kind: "alternate".into(),
        bevel_degrees: 15.0.into(),
    };
    CutterRequest {
        grind: grind.into(),
        ..cutter(3.2)
    }
}

/// Every note that a change of the request brings.
fn cases() -> [(&'static str, DovetailRequest); 18] {
    [
        (
            "clash",
            with(|r| {
                r.measured = MeasuredRequest {
                    lean_degrees: 6.5.into(),
                    ..MeasuredRequest::default()
                }
                .into()
            }),
        ),
        ("gap-finer-than-dial", with(|r| r.glue_gap = 0.0.into())),
        (
            "coarse-dial",
            with(|r| {
                r.screw = ScrewRequest {
                    divisions: 10.0.into(),
                    ..screw("division")
                }
                .into()
            }),
        ),
        (
            "uncut-between-tails",
            with(|r| {
                r.narrow_pin = 4.0.into();
                r.pin_cutter = cutter(6.0).into()
            }),
        ),
        (
            "uncut-between-pins",
            with(|r| {
                r.tails = 9.0.into();
                r.slope = SlopeRequest::ratio(7.0).into();
                r.cutter = cutter(2.0).into();
            }),
        ),
        ("floor-ridge", with(|r| r.pin_cutter = alternate().into())),
        ("half-blind", with(|r| r.lap = 5.0.into())),
        ("kerf-runs-off", with(|r| r.half_pin = 3.0.into())),
        (
            "not-symmetric",
            with(|r| r.weights = [1.0, 2.0, 2.0, 2.0].map(Given::from).to_vec().into()),
        ),
        (
            "steep-slope",
            with(|r| r.slope = SlopeRequest::ratio(4.9).into()),
        ),
        (
            "slight-slope",
            with(|r| r.slope = SlopeRequest::ratio(10.1).into()),
        ),
        ("unusual-lap", with(|r| r.lap = 3.0.into())),
        ("unusual-lap", with(|r| r.lap = 7.0.into())),
        ("wide-glue-line", with(|r| r.glue_gap = 0.3.into())),
        (
            "fine-dial",
            with(|r| {
                r.screw = ScrewRequest {
                    lead: 1.0.into(),
                    divisions: 250.0.into(),
                    ..screw("half")
                }
                .into()
            }),
        ),
        ("wide-stock", with(|r| r.width = 700.0.into())),
        // Derived: sockets of 23.75 + 0.05 at the inner face for a kerf of 23.55 / cos θ = 23.733, in steps of 0.1.
        (
            "tight-sockets",
            with(|r| {
                r.pin_cutter = cutter(23.55).into();
                r.screw = ScrewRequest {
                    divisions: 20.0.into(),
                    ..screw("division")
                }
                .into();
            }),
        ),
        ("corner-left", request()),
    ]
}

#[test]
fn notes_come_when_they_should() {
    let plain = codes(&request());
    for (code, request) in cases() {
        let told = codes(&request);
        assert!(told.contains(&code), "{code}: {told:?}");
        assert!(code == "corner-left" || !plain.contains(&code), "{code}");
    }
    for code in [
        "turned-over",
        "pin-board-turns",
        "tilt-clearance",
        "tilt-clamp",
        "tilt-offcuts",
        "tilt-rules",
        "unplug",
        "manual",
    ] {
        assert!(plain.contains(&code), "{code}");
    }
    // 1:5 and 1:10 themselves are usual.
    for run in [5.0, 10.0] {
        let told = codes(&DovetailRequest {
            slope: SlopeRequest::ratio(run).into(),
            ..request()
        });
        assert!(
            !told.iter().any(|code| code.ends_with("-slope")),
            "1:{run}: {told:?}"
        );
    }
}

#[test]
fn cautions_come_last_and_the_leaning_blade_first_among_them() {
    let notes = dovetail(&request()).unwrap().notes;
    let first = notes
        .iter()
        .position(|note| note.severity == Severity::Caution)
        .unwrap();
    assert_eq!(notes[first].code, "tilt-clearance");
    assert!(
        notes[first..]
            .iter()
            .all(|note| note.severity == Severity::Caution)
    );
}

#[test]
fn a_half_blind_joint_says_nothing_of_turning_the_pin_board() {
    let told = codes(&DovetailRequest {
        lap: 5.0.into(),
        tail: board(12.0).into(),
        ..request()
    });
    assert!(!told.contains(&"pin-board-turns"), "{told:?}");
}
