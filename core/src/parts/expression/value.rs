//! What an expression comes to, and of which kind it is.
//!
//! A number without a unit is a length where it is added to one and a factor where it multiplies one: in `300 - 2*t`
//! the 300 is, the 2 is not. So a product of two such numbers cannot be told from a length; that of two lengths which
//! say their unit is refused.

use super::{Lookup, Node, Operator};
use crate::units::{Mm, Unit};

/// A number and what it counts.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Value {
    /// Millimetres for a length.
    pub(crate) number: f64,
    /// What it counts.
    pub(crate) kind: Kind,
    /// What it is in if it turns out to be a length, where that is not for whoever uses it to say: a measure was
    /// typed in a unit of its own.
    own: Option<Unit>,
}

/// What a [`Value`] counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// A number without a unit: a length or a factor, as it is used.
    Bare,
    /// A length over a length, which is no length again by itself.
    Ratio,
    /// Millimetres.
    Length,
}

/// Why an expression comes to nothing.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// A name that stands for nothing.
    UnknownName(String),
    /// A name whose own expression comes to nothing.
    Unresolved(String),
    /// A name that leads back to where it is used.
    Circular(String),
    /// What a name stands for, or the unit, is not known; whoever asks knows that already.
    NotKnown,
    /// A product of lengths, or a ratio where a length belongs.
    NotALength,
    /// A division by zero, or rounding to steps of zero.
    DivisionByZero,
    /// Beyond a kilometre.
    TooLarge,
}

/// A kilometre: beyond any part, and far inside the numbers that are exact.
const FARTHEST: f64 = 1e6;
/// What arithmetic leaves of nothing.
const NOTHING: f64 = 1e-9;

impl Value {
    /// A length.
    #[must_use]
    pub fn length(length: Mm) -> Self {
        Self {
            number: length.mm(),
            kind: Kind::Length,
            own: None,
        }
    }

    /// A number without a unit.
    #[must_use]
    pub fn bare(number: f64) -> Self {
        Self {
            number,
            kind: Kind::Bare,
            own: None,
        }
    }

    /// The same, remembering that its bare numbers are in `unit`, unless they are in another.
    pub(crate) fn typed_in(self, unit: Unit) -> Self {
        let own = self.own.or(Some(unit));
        Self { own, ..self }
    }

    /// The length it is where numbers without a unit of their own are in `unit`.
    ///
    /// # Errors
    /// [`Trouble::NotALength`] for a ratio, [`Trouble::TooLarge`] beyond a kilometre.
    pub fn as_length(self, unit: Unit) -> Result<Mm, Trouble> {
        let mm = match self.kind {
            Kind::Bare => self.number * self.own.unwrap_or(unit).length().mm(),
            Kind::Length => self.number,
            Kind::Ratio => return Err(Trouble::NotALength),
        };
        Mm::new(mm)
            .filter(|_| mm.abs() <= FARTHEST)
            .ok_or(Trouble::TooLarge)
    }
}

pub(super) fn of(node: &Node, unit: Unit, names: &Lookup<'_>) -> Result<Value, Trouble> {
    match node {
        Node::Literal(literal) if literal.is_stated() => literal
            .length(unit)
            .map(Value::length)
            .ok_or(Trouble::TooLarge),
        Node::Literal(literal) => Ok(Value::bare(literal.number())),
        Node::Name(name) => names(name),
        Node::Negative(node) => {
            let value = of(node, unit, names)?;
            Ok(Value {
                number: -value.number,
                ..value
            })
        }
        Node::Two(operator, two) => {
            let [left, right] = two.as_ref();
            let (left, right) = (of(left, unit, names)?, of(right, unit, names)?);
            let value = together(*operator, left, right, unit)?;
            Some(value)
                .filter(|value| value.number.is_finite())
                .ok_or(Trouble::TooLarge)
        }
    }
}

fn together(operator: Operator, a: Value, b: Value, unit: Unit) -> Result<Value, Trouble> {
    let (first, second) = (a, b);
    let by_nothing = b.number.abs() < NOTHING;
    let (a, b, kind) = match operator {
        Operator::Multiply => (a.number, b.number, product(a.kind, b.kind)?),
        Operator::Divide if b.kind != Kind::Length => {
            (a.number, b.number, product(a.kind, b.kind)?)
        }
        Operator::Divide => {
            let (a, b, _) = alike(a, b, unit)?;
            (a, b, Kind::Ratio)
        }
        _ => alike(a, b, unit)?,
    };
    let number = match operator {
        Operator::Divide | Operator::Round if by_nothing => return Err(Trouble::DivisionByZero),
        Operator::Add => a + b,
        Operator::Subtract => a - b,
        Operator::Multiply => a * b,
        Operator::Divide => a / b,
        Operator::Least => a.min(b),
        Operator::Greatest => a.max(b),
        Operator::Round => (a / b).round() * b,
    };
    // What a length is divided by is a factor, whatever unit was at hand.
    let own = match operator {
        Operator::Divide => first.own,
        _ => first.own.or(second.own),
    };
    Ok(Value { number, kind, own })
}

fn product(a: Kind, b: Kind) -> Result<Kind, Trouble> {
    match (a, b) {
        (Kind::Length, Kind::Length) => Err(Trouble::NotALength),
        (Kind::Length, _) | (_, Kind::Length) => Ok(Kind::Length),
        (Kind::Ratio, _) | (_, Kind::Ratio) => Ok(Kind::Ratio),
        (Kind::Bare, Kind::Bare) => Ok(Kind::Bare),
    }
}

/// Both as what they have to be to be added or compared.
fn alike(a: Value, b: Value, unit: Unit) -> Result<(f64, f64, Kind), Trouble> {
    let is_mixed = a.own.unwrap_or(unit) != b.own.unwrap_or(unit);
    match (a.kind, b.kind) {
        (Kind::Bare, Kind::Bare) if is_mixed => Ok((
            a.as_length(unit)?.mm(),
            b.as_length(unit)?.mm(),
            Kind::Length,
        )),
        (a_kind, b_kind) if a_kind == b_kind => Ok((a.number, b.number, a_kind)),
        (Kind::Ratio, Kind::Length) | (Kind::Length, Kind::Ratio) => Err(Trouble::NotALength),
        (Kind::Ratio, _) | (_, Kind::Ratio) => Ok((a.number, b.number, Kind::Ratio)),
        _ => Ok((
            a.as_length(unit)?.mm(),
            b.as_length(unit)?.mm(),
            Kind::Length,
        )),
    }
}
