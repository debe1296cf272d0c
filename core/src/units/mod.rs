//! Lengths: the type, and the only place where the texts of units live.

mod length;

pub use length::Mm;
