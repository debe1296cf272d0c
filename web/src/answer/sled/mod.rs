//! What follows in the sled's place. None of it is in what a first visit waits for: only [`answer`] and [`parts`]
//! may be called from elsewhere, and only once it has come.

mod fit;
mod groove;
mod screw;
mod square;
#[cfg(test)]
mod tests;

use notchwright_core::parts::{SledParts, sled_parts};

use super::draft::Draft;
use super::finish::{finish, none};
use super::tools::{Outcome, SledAnswer};
use super::{FieldProblem, joint};
use crate::state::Work;

/// What follows from `work`; `before` is what followed last.
#[inline(never)]
pub(super) fn answer(work: &Work, before: Option<&SledAnswer>) -> SledAnswer {
    let nothing = SledAnswer::default();
    let before = before.unwrap_or(&nothing);
    let mut problems = Vec::new();
    SledAnswer {
        fit: fit::outcome(work, &before.fit, &mut problems),
        square: square::outcome(work, &before.square, &mut problems),
        tests: square::tests(work),
        screw: screw::outcome(work, &before.screw, &mut problems),
        groove: groove::outcome(work, &before.groove, &mut problems),
        problems,
    }
}

/// The parts of the chosen sled for the chosen saw, if its fields say what it is.
#[inline(never)]
pub(crate) fn parts(work: &Work) -> Option<SledParts> {
    let mut draft = Draft::new(work);
    let request = fit::request(&mut draft);
    sled_parts(&request).ok().map(|parts| parts.plan)
}
