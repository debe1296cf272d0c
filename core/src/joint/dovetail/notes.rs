//! What to know about a dovetail before cutting it.

use super::check::Job;
use super::plan::DovetailPlan;
use crate::caution;
use crate::dial::Rounding;
use crate::dryfit::slanted::Measured;
use crate::message;
use crate::message::Message;
use crate::problem::{Note, Severity};
use crate::stop::Board;
use crate::units::{Mm, write_number};

/// Every note of a plan: what spoils wood first, then what is good to know, then the cautions.
pub(super) fn notes(job: &Job, plan: &DovetailPlan) -> Vec<Note> {
    let found = [
        clash(plan),
        off_by_more_than_half_a_step(job, plan),
        gap_finer_than_dial(job),
        coarse_dial(job),
        under_tails(plan),
        pillars(plan),
        floor_ridge(plan),
        half_blind(plan),
        corner_left(job, plan),
        kerf_runs_off(plan),
        not_symmetric(plan),
        unusual_slope(job),
        unusual_lap(plan),
        glue_line(plan),
        fine_dial(job),
        wide_stock(plan),
    ];
    found
        .into_iter()
        .flatten()
        .chain(both_faces(plan))
        .chain(caution::leaning_cut())
        .chain(caution::upright_cut())
        .collect()
}

fn warning(code: &'static str, message: Message) -> Note {
    Note::new(code, Severity::Warning, message)
}

fn info(code: &'static str, message: Message) -> Note {
    Note::new(code, Severity::Info, message)
}

fn clash(plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "As cut, wood overlaps by up to ",
        -plan.dry_fit.smallest_gap,
        " at a flank: choose a larger glue gap, or set the blade's lean and the board's turn again."
    ];
    plan.dry_fit.clash.then(|| warning("clash", message))
}

/// Half a step of the dial, along the face of the turned board.
fn half_step(job: &Job) -> Mm {
    job.tools.screw.step() / job.slope().cos / 2.0
}

fn off_by_more_than_half_a_step(job: &Job, plan: &DovetailPlan) -> Option<Note> {
    let off = |gap: Mm| (gap - plan.glue_gap).abs();
    let worst = off(plan.dry_fit.largest_gap).max(off(plan.dry_fit.smallest_gap));
    let message = message![
        "Some tails are hardly wider than the cutter at the baseline, so their sockets are rounded outwards; gaps are \
         up to ",
        worst,
        " wider, more than half a dial step but not more than one."
    ];
    let is_cut_as_planned = job.measured == Measured::default();
    let is_off = worst.is_above(half_step(job) + job.tools.screw.step() * 1e-5);
    let has_flanks = !plan.dry_fit.flanks.is_empty();
    (is_cut_as_planned && has_flanks && is_off).then(|| warning("tight-sockets", message))
}

fn gap_finer_than_dial(job: &Job) -> Option<Note> {
    let half = half_step(job);
    let message = message![
        "The glue gap is less than half a dial step along the turned board's face, ",
        half,
        ": some flanks may come out tight. A gap of at least ",
        half,
        " keeps every one open."
    ];
    let tight = !job.boards.is_half_blind() && job.gap.is_below(half);
    tight.then(|| warning("gap-finer-than-dial", message).about("glueGap"))
}

/// Half a step is all a gap can be off by; beyond this it is more than most glues fill well.
const COARSE: Mm = Mm::constant(0.15);
/// Feed and run-out hide anything finer.
const FINE: Mm = Mm::constant(0.005);

fn coarse_dial(job: &Job) -> Option<Note> {
    let step = job.tools.screw.step();
    let message = message![
        "The dial steps by ",
        step,
        ": gaps can be off by half of that. Half divisions would be finer."
    ];
    step.is_above(COARSE)
        .then(|| warning("coarse-dial", message).about("screw.divisions"))
}

fn fine_dial(job: &Job) -> Option<Note> {
    let step = job.tools.screw.step();
    let message = message![
        "The dial steps by ",
        step,
        ", finer than a saw repeats: rounding to whole divisions is enough."
    ];
    let halves = job.tools.screw.rounding() == Rounding::Half;
    (halves && step.is_below(FINE)).then(|| info("fine-dial", message).about("screw.rounding"))
}

fn highest_uncut(plan: &DovetailPlan, board: Board) -> Option<Mm> {
    let uncut = plan.dry_fit.uncut.iter();
    let heights = uncut.filter(|uncut| uncut.board == board);
    heights.map(|uncut| uncut.height).max()
}

/// Between two flanks that run apart, no straight pass reaches the middle of a narrow socket's floor.
fn under_tails(plan: &DovetailPlan) -> Option<Note> {
    let height = highest_uncut(plan, Board::A)?;
    let message = message![
        "Between the tails wood is left up to ",
        height,
        " above the baseline, where no pass reaches: chop it out before fitting."
    ];
    let beyond_corner = (height - plan.corner_left).is_above(Mm::constant(1e-3));
    beyond_corner.then(|| warning("uncut-between-tails", message))
}

fn pillars(plan: &DovetailPlan) -> Option<Note> {
    let full = |height: Mm| height.is_same(plan.depth_b);
    let stands = highest_uncut(plan, Board::B).is_some_and(full);
    let message = message![
        "In the pin board's sockets a wedge at the outer face is left standing between the two turns: the tails are \
         narrow for boards as thick as this. Chop it out before fitting."
    ];
    stands.then(|| warning("uncut-between-pins", message))
}

fn floor_ridge(plan: &DovetailPlan) -> Option<Note> {
    let highest = -plan.dry_fit.floor_gap_b;
    let message = message![
        "The upright cutter's teeth leave ridges up to ",
        highest,
        " high on the floors of the pin board's sockets. Pare them level before fitting; a flat-ground cutter leaves none."
    ];
    highest
        .is_above(Mm::ZERO)
        .then(|| warning("floor-ridge", message).about("pinCutter.grind"))
}

fn half_blind(plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "Half-blind: the tails are sawn here, ",
        plan.depth_a,
        " deep. The pin board's sockets stop at the lap: mark them from the tails, then rout or chop them ",
        plan.depth_b,
        " deep."
    ];
    plan.lap
        .is_above(Mm::ZERO)
        .then(|| info("half-blind", message).about("lap"))
}

fn corner_left(job: &Job, plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "Teeth that are square to the leaning blade leave the corner at each tail's flank ",
        plan.corner_left,
        " short of the baseline: leave it for the chisel. Teeth ground to the slope, ",
        write_number(job.slope().degrees, 3),
        "°, leave none."
    ];
    plan.corner_left
        .is_above(Mm::ZERO)
        .then(|| info("corner-left", message).about("cutter.grind"))
}

fn kerf_runs_off(plan: &DovetailPlan) -> Option<Note> {
    let least = plan.narrowest_half_pin?;
    let message = message![
        "The half-pins' places are narrower than the leaning kerf, which runs off the board's edge there: back the \
         edge up with scrap. Half-pins of ",
        least,
        " would take it whole."
    ];
    Some(info("kerf-runs-off", message).about("halfPin"))
}

fn not_symmetric(plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "The layout is not the same from both edges: mark the reference edges, and which face is which."
    ];
    (!plan.symmetric).then(|| info("not-symmetric", message))
}

/// From 1:10 to 1:5; old joinery handbooks print 1:6 for softwood and 1:8 for hardwood (common practice).
const USUAL_SLOPES: core::ops::RangeInclusive<f64> = 0.1..=0.2;

fn unusual_slope(job: &Job) -> Option<Note> {
    let slope = job.slope().tan;
    let (code, message) = if slope > *USUAL_SLOPES.end() {
        let message = message![
            "Steeper than 1:5, the tails' corners are weak across the grain; 1:6 for softwood and 1:8 for hardwood \
             are common practice."
        ];
        ("steep-slope", message)
    } else {
        let message = message![
            "Flatter than 1:10, the tails hardly hold by their shape; 1:6 for softwood and 1:8 for hardwood are common \
             practice."
        ];
        ("slight-slope", message)
    };
    // A ratio's own rounding is no reason for a note.
    let is_usual = USUAL_SLOPES.contains(&slope) || (slope - USUAL_SLOPES.end()).abs() < 1e-9;
    (!is_usual).then(|| info(code, message).about("slope"))
}

/// One quarter to one third of the front's thickness (Hayward).
fn unusual_lap(plan: &DovetailPlan) -> Option<Note> {
    let (least, most) = (plan.thickness_b / 4.0, plan.thickness_b / 3.0);
    let message = message![
        "A lap is usually a quarter to a third of the board's thickness, here ",
        least,
        " to ",
        most,
        "."
    ];
    let is_unusual = plan.lap.is_below(least) || plan.lap.is_above(most);
    (plan.lap.is_above(Mm::ZERO) && is_unusual).then(|| info("unusual-lap", message).about("lap"))
}

/// 0.006 in: surfaces this far apart suit most wood glues (FDMC magazine).
const WIDEST_GLUE_LINE: Mm = Mm::constant(0.15);

fn glue_line(plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "Gaps of up to ",
        plan.dry_fit.largest_gap,
        ": most wood glues want surfaces 0.05 to 0.15 mm apart."
    ];
    plan.dry_fit
        .largest_gap
        .is_above(WIDEST_GLUE_LINE)
        .then(|| info("wide-glue-line", message).about("glueGap"))
}

/// On end, a wider board stands unsteadily and far above the fence.
const WIDE: Mm = Mm::constant(600.0);

fn wide_stock(plan: &DovetailPlan) -> Option<Note> {
    let message = message![
        "A board ",
        plan.width,
        " wide is unusual on a sled: support it well at both sides."
    ];
    plan.width
        .is_above(WIDE)
        .then(|| info("wide-stock", message).about("width"))
}

/// How the boards are held from set to set, and what clockwise means.
fn both_faces(plan: &DovetailPlan) -> Vec<Note> {
    let turned_over = message![
        "The tail board is cut twice under the leaning blade: leave the blade as it is and turn the board face for \
         face, so that its other edge is against the stop. Boards that are not flat or not of one width shift their \
         tails."
    ];
    let turns = message![
        "Keep the pin board's reference edge at the stop in both turns, and cut scrap of the same thickness first. \
         Clockwise is meant as seen from above, with its outer face towards you and the reference edge at your left; \
         with the outer face away, or the edge at your right, it is the other way."
    ];
    let pins = plan.sets.iter().any(|set| set.board == Board::B);
    let notes = [
        Some(info("turned-over", turned_over)),
        pins.then(|| info("pin-board-turns", turns)),
    ];
    notes.into_iter().flatten().collect()
}
