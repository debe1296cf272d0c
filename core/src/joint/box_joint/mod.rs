//! Box joints: square interlocking pins and sockets.

mod check;
mod choices;
mod finger;
mod fit;
mod groove;
mod layout;
mod notes;
mod passes;
mod plan;
mod request;
mod rule;
mod sets;
#[cfg(test)]
mod tests;

pub use choices::{Choice, Choices, ChoicesRequest, choices};
pub use plan::{BoxJointPlan, GrooveEnd, GroovePlace, GroovePlan, Make, RipTo, Through};
pub use request::{BoardRequest, BoxJointRequest, GrooveRequest, LayoutRequest, SawRequest};

use crate::dryfit::{Seat, Swept, dry_fit};
use crate::joint::carriage::Trip;
use crate::message;
use crate::problem::{Checked, Planned, Problem};
use crate::stop::{Board, Set};
use crate::units::Mm;
use check::Job;

/// Plans a box joint: layout, passes, dial settings, and the dry fit of what they cut.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn box_joint(request: &BoxJointRequest) -> Checked<BoxJointPlan> {
    let job = check::check(request, &request.width)?;
    let sets = sets(&job);
    within_travel(&sets, &job, request)?;
    let plan = plan(&job, sets);
    let notes = notes::notes(&job, &plan);
    Ok(Planned { plan, notes })
}

/// Board A's stops, then board B's.
fn sets(job: &Job) -> [Set; 2] {
    let fitted = fit::fit(&job.layout, &job.cutter, &job.scale);
    let set = |board, cleared: &_, depth| {
        sets::upright_set(board, cleared, depth, &job.cutter, &job.scale)
    };
    [
        set(Board::A, &fitted.a, job.depth_a()),
        set(Board::B, &fitted.b, job.depth_b()),
    ]
}

fn plan(job: &Job, sets: [Set; 2]) -> BoxJointPlan {
    let layout = &job.layout;
    let [a, b] = &sets;
    let swept = |set: &Set| Swept::new(set, layout.width());
    let seat = Seat {
        thickness_a: job.thickness_a,
        thickness_b: job.thickness_b,
        proud: job.proud,
    };
    let dry_fit = dry_fit(&swept(a), &swept(b), seat);
    BoxJointPlan {
        count: layout.count(),
        finger_width: layout.finger,
        boundaries: layout.boundaries.clone(),
        symmetric: layout.is_symmetric(),
        first_is_pin: layout.first_is_pin,
        width: layout.width(),
        rip_to: layout.rip_to.map(|(below, above)| RipTo { below, above }),
        glue_gap: layout.gap,
        depth_a: job.depth_a(),
        depth_b: job.depth_b(),
        sets: sets.into(),
        dry_fit,
        groove: job.groove.map(|groove| groove.plan(layout)),
    }
}

/// The carriage must reach every stop of both boards.
fn within_travel(sets: &[Set], job: &Job, request: &BoxJointRequest) -> Result<(), Vec<Problem>> {
    let Some(travel) = job.scale.screw().travel() else {
        return Ok(());
    };
    let narrower = |width: Mm| {
        let job = check::check(request, &width.mm().into()).ok()?;
        Some(Trip::of(&self::sets(&job)))
    };
    Trip::of(sets).within(travel, message!["The carriage"], job.asked_width, narrower)
}
