//! A sled on one saw: over its stroke, as a base to build, and as a strip of holes at full size.

mod base;
mod hole_line;
pub(super) mod labels;
pub(super) mod marks;
#[cfg(test)]
mod saws;
#[cfg(test)]
mod tests;
mod travel;
mod travel_plan;
mod travel_side;

pub use base::sled_base;
pub use hole_line::{Paper, hole_line_tiles};
pub use travel_plan::sled_travel_plan;
pub use travel_side::sled_travel_side;
