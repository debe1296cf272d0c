//! An expression that says its unit, so that it comes to the same wherever it is read.

use super::{Expression, Kind, Node, Operator};
use crate::units::Unit;

impl Expression {
    /// The same with `unit` behind every number that is a length without one; names stand for lengths.
    ///
    /// ```
    /// use notchwright_core::parts::Expression;
    /// use notchwright_core::units::Unit;
    ///
    /// let between_sides = Expression::read("300 - 2*t")?;
    /// assert_eq!(between_sides.stated(Unit::Mm).to_string(), "300 mm - 2*t");
    /// # Ok::<(), notchwright_core::parts::ExpressionError>(())
    /// ```
    #[must_use]
    pub fn stated(mut self, unit: Unit) -> Self {
        state_within(&mut self.0, unit);
        if kind(&self.0) == Kind::Bare {
            state(&mut self.0, unit);
        }
        self
    }
}

/// What a node counts, where every name is a length.
fn kind(node: &Node) -> Kind {
    match node {
        Node::Literal(literal) if !literal.is_stated() => Kind::Bare,
        Node::Literal(_) | Node::Name(_) => Kind::Length,
        Node::Negative(node) => kind(node),
        Node::Two(operator, two) => {
            let [left, right] = two.as_ref();
            match (operator, kind(left), kind(right)) {
                (Operator::Divide, _, Kind::Length) | (_, Kind::Ratio, _) | (_, _, Kind::Ratio) => {
                    Kind::Ratio
                }
                (_, Kind::Bare, Kind::Bare) => Kind::Bare,
                _ => Kind::Length,
            }
        }
    }
}

/// States the unit wherever a bare side stands beside a length that it is added to, compared with or divided by.
fn state_within(node: &mut Node, unit: Unit) {
    match node {
        Node::Literal(_) | Node::Name(_) => {}
        Node::Negative(node) => state_within(node, unit),
        Node::Two(operator, two) => {
            let [left, right] = two.as_mut();
            state_within(left, unit);
            state_within(right, unit);
            match (operator, kind(left), kind(right)) {
                (Operator::Multiply, ..) | (Operator::Divide, Kind::Length, Kind::Bare) => {}
                (_, Kind::Bare, Kind::Length) => state(left, unit),
                (_, Kind::Length, Kind::Bare) => state(right, unit),
                _ => {}
            }
        }
    }
}

/// Makes a bare node a length.
fn state(node: &mut Node, unit: Unit) {
    match node {
        Node::Literal(literal) => *literal = literal.stated(unit),
        Node::Name(_) => {}
        Node::Negative(node) => state(node, unit),
        Node::Two(operator, two) => {
            let [left, right] = two.as_mut();
            state(left, unit);
            if !matches!(operator, Operator::Multiply | Operator::Divide) {
                state(right, unit);
            }
        }
    }
}
