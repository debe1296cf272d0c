//! Dovetails against values from outside the project, each with its source beside it; grades as in
//! `sources.rs`.

#![expect(
    clippy::expect_used,
    reason = "what a helper finds wrong fails its test"
)]
#![expect(
    clippy::disallowed_methods,
    reason = "the standard library's trigonometry is the reference"
)]

use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::dovetail::{
    ByRequest, DovetailPlan, DovetailRequest, SlopeRequest, dovetail,
};
use notchwright_core::joint::sliding::{BitRequest, SlidingDovetailRequest, sliding_dovetail};
use notchwright_core::units::{Mm, Unit, parse_length};

/// Half of the last decimal that a value is given with.
const FOURTH_DECIMAL: f64 = 0.000_05;
const THIRD_DECIMAL: f64 = 0.000_5;

fn close(got: Mm, given: f64, off: f64) {
    assert!((got.mm() - given).abs() <= off, "{got} is not {given}");
}

/// Four tails on 140 mm with an unrounded dial, so that nothing but the layout decides.
fn four_tails_on_140() -> DovetailRequest {
    let board = |thickness: f64| BoardRequest {
        thickness: thickness.into(),
    };
    DovetailRequest {
        width: 140.0.into(),
        tail: board(12.7).into(),
        pin: board(12.7).into(),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: 4.0.into(),
        by: ByRequest::kind("equal").into(),
        cutter: CutterRequest {
            kerf: 3.2.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: ScrewRequest {
            lead: 1.5.into(),
            divisions: 100.0.into(),
            rounding: "none".into(),
            ..ScrewRequest::default()
        }
        .into(),
        ..DovetailRequest::default()
    }
}

fn dovetail_plan(request: &DovetailRequest) -> DovetailPlan {
    dovetail(request).expect("a good request").plan
}

/// Arctangents: derived, by the standard library; trade press prints 9.5° for 1:6 and 7.1° for 1:8.
#[test]
fn slopes_in_degrees() {
    for (run, degrees, printed) in [
        (6.0, 9.462, Some(9.5)),
        (7.0, 8.130, None),
        (8.0, 7.125, Some(7.1)),
    ] {
        let plan = dovetail_plan(&DovetailRequest {
            slope: SlopeRequest::ratio(run).into(),
            ..four_tails_on_140()
        });
        let reference = (1.0_f64 / run).atan().to_degrees();
        assert!((plan.angle_degrees - reference).abs() < 1e-12, "1:{run}");
        assert!((reference - degrees).abs() <= THIRD_DECIMAL, "1:{run}");
        if let Some(printed) = printed {
            assert!((plan.angle_degrees - printed).abs() <= 0.05, "1:{run}");
        }
        // The saw is set to the same angle: blade for the tails, wedge for the pins.
        for set in &plan.sets {
            let set_to = set.tilt_degrees.abs() + set.yaw_degrees.abs();
            assert!(
                set_to == 0.0 || (set_to - reference).abs() < 1e-12,
                "{}",
                set.name
            );
        }
    }
}

/// Ellis (1902) and Hasluck (1903) (quoted): 10°.
#[test]
fn ten_degrees_of_the_old_books() {
    let plan = dovetail_plan(&DovetailRequest {
        slope: SlopeRequest::angle(10.0).into(),
        ..four_tails_on_140()
    });
    let tangent = 10.0_f64.to_radians().tan();
    assert!((plan.slope - tangent).abs() < 1e-15);
    close(
        plan.tail_tip - plan.tail_base,
        2.0 * 12.7 * tangent,
        FOURTH_DECIMAL,
    );
}

/// W. B. Compton, *First Lessons in Wood-Working*, lesson XVII: a side 5 11/16 in wide, five tails, each
/// with its pin a fifth of the width, 1.1375 in, and half spaces at the ends.
#[test]
fn a_side_divided_into_fifths() {
    let width = parse_length("5 11/16", Unit::Inch).expect("inches");
    let fifth = Mm::constant(1.1375 * 25.4);
    let plan = dovetail_plan(&DovetailRequest {
        width: width.mm().into(),
        tails: 5.0.into(),
        ..four_tails_on_140()
    });
    // As cut, at the tips: from one tail's middle to the next, and from the edge to the first.
    let middles: Vec<_> = plan
        .dry_fit
        .flanks
        .chunks(2)
        .map(|tail| tail.iter().map(|flank| flank.x).sum::<Mm>() / 2.0)
        .collect();
    assert_eq!(middles.len(), 5);
    for (middle, fifths) in middles.iter().zip([0.5, 1.5, 2.5, 3.5, 4.5]) {
        close(*middle, (fifth * fifths).mm(), FOURTH_DECIMAL);
    }
    close(
        plan.half_pin_outer * 2.0,
        plan.pin_outer.mm(),
        FOURTH_DECIMAL,
    );
}

/// Angles of bits: general articles (quoted), 14° the most common. Mouths: derived, `D − 2·e·tan α`, by the
/// standard library; 7.963 for 12.7 mm, 14° and 9.5 deep.
#[test]
fn mouths_of_dovetail_bits() {
    for degrees in [7.0, 8.0, 10.0, 12.0, 14.0, 18.0_f64] {
        let request = SlidingDovetailRequest {
            bit: BitRequest {
                tip_diameter: 12.7.into(),
                flank_degrees: degrees.into(),
                ..BitRequest::default()
            }
            .into(),
            depth: 9.5.into(),
            board: BoardRequest {
                thickness: 18.0.into(),
            }
            .into(),
            ..SlidingDovetailRequest::default()
        };
        let plan = sliding_dovetail(&request).expect("a bit that is made").plan;
        let mouth = 12.7 - 2.0 * 9.5 * degrees.to_radians().tan();
        close(plan.mouth, mouth, 1e-9);
        if degrees == 14.0 {
            close(plan.mouth, 7.963, THIRD_DECIMAL);
        }
    }
}
