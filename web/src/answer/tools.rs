//! What parts of the program that come later than the page work out, as plain data.

use std::rc::Rc;

use notchwright_core::cutter::{CutterStackPlan, KerfPlan};
use notchwright_core::drawer::DrawerBoxPlan;
use notchwright_core::groove::GrooveSetupPlan;
use notchwright_core::joint::dovetail::{self, DovetailPlan};
use notchwright_core::joint::sliding::SlidingDovetailPlan;
use notchwright_core::message::Message;
use notchwright_core::parts::PartsDraft;
use notchwright_core::problem::{Planned, Problem};
use notchwright_core::screw_check::ScrewCheckPlan;
use notchwright_core::sheet::{SearchReached, SheetLayoutPlan, SheetLayoutRequest};
use notchwright_core::sled::SledFitPlan;
use notchwright_core::square::SquareTestPlan;
use notchwright_core::units::Mm;

use super::FieldProblem;
use crate::state::{Field, Id, Mark, StackForm};

/// What follows for the chosen sled on the chosen saw.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SledAnswer {
    /// The runner and the stroke.
    pub fit: Outcome<SledFitPlan>,
    /// The strip of the five-cut test.
    pub square: Outcome<SquareTestPlan>,
    /// Earlier tests of the chosen sled, the oldest first.
    pub tests: Vec<KeptTest>,
    /// The screw's table.
    pub screw: Outcome<ScrewCheckPlan>,
    /// The groove on the router table.
    pub groove: Outcome<GrooveSetupPlan>,
    /// What is wrong with what was typed here, and with the saw's and the sled's fields.
    pub problems: Vec<FieldProblem>,
}

/// What follows in the shop.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct ShopAnswer {
    /// What the stack builder found, once its form is filled in.
    pub stack: Option<CutterStackPlan>,
    /// The kerf that made the stepped slot, once its form is filled in.
    pub kerf: Option<KerfPlan>,
    /// What is wrong with what was typed there.
    pub problems: Vec<FieldProblem>,
    pub(super) stack_of: StackForm,
    pub(super) stack_problems: Vec<FieldProblem>,
}

/// What follows for joints with slanted flanks.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SlantedAnswer {
    /// Dovetails.
    pub dovetail: Outcome<DovetailPlan>,
    /// Numbers of tails to choose from, the best first.
    pub choices: Vec<dovetail::Choice>,
    /// A sliding dovetail.
    pub sliding: Outcome<SlidingDovetailPlan>,
    /// What is wrong with what was typed.
    pub problems: Vec<FieldProblem>,
}

/// What follows for what is made.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct MakingAnswer {
    /// Drawers.
    pub drawer: Outcome<DrawerBoxPlan>,
    /// The parts, as far as they could be worked out.
    pub parts: PartsDraft,
    /// Its parts laid out on sheets.
    pub sheet: SheetAnswer,
    /// Fields of the open tool that must still be filled in.
    pub needed: Vec<Field>,
    /// What is wrong with what was typed.
    pub problems: Vec<FieldProblem>,
}

/// What follows for sheets that are cut up.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct SheetAnswer {
    /// The layout.
    pub layout: Outcome<SheetLayoutPlan>,
    /// How far the search for it has come; nothing before its first slice.
    pub reached: Option<SearchReached>,
    /// Which layout it is.
    pub mark: Mark,
    /// Whether there are sheets, and parts to be cut from them.
    pub can_search: bool,
    /// Stocks that parts are made of and no sheet.
    pub without_sheets: Vec<String>,
    pub(crate) request: Rc<SheetLayoutRequest>,
    pub(crate) refused: Vec<Problem>,
}

impl SheetAnswer {
    /// Whether its layout is this one, and what the fields say.
    #[must_use]
    pub fn is_of(&self, mark: Mark) -> bool {
        self.layout.is_current && self.mark.layout == mark.layout
    }
}

/// What came of one tool.
#[derive(Clone, Debug, PartialEq)]
pub struct Outcome<T> {
    /// The current plan, or the last good one.
    pub plan: Option<Rc<Planned<T>>>,
    /// Whether `plan` is what the fields say.
    pub is_current: bool,
    /// Fields that must still be filled in.
    pub needed: Vec<Field>,
    /// What is wrong that belongs to no field.
    pub refused: Vec<Message>,
}

impl<T> Default for Outcome<T> {
    fn default() -> Self {
        Self {
            plan: None,
            is_current: false,
            needed: Vec::new(),
            refused: Vec::new(),
        }
    }
}

impl<T> Outcome<T> {
    /// The plan, if it is what the fields say.
    #[must_use]
    pub fn current(&self) -> Option<&Planned<T>> {
        self.plan.as_deref().filter(|_| self.is_current)
    }
}

/// A five-cut test that was kept, worked out again.
#[derive(Clone, Debug, PartialEq)]
pub struct KeptTest {
    /// Which one.
    pub id: Id,
    /// The day it was made.
    pub date: String,
    /// The error as mm over 500 mm; nothing when the strip cannot be read any more.
    pub per500: Option<Mm>,
    /// What the readings leave uncertain of it.
    pub uncertainty: Mm,
}
