//! What to know about a sled on a saw.

use super::checked::{Job, Section};
use super::plan::SledFitPlan;
use crate::caution;
use crate::message;
use crate::message::Message;
use crate::problem::{Note, Severity};
use crate::units::Mm;

/// Measured and computed may differ by this much before it is said: what a rule reads.
const AGREES: Mm = Mm::constant(2.0);

/// Every note of a plan: what does not work first, the cautions last.
pub(super) fn notes(job: &Job, plan: &SledFitPlan) -> Vec<Note> {
    let found = [
        too_long(job, plan),
        leaves_table(plan),
        measured_otherwise(plan),
        through_the_edge(job, plan),
        Some(handle(plan)),
        section(job),
    ];
    found
        .into_iter()
        .flatten()
        .chain(caution::upright_cut())
        .collect()
}

fn note(code: &'static str, severity: Severity, message: Message) -> Option<Note> {
    Some(Note::new(code, severity, message))
}

fn too_long(job: &Job, plan: &SledFitPlan) -> Option<Note> {
    let over = -plan.runner.left_after;
    if !over.is_above(Mm::ZERO) {
        return None;
    }
    note(
        "runner-too-long",
        Severity::Warning,
        message![
            "Even in the middle the runner leaves the table by ",
            over,
            " at both ends: it touches over ",
            job.span(),
            ", and over this travel at most ",
            plan.runner.longest_span,
            " stays on the table."
        ],
    )
}

fn leaves_table(plan: &SledFitPlan) -> Option<Note> {
    let runner = &plan.runner;
    let off = |left: Mm| left.is_below(Mm::ZERO);
    let (end, by) = match (off(runner.near_left), off(runner.far_left)) {
        (true, true) => ("both ends", -runner.near_left.min(runner.far_left)),
        (true, false) => ("the near end, pulled back", -runner.near_left),
        (false, true) => ("the far end, pushed through", -runner.far_left),
        (false, false) => return None,
    };
    let way = if runner.forward < Mm::ZERO {
        "towards the operator"
    } else {
        "away from the operator"
    };
    note(
        "leaves-table",
        Severity::Warning,
        message![
            "As it is, the runner leaves the table at ",
            end,
            " by ",
            by,
            ". Move it ",
            runner.forward.abs(),
            " ",
            way,
            "."
        ],
    )
}

fn measured_otherwise(plan: &SledFitPlan) -> Option<Note> {
    let measured = plan.from_measured?;
    let off = (measured.forward - plan.runner.forward)
        .abs()
        .max((measured.left_after - plan.runner.left_after).abs());
    if !off.is_above(AGREES) {
        return None;
    }
    note(
        "measured-otherwise",
        Severity::Warning,
        message![
            "Measured and computed differ by ",
            off,
            ": measure the table, the sled and both left-overs again before drilling."
        ],
    )
}

fn through_the_edge(job: &Job, plan: &SledFitPlan) -> Option<Note> {
    let near = plan.slot.under_near;
    let far = plan.slot.under_far - job.base_length;
    if !near.is_below(Mm::ZERO) && !far.is_above(Mm::ZERO) {
        return None;
    }
    let edge = if near.is_below(Mm::ZERO) {
        "near"
    } else {
        "far"
    };
    note(
        "slot-through-edge",
        Severity::Warning,
        message![
            "Over this stroke the blade would cut through the base's ",
            edge,
            " edge: lengthen the base, or shorten the stroke."
        ],
    )
}

fn handle(plan: &SledFitPlan) -> Note {
    let message = if plan.second_runner.is_some() {
        message![
            "The base reaches the other slot too: a second runner steadies it; push between the two (common practice)."
        ]
    } else {
        message!["With a single runner, put the push handle over it (common practice)."]
    };
    Note::new("push-handle", Severity::Info, message)
}

fn section(job: &Job) -> Option<Note> {
    match job.section {
        Section::Plain => note(
            "plain-slot",
            Severity::Info,
            message!["Plain slot: fit the runner with its adjusters reachable from below."],
        ),
        Section::T => note(
            "t-slot",
            Severity::Info,
            message![
                "T-shaped slot: adjusters must not sit in its wide part. Turn the bar over and drill access holes from above."
            ],
        ),
    }
}
