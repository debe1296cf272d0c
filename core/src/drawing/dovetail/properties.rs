//! What holds for drawings of whatever dovetail can be made.

use proptest::prelude::*;

use super::sliding_drawing;
use super::tests::{board as of_thickness, drawings, request};
use crate::cutter::CutterRequest;
use crate::drawing::Drawing;
use crate::drawing::testing::assert_legible;
use crate::given::Given;
use crate::joint::dovetail::{DovetailRequest, MeasuredRequest, SlopeRequest, dovetail};
use crate::joint::sliding::{BitRequest, SlidingDovetailRequest, sliding_dovetail};

fn sliding(tip: f64, degrees: f64, depth: f64, floor: f64, board: f64) -> Option<Drawing> {
    let request = SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: tip.into(),
            flank_degrees: degrees.into(),
            ..BitRequest::default()
        }
        .into(),
        depth: depth.into(),
        socket_floor: floor.into(),
        board: of_thickness(board),
        ..SlidingDovetailRequest::default()
    };
    let plan = sliding_dovetail(&request).ok()?.plan;
    Some(sliding_drawing(&plan))
}

/// Joints as they come up in a shop, and others.
fn joints() -> impl Strategy<Value = DovetailRequest> {
    let boards = (4.0..60.0_f64, 4.0..60.0_f64, 4.0..12.0_f64, 1..=16_u32);
    let spare = (0.0..12.0_f64, 0.0..12.0_f64, 0.0..40.0_f64);
    let fit = (1.6..4.0_f64, 0..4_u32, prop::bool::ANY);
    (boards, spare, fit).prop_map(|((tail, pin, run, tails), spare, (kerf, which, finest))| {
        let narrow_pin = kerf * 1.1 + 0.5 + spare.0;
        let half_pin = 1.5 + spare.1;
        let tip = kerf * 1.1 + 2.0 * pin / run + 1.0 + spare.2;
        let count = f64::from(tails);
        let measured = MeasuredRequest {
            lean_degrees: 6.0.into(),
            turn_degrees: 7.0.into(),
        };
        DovetailRequest {
            width: (count * tip + (count - 1.0) * narrow_pin + 2.0 * half_pin).into(),
            tail: of_thickness(tail),
            pin: of_thickness(pin),
            slope: SlopeRequest::ratio(run).into(),
            tails: count.into(),
            half_pin: half_pin.into(),
            narrow_pin: narrow_pin.into(),
            lap: if which == 1 {
                (pin / 4.0).into()
            } else {
                Given::Missing
            },
            proud: if which == 2 {
                0.8.into()
            } else {
                Given::Missing
            },
            measured: if which == 3 {
                measured.into()
            } else {
                Given::Missing
            },
            cutter: CutterRequest {
                kerf: kerf.into(),
                ..CutterRequest::default()
            }
            .into(),
            ..request(if finest { "none" } else { "division" })
        }
    })
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 96, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn all_words_are_apart_and_all_is_inside(request in joints()) {
        let Ok(planned) = dovetail(&request) else {
            return Err(TestCaseError::reject("cannot be made"));
        };
        for drawing in drawings(&planned.plan) {
            assert_legible(&drawing);
            prop_assert!(drawing.items.len() < 60);
        }
    }

    #[test]
    fn sliding_dovetails_are_legible(
        tip in 3.0..40.0_f64, degrees in 5.0..20.0_f64, deep in 0.1..1.5_f64,
        wider in 0.0..30.0_f64, spare in 0.0..30.0_f64,
    ) {
        let floor = tip + wider;
        if let Some(drawing) = sliding(tip, degrees, tip * deep, floor, floor + spare) {
            assert_legible(&drawing);
        }
    }
}
