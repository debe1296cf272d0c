//! One number with the unit behind it, as it stands in a length or in a longer text.

use core::fmt;

use super::amount::{Amount, Cursor};
use super::error::LengthFault;
use super::token::{Kind, Refusal, Token};
use super::{Mm, Unit};

/// A kilometre: beyond any shop, and far inside the numbers that are exact.
const LONGEST: f64 = 1e6;

const INCHES_PER_FOOT: u128 = 12;

/// A unit that may be written after a number.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum NamedUnit {
    Mm,
    Cm,
    Metre,
    Inch,
    Foot,
}

impl NamedUnit {
    pub(super) fn of(token: &Kind) -> Option<Self> {
        match token {
            Kind::FootMark => Some(Self::Foot),
            Kind::InchMark => Some(Self::Inch),
            Kind::Word(word) => Self::named(&word.to_ascii_lowercase()),
            _ => None,
        }
    }

    fn named(word: &str) -> Option<Self> {
        Some(match word {
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Self::Mm,
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Self::Cm,
            "m" | "metre" | "metres" | "meter" | "meters" => Self::Metre,
            "in" | "ins" | "inch" | "inches" => Self::Inch,
            "ft" | "foot" | "feet" => Self::Foot,
            _ => return None,
        })
    }

    /// The short word that is read as this unit.
    const fn word(self) -> &'static str {
        match self {
            Self::Mm => "mm",
            Self::Cm => "cm",
            Self::Metre => "m",
            Self::Inch => "in",
            Self::Foot => "ft",
        }
    }

    /// The unit in millimetres, over and under (NIST SP 811: 1 in = 25.4 mm exactly).
    const fn ratio(self) -> (u128, u128) {
        match self {
            Self::Mm => (1, 1),
            Self::Cm => (10, 1),
            Self::Metre => (1000, 1),
            Self::Inch => (254, 10),
            Self::Foot => (3048, 10),
        }
    }
}

impl From<Unit> for NamedUnit {
    fn from(unit: Unit) -> Self {
        match unit {
            Unit::Mm => Self::Mm,
            Unit::Inch => Self::Inch,
        }
    }
}

/// A number as it was written, exact, and the unit that was written behind it.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Literal {
    pub(super) amount: Amount,
    pub(super) unit: Option<NamedUnit>,
}

impl Literal {
    /// Reads `12`, `3/4 in` or `2' 3-1/8"`, and leaves what comes behind it to the caller.
    pub(crate) fn read(cursor: &mut Cursor<'_>) -> Result<Self, Refusal> {
        let at = cursor.at();
        let feet = Self::read_in_sum(cursor)?;
        match cursor.rest {
            [
                Token {
                    kind: Kind::Dash, ..
                },
                Token {
                    kind: Kind::Number(_),
                    ..
                },
                ..,
            ] if feet.is_in_feet() => {
                cursor.skip();
                with_inches(at, feet.amount, cursor)
            }
            _ => Ok(feet),
        }
    }

    /// The same where a dash behind feet may as well subtract: it is left where it stands.
    pub(crate) fn read_in_sum(cursor: &mut Cursor<'_>) -> Result<Self, Refusal> {
        let at = cursor.at();
        let amount = cursor.amount()?;
        let unit = written_unit(cursor)?;
        match cursor.peek() {
            Some(Kind::Number(_)) if unit == Some(NamedUnit::Foot) => {
                with_inches(at, amount, cursor)
            }
            _ => Ok(Self { amount, unit }),
        }
    }

    /// Reads digits and at most one decimal mark, whatever comes behind them.
    pub(crate) fn read_number(cursor: &mut Cursor<'_>) -> Result<Self, Refusal> {
        let amount = cursor.decimal()?;
        Ok(Self { amount, unit: None })
    }

    /// Whether it is in feet alone.
    pub(crate) fn is_in_feet(self) -> bool {
        self.unit == Some(NamedUnit::Foot)
    }

    /// Whether it says its own unit.
    pub(crate) const fn is_stated(self) -> bool {
        self.unit.is_some()
    }

    /// The same with `unit`, where it does not say its own.
    pub(crate) fn stated(self, unit: Unit) -> Self {
        Self {
            unit: self.unit.or(Some(unit.into())),
            ..self
        }
    }

    /// The number without its unit.
    pub(crate) fn number(self) -> f64 {
        self.amount.over as f64 / self.amount.under as f64
    }

    /// The length in its own unit, or in `unit`; `None` beyond a kilometre.
    pub(crate) fn length(self, unit: Unit) -> Option<Mm> {
        let (over, under) = self.unit.unwrap_or(unit.into()).ratio();
        let mm = (self.amount.over * over) as f64 / (self.amount.under * under) as f64;
        Mm::new(mm).filter(|_| mm <= LONGEST)
    }
}

/// As it can be read again: decimals with a point, or a whole number and a fraction.
impl fmt::Display for Literal {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.amount.fmt(f)?;
        match self.unit {
            Some(unit) => write!(f, " {}", unit.word()),
            None => Ok(()),
        }
    }
}

/// Takes the unit that comes next, if one does.
fn written_unit(cursor: &mut Cursor<'_>) -> Result<Option<NamedUnit>, Refusal> {
    let at = cursor.at();
    let Some(next) = cursor.peek() else {
        return Ok(None);
    };
    let Some(unit) = NamedUnit::of(next) else {
        return match next {
            Kind::Word(word) => Err((at, unknown(word, cursor.rest))),
            _ => Ok(None),
        };
    };
    cursor.skip();
    if let (
        Kind::Word(_),
        [
            Token {
                kind: Kind::Stop('.'),
                spaced: false,
                ..
            },
            ..,
        ],
    ) = (next, cursor.rest)
    {
        cursor.skip();
    }
    Ok(Some(unit))
}

/// What is wrong with a word that is no unit; `from` begins with it.
pub(super) fn unknown(word: &str, from: &[Token]) -> LengthFault {
    match from {
        [
            _,
            Token {
                kind: Kind::Number(_) | Kind::Dash | Kind::Plus,
                ..
            },
            ..,
        ] if word.eq_ignore_ascii_case("e") => LengthFault::Exponent,
        _ => LengthFault::UnknownUnit(word.into()),
    }
}

/// Reads the inches behind `feet`, and gives both in inches.
fn with_inches(feet_at: usize, feet: Amount, cursor: &mut Cursor<'_>) -> Result<Literal, Refusal> {
    let at = cursor.at();
    let inches = cursor.amount()?;
    let unit_at = cursor.at();
    if !matches!(written_unit(cursor)?, None | Some(NamedUnit::Inch)) {
        return Err((unit_at, LengthFault::MixedUnits));
    }
    if !feet.is_whole() {
        return Err((feet_at, LengthFault::FeetNotWhole));
    }
    if !feet.is_below(LONGEST as u128) {
        return Err((feet_at, LengthFault::TooLong));
    }
    if !inches.is_below(INCHES_PER_FOOT) {
        return Err((at, LengthFault::InchesPastFoot));
    }
    let whole_inches = feet.over / feet.under * INCHES_PER_FOOT;
    Ok(Literal {
        amount: Amount {
            over: whole_inches * inches.under + inches.over,
            under: inches.under,
        },
        unit: Some(NamedUnit::Inch),
    })
}
