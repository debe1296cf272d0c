//! From bytes to a request of some shape, mostly legal.

use arbitrary::{Result, Unstructured};
use notchwright_core::limits;
use notchwright_core::plain::Plain;

use super::shapes::{Field, Shape};

/// Numbers that arithmetic trips over.
const TRAPS: [f64; 24] = [
    f64::NAN,
    f64::INFINITY,
    f64::NEG_INFINITY,
    -0.0,
    0.0,
    f64::MAX,
    f64::MIN,
    f64::MIN_POSITIVE,
    5e-324,
    1e308,
    -1e308,
    1e-300,
    1e-9,
    1e-6,
    1e-3,
    -1.0,
    0.5,
    1.0,
    2.0,
    1e9,
    1e15,
    4_294_967_296.0,
    9_007_199_254_740_993.0,
    1.8e19,
];

/// Texts that readers trip over.
const TEXTS: [&str; 24] = [
    "",
    " ",
    "NaN",
    "-0",
    "1e308",
    "0",
    "-1",
    "1/0",
    "3/4",
    "1 1/2",
    "2' 3-1/8\"",
    "19,05",
    "1,234",
    "½",
    "12 mm",
    "\"3/4\"",
    "≈ 1\"",
    "null",
    "99999999999999999999",
    "0.0000000001",
    "\u{202e}5",
    "5\u{0}",
    "🪚",
    "mm",
];

/// How a request is made: as usual, or with numbers from outside the usual.
pub(super) struct Builder<'a, 'b> {
    bytes: &'a mut Unstructured<'b>,
    /// Of eight numbers so many are unusual.
    unusual: u8,
    last: f64,
}

impl<'a, 'b> Builder<'a, 'b> {
    /// A builder that draws on these bytes.
    pub(super) fn new(bytes: &'a mut Unstructured<'b>, unusual: u8) -> Self {
        Self {
            bytes,
            unusual,
            last: 1.0,
        }
    }

    /// Something of this shape.
    pub(super) fn build(&mut self, shape: &Shape) -> Result<Plain> {
        Ok(match shape {
            Shape::Number(least, most) => self.number(*least, *most)?,
            Shape::Near(spread) => self.number(self.last - spread, self.last + spread)?,
            Shape::Whole(least, most) => self.whole(*least, *most)?,
            Shape::Word(words) => Plain::Text((*self.bytes.choose(words)?).to_owned()),
            Shape::Truth => Plain::Truth(self.bytes.arbitrary()?),
            Shape::Typed => Plain::Text(typed(self.bytes)?),
            Shape::List(least, most, item) => {
                let count = self.bytes.int_in_range(*least..=*most)?;
                let items = (0..count).map(|_| self.build(item)).collect::<Result<_>>();
                Plain::List(items?)
            }
            Shape::Object(fields) => {
                let mut object = Vec::new();
                for field in *fields {
                    self.add(field, &mut object)?;
                }
                Plain::Object(object)
            }
            Shape::Either(shapes) => {
                let shape = self.bytes.choose(shapes)?;
                self.build(shape)?
            }
        })
    }

    fn add(&mut self, field: &Field, object: &mut Vec<(String, Plain)>) -> Result<()> {
        match field {
            Field::Must(name, shape) => object.push(((*name).to_owned(), self.build(shape)?)),
            Field::May(name, shape) => {
                if self.bytes.ratio(1_u8, 3)? {
                    object.push(((*name).to_owned(), self.build(shape)?));
                }
            }
            Field::Either(groups) => {
                for field in *self.bytes.choose(groups)? {
                    self.add(field, object)?;
                }
            }
        }
        Ok(())
    }

    fn number(&mut self, least: f64, most: f64) -> Result<Plain> {
        let number = match self.is_unusual()? {
            true => self.outside()?,
            false => self.inside(least, most)?,
        };
        Ok(self.noted(number))
    }

    fn whole(&mut self, least: u32, most: u32) -> Result<Plain> {
        let number = match self.is_unusual()? {
            true => self.outside()?,
            false => f64::from(self.bytes.int_in_range(least..=most)?),
        };
        Ok(self.noted(number))
    }

    fn noted(&mut self, number: f64) -> Plain {
        self.last = number;
        Plain::Number(number)
    }

    fn is_unusual(&mut self) -> Result<bool> {
        Ok(self.unusual > 0 && self.bytes.int_in_range(0..=7_u8)? < self.unusual)
    }

    /// People measure in tenths, in whole millimetres and in fractions of an inch more often than between them.
    fn inside(&mut self, least: f64, most: f64) -> Result<f64> {
        let share = f64::from(self.bytes.arbitrary::<u16>()?) / f64::from(u16::MAX);
        let number = least + (most - least) * share;
        let rounded = match self.bytes.int_in_range(0..=5_u8)? {
            0 => number,
            1 => number.round(),
            2 => (number / 25.4 * 64.0).round() * 25.4 / 64.0,
            3 => self.last,
            _ => (number * 10.0).round() / 10.0,
        };
        // A value that came before makes things alike that usually differ.
        Ok(if (least..=most).contains(&rounded) {
            rounded
        } else {
            number
        })
    }

    fn outside(&mut self) -> Result<f64> {
        outside(self.bytes, self.last)
    }
}

/// A number from nowhere, or at a bound of what is allowed.
pub(super) fn outside(bytes: &mut Unstructured<'_>, last: f64) -> Result<f64> {
    Ok(match bytes.int_in_range(0..=5_u8)? {
        0 => *bytes.choose(&TRAPS)?,
        1 => bytes.arbitrary()?,
        2 => last * *bytes.choose(&[-1.0, 0.5, 2.0, 10.0, 1e-3])?,
        3 => *bytes.choose(&[last.next_down(), last.next_up(), last - 1e-9, last + 1e-6])?,
        _ => {
            let limit = bytes.choose(limits::ALL)?;
            let bound = *bytes.choose(&[limit.least, limit.most])?;
            *bytes.choose(&[bound, bound, bound.next_down(), bound.next_up()])?
        }
    })
}

/// A length as somebody types it, or something else.
pub(super) fn typed(bytes: &mut Unstructured<'_>) -> Result<String> {
    const PARTS: [&str; 32] = [
        "0", "1", "2", "3", "5", "12", "16", "64", "100", "1234", "/", "-", " ", ".", ",", "'",
        "\"", "½", "⅛", "⁄", "mm", "cm", "m", "in", "ft", "+", "−", "\u{a0}", "″", "′", "≈", "e",
    ];
    Ok(match bytes.int_in_range(0..=3_u8)? {
        0 => (*bytes.choose(&TEXTS)?).to_owned(),
        1 => bytes.arbitrary::<&str>()?.chars().take(64).collect(),
        _ => {
            let count = bytes.int_in_range(1..=10_u8)?;
            (0..count)
                .map(|_| bytes.choose(&PARTS).copied())
                .collect::<Result<_>>()?
        }
    })
}
