//! Why a text was not taken as a length, and what would be.

use core::fmt;

/// A text that is not one clear length.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct LengthError {
    /// The text as it was given.
    pub given: String,
    /// Where in `given` the trouble begins: a count of characters, for a caret; its length when
    /// something is missing at the end.
    pub at: usize,
    /// What the trouble is.
    pub fault: LengthFault,
}

/// What is wrong with a text that should be a length. Its `Display` says what would work.
#[derive(Clone, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum LengthFault {
    /// No text, or only spaces.
    Empty,
    /// Something else stands where a number should.
    NotANumber,
    /// A comma before exactly three digits: a decimal in one country, thousands in another.
    CommaOrThousands {
        /// The reading as a decimal.
        decimal: String,
        /// The reading as thousands.
        thousands: String,
    },
    /// A space before exactly three digits, as in `1 234`.
    SpacedDigits {
        /// The digits in one piece.
        joined: String,
    },
    /// More than one point or comma in one number.
    TwoMarks,
    /// Two numbers where one length should be.
    TwoNumbers,
    /// A fraction over zero.
    ZeroBelow,
    /// A fraction of one or more behind a whole number, as in `1 5/4`.
    FractionPastOne {
        /// The same length written properly.
        better: String,
    },
    /// A fraction behind or made of decimals, as in `1.5 1/2`.
    DecimalWithFraction,
    /// A stroke without a whole number on each side, or two strokes.
    BrokenFraction,
    /// A sum, a difference or a range.
    Sum,
    /// Two units that do not go together, as in `3 mm 2 in`.
    MixedUnits,
    /// Feet with a fraction of a foot, and inches behind them.
    FeetNotWhole,
    /// Twelve inches or more behind feet.
    InchesPastFoot,
    /// A word that is no unit.
    UnknownUnit(String),
    /// Powers of ten, as in `1e3`.
    Exponent,
    /// More digits than any length needs.
    TooManyDigits,
    /// More than a kilometre.
    TooLong,
    /// Quote marks that could be foot or inch marks.
    QuoteMarks,
    /// A character that has no meaning in a length.
    Unexpected(char),
}

impl fmt::Display for LengthFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Empty => write!(f, "No length yet: write one like 19.05, 3/4 or 2' 3-1/8\"."),
            Self::NotANumber => write!(
                f,
                "A length begins with a number: write 19.05, 3/4 or 12 mm."
            ),
            Self::CommaOrThousands { decimal, thousands } => {
                write!(
                    f,
                    "This can be read in two ways: write {decimal} or {thousands}."
                )
            }
            Self::SpacedDigits { joined } => write!(
                f,
                "One number or two? If one, write {joined} without the space."
            ),
            Self::TwoMarks => write!(
                f,
                "Use one decimal mark and none for thousands: write 1234.5."
            ),
            Self::TwoNumbers => write!(
                f,
                "There are two numbers: write one, or a fraction like 3 1/4."
            ),
            Self::ZeroBelow => write!(
                f,
                "Nothing divides by zero: write 1 or more below the stroke, like 3/4."
            ),
            Self::FractionPastOne { better } => {
                write!(
                    f,
                    "The fraction after a whole number stays below one: write {better}."
                )
            }
            Self::DecimalWithFraction => write!(
                f,
                "Use a decimal or a fraction, not both: write 1.75 or 1 3/4."
            ),
            Self::BrokenFraction => write!(
                f,
                "A fraction is one whole number over another: write 3/4 or 1 3/4."
            ),
            Self::Sum => write!(
                f,
                "Sums are not worked out here: write one length, like 1 1/2 or 1-1/2."
            ),
            Self::MixedUnits => write!(
                f,
                "Only feet and inches go together: write 54 mm, 2 in or 2' 3\"."
            ),
            Self::FeetNotWhole => {
                write!(f, "Feet before inches are whole: write 2' 6\" or 2.5 ft.")
            }
            Self::InchesPastFoot => {
                write!(f, "Inches after feet stay below 12: write 3' 2\" or 38 in.")
            }
            Self::UnknownUnit(word) => write!(
                f,
                "«{word}» is not a unit used here: write mm, cm, m, in or ft."
            ),
            Self::Exponent => write!(
                f,
                "Write the number out, like 1000 or 0.001, without powers of ten."
            ),
            Self::TooManyDigits => write!(
                f,
                "Too many digits: three after the point, like 19.051, are plenty."
            ),
            Self::TooLong => write!(
                f,
                "That is more than a kilometre: write a length up to 1000 m."
            ),
            Self::QuoteMarks => write!(
                f,
                "Quotes, or feet and inches? Leave the marks out, or write 3/4 in or 2 ft."
            ),
            Self::Unexpected(c) => {
                write!(
                    f,
                    "«{}» does not belong in a length: write 19.05, 3/4 or 12 mm.",
                    c.escape_debug()
                )
            }
        }
    }
}

impl fmt::Display for LengthError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.fault.fmt(f)
    }
}

impl core::error::Error for LengthError {}
