//! Box joints as tables of examples.

use proptest::prelude::ProptestConfig;

use super::{BoardRequest, BoxJointPlan, BoxJointRequest, GrooveRequest, LayoutRequest, box_joint};
use crate::cutter::CutterRequest;
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::Given;
use crate::problem::Code;

mod grooves;
mod legal;
mod notes;
mod one_pass;
mod properties;
mod proposals;
mod refusals;

/// W 140, A 12, B 18, kerf 3.2, overlap 0.3, lead 2 mm, 100 divisions.
fn request(layout: LayoutRequest) -> BoxJointRequest {
    BoxJointRequest {
        width: 140.0.into(),
        a: BoardRequest {
            thickness: 12.0.into(),
        }
        .into(),
        b: BoardRequest {
            thickness: 18.0.into(),
        }
        .into(),
        cutter: cutter(3.2).into(),
        screw: screw(2.0, 100.0).into(),
        layout: layout.into(),
        ..BoxJointRequest::default()
    }
}

fn cutter(kerf: f64) -> CutterRequest {
    CutterRequest {
        kerf: kerf.into(),
        ..CutterRequest::default()
    }
}

fn screw(lead: f64, divisions: f64) -> ScrewRequest {
    ScrewRequest {
        lead: lead.into(),
        divisions: divisions.into(),
        ..ScrewRequest::default()
    }
}

fn plan(request: &BoxJointRequest) -> BoxJointPlan {
    box_joint(request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

fn problems(request: &BoxJointRequest) -> Vec<(String, Code, Option<f64>)> {
    let problems = box_joint(request).expect_err("a request with problems");
    problems
        .into_iter()
        .map(|problem| (problem.field, problem.code, problem.limit))
        .collect()
}

fn codes(request: &BoxJointRequest) -> Vec<&'static str> {
    box_joint(request)
        .unwrap()
        .notes
        .iter()
        .map(|note| note.code)
        .collect()
}

#[track_caller]
fn near(got: crate::units::Mm, expected: f64) {
    assert!(
        (got.mm() - expected).abs() < 5e-5,
        "{got} for {expected} mm"
    );
}

fn exact() -> ScrewRequest {
    ScrewRequest {
        rounding: "none".into(),
        ..screw(2.0, 100.0)
    }
}

fn groove(from_edge: f64, width: f64, depth: f64) -> GrooveRequest {
    GrooveRequest {
        from_edge: from_edge.into(),
        width: width.into(),
        depth: depth.into(),
        edge: Given::Missing,
    }
}

#[test]
fn nine_fingers_on_140_mm() {
    // Derived: 140 / 9 = 15.5556; inner socket 15.5556 + 0.05; ⌈(15.6056 − 3.2) / 2.9⌉ + 1 = 6 passes.
    let plan = plan(&BoxJointRequest {
        screw: exact().into(),
        ..request(LayoutRequest::count(9.0))
    });
    near(plan.finger_width, 15.5556);
    near(plan.depth_a, 18.0);
    near(plan.depth_b, 12.0);
    assert!(plan.symmetric);
    let [a, b] = plan.sets.as_slice() else {
        panic!("two sets")
    };
    assert_eq!((a.stops.len(), b.stops.len()), (24, 30));
    assert!(a.stops.iter().all(|stop| stop.passes == 6));
    near(a.stops[5].at + a.kerf - a.stops[0].at, 15.6056);
    assert_eq!(plan.dry_fit.flanks.len(), 8);
    near(plan.dry_fit.smallest_gap, 0.05);
    near(plan.dry_fit.largest_gap, 0.05);
}

#[test]
fn proud_pins_are_cut_deeper() {
    let plan = plan(&BoxJointRequest {
        proud: 0.5.into(),
        ..request(LayoutRequest::count(9.0))
    });
    near(plan.depth_a, 18.5);
    near(plan.depth_b, 12.5);
    near(plan.dry_fit.floor_gap_a, 0.0);
    near(plan.dry_fit.floor_gap_b, 0.0);
}

#[test]
fn finger_width_becomes_the_nearest_odd_count() {
    // Derived: 140 / 15 = 9.33 → 9; 140 / 14 = 10 is as near to 9 as to 11 → 11; 140 / 70 = 2 → 3.
    for (finger, count) in [(15.0, 9), (14.0, 11), (70.0, 3), (40.0, 3), (16.0, 9)] {
        assert_eq!(
            plan(&request(LayoutRequest::finger(finger))).count,
            count,
            "{finger}"
        );
    }
}

#[test]
fn patterns_are_scaled_and_mirrored() {
    let plan = plan(&request(LayoutRequest::pattern(&[1.0, 2.0, 1.0], true)));
    // Derived: 1 2 1 2 1 scaled to 140: 20 40 20 40 20.
    let widths: Vec<f64> = plan
        .boundaries
        .windows(2)
        .map(|pair| (pair[1] - pair[0]).mm().round())
        .collect();
    assert_eq!(widths, [20.0, 40.0, 20.0, 40.0, 20.0]);
    assert!(plan.symmetric);
}

#[test]
fn two_fingers_have_only_open_sockets() {
    let plan = plan(&BoxJointRequest {
        screw: exact().into(),
        ..request(LayoutRequest::count(2.0))
    });
    assert!(!plan.symmetric);
    assert_eq!(plan.dry_fit.flanks.len(), 1);
    near(plan.dry_fit.smallest_gap, 0.05);
}

#[test]
fn an_open_socket_is_never_too_narrow() {
    // The end fingers are 2 mm, narrower than the 3.2 mm kerf: it runs off the edge.
    let plan = plan(&request(LayoutRequest::pattern(
        &[2.0, 66.0, 4.0, 66.0, 2.0],
        false,
    )));
    let first = plan.sets[1].stops[0];
    assert!(first.at.mm() < 0.0 && first.passes == 1, "{first:?}");
}

#[test]
fn readings_rise_towards_the_reference_edge_too() {
    let away = plan(&request(LayoutRequest::count(9.0)));
    let screw = ScrewRequest {
        rises: "towards".into(),
        ..screw(2.0, 100.0)
    };
    let towards = plan(&BoxJointRequest {
        screw: screw.into(),
        ..request(LayoutRequest::count(9.0))
    });
    for (away, towards) in away.sets.iter().zip(&towards.sets) {
        let places: Vec<_> = towards.stops.iter().rev().map(|stop| stop.at).collect();
        assert_eq!(
            places,
            away.stops.iter().map(|stop| stop.at).collect::<Vec<_>>()
        );
        assert_eq!((towards.stops[0].number, towards.stops[0].pass), (1, 1));
    }
    assert_eq!(away.dry_fit, towards.dry_fit);
}

#[test]
fn zero_by_test_kerf_moves_every_reading_alike() {
    let zero = ZeroRequest {
        kind: "testKerf".into(),
        reading: 40.0.into(),
        measured: 12.5.into(),
    };
    let plan = plan(&BoxJointRequest {
        zero: zero.into(),
        ..request(LayoutRequest::count(9.0))
    });
    for set in &plan.sets {
        for stop in &set.stops {
            assert!(
                (stop.dial.reading.mm() - (40.0 + stop.at.mm() - 12.5)).abs() < 1e-9,
                "{stop:?}"
            );
        }
    }
}
