//! Which of the cutters in a box add up to a groove.
//!
//! A grooving stack is its outer cutters, always all of them, with chippers between and shims to
//! trim; widths add. Every subset of the loose pieces is a candidate, 2³² at worst, so they are
//! dealt into two halves, each half's subsets are listed by width (2¹⁶ at most), and for each
//! subset of the one the fitting subsets of the other are found by bisection. The full 32 pieces
//! of 32 odd widths take about 15 ms natively, a real box less than one.

use core::fmt;
use std::collections::VecDeque;

use crate::units::Mm;

/// More chippers and shims together than this are refused: it keeps the search to some
/// milliseconds, and no box holds as many.
pub const MOST_LOOSE: usize = 32;

/// Pieces that stand on the arbor together.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Stack {
    /// Width of the groove it cuts: all its pieces together.
    pub width: Mm,
    /// Widths of the outer cutters, as they were given.
    pub outer: Vec<Mm>,
    /// Widths of the chippers used, in the order they were given.
    pub chippers: Vec<Mm>,
    /// Widths of the shims used, in the order they were given.
    pub shims: Vec<Mm>,
}

/// The stacks nearest a wanted width.
#[derive(Clone, Debug, PartialEq)]
pub struct Stacks {
    /// The widest that is not wider than wanted; none when the outer cutters alone are.
    pub below: Option<Stack>,
    /// The narrowest that is not narrower than wanted; none when all pieces together are.
    pub above: Option<Stack>,
    /// The nearer of the two; the narrower when both are as near, since a groove is easily widened.
    pub nearest: Stack,
}

/// Why no stack can be built. Its `Display` says what would work.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum StackFault {
    /// A stack without its outer cutters does not clear the groove's corners.
    NoOuterCutters,
    /// More loose pieces than are looked through.
    TooManyPieces {
        /// How many were given.
        given: usize,
    },
}

impl fmt::Display for StackFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::NoOuterCutters => write!(
                f,
                "Give the outer cutters' widths: they are in every stack."
            ),
            Self::TooManyPieces { given } => {
                write!(
                    f,
                    "Give at most {MOST_LOOSE} chippers and shims; {given} were given."
                )
            }
        }
    }
}

impl core::error::Error for StackFault {}

/// The stacks nearest `want` from below and above, with each chipper and each shim used at most once.
///
/// Widths are compared to the micrometre: a stack that far off `want` at most counts as below and
/// as above. Of stacks of the same width the one of fewest pieces is taken, then of fewest shims,
/// then the one that comes first in the order given.
///
/// # Errors
/// [`StackFault`] without outer cutters, or with more than [`MOST_LOOSE`] chippers and shims.
pub fn cutter_stack(
    outer: &[Mm],
    chippers: &[Mm],
    shims: &[Mm],
    want: Mm,
) -> Result<Stacks, StackFault> {
    let given = chippers.len() + shims.len();
    if outer.is_empty() {
        return Err(StackFault::NoOuterCutters);
    }
    if given > MOST_LOOSE {
        return Err(StackFault::TooManyPieces { given });
    }
    let loose = loose(chippers, shims);
    let (left, right) = loose.split_at(given / 2);
    let missing = nanometres(want) - outer.iter().copied().map(nanometres).sum::<i64>();
    let (left, right) = (subsets(left), subsets(right));
    let (below, above) = nearest(&left, &right, missing);
    let build = |off: i64| {
        let subset = simplest(&left, &right, missing, off).unwrap_or_default();
        (off, stack(outer, chippers, shims, subset.members))
    };
    let (below, above) = (below.map(build), above.map(build));
    let closest = [&below, &above]
        .into_iter()
        .flatten()
        .min_by_key(|(off, _)| off.abs());
    // One of the two is always there: the outer cutters alone are a stack, below or above.
    let nearest = closest.map_or_else(|| stack(outer, &[], &[], 0), |(_, stack)| stack.clone());
    let [below, above] = [below, above].map(|found| found.map(|(_, stack)| stack));
    Ok(Stacks {
        below,
        above,
        nearest,
    })
}

/// A chipper or a shim.
#[derive(Clone, Copy)]
struct Loose {
    nanometres: i64,
    shims: u8,
    /// Its bit in a [`Subset`].
    bit: u32,
}

fn loose(chippers: &[Mm], shims: &[Mm]) -> Vec<Loose> {
    let chippers = chippers.iter().map(|width| (width, 0));
    let shims = shims.iter().map(|width| (width, 1));
    chippers
        .chain(shims)
        .zip(0_u32..)
        .map(|((width, shims), place)| Loose {
            nanometres: nanometres(*width),
            shims,
            bit: 1 << place,
        })
        .collect()
}

/// In whole nanometres sums are exact, and so are 1/64 in, 0.001 in and 0.001 mm.
fn nanometres(length: Mm) -> i64 {
    (length.mm() * 1e6).round() as i64
}

/// Some of the loose pieces. The order of the fields is the order of preference.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
struct Subset {
    pieces: u8,
    shims: u8,
    /// A bit for each piece, the first the lowest.
    members: u32,
    nanometres: i64,
}

impl Subset {
    fn with(self, piece: Loose) -> Self {
        Self {
            pieces: self.pieces + 1,
            shims: self.shims + piece.shims,
            members: self.members | piece.bit,
            nanometres: self.nanometres + piece.nanometres,
        }
    }

    fn and(self, other: Self) -> Self {
        Self {
            pieces: self.pieces + other.pieces,
            shims: self.shims + other.shims,
            members: self.members | other.members,
            nanometres: self.nanometres + other.nanometres,
        }
    }
}

/// The best subset of `pieces` for each width they can make, by ascending width.
fn subsets(pieces: &[Loose]) -> Vec<Subset> {
    let mut found = vec![Subset::default()];
    for piece in pieces {
        let with: Vec<Subset> = found.iter().map(|subset| subset.with(*piece)).collect();
        found.extend(with);
        // Two ascending runs behind one another, which this sort merges in one go.
        found.sort_unstable_by_key(|subset| (subset.nanometres, *subset));
        found.dedup_by_key(|subset| subset.nanometres);
    }
    found
}

/// How many micrometres the two together are wider than what is missing.
fn off(one: &Subset, other: &Subset, missing: i64) -> i64 {
    const NANOMETRES: i64 = 1000;
    (one.nanometres + other.nanometres - missing + NANOMETRES / 2).div_euclid(NANOMETRES)
}

/// How far off the nearest unions of a subset of each half are: from below (≤ 0), from above (≥ 0).
fn nearest(left: &[Subset], right: &[Subset], missing: i64) -> (Option<i64>, Option<i64>) {
    let below = left.iter().filter_map(|one| {
        let not_above = right.partition_point(|other| off(one, other, missing) <= 0);
        right
            .get(not_above.checked_sub(1)?)
            .map(|other| off(one, other, missing))
    });
    let above = left.iter().filter_map(|one| {
        let short = right.partition_point(|other| off(one, other, missing) < 0);
        right.get(short).map(|other| off(one, other, missing))
    });
    (below.max(), above.min())
}

/// The simplest of the unions that are `wanted_off`.
///
/// For each subset of the left half, a run of the right one will do. As the left ones widen, that
/// run moves towards the narrower ones and never back, so the best of it is kept at the front of a
/// queue, with only those behind it that can still become the best.
fn simplest(left: &[Subset], right: &[Subset], missing: i64, wanted_off: i64) -> Option<Subset> {
    let mut run: VecDeque<&Subset> = VecDeque::new();
    let mut narrower = right.iter().rev().peekable();
    let best_with = |one: &Subset| {
        while let Some(other) = narrower.next_if(|other| off(one, other, missing) >= wanted_off) {
            while run.back().is_some_and(|worse| *worse > other) {
                run.pop_back();
            }
            run.push_back(other);
        }
        while run
            .front()
            .is_some_and(|wide| off(one, wide, missing) > wanted_off)
        {
            run.pop_front();
        }
        run.front().map(|other| one.and(**other))
    };
    left.iter().filter_map(best_with).min()
}

fn stack(outer: &[Mm], chippers: &[Mm], shims: &[Mm], members: u32) -> Stack {
    let used = |pieces: &[Mm], first: usize| -> Vec<Mm> {
        let is_used = |place: usize| members >> (first + place) & 1 == 1;
        pieces
            .iter()
            .enumerate()
            .filter(|(place, _)| is_used(*place))
            .map(|(_, width)| *width)
            .collect()
    };
    let (chippers, shims) = (used(chippers, 0), used(shims, chippers.len()));
    let width = outer.iter().chain(&chippers).chain(&shims).copied().sum();
    Stack {
        width,
        outer: outer.to_vec(),
        chippers,
        shims,
    }
}

#[cfg(test)]
mod tests;
