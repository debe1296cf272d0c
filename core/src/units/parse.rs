//! From what a person types to a length.

use super::amount::{Amount, Cursor};
use super::error::{LengthError, LengthFault};
use super::token::{Kind, Refusal, Token, tokens};
use super::{Mm, Unit};

/// Reads a length; a number without a unit is in `unit`.
///
/// Understood are whole numbers, decimals with a point or a comma, fractions (`3/4`, `¾`), whole
/// numbers with a fraction (`1 1/2`, `1-1/2`, `1½`), feet with inches (`2' 3-1/8"`), and the units
/// mm, cm, m, in and ft by their words, short forms and marks. A sign may come first; a negative
/// length is read as such, and whether it makes sense is for the caller to say. Spaces of any kind,
/// a leading `=`, `~` or `≈`, a trailing comma or full stop, and quote marks round a length with a
/// unit do no harm.
///
/// ```
/// use notchwright_core::units::{LengthFault, Unit, parse_length};
///
/// let half_more = parse_length("1-1/2\"", Unit::Mm)?;
/// assert_eq!(half_more.mm(), 38.1);
///
/// let error = parse_length("1,234", Unit::Mm).unwrap_err();
/// assert_eq!(error.to_string(), "This can be read in two ways: write 1.234 or 1234.");
/// # Ok::<(), notchwright_core::units::LengthError>(())
/// ```
///
/// # Errors
/// [`LengthError`] when the text is not one clear length: it may be read in two ways (`1,234`), is
/// longer than a kilometre, or is no length at all. It says where, and what would work.
pub fn parse_length(text: &str, unit: Unit) -> Result<Mm, LengthError> {
    read(text, unit).map_err(|(at, fault)| LengthError {
        given: text.into(),
        at,
        fault,
    })
}

/// A kilometre: beyond any shop, and far inside the numbers that are exact.
const LONGEST: f64 = 1e6;

const INCHES_PER_FOOT: u128 = 12;

/// A unit that may be written after a number.
#[derive(Clone, Copy, PartialEq, Eq)]
enum NamedUnit {
    Mm,
    Cm,
    Metre,
    Inch,
    Foot,
}

impl NamedUnit {
    fn of(token: &Kind) -> Option<Self> {
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

fn read(text: &str, unit: Unit) -> Result<Mm, Refusal> {
    let tokens = tokens(text)?;
    let end = text.chars().count();
    if tokens.is_empty() {
        return Err((end, LengthFault::Empty));
    }
    let (rest, quote) = unquoted(trimmed(&tokens));
    let mut cursor = Cursor { rest, end };
    let (length, stated) = signed(&mut cursor, unit)?;
    match quote {
        Some(open) if !(stated || is_harmless(open, unit)) => {
            Err((open.at, LengthFault::QuoteMarks))
        }
        _ => Ok(length),
    }
}

/// Whether a number between two of these marks means the same with and without them: "3/4" in
/// quotes may be three quarters of anything, unless inches are meant either way.
fn is_harmless(quote: &Token, unit: Unit) -> bool {
    quote.kind == Kind::InchMark && unit == Unit::Inch
}

/// Without the marks that do no harm before and behind a length.
fn trimmed(tokens: &[Token]) -> &[Token] {
    let tokens = match tokens {
        [
            Token {
                kind: Kind::About(_),
                ..
            },
            rest @ ..,
        ] => rest,
        _ => tokens,
    };
    match tokens {
        [
            rest @ ..,
            Token {
                kind: Kind::Stop(_),
                spaced: false,
                ..
            },
        ] if !rest.is_empty() => rest,
        _ => tokens,
    }
}

/// What stands between two marks of one kind, and the first of them.
fn unquoted(tokens: &[Token]) -> (&[Token], Option<&Token>) {
    match tokens {
        [open, inner @ .., close]
            if open.kind == close.kind && matches!(open.kind, Kind::FootMark | Kind::InchMark) =>
        {
            (inner, Some(open))
        }
        _ => (tokens, None),
    }
}

/// The length, and whether it says its own unit.
fn signed(cursor: &mut Cursor<'_>, unit: Unit) -> Result<(Mm, bool), Refusal> {
    let negative = cursor.take(&Kind::Dash);
    if !negative {
        cursor.take(&Kind::Plus);
    }
    let at = cursor.at();
    let mut amount = cursor.amount()?;
    let stated = written_unit(cursor)?;
    let mut written = stated.unwrap_or(unit.into());
    if stated == Some(NamedUnit::Foot) && inches_follow(cursor) {
        amount = with_inches(at, amount, cursor)?;
        written = NamedUnit::Inch;
    }
    if let Some(next) = cursor.rest.first() {
        return Err((
            next.at,
            left_over(cursor.rest, &next.kind, stated.is_some()),
        ));
    }
    let mm = millimetres(amount, written);
    match Mm::new(if negative { -mm } else { mm }) {
        Some(length) if mm <= LONGEST => Ok((length, stated.is_some())),
        _ => Err((at, LengthFault::TooLong)),
    }
}

fn millimetres(amount: Amount, unit: NamedUnit) -> f64 {
    let (over, under) = unit.ratio();
    (amount.over * over) as f64 / (amount.under * under) as f64
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
fn unknown(word: &str, from: &[Token]) -> LengthFault {
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

fn inches_follow(cursor: &Cursor<'_>) -> bool {
    matches!(
        cursor.rest,
        [
            Token {
                kind: Kind::Number(_),
                ..
            },
            ..
        ] | [
            Token {
                kind: Kind::Dash,
                ..
            },
            Token {
                kind: Kind::Number(_),
                ..
            },
            ..
        ]
    )
}

/// Reads the inches behind `feet`, and gives both in inches.
fn with_inches(feet_at: usize, feet: Amount, cursor: &mut Cursor<'_>) -> Result<Amount, Refusal> {
    cursor.take(&Kind::Dash);
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
    Ok(Amount {
        over: whole_inches * inches.under + inches.over,
        under: inches.under,
    })
}

/// Why nothing should come behind a length; `rest` is what does, beginning with `next`.
fn left_over(rest: &[Token], next: &Kind, stated: bool) -> LengthFault {
    match next {
        Kind::Number(_)
            if stated
                && rest
                    .iter()
                    .any(|token| NamedUnit::of(&token.kind).is_some()) =>
        {
            LengthFault::MixedUnits
        }
        Kind::Number(_) => LengthFault::TwoNumbers,
        Kind::Slash => LengthFault::BrokenFraction,
        Kind::Dash | Kind::Plus => LengthFault::Sum,
        Kind::FootMark | Kind::InchMark => LengthFault::MixedUnits,
        Kind::Word(_) if NamedUnit::of(next).is_some() => LengthFault::MixedUnits,
        Kind::Word(word) => unknown(word, rest),
        Kind::About(c) | Kind::Stop(c) | Kind::Other(c) => LengthFault::Unexpected(*c),
    }
}
