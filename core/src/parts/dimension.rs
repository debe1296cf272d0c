//! Dimensions as they were given, and what is said where they come to nothing.

use super::expression::{Expression, ExpressionError, ExpressionFault, Lookup, Trouble, Value};
use super::request::DimensionRequest;
use crate::check::Checker;
use crate::given::Given;
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::{LengthFault, Mm, Unit};

/// A dimension that was read, not yet worked out.
#[derive(Clone, Debug)]
pub(super) enum Typed {
    Length(Mm),
    /// With the unit of its bare numbers, where that is its own.
    Sum(Expression, Option<Unit>),
}

impl Typed {
    /// Reads one that must be there.
    pub(super) fn read(
        field: &str,
        given: &Given<DimensionRequest>,
        check: &mut Checker<'_>,
    ) -> Option<Self> {
        match check.required(field, given)? {
            DimensionRequest::Mm(mm) => check
                .length(field, &(*mm).into(), &limits::WRITTEN)
                .map(Self::Length),
            DimensionRequest::Text(text) => sum(field, text, None, check),
            DimensionRequest::TextIn(text, unit) => sum(field, text, Some(*unit), check),
        }
    }

    pub(super) fn value(&self, unit: Unit, names: &Lookup<'_>) -> Result<Value, Trouble> {
        match self {
            Self::Length(length) => Ok(Value::length(*length)),
            Self::Sum(sum, own) => {
                let unit = own.unwrap_or(unit);
                Ok(sum.value(unit, names)?.typed_in(unit))
            }
        }
    }

    pub(super) fn length(&self, unit: Unit, names: &Lookup<'_>) -> Result<Mm, Trouble> {
        match self {
            Self::Length(length) => Ok(*length),
            Self::Sum(sum, own) => sum.length(own.unwrap_or(unit), names),
        }
    }

    /// Every name in it.
    pub(super) fn names(&self) -> Vec<&str> {
        match self {
            Self::Length(_) => Vec::new(),
            Self::Sum(sum, _) => sum.names(),
        }
    }
}

fn sum(field: &str, text: &str, unit: Option<Unit>, check: &mut Checker<'_>) -> Option<Typed> {
    match Expression::read(text) {
        Ok(sum) => Some(Typed::Sum(sum, unit)),
        Err(error) => {
            refuse_text(field, text, &error, check);
            None
        }
    }
}

fn refuse_text(field: &str, text: &str, error: &ExpressionError, check: &mut Checker<'_>) {
    const SHOWN: usize = 12;
    let code = match error.fault {
        ExpressionFault::Length(LengthFault::Empty) => Code::Missing,
        _ => Code::NotReadable,
    };
    let rest: String = text.chars().skip(error.at).take(SHOWN).collect();
    let message = if rest.is_empty() {
        message![error.to_string()]
    } else {
        message!["At «", rest, "»: ", error.to_string()]
    };
    check.refuse(field, code, message, None);
}

/// Says what is wrong with a field that comes to nothing; `known` are the names it could have used.
pub(super) fn refuse(field: &str, trouble: &Trouble, known: &[&str], check: &mut Checker<'_>) {
    let (code, message) = match trouble {
        // Said where the stock or the unit is.
        Trouble::NotKnown => return,
        Trouble::UnknownName(name) => (Code::UnknownName, unknown("measure", name, known)),
        Trouble::Unresolved(name) => (
            Code::Unresolved,
            message!["«", name, "» has a problem of its own; put that right."],
        ),
        Trouble::Circular(name) => (
            Code::Cycle,
            message![
                "This leads back to itself by way of «",
                name,
                "»; give one of them a length."
            ],
        ),
        Trouble::NotALength => (
            Code::NotALength,
            message![
                "Lengths multiplied, or one divided by another, are no length: multiply by plain numbers."
            ],
        ),
        Trouble::DivisionByZero => (
            Code::DivisionByZero,
            message!["This divides by zero: change what it is divided by."],
        ),
        Trouble::TooLarge => (
            Code::TooLarge,
            message!["This comes to more than a kilometre: stay below."],
        ),
    };
    check.refuse(field, code, message, None);
}

/// That there is no such name, and the one that was probably meant.
pub(super) fn unknown(what: &str, name: &str, known: &[&str]) -> message::Message {
    match super::names::nearest(name, known) {
        Some(near) => message!["There is no ", what, " «", name, "»; write «", near, "»?"],
        None => message![
            "There is no ",
            what,
            " «",
            name,
            "»: add it, or use one that is there."
        ],
    }
}
