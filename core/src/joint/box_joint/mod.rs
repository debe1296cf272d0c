//! Box joints: square interlocking pins and sockets.

mod check;
mod choices;
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
use crate::message;
use crate::problem::{Checked, Code, Planned, Problem};
use crate::stop::{Board, Set};
use crate::units::Mm;
use check::Job;

/// Plans a box joint: layout, passes, dial settings, and the dry fit of what they cut.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn box_joint(request: &BoxJointRequest) -> Checked<BoxJointPlan> {
    let job = check::check(request)?;
    let plan = plan(&job);
    within_travel(&plan, &job)?;
    let notes = notes::notes(&job, &plan);
    Ok(Planned { plan, notes })
}

fn plan(job: &Job) -> BoxJointPlan {
    let layout = &job.layout;
    // Each board is cut as deep as its mate is thick, and as far as its pins shall stand proud.
    let (depth_a, depth_b) = (job.thickness_b + job.proud, job.thickness_a + job.proud);
    let fitted = fit::fit(layout, &job.cutter, &job.scale);
    let a = sets::upright_set(Board::A, &fitted.a, depth_a, &job.cutter, &job.scale);
    let b = sets::upright_set(Board::B, &fitted.b, depth_b, &job.cutter, &job.scale);
    let swept = |set: &Set| Swept::new(set, layout.width());
    let seat = Seat {
        thickness_a: job.thickness_a,
        thickness_b: job.thickness_b,
        proud: job.proud,
    };
    let dry_fit = dry_fit(&swept(&a), &swept(&b), seat);
    BoxJointPlan {
        count: layout.count(),
        finger_width: layout.finger,
        boundaries: layout.boundaries.clone(),
        symmetric: layout.is_symmetric(),
        first_is_pin: layout.first_is_pin,
        width: layout.width(),
        rip_to: layout.rip_to.map(|(below, above)| RipTo { below, above }),
        glue_gap: layout.gap,
        depth_a,
        depth_b,
        sets: vec![a, b],
        dry_fit,
        groove: job.groove.map(|groove| groove.plan(layout)),
    }
}

/// The carriage must reach every stop and its own zero.
fn within_travel(plan: &BoxJointPlan, job: &Job) -> Result<(), Vec<Problem>> {
    let Some(travel) = job.scale.screw().travel() else {
        return Ok(());
    };
    let readings = || {
        plan.sets
            .iter()
            .flat_map(|set| set.stops.iter().map(|stop| stop.dial.reading))
    };
    let least = readings().min().unwrap_or_default().min(Mm::ZERO);
    let most = readings().max().unwrap_or_default().max(Mm::ZERO);
    let over = most - least - travel;
    if !over.is_above(Mm::ZERO) {
        return Ok(());
    }
    let widest = (job.asked_width - over).max(Mm::ZERO);
    let message = message![
        "The carriage would have to travel ",
        most - least,
        " and can travel ",
        travel,
        "; a board of about ",
        widest,
        " would work, or a zero nearer to its middle."
    ];
    let field = "width".to_owned();
    Err(vec![Problem {
        field,
        code: Code::BeyondTravel,
        message,
        limit: Some(widest.mm()),
    }])
}
