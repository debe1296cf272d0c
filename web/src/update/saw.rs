//! Moves at the saw, and keeping its place when the plan becomes another.

use notchwright_core::stop::Set;

use crate::msg::SawMove;
use crate::state::{AtSaw, Step};

/// Makes a move through the sets of the current plan.
pub(super) fn make(at: &mut AtSaw, movement: SawMove, sets: &[Set]) {
    match movement {
        SawMove::Open => open(at, sets),
        SawMove::Next => next(at, sets),
        SawMove::Back => back(at, sets),
        SawMove::Jump(set, step) => {
            (at.set, at.step) = (set, step);
            keep_within(at, sets);
        }
        SawMove::Leave => at.open = false,
    }
}

/// Comes back to where this plan was left, and begins any other at its first set-up.
fn open(at: &mut AtSaw, sets: &[Set]) {
    if sets.is_empty() {
        return;
    }
    let plan = mark(sets);
    if at.plan != plan {
        *at = AtSaw {
            plan,
            ..AtSaw::default()
        };
    }
    at.open = true;
    keep_within(at, sets);
}

/// From the end, on is to leave, and to begin anew the next time.
fn next(at: &mut AtSaw, sets: &[Set]) {
    let following = match at.step {
        Step::SetUp => 0,
        Step::Stop(stop) => stop + 1,
        Step::Done => {
            *at = AtSaw::default();
            return;
        }
    };
    if following < stops(sets, at.set) {
        at.step = Step::Stop(following);
    } else if at.set + 1 < sets.len() {
        (at.set, at.step) = (at.set + 1, Step::SetUp);
    } else {
        at.step = Step::Done;
    }
}

fn back(at: &mut AtSaw, sets: &[Set]) {
    match at.step {
        Step::Stop(0) => at.step = Step::SetUp,
        Step::Stop(stop) => at.step = Step::Stop(stop - 1),
        Step::Done => at.step = last(stops(sets, at.set)),
        Step::SetUp => {
            if let Some(before) = at.set.checked_sub(1) {
                (at.set, at.step) = (before, last(stops(sets, before)));
            }
        }
    }
}

/// The place in a plan that has just become current: the same one, or the nearest there is.
///
/// Returns whether the plan is another than the one being cut.
pub(super) fn follow(at: &mut AtSaw, sets: &[Set]) -> bool {
    let plan = mark(sets);
    if !at.open || at.plan == plan {
        return false;
    }
    at.plan = plan;
    keep_within(at, sets);
    true
}

fn keep_within(at: &mut AtSaw, sets: &[Set]) {
    let last_set = sets.len().saturating_sub(1);
    at.set = if at.step == Step::Done {
        last_set
    } else {
        at.set.min(last_set)
    };
    let stops = stops(sets, at.set);
    if let Step::Stop(stop) = at.step
        && stop >= stops
    {
        at.step = last(stops);
    }
}

fn stops(sets: &[Set], set: usize) -> usize {
    sets.get(set).map_or(0, |set| set.stops.len())
}

fn last(stops: usize) -> Step {
    stops.checked_sub(1).map_or(Step::SetUp, Step::Stop)
}

/// A number that differs between plans that are set or cut differently (FNV-1a over micrometres).
fn mark(sets: &[Set]) -> u32 {
    let lengths = sets.iter().flat_map(|set| {
        let stops = set
            .stops
            .iter()
            .flat_map(|stop| [stop.at, stop.dial.reading]);
        [set.height, set.kerf].into_iter().chain(stops)
    });
    let bytes = lengths.flat_map(|length| ((length.mm() * 1000.0).round() as i64).to_le_bytes());
    bytes.fold(0x811c_9dc5, |mark, byte| {
        (mark ^ u32::from(byte)).wrapping_mul(0x0100_0193)
    })
}
