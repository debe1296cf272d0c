//! Which of the cutters in a box add up to a groove.
//!
//! A grooving stack is its outer cutters, always all of them, with chippers between and shims to
//! trim; widths add. Every subset of the loose pieces is a candidate, 2³² at worst, so they are
//! dealt into two halves, each half's subsets are listed by width (2¹⁶ at most), and for each
//! subset of the one the fitting subsets of the other are found by bisection.

use core::fmt;

use crate::units::Mm;

/// More chippers and shims together than this are refused: it keeps the search to a few
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
    let (below, above) = nearest(&subsets(left), &subsets(right), missing);
    let build = |choice: Choice| stack(outer, chippers, shims, choice.subset.members);
    let closest = [below, above]
        .into_iter()
        .flatten()
        .min_by_key(|choice| choice.off.abs());
    Ok(Stacks {
        below: below.map(build),
        above: above.map(build),
        // One of the two is always there; the bare outer cutters are a stack as well.
        nearest: build(closest.unwrap_or_default()),
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
        found.sort_by_key(|subset| (subset.nanometres, *subset));
        found.dedup_by_key(|subset| subset.nanometres);
    }
    found
}

/// A subset, and how many micrometres it is wider than what is missing.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
struct Choice {
    off: i64,
    subset: Subset,
}

impl Choice {
    fn of(subset: Subset, missing: i64) -> Self {
        const NANOMETRES: i64 = 1000;
        let off = (subset.nanometres - missing + NANOMETRES / 2).div_euclid(NANOMETRES);
        Self { off, subset }
    }

    fn better(self, other: Option<Self>) -> Self {
        match other {
            Some(other) if (other.off.abs(), other.subset) <= (self.off.abs(), self.subset) => {
                other
            }
            _ => self,
        }
    }
}

/// The unions of a subset of each half that come nearest `missing` from below and from above.
fn nearest(left: &[Subset], right: &[Subset], missing: i64) -> (Option<Choice>, Option<Choice>) {
    let (mut below, mut above) = (None, None);
    for subset in left {
        let choice = |other: &Subset| Choice::of(subset.and(*other), missing);
        let not_above = right.partition_point(|other| choice(other).off <= 0);
        let under = right.iter().take(not_above).rev().map(choice);
        below = best_of_nearest(under, below);
        let short = right.partition_point(|other| choice(other).off < 0);
        let over = right.iter().skip(short).map(choice);
        above = best_of_nearest(over, above);
    }
    (below, above)
}

/// The best of the choices that are as near as the first, or what was found `before` if that is better.
fn best_of_nearest(
    choices: impl Iterator<Item = Choice>,
    before: Option<Choice>,
) -> Option<Choice> {
    let mut choices = choices.peekable();
    let nearest = choices.peek().map(|choice| choice.off);
    if matches!((nearest, before), (Some(off), Some(found)) if off.abs() > found.off.abs()) {
        return before;
    }
    choices
        .take_while(|choice| Some(choice.off) == nearest)
        .fold(before, |best, choice| Some(choice.better(best)))
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
