//! The dry fit against boards cut by hand-written stops, right and wrong ones.

use super::{DryFit, Seat, Swept, dry_fit};
use crate::stop::{Board, Reading, Set, Stop};
use crate::units::Mm;

fn mm(mm: f64) -> Mm {
    Mm::new(mm).unwrap()
}

/// A set of passes at these places, each with the space it belongs to.
fn set(board: Board, kerf: f64, height: f64, cuts: &[(f64, usize)]) -> Set {
    let dial = Reading {
        reading: Mm::ZERO,
        turns: 0,
        division: 0.0,
    };
    let stop = |(index, (at, space)): (usize, &(f64, usize))| Stop {
        number: index + 1,
        at: mm(*at),
        dial,
        travel: Mm::ZERO,
        move_turns: 0,
        move_division: 0.0,
        space: *space,
        socket: 0,
        pass: 1,
        passes: 1,
    };
    Set {
        name: String::new(),
        board,
        tilt_degrees: 0.0,
        yaw_degrees: 0.0,
        flipped: false,
        height: mm(height),
        kerf: mm(kerf),
        ridge: Mm::ZERO,
        divisions: 100,
        run_up: dial,
        stops: cuts.iter().enumerate().map(stop).collect(),
    }
}

/// The same set under teeth that leave such a ridge.
fn ridged(set: Set, ridge: f64) -> Set {
    Set {
        ridge: mm(ridge),
        ..set
    }
}

/// Boards 30 wide, A 8 and B 6 thick, a 10 mm cutter; A has its socket in the middle.
fn fit(a: &[(f64, usize)], b: &[(f64, usize)], ridge: f64) -> DryFit {
    let a = Swept::new(&ridged(set(Board::A, 10.0, 6.0, a), ridge), mm(30.0));
    let b = Swept::new(&ridged(set(Board::B, 10.0, 8.0, b), ridge), mm(30.0));
    dry_fit(
        &a,
        &b,
        Seat {
            thickness_a: mm(8.0),
            thickness_b: mm(6.0),
            proud: Mm::ZERO,
        },
    )
}

const B: [(f64, usize); 2] = [(0.0, 0), (20.0, 2)];

#[test]
fn three_equal_fingers_just_meet() {
    let fit = fit(&[(10.0, 1)], &B, 0.0);
    assert_eq!(fit.flanks.len(), 2);
    assert_eq!(
        (fit.smallest_gap, fit.largest_gap, fit.clash),
        (Mm::ZERO, Mm::ZERO, false)
    );
    assert_eq!((fit.gap_area_a, fit.clash_area_a), (0.0, 0.0));
}

#[test]
fn a_stop_that_is_off_shows_on_both_sides() {
    let fit = fit(&[(10.25, 1)], &B, 0.0);
    assert_eq!(
        (fit.smallest_gap, fit.largest_gap, fit.clash),
        (mm(-0.25), mm(0.25), true)
    );
    // A quarter millimetre over B's 6 mm in A's face and over A's 8 mm in B's.
    assert_eq!((fit.gap_area_a, fit.clash_area_a), (1.5, 1.5));
    assert_eq!((fit.gap_area_b, fit.clash_area_b), (2.0, 2.0));
}

#[test]
fn a_missing_pass_is_found() {
    let fit = fit(&[(10.0, 1)], &[(20.0, 2)], 0.0);
    assert!(fit.clash);
    assert_eq!(fit.clash_area_a, 60.0);
}

#[test]
fn wood_between_passes_is_left_and_named() {
    // Passes 0.5 mm farther apart than they are wide.
    let a = Swept::new(&set(Board::A, 4.0, 6.0, &[(10.0, 1), (14.5, 1)]), mm(30.0));
    let slivers: Vec<_> = a.slivers().collect();
    assert_eq!(slivers.len(), 1);
    assert_eq!((slivers[0].from, slivers[0].to), (mm(14.0), mm(14.5)));
    assert_eq!(a.pins().len(), 2);
    let b = Swept::new(&set(Board::B, 10.0, 8.0, &B), mm(30.0));
    let fit = dry_fit(
        &a,
        &b,
        Seat {
            thickness_a: mm(8.0),
            thickness_b: mm(6.0),
            proud: Mm::ZERO,
        },
    );
    assert_eq!(
        (fit.uncut[0].area, fit.uncut[0].height, fit.uncut[0].near),
        (3.0, mm(6.0), mm(14.25))
    );
}

#[test]
fn a_blade_too_low_or_too_high_shows_at_the_floor() {
    for (height, gap) in [(5.5, -0.5), (6.0, 0.0), (6.5, 0.5)] {
        let a = Swept::new(&set(Board::A, 10.0, height, &[(10.0, 1)]), mm(30.0));
        let b = Swept::new(&set(Board::B, 10.0, 8.0, &B), mm(30.0));
        let fit = dry_fit(
            &a,
            &b,
            Seat {
                thickness_a: mm(8.0),
                thickness_b: mm(6.0),
                proud: Mm::ZERO,
            },
        );
        assert_eq!(fit.floor_gap_a, mm(gap), "{height}");
        assert_eq!(fit.floor_gap_b, Mm::ZERO);
    }
}

#[test]
fn a_ridge_is_a_triangle() {
    // Derived: 10 mm kerf at a slope of 0.1 leaves a triangle 10 wide and 0.5 high.
    let fit = fit(&[(10.0, 1)], &B, 0.5);
    assert_eq!(fit.floor_gap_a, mm(-0.5));
    assert!((fit.clash_area_a - 2.5).abs() < 1e-12);
    assert!(!fit.clash, "a ridge is pared away; it is no clash of pins");
    let [a, b0, b1] = fit.uncut.as_slice() else {
        panic!("{:?}", fit.uncut)
    };
    assert!(
        [a, b0, b1]
            .iter()
            .all(|uncut| (uncut.area - 2.5).abs() < 1e-12 && uncut.height == mm(0.5))
    );
}

#[test]
fn overlapping_passes_take_part_of_each_others_ridge() {
    // Derived: two 10 mm passes 6 mm apart, slope 0.1.
    let wide = set(Board::A, 10.0, 6.0, &[(10.0, 1), (16.0, 1)]);
    let a = Swept::new(&ridged(wide, 0.5), mm(40.0));
    let b = Swept::new(
        &set(Board::B, 10.0, 8.0, &[(0.0, 0), (26.0, 2), (32.0, 2)]),
        mm(40.0),
    );
    let fit = dry_fit(
        &a,
        &b,
        Seat {
            thickness_a: mm(8.0),
            thickness_b: mm(6.0),
            proud: Mm::ZERO,
        },
    );
    // From 10: up to 0.5 and down to 0.4 at 16, where the second pass begins and the floor drops to
    // nothing; then up to 0.2 at 18; mirrored from there: 2 · (1.25 + 0.45 + 0.2) = 3.8.
    assert!((fit.uncut[0].area - 3.8).abs() < 1e-12, "{:?}", fit.uncut);
}

#[test]
fn proud_pins_do_not_change_the_fit() {
    let a = Swept::new(&set(Board::A, 10.0, 6.5, &[(10.0, 1)]), mm(30.0));
    let b = Swept::new(&set(Board::B, 10.0, 8.5, &B), mm(30.0));
    let fit = dry_fit(
        &a,
        &b,
        Seat {
            thickness_a: mm(8.0),
            thickness_b: mm(6.0),
            proud: mm(0.5),
        },
    );
    assert_eq!((fit.floor_gap_a, fit.floor_gap_b), (Mm::ZERO, Mm::ZERO));
    assert_eq!(fit.clash_area_a, 0.0);
}
