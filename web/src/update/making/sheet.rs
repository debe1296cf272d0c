//! The search for a layout of sheets, slice after slice, and the cuts that were made.
//!
//! What a search finds after so many rounds is the same however it is sliced, so that the page can go back to a
//! layout that somebody has begun to cut.

use std::rc::Rc;

use crate::answer::making::sheet::search;
use crate::answer::tools::MakingAnswer;
use crate::model::{Model, Searching};
use crate::msg::{Search, Tick};
use crate::state::fields::cutting;
use crate::state::{Entry, Making, Ticks};

/// Milliseconds that a slice should last, with what is shown of it.
const SLICE: f64 = 15.0;
/// Milliseconds for which nobody misses the number of rounds: showing the page takes as long as a few of them.
const UNSEEN: f64 = 200.0;
/// Rounds of the longest slice.
const MOST_ROUNDS: u32 = 64;

/// Does what is to be done with the search.
#[inline(never)]
pub(in crate::update) fn act(model: &mut Model, what: Search) {
    match what {
        Search::Stop => model.searching.is_stopped = true,
        Search::GoOn => {
            let steps = reached(model).unwrap_or(0);
            model.searching.is_stopped = false;
            model.searching.limit = steps.saturating_add(Searching::ROUNDS);
        }
        Search::Slice => {
            model.searching.is_due = false;
            if wants_more(model) {
                slice(model);
            }
        }
    }
}

/// Whether a slice is to follow; notes that it will.
#[inline(never)]
pub(in crate::update) fn goes_on(model: &mut Model) -> bool {
    if reached(model).is_none() {
        let is_due = model.searching.is_due;
        model.searching = Searching {
            is_due,
            ..Searching::default()
        };
    }
    let goes_on = !model.searching.is_due && wants_more(model);
    model.searching.is_due |= goes_on;
    goes_on
}

fn reached(model: &Model) -> Option<u32> {
    let sheet = &model.answer.making.as_ref()?.sheet;
    Some(sheet.reached.as_ref()?.steps)
}

/// The cuts that were made of a layout.
fn ticks(model: &Model) -> Option<Ticks> {
    Ticks::read(
        model
            .state
            .work
            .job
            .making
            .cutting
            .text(cutting::CUT.name()),
    )
}

fn wants_more(model: &Model) -> bool {
    let Some(making) = &model.answer.making else {
        return false;
    };
    let sheet = &making.sheet;
    let Some(reached) = &sheet.reached else {
        return sheet.can_search && sheet.refused.is_empty();
    };
    // Nobody wants another layout once this one is being cut.
    let is_begun = ticks(model).is_some_and(|ticks| sheet.is_of(ticks.of));
    let Searching {
        is_stopped, limit, ..
    } = model.searching;
    !(reached.done || is_stopped || is_begun) && reached.steps < limit
}

fn slice(model: &mut Model) {
    let Some(making) = model.answer.making.clone() else {
        return;
    };
    let now = model.now;
    let searching = &mut model.searching;
    let pace = match now - searching.began {
        lasted if lasted < SLICE => searching.pace.saturating_mul(2).min(MOST_ROUNDS),
        lasted if lasted > 2.0 * SLICE => (searching.pace / 2).max(1),
        _ => searching.pace,
    };
    (searching.pace, searching.began) = (pace, now);
    let limit = searching.limit;
    let reached = making.sheet.reached.as_ref();
    let steps = reached.map_or(0, |reached| reached.steps);
    // Not past a layout that is to be gone back to, nor past where it rests.
    let begun = ticks(model).map(|ticks| ticks.of.rounds);
    let stops = [begun, Some(limit)].into_iter().flatten();
    let rounds = stops
        .filter_map(|stop| stop.checked_sub(steps).filter(|left| *left > 0))
        .fold(pace, u32::min);
    let found = search(&model.state.work, &making, rounds);
    let plan = |making: &MakingAnswer| making.sheet.layout.plan.as_ref().map(Rc::as_ptr);
    let is_same = plan(&found) == plan(&making) && found.problems == making.problems;
    model.searching.is_quiet = is_same && now - model.searching.shown < UNSEEN;
    if !model.searching.is_quiet {
        model.searching.shown = now;
    }
    model.answer.making = Some(Rc::new(found));
}

/// Notes that a cut was made, or was not; those of another layout are forgotten.
pub(super) fn tick(making: &mut Making, tick: Tick) {
    let field = cutting::CUT.name();
    let before = Ticks::read(making.cutting.text(field));
    let before = before.filter(|ticks| ticks.of.layout == tick.of.layout);
    let ticks = before.unwrap_or_else(|| Ticks::none(tick.of));
    if let Some(text) = ticks.with(tick.cut, tick.is_made).write() {
        making.cutting.set(field, Entry::mm(&text));
    }
}
