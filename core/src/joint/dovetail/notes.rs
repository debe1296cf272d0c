//! What to know about a dovetail before cutting it.

use super::check::Job;
use super::plan::DovetailPlan;
use crate::caution;
use crate::message;
use crate::problem::{Note, Severity};

/// Every note of a plan: what spoils wood first, then what is good to know, then the cautions.
pub(super) fn notes(job: &Job, plan: &DovetailPlan) -> Vec<Note> {
    let found = [clash(plan), corner_left(job, plan)];
    found
        .into_iter()
        .flatten()
        .chain(caution::upright_cut())
        .collect()
}

fn clash(plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "As cut, wood overlaps by up to ",
        -plan.dry_fit.smallest_gap,
        ": choose a larger glue gap, or set lean and turn again."
    ];
    plan.dry_fit
        .clash
        .then(|| Note::new("clash", Severity::Warning, message))
}

fn corner_left(job: &Job, plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "Teeth that are square to the leaning blade leave the corner at each tail's flank ",
        plan.corner_left,
        " short of the baseline: leave it for the chisel. Teeth ground to the slope, ",
        crate::units::write_number(job.slope().degrees, 3),
        "°, leave none."
    ];
    plan.corner_left
        .is_above(crate::units::Mm::ZERO)
        .then(|| Note::new("corner-left", Severity::Info, message).about("cutter.grind"))
}
