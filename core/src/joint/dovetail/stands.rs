//! What must still hold once every flank has been rounded to the dial.

use super::check::Job;
use super::cut::Cuts;
use crate::limits;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::Mm;

/// Refuses a joint that rounding spoils, or that nobody would cut.
pub(super) fn check(job: &Job, cuts: &Cuts) -> Result<(), Vec<Problem>> {
    let found = [
        narrow_wood(job, cuts),
        narrow_place(job, cuts),
        passes(cuts),
    ];
    let problems: Vec<_> = found.into_iter().flatten().collect();
    if problems.is_empty() {
        Ok(())
    } else {
        Err(problems)
    }
}

fn narrow_wood(job: &Job, cuts: &Cuts) -> Option<Problem> {
    let left = cuts.narrowest_wood(job);
    if left.is_above(Mm::ZERO) {
        return None;
    }
    Some(too_coarse(
        job,
        "the narrowest pin or tail would be cut away",
    ))
}

fn narrow_place(job: &Job, cuts: &Cuts) -> Option<Problem> {
    let narrowest = cuts.narrowest_pin_socket(job)?;
    if !narrowest.is_below(job.turned_kerf()) {
        return None;
    }
    Some(too_coarse(
        job,
        "the narrowest socket would not take the cutter",
    ))
}

fn too_coarse(job: &Job, what: &'static str) -> Problem {
    let message = message![
        "With dial steps of ",
        job.tools.screw.step(),
        " ",
        what,
        ". More divisions, half divisions, wider pins or fewer tails would work."
    ];
    Problem {
        field: "screw.divisions".to_owned(),
        code: Code::DialTooCoarse,
        message,
        limit: None,
    }
}

fn passes(cuts: &Cuts) -> Option<Problem> {
    let (count, most) = (cuts.passes.count(), limits::PASSES.most);
    if (count as f64) <= most {
        return None;
    }
    let message = message![
        "This would take ",
        count,
        " passes; at most ",
        most.to_string(),
        " are planned. A wider cutter or a smaller board would work."
    ];
    Some(Problem {
        field: "cutter.kerf".to_owned(),
        code: Code::TooSmall,
        message,
        limit: None,
    })
}
