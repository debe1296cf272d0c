//! Moves at the saw, and keeping its place when the plan becomes another.

use notchwright_core::stop::Set;

use crate::answer::course::{Course, Load};
use crate::msg::SawMove;
use crate::state::{Done, End, Progress, Step};

/// Makes a move along the course; whether to leave the saw is for the caller.
pub(super) fn make(at: &mut Progress, movement: SawMove, course: &Course<'_>) {
    match movement {
        SawMove::Open => open(at, course),
        SawMove::Next => next(at, course),
        SawMove::Back => back(at, course),
        SawMove::Jump(set, step) => {
            (at.set, at.step) = (set, step);
            keep_within(at, course);
        }
        SawMove::Take(end) => {
            at.end = end;
            at.step = first_step(course, at.set);
            keep_within(at, course);
        }
        SawMove::Mark(end, is_done) => {
            if let Some(load) = course.load(at.set, end) {
                load.mark(&mut at.done, is_done);
            }
        }
        SawMove::Anew => anew(at),
        SawMove::Leave | SawMove::Pause(_) => {}
    }
    at.of = course.cuttings();
}

/// Comes back to where this plan was left, and begins any other at its first set-up; what has been cut by
/// another plan stays cut.
fn open(at: &mut Progress, course: &Course<'_>) {
    let plan = mark(course.sets());
    if at.plan != plan {
        *at = Progress {
            joint: at.joint,
            plan,
            done: std::mem::take(&mut at.done),
            ..Progress::default()
        };
    }
    keep_within(at, course);
}

/// Back to the first set-up, with nothing cut.
fn anew(at: &mut Progress) {
    *at = Progress {
        joint: at.joint,
        plan: at.plan,
        ..Progress::default()
    };
}

/// From the end, on is to leave. Where nothing tells one end from the next, the next time begins anew.
fn next(at: &mut Progress, course: &Course<'_>) {
    match at.step {
        Step::SetUp => {
            at.end = due(course, at.set, None, &at.done).unwrap_or_default();
            at.step = first_step(course, at.set);
        }
        Step::Board => at.step = Step::Stop(0),
        Step::Stop(stop) => {
            let Some(load) = course.load(at.set, at.end) else {
                return;
            };
            if stop + 1 < course.passes(at.set, &load).len() {
                at.step = Step::Stop(stop + 1);
            } else {
                load.mark(&mut at.done, true);
                after(at, &load, course);
            }
        }
        Step::Done if (0..course.legs()).all(|leg| course.loads(leg).len() <= 1) => anew(at),
        Step::Done => {}
    }
}

/// On to the next end that has not been cut in this set-up, or to the next set-up that has one.
fn after(at: &mut Progress, load: &Load, course: &Course<'_>) {
    if let Some(end) = due(course, at.set, Some(load.end), &at.done) {
        at.end = end;
        at.step = first_step(course, at.set);
        return;
    }
    let legs = course.legs();
    let later = (at.set + 1..legs).chain(0..at.set);
    let due = later
        .into_iter()
        .find_map(|leg| Some((leg, due(course, leg, None, &at.done)?)));
    match due {
        Some((leg, end)) => (at.set, at.end, at.step) = (leg, end, Step::SetUp),
        None => at.step = Step::Done,
    }
}

/// The first end that has not been cut in set-up `leg`: after `from`, or else from the beginning.
fn due(course: &Course<'_>, leg: usize, from: Option<End>, done: &Done) -> Option<End> {
    let loads = course.loads(leg);
    let place = loads.iter().position(|load| Some(load.end) == from);
    let (before, after) = loads.split_at(place.map_or(0, |place| place + 1));
    let mut all = after.iter().chain(before);
    all.find(|load| !load.is_done(done)).map(|load| load.end)
}

/// Where several ends are cut alike, each is put on the carriage first.
fn first_step(course: &Course<'_>, leg: usize) -> Step {
    if course.loads(leg).len() > 1 {
        Step::Board
    } else {
        Step::Stop(0)
    }
}

fn back(at: &mut Progress, course: &Course<'_>) {
    match at.step {
        Step::Stop(0) if first_step(course, at.set) == Step::Board => at.step = Step::Board,
        Step::Stop(0) => at.step = Step::SetUp,
        Step::Stop(stop) => at.step = Step::Stop(stop - 1),
        Step::Board => {
            let loads = course.loads(at.set);
            let place = loads.iter().position(|load| load.end == at.end);
            match place.and_then(|place| place.checked_sub(1)) {
                Some(before) => reopen(at, loads.get(before), course),
                None => at.step = Step::SetUp,
            }
        }
        Step::Done => {
            at.set = course.legs().saturating_sub(1);
            reopen(at, course.loads(at.set).last(), course);
        }
        Step::SetUp => {
            if let Some(before) = at.set.checked_sub(1) {
                at.set = before;
                reopen(at, course.loads(before).last(), course);
            }
        }
    }
}

/// Goes back to the last pass of a load, which then no longer counts as cut.
fn reopen(at: &mut Progress, load: Option<&Load>, course: &Course<'_>) {
    let Some(load) = load else { return };
    load.mark(&mut at.done, false);
    at.end = load.end;
    at.step = last(course.passes(at.set, load).len());
}

/// The place in a plan that has just become current: the same one, or the nearest there is.
///
/// Returns whether the plan is another than the one being cut.
pub(super) fn follow(at: &mut Progress, course: &Course<'_>) -> bool {
    let plan = mark(course.sets());
    let is_another = at.plan != plan;
    at.plan = plan;
    keep_within(at, course);
    is_another
}

fn keep_within(at: &mut Progress, course: &Course<'_>) {
    let last_set = course.legs().saturating_sub(1);
    at.set = if at.step == Step::Done {
        last_set
    } else {
        at.set.min(last_set)
    };
    let Some(load) = course.load(at.set, at.end) else {
        return;
    };
    at.end = load.end;
    let passes = course.passes(at.set, &load).len();
    match at.step {
        Step::Stop(stop) if stop >= passes => at.step = last(passes),
        Step::Board => at.step = first_step(course, at.set),
        _ => {}
    }
}

fn last(stops: usize) -> Step {
    stops.checked_sub(1).map_or(Step::SetUp, Step::Stop)
}

/// A number that differs between plans that are set or cut differently (FNV-1a over micrometres).
pub(super) fn mark(sets: &[Set]) -> u32 {
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
