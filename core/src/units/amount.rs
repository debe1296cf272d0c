//! Numbers as a shop writes them: whole, decimal, fraction, whole and fraction. Kept as an exact
//! fraction until the unit is known, so that 3/4 in is 19.05 mm to the last bit.

use core::fmt;

use super::error::LengthFault;
use super::token::{Kind, Number, Refusal, Token};

/// A number as `over / under`; `under` is never zero.
///
/// `over` stays below 10²⁷ and `under` at or below 10¹⁸, so that both can be scaled by any unit in
/// 128 bits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Amount {
    pub(super) over: u128,
    pub(super) under: u128,
}

impl Amount {
    pub(super) const fn is_whole(self) -> bool {
        self.over.is_multiple_of(self.under)
    }

    pub(super) const fn is_below(self, whole: u128) -> bool {
        self.over < whole * self.under
    }
}

/// With a point where `under` is a power of ten, so that the very same amount is read from it.
impl fmt::Display for Amount {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let mut decimals = 0;
        let mut power = 1;
        while power < self.under {
            power *= 10;
            decimals += 1;
        }
        match (self.over / self.under, self.over % self.under) {
            (whole, _) if self.under == 1 => write!(f, "{whole}"),
            (whole, part) if power == self.under => write!(f, "{whole}.{part:0decimals$}"),
            (0, over) => write!(f, "{over}/{}", self.under),
            (whole, over) => write!(f, "{whole} {over}/{}", self.under),
        }
    }
}

/// More digits than this are a slip of the hand; these still fit the arithmetic.
const MOST_DIGITS: usize = 18;
/// The same for a number beside or inside a fraction, where two are multiplied.
const MOST_IN_FRACTION: usize = 9;

/// The tokens not yet read.
pub(crate) struct Cursor<'a> {
    pub(crate) rest: &'a [Token],
    /// The place just behind the text.
    pub(crate) end: usize,
}

impl<'a> Cursor<'a> {
    pub(crate) fn peek(&self) -> Option<&'a Kind> {
        self.rest.first().map(|token| &token.kind)
    }

    /// Where the next token is, for a caret.
    pub(crate) fn at(&self) -> usize {
        self.rest.first().map_or(self.end, |token| token.at)
    }

    pub(crate) fn skip(&mut self) {
        self.rest = self.rest.get(1..).unwrap_or_default();
    }

    /// Takes the next token if it is `kind`.
    pub(crate) fn take(&mut self, kind: &Kind) -> bool {
        let found = self.peek() == Some(kind);
        if found {
            self.skip();
        }
        found
    }

    /// Reads one number: `12`, `19.05`, `3/4`, `1 3/4` or `1-3/4`.
    pub(super) fn amount(&mut self) -> Result<Amount, Refusal> {
        let at = self.at();
        let first = self.number()?;
        match self.rest {
            [
                Token {
                    kind: Kind::Slash, ..
                },
                ..,
            ] => self.fraction(at, first),
            [
                Token {
                    kind: Kind::Number(_),
                    ..
                },
                Token {
                    kind: Kind::Slash, ..
                },
                ..,
            ] => self.mixed(at, first),
            // With spaces round the dash it could as well be a subtraction.
            [
                Token {
                    kind: Kind::Dash,
                    spaced: false,
                    ..
                },
                Token {
                    kind: Kind::Number(_),
                    spaced: false,
                    ..
                },
                Token {
                    kind: Kind::Slash, ..
                },
                ..,
            ] => {
                self.skip();
                self.mixed(at, first)
            }
            _ => self.plain(at, first),
        }
    }

    /// Reads one whole or decimal number, and leaves a stroke behind it.
    pub(super) fn decimal(&mut self) -> Result<Amount, Refusal> {
        let at = self.at();
        let number = self.number()?;
        self.plain(at, number)
    }

    fn number(&mut self) -> Result<&'a Number, Refusal> {
        let fault = match self.peek() {
            Some(Kind::Number(number)) => {
                self.skip();
                return Ok(number);
            }
            Some(Kind::Slash) => LengthFault::BrokenFraction,
            Some(Kind::FootMark | Kind::InchMark) => LengthFault::QuoteMarks,
            Some(Kind::Other(c)) => LengthFault::Unexpected(*c),
            _ => LengthFault::NotANumber,
        };
        Err((self.at(), fault))
    }

    /// A whole or decimal number, already taken.
    fn plain(&self, at: usize, number: &Number) -> Result<Amount, Refusal> {
        if let Some(joined) = self.spaced_digits(number) {
            let is_readable = joined.len() <= MOST_DIGITS;
            let fault = if is_readable {
                LengthFault::SpacedDigits { joined }
            } else {
                LengthFault::TooManyDigits
            };
            return Err((at, fault));
        }
        let after = number.after.as_deref().unwrap_or_default();
        if after.len() > MOST_DIGITS {
            return Err((at, LengthFault::TooManyDigits));
        }
        let over = value(&format!("{}{after}", number.before), MOST_DIGITS)
            .map_err(|fault| (at, fault))?;
        let under = after.bytes().fold(1, |power, _| power * 10);
        Ok(Amount { over, under })
    }

    /// What `first` and the groups of three digits behind it would be in one piece, which has one mark at most.
    fn spaced_digits(&self, first: &Number) -> Option<String> {
        let groups = self.rest.iter().map_while(|token| match &token.kind {
            Kind::Number(number) if number.before.len() == 3 => Some(number),
            _ => None,
        });
        let is_one = first.after.is_none() && first.is_group();
        let mut joined = first.before.clone();
        let mut has_mark = false;
        for group in groups.clone() {
            if has_mark {
                return None;
            }
            joined.push_str(&group.before);
            if let Some(after) = &group.after {
                has_mark = true;
                joined.push('.');
                joined.push_str(after);
            }
        }
        (is_one && groups.count() > 0).then_some(joined)
    }

    /// A whole number, already taken, and the fraction that comes next.
    fn mixed(&mut self, at: usize, whole: &Number) -> Result<Amount, Refusal> {
        let whole = part(whole).map_err(|fault| (at, fault))?;
        let at = self.at();
        let over = self.number()?;
        let Amount { over, under } = self.fraction(at, over)?;
        let all = whole * under + over;
        if over >= under {
            return Err((
                at,
                LengthFault::FractionPastOne {
                    better: written(all, under),
                },
            ));
        }
        Ok(Amount { over: all, under })
    }

    /// A fraction whose upper number is already taken and whose stroke comes next.
    fn fraction(&mut self, at: usize, over: &Number) -> Result<Amount, Refusal> {
        let over = part(over).map_err(|fault| (at, fault))?;
        self.skip();
        let at = self.at();
        let under = self
            .number()
            .map_err(|(at, _)| (at, LengthFault::BrokenFraction))?;
        match part(under).map_err(|fault| (at, fault))? {
            0 => Err((at, LengthFault::ZeroBelow)),
            under => Ok(Amount { over, under }),
        }
    }
}

/// A number beside or inside a fraction, which has to be whole.
fn part(number: &Number) -> Result<u128, LengthFault> {
    match number.after {
        Some(_) => Err(LengthFault::DecimalWithFraction),
        None => value(&number.before, MOST_IN_FRACTION),
    }
}

fn value(digits: &str, most: usize) -> Result<u128, LengthFault> {
    if digits.trim_start_matches('0').len() > most {
        return Err(LengthFault::TooManyDigits);
    }
    Ok(digits
        .bytes()
        .fold(0, |sum, digit| sum * 10 + u128::from(digit - b'0')))
}

/// A fraction as it should have been written, such as `2 1/4`.
fn written(over: u128, under: u128) -> String {
    match (over / under, over % under) {
        (whole, 0) => whole.to_string(),
        (whole, rest) => format!("{whole} {rest}/{under}"),
    }
}
