//! The usual cautions, shown with every plan and before the first stop.
//!
//! Common practice in the trade; the standards named are places to look, not advice.

use crate::message;
use crate::message::Message;
use crate::problem::{Note, Severity};

/// Cautions for cutting a board on end with an upright cutter.
#[must_use]
pub fn upright_cut() -> Vec<Note> {
    let caution =
        |(code, message): (&'static str, Message)| Note::new(code, Severity::Caution, message);
    [
        ("unplug", message!["Unplug the saw before you set or measure anything at the cutter."]),
        ("hands", message!["Hands on the handles, never in line with the cutter or over the place where it comes out."]),
        ("guard", message![
            "This cut does not go through the board and is made without the saw's guard: use the sled's own blade cover \
             and stop block, and do not pull back over a running cutter."
        ]),
        ("stack", message![
            "Grooving stacks only on a saw and arbor made for them; in some countries they are not allowed."
        ]),
        ("protection", message!["Eye, ear and dust protection."]),
        ("scrap", message!["Cut a test joint in scrap before good wood."]),
        ("manual", message![
            "The saw's manual, local codes and a qualified person come before this program. Places to look: \
             OSHA 1910.213, EN 848-1, EN 847-1."
        ]),
    ]
    .map(caution)
    .to_vec()
}
