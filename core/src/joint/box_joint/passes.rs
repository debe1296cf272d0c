//! Passes that clear one socket, as ticks of the dial.

use crate::cutter::Cutter;
use crate::dial::{Scale, Tick};
use crate::joint::run::Run;
use crate::units::Mm;

/// What one socket asks of the cutter; places are measured from the reference edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Socket {
    /// Between two pins.
    Inner { left: Mm, right: Mm },
    /// Open at the reference edge: only its right flank must land.
    OpenLeft { right: Mm },
    /// Open at the far edge of a board: only its left flank must land.
    OpenRight { left: Mm, edge: Mm },
}

/// Chooses the passes that clear a socket.
pub(super) fn passes(socket: Socket, cutter: &Cutter, scale: &Scale) -> Run {
    match socket {
        Socket::Inner { left, right } => inner(left, right, cutter, scale),
        Socket::OpenLeft { right } => {
            let landing = scale.nearest(right - cutter.kerf());
            let (strides, span) = run_off(scale.at(landing), cutter, scale);
            Run::spread(Tick(landing.0 - span), span, strides + 1)
        }
        Socket::OpenRight { left, edge } => {
            let landing = scale.nearest(left);
            let (strides, span) = run_off(edge - cutter.kerf() - scale.at(landing), cutter, scale);
            Run::spread(landing, span, strides + 1)
        }
    }
}

/// Passes for an inner socket of this width: one within a micrometre of the kerf, else
/// `⌈(w − kerf) / (kerf − overlap)⌉ + 1` (derived).
pub(super) fn usual_count(width: Mm, cutter: &Cutter) -> i64 {
    let beyond = width - cutter.kerf();
    if beyond.is_same(Mm::ZERO) {
        return 1;
    }
    // A quotient that noise left a hair above a whole number is that number.
    whole((beyond / cutter.stride() - 1e-9).ceil()) + 1
}

fn inner(left: Mm, right: Mm, cutter: &Cutter, scale: &Scale) -> Run {
    let first = scale.nearest(left);
    let last = scale.nearest(right - cutter.kerf());
    let usual = usual_count(right - left, cutter);
    if usual <= 1 || last <= first {
        // One stop sets both flanks: the best it can do is to share the error between them.
        return Run::single(scale.nearest((left + right - cutter.kerf()) / 2.0));
    }
    let span = last.0 - first.0;
    let widest = scale.steps_within(cutter.kerf()).max(1);
    let fewest_that_cover = (span + widest - 1) / widest + 1;
    let count = usual.max(fewest_that_cover).min(span + 1);
    Run::spread(first, span, count)
}

/// Strides, and the dial steps they make together, that carry the cutter over what is left to the edge.
fn run_off(left_over: Mm, cutter: &Cutter, scale: &Scale) -> (i64, i64) {
    let stride = scale.steps_within(cutter.stride()).max(1);
    // What is left must be less than the dry fit takes for a pin, however long a stride is.
    let needed = (left_over - Mm::constant(5e-10)) / (scale.step() * stride as f64);
    let strides = whole(needed.ceil()).max(0);
    (strides, strides * stride)
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a board's width over a kerf: thousands at most"
)]
fn whole(number: f64) -> i64 {
    number as i64
}
