//! Joints with slanted flanks. None of it is in what a first visit waits for: only [`answer`] may be called
//! from elsewhere, and only once it has come.

mod dovetail;
mod sliding;
#[cfg(test)]
mod tests;

use super::draft::Draft;
use super::finish::{finish, none};
use super::joint;
use super::tools::SlantedAnswer;
use crate::state::{JointKind, Work};

/// What follows from `work`; `before` is what followed last.
#[inline(never)]
pub(super) fn answer(work: &Work, before: Option<&SlantedAnswer>) -> SlantedAnswer {
    let mut answer = before.cloned().unwrap_or_default();
    answer.problems = Vec::new();
    match work.joint.kind {
        JointKind::Box => {}
        JointKind::Dovetail => dovetail::add(work, &mut answer),
        JointKind::Sliding => sliding::add(work, &mut answer),
    }
    answer
}
