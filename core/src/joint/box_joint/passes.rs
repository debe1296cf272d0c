//! Passes that clear one socket, as ticks of the dial.

use crate::cutter::Cutter;
use crate::dial::{Scale, Tick};
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

/// Ticks from the reference edge outwards; never empty.
pub(super) fn passes(socket: Socket, cutter: &Cutter, scale: &Scale) -> Vec<Tick> {
    match socket {
        Socket::Inner { left, right } => inner(left, right, cutter, scale),
        Socket::OpenLeft { right } => {
            let mut ticks = run_off(
                scale.nearest(right - cutter.kerf()),
                -1,
                cutter,
                scale,
                |at| !at.is_above(Mm::ZERO),
            );
            ticks.reverse();
            ticks
        }
        Socket::OpenRight { left, edge } => run_off(scale.nearest(left), 1, cutter, scale, |at| {
            !(at + cutter.kerf()).is_below(edge)
        }),
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

fn inner(left: Mm, right: Mm, cutter: &Cutter, scale: &Scale) -> Vec<Tick> {
    let first = scale.nearest(left);
    let last = scale.nearest(right - cutter.kerf());
    let usual = usual_count(right - left, cutter);
    if usual <= 1 || last <= first {
        // One stop sets both flanks: the best it can do is to share the error between them.
        return vec![scale.nearest((left + right - cutter.kerf()) / 2.0)];
    }
    let span = last.0 - first.0;
    let widest = scale.steps_within(cutter.kerf()).max(1);
    let fewest_that_cover = (span + widest - 1) / widest + 1;
    spread(first, span, usual.max(fewest_that_cover).min(span + 1))
}

fn spread(first: Tick, span: i64, count: i64) -> Vec<Tick> {
    let gaps = count - 1;
    (0..count)
        .map(|i| Tick(first.0 + (2 * i * span + gaps) / (2 * gaps)))
        .collect()
}

fn run_off(
    landing: Tick,
    sign: i64,
    cutter: &Cutter,
    scale: &Scale,
    clear: impl Fn(Mm) -> bool,
) -> Vec<Tick> {
    let stride = scale.steps_within(cutter.stride()).max(1);
    let mut ticks = vec![landing];
    let mut tick = landing;
    while !clear(scale.at(tick)) {
        tick = Tick(tick.0 + sign * stride);
        ticks.push(tick);
    }
    ticks
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "a board's width over a kerf: thousands at most"
)]
fn whole(number: f64) -> i64 {
    number as i64
}
