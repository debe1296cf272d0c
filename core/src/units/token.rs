//! A length's text cut into numbers, strokes, dashes, marks and words.

use super::error::LengthFault;
use super::glyph::Glyph;

/// A fault and where it begins, in characters.
pub(crate) type Refusal = (usize, LengthFault);

/// One piece of a length's text.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Token {
    pub(crate) kind: Kind,
    /// The place of its first character in the text.
    pub(crate) at: usize,
    /// Whether a space comes before it.
    pub(crate) spaced: bool,
}

#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Number(Number),
    Slash,
    Dash,
    Plus,
    FootMark,
    InchMark,
    /// `=`, `~` or `≈`.
    About(char),
    /// A point, a comma or a semicolon that belongs to no number.
    Stop(char),
    Word(String),
    Other(char),
}

/// Digits with at most one decimal mark, as they were written.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Number {
    /// The digits before the mark.
    pub(crate) before: String,
    /// The digits behind it, if there is a mark.
    pub(crate) after: Option<String>,
}

impl Number {
    /// Whether the digits before the mark could stand before a thousands mark.
    pub(super) fn is_group(&self) -> bool {
        matches!(self.before.len(), 1..=3) && !self.before.starts_with('0')
    }
}

/// Cuts `text` into tokens.
pub(crate) fn tokens(text: &str) -> Result<Vec<Token>, Refusal> {
    let glyphs: Vec<Glyph> = text.chars().map(Glyph::of).collect();
    let mut rest = glyphs.as_slice();
    let mut found: Vec<Token> = Vec::new();
    let mut spaced = false;
    while let Some((&first, after)) = rest.split_first() {
        let at = glyphs.len() - rest.len();
        // A mark right behind a letter ends an abbreviation: the 3 of "2 ft.3 in" is no decimal.
        let abbreviated = !spaced
            && matches!(
                found.last(),
                Some(Token {
                    kind: Kind::Word(_),
                    ..
                })
            );
        let (kinds, length) = if begins_number(rest) && !(abbreviated && is_mark(first)) {
            number(rest).map_err(|fault| (at, fault))?
        } else {
            other(first, after)
        };
        found.extend(kinds.into_iter().map(|kind| Token { kind, at, spaced }));
        spaced = first == Glyph::Space;
        rest = rest.get(length..).unwrap_or_default();
    }
    Ok(found)
}

fn is_mark(glyph: Glyph) -> bool {
    matches!(glyph, Glyph::Point | Glyph::Comma)
}

fn begins_number(rest: &[Glyph]) -> bool {
    matches!(
        rest,
        [Glyph::Digit(_), ..] | [Glyph::Point | Glyph::Comma, Glyph::Digit(_), ..]
    )
}

/// Reads the digits and marks that `rest` begins with, and says how many glyphs they are.
fn number(rest: &[Glyph]) -> Result<(Vec<Kind>, usize), LengthFault> {
    let length = rest
        .iter()
        .take_while(|glyph| is_mark(**glyph) || matches!(glyph, Glyph::Digit(_)))
        .count();
    let run = rest.get(..length).unwrap_or_default();
    let mut parts = run.split(|glyph| is_mark(*glyph)).map(digits);
    let number = Number {
        before: parts.next().unwrap_or_default(),
        after: parts.next(),
    };
    if parts.next().is_some() {
        return Err(LengthFault::TwoMarks);
    }
    match &number.after {
        Some(after) if run.contains(&Glyph::Comma) && after.len() == 3 && number.is_group() => {
            Err(LengthFault::CommaOrThousands {
                decimal: format!("{}.{after}", number.before),
                thousands: format!("{}{after}", number.before),
            })
        }
        _ => Ok((vec![Kind::Number(number)], length)),
    }
}

fn digits(part: &[Glyph]) -> String {
    let digit = |glyph: &Glyph| match glyph {
        Glyph::Digit(digit) => Some(char::from(b'0' + digit)),
        _ => None,
    };
    part.iter().filter_map(digit).collect()
}

/// The tokens that anything but a written number becomes, and how many glyphs they took.
fn other(first: Glyph, after: &[Glyph]) -> (Vec<Kind>, usize) {
    let kind = match first {
        Glyph::Space => return (Vec::new(), 1),
        Glyph::Letter(letter) => return word(letter, after),
        Glyph::Single if after.first() == Some(&Glyph::Single) => return (vec![Kind::InchMark], 2),
        // A fraction in one character is read as if it were written out.
        Glyph::Vulgar(over, under) => return (vec![whole(over), Kind::Slash, whole(under)], 1),
        Glyph::OneOver => return (vec![whole(1), Kind::Slash], 1),
        Glyph::Digit(digit) => whole(digit),
        Glyph::Pair(unit) => Kind::Word(unit.into()),
        Glyph::Point => Kind::Stop('.'),
        Glyph::Comma => Kind::Stop(','),
        Glyph::Semicolon => Kind::Stop(';'),
        Glyph::Plus => Kind::Plus,
        Glyph::Dash => Kind::Dash,
        Glyph::Slash => Kind::Slash,
        Glyph::Single => Kind::FootMark,
        Glyph::Double => Kind::InchMark,
        Glyph::About(c) => Kind::About(c),
        Glyph::Other(c) => Kind::Other(c),
    };
    (vec![kind], 1)
}

fn word(first: char, after: &[Glyph]) -> (Vec<Kind>, usize) {
    let letters = after.iter().map_while(|glyph| match glyph {
        Glyph::Letter(letter) => Some(*letter),
        _ => None,
    });
    let word: String = core::iter::once(first).chain(letters).collect();
    let length = word.chars().count();
    (vec![Kind::Word(word)], length)
}

fn whole(number: u8) -> Kind {
    Kind::Number(Number {
        before: number.to_string(),
        after: None,
    })
}
