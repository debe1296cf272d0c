//! Joints: from two boards and a cutter to sets of stops, each proven by a dry fit.

pub mod box_joint;
mod carriage;
pub mod dovetail;
mod reach;
mod run;
pub mod sliding;
mod stops;
