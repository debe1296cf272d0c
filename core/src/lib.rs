//! Joints, dial settings and dry fits for a table-saw joinery sled.
//!
//! Pure functions of their requests: no browser, no clock, no randomness, no I/O. Lengths are in
//! millimetres ([`units::Mm`]) and angles in radians unless a name says degrees.

pub mod math;
pub mod units;
