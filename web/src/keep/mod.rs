//! The state as it is stored and as a link carries it, and back again, believing nothing.

pub mod link;
pub mod saved;
#[cfg(test)]
mod tests;

use core::fmt;

use serde_json::Value;

use crate::state::State;

/// The form that is written now. It goes up when an older program could no longer read what is written.
const VERSION: u32 = 1;

/// A state as it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Restored {
    /// The state; what could not be read has its default.
    pub state: State,
    /// Whether nothing was lost on the way.
    pub is_whole: bool,
}

/// Why a text holds no state. Its `Display` is a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Unreadable {
    /// Written by a version that this one does not know.
    NewerVersion,
    /// Cut short, changed on its way, or something else altogether.
    Damaged,
    /// Larger than any job.
    TooLarge,
}

impl fmt::Display for Unreadable {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NewerVersion => "It was made by a newer version: update this page first.",
            Self::Damaged => "It is incomplete or damaged.",
            Self::TooLarge => "It is larger than any job.",
        })
    }
}

/// No state takes as many bytes: a full shop with every field at its longest is below.
const LARGEST: usize = 1 << 18;

/// Reads what version `version` wrote, field by field.
fn restore(version: u32, value: &Value) -> Result<Restored, Unreadable> {
    if version > VERSION {
        return Err(Unreadable::NewerVersion);
    }
    if !value.is_object() || version == 0 {
        return Err(Unreadable::Damaged);
    }
    let state: State = serde::Deserialize::deserialize(value).map_err(|_| Unreadable::Damaged)?;
    // Whatever was written is written again the same way, unless something of it was not understood.
    let again = serde_json::to_vec(&state).unwrap_or_default();
    let is_whole = serde_json::from_slice::<Value>(&again).is_ok_and(|again| again == *value);
    Ok(Restored { state, is_whole })
}
