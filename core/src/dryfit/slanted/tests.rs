//! The slanted dry fit against boards cut by hand-written stops, right and wrong ones.

use super::{Bench, Measured, Teeth, dry_fit, passes};
use crate::dryfit::{DryFit, Side};
use crate::stop::{Board, Reading, Set, Stop};
use crate::units::Mm;

fn mm(mm: f64) -> Mm {
    Mm::new(mm).unwrap()
}

#[track_caller]
fn near(got: f64, expected: f64) {
    assert!((got - expected).abs() < 1e-9, "{got} for {expected}");
}

/// 45° and a kerf of 2 mm, so that strips are 2·√2 wide and every number can be followed in the head.
const KERF: f64 = 2.0;
const STRIP: f64 = KERF * std::f64::consts::SQRT_2;

/// What a set is: board, tilt, yaw, flipped; a slope of 1 everywhere.
const LEANING: (Board, f64, f64, bool) = (Board::A, 45.0, 0.0, false);
const TURNED_OVER: (Board, f64, f64, bool) = (Board::A, 45.0, 0.0, true);
const UPRIGHT: (Board, f64, f64, bool) = (Board::A, 0.0, 0.0, false);
const CLOCKWISE: (Board, f64, f64, bool) = (Board::B, 0.0, 45.0, false);
const ANTICLOCKWISE: (Board, f64, f64, bool) = (Board::B, 0.0, -45.0, false);

fn set(kind: (Board, f64, f64, bool), height: f64, cuts: &[(f64, usize)]) -> Set {
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
        socket: space / 2,
        pass: 1,
        passes: 1,
    };
    let (board, tilt_degrees, yaw_degrees, flipped) = kind;
    Set {
        name: String::new(),
        board,
        tilt_degrees,
        yaw_degrees,
        flipped,
        height: mm(height),
        kerf: mm(KERF),
        ridge: Mm::ZERO,
        divisions: 100,
        run_up: dial,
        stops: cuts.iter().enumerate().map(stop).collect(),
    }
}

/// Boards 40 wide; the tail board 5, the pin board 4 thick.
fn bench(teeth: Teeth) -> Bench {
    Bench {
        width: mm(40.0),
        thickness_a: mm(5.0),
        thickness_b: mm(4.0),
        through: mm(4.0),
        proud: Mm::ZERO,
        teeth,
        upright_teeth: Teeth::Flat,
        measured: Measured::default(),
    }
}

const GROUND: Teeth = Teeth::Slanted { slope: 1.0 };

/// One tail from 10 to 30 at its tip, `gap` away from the pins on both sides.
fn one_tail(gap: f64, bench: &Bench) -> DryFit {
    dry_fit(&one_tail_sets(gap), bench)
}

fn one_tail_sets(gap: f64) -> Vec<Set> {
    let across = |from: f64, to: f64, space| -> Vec<(f64, usize)> {
        let count = ((to - from) / 1.5).ceil() as u32;
        let step = (to - from) / f64::from(count);
        (0..=count)
            .map(|i| (from + step * f64::from(i), space))
            .collect()
    };
    let (left, right) = (10.0 - gap, 30.0 + gap);
    let open: Vec<_> = [across(-2.0, 8.0, 0), across(30.0, 38.0, 2)].concat();
    vec![
        set(LEANING, 4.0, &across(30.0, 34.0, 2)),
        set(TURNED_OVER, 4.0, &across(30.0, 34.0, 0)),
        set(UPRIGHT, 4.0, &open),
        set(CLOCKWISE, 5.0, &across(18.5, right - STRIP, 1)),
        set(ANTICLOCKWISE, 5.0, &across(left, 21.5 - STRIP, 1)),
    ]
}

#[test]
fn a_tail_in_its_socket() {
    let fit = one_tail(0.25, &bench(GROUND));
    let flanks: Vec<_> = fit
        .flanks
        .iter()
        .map(|flank| (flank.x.mm(), flank.side))
        .collect();
    assert_eq!(flanks.len(), 2);
    near(flanks[0].0, 10.0);
    near(flanks[1].0, 30.0);
    assert_eq!((flanks[0].1, flanks[1].1), (Side::Left, Side::Right));
    near(fit.smallest_gap.mm(), 0.25);
    near(fit.largest_gap.mm(), 0.25);
    assert!(!fit.clash);
    // Derived: two gaps over 4 mm of the pin board; over 5 mm of the tail board at the outer face.
    near(fit.gap_area_a, 2.0);
    near(fit.gap_area_b, 2.5);
    assert_eq!(fit.uncut, [], "nothing is left in any socket");
    assert_eq!((fit.floor_gap_a, fit.floor_gap_b), (Mm::ZERO, Mm::ZERO));
}

#[test]
fn a_tail_too_wide_clashes() {
    let fit = one_tail(-0.25, &bench(GROUND));
    assert!(fit.clash);
    near(fit.smallest_gap.mm(), -0.25);
    near(fit.clash_area_a, 2.0);
    near(fit.clash_area_b, 2.5);
    assert_eq!(fit.gap_area_a, 0.0);
}

#[test]
fn a_blade_that_leans_too_little_wedges_at_the_baseline() {
    // Derived: at a tangent of 0.9 a tail is 0.4 wider on each side at the baseline, 4 mm deep: gaps of 0.1
    // at the outer face become −0.3. They cross zero a quarter of the way: gap 0.1·1/2, overlap 0.3·3/2.
    let measured = Measured {
        lean: Some(0.9),
        turn: None,
    };
    let fit = one_tail(
        0.1,
        &Bench {
            measured,
            ..bench(GROUND)
        },
    );
    let flank = fit.flanks[0];
    near(flank.gap_at_outer.mm(), 0.1);
    near(flank.gap_at_inner.mm(), -0.3);
    near(fit.gap_area_a, 2.0 * 0.05);
    near(fit.clash_area_a, 2.0 * 0.45);
    assert!(fit.clash);
}

#[test]
fn a_wedge_that_turns_too_little_opens_at_the_baseline() {
    // Derived: the pin board's flanks run 0.9·4 instead of 4 mm: 0.4 more gap at the inner face.
    let measured = Measured {
        lean: None,
        turn: Some(0.9),
    };
    let fit = one_tail(
        0.1,
        &Bench {
            measured,
            ..bench(GROUND)
        },
    );
    for flank in fit.flanks {
        near((flank.gap_at_inner - flank.gap_at_outer).mm(), 0.4);
    }
}

#[test]
fn a_wedge_that_turns_too_far_bends_walls_and_clashes_between_the_faces() {
    // Derived: at a tangent of 4/3 strips are 10/3 wide. The left wall, 9.75 + 4/3·u, runs into the strip
    // along the right one, 16 11/12 − 4/3·u, at u = 43/16: there the gap is 1/4 − u/3 = −31/48, though it
    // is 1/4 at the outer face and 14 − 11 7/12 = 29/12 at the inner one.
    let measured = Measured {
        lean: None,
        turn: Some(4.0 / 3.0),
    };
    let tight = [
        set(LEANING, 4.0, &[(20.0, 2)]),
        set(TURNED_OVER, 4.0, &[(30.0, 0)]),
        set(CLOCKWISE, 5.0, &[(20.25 - 10.0 / 3.0, 1)]),
        set(ANTICLOCKWISE, 5.0, &[(9.75, 1)]),
    ];
    let fit = dry_fit(
        &tight,
        &Bench {
            measured,
            ..bench(GROUND)
        },
    );
    assert!(fit.clash, "both faces show a gap, and still it clashes");
    for flank in &fit.flanks {
        near(flank.gap_at_outer.mm(), 0.25);
        near(flank.gap_at_inner.mm(), 29.0 / 12.0);
    }
    let least = 31.0 / 48.0;
    near(fit.smallest_gap.mm(), -least);
    near(fit.largest_gap.mm(), 29.0 / 12.0);
    // Triangles: the gap closes by 1/3 for each mm to the bend, and opens by 7/3 for each after it.
    let triangle = |gap: f64, closes: f64| gap * gap / closes / 2.0;
    near(
        fit.clash_area_a,
        2.0 * (triangle(least, 1.0 / 3.0) + triangle(least, 7.0 / 3.0)),
    );
    near(
        fit.gap_area_a,
        2.0 * (triangle(0.25, 1.0 / 3.0) + triangle(29.0 / 12.0, 7.0 / 3.0)),
    );
    // The strips cross; before and after, pillars stand between them, 23/6 wide at the outer face and 1/6
    // at the inner one. What is beyond a bend is the pin.
    let pillar = fit.uncut.iter().find(|uncut| uncut.board == Board::B);
    near(
        pillar.unwrap().area,
        triangle(23.0 / 6.0, 8.0 / 3.0) + triangle(1.0 / 6.0, 8.0 / 3.0),
    );
}

#[test]
fn a_flat_tooth_leaves_its_corner() {
    // Derived: one strip whose floor falls from 4 − 2·sin 45° at the flank to 4 at its other side. Under it
    // a triangle is left: corners at the flank's floor, on the flank at the baseline, and where the floor
    // meets the baseline, 2·√2 farther: height √2, base 2·√2 along the baseline.
    let sets = [
        set(LEANING, 4.0, &[(20.0, 2)]),
        set(TURNED_OVER, 4.0, &[(40.0 - 20.0 - STRIP, 2)]),
    ];
    let fit = dry_fit(&sets, &bench(Teeth::Flat));
    let sin = std::f64::consts::FRAC_1_SQRT_2;
    let corner = fit.uncut[0];
    near(corner.height.mm(), 4.0 - STRIP / 2.0);
    near(fit.floor_gap_a.mm(), -(4.0 - STRIP / 2.0));
    near(corner.near.mm(), 20.0 + STRIP / 2.0);
    // The two corners, and the middle triangle whose base is 8 − w and whose apex is at a depth of w/2.
    let corners = 2.0 * (KERF * sin) * STRIP / 2.0;
    let middle = (8.0 - STRIP) * (4.0 - STRIP / 2.0) / 2.0;
    // Strips cross below the apex only outside themselves, so corners and middle do not overlap; each strip's
    // floor ends on the middle triangle's side.
    near(corner.area, corners + middle);
}

#[test]
fn strips_are_where_the_trade_says() {
    let bench = bench(GROUND);
    let outline = |kind, at| passes(&set(kind, 4.0, &[(at, 0)]), &bench).remove(0);
    let places = |kind, at| {
        let outline = outline(kind, at);
        let mut places: Vec<_> = outline
            .iter()
            .map(|(x, depth)| (x.round(), depth.round()))
            .collect();
        places.sort_by(|a, b| a.partial_cmp(b).unwrap());
        places
    };
    // Leaning, the kerf runs towards the reference edge with depth; turned over, it is the mirror image.
    assert_eq!(
        places(LEANING, 20.0),
        [(16.0, 4.0), (19.0, 4.0), (20.0, 0.0), (23.0, 0.0)]
    );
    assert_eq!(
        places(TURNED_OVER, 20.0),
        [(17.0, 0.0), (20.0, 0.0), (21.0, 4.0), (24.0, 4.0)]
    );
    assert_eq!(
        places(UPRIGHT, 20.0),
        [(20.0, 0.0), (20.0, 4.0), (22.0, 0.0), (22.0, 4.0)]
    );
    assert_eq!(
        places(CLOCKWISE, 20.0),
        [(16.0, 4.0), (19.0, 4.0), (20.0, 0.0), (23.0, 0.0)]
    );
    assert_eq!(
        places(ANTICLOCKWISE, 20.0),
        [(20.0, 0.0), (23.0, 0.0), (24.0, 4.0), (27.0, 4.0)]
    );
}

#[test]
fn alternate_teeth_cut_two_outlines() {
    let bench = bench(Teeth::Alternate { slope: 0.5 });
    let outlines = passes(&set(LEANING, 4.0, &[(20.0, 0)]), &bench);
    assert_eq!(outlines.len(), 2);
    let deepest =
        |outline: &Vec<(f64, f64)>| outline.iter().map(|place| place.1).fold(0.0, f64::max);
    // Derived: the far corner of the tooth that is deepest there is at the depth set.
    near(outlines.iter().map(deepest).fold(0.0, f64::max), 4.0);
}

#[test]
fn a_tooth_higher_than_its_cut_leaves_nothing_above_the_end() {
    let shallow = set(LEANING, 0.5, &[(20.0, 0)]);
    for outline in passes(&shallow, &bench(Teeth::Flat)) {
        assert!(outline.len() > 2 && outline.iter().all(|(_, depth)| (0.0..=0.5).contains(depth)));
    }
}

/// Height of what is left at one place of the pin board: the lowest of all passes over it.
fn height_at(sets: &[Set], bench: &Bench, x: f64, u: f64) -> f64 {
    let slope = match bench.upright_teeth {
        Teeth::Alternate { slope } | Teeth::Slanted { slope } => slope,
        Teeth::Flat => 0.0,
    };
    let mut lowest = f64::INFINITY;
    for set in sets.iter().filter(|set| set.board == Board::B) {
        for stop in &set.stops {
            let across = (x - stop.at.mm() + u * set.yaw_degrees.signum()) * KERF / STRIP;
            if (0.0..=KERF).contains(&across) {
                let over = match bench.upright_teeth {
                    Teeth::Alternate { .. } => across.min(KERF - across),
                    _ => across,
                };
                lowest = lowest.min(over * slope);
            }
        }
    }
    lowest
}

#[test]
fn ridges_on_the_pin_boards_floor_are_the_highest_there_are() {
    for teeth in [
        Teeth::Alternate { slope: 0.5 },
        Teeth::Slanted { slope: 0.5 },
    ] {
        let bench = Bench {
            upright_teeth: teeth,
            ..bench(GROUND)
        };
        let sets = one_tail_sets(0.25);
        let fit = dry_fit(&sets, &bench);
        let ridge = fit
            .uncut
            .iter()
            .find(|uncut| uncut.board == Board::B)
            .unwrap();
        let (mut highest, mut area) = (0.0, 0.0);
        let steps = 400;
        for i in 0..steps {
            let u = 4.0 * f64::from(i) / f64::from(steps - 1);
            for j in 0..20_500 {
                let x = 9.75 + 0.001 * (f64::from(j) + 0.5);
                let height = height_at(&sets, &bench, x, u);
                if height.is_finite() {
                    highest = f64::max(highest, height);
                    area += if i == 0 { height * 0.001 } else { 0.0 };
                }
            }
        }
        // Samples are a thousandth of a millimetre apart across the width and a hundredth through the board;
        // at each of some thirty steps of the floor one of them is up to half a sample off.
        let found = ridge.height.mm();
        assert!(
            found >= highest - 1e-9 && found < highest + 6e-3,
            "{teeth:?}: {found}, sampled {highest}"
        );
        assert!(
            (ridge.area - area).abs() < 6e-3,
            "{teeth:?}: {} and {area}",
            ridge.area
        );
        assert_eq!(fit.floor_gap_b, -ridge.height);
    }
}

#[test]
fn what_two_turns_cannot_reach_stands_as_a_pillar() {
    // Derived: a socket 10 wide at the outer face and 2 at the inner one takes strips of each turn up to
    // 10 − 8 = 2 from its own flank, and STRIP does not fit there: passes only along the flanks.
    let sets = [
        set(CLOCKWISE, 5.0, &[(30.0 - STRIP, 1)]),
        set(ANTICLOCKWISE, 5.0, &[(19.0, 1)]),
    ];
    // A socket 11 wide and 3 at the inner face: uncut 11 − 2·STRIP at the outer face, closing by 2 a millimetre.
    let fit = dry_fit(&sets, &bench(GROUND));
    let base = 11.0 - 2.0 * STRIP;
    let pillar = fit.uncut[0];
    near(pillar.area, base * base / 4.0);
    near(pillar.height.mm(), 5.0);
    near(pillar.near.mm(), 24.5);
}
