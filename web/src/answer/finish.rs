//! From what the core answers to what is shown beside fields: for every tool that has a form of its own.

use std::rc::Rc;

use notchwright_core::given::Given;
use notchwright_core::message;
use notchwright_core::problem::{Checked, Code};

use super::FieldProblem;
use super::draft::Draft;
use super::tools::Outcome;

/// Says that there is nothing to read this part of the request from.
pub(super) fn none<T>(draft: &mut Draft<'_>, path: &'static str, says: &str) -> Given<T> {
    draft.refuse(path, None, message![says]);
    Given::Missing
}

/// What is missing is still to be typed; everything else is a problem beside its field.
pub(super) fn finish<T>(
    draft: Draft<'_>,
    checked: Checked<T>,
    before: &Outcome<T>,
    problems: &mut Vec<FieldProblem>,
) -> Outcome<T> {
    let (plan, refused) = match checked {
        Ok(planned) => (Some(Rc::new(planned)), Vec::new()),
        Err(refused) => (None, refused),
    };
    let (missing, refused): (Vec<_>, Vec<_>) = refused
        .into_iter()
        .partition(|problem| problem.code == Code::Missing);
    let mut needed: Vec<_> = missing
        .iter()
        .filter_map(|problem| draft.blank(&problem.field))
        .collect();
    needed.dedup();
    let found = draft.finish(refused);
    let current = plan.filter(|_| found.is_empty());
    let (of_fields, others): (Vec<_>, Vec<_>) =
        found.into_iter().partition(|found| found.field.is_some());
    problems.extend(of_fields);
    Outcome {
        is_current: current.is_some(),
        plan: current.or_else(|| before.plan.clone()),
        needed,
        refused: others.into_iter().map(|other| other.message).collect(),
    }
}
