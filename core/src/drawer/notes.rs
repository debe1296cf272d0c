//! What to know about drawers before cutting them.

use super::checked::Job;
use super::fit::Fitted;
use super::plan::{DrawerBoxPlan, Nudged};
use crate::message;
use crate::problem::{Note, Severity};
use crate::units::Mm;
use crate::wood::is_linear;

/// Every note of a plan: what spoils wood first, then what is good to know.
pub(super) fn notes(job: &Job, fitted: &Fitted) -> Vec<Note> {
    let plan = &fitted.plan;
    let found = [
        groove_shows(plan),
        thin_below_groove(job, plan),
        bottom_can_drop(plan),
        beyond_coefficients(job),
        height_lowered(plan),
        groove_moved(plan),
        carcass_moves(job),
        lower_edge(),
    ];
    fitted
        .warnings
        .iter()
        .cloned()
        .chain(found.into_iter().flatten())
        .collect()
}

fn groove_shows(plan: &DrawerBoxPlan) -> Option<Note> {
    let shown = plan.drawers.iter().find(|drawer| !drawer.groove.hidden)?;
    let message = message![
        "A groove of ",
        shown.groove.width,
        " fits behind no single finger: stop it before both ends of every board, or plug it. Wider fingers or a \
         thinner bottom would hide it."
    ];
    Some(Note::new("groove-shows", Severity::Warning, message).about("bottom.groove.fromEdge"))
}

fn thin_below_groove(job: &Job, plan: &DrawerBoxPlan) -> Option<Note> {
    let below = plan
        .drawers
        .iter()
        .map(|drawer| drawer.groove.from_edge)
        .min()?;
    let deep = job.bottom.groove.depth;
    let message = message![
        "Only ",
        below,
        " of wood carries the bottom: at least as much as the groove is deep, ",
        deep,
        ", is usual (common practice)."
    ];
    below.is_below(deep).then(|| {
        Note::new("thin-below-groove", Severity::Warning, message).about("bottom.groove.fromEdge")
    })
}

fn bottom_can_drop(plan: &DrawerBoxPlan) -> Option<Note> {
    let movement = plan
        .drawers
        .iter()
        .find_map(|drawer| drawer.bottom.movement)?;
    let message = message![
        "At the driest the bottom can slide out of one groove into the other: pin it in the middle of front and back, \
         where it then moves both ways, or glue it along the front alone."
    ];
    (!movement.held_aside.is_above(Mm::ZERO))
        .then(|| Note::new("bottom-can-drop", Severity::Warning, message).about("bottom.wood"))
}

fn beyond_coefficients(job: &Job) -> Option<Note> {
    let climate = job.climate?;
    let woods = [job.wood, job.bottom.wood].into_iter().flatten();
    let beyond = woods
        .map(|wood| wood.moisture)
        .chain([climate.driest, climate.wettest])
        .any(|moisture| !is_linear(moisture));
    let message = message![
        "Some of these moistures are outside 6 to 14 %, for which the Wood Handbook gives its coefficients: take the \
         movement as an estimate, and leave a little more room."
    ];
    beyond.then(|| Note::new("beyond-coefficients", Severity::Info, message).about("climate"))
}

fn height_lowered(plan: &DrawerBoxPlan) -> Option<Note> {
    let lowered =
        |nudge: &super::Nudge| (nudge.what == Nudged::Height).then(|| nudge.from - nudge.to);
    let most = plan
        .drawers
        .iter()
        .flat_map(|drawer| &drawer.nudges)
        .filter_map(lowered)
        .max()?;
    let message = message![
        "Heights were lowered by up to ",
        most,
        " so that whole fingers fill them; see each drawer. A number of fingers in place of their width leaves heights alone."
    ];
    Some(Note::new("height-lowered", Severity::Info, message).about("joint.layout"))
}

fn groove_moved(plan: &DrawerBoxPlan) -> Option<Note> {
    let moved = |nudge: &super::Nudge| {
        (nudge.what == Nudged::Groove).then(|| (nudge.to - nudge.from).abs())
    };
    let most = plan
        .drawers
        .iter()
        .flat_map(|drawer| &drawer.nudges)
        .filter_map(moved)
        .max()?;
    let message = message![
        "The groove was moved by up to ",
        most,
        " so that one finger covers it; see each drawer."
    ];
    Some(Note::new("groove-moved", Severity::Info, message).about("bottom.groove.fromEdge"))
}

fn carcass_moves(job: &Job) -> Option<Note> {
    let message = message![
        "The opening is taken as it was measured. A carcass of solid wood moves too: measure it in the season in which \
         it is lowest."
    ];
    (job.wood.is_some() && job.space.opening.is_some())
        .then(|| Note::new("carcass-moves", Severity::Info, message).about("size.height"))
}

fn lower_edge() -> Option<Note> {
    let message = message![
        "The lower edge is the reference edge of all four boards, for the joint as for the groove: mark it."
    ];
    Some(Note::new("lower-edge", Severity::Info, message))
}
