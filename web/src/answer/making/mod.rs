//! What follows for what is made. It comes with the parts' part of the program: only [`answer`] may be called from
//! elsewhere, and only once that has come.

mod parts;

use super::draft::Draft;
use super::tools::MakingAnswer;
use crate::state::Work;

/// What follows from `work`; `before` is what followed last.
#[inline(never)]
pub(super) fn answer(work: &Work, _before: Option<&MakingAnswer>) -> MakingAnswer {
    let (parts, problems) = parts::draft(work);
    MakingAnswer {
        parts,
        problems,
        ..MakingAnswer::default()
    }
}
