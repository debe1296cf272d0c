//! What to know about a layout.

use super::job::{Job, mm};
use super::plan::{SheetLayoutPlan, StepKind};
use crate::message;
use crate::problem::{Note, Severity};

/// Every note of a plan: what can spoil a board first, the cautions last.
pub(super) fn notes(job: &Job, plan: &SheetLayoutPlan) -> Vec<Note> {
    let cautions = [
        (
            "unplug",
            message!["Unplug the saw before you set or measure anything at the blade."],
        ),
        (
            "guard",
            message![
                "These cuts go through: guard and riving knife stay on. Rip against the fence, crosscut against a stop, never against both at once."
            ],
        ),
        (
            "support",
            message![
                "Support large pieces on both sides of the blade; nobody holds up a sheet and saws it."
            ],
        ),
        ("protection", message!["Eye, ear and dust protection."]),
        (
            "manual",
            message![
                "The saw's manual, local codes and a qualified person come before this program. Places to look: \
             OSHA 1910.213, EN 1870-1."
            ],
        ),
    ];
    let found = [later(plan), rough(job, plan), not_proven(plan)];
    let cautions = cautions.map(|(code, message)| Note::new(code, Severity::Caution, message));
    found.into_iter().flatten().chain(cautions).collect()
}

fn later(plan: &SheetLayoutPlan) -> Option<Note> {
    let parts = plan.sheets.iter().flat_map(|sheet| &sheet.parts);
    let count = parts.filter(|part| part.later).count();
    (count > 0).then(|| {
        let message = message![
            count,
            if count == 1 { " part is" } else { " parts are" },
            " cut later: mark the pieces that hold them, and cut them to the place they go to."
        ];
        Note::new("cut-later", Severity::Info, message)
    })
}

fn rough(job: &Job, plan: &SheetLayoutPlan) -> Option<Note> {
    let rough = job.rough?;
    let mut cuts = plan.sheets.iter().flat_map(|sheet| &sheet.cuts);
    cuts.any(|cut| cut.kind == StepKind::Rough).then(|| {
        let message = message![
            "Rough cuts are made by hand, ",
            mm(rough.allowance),
            " outside the line: the table saw trims what is left."
        ];
        Note::new("rough-cuts", Severity::Info, message)
    })
}

fn not_proven(plan: &SheetLayoutPlan) -> Option<Note> {
    (!plan.search.proven).then(|| {
        let message = message![
            "It is not proven that nothing better exists: searching on from here may save some length, or a sheet."
        ];
        Note::new("not-proven", Severity::Info, message)
    })
}
