//! The lead screw and its wheel: from a place on the board to turns and divisions.

mod scale;
mod screw;
mod zero;

pub use scale::{Scale, Tick};
pub use screw::{Rises, Rounding, Screw, ScrewRequest};
pub use zero::{Zero, ZeroRequest};
