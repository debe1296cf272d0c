//! Dovetails: both boards as cut, the joint put together, and each board at the saw.
//!
//! Everything is drawn from the stops, through the dry fit's own geometry; layouts only say what is
//! dimensioned, and what a hand must cut.

mod boards;
mod joint;
mod lens;
mod marks;
mod mated;
mod plane;
mod progress;
mod visible;

pub use boards::dovetail_boards;
pub use mated::dovetail_mated;
pub use progress::dovetail_progress;
