//! The state as it is stored and as a link carries it, and back again, believing nothing.

mod former;
pub(crate) mod json;
mod letters;
pub mod link;
pub(crate) mod parcel;
pub mod saved;
#[cfg(test)]
mod tests;

use core::fmt;

use notchwright_core::plain::Plain;

use crate::state::{State, Stored};

/// The form that is written now. It goes up when an older program could no longer read what is written.
const VERSION: u32 = 3;

/// A state as it was read.
#[derive(Clone, Debug, PartialEq)]
pub struct Restored {
    /// The state; what could not be read has its default.
    pub state: State,
    /// Whether nothing was lost on the way.
    pub is_whole: bool,
    /// How much of a state was written.
    pub extent: Extent,
}

/// How much of a state was written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Extent {
    /// Everything.
    All,
    /// One job, and what it needs.
    Job,
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

/// Bytes: hundreds of joints with every board named are far below.
const LARGEST: usize = 1 << 22;

/// Reads what version `version` wrote, field by field.
fn restore(version: u32, plain: Plain, extent: Extent) -> Result<Restored, Unreadable> {
    if version > VERSION {
        return Err(Unreadable::NewerVersion);
    }
    if version == 0 {
        return Err(Unreadable::Damaged);
    }
    let plain = former::update(version, plain);
    let mut state = State::default();
    if !state.read(&plain) {
        return Err(Unreadable::Damaged);
    }
    state.work.tell_joints_apart();
    // Whatever was written is written again the same way, unless something of it was not understood.
    let is_whole = is_same(&state.write(), &plain);
    Ok(Restored {
        state,
        is_whole,
        extent,
    })
}

/// Whether two say the same; the order of fields says nothing.
fn is_same(one: &Plain, other: &Plain) -> bool {
    match (one, other) {
        (Plain::Object(one), Plain::Object(other)) => {
            let has = |(name, value): &(String, Plain)| {
                other
                    .iter()
                    .any(|(other, theirs)| other == name && is_same(value, theirs))
            };
            one.len() == other.len() && one.iter().all(has)
        }
        (Plain::List(one), Plain::List(other)) => {
            one.len() == other.len()
                && one
                    .iter()
                    .zip(other)
                    .all(|(one, other)| is_same(one, other))
        }
        (one, other) => one == other,
    }
}
