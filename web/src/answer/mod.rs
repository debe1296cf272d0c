//! What follows from the state: worked out anew at each change, never stored.

mod bench;
mod draft;
mod joint;
mod sled;
mod spares;
#[cfg(test)]
mod tests;
pub mod tools;

use std::rc::Rc;

use notchwright_core::cutter::{CutterStackPlan, KerfPlan};
use notchwright_core::joint::box_joint::{BoxJointPlan, Choice, box_joint, choices};
use notchwright_core::message::Message;
use notchwright_core::problem::Planned;

use crate::state::{Field, StackForm, Work};
use draft::Draft;
use tools::SledAnswer;

/// What follows from the state.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Answer {
    /// What is wrong with what was typed, the joint's fields and the shop's.
    pub problems: Vec<FieldProblem>,
    /// The joint: the current plan, or the last good one while there are problems.
    pub joint: Option<Rc<Planned<BoxJointPlan>>>,
    /// Whether `joint` is no longer what the fields say: it must not be shown as if it were.
    pub is_stale: bool,
    /// Numbers of fingers to choose from, the best first; empty while boards, cutter or screw have problems.
    pub choices: Vec<Choice>,
    /// What the stack builder found, once its form is filled in.
    pub stack: Option<CutterStackPlan>,
    /// The kerf that made the stepped slot, once its form is filled in.
    pub kerf: Option<KerfPlan>,
    /// The sled's place, as it was when it was last open.
    pub sled: Option<Rc<SledAnswer>>,
    is_sled_open: bool,
    stack_of: StackForm,
    stack_problems: Vec<FieldProblem>,
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
    /// What follows from `work`; `before` is what followed from it last.
    #[must_use]
    pub fn new(work: &Work, before: &Self) -> Self {
        let mut draft = Draft::new(work);
        let request = joint::request(&mut draft);
        let choices = draft
            .has_read(&joint::CHOICES_FOLLOW_FROM)
            .then(|| choices(&joint::choices_request(&request)).ok())
            .flatten();
        let (plan, refused) = match box_joint(&request) {
            Ok(planned) => (Some(Rc::new(planned)), Vec::new()),
            Err(problems) => (None, problems),
        };
        let mut problems = draft.finish(refused);
        // A plan of a request with an unread field left out is not what the fields say.
        let current = plan.filter(|_| problems.is_empty());
        let (stack, stack_problems) = before.stack_again(work);
        let (kerf, kerf_problems) = bench::kerf(work);
        problems.extend(spares::problems(work));
        problems.extend_from_slice(&stack_problems);
        problems.extend(kerf_problems);
        Self {
            sled: before.sled.clone(),
            is_sled_open: false,
            problems,
            is_stale: current.is_none(),
            joint: current.or_else(|| before.joint.clone()),
            stack,
            stack_of: work.shop.stack.clone(),
            stack_problems,
            kerf,
            choices: choices
                .map(|planned| planned.plan.choices)
                .unwrap_or_default(),
        }
    }

    /// Adds what follows in the sled's place, which must have come.
    pub(crate) fn add_sled(&mut self, work: &Work) {
        let mut sled = sled::answer(work, self.sled.as_deref());
        // Some fields are the joint's as well, which has said what is wrong with them.
        sled.problems
            .retain(|problem| !self.problems.contains(problem));
        self.sled = Some(Rc::new(sled));
        self.is_sled_open = true;
    }

    /// A box full of shims takes long to look through: not again while nothing in it has changed.
    fn stack_again(&self, work: &Work) -> (Option<CutterStackPlan>, Vec<FieldProblem>) {
        if self.stack_of == work.shop.stack {
            (self.stack.clone(), self.stack_problems.clone())
        } else {
            bench::stack(work)
        }
    }

    /// What is wrong with `field`.
    pub fn problems_of(&self, field: Field) -> impl Iterator<Item = &Message> {
        self.about(Some(field))
    }

    /// What is wrong that belongs to no field.
    pub fn other_problems(&self) -> impl Iterator<Item = &Message> {
        self.about(None)
    }

    fn about(&self, field: Option<Field>) -> impl Iterator<Item = &Message> {
        let open = self.sled.as_ref().filter(|_| self.is_sled_open);
        let of_the_sled = open.into_iter().flat_map(|sled| &sled.problems);
        let all = self.problems.iter().chain(of_the_sled);
        all.filter(move |problem| problem.field == field)
            .map(|problem| &problem.message)
    }

    /// The plan, if it is what the fields say.
    #[must_use]
    pub fn current(&self) -> Option<&Planned<BoxJointPlan>> {
        self.joint.as_deref().filter(|_| !self.is_stale)
    }
}
