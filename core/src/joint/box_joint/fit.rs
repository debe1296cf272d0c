//! The rounding rule: one board's stops are rounded to the dial, the other's are chosen against what
//! the first then really is, so that no gap is off by more than half a step, however many fingers.

use super::layout::Layout;
use super::passes::{Socket, passes};
use crate::cutter::Cutter;
use crate::dial::Scale;
use crate::joint::run::Run;
use crate::stop::Board;
use crate::units::Mm;

/// The passes of one socket.
#[derive(Clone, Copy, Debug)]
pub(super) struct Cleared {
    pub(super) space: usize,
    pub(super) run: Run,
}

/// The passes of both boards.
#[derive(Clone, Debug)]
pub(super) struct Fitted {
    pub(super) a: Vec<Cleared>,
    pub(super) b: Vec<Cleared>,
}

/// Chooses the passes of both boards.
pub(super) fn fit(layout: &Layout, cutter: &Cutter, scale: &Scale) -> Fitted {
    let leader = leader(layout, cutter, scale);
    let follower = if leader == Board::A {
        Board::B
    } else {
        Board::A
    };
    let half = layout.gap / 2.0;
    let led = clear(layout, leader, cutter, scale, |boundary, side| {
        boundary.place + half * side
    });
    let real = real_flanks(layout, &led, cutter, scale);
    let followed = clear(layout, follower, cutter, scale, |boundary, side| {
        real.get(boundary.index).copied().unwrap_or(boundary.place) + layout.gap * side
    });
    match leader {
        Board::A => Fitted {
            a: led,
            b: followed,
        },
        Board::B => Fitted {
            a: followed,
            b: led,
        },
    }
}

/// The board whose sockets leave a single stop no choice leads, since the other can adapt each flank.
fn leader(layout: &Layout, cutter: &Cutter, scale: &Scale) -> Board {
    let tight = |board| {
        layout.sockets(board).any(|space| {
            layout.is_inner(space)
                && (layout.width_of(space) + layout.gap).is_below(cutter.kerf() + scale.step())
        })
    };
    if tight(Board::B) && !tight(Board::A) {
        Board::B
    } else {
        Board::A
    }
}

struct Boundary {
    index: usize,
    place: Mm,
}

fn clear(
    layout: &Layout,
    board: Board,
    cutter: &Cutter,
    scale: &Scale,
    flank: impl Fn(Boundary, f64) -> Mm,
) -> Vec<Cleared> {
    let at = |index: usize, side| {
        flank(
            Boundary {
                index,
                place: layout.boundary(index),
            },
            side,
        )
    };
    let socket = |space: usize| match (space == 0, space + 1 == layout.count()) {
        (true, _) => Socket::OpenLeft { right: at(1, 1.0) },
        (_, true) => Socket::OpenRight {
            left: at(space, -1.0),
            edge: layout.width(),
        },
        _ => Socket::Inner {
            left: at(space, -1.0),
            right: at(space + 1, 1.0),
        },
    };
    layout
        .sockets(board)
        .map(|space| Cleared {
            space,
            run: passes(socket(space), cutter, scale),
        })
        .collect()
}

/// Where the leading board's flank really is at each boundary.
fn real_flanks(layout: &Layout, led: &[Cleared], cutter: &Cutter, scale: &Scale) -> Vec<Mm> {
    let mut flanks = layout.boundaries.clone();
    for cleared in led {
        let ends = [
            (cleared.space, scale.at(cleared.run.first())),
            (
                cleared.space + 1,
                scale.at(cleared.run.last()) + cutter.kerf(),
            ),
        ];
        for (index, place) in ends {
            if let Some(flank) = flanks.get_mut(index) {
                *flank = place;
            }
        }
    }
    flanks
}
