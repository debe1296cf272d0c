//! The text that is kept in the browser's store.

use serde::{Deserialize, Serialize};
use serde_json::Value;

use super::{LARGEST, Restored, Unreadable, VERSION};
use crate::state::State;

/// The key of the state in the browser's store.
pub const KEY: &str = "notchwright.state";
/// What the keys of texts that were set aside begin with; a number follows.
pub const ASIDE: &str = "notchwright.aside.";

#[derive(Serialize)]
struct Written<'a> {
    version: u32,
    state: &'a State,
}

#[derive(Deserialize)]
struct Read {
    version: u32,
    state: Value,
}

/// Writes a state.
#[must_use]
pub fn save(state: &State) -> String {
    let version = VERSION;
    // There is nothing in a state that JSON cannot hold; no text at all would be refused when read.
    serde_json::to_string(&Written { version, state }).unwrap_or_default()
}

/// Reads a state.
///
/// # Errors
/// [`Unreadable`] when nothing of it can be understood. What can is read, field by field.
pub fn restore(text: &str) -> Result<Restored, Unreadable> {
    if text.len() > LARGEST {
        return Err(Unreadable::TooLarge);
    }
    let read: Read = serde_json::from_str(text).map_err(|_| Unreadable::Damaged)?;
    super::restore(read.version, &read.state)
}
