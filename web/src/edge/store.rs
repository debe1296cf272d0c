//! The browser's store. It may be forbidden, full, or wiped at any time.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, Storage};

use crate::keep::saved;

/// The store, and what the page last put there.
#[derive(Debug)]
pub(super) struct Store {
    storage: Option<Storage>,
    last: String,
}

/// Why something was not stored.
#[derive(Clone, Copy, Debug)]
pub(super) enum Trouble {
    /// This browser stores nothing for the page.
    Blocked,
    /// There is no room.
    Full,
}

impl Store {
    /// The store; while it is empty, `otherwise` need not be put there.
    pub(super) fn open(otherwise: &str) -> Self {
        let storage = web_sys::window().and_then(|window| window.local_storage().ok()?);
        let mut store = Self {
            storage,
            last: String::new(),
        };
        store.last = store.state().unwrap_or_else(|| otherwise.to_owned());
        store
    }

    /// The stored state.
    pub(super) fn state(&self) -> Option<String> {
        self.storage.as_ref()?.get_item(saved::KEY).ok()?
    }

    /// Stores the state, if it has changed.
    pub(super) fn save(&mut self, text: &str) -> Result<(), Trouble> {
        if self.last == text {
            return Ok(());
        }
        self.put(saved::KEY, text)?;
        text.clone_into(&mut self.last);
        Ok(())
    }

    /// Texts that were set aside, by key.
    pub(super) fn asides(&self) -> Vec<(String, String)> {
        let Some(storage) = &self.storage else {
            return Vec::new();
        };
        let keys = (0..storage.length().unwrap_or(0)).filter_map(|i| storage.key(i).ok()?);
        keys.filter(|key| key.starts_with(saved::ASIDE))
            .filter_map(|key| {
                let text = storage.get_item(&key).ok()??;
                Some((key, text))
            })
            .collect()
    }

    /// Stores a text under a key of its own.
    pub(super) fn keep_aside(&self, key: &str, text: &str) -> Result<(), Trouble> {
        self.put(key, text).or_else(|trouble| {
            // There may be no room for a copy of the stored state, but there is for the state itself.
            let storage = self.storage.as_ref().ok_or(trouble)?;
            if self.state().as_deref() != Some(text) || storage.remove_item(saved::KEY).is_err() {
                return Err(trouble);
            }
            self.put(key, text)
        })
    }

    /// Removes such a text.
    pub(super) fn drop_aside(&self, key: &str) {
        if let Some(storage) = &self.storage {
            // A store that cannot forget it will offer it again: nothing is lost by that.
            let _ = storage.remove_item(key);
        }
    }

    fn put(&self, key: &str, text: &str) -> Result<(), Trouble> {
        let storage = self.storage.as_ref().ok_or(Trouble::Blocked)?;
        storage.set_item(key, text).map_err(|error| trouble(&error))
    }
}

fn trouble(error: &JsValue) -> Trouble {
    let is_full = error
        .dyn_ref::<DomException>()
        .is_some_and(|error| error.code() == DomException::QUOTA_EXCEEDED_ERR);
    if is_full {
        Trouble::Full
    } else {
        Trouble::Blocked
    }
}
