//! From ticks to sets of stops in the order of use.

use super::fit::Cleared;
use crate::cutter::Cutter;
use crate::dial::{Scale, Tick};
use crate::stop::{Board, Reading, Set, Stop};
use crate::units::Mm;

/// The set of one board cut on end by an upright blade.
pub(super) fn upright_set(
    board: Board,
    cleared: &[Cleared],
    height: Mm,
    cutter: &Cutter,
    scale: &Scale,
) -> Set {
    let mut passes = in_order_of_use(cleared, scale);
    let mut before = 0;
    let stops = passes
        .drain(..)
        .enumerate()
        .map(|(index, pass)| {
            let dial = scale.reading(pass.tick);
            let steps = scale.steps_to(pass.tick);
            let travel = scale.reading_of(steps - before);
            before = steps;
            Stop {
                number: index + 1,
                at: scale.at(pass.tick),
                dial,
                travel: travel.reading,
                move_turns: travel.turns,
                move_division: travel.division,
                space: pass.space,
                socket: pass.socket,
                pass: pass.number,
                passes: pass.of,
            }
        })
        .collect::<Vec<_>>();
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
        run_up: run_up(stops.first(), scale),
        stops,
    }
}

struct Pass {
    tick: Tick,
    space: usize,
    socket: usize,
    number: usize,
    of: usize,
}

/// Readings must rise, so on a screw that runs towards the reference edge the far socket comes first.
fn in_order_of_use(cleared: &[Cleared], scale: &Scale) -> Vec<Pass> {
    let mut passes: Vec<Pass> = cleared
        .iter()
        .enumerate()
        .flat_map(|(socket, cleared)| {
            let of = cleared.run.len();
            cleared.run.ticks().enumerate().map(move |(i, tick)| Pass {
                tick,
                space: cleared.space,
                socket,
                number: i + 1,
                of,
            })
        })
        .collect();
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
    let steps = scale.steps_within(below) + 1;
    let first = first.map_or(0, |stop| scale.steps_of(stop.dial.reading));
    scale.reading_of(first - steps)
}
