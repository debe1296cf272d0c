//! The text that is kept in the browser's store.

use notchwright_core::plain::Plain;

use super::{Extent, LARGEST, Restored, Unreadable, VERSION, json, parcel};
use crate::state::{State, Stored, field};

/// The key of the state in the browser's store.
pub const KEY: &str = "notchwright.state";
/// What the keys of texts that were set aside begin with; a number follows.
pub const ASIDE: &str = "notchwright.aside.";

const ALL: &str = "state";
const JOB: &str = "job";

/// Writes everything.
#[must_use]
pub fn save(state: &State) -> String {
    write(ALL, state)
}

/// Writes the open job, with what it was planned with.
#[must_use]
pub fn save_job(state: &State) -> String {
    write(JOB, &parcel::with_its_tools(state))
}

fn write(what: &str, state: &State) -> String {
    let version = ("version".to_owned(), VERSION.write());
    let state = (what.to_owned(), state.write());
    json::write(&Plain::Object(vec![version, state]))
}

/// Whether all of a text is understood.
#[must_use]
pub fn is_whole(text: &str) -> bool {
    restore(text).is_ok_and(|restored| restored.is_whole)
}

/// Reads what was written.
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
    let is_versioned = field(&fields, "version").is_some_and(|number| version.read(number));
    let written = [(ALL, Extent::All), (JOB, Extent::Job)];
    let state = written
        .into_iter()
        .find_map(|(name, extent)| Some((field(&fields, name)?, extent)));
    match state {
        Some((state, extent)) if is_versioned => super::restore(version, state.clone(), extent),
        _ => Err(Unreadable::Damaged),
    }
}
