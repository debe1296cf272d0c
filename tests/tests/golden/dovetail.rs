//! Drawings of dovetails, compared byte for byte with those in `golden/`.

use super::compare;

use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::drawing::{
    Drawing, Paper, dovetail_boards, dovetail_mated, dovetail_progress, marking_template,
    sliding_drawing,
};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::dovetail::{
    DovetailPlan, DovetailRequest, MeasuredRequest, SlopeRequest, dovetail,
};
use notchwright_core::joint::sliding::{BitRequest, SlidingDovetailRequest, sliding_dovetail};
use notchwright_core::units::{Mm, write_number};

/// As drawings are saved.
const STYLE: &str = include_str!("../../../web/src/export/style.css");

fn golden(name: &str, drawing: &Drawing) {
    compare(&format!("dovetail-{name}"), STYLE, drawing, |length: Mm| {
        format!("{} mm", write_number(length.mm(), 3))
    });
}

/// Four tails on 140 mm, 1:8, a tail board of 18 and a pin board of 12 mm.
fn four_tails() -> DovetailRequest {
    let board = |thickness: f64| BoardRequest {
        thickness: thickness.into(),
    };
    DovetailRequest {
        width: 140.0.into(),
        tail: board(18.0).into(),
        pin: board(12.0).into(),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: 4.0.into(),
        half_pin: 6.0.into(),
        narrow_pin: 5.0.into(),
        cutter: CutterRequest {
            kerf: 3.07.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: ScrewRequest {
            lead: 1.5.into(),
            divisions: 100.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        ..DovetailRequest::default()
    }
}

fn plan(request: &DovetailRequest) -> DovetailPlan {
    dovetail(request).expect("a good request").plan
}

fn boards_and_joint(name: &str, request: &DovetailRequest) {
    let plan = plan(request);
    golden(name, &dovetail_boards(&plan));
    golden(&format!("{name}-mated"), &dovetail_mated(&plan));
}

#[test]
fn four_equal_tails() {
    let request = four_tails();
    boards_and_joint("four-tails", &request);
    let plan = plan(&request);
    for (number, set) in (1..).zip(&plan.sets) {
        let drawing = dovetail_progress(&plan, set, set.stops.len() / 2);
        golden(&format!("four-tails-set-{number}"), &drawing);
    }
}

#[test]
fn graduated_tails() {
    let weights: Vec<Given<f64>> = [2.0, 3.0, 4.0, 6.0].map(Given::from).to_vec();
    let request = DovetailRequest {
        weights: weights.into(),
        ..four_tails()
    };
    boards_and_joint("graduated", &request);
    let plan = plan(&request);
    let turned_over = plan.sets.iter().find(|set| set.flipped);
    let set = turned_over.expect("a set with the board turned over");
    golden("graduated-turned-over", &dovetail_progress(&plan, set, 1));
}

#[test]
fn narrow_pins_leave_wood_for_the_chisel() {
    let request = DovetailRequest {
        tail: BoardRequest {
            thickness: 18.0.into(),
        }
        .into(),
        pin: BoardRequest {
            thickness: 24.0.into(),
        }
        .into(),
        slope: SlopeRequest::ratio(6.0).into(),
        narrow_pin: 3.4.into(),
        ..four_tails()
    };
    boards_and_joint("narrow-pins", &request);
}

#[test]
fn half_blind() {
    let request = DovetailRequest {
        pin: BoardRequest {
            thickness: 18.0.into(),
        }
        .into(),
        lap: 5.0.into(),
        ..four_tails()
    };
    boards_and_joint("half-blind", &request);
    let tiles = marking_template(&plan(&request), Paper::A4);
    for (number, tile) in (1..).zip(&tiles) {
        golden(&format!("half-blind-template-{number}"), tile);
    }
}

#[test]
fn a_blade_that_leans_too_little() {
    let request = DovetailRequest {
        measured: MeasuredRequest {
            lean_degrees: 6.125.into(),
            ..MeasuredRequest::default()
        }
        .into(),
        ..four_tails()
    };
    boards_and_joint("lean-off", &request);
}

#[test]
fn a_template_of_several_sheets() {
    let request = DovetailRequest {
        width: 400.0.into(),
        tails: 9.0.into(),
        ..four_tails()
    };
    let tiles = marking_template(&plan(&request), Paper::Letter);
    for (number, tile) in (1..).zip(&tiles) {
        golden(&format!("wide-template-{number}"), tile);
    }
}

#[test]
fn sliding_dovetails() {
    let sliding = |depth: f64, floor: f64, board: f64| {
        let request = SlidingDovetailRequest {
            bit: BitRequest {
                tip_diameter: 12.7.into(),
                flank_degrees: 14.0.into(),
                ..BitRequest::default()
            }
            .into(),
            depth: depth.into(),
            socket_floor: floor.into(),
            board: BoardRequest {
                thickness: board.into(),
            }
            .into(),
            ..SlidingDovetailRequest::default()
        };
        sliding_drawing(&sliding_dovetail(&request).expect("a good request").plan)
    };
    golden("sliding", &sliding(9.5, 12.7, 18.0));
    golden("sliding-wide", &sliding(6.0, 28.0, 45.0));
}

#[test]
fn wide_boards_are_enlarged_at_the_saw() {
    let request = DovetailRequest {
        width: 600.0.into(),
        tails: 14.0.into(),
        narrow_pin: 8.0.into(),
        ..four_tails()
    };
    boards_and_joint("wide", &request);
    let plan = plan(&request);
    let last = plan.sets.last().expect("a set");
    let before = last.stops.len() / 3;
    golden("wide-at-the-saw", &dovetail_progress(&plan, last, before));
}
