//! Stops of the carriage, and the sets they come in.

pub mod csv;
mod find;

pub use find::{Sought, find};

use serde::Serialize;

use crate::units::Mm;

/// Which of the two boards.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Board {
    /// Board A; the tail board of a dovetail.
    A,
    /// Board B; the pin board of a dovetail.
    B,
}

/// A place of the wheel, as whole turns and divisions from zero.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Reading {
    /// Carriage travel from zero, mm.
    pub reading: Mm,
    /// Whole turns from zero; negative below zero, with the division still counted upwards.
    pub turns: i64,
    /// Divisions beyond the whole turns, from 0 up to the wheel's divisions; may be fractional.
    pub division: f64,
}

/// One position of the carriage, and the pass that is cut there.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Stop {
    /// Place in the order of use, from 1.
    pub number: usize,
    /// Kerf's side nearest the reference edge, measured from that edge, mm; after rounding to the dial.
    pub at: Mm,
    /// What the wheel must read.
    #[serde(flatten)]
    pub dial: Reading,
    /// Change of reading from the stop before, mm; for the first stop, from zero.
    #[serde(rename = "move")]
    pub travel: Mm,
    /// The move as whole turns and divisions.
    pub move_turns: i64,
    /// The move's divisions beyond its whole turns.
    pub move_division: f64,
    /// Which space of the layout this pass clears, counted along the width from 0, pins and sockets alike.
    pub space: usize,
    /// Which socket of this board that is, counted along the width from 0.
    pub socket: usize,
    /// Which pass of its socket this is, from 1, in the order of use.
    pub pass: usize,
    /// How many passes its socket takes.
    pub passes: usize,
}

/// One set-up of the saw and its stops, in the order of use.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Set {
    /// What the set is called.
    pub name: String,
    /// Which board is cut.
    pub board: Board,
    /// Lean of the blade, degrees; positive towards the reference edge as the blade rises.
    pub tilt_degrees: f64,
    /// Turn of the board in plan, degrees.
    pub yaw_degrees: f64,
    /// Whether the board is turned face for face.
    pub flipped: bool,
    /// Height of the cutter above the sled's base, mm.
    pub height: Mm,
    /// Width of each cut, mm.
    pub kerf: Mm,
    /// Height of the ridge that each pass leaves in the middle of its kerf, mm; 0 under flat teeth.
    pub ridge: Mm,
    /// Graduations of the wheel that these readings are for, per turn.
    pub divisions: u32,
    /// Where to run back to before the first stop, so that every stop is reached with rising readings.
    pub run_up: Reading,
    /// The stops.
    pub stops: Vec<Stop>,
}
