//! What a box joint is answered with.

use serde::Serialize;

use crate::dryfit::DryFit;
use crate::stop::{Board, Set};
use crate::units::Mm;

/// A box joint, ready to cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct BoxJointPlan {
    /// Number of spaces, pins and sockets together.
    pub count: usize,
    /// Width of a usual finger, mm: the mean for a pattern, half the pitch for one pass per socket.
    pub finger_width: Mm,
    /// Boundaries between the spaces, from the reference edge, both edges included, mm.
    pub boundaries: Vec<Mm>,
    /// Whether the layout reads the same from both edges.
    pub symmetric: bool,
    /// Whether board A has a pin at the reference edge.
    pub first_is_pin: bool,
    /// Width of the boards that these stops are for, mm: the width asked, or the width to rip to.
    pub width: Mm,
    /// Widths that whole fingers fill, mm, where the rest is to be ripped off.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub rip_to: Option<RipTo>,
    /// Glue gap that the layout aims at, mm: the one asked, or the one that one pass per socket leaves.
    pub glue_gap: Mm,
    /// Depth of cut in board A, mm.
    pub depth_a: Mm,
    /// Depth of cut in board B, mm.
    pub depth_b: Mm,
    /// The sets of stops: board A, then board B.
    pub sets: Vec<Set>,
    /// What the cuts really make.
    pub dry_fit: DryFit,
    /// What becomes of the groove.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub groove: Option<GroovePlan>,
}

/// Widths near the board's that whole fingers fill.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct RipTo {
    /// The greatest that is not above the board's width, mm.
    pub below: Mm,
    /// The least that is not below it, mm.
    pub above: Mm,
}

/// Where a groove meets the fingers.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GroovePlan {
    /// Nearer side of the groove from the reference edge, mm.
    pub from: Mm,
    /// Farther side of the groove from the reference edge, mm.
    pub to: Mm,
    /// What happens at the ends of each board.
    pub ends: [GrooveEnd; 2],
    /// Nearest places, edge to nearer side as the request measures it, at which only one board needs a
    /// stopped groove, the nearest first, mm; empty when it is so already or there is no such place.
    pub better: Vec<GroovePlace>,
}

/// What a groove meets at the ends of one board.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GrooveEnd {
    /// Which board.
    pub board: Board,
    /// What it runs out through.
    pub through: Through,
    /// How the groove must be made so that no hole shows in the finished joint.
    pub make: Make,
}

/// What a groove runs out through.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Through {
    /// A pin: a hole would show in the end of the pin.
    Pin,
    /// A socket: the mating pin covers it.
    Socket,
    /// Partly a pin.
    Both,
}

/// How a groove is made.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Make {
    /// From end to end.
    Through,
    /// Stopped before the ends, or plugged afterwards.
    Stopped,
}

/// A place for a groove.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct GroovePlace {
    /// Edge to nearer side, as the request measures it, mm.
    pub from_edge: Mm,
    /// The board that can then be grooved from end to end.
    pub through: Board,
}
