//! The dry fit of dovetails against polygons.
//!
//! The sweep is written anew from what a stop and a set-up mean, and walls, gaps and what is left uncut
//! are found by laying polygons over one another: nothing here knows how the dry fit does it.

#![expect(
    clippy::disallowed_methods,
    reason = "the standard library's trigonometry is the reference"
)]

mod requests;
mod socket;
mod sweep;

use notchwright_core::dryfit::slanted::passes;
use notchwright_core::stop::{Board, Set};
use proptest::prelude::*;

use super::SHARE;
use super::region::Region;
use requests::{Case, planned};
use socket::{Place, Socket, sockets};
use sweep::Sweep;

/// A socket is named as uncut only where more than this is left in it, mm².
const WORTH_NAMING: f64 = 1e-6;

/// Areas of gap and overlap in one board's face.
#[derive(Default)]
struct Mated {
    gap: f64,
    clash: f64,
}

/// Lays pins over tails: what neither has is gap, what both have is clash.
fn mated(zone: &Region, between_tails: &Region, between_pins: &Region) -> Mated {
    Mated {
        gap: zone.and(between_tails).and(between_pins).area(),
        clash: zone.minus(between_tails).minus(between_pins).area(),
    }
}

/// In the tail board's face, through the pin board as far as the tails go.
fn through_pins(case: &Case, tails: &[Socket<'_>], pins: &[Socket<'_>]) -> Mated {
    let depths = (case.proud, case.proud + case.through());
    let width = case.plan.width.mm();
    let own = Place { depths, moved: 0.0 };
    let mate = Place {
        depths: (0.0, case.through()),
        moved: case.proud,
    };
    mated(
        &Region::rectangle((0.0, width), depths),
        &Region::all(tails.iter().map(|socket| socket.opened(own))),
        &Region::all(pins.iter().map(|socket| socket.opened(mate))),
    )
}

/// At the outer face, over the tail board's thickness.
fn at_outer_face(case: &Case, tails: &[Socket<'_>], pins: &[Socket<'_>]) -> Mated {
    let across = (0.0, case.tail_thickness);
    let width = case.plan.width.mm();
    let laid = |sockets: &[Socket<'_>], depth: f64| {
        let each = sockets.iter().map(|socket| socket.opened_at(depth));
        Region::union(each.map(|sides| Region::corners(sides, across)))
    };
    mated(
        &Region::rectangle((0.0, width), across),
        &laid(tails, case.proud),
        &laid(pins, 0.0),
    )
}

/// What is left in all sockets of a board, each by itself, where it is worth naming.
fn left_in<'a>(sockets: &[Socket<'a>], left: impl Fn(&Socket<'a>) -> Region) -> f64 {
    let areas = sockets.iter().map(|socket| left(socket).area());
    areas.filter(|area| *area > WORTH_NAMING).sum()
}

fn uncut(case: &Case, board: Board) -> f64 {
    let uncut = case.plan.dry_fit.uncut.iter();
    let areas = uncut.filter(|uncut| uncut.board == board);
    areas.map(|uncut| uncut.area).sum()
}

fn agree(case: &Case) -> Result<(), TestCaseError> {
    let fit = &case.plan.dry_fit;
    let width = case.plan.width.mm();
    let tails = sockets(case, Board::A);
    let pins = sockets(case, Board::B);
    let (mut a, mut b) = (Mated::default(), Mated::default());
    if !pins.is_empty() {
        a = through_pins(case, &tails, &pins);
        b = at_outer_face(case, &tails, &pins);
    }
    let under_tails = left_in(&tails, Socket::left);
    let between_pins = left_in(&pins, Socket::left) + left_in(&pins, Socket::ridges);
    let face_a = width * case.through();
    let face_b = width * case.tail_thickness;
    let pairs = [
        ("gap in A", fit.gap_area_a, a.gap, face_a),
        ("gap in B", fit.gap_area_b, b.gap, face_b),
        ("clash in A", fit.clash_area_a, a.clash, face_a),
        ("clash in B", fit.clash_area_b, b.clash, face_b),
        ("uncut in A", uncut(case, Board::A), under_tails, face_a),
        ("uncut in B", uncut(case, Board::B), between_pins, face_b),
    ];
    for (what, measured, polygons, whole) in pairs {
        prop_assert!(
            (measured - polygons).abs() <= whole * SHARE,
            "{what}: the dry fit says {measured}, polygons say {polygons}, of {whole}"
        );
    }
    Ok(())
}

/// What passes of one set take, and what the drawing is told that they take.
fn same_passes(case: &Case, set: &Set) -> Result<(), TestCaseError> {
    let sweep = Sweep::new(set, case);
    let width = case.plan.width.mm();
    let zone = Region::rectangle((-width, 2.0 * width), (0.0, 300.0));
    let here = set.stops.iter().flat_map(|stop| sweep.taken(stop));
    let here = Region::union(here).and(&zone);
    let there = Region::union(passes(set, case.bench()).into_iter()).and(&zone);
    let off = here.minus(&there).area() + there.minus(&here).area();
    let whole = width * case.through();
    prop_assert!(off <= whole * SHARE, "{}: {off} of {whole}", set.name);
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 320, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn planned_dovetails_measure_as_polygons_do(case in planned()) {
        agree(&case)?;
    }

    #[test]
    fn passes_take_what_a_blade_sweeps(case in planned()) {
        for set in &case.plan.sets {
            same_passes(&case, set)?;
        }
    }
}
