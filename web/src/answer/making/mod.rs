//! What follows for what is made. It comes with the parts' part of the program: only [`answer`] may be called from
//! elsewhere, and only once that has come.

mod corner;
pub(crate) mod drawer;
mod parts;
pub(crate) mod sheet;

use super::draft::Draft;
use super::finish::finish;
use super::tools::{MakingAnswer, Outcome};
use super::{FieldProblem, joint};
use crate::state::Work;

/// What follows from `work`; `before` is what followed last.
#[inline(never)]
pub(super) fn answer(work: &Work, before: Option<&MakingAnswer>) -> MakingAnswer {
    let nothing = MakingAnswer::default();
    let before = before.unwrap_or(&nothing);
    let (parts, mut problems) = parts::draft(work);
    let sheet = sheet::answer(work, &parts, Some(&before.sheet), &mut problems);
    MakingAnswer {
        drawer: drawer::outcome(work, &before.drawer, &mut problems),
        needed: sheet.layout.needed.clone(),
        parts,
        sheet,
        problems,
    }
}
