//! Pictures for the tools around the joint: the five-cut test, the screw check, the router table.
//!
//! All are as wide as a phone shows well, in type heights; only what a picture's own words call true
//! to scale is.

mod five_cut;
mod groove;
mod history;
mod marks;
mod plot;
mod screw;
mod square;
#[cfg(test)]
mod tests;

pub use five_cut::five_cut_steps;
pub use groove::groove_setup_drawing;
pub use history::{HistoryPoint, square_history};
pub use screw::{screw_errors, screw_residuals};
pub use square::square_correction;
