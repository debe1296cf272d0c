//! A published check value, refusals, and what holds for every sliding dovetail.

use proptest::prelude::*;

use super::{BitRequest, SlidingDovetailRequest, TaperRequest, sliding_dovetail};
use crate::given::Given;
use crate::joint::box_joint::BoardRequest;
use crate::problem::Code;

fn request(tip: f64, degrees: f64, depth: f64, thickness: f64) -> SlidingDovetailRequest {
    SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: tip.into(),
            flank_degrees: degrees.into(),
            ..BitRequest::default()
        }
        .into(),
        depth: depth.into(),
        board: BoardRequest {
            thickness: thickness.into(),
        }
        .into(),
        ..SlidingDovetailRequest::default()
    }
}

fn close(got: f64, expected: f64) {
    assert!((got - expected).abs() < 5e-4, "{got} for {expected}");
}

#[test]
fn one_pass_of_a_usual_bit() {
    // Derived: 12.7 − 2 · 9.5 · tan 14° = 7.963; the tongue 12.7 − 0.1 = 12.6, cut (18 − 12.6) / 2 = 2.7 deep.
    let plan = sliding_dovetail(&request(12.7, 14.0, 9.5, 18.0))
        .unwrap()
        .plan;
    close(plan.mouth.mm(), 7.963);
    close(plan.tongue_tip.mm(), 12.6);
    close(plan.tongue_mouth.mm(), 7.863);
    close(plan.tongue_cut_per_side.mm(), 2.7);
    assert_eq!(plan.socket_fence_moves, []);
}

#[test]
fn a_wider_socket_takes_fence_moves() {
    // Derived: 20 − 12.7 = 7.3 of widening, at most 0.9 · 7.963 = 7.167 a move: two of 3.65.
    let mut wide = request(12.7, 14.0, 9.5, 25.0);
    wide.socket_floor = 20.0.into();
    let plan = sliding_dovetail(&wide).unwrap().plan;
    assert_eq!(plan.socket_fence_moves.len(), 2);
    close(plan.socket_fence_moves[0].mm(), 3.65);
    close(plan.first_from_middle.mm(), -3.65);
    close(plan.mouth.mm(), 20.0 - 4.737);
}

#[test]
fn a_taper_is_shared_by_both_flanks() {
    // Derived: 0.6 wider over 300: 0.3 a side, atan(0.001) = 0.0573°.
    let mut tapered = request(12.7, 14.0, 9.5, 18.0);
    tapered.taper = TaperRequest {
        by: 0.6.into(),
        length: 300.0.into(),
    }
    .into();
    let taper = sliding_dovetail(&tapered).unwrap().plan.taper.unwrap();
    close(taper.per_side.mm(), 0.3);
    close(taper.degrees, 0.0573);
}

#[test]
fn refusals_say_what_would_work() {
    let narrow_floor = SlidingDovetailRequest {
        socket_floor: 12.0.into(),
        ..request(12.7, 14.0, 9.5, 18.0)
    };
    let short_bit = SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: 12.7.into(),
            flank_degrees: 14.0.into(),
            cutting_length: 9.0.into(),
        }
        .into(),
        ..request(12.7, 14.0, 9.5, 18.0)
    };
    for (what, request, field, code, limit) in [
        // Derived: (12.7 − 2 · 0.05) / (2 tan 14°) = 25.27, where the tongue's neck ends before the bit's.
        (
            "no neck",
            request(12.7, 14.0, 26.0, 40.0),
            "depth",
            Code::TooLarge,
            Some(25.268),
        ),
        // Derived: half of the socket's floor.
        (
            "no tongue",
            SlidingDovetailRequest {
                glue_gap: 1.5.into(),
                ..request(2.0, 10.0, 3.0, 18.0)
            },
            "glueGap",
            Code::TooLarge,
            Some(1.0),
        ),
        (
            "too deep for the edge",
            short_bit,
            "depth",
            Code::TooLarge,
            Some(9.0),
        ),
        (
            "narrower than the bit",
            narrow_floor,
            "socketFloor",
            Code::TooSmall,
            Some(12.7),
        ),
        (
            "wider than the board",
            request(12.7, 14.0, 9.5, 12.0),
            "socketFloor",
            Code::TooLarge,
            Some(12.1),
        ),
        (
            "no board",
            request(12.7, 14.0, 9.5, f64::NAN),
            "board.thickness",
            Code::NotFinite,
            None,
        ),
    ] {
        let problems = sliding_dovetail(&request).expect_err(what);
        let found = problems
            .iter()
            .find(|problem| problem.field == field && problem.code == code);
        let found = found.unwrap_or_else(|| panic!("{what}: {problems:?}"));
        match (found.limit, limit) {
            (Some(got), Some(expected)) => close(got, expected),
            (got, expected) => assert_eq!(got, expected, "{what}"),
        }
    }
}

#[test]
fn a_tongue_as_wide_as_its_board_is_cut_by_nothing() {
    for thickness in [8.0, 8.0 - 1e-9] {
        let request = SlidingDovetailRequest {
            glue_gap: 0.0.into(),
            ..request(8.0, 4.0, 3.0, thickness)
        };
        let plan = sliding_dovetail(&request).unwrap().plan;
        assert_eq!(plan.tongue_cut_per_side, crate::units::Mm::ZERO);
    }
}

/// The tongue's neck, not only the bit's, bounds the depth.
#[test]
fn a_socket_as_deep_as_is_proposed_can_be_cut() {
    let missing = Given::Missing;
    for (tip, degrees, cutting_length) in [
        (13.7, 14.8, missing.clone()),
        (2.0, 10.0, missing.clone()),
        (12.7, 45.0, missing),
        (14.7, 12.7, 19.0.into()),
    ] {
        let deep = |depth: f64| {
            let bit = BitRequest {
                tip_diameter: tip.into(),
                flank_degrees: degrees.into(),
                cutting_length: cutting_length.clone(),
            };
            sliding_dovetail(&SlidingDovetailRequest {
                bit: bit.into(),
                ..request(tip, degrees, depth, 18.0)
            })
        };
        let refused = deep(200.0).unwrap_err();
        assert_eq!((refused.len(), refused[0].field.as_str()), (1, "depth"));
        deep(refused[0].limit.unwrap() - 0.02).unwrap();
    }
}

/// Derived: the bit's neck of 1 − 3 · tan 17° = 0.083 strides 0.075 at a time, so that a hundred moves reach 8.45.
#[test]
fn a_socket_as_wide_as_is_proposed_can_be_cut() {
    for (depth, thickness, expected) in [(1.5, 18.0, 8.4527), (0.5, 6.0, 6.1)] {
        let wide = |floor: f64| {
            sliding_dovetail(&SlidingDovetailRequest {
                socket_floor: floor.into(),
                ..request(1.0, 17.0, depth, thickness)
            })
        };
        let refused = wide(30.0).unwrap_err();
        assert_eq!(
            (refused.len(), refused[0].field.as_str()),
            (1, "socketFloor")
        );
        let widest = refused[0].limit.unwrap();
        close(widest, expected);
        wide(widest).unwrap();
    }
}

proptest! {
    /// The tongue slides into the socket with the gap at every height, and no wood is left between passes.
    #[test]
    fn the_tongue_fits_its_socket(
        tip in 4.0..40.0_f64,
        degrees in 5.0..20.0_f64,
        depth in 1.0..30.0_f64,
        wider in 0.0..20.0_f64,
        gap in 0.0..0.3_f64,
    ) {
        let mut request = request(tip, degrees, depth, tip + wider + 5.0);
        request.socket_floor = (tip + wider).into();
        request.glue_gap = gap.into();
        let Ok(planned) = sliding_dovetail(&request) else {
            let neck = tip - 2.0 * depth * libm::tan(degrees.to_radians());
            prop_assert!(neck <= 0.6 + 0.2 * wider, "refused with a neck of {neck}");
            return Ok(());
        };
        let plan = planned.plan;
        prop_assert!((plan.floor - plan.tongue_tip).mm() - 2.0 * gap < 1e-9);
        prop_assert!((plan.mouth - plan.tongue_mouth).mm() - 2.0 * gap < 1e-9);
        let neck = plan.mouth - (plan.floor - crate::units::Mm::new(tip).unwrap());
        for step in &plan.socket_fence_moves {
            prop_assert!(*step < neck);
        }
        let total: f64 = plan.socket_fence_moves.iter().map(|step| step.mm()).sum();
        prop_assert!((total - wider).abs() < 1e-9);
    }
}
