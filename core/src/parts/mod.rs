//! Parts of a job, whose dimensions follow the stock as it was measured.
//!
//! A dimension may be a sum over `t`, the measured thickness of the part's own stock, and over measures with names
//! ([`expression`]), so that one list works for sheets of 15, 15.6 and 16 mm. [`draft`] says of a list with problems
//! what can be said; [`parts_list`] is the same for a list without.

mod dimension;
pub mod expression;
mod measures;
mod names;
mod plan;
mod read;
mod request;
mod sled;
#[cfg(test)]
mod tests;
pub mod tsv;

pub use expression::{Expression, ExpressionError, ExpressionFault, Trouble, Value};
pub use plan::{Change, Dimension, DraftRow, PartRow, PartsDraft, PartsListPlan, StockTotal};
pub use request::{
    DimensionInRequest, DimensionRequest, MeasureRequest, PartRequest, PartsListRequest,
    StockRequest,
};
pub use sled::{SledParts, sled_parts};

use crate::problem::{Checked, Planned};

/// Works out every part of a list.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn parts_list(request: &PartsListRequest) -> Checked<PartsListPlan> {
    let draft = draft(request);
    if !draft.problems.is_empty() {
        return Err(draft.problems);
    }
    let plan = PartsListPlan {
        parts: draft.rows.into_iter().filter_map(|row| row.part).collect(),
        stocks: draft.stocks,
    };
    Ok(Planned {
        plan,
        notes: draft.notes,
    })
}

/// Works out what can be of a list that may still have problems: the good dimensions beside the problems, which name
/// their fields as in `parts.3.length`.
#[must_use]
pub fn draft(request: &PartsListRequest) -> PartsDraft {
    plan::draft(request)
}
