//! What follows from the state: worked out anew at each change, never stored.

use std::rc::Rc;

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::message::Message;
use notchwright_core::problem::Planned;

use crate::state::Field;

/// What follows from the state.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// What is wrong with what was typed, the joint's fields and the shop's.
    pub problems: Vec<FieldProblem>,
    /// The joint: the current plan, or the last good one while there are problems.
    pub joint: Option<Rc<Planned<BoxJointPlan>>>,
    /// Whether `joint` is no longer what the fields say: it must not be shown as if it were.
    pub is_stale: bool,
}

/// What is wrong with one field.
#[derive(Clone, Debug, PartialEq)]
pub struct FieldProblem {
    /// The field; `None` when it is about none that can be typed into.
    pub field: Option<Field>,
    /// What would work.
    pub message: Message,
}

impl Answer {
    /// What is wrong with `field`.
    pub fn problems_of(&self, field: Field) -> impl Iterator<Item = &Message> {
        self.about(Some(field))
    }

    /// What is wrong that belongs to no field.
    pub fn other_problems(&self) -> impl Iterator<Item = &Message> {
        self.about(None)
    }

    fn about(&self, field: Option<Field>) -> impl Iterator<Item = &Message> {
        self.problems
            .iter()
            .filter(move |problem| problem.field == field)
            .map(|problem| &problem.message)
    }

    /// The plan, if it is what the fields say.
    #[must_use]
    pub fn current(&self) -> Option<&Planned<BoxJointPlan>> {
        self.joint.as_deref().filter(|_| !self.is_stale)
    }
}
