//! The virtual dry fit: every pass is swept, both boards are slid together, and what is there is measured.
//!
//! It starts from the stops as the dial can set them, never from the layout they were meant for.

mod floor;
mod mate;
mod profile;
pub mod slanted;
mod sweep;
#[cfg(test)]
mod tests;

pub use mate::{Seat, dry_fit};
pub use profile::{Passes, Place, Profile};
pub use sweep::{Span, Swept};

use serde::Serialize;

use crate::stop::Board;
use crate::units::Mm;

/// What two boards cut at these stops are like when they are put together.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct DryFit {
    /// Every pair of mating flanks, from the reference edge.
    pub flanks: Vec<Flank>,
    /// Smallest gap at any flank, mm; negative where wood overlaps.
    pub smallest_gap: Mm,
    /// Largest gap at any flank, mm.
    pub largest_gap: Mm,
    /// From the highest place of A's socket floors to the face that meets it, mm; negative where a ridge is in the way.
    pub floor_gap_a: Mm,
    /// From the highest place of B's socket floors to the face that meets it, mm; negative where a ridge is in the way.
    pub floor_gap_b: Mm,
    /// Wood that no pass reaches, inside sockets.
    pub uncut: Vec<Uncut>,
    /// Whether pins and sockets overlap: the joint does not go together as cut.
    pub clash: bool,
    /// Area left open between the boards in A's face, over B's thickness, mm².
    pub gap_area_a: f64,
    /// Area left open between the boards in B's face, over A's thickness, mm².
    pub gap_area_b: f64,
    /// Area where both boards have wood in A's face, floor ridges included, mm².
    pub clash_area_a: f64,
    /// Area where both boards have wood in B's face, floor ridges included, mm².
    pub clash_area_b: f64,
}

/// One pair of mating flanks.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Flank {
    /// Where A's flank is, from the reference edge, mm.
    pub x: Mm,
    /// Which side of board A's wood the flank is.
    pub side: Side,
    /// Gap at the outer face, mm; negative where wood overlaps.
    pub gap_at_outer: Mm,
    /// Gap at the inner face, mm; negative where wood overlaps.
    pub gap_at_inner: Mm,
}

/// A side of a pin.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    /// Towards the reference edge.
    Left,
    /// Away from the reference edge.
    Right,
}

/// Wood that no pass reaches.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Uncut {
    /// Which board.
    pub board: Board,
    /// Its area on the board's face, mm².
    pub area: f64,
    /// Its greatest height above the depth line, mm.
    pub height: Mm,
    /// Its middle, from the reference edge, mm.
    pub near: Mm,
}
