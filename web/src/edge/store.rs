//! The browser's store. It may be forbidden, full, or wiped at any time.

use wasm_bindgen::{JsCast, JsValue};
use web_sys::{DomException, Storage};

use crate::keep::saved;

/// The store, and what the page last put there.
#[derive(Debug)]
pub(super) struct Store {
    storage: Option<Storage>,
    last: String,
    /// Whose turn the stored state is of, as far as this tab knows.
    turn: String,
    turns: u32,
    tab: String,
}

/// The key of a mark that every tab changes when it stores its state: short, so that it can be looked at
/// each time before the state is overwritten.
const TURN: &str = "notchwright.turn";

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
            turn: String::new(),
            turns: 0,
            tab: super::tabs::own_name(),
        };
        store.catch_up();
        if store.last.is_empty() {
            otherwise.clone_into(&mut store.last);
        }
        store
    }

    /// The stored state.
    pub(super) fn state(&self) -> Option<String> {
        self.storage.as_ref()?.get_item(saved::KEY).ok()?
    }

    /// Knows of what is stored now.
    pub(super) fn catch_up(&mut self) {
        self.last = self.state().unwrap_or_default();
        self.turn = self.stored_turn();
    }

    /// What another tab has stored without this one having been told, and would be lost when `text` is: a
    /// browser that freezes a tab does not tell it. It is known from now on.
    pub(super) fn overtaken_by(&mut self, text: &str) -> Option<String> {
        if self.last == text || self.stored_turn() == self.turn {
            return None;
        }
        let known = std::mem::take(&mut self.last);
        self.catch_up();
        let theirs = self.state()?;
        (theirs != known).then_some(theirs)
    }

    fn stored_turn(&self) -> String {
        let turn = self.storage.as_ref();
        let turn = turn.and_then(|storage| storage.get_item(TURN).ok()?);
        turn.unwrap_or_default()
    }

    /// Stores the state, if it has changed.
    pub(super) fn save(&mut self, text: &str) -> Result<(), Trouble> {
        if self.last == text {
            return Ok(());
        }
        self.turns = self.turns.wrapping_add(1);
        let turn = format!("{}.{}", self.tab, self.turns);
        // First the state: a tab that is told of the turn alone would find nothing new.
        self.put(saved::KEY, text)?;
        self.put(TURN, &turn)?;
        self.turn = turn;
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
