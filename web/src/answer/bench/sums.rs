//! The sums in the shop: a stack for a wanted width, and a kerf from a stepped slot.

use notchwright_core::cutter::{
    CutterStackPlan, CutterStackRequest, KerfFromSlotRequest, KerfPlan, build_stack, measure_kerf,
};
use notchwright_core::problem::{Checked, Code};

use super::{Draft, FieldProblem};
use crate::state::{Field, SlotField, StackField, Work};

/// The stacks nearest the wanted width, once the form is filled in.
pub(super) fn stack(work: &Work) -> (Option<CutterStackPlan>, Vec<FieldProblem>) {
    let mut draft = Draft::new(work);
    let request = CutterStackRequest {
        outer: draft.lengths("outer", Field::Stack(StackField::Outer)),
        chippers: draft.lengths("chippers", Field::Stack(StackField::Chippers)),
        shims: draft.lengths("shims", Field::Stack(StackField::Shims)),
        want: draft.length("want", Field::Stack(StackField::Want)),
    };
    finish(draft, build_stack(&request))
}

/// The kerf that made the slot, once the form is filled in.
pub(super) fn kerf(work: &Work) -> (Option<KerfPlan>, Vec<FieldProblem>) {
    let mut draft = Draft::new(work);
    let request = KerfFromSlotRequest {
        steps: draft.number("steps", Field::Slot(SlotField::Kerfs)),
        step: draft.length("step", Field::Slot(SlotField::Step)),
        slot_width: draft.length("slotWidth", Field::Slot(SlotField::Width)),
    };
    finish(draft, measure_kerf(&request))
}

/// A form that is still half filled in has no answer, but no problem either.
fn finish<T>(draft: Draft<'_>, answer: Checked<T>) -> (Option<T>, Vec<FieldProblem>) {
    match answer {
        Ok(planned) => {
            let problems = draft.finish(Vec::new());
            let plan = problems.is_empty().then_some(planned.plan);
            (plan, problems)
        }
        Err(mut problems) => {
            problems.retain(|problem| problem.code != Code::Missing);
            (None, draft.finish(problems))
        }
    }
}
