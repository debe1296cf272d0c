//! Why a text was not taken as an expression, and what would be.

use core::fmt;

use crate::units::LengthFault;

/// A text that is not one clear expression.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct ExpressionError {
    /// Where in the text the trouble begins: a count of characters, for a caret; its length when something is
    /// missing at the end.
    pub at: usize,
    /// What the trouble is.
    pub fault: ExpressionFault,
}

/// What is wrong with a text that should be an expression. Its `Display` says what would work.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum ExpressionFault {
    /// One of its lengths cannot be read.
    Length(LengthFault),
    /// An operator or a bracket stands where a number or a name should, or the text ends there.
    NoValue,
    /// Two values without anything between them.
    NoOperator,
    /// A bracket that is not closed.
    Unclosed,
    /// A function without its two values.
    TwoValues,
    /// A dash or a stroke that may join two numbers, or subtract or divide: `1-1/2`, `t/1/2`.
    TwoWays,
    /// Longer, or with more brackets inside each other, than any dimension needs.
    TooLong,
}

impl fmt::Display for ExpressionFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::Length(fault) => return fault.fmt(f),
            Self::NoValue => "A number or a name is needed here.",
            Self::NoOperator => "Put + - * or / before this.",
            Self::Unclosed => "A bracket ) is needed here.",
            Self::TwoValues => "Two values with ; between them are needed: min(a; b).",
            Self::TwoWays => {
                "This can be read in two ways: write 1 1/2 for a fraction, or use brackets."
            }
            Self::TooLong => "This is longer than any dimension needs: divide it into measures.",
        })
    }
}

impl fmt::Display for ExpressionError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.fault.fmt(f)
    }
}

impl core::error::Error for ExpressionError {}
