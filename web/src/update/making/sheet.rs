//! The search for a layout of sheets, slice after slice, and the cuts that were made.
//!
//! What a search finds after so many rounds is the same however it is sliced, so that the page can go back to a
//! layout that somebody has begun to cut.

use std::rc::Rc;

use notchwright_core::sheet::{SearchReached, SheetLayoutRequest};

use crate::answer::making::sheet::{search, take};
use crate::answer::tools::MakingAnswer;
use crate::effect::Asked;
use crate::model::{Model, Searching};
use crate::msg::{Search, Tick};
use crate::state::fields::cutting;
use crate::state::{Entry, Making, Ticks};

/// Milliseconds that a slice should last beside the page: as often the progress is shown.
const SLICE_BESIDE: f64 = 200.0;
/// Milliseconds that a slice should last in the page, with what is shown of it.
const SLICE: f64 = 15.0;
/// Milliseconds for which nobody misses the number of rounds: showing the page takes as long as a few of them.
const UNSEEN: f64 = 150.0;

/// Does what is to be done with the search.
#[inline(never)]
pub(in crate::update) fn act(model: &mut Model, what: Search) {
    match what {
        Search::Stop => model.searching.is_stopped = true,
        Search::GoOn => {
            let steps = rounds_made(model);
            model.searching.is_stopped = false;
            model.searching.limit = steps.saturating_add(Searching::ROUNDS);
        }
        Search::Slice(found) => {
            let due = model.searching.due.take();
            let is_of_use = found.is_none() || is_due(model, due.as_ref());
            if is_of_use && wants_more(model) {
                slice(model, found);
            }
        }
    }
}

/// The slice that is to follow; notes that it will.
#[inline(never)]
pub(in crate::update) fn goes_on(model: &mut Model) -> Option<Asked> {
    if reached(model).is_none() {
        let before = std::mem::take(&mut model.searching);
        model.searching = Searching {
            due: before.due,
            is_beside: before.is_beside,
            ..Searching::default()
        };
    }
    if model.searching.due.is_some() || !wants_more(model) {
        return None;
    }
    let request = Rc::clone(&model.answer.making.as_ref()?.sheet.request);
    let asked = Asked {
        from: rounds_made(model),
        best: reached(model).map_or_else(String::new, |reached| reached.best.clone()),
        rounds: rounds(model),
    };
    model.searching.began = model.now;
    model.searching.due = Some(request);
    Some(asked)
}

fn reached(model: &Model) -> Option<&SearchReached> {
    model.answer.making.as_ref()?.sheet.reached.as_ref()
}

fn rounds_made(model: &Model) -> u32 {
    reached(model).map_or(0, |reached| reached.steps)
}

/// The cuts that were made of a layout.
fn ticks(model: &Model) -> Option<Ticks> {
    let cutting = &model.state.work.job.making.cutting;
    Ticks::read(cutting.text(cutting::CUT.name()))
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

/// Whether what was asked for is still wanted.
fn is_due(model: &Model, asked: Option<&Rc<SheetLayoutRequest>>) -> bool {
    let making = model.answer.making.as_ref();
    let both = making.zip(asked);
    both.is_some_and(|(making, asked)| Rc::ptr_eq(&making.sheet.request, asked))
}

/// Rounds of the next slice: not past a layout that is to be gone back to, nor past where the search rests.
fn rounds(model: &Model) -> u32 {
    let from = rounds_made(model);
    let begun = ticks(model).map(|ticks| ticks.of.rounds);
    let stops = [begun, Some(model.searching.limit)].into_iter().flatten();
    stops
        .filter_map(|stop| stop.checked_sub(from).filter(|left| *left > 0))
        .fold(model.searching.pace, u32::min)
}

fn slice(model: &mut Model, found: Option<SearchReached>) {
    let Some(making) = model.answer.making.clone() else {
        return;
    };
    let now = model.now;
    let rounds = rounds(model);
    let searching = &mut model.searching;
    // The first that comes to be made here was asked for as one beside.
    let is_new_here = found.is_none() && std::mem::replace(&mut searching.is_beside, false);
    searching.pace = match (now - searching.began) / span(searching) {
        _ if is_new_here => 1,
        lasted if lasted < 1.0 => searching.pace.saturating_mul(2),
        lasted if lasted > 2.0 => (searching.pace / 2).max(1),
        _ => searching.pace,
    };
    let work = &model.state.work;
    let found = match found {
        Some(found) => take(work, &making, Ok(found)),
        None if is_new_here => search(work, &making, 1),
        None => search(work, &making, rounds),
    };
    let plan = |making: &MakingAnswer| making.sheet.layout.plan.as_ref().map(Rc::as_ptr);
    let is_same = plan(&found) == plan(&making) && found.problems == making.problems;
    searching.is_quiet = is_same && now - searching.shown < UNSEEN;
    if !searching.is_quiet {
        searching.shown = now;
    }
    model.answer.making = Some(Rc::new(found));
}

fn span(searching: &Searching) -> f64 {
    if searching.is_beside {
        SLICE_BESIDE
    } else {
        SLICE
    }
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
