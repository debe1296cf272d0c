//! Keeping the screen awake.
//!
//! Reached by name, since the bindings count the interface as unstable. The browser lets go of the
//! lock whenever the page is hidden, so it is asked for again when the page comes back.

use std::cell::{Cell, RefCell};
use std::rc::Rc;

use js_sys::{Function, Promise, Reflect};
use wasm_bindgen::{JsCast, JsValue};
use wasm_bindgen_futures::{JsFuture, spawn_local};
use yew::Callback;

use crate::msg::Msg;
use crate::notice::Notice;

/// The lock on the screen, held while it is wanted.
#[derive(Clone, Debug)]
pub(super) struct WakeLock {
    is_wanted: Rc<Cell<bool>>,
    has_complained: Rc<Cell<bool>>,
    held: Rc<RefCell<Option<JsValue>>>,
    emit: Callback<Msg>,
}

impl WakeLock {
    pub(super) fn new(emit: Callback<Msg>) -> Self {
        Self {
            is_wanted: Rc::default(),
            has_complained: Rc::default(),
            held: Rc::default(),
            emit,
        }
    }

    /// Keeps the screen awake from now on, or no longer.
    pub(super) fn keep(&self, is_wanted: bool) {
        if self.is_wanted.replace(is_wanted) == is_wanted {
            return;
        }
        if is_wanted {
            self.acquire();
        } else {
            self.release();
        }
    }

    /// Asks again for the lock that the browser took while the page was hidden.
    pub(super) fn renew(&self) {
        if self.is_wanted.get() {
            self.acquire();
        }
    }

    fn acquire(&self) {
        let lock = self.clone();
        spawn_local(async move {
            match request().await {
                Ok(sentinel) => {
                    lock.release();
                    lock.held.replace(Some(sentinel));
                    if !lock.is_wanted.get() {
                        lock.release();
                    }
                }
                Err(_) if !lock.has_complained.replace(true) => {
                    lock.emit.emit(Msg::Say(Notice::ScreenMaySleep));
                }
                Err(_) => {}
            }
        });
    }

    fn release(&self) {
        if let Some(sentinel) = self.held.take() {
            // A lock that the browser has taken already cannot be given back: that is no trouble.
            let _ = call(&sentinel, "release", None);
        }
    }
}

async fn request() -> Result<JsValue, JsValue> {
    let navigator = web_sys::window().ok_or(JsValue::NULL)?.navigator();
    let wake_lock = Reflect::get(&navigator, &"wakeLock".into())?;
    let promise = call(&wake_lock, "request", Some("screen"))?;
    JsFuture::from(promise.dyn_into::<Promise>()?).await
}

fn call(object: &JsValue, method: &str, argument: Option<&str>) -> Result<JsValue, JsValue> {
    let method: Function = Reflect::get(object, &method.into())?.dyn_into()?;
    match argument {
        Some(argument) => method.call1(object, &argument.into()),
        None => method.call0(object),
    }
}
