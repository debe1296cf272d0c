//! From rows of passes to the sets of a dovetail, in the order of use.

use super::check::Job;
use super::cut::Passes;
use super::scales::Scales;
use crate::cutter::Cutter;
use crate::dial::Scale;
use crate::joint::stops::{Row, in_order_of_use};
use crate::stop::{Board, Set};
use crate::units::Mm;

/// Every set that has a pass: the tail board's, then the pin board's.
///
/// Clockwise and anticlockwise are as seen from above with the pin board's outer face towards the operator
/// and its reference edge at the operator's left. With the outer face away, or the reference edge at the
/// right, each is the other; with both, they are as named.
pub(super) fn sets(job: &Job, passes: &Passes, scales: &Scales) -> Vec<Set> {
    let (slope, tools) = (job.slope(), &job.tools);
    let tail = SetUp {
        name: "Tail board, blade leaning",
        board: Board::A,
        tilt_degrees: slope.degrees,
        yaw_degrees: 0.0,
        flipped: false,
        height: job.depth(),
        cutter: &tools.cutter,
        scale: &scales.leaning,
    };
    let turned_over = SetUp {
        name: "Tail board, turned over",
        flipped: true,
        ..tail
    };
    let upright = SetUp {
        name: "Tail board, blade upright",
        tilt_degrees: 0.0,
        cutter: &tools.pin_cutter,
        scale: &scales.upright,
        ..tail
    };
    let clockwise = SetUp {
        name: "Pin board, turned clockwise",
        board: Board::B,
        yaw_degrees: slope.degrees,
        height: job.boards.depth_b(),
        scale: &scales.clockwise,
        ..upright
    };
    let anticlockwise = SetUp {
        name: "Pin board, turned anticlockwise",
        yaw_degrees: -slope.degrees,
        scale: &scales.anticlockwise,
        ..clockwise
    };
    let all = [
        (tail, &passes.leaning),
        (turned_over, &passes.turned_over),
        (upright, &passes.upright),
        (clockwise, &passes.pins_clockwise),
        (anticlockwise, &passes.pins_anticlockwise),
    ];
    all.into_iter()
        .filter(|(_, rows)| !rows.is_empty())
        .map(|(set_up, rows)| set_up.set(rows))
        .collect()
}

/// One set-up of saw and board.
#[derive(Clone, Copy)]
struct SetUp<'a> {
    name: &'static str,
    board: Board,
    tilt_degrees: f64,
    yaw_degrees: f64,
    flipped: bool,
    height: Mm,
    cutter: &'a Cutter,
    scale: &'a Scale,
}

impl SetUp<'_> {
    fn set(&self, rows: &[Row]) -> Set {
        let (run_up, stops) = in_order_of_use(rows, self.scale);
        Set {
            name: self.name.to_owned(),
            board: self.board,
            tilt_degrees: self.tilt_degrees,
            yaw_degrees: self.yaw_degrees,
            flipped: self.flipped,
            height: self.height,
            kerf: self.cutter.kerf(),
            ridge: self.cutter.grind().ridge(self.cutter.kerf()),
            divisions: self.scale.screw().divisions(),
            run_up,
            stops,
        }
    }
}
