//! One field as it was typed.

use std::borrow::Cow;

use notchwright_core::plain::Plain;
use notchwright_core::units::{Mm, Style, Unit, format_length, parse_length, write_number};

use super::field::Kind;
use super::stored::{Stored, field};

/// What was typed into one field, exactly, and the unit that lengths were then in.
///
/// It is kept even when nothing can make sense of it, and switching the unit only changes how it is
/// shown, so that switching back gives the same text again. A name or a count pays no heed to the unit.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Entry {
    /// The text.
    pub text: String,
    /// The unit of a length without one.
    pub unit: Unit,
}

/// No field needs more; what is longer is cut off when it is typed and when it is restored.
pub const LONGEST: usize = 400;

impl Entry {
    /// `text`, typed while lengths were in `unit`.
    #[must_use]
    pub fn new(text: &str, unit: Unit) -> Self {
        let text = match text.char_indices().nth(LONGEST) {
            Some((end, _)) => text.get(..end).unwrap_or_default(),
            None => text,
        };
        Self {
            text: text.to_owned(),
            unit,
        }
    }

    /// `text`, typed while lengths were in millimetres.
    #[must_use]
    pub fn mm(text: &str) -> Self {
        Self::new(text, Unit::Mm)
    }

    /// `length`, written in `unit` to a tenth of a micrometre.
    #[must_use]
    pub fn of(length: Mm, unit: Unit) -> Self {
        let decimals = match unit {
            Unit::Mm => 4,
            Unit::Inch => 6,
        };
        Self::new(&write_number(length / unit.length(), decimals), unit)
    }

    /// What the field shows while lengths are in `unit`: the text itself in the unit it was typed in,
    /// or when it is no length, and otherwise the same length converted.
    #[must_use]
    pub fn shown(&self, kind: Kind, unit: Unit) -> Cow<'_, str> {
        let converted = match kind {
            _ if unit == self.unit => None,
            Kind::Length | Kind::Sum => in_unit(&self.text, self.unit, unit),
            Kind::Lengths => all_in_unit(&self.text, self.unit, unit),
            Kind::Name | Kind::Number | Kind::Numbers => None,
        };
        converted.map_or_else(|| self.text.as_str().into(), Cow::from)
    }

    /// Whether nothing was typed.
    #[must_use]
    pub fn is_blank(&self) -> bool {
        self.text.trim().is_empty()
    }
}

/// A length in another unit, without its sign: to a micrometre, or in inches as a fraction where there
/// is an exact one.
fn in_unit(text: &str, from: Unit, to: Unit) -> Option<String> {
    let length = parse_length(text, from).ok()?;
    let fraction = || {
        let written = format_length(length, Style::usual(Unit::Inch));
        let number = written.text.strip_suffix(Unit::Inch.symbol())?;
        written.exact.then(|| number.to_owned())
    };
    Some(match to {
        Unit::Mm => write_number(length.mm(), 3),
        Unit::Inch => fraction().unwrap_or_else(|| write_number(length / Mm::INCH, 4)),
    })
}

/// A list of lengths in another unit, if all of them can be read.
fn all_in_unit(text: &str, from: Unit, to: Unit) -> Option<String> {
    let lengths = split_lengths(text).map(|length| in_unit(length, from, to));
    Some(lengths.collect::<Option<Vec<_>>>()?.join("; "))
}

/// The texts of a list of lengths: one a line, or separated by semicolons.
pub(crate) fn split_lengths(text: &str) -> impl Iterator<Item = &str> {
    text.split([';', '\n'])
        .filter(|length| !length.trim().is_empty())
}

/// Most entries are in millimetres, so these are stored as their text alone.
impl Stored for Entry {
    fn write(&self) -> Plain {
        let text = Plain::Text(self.text.clone());
        match self.unit {
            Unit::Mm => text,
            Unit::Inch => Plain::Object(vec![("in".to_owned(), text)]),
        }
    }

    fn read(&mut self, plain: &Plain) -> bool {
        let (text, unit) = match plain {
            Plain::Object(fields) => (field(fields, "in"), Unit::Inch),
            text => (Some(text), Unit::Mm),
        };
        let Some(Plain::Text(text)) = text else {
            return false;
        };
        *self = Self::new(text, unit);
        true
    }

    fn is_usual(&self) -> bool {
        *self == Self::default()
    }
}
