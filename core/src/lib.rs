//! Joints, dial settings and dry fits for a table-saw joinery sled.
//!
//! Pure functions of their requests: no browser, no clock, no randomness, no I/O. Lengths are in
//! millimetres ([`units::Mm`]) and angles in radians unless a name says degrees.
//!
//! Every tool runs in the same direction: request ([`given`]) → checked ([`check`], [`limits`]) →
//! layout → passes → dial ([`dial`]) → dry fit ([`dryfit`]) → drawing ([`drawing`]). Problems and
//! notes travel as data ([`problem`]) and become sentences ([`mod@message`]) in the reader's own unit.

pub mod caution;
pub mod check;
pub mod cutter;
pub mod dial;
pub mod drawer;
pub mod drawing;
pub mod dryfit;
pub mod given;
pub mod groove;
pub mod joint;
mod least_squares;
pub mod limits;
pub mod math;
pub mod message;
pub mod order;
pub mod parts;
pub mod plain;
pub mod problem;
pub mod screw_check;
pub mod sheet;
pub mod sled;
pub mod square;
pub mod stop;
pub mod units;
pub mod wood;
