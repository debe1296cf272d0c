//! From rows of passes to stops in the order of use.

use super::run::Run;
use crate::dial::{Scale, Tick};
use crate::stop::{Reading, Stop};

/// The passes of one socket in one set.
#[derive(Clone, Copy, Debug)]
pub(super) struct Row {
    /// Which space of the layout it is.
    pub(super) space: usize,
    /// Which socket of its board that is.
    pub(super) socket: usize,
    /// Its passes.
    pub(super) run: Run,
}

/// Where to run back to before the first stop, and the stops; the rows come from the edge at the stop outwards.
pub(super) fn in_order_of_use(rows: &[Row], scale: &Scale) -> (Reading, Vec<Stop>) {
    let mut before = 0;
    let stops: Vec<_> = passes(rows, scale)
        .into_iter()
        .enumerate()
        .map(|(index, pass)| {
            let steps = scale.steps_to(pass.tick);
            let travel = scale.reading_of(steps - before);
            before = steps;
            Stop {
                number: index + 1,
                at: scale.at(pass.tick),
                dial: scale.reading(pass.tick),
                travel: travel.reading,
                move_turns: travel.turns,
                move_division: travel.division,
                space: pass.space,
                socket: pass.socket,
                pass: pass.number,
                passes: pass.of,
            }
        })
        .collect();
    (run_up(stops.first(), scale), stops)
}

struct Pass {
    tick: Tick,
    space: usize,
    socket: usize,
    number: usize,
    of: usize,
}

/// Readings must rise, so on a screw that runs towards the reference edge the far socket comes first.
fn passes(rows: &[Row], scale: &Scale) -> Vec<Pass> {
    let of_row = |row: &Row| {
        let (space, socket, of) = (row.space, row.socket, row.run.len());
        row.run.ticks().enumerate().map(move |(i, tick)| Pass {
            tick,
            space,
            socket,
            number: i + 1,
            of,
        })
    };
    let mut passes: Vec<Pass> = rows.iter().flat_map(of_row).collect();
    if scale.steps_to(Tick(1)) < 0 {
        passes.reverse();
        for pass in &mut passes {
            pass.number = pass.of + 1 - pass.number;
        }
    }
    passes
}

/// Below the first stop by the backlash and a quarter turn more, so that play is taken up on the way back.
fn run_up(first: Option<&Stop>, scale: &Scale) -> Reading {
    let below = scale.screw().backlash() + scale.screw().lead() / 4.0;
    let along_the_board = below * (scale.spacing() / scale.step());
    let steps = scale.steps_within(along_the_board) + 1;
    let first = first.map_or(0, |stop| scale.steps_of(stop.dial.reading));
    scale.reading_of(first - steps)
}
