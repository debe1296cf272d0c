//! Sets, zeros and the order of use.

use super::super::{DovetailRequest, SlopeRequest};
use super::{board, cutter, near, plan, request, screw, set};
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::stop::Board;

const LEANING: &str = "Tail board, blade leaning";
const TURNED_OVER: &str = "Tail board, turned over";
const UPRIGHT: &str = "Tail board, blade upright";
const CLOCKWISE: &str = "Pin board, turned clockwise";
const ANTICLOCKWISE: &str = "Pin board, turned anticlockwise";

fn zero(kind: &str) -> ZeroRequest {
    ZeroRequest {
        kind: kind.into(),
        ..ZeroRequest::default()
    }
}

#[test]
fn sets_come_in_the_order_of_use() {
    let plan = plan(&request());
    let degrees = plan.angle_degrees;
    near(crate::units::Mm::new(degrees).unwrap(), 7.125_016);
    let got: Vec<_> = plan
        .sets
        .iter()
        .map(|set| {
            (
                set.name.as_str(),
                set.board,
                set.tilt_degrees,
                set.yaw_degrees,
                set.flipped,
            )
        })
        .collect();
    assert_eq!(
        got,
        [
            (LEANING, Board::A, degrees, 0.0, false),
            (TURNED_OVER, Board::A, degrees, 0.0, true),
            (UPRIGHT, Board::A, 0.0, 0.0, false),
            (CLOCKWISE, Board::B, 0.0, degrees, false),
            (ANTICLOCKWISE, Board::B, 0.0, -degrees, false),
        ]
    );
    assert!(plan.sets[..3].iter().all(|set| set.height.mm() == 18.0));
    assert!(plan.sets[3..].iter().all(|set| set.height.mm() == 18.0));
}

#[test]
fn every_set_has_its_own_zero() {
    // Derived: touch `at + kerf / cos θ` under the leaning blade, `at + kerf` under the upright one,
    // `at·cos θ + kerf` where the outer arris leads, `Tp·sin θ` more where the inner one does; flush `at`,
    // along the face `at·cos θ`; test kerf `r0 + at − m`, along the face `r0 + (at − m)·cos θ`.
    let (cos, sin) = (8.0 / 65.0_f64.sqrt(), 1.0 / 65.0_f64.sqrt());
    let test_kerf = ZeroRequest {
        reading: 40.0.into(),
        measured: 12.5.into(),
        ..zero("testKerf")
    };
    let expected = |kind: &str, name: &str, at: f64| match (kind, name) {
        ("touch", LEANING | TURNED_OVER) => at + 3.2 / cos,
        ("touch", UPRIGHT) => at + 2.0,
        ("touch", CLOCKWISE) => at * cos + 2.0,
        ("touch", _) => at * cos + 2.0 + 22.0 * sin,
        ("flush", CLOCKWISE | ANTICLOCKWISE) => at * cos,
        ("flush", _) => at,
        (_, CLOCKWISE | ANTICLOCKWISE) => 40.0 + (at - 12.5) * cos,
        (_, _) => 40.0 + (at - 12.5),
    };
    for (kind, zero) in [
        ("touch", zero("touch")),
        ("flush", zero("flush")),
        ("testKerf", test_kerf),
    ] {
        let plan = plan(&DovetailRequest {
            pin: board(22.0).into(),
            pin_cutter: cutter(2.0).into(),
            zero: zero.into(),
            ..request()
        });
        for set in &plan.sets {
            for stop in &set.stops {
                let expected = expected(kind, &set.name, stop.at.mm());
                let got = stop.dial.reading.mm();
                assert!(
                    (got - expected).abs() < 1e-9,
                    "{kind} {}: {got} for {expected}",
                    set.name
                );
            }
        }
    }
}

#[test]
fn a_symmetric_board_is_cut_alike_from_both_faces() {
    let plan = plan(&request());
    let places = |name| -> Vec<_> { set(&plan, name).stops.iter().map(|stop| stop.at).collect() };
    assert_eq!(places(LEANING), places(TURNED_OVER));
    let spaces = |name| -> Vec<_> {
        set(&plan, name)
            .stops
            .iter()
            .map(|stop| stop.space)
            .collect()
    };
    assert_eq!(spaces(LEANING), [2, 4, 6, 8]);
    assert_eq!(spaces(TURNED_OVER), [6, 4, 2, 0]);
}

#[test]
fn readings_rise_towards_the_reference_edge_too() {
    let towards = ScrewRequest {
        rises: "towards".into(),
        ..screw("none")
    };
    let away = plan(&DovetailRequest {
        screw: screw("none").into(),
        ..request()
    });
    let towards = plan(&DovetailRequest {
        screw: towards.into(),
        ..request()
    });
    for (away, towards) in away.sets.iter().zip(&towards.sets) {
        assert_eq!(away.stops.len(), towards.stops.len());
        for (away, towards) in away.stops.iter().zip(towards.stops.iter().rev()) {
            near(away.at, towards.at.mm());
            assert_eq!(away.space, towards.space);
        }
        assert_eq!((towards.stops[0].number, towards.stops[0].pass), (1, 1));
    }
}

#[test]
fn teeth_ground_to_the_slope_need_no_upright_passes_where_pins_are_wide() {
    // Derived: 2·s·D = 4.5; pins of 5 mm are wider.
    let grind = GrindRequest {
        kind: "slope".into(),
        ..GrindRequest::default()
    };
    let ground = CutterRequest {
        grind: grind.into(),
        ..cutter(3.2)
    };
    let wide = DovetailRequest {
        cutter: ground.into(),
        screw: screw("none").into(),
        ..request()
    };
    let joint = plan(&wide);
    assert_eq!(joint.sets.len(), 4);
    near(joint.corner_left, 0.0);
    assert!(
        joint
            .dry_fit
            .uncut
            .iter()
            .all(|uncut| uncut.board == Board::B),
        "{:?}",
        joint.dry_fit.uncut
    );
    let narrow = plan(&DovetailRequest {
        narrow_pin: 4.0.into(),
        ..wide
    });
    assert_eq!(narrow.sets.len(), 5);
}

#[test]
fn a_half_blind_joint_has_only_its_tails_sawn() {
    let plan = plan(&DovetailRequest {
        lap: 5.0.into(),
        ..request()
    });
    assert!(plan.sets.iter().all(|set| set.board == Board::A));
    near(plan.depth_a, 13.0);
    // Derived: a − 2·s·(Tp − lap).
    near(plan.tail_base, 28.25 - 2.0 * 13.0 / 8.0);
    assert_eq!(plan.dry_fit.flanks, []);
    assert!(!plan.dry_fit.clash);
}

#[test]
fn proud_tails_are_cut_deeper_and_keep_their_widths_at_the_faces() {
    let proud = DovetailRequest {
        proud: 1.0.into(),
        slope: SlopeRequest::ratio(8.0).into(),
        screw: screw("none").into(),
        ..request()
    };
    let plan = plan(&proud);
    near(plan.depth_a, 19.0);
    near(plan.depth_b, 19.0);
    near(plan.tail_tip, 28.25);
    near(plan.tail_base, 23.75);
    near(plan.dry_fit.smallest_gap, 0.05);
    near(plan.dry_fit.largest_gap, 0.05);
    // Derived: the first tail's flank is half a gap inside it at the outer face, and 1/8 mm further out at
    // its end, 1 mm beyond.
    near(plan.dry_fit.flanks[0].x, 6.025);
    let far = set(&plan, TURNED_OVER).stops.last().unwrap();
    near(plan.width - far.at, 6.025 - 0.125);
}

#[test]
fn corners_are_left_for_the_chisel_under_flat_teeth() {
    // Derived: kerf · sin θ; kerf 3.2, 1:8 → 0.397.
    let plan = plan(&request());
    assert!((plan.corner_left.mm() - 0.397).abs() < 5e-4);
    assert!((plan.dry_fit.floor_gap_a + plan.corner_left).mm().abs() < 1e-9);
}

/// A half-blind joint has no flanks to measure; an area of −0 mm² would read as such.
#[test]
fn nothing_measured_is_no_area() {
    let half_blind = DovetailRequest {
        lap: 5.0.into(),
        ..request()
    };
    let fit = plan(&half_blind).dry_fit;
    for area in [
        fit.gap_area_a,
        fit.gap_area_b,
        fit.clash_area_a,
        fit.clash_area_b,
    ] {
        assert_eq!(area.to_bits(), 0.0_f64.to_bits());
    }
}
