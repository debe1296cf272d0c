//! What to know about a box joint before cutting it.

use super::check::Job;
use super::plan::BoxJointPlan;
use crate::caution;
use crate::dial::Rounding;
use crate::message;
use crate::problem::{Note, Severity};
use crate::units::Mm;

/// Every note of a plan: what spoils wood first, then what is good to know, then the cautions.
pub(super) fn notes(job: &Job, plan: &BoxJointPlan) -> Vec<Note> {
    let found = [
        clash(plan),
        off_by_more_than_half_a_step(job, plan),
        gap_finer_than_dial(job),
        coarse_dial(job),
        floor_ridge(job, plan),
        one_pass_gap(job, plan),
        rip(job, plan),
        not_symmetric(plan),
        proportion(job, plan),
        glue_line(plan),
        fine_dial(job),
        wide_stock(job),
        Some(four_corners(plan)),
    ];
    found
        .into_iter()
        .flatten()
        .chain(caution::upright_cut())
        .collect()
}

fn warning(code: &'static str, message: crate::message::Message) -> Option<Note> {
    Some(Note::new(code, Severity::Warning, message))
}

fn info(code: &'static str, message: crate::message::Message) -> Option<Note> {
    Some(Note::new(code, Severity::Info, message))
}

fn clash(plan: &BoxJointPlan) -> Option<Note> {
    let overlap = -plan.dry_fit.smallest_gap;
    let message = message![
        "As cut, pins are up to ",
        overlap,
        " wider than their sockets: choose a larger glue gap."
    ];
    plan.dry_fit
        .clash
        .then(|| warning("clash", message))
        .flatten()
}

fn worst(plan: &BoxJointPlan, aim: Mm) -> Mm {
    (plan.dry_fit.largest_gap - aim)
        .abs()
        .max((plan.dry_fit.smallest_gap - aim).abs())
}

fn off_by_more_than_half_a_step(job: &Job, plan: &BoxJointPlan) -> Option<Note> {
    let off = worst(plan, plan.glue_gap);
    let message = message![
        "Some sockets are one pass wide, so one stop sets both flanks; gaps are off by up to ",
        off,
        ", more than half a dial step but not more than one."
    ];
    (off.is_above(job.scale.step() / 2.0))
        .then(|| warning("one-stop-two-flanks", message))
        .flatten()
}

fn gap_finer_than_dial(job: &Job) -> Option<Note> {
    let half = job.scale.step() / 2.0;
    let message = message![
        "The glue gap is less than half a dial step, ",
        half,
        ": some flanks may come out tight. A gap of at least ",
        half,
        " keeps every one open."
    ];
    let tight = !job.layout.one_pass && job.asked_gap.is_below(half);
    tight.then(|| Note::new("gap-finer-than-dial", Severity::Warning, message).about("glueGap"))
}

/// Half a step is all a gap can be off by; beyond this it is more than most glues fill well.
const COARSE: Mm = Mm::constant(0.15);
/// Feed and run-out hide anything finer.
const FINE: Mm = Mm::constant(0.005);

fn coarse_dial(job: &Job) -> Option<Note> {
    let step = job.scale.step();
    let message = message![
        "The dial steps by ",
        step,
        ": gaps can be off by half of that. Half divisions would be finer."
    ];
    step.is_above(COARSE)
        .then(|| Note::new("coarse-dial", Severity::Warning, message).about("screw.divisions"))
}

fn fine_dial(job: &Job) -> Option<Note> {
    let step = job.scale.step();
    let message = message![
        "The dial steps by ",
        step,
        ", finer than a saw repeats: rounding to whole divisions is enough."
    ];
    let halves = job.scale.screw().rounding() == Rounding::Half;
    (halves && step.is_below(FINE))
        .then(|| Note::new("fine-dial", Severity::Info, message).about("screw.rounding"))
}

fn floor_ridge(job: &Job, plan: &BoxJointPlan) -> Option<Note> {
    let highest = plan.dry_fit.floor_gap_a.min(plan.dry_fit.floor_gap_b);
    let ridge = job.cutter.grind().ridge(job.cutter.kerf());
    let message = message![
        "Alternately ground teeth leave ridges on the socket floors, here up to ",
        -highest,
        " high (",
        ridge,
        " under a single pass). Pare them level before fitting; a flat-ground cutter leaves none."
    ];
    highest
        .is_below(Mm::ZERO)
        .then(|| Note::new("floor-ridge", Severity::Warning, message).about("cutter.grind"))
}

fn one_pass_gap(job: &Job, plan: &BoxJointPlan) -> Option<Note> {
    let message = message![
        "One pass per socket: the pitch suits the dial, and every glue gap comes out as ",
        plan.glue_gap,
        " (asked: ",
        job.asked_gap,
        ")."
    ];
    job.layout
        .one_pass
        .then(|| info("one-pass-gap", message))
        .flatten()
}

fn rip(job: &Job, plan: &BoxJointPlan) -> Option<Note> {
    let rip = plan.rip_to?;
    if rip.below.is_same(job.asked_width) {
        return None;
    }
    let message = message![
        "These stops are for boards ripped to ",
        rip.below,
        ". From wider stock, ",
        rip.above,
        " would also come out whole."
    ];
    warning("rip-first", message)
}

fn not_symmetric(plan: &BoxJointPlan) -> Option<Note> {
    let message = if plan.count.is_multiple_of(2) {
        message![
            "An even number of fingers: each board has a pin at one edge and a socket at the other. Mark the reference edges."
        ]
    } else {
        message!["The layout is not the same from both edges: mark the reference edges."]
    };
    (!plan.symmetric)
        .then(|| info("not-symmetric", message))
        .flatten()
}

fn proportion(job: &Job, plan: &BoxJointPlan) -> Option<Note> {
    let (thin, thick) = (
        job.thickness_a.min(job.thickness_b),
        job.thickness_a.max(job.thickness_b),
    );
    if plan.finger_width < thin / 2.0 {
        return info(
            "thin-fingers",
            message![
                "Fingers of ",
                plan.finger_width,
                " are thin beside a board of ",
                thin,
                "; half to one and a half thicknesses looks right (common practice)."
            ],
        );
    }
    if plan.finger_width > thick * 1.5 {
        return info(
            "wide-fingers",
            message![
                "Fingers of ",
                plan.finger_width,
                " are wide beside a board of ",
                thick,
                "; half to one and a half thicknesses looks right (common practice)."
            ],
        );
    }
    None
}

/// 0.006 in: surfaces this far apart suit most wood glues (FDMC magazine).
const WIDEST_GLUE_LINE: Mm = Mm::constant(0.15);

fn glue_line(plan: &BoxJointPlan) -> Option<Note> {
    let message = message![
        "Gaps of up to ",
        plan.dry_fit.largest_gap,
        ": most wood glues want surfaces 0.05 to 0.15 mm apart."
    ];
    plan.dry_fit
        .largest_gap
        .is_above(WIDEST_GLUE_LINE)
        .then(|| Note::new("wide-glue-line", Severity::Info, message).about("glueGap"))
}

/// On end, a wider board stands unsteadily and far above the fence.
const WIDE: Mm = Mm::constant(600.0);

fn wide_stock(job: &Job) -> Option<Note> {
    let message = message![
        "A board ",
        job.asked_width,
        " wide is unusual on a sled: support it well at both sides."
    ];
    job.asked_width
        .is_above(WIDE)
        .then(|| Note::new("wide-stock", Severity::Info, message).about("width"))
}

fn four_corners(plan: &BoxJointPlan) -> Note {
    let starts = if plan.first_is_pin {
        "A starts with a pin, B with a socket"
    } else {
        "A starts with a socket, B with a pin"
    };
    let message = message![
        "A box takes two boards A and two boards B, both ends of each. Keep the same edge against the stop when a board \
         is turned end for end: at that edge ",
        starts,
        "."
    ];
    Note::new("four-corners", Severity::Info, message)
}
