//! Lengths: the type, and the only place where the texts of units live.
//!
//! A typed length goes through `glyph` (which character means what), `token` (numbers and marks),
//! `amount` (fractions, kept exact) and `parse` (signs, units, feet and inches).

mod amount;
mod error;
mod format;
mod glyph;
mod length;
mod literal;
mod number;
mod parse;
mod request;
mod token;
mod unit;

pub(crate) use amount::Cursor;
pub use error::{LengthError, LengthFault};
pub use format::{Denominator, Style, Written, format_length};
pub(crate) use glyph::Glyph;
pub use length::Mm;
pub(crate) use literal::Literal;
pub use number::{read_number, write_number, write_padded};
pub use parse::parse_length;
pub(crate) use request::UNITS;
pub use request::{
    FormatLengthRequest, LengthPlan, ParseLengthRequest, TextPlan, read_length, write_length,
};
pub(crate) use token::{Kind, Refusal, Token, tokens};
pub use unit::Unit;

#[cfg(test)]
mod format_tests;
#[cfg(test)]
mod parse_tests;
