//! The search for a layout of sheets beside the page: `www/searcher.js`, another thread with the same program.
//! Where there is none the page is told to search by itself.

use std::cell::Cell;
use std::rc::Rc;

use gloo_events::EventListener;
use js_sys::Array;
use notchwright_core::sheet::SearchReached;
use wasm_bindgen::{JsCast, JsValue};
use web_sys::{MessageEvent, Worker, WorkerOptions, WorkerType};
use yew::Callback;

use super::outside;
use crate::effect::Asked;
use crate::keep::saved;
use crate::msg::{Msg, Search};
use crate::state::State;

/// Whoever searches beside the page.
#[derive(Default)]
pub(super) enum Searcher {
    /// Nobody has been asked yet.
    #[default]
    Unasked,
    /// It works, as far as is known.
    Works(Works),
    /// It cannot be had here.
    Fails,
}

pub(super) struct Works {
    worker: Worker,
    /// Whether it has failed: a worker that never came takes questions too, and answers none.
    has_failed: Rc<Cell<bool>>,
    _heard: [EventListener; 3],
}

/// Asks for a slice of the search; what comes of it is sent to `emit`.
#[inline(never)]
pub(super) fn ask(searcher: &mut Searcher, emit: &Callback<Msg>, state: &State, asked: &Asked) {
    if matches!(searcher, Searcher::Unasked) {
        *searcher = start(emit).map_or(Searcher::Fails, Searcher::Works);
    }
    if let Searcher::Works(works) = searcher
        && !works.has_failed.get()
        && works.worker.post_message(&question(state, asked)).is_ok()
    {
        return;
    }
    *searcher = Searcher::Fails;
    outside::soon(emit.clone(), here());
}

/// The page is to search by itself.
fn here() -> Msg {
    Msg::Search(Search::Slice(None))
}

fn start(emit: &Callback<Msg>) -> Result<Works, JsValue> {
    let worker = match outside::own_searcher() {
        // From a file, browsers start no module on another thread; this is a plain script.
        Some(address) => Worker::new(&address)?,
        None => {
            let options = WorkerOptions::new();
            options.set_type(WorkerType::Module);
            Worker::new_with_options("searcher.js", &options)?
        }
    };
    let answered = emit.clone();
    let answered = EventListener::new(&worker, "message", move |event| {
        let answer = event.dyn_ref().map(MessageEvent::data);
        answered.emit(Msg::Search(Search::Slice(answer.and_then(|it| read(&it)))));
    });
    let has_failed = Rc::new(Cell::new(false));
    let failed = ["error", "messageerror"].map(|name| {
        let (emit, has_failed) = (emit.clone(), Rc::clone(&has_failed));
        EventListener::new(&worker, name, move |_| {
            has_failed.set(true);
            emit.emit(here());
        })
    });
    let [error, unread] = failed;
    Ok(Works {
        worker,
        has_failed,
        _heard: [answered, error, unread],
    })
}

fn question(state: &State, asked: &Asked) -> Array {
    let Asked { from, best, rounds } = asked;
    Array::of4(
        &saved::save(state).into(),
        &(*from).into(),
        &best.into(),
        &(*rounds).into(),
    )
}

/// What the search reached, for another thread.
pub(crate) fn write(reached: &SearchReached) -> Array {
    let SearchReached {
        steps,
        done,
        best,
        proven,
    } = reached;
    Array::of4(
        &(*steps).into(),
        &(*done).into(),
        &(*proven).into(),
        &best.into(),
    )
}

fn read(answer: &JsValue) -> Option<SearchReached> {
    let answer = answer.dyn_ref::<Array>()?;
    Some(SearchReached {
        // Written as a whole number.
        steps: answer.get(0).as_f64()? as u32,
        done: answer.get(1).as_bool()?,
        proven: answer.get(2).as_bool()?,
        best: answer.get(3).as_string()?,
    })
}
