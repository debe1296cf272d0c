//! The dry fit against polygons: every pass is taken from the boards' faces, and the faces are laid
//! over one another, by a general library that knows nothing of joints.
//!
//! The library works on whole numbers. Places are put on a grid of 2⁻⁴⁰ mm (a picometre), which
//! holds the widest board in 52 of 64 bits; corners and crossings are off by half a step of it at
//! most, so areas agree to far better than the 10⁻⁹ of a face that is asked for here.

mod dovetails;
mod joints;
mod region;

use joints::{Cut, planned, slipped};
use notchwright_core::dryfit::{DryFit, Swept, dry_fit};
use notchwright_core::stop::{Board, Set};
use notchwright_core::units::Mm;
use proptest::prelude::*;
use region::Region;

/// Of the area of the board's face within the joint.
const SHARE: f64 = 1e-9;
/// What stands less than this on a socket's floor is not named, mm.
const WORTH_NAMING: f64 = 1e-3;

/// A pair of teeth, each deepest at its own side of the kerf.
fn teeth(at: f64, set: &Set) -> [Vec<(f64, f64)>; 2] {
    let (kerf, deep) = (set.kerf.mm(), set.height.mm());
    // Two teeth meet in the middle of the kerf, so each rises twice the ridge over the whole of it.
    let shallow = deep - 2.0 * set.ridge.mm();
    let off = shallow.min(0.0) - 1.0;
    let (left, right) = (at, at + kerf);
    [
        vec![(left, off), (right, off), (right, shallow), (left, deep)],
        vec![(left, off), (right, off), (right, deep), (left, shallow)],
    ]
}

/// The end of a board as cut, as far as `deep` from it.
fn as_cut(set: &Set, width: f64, deep: f64) -> Region {
    let swept = set.stops.iter().flat_map(|stop| teeth(stop.at.mm(), set));
    Region::rectangle((0.0, width), (0.0, deep)).minus(&Region::union(swept))
}

/// Where a board has wood from end to end of its pins, laid over `depths` of its mate's face.
fn across_mate(set: &Set, width: f64, depths: (f64, f64)) -> Region {
    let passes = set.stops.iter().map(|stop| {
        let left = stop.at.mm();
        Region::corners((left, left + set.kerf.mm()), depths)
    });
    Region::rectangle((0.0, width), depths).minus(&Region::union(passes))
}

/// Areas in one board's face.
struct Face {
    gap: f64,
    clash: f64,
    uncut: f64,
    whole: f64,
}

fn face(own: &Set, mate: &Set, width: f64, proud: f64, thickness: f64) -> Face {
    let depths = (proud, proud + thickness);
    let zone = Region::rectangle((0.0, width), depths);
    let own_wood = as_cut(own, width, own.height.mm().max(depths.1));
    let mate_wood = across_mate(mate, width, depths);
    Face {
        gap: zone.minus(&own_wood).minus(&mate_wood).area(),
        clash: own_wood.and(&mate_wood).area(),
        uncut: sockets(own, width)
            .iter()
            .map(|across| own_wood.and(&Region::rectangle(*across, (0.0, depths.1))))
            .filter(|left| {
                left.lowest()
                    .is_some_and(|top| depths.1 - top > WORTH_NAMING)
            })
            .map(|left| left.area())
            .sum(),
        whole: zone.area(),
    }
}

/// Each socket's first and last place across the board.
fn sockets(set: &Set, width: f64) -> Vec<(f64, f64)> {
    let mut spaces: Vec<usize> = set.stops.iter().map(|stop| stop.space).collect();
    spaces.sort_unstable();
    spaces.dedup();
    let socket = |space: usize| {
        let places = || {
            set.stops
                .iter()
                .filter(|stop| stop.space == space)
                .map(|stop| stop.at.mm())
        };
        let left = places().fold(f64::INFINITY, f64::min);
        let right = places().fold(f64::NEG_INFINITY, f64::max) + set.kerf.mm();
        (left.max(0.0), right.min(width))
    };
    spaces
        .into_iter()
        .map(socket)
        .filter(|(left, right)| left < right)
        .collect()
}

fn uncut(fit: &DryFit, board: Board) -> f64 {
    fit.uncut
        .iter()
        .filter(|uncut| uncut.board == board)
        .map(|uncut| uncut.area)
        .sum()
}

fn agree(cut: &Cut) -> Result<(), TestCaseError> {
    let swept = |set| Swept::new(set, cut.width);
    let fit = dry_fit(&swept(&cut.a), &swept(&cut.b), cut.seat);
    let (width, proud) = (cut.width.mm(), cut.seat.proud.mm());
    let a = face(&cut.a, &cut.b, width, proud, cut.seat.thickness_b.mm());
    let b = face(&cut.b, &cut.a, width, proud, cut.seat.thickness_a.mm());
    let pairs = [
        ("gap in A", fit.gap_area_a, a.gap, a.whole),
        ("gap in B", fit.gap_area_b, b.gap, b.whole),
        ("clash in A", fit.clash_area_a, a.clash, a.whole),
        ("clash in B", fit.clash_area_b, b.clash, b.whole),
        ("uncut in A", uncut(&fit, Board::A), a.uncut, a.whole),
        ("uncut in B", uncut(&fit, Board::B), b.uncut, b.whole),
    ];
    for (what, measured, polygons, whole) in pairs {
        prop_assert!(
            (measured - polygons).abs() <= whole * SHARE,
            "{what}: the dry fit says {measured}, polygons say {polygons}, of {whole}"
        );
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 256, failure_persistence: None, ..ProptestConfig::default() })]

    #[test]
    fn planned_joints_measure_as_polygons_do(cut in planned()) {
        agree(&cut)?;
    }

    /// Under flat teeth nothing but the flanks' gaps is open.
    #[test]
    fn gaps_of_all_flanks_fill_the_open_area(cut in planned()) {
        prop_assume!(cut.a.ridge == Mm::ZERO);
        let fit = dry_fit(&Swept::new(&cut.a, cut.width), &Swept::new(&cut.b, cut.width), cut.seat);
        prop_assume!(!fit.clash && fit.smallest_gap >= Mm::ZERO);
        let thickness = cut.seat.thickness_b;
        let face = face(&cut.a, &cut.b, cut.width.mm(), cut.seat.proud.mm(), thickness.mm());
        let gaps: Mm = fit.flanks.iter().map(|flank| flank.gap_at_outer).sum();
        prop_assert!((gaps.mm() * thickness.mm() - face.gap).abs() <= face.whole * SHARE);
    }

    #[test]
    fn slipped_joints_measure_as_polygons_do(cut in slipped()) {
        agree(&cut)?;
    }
}
