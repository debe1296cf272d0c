//! The usual cautions, shown with every plan and before the first stop.
//!
//! Common practice in the trade; the standards named are places to look, not advice.

use crate::message;
use crate::message::Message;
use crate::problem::{Note, Severity};

/// Cautions for cutting a board on end with an upright cutter.
#[must_use]
pub fn upright_cut() -> Vec<Note> {
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

/// Cautions for cutting a board on end with a blade that leans, before those for an upright cutter.
#[must_use]
pub fn leaning_cut() -> Vec<Note> {
    [
        ("tilt-clearance", message![
            "A leaning blade sweeps wider than an upright one: with the power off, turn it by hand and check that it \
             clears the sled's slot, the throat plate, the guards and everything under the table."
        ]),
        ("tilt-clamp", message![
            "A leaning blade pulls a board on end sideways: clamp it to the carriage, low and high, and never hold a \
             tall one by hand alone."
        ]),
        ("tilt-offcuts", message![
            "Offcuts can wedge between the leaning blade and the base: stop the saw and let it run out before you take \
             them away."
        ]),
        ("tilt-rules", message![
            "Whether this saw may cut leaning without its guard is for its manual and the local rules to say: read them \
             first."
        ]),
    ]
    .map(caution)
    .to_vec()
}

fn caution((code, message): (&'static str, Message)) -> Note {
    Note::new(code, Severity::Caution, message)
}
