//! What follows from the state: worked out anew at each change, never stored.

mod bench;
pub mod course;
mod draft;
mod finish;
mod joint;
pub(crate) mod making;
mod pieces;
mod slanted;
mod sled;
pub(crate) mod spoken;
#[cfg(test)]
mod tests;
pub mod tools;

use std::rc::Rc;

use notchwright_core::cutter::{CutterStackPlan, KerfPlan};
use notchwright_core::joint::box_joint::{BoxJointPlan, Choice};
use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::message::Message;
use notchwright_core::problem::{Note, Planned};
use notchwright_core::stop::Set;

use crate::model::Chunk;
use crate::state::{Field, JointKind, Order, Work};
use course::Course;
pub use pieces::Pieces;
use tools::{MakingAnswer, ShopAnswer, SlantedAnswer, SledAnswer};

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
    /// The shop, as it was when it was last open.
    pub shop: Option<Rc<ShopAnswer>>,
    /// The sled's place, as it was when it was last open.
    pub sled: Option<Rc<SledAnswer>>,
    /// What is made, as it was when its place was last open.
    pub making: Option<Rc<MakingAnswer>>,
    /// The joint with slanted flanks, as it was when it was last open.
    pub slanted: Option<Rc<SlantedAnswer>>,
    /// The boards that the joint is cut on.
    pub pieces: Pieces,
    /// Whose problems are the fields' that are shown now.
    open: Option<Chunk>,
    kind: JointKind,
}

/// What is cut at the saw, whatever the joint.
#[derive(Clone, Copy, Debug)]
pub struct Cut<'a> {
    /// Its set-ups with their stops.
    pub sets: &'a [Set],
    /// What to know before.
    pub notes: &'a [Note],
    /// Of which joint.
    pub of: Of<'a>,
}

/// A joint's plan.
#[derive(Clone, Copy, Debug)]
pub enum Of<'a> {
    /// Of a box joint.
    Box(&'a BoxJointPlan),
    /// Of dovetails.
    Dovetail(&'a DovetailPlan),
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
        let (joint, choices, mut problems) = match work.joint.kind {
            JointKind::Box => joint::answer(work),
            JointKind::Dovetail | JointKind::Sliding => Default::default(),
        };
        let (pieces, problem) = Pieces::read(&work.joint.pieces);
        problems.extend(problem);
        Self {
            sled: before.sled.clone(),
            slanted: before.slanted.clone(),
            making: before.making.clone(),
            open: None,
            kind: work.joint.kind,
            problems,
            is_stale: joint.is_none(),
            joint: joint.or_else(|| before.joint.clone()),
            shop: before.shop.clone(),
            choices,
            pieces,
        }
    }

    /// Adds what a part of the program works out, which must have come.
    pub(crate) fn add(&mut self, chunk: Chunk, work: &Work) {
        match chunk {
            Chunk::Shop => {
                let shop = bench::answer(work, self.shop.as_deref());
                self.shop = Some(Rc::new(shop));
            }
            Chunk::Sled => self.add_sled(work),
            Chunk::Dovetail => {
                let mut slanted = slanted::answer(work, self.slanted.as_deref());
                self.leave_out_said(&mut slanted.problems);
                self.slanted = Some(Rc::new(slanted));
            }
            Chunk::Parts => {
                let making = making::answer(work, self.making.as_deref());
                self.making = Some(Rc::new(making));
            }
            // It shows what there is.
            Chunk::Jobs => return,
        }
        self.open = Some(chunk);
    }

    fn add_sled(&mut self, work: &Work) {
        let mut sled = sled::answer(work, self.sled.as_deref());
        self.leave_out_said(&mut sled.problems);
        self.sled = Some(Rc::new(sled));
    }

    /// Some fields are asked by several: what the joint or the shop has said of them is not said again.
    fn leave_out_said(&self, problems: &mut Vec<FieldProblem>) {
        problems.retain(|problem| !self.problems.contains(problem));
    }

    /// What the stack builder found, once its form is filled in.
    #[must_use]
    pub fn stack(&self) -> Option<&CutterStackPlan> {
        self.shop.as_ref()?.stack.as_ref()
    }

    /// The kerf that made the stepped slot, once its form is filled in.
    #[must_use]
    pub fn kerf(&self) -> Option<&KerfPlan> {
        self.shop.as_ref()?.kerf.as_ref()
    }

    /// What is wrong with `field`.
    pub fn problems_of(&self, field: Field) -> impl Iterator<Item = &Message> {
        self.about(Some(field))
    }

    /// Whether a tool of the open part of the program still needs `field`.
    #[must_use]
    pub fn needs(&self, field: Field) -> bool {
        let needed: &[&[Field]] = match (self.open, &self.sled, &self.making) {
            (Some(Chunk::Sled), Some(sled), _) => &[&sled.fit.needed, &sled.groove.needed],
            (Some(Chunk::Parts), _, Some(making)) => &[&making.needed],
            _ => &[],
        };
        needed.iter().any(|fields| fields.contains(&field))
    }

    /// What is wrong that belongs to no field.
    pub fn other_problems(&self) -> impl Iterator<Item = &Message> {
        self.about(None)
    }

    fn about(&self, field: Option<Field>) -> impl Iterator<Item = &Message> {
        let all = self.shown_problems();
        all.filter(move |problem| problem.field == field)
            .map(|problem| &problem.message)
    }

    /// What is wrong with anything that is shown, with what the open part of the program says.
    pub fn shown_problems(&self) -> impl Iterator<Item = &FieldProblem> {
        let later = match self.open {
            Some(Chunk::Sled) => self.sled.as_ref().map(|sled| &sled.problems),
            Some(Chunk::Dovetail) => self.slanted.as_ref().map(|slanted| &slanted.problems),
            Some(Chunk::Shop) => self.shop.as_ref().map(|shop| &shop.problems),
            Some(Chunk::Parts) => self.making.as_ref().map(|making| &making.problems),
            Some(Chunk::Jobs) | None => None,
        };
        self.problems.iter().chain(later.into_iter().flatten())
    }

    /// What is cut at the saw, if the fields say what.
    #[must_use]
    pub fn cut(&self) -> Option<Cut<'_>> {
        if self.kind == JointKind::Box {
            let planned = self.current()?;
            return Some(Cut {
                sets: &planned.plan.sets,
                notes: &planned.notes,
                of: Of::Box(&planned.plan),
            });
        }
        let planned = self.slanted.as_ref()?.dovetail.current()?;
        (self.kind == JointKind::Dovetail).then_some(Cut {
            sets: &planned.plan.sets,
            notes: &planned.notes,
            of: Of::Dovetail(&planned.plan),
        })
    }

    /// The way through the cutting, if the fields say what is cut.
    #[must_use]
    pub fn course(&self, order: Order) -> Option<Course<'_>> {
        let cut = self.cut()?;
        Some(Course::new(cut.sets, &self.pieces, order))
    }

    /// The box joint's plan, if it is what the fields say.
    #[must_use]
    pub fn current(&self) -> Option<&Planned<BoxJointPlan>> {
        self.joint.as_deref().filter(|_| !self.is_stale)
    }
}
