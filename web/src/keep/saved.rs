//! The text that is kept in the browser's store.

use notchwright_core::plain::Plain;

use super::{LARGEST, Restored, Unreadable, VERSION, json};
use crate::state::{State, Stored, field};

/// The key of the state in the browser's store.
pub const KEY: &str = "notchwright.state";
/// What the keys of texts that were set aside begin with; a number follows.
pub const ASIDE: &str = "notchwright.aside.";

/// Writes a state.
#[must_use]
pub fn save(state: &State) -> String {
    let version = ("version".to_owned(), VERSION.write());
    let state = ("state".to_owned(), state.write());
    json::write(&Plain::Object(vec![version, state]))
}

/// Reads a state.
///
/// # Errors
/// [`Unreadable`] when nothing of it can be understood. What can is read, field by field.
pub fn restore(text: &str) -> Result<Restored, Unreadable> {
    if text.len() > LARGEST {
        return Err(Unreadable::TooLarge);
    }
    let Some(Plain::Object(fields)) = json::read(text.as_bytes()) else {
        return Err(Unreadable::Damaged);
    };
    let mut version = 0_u32;
    match (field(&fields, "version"), field(&fields, "state")) {
        (Some(number), Some(state)) if version.read(number) => {
            super::restore(version, state.clone())
        }
        _ => Err(Unreadable::Damaged),
    }
}
