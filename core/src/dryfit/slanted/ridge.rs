//! What stands on the floor of a socket of the pin board, where passes of both turns cross.

use super::Point;
use super::piece::Piece;
use super::strip::clipped;

/// What stands on one floor.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Ridge {
    /// Its greatest height above the depth line, mm.
    pub(super) height: f64,
    /// Its area at the outer face, mm².
    pub(super) area: f64,
}

/// The lower of two floors is what is left. `clockwise` runs along `x + slope·u`, `anticlockwise` along
/// `x − slope·u`, and their difference is `2·slope·u`, from 0 at the outer face to `both` at the inner one.
pub(super) fn ridge(clockwise: &[Piece], anticlockwise: &[Piece], both: f64) -> Ridge {
    let mut ridge = Ridge::default();
    for a in clockwise {
        let meets = |b: &&Piece| a.to > b.from && a.from - b.to < both;
        for b in anticlockwise.iter().filter(meets) {
            if a.start.is_finite() || b.start.is_finite() {
                ridge.height = ridge.height.max(highest(a, b, both));
                ridge.area += area_at_outer(a, b);
            }
        }
    }
    ridge
}

/// The highest place of the lower of two pieces. Each is straight along its own direction, so it is at a
/// corner of what they share, or on a side of that where both are equally high.
fn highest(a: &Piece, b: &Piece, both: f64) -> f64 {
    let cell = [
        (a.from, b.from),
        (a.to, b.from),
        (a.to, b.to),
        (a.from, b.to),
    ];
    let cell = clipped(&cell, |(a, b)| a - b);
    let cell = clipped(&cell, |(a, b)| both - (a - b));
    let lower = |(x, y): Point| a.at(x).min(b.at(y));
    let difference = |(x, y): Point| a.at(x) - b.at(y);
    let next = cell.iter().cycle().skip(1);
    let heights = cell.iter().zip(next).flat_map(|(from, to)| {
        let (start, end) = (difference(*from), difference(*to));
        let crosses = start.is_finite() && end.is_finite() && (start < 0.0) != (end < 0.0);
        let equal = crosses.then(|| {
            let share = start / (start - end);
            lower((
                from.0 + (to.0 - from.0) * share,
                from.1 + (to.1 - from.1) * share,
            ))
        });
        [Some(lower(*from)), equal].into_iter().flatten()
    });
    heights.fold(0.0, f64::max)
}

/// Area under the lower of two pieces where both directions are at the outer face.
fn area_at_outer(a: &Piece, b: &Piece) -> f64 {
    let (from, to) = (a.from.max(b.from), a.to.min(b.to));
    if to <= from {
        return 0.0;
    }
    let lower = |x: f64| a.at(x).min(b.at(x));
    let (start, end) = (a.at(from) - b.at(from), a.at(to) - b.at(to));
    let trapezoid = |from: f64, to: f64| (lower(from) + lower(to)) / 2.0 * (to - from);
    if start.is_finite() && end.is_finite() && (start < 0.0) != (end < 0.0) {
        let middle = from + (to - from) * (start / (start - end));
        return trapezoid(from, middle) + trapezoid(middle, to);
    }
    trapezoid(from, to)
}
