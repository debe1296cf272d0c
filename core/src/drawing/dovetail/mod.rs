//! Dovetails: both boards as cut, the joint put together, at the saw, and to be marked out by hand.
//!
//! Everything is drawn from the stops, through the dry fit's own geometry; layouts only say what is
//! dimensioned, and what a hand must cut.

mod boards;
mod joint;
mod lens;
pub(super) mod marks;
mod mated;
pub(super) mod plane;
mod progress;
#[cfg(test)]
mod properties;
mod sliding;
mod template;
#[cfg(test)]
mod tests;
mod visible;

pub use boards::dovetail_boards;
pub use mated::dovetail_mated;
pub use progress::dovetail_progress;
pub use sliding::sliding_drawing;
pub use template::marking_template;
