//! What follows for what is made. It comes with the parts' part of the program: only [`answer`] may be called from
//! elsewhere, and only once that has come.

mod parts;
pub(crate) mod sheet;

use super::draft::Draft;
use super::tools::MakingAnswer;
use crate::state::Work;

/// What follows from `work`; `before` is what followed last.
#[inline(never)]
pub(super) fn answer(work: &Work, before: Option<&MakingAnswer>) -> MakingAnswer {
    let (parts, mut problems) = parts::draft(work);
    let sheet = before.map(|before| &before.sheet);
    let sheet = sheet::answer(work, &parts, sheet, &mut problems);
    MakingAnswer {
        needed: sheet.layout.needed.clone(),
        parts,
        sheet,
        problems,
    }
}
