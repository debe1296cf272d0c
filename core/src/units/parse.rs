//! From what a person types to a length.

use super::amount::Cursor;
use super::error::{LengthError, LengthFault};
use super::literal::{Literal, NamedUnit, unknown};
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
    let literal = Literal::read(cursor)?;
    if let Some(next) = cursor.rest.first() {
        return Err((
            next.at,
            left_over(cursor.rest, &next.kind, literal.is_stated()),
        ));
    }
    let length = literal.length(unit).ok_or((at, LengthFault::TooLong))?;
    Ok((if negative { -length } else { length }, literal.is_stated()))
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
