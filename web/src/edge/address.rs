//! The address, whose fragment carries the whole job.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use gloo_timers::callback::Timeout;
use wasm_bindgen::JsValue;

use crate::keep::link;
use crate::state::State;

/// Browsers refuse more than about a hundred changes of the address in half a minute.
const PAUSE_MS: u32 = 1000;

/// What the browser keeps with an address that the page itself wrote, across reloads too.
const OWN: &str = "notchwright";

/// The address, written once a second at most.
#[derive(Clone, Debug, Default)]
pub(super) struct Address {
    pending: Rc<RefCell<Option<State>>>,
    is_waiting: Rc<Cell<bool>>,
    is_held: Rc<Cell<bool>>,
}

impl Address {
    /// Has the address carry `state` before long.
    pub(super) fn write_soon(&self, state: &State) {
        self.pending.replace(Some(state.clone()));
        if self.is_waiting.replace(true) {
            return;
        }
        let later = self.clone();
        Timeout::new(PAUSE_MS, move || {
            later.is_waiting.set(false);
            later.flush();
        })
        .forget();
    }

    /// Has the address carry `state` at once.
    pub(super) fn write_now(&self, state: &State) {
        self.pending.replace(Some(state.clone()));
        self.flush();
    }

    /// Leaves the address as it is, or no longer does. While a page is left it must not be written: `WebKit`
    /// then keeps the old one, and forgets that the page itself wrote it.
    pub(super) fn hold(&self, is_held: bool) {
        self.is_held.set(is_held);
    }

    /// Writes what is waiting to be written: the page may be about to be wiped.
    pub(super) fn flush(&self) {
        if self.is_held.get() {
            return;
        }
        if let Some(state) = self.pending.take() {
            write(&link::write(&state));
        }
    }
}

fn write(wanted: &str) {
    if is_own() && fragment() == wanted {
        return;
    }
    let history = web_sys::window().and_then(|window| window.history().ok());
    if let Some(history) = history {
        // Where it is refused, the store still has everything.
        let _ = history.replace_state_with_url(&JsValue::from_str(OWN), "", Some(wanted));
    }
}

/// The fragment, `#` included.
pub(super) fn fragment() -> String {
    let hash = web_sys::window().and_then(|window| window.location().hash().ok());
    hash.unwrap_or_default()
}

/// The whole address.
pub(super) fn whole() -> String {
    let href = web_sys::window().and_then(|window| window.location().href().ok());
    href.unwrap_or_default()
}

/// The address without its fragment.
pub(super) fn home() -> String {
    let whole = whole();
    whole.split('#').next().unwrap_or_default().to_owned()
}

/// Whether the page itself wrote the present address.
pub(super) fn is_own() -> bool {
    let history = web_sys::window().and_then(|window| window.history().ok());
    let state = history.and_then(|history| history.state().ok());
    state.is_some_and(|state| state == OWN)
}
