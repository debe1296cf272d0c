//! Through dovetails cut on the sled: the tail board under a leaning blade, the pin board turned in plan.

mod check;
mod choices;
mod cut;
mod divide;
mod layout;
mod notes;
mod plan;
mod request;
mod rule;
mod scales;
mod sets;
mod slope;
mod stands;
#[cfg(test)]
mod tests;

pub use choices::{Choice, DovetailChoices, DovetailChoicesRequest, dovetail_choices};
pub use plan::{DovetailPlan, Tail};
pub use request::{ByRequest, DovetailRequest, MeasuredRequest, SlopeRequest};

use crate::dryfit::slanted::{Bench, Teeth, dry_fit};
use crate::joint::carriage::Trip;
use crate::message;
use crate::problem::{Checked, Planned, Problem};
use crate::stop::Set;
use crate::units::Mm;
use check::Job;
use scales::Scales;

/// Plans a dovetail: layout, passes, dial settings, and the dry fit of what they cut.
///
/// # Errors
/// Every problem of the request at once, each with its field and what would work.
pub fn dovetail(request: &DovetailRequest) -> Checked<DovetailPlan> {
    let job = check::check(request, &request.width)?;
    let sets = sets(&job)?;
    within_travel(&sets, &job, request)?;
    let plan = plan(&job, sets);
    let notes = notes::notes(&job, &plan);
    Ok(Planned { plan, notes })
}

fn sets(job: &Job) -> Result<Vec<Set>, Vec<Problem>> {
    let scales = Scales::new(&job.boards, &job.tools, job.slope());
    let cuts = cut::cut(job, &scales);
    stands::check(job, &cuts)?;
    Ok(sets::sets(job, &cuts.passes, &scales))
}

fn plan(job: &Job, sets: Vec<Set>) -> DovetailPlan {
    let (layout, boards, slope) = (&job.layout, &job.boards, job.slope());
    let (run, kerf) = (job.ground.run(), job.tools.cutter.kerf());
    let bench = bench(job);
    let whole_kerf = job.leaning_kerf() - job.gap / 2.0 + job.lean_of_proud();
    DovetailPlan {
        count: layout.tails.len(),
        width: layout.width,
        slope: slope.tan,
        angle_degrees: slope.degrees,
        tail_tip: layout.tail,
        tail_base: layout.tail - run * 2.0,
        pin_outer: layout.pin,
        pin_inner: layout.pin + run * 2.0,
        half_pin_outer: layout.half_pin,
        half_pin_inner: layout.half_pin + run,
        narrowest_pin: job.ground.narrowest_pin,
        narrowest_half_pin: layout.half_pin.is_below(whole_kerf).then_some(whole_kerf),
        corner_left: bench.teeth.corner_left(kerf, slope.sin),
        glue_gap: job.gap,
        tails: layout.tails.clone(),
        symmetric: layout.is_symmetric(),
        depth_a: boards.depth_a(),
        depth_b: boards.depth_b(),
        lap: boards.lap,
        thickness_a: boards.tail,
        thickness_b: boards.pin,
        dry_fit: dry_fit(&sets, &bench),
        sets,
        bench,
    }
}

fn bench(job: &Job) -> Bench {
    let teeth = |grind| Teeth::new(grind, job.slope().tan);
    Bench {
        width: job.layout.width,
        thickness_a: job.boards.tail,
        thickness_b: job.boards.pin,
        through: job.boards.through(),
        proud: job.boards.proud,
        teeth: teeth(job.tools.cutter.grind()),
        upright_teeth: teeth(job.tools.pin_cutter.grind()),
        measured: job.measured,
    }
}

/// In each set-up the carriage must reach every stop and its own zero.
fn within_travel(sets: &[Set], job: &Job, request: &DovetailRequest) -> Result<(), Vec<Problem>> {
    let Some(travel) = job.tools.screw.travel() else {
        return Ok(());
    };
    let Some((trip, set)) = longest(sets) else {
        return Ok(());
    };
    let narrower = |width: Mm| {
        let job = check::check(request, &width.mm().into()).ok()?;
        let sets = self::sets(&job).ok()?;
        longest(&sets).map(|(trip, _)| trip)
    };
    let who = message!["For the set «", &set.name, "» the carriage"];
    trip.within(travel, who, job.layout.width, narrower)
}

/// The set-up in which the carriage goes farthest.
fn longest(sets: &[Set]) -> Option<(Trip, &Set)> {
    let trips = sets.iter().map(|set| (Trip::of([set]), set));
    trips.max_by_key(|(trip, _)| *trip)
}
