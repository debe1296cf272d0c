//! A dimension as it is written: a length, or a sum over names such as `300 - 2*t`.
//!
//! Numbers, fractions and units are read by [`crate::units`]; here is only what stands between them. A name is one
//! word of letters of any script, digits and `_`, upper and lower case alike in A to Z, and does not begin with a
//! digit. Multiplied are `*`, `×` and `·`, divided `/` and `÷`; `min(a; b)`, `max(a; b)` and `round(a; step)` take
//! two values with a semicolon between them, since a comma may be a decimal mark.
//!
//! Written by hand, since no crate fits: compressed, fasteval 0.2 weighs 44 KB and meval 0.2 42 KB, both not kept up
//! for years, exmex 0.21 238 KB with its regex engine, and it is mistaken in sums such as `t - 1 - 1 - 1 + 2`;
//! evalexpr 13 is under the AGPL. And each would need a reader of `11 1/2"` before it and the [`Kind`]s behind it,
//! which together are most of what is here.

mod error;
mod read;
mod stated;
#[cfg(test)]
mod tests;
mod value;
mod write;

pub use error::{ExpressionError, ExpressionFault};
pub(crate) use read::{FUNCTIONS, is_name};
pub use value::{Kind, Trouble, Value};

use crate::units::{Literal, Mm, Unit};

/// An expression that was read; `Display` writes it so that the same one is read again.
#[derive(Clone, Debug, PartialEq)]
pub struct Expression(Node);

#[derive(Clone, Debug, PartialEq)]
enum Node {
    Literal(Literal),
    Name(String),
    Negative(Box<Node>),
    Two(Operator, Box<[Node; 2]>),
}

/// What is done with two values.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Operator {
    Add,
    Subtract,
    Multiply,
    Divide,
    Least,
    Greatest,
    /// The first rounded to a whole number of the second.
    Round,
}

/// What a name stands for.
pub type Lookup<'a> = dyn Fn(&str) -> Result<Value, Trouble> + 'a;

impl Expression {
    /// Reads an expression.
    ///
    /// ```
    /// use notchwright_core::parts::{Expression, Value};
    /// use notchwright_core::units::{Mm, Unit};
    ///
    /// let between_sides = Expression::read("11 1/2 - 2*t")?;
    /// let t = |_: &str| Ok(Value::length(Mm::constant(12.7)));
    /// assert_eq!(between_sides.length(Unit::Inch, &t), Ok(Mm::constant(266.7)));
    ///
    /// let error = Expression::read("300 2*t").unwrap_err();
    /// assert_eq!(error.at, 4);
    /// # Ok::<(), notchwright_core::parts::ExpressionError>(())
    /// ```
    ///
    /// # Errors
    /// [`ExpressionError`] for a text that is none, or that can be read in two ways.
    pub fn read(text: &str) -> Result<Self, ExpressionError> {
        read::read(text).map(Self)
    }

    /// Its value where numbers without a unit are in `unit`.
    ///
    /// # Errors
    /// [`Trouble`] with a name or with the sum itself.
    pub fn value(&self, unit: Unit, names: &Lookup<'_>) -> Result<Value, Trouble> {
        value::of(&self.0, unit, names)
    }

    /// The same, where it has to be a length.
    ///
    /// # Errors
    /// [`Trouble`] with a name or with the sum itself.
    pub fn length(&self, unit: Unit, names: &Lookup<'_>) -> Result<Mm, Trouble> {
        match self.0 {
            // Exact: no conversion after a division.
            Node::Literal(literal) => literal.length(unit).ok_or(Trouble::TooLarge),
            _ => self.value(unit, names)?.as_length(unit),
        }
    }

    /// Every name in it, in the order written.
    pub(crate) fn names(&self) -> Vec<&str> {
        let mut names = Vec::new();
        let mut nodes = vec![&self.0];
        while let Some(node) = nodes.pop() {
            match node {
                Node::Literal(_) => {}
                Node::Name(name) => names.push(name.as_str()),
                Node::Negative(node) => nodes.push(node),
                Node::Two(_, two) => nodes.extend(two.iter().rev()),
            }
        }
        names
    }
}
