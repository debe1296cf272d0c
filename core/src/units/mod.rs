//! Lengths: the type, and the only place where the texts of units live.
//!
//! A typed length goes through `glyph` (which character means what), `token` (numbers and marks),
//! `amount` (fractions, kept exact) and `parse` (signs, units, feet and inches).

mod amount;
mod error;
mod format;
mod glyph;
mod length;
mod number;
mod parse;
mod request;
mod token;
mod unit;

pub use error::{LengthError, LengthFault};
pub use format::{Denominator, Style, Written, format_length};
pub use length::Mm;
pub use number::{read_number, write_number, write_padded};
pub use parse::parse_length;
pub use request::{
    FormatLengthRequest, LengthPlan, ParseLengthRequest, TextPlan, read_length, write_length,
};
pub use unit::Unit;

#[cfg(test)]
mod format_tests;
#[cfg(test)]
mod parse_tests;
