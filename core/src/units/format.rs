//! From a length to the text a person reads off the page.

use super::{Mm, Unit, read_number, write_number};

/// How a length is written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// `19.05 mm`
    Millimetres {
        /// At most this many.
        decimals: u8,
    },
    /// `0.75"`
    InchDecimals {
        /// At most this many.
        decimals: u8,
    },
    /// `1 3/4"`
    InchFraction {
        /// The finest part of an inch.
        finest: Denominator,
    },
}

impl Style {
    /// How lengths are written unless something else is asked for: to the micrometre, or to 1/64 in.
    #[must_use]
    pub const fn usual(unit: Unit) -> Self {
        match unit {
            Unit::Mm => Self::Millimetres { decimals: 3 },
            Unit::Inch => Self::InchFraction {
                finest: Denominator::SIXTY_FOUR,
            },
        }
    }
}

/// The lower number of an inch's finest fraction, 1 to 1024.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Denominator(u16);

impl Denominator {
    /// Sixty-fourths, the finest marks on a common rule.
    pub const SIXTY_FOUR: Self = Self(64);
    /// The greatest denominator there is.
    pub const GREATEST: Self = Self(1024);

    /// `parts` to an inch, if that is from 1 to 1024.
    #[must_use]
    pub const fn new(parts: u16) -> Option<Self> {
        if parts >= 1 && parts <= Self::GREATEST.0 {
            Some(Self(parts))
        } else {
            None
        }
    }

    /// How many parts an inch has.
    #[must_use]
    pub const fn parts(self) -> u16 {
        self.0
    }
}

/// A length as written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The text, with its unit; [`parse_length`](super::parse_length) reads it back. A fraction that
    /// is not exact says so with a leading `≈`.
    pub text: String,
    /// Whether the text says the length to the micrometre.
    pub exact: bool,
    /// What the text leaves unsaid, in mm: add it to the length as written to have the length
    /// itself. Zero when `exact`.
    pub leftover: Mm,
}

/// Writes `length` in a style, rounded to the nearest last place.
///
/// ```
/// use notchwright_core::units::{Mm, Style, Unit, format_length};
///
/// let inches = Style::usual(Unit::Inch);
/// assert_eq!(format_length(Mm::constant(38.1), inches).text, "1 1/2\"");
/// assert_eq!(format_length(Mm::constant(38.2), inches).text, "≈ 1 1/2\"");
/// assert_eq!(format_length(Mm::constant(38.2), Style::usual(Unit::Mm)).text, "38.2 mm");
/// ```
#[must_use]
pub fn format_length(length: Mm, style: Style) -> Written {
    match style {
        Style::Millimetres { decimals } => decimal(length, Unit::Mm, decimals),
        Style::InchDecimals { decimals } => decimal(length, Unit::Inch, decimals),
        Style::InchFraction { finest } => fraction(length, finest),
    }
}

fn decimal(length: Mm, unit: Unit, decimals: u8) -> Written {
    let number = write_number(length / unit.length(), decimals);
    let said = unit.length() * read_number(&number).unwrap_or_default();
    let gap = if unit == Unit::Mm { " " } else { "" };
    written(format!("{number}{gap}{}", unit.symbol()), length, said)
}

fn fraction(length: Mm, finest: Denominator) -> Written {
    let parts = f64::from(finest.parts());
    let nearest = (length / Mm::INCH * parts).round();
    // Parts of the longest lengths, counted in inches, would be longer than any length.
    let said = Mm::INCH * (nearest / parts);
    let sign = if nearest < 0.0 { "-" } else { "" };
    let number = proper(nearest.abs() as u64, finest.parts().into());
    let mut written = written(
        format!("{sign}{number}{}", Unit::Inch.symbol()),
        length,
        said,
    );
    if !written.exact {
        written.text.insert_str(0, "≈ ");
    }
    written
}

fn written(text: String, length: Mm, said: Mm) -> Written {
    let exact = length.is_same(said);
    Written {
        text,
        exact,
        leftover: if exact { Mm::ZERO } else { length - said },
    }
}

/// `over / under` in lowest terms, the whole number apart: `1 3/4`.
fn proper(over: u64, under: u64) -> String {
    let (whole, rest) = (over / under, over % under);
    let shared = greatest_common_divisor(rest, under);
    match (whole, rest / shared, under / shared) {
        (whole, 0, _) => whole.to_string(),
        (0, over, under) => format!("{over}/{under}"),
        (whole, over, under) => format!("{whole} {over}/{under}"),
    }
}

fn greatest_common_divisor(a: u64, b: u64) -> u64 {
    if b == 0 {
        a
    } else {
        greatest_common_divisor(b, a % b)
    }
}
