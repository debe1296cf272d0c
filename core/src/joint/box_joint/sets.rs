//! From ticks to sets of stops in the order of use.

use super::fit::Cleared;
use crate::cutter::Cutter;
use crate::dial::Scale;
use crate::joint::stops::{Row, in_order_of_use};
use crate::stop::{Board, Set};
use crate::units::Mm;

/// The set of one board cut on end by an upright blade.
pub(super) fn upright_set(
    board: Board,
    cleared: &[Cleared],
    height: Mm,
    cutter: &Cutter,
    scale: &Scale,
) -> Set {
    let rows: Vec<_> = cleared
        .iter()
        .enumerate()
        .map(|(socket, cleared)| Row {
            space: cleared.space,
            socket,
            run: cleared.run,
        })
        .collect();
    let (run_up, stops) = in_order_of_use(&rows, scale);
    let name = if board == Board::A {
        "Board A"
    } else {
        "Board B"
    };
    Set {
        name: name.to_owned(),
        board,
        tilt_degrees: 0.0,
        yaw_degrees: 0.0,
        flipped: false,
        height,
        kerf: cutter.kerf(),
        ridge: cutter.grind().ridge(cutter.kerf()),
        divisions: scale.screw().divisions(),
        run_up,
        stops,
    }
}
