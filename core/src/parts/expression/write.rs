//! Writes an expression so that the same one is read again.

use core::fmt;

use super::read::FUNCTIONS;
use super::{Expression, Node, Operator};

impl fmt::Display for Expression {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl fmt::Display for Node {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Literal(literal) => literal.fmt(f),
            Self::Name(name) => f.write_str(name),
            Self::Negative(node) => {
                f.write_str("-")?;
                node.within(node.strength() < SIGN || node.is_feet(), f)
            }
            Self::Two(operator, two) => {
                let [left, right] = two.as_ref();
                if let Some((name, _)) = FUNCTIONS.iter().find(|(_, known)| known == operator) {
                    return write!(f, "{name}({left}; {right})");
                }
                left.within(left.strength() < self.strength() || left.is_feet(), f)?;
                f.write_str(match operator {
                    Operator::Add => " + ",
                    Operator::Subtract => " - ",
                    Operator::Divide => "/",
                    _ => "*",
                })?;
                let joins = *operator == Operator::Divide
                    && matches!(right, Self::Literal(_))
                    && (left.ends_in_literal() || right.to_string().contains('/'));
                right.within(
                    right.strength() <= self.strength() || right.is_feet() || joins,
                    f,
                )
            }
        }
    }
}

const SUM: u8 = 0;
const PRODUCT: u8 = 1;
const SIGN: u8 = 2;

impl Node {
    fn within(&self, brackets: bool, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if brackets {
            write!(f, "({self})")
        } else {
            write!(f, "{self}")
        }
    }

    /// How strongly its parts hold together.
    fn strength(&self) -> u8 {
        match self {
            Self::Two(Operator::Add | Operator::Subtract, _) => SUM,
            Self::Two(Operator::Multiply | Operator::Divide, _) => PRODUCT,
            _ => SIGN,
        }
    }

    /// Whether a dash behind it could join inches to it.
    fn is_feet(&self) -> bool {
        matches!(self, Self::Literal(literal) if literal.is_in_feet())
    }

    /// Whether a stroke behind it could make a fraction of its last number.
    fn ends_in_literal(&self) -> bool {
        match self {
            Self::Literal(_) => true,
            Self::Negative(node) => node.ends_in_literal(),
            Self::Two(Operator::Multiply | Operator::Divide, two) => {
                let [_, last] = two.as_ref();
                last.ends_in_literal()
            }
            _ => false,
        }
    }
}
