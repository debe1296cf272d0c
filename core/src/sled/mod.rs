//! A sled on one particular saw.

pub(crate) mod checked;
mod fields;
mod fit;
mod notes;
mod plan;
mod request;
#[cfg(test)]
pub(crate) mod tests;

pub use plan::{BaseSlot, Centring, RunnerPlan, SidePlan, SledFitPlan, Stroke, Turning, Yaw};
pub use request::{
    BaseRequest, BladeRequest, CutRequest, LeftOverRequest, RunnerRequest, SledFitRequest,
    SledRequest, TableRequest,
};

use crate::problem::{Checked, Planned};

/// Fits a sled to a saw: where the runner goes, how far the carriage travels, whether it stays on the table.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn sled_fit(request: &SledFitRequest) -> Checked<SledFitPlan> {
    let job = checked::check(request)?;
    let plan = fit::plan(&job);
    let notes = notes::notes(&job, &plan);
    Ok(Planned { plan, notes })
}
