//! The virtual dry fit of a dovetail: flanks that lean, cut from the stops as the dial can set them.
//!
//! Everything that decides the joint lies in one plane: the tail board's face. There `x` runs across the
//! width from the reference edge, `z` from the tail board's end, and `u = z − proud` through the pin board
//! from its outer face. The pin board's plan view is the same plane.

mod fit;
mod floor;
mod piece;
mod ridge;
mod shape;
mod socket;
mod strip;
mod teeth;
#[cfg(test)]
mod tests;
mod uncovered;
mod wall;

pub use fit::dry_fit;
pub(crate) use shape::{SocketShape, socket_shapes, wood_left};
pub(crate) use strip::clipped;
pub use strip::passes;
pub use teeth::Teeth;

use crate::units::Mm;

/// What the dry fit knows besides the sets: boards and teeth, never a layout.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Bench {
    /// Width of both boards.
    pub width: Mm,
    /// Thickness of the tail board.
    pub thickness_a: Mm,
    /// Thickness of the pin board.
    pub thickness_b: Mm,
    /// Through the pin board as far as the tails go.
    pub through: Mm,
    /// How far the tails stand past the outer face.
    pub proud: Mm,
    /// Teeth of the leaning cutter.
    pub teeth: Teeth,
    /// Teeth of the upright cutter.
    pub upright_teeth: Teeth,
    /// What blade and wedge were really found to be.
    pub measured: Measured,
}

/// What blade and wedge were really found to be, as tangents; the sets' own where nothing was measured.
///
/// A stop's `at` stays the kerf's near side at the end of the board or at its outer face.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Measured {
    /// Lean of the blade.
    pub lean: Option<f64>,
    /// Turn of the pin board.
    pub turn: Option<f64>,
}

/// A place in the plane: `x`, then `z` or `u`, mm.
pub type Point = (f64, f64);
