//! Sheets laid out for cutting: every cut goes from edge to edge of the piece in hand.
//!
//! A request becomes a `job` in whole micrometres; a `search` lays its parts as `block`s, round after round;
//! the best layout becomes `cuts` in a `sequence` that a person can follow, and so a plan.

mod block;
mod bound;
mod chance;
mod checked;
pub(crate) mod cuts;
mod fill;
mod forest;
pub(crate) mod job;
mod layer;
mod notes;
mod plan;
mod pool;
mod reach;
mod rebuild;
mod region;
mod report;
mod request;
mod row;
mod rule;
mod search;
mod sequence;
mod shake;
mod thin;
mod written;
mod yard;

pub use plan::{
    CutStep, LaidPart, LaidSheet, Offcut, PieceKind, Place, SearchReached, SheetLayoutPlan, Side,
    StepKind, StockBound, Yielded,
};
pub use request::{
    EachSideRequest, PartRequest, RoughRequest, SearchRequest, SheetLayoutRequest, SheetRequest,
    SidesRequest, SizeRequest,
};

use crate::check::Checker;
use crate::message;
use crate::problem::{Checked, Code, Planned, Problem};
use job::{Job, mm};
use search::Search;

/// Lays parts out on sheets.
///
/// What makes a layout better, the first difference deciding: sheets bought beyond the quantities given (none, or
/// the request is refused); price of the whole sheets, where each kind of the stock has one, and their number
/// otherwise; their area; the length used of the last one; sheets and off-cuts together; settings of the fence.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn sheet_layout(request: &SheetLayoutRequest) -> Checked<SheetLayoutPlan> {
    let job = checked::check(request)?;
    let mut search = begun(&job)?;
    search.run(job.budget.steps);
    enough_sheets(&job, &search)?;
    let plan = report::plan(&search);
    let notes = notes::notes(&job, &plan);
    Ok(Planned { plan, notes })
}

/// Makes rounds of a search, and says how far it has come: without a plan, and whether or not there are enough
/// sheets yet. What it answers, [`sheet_layout`] goes on from; with 0 rounds more that is its plan.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn sheet_search(request: &SheetLayoutRequest) -> Result<SearchReached, Vec<Problem>> {
    let job = checked::check(request)?;
    let mut search = begun(&job)?;
    search.run(job.budget.steps);
    Ok(report::reached(&search))
}

/// A new search, or one that goes on.
fn begun(job: &Job) -> Result<Search<'_>, Vec<Problem>> {
    let search = Search::new(job).after(job.budget.from);
    let Some(best) = &job.budget.best else {
        return Ok(search);
    };
    written::read(search, best).ok_or_else(|| {
        let message = message!["This is no layout of these parts on these sheets: give it as the plan before gave it, or leave it out."];
        let mut problems = Vec::new();
        Checker::new(&mut problems).at("search").refuse("best", Code::Conflict, message, None);
        problems
    })
}

/// Refuses a job that needs more sheets than there are, as far as the search has found.
fn enough_sheets(job: &Job, search: &Search<'_>) -> Result<(), Vec<Problem>> {
    let mut problems = Vec::new();
    let mut check = Checker::new(&mut problems);
    let mut check = check.at("sheets");
    for (index, kind) in job.kinds.iter().enumerate() {
        let used = search.laid().filter(|laid| laid.kind == index).count();
        let Some(quantity) = kind.quantity.map(|quantity| quantity as usize) else {
            continue;
        };
        if used > quantity {
            let message = message![
                used - quantity,
                " more of this sheet of ",
                mm(kind.size.x),
                " by ",
                mm(kind.size.y),
                if used - quantity == 1 { " is" } else { " are" },
                " needed, in the best layout that was found: have ",
                used,
                ", or cut fewer parts."
            ];
            check.at(&index.to_string()).refuse(
                "quantity",
                Code::TooFewSheets,
                message,
                Some(used as f64),
            );
        }
    }
    if problems.is_empty() {
        Ok(())
    } else {
        Err(problems)
    }
}
