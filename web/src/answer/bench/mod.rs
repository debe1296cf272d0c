//! What the shop alone shows: its sums, and what is wrong with things that are not in use. Only [`answer`]
//! may be called from elsewhere, and only once this part of the program has come.

mod spares;
mod sums;

use super::draft::Draft;
use super::tools::ShopAnswer;
use super::{FieldProblem, joint};
use crate::state::Work;

/// What follows from `work`; `before` is what followed last.
#[inline(never)]
pub(super) fn answer(work: &Work, before: Option<&ShopAnswer>) -> ShopAnswer {
    // A box full of shims takes long to look through: not again while nothing in it has changed.
    let (stack, stack_problems) = match before {
        Some(before) if before.stack_of == work.shop.stack => {
            (before.stack.clone(), before.stack_problems.clone())
        }
        _ => sums::stack(work),
    };
    let (kerf, kerf_problems) = sums::kerf(work);
    let mut problems = spares::problems(work);
    problems.extend_from_slice(&stack_problems);
    problems.extend(kerf_problems);
    ShopAnswer {
        stack,
        kerf,
        problems,
        stack_of: work.shop.stack.clone(),
        stack_problems,
    }
}
