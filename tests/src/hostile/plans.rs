//! What holds for every plan but joints', function by function.

use anyhow::{Context, ensure};
use notchwright_core::cutter::{CutterStackPlan, KerfPlan, StackPlan};
use notchwright_core::groove::GrooveSetupPlan;
use notchwright_core::plain::Plain;
use notchwright_core::screw_check::ScrewCheckPlan;
use notchwright_core::sled::SledFitPlan;
use notchwright_core::square::{SquareTestPlan, Towards};
use notchwright_core::units::{self, LengthPlan, Mm, TextPlan, Unit};

use super::replies::{find, number};
use super::{Held, length};

/// Arithmetic's noise in sums of lengths of some metres.
pub(super) const NOISE: f64 = 1e-6;
/// Stacks are compared to the micrometre.
const SAME: f64 = 1e-3 + NOISE;

/// Whether a length is as said.
pub(super) fn is_near(one: Mm, other: f64) -> bool {
    (one.mm() - other).abs() <= NOISE
}

/// The two stacks lie on both sides of what is wanted, of pieces that are there.
pub(super) fn cutter_stack(request: &Plain, plan: &CutterStackPlan) -> Held {
    let want = number(request, "want").context("a wanted width")?;
    let width = |stack: &StackPlan| -> f64 {
        let uses = &stack.uses;
        let pieces = uses.outer.iter().chain(&uses.chippers).chain(&uses.shims);
        pieces.map(|piece| piece.mm()).sum()
    };
    for stack in plan.below.iter().chain(&plan.above).chain([&plan.nearest]) {
        ensure!(
            is_near(stack.width, width(stack)),
            "{stack:?} is {}",
            width(stack)
        );
    }
    ensure!(
        plan.below
            .iter()
            .all(|stack| stack.width.mm() <= want + SAME),
        "below {want}"
    );
    ensure!(
        plan.above
            .iter()
            .all(|stack| stack.width.mm() >= want - SAME),
        "above {want}"
    );
    let off = |stack: &StackPlan| (stack.width.mm() - want).abs();
    let others = plan.below.iter().chain(&plan.above);
    ensure!(
        others.clone().any(|stack| *stack == plan.nearest),
        "the nearest is one of them"
    );
    ensure!(
        others
            .clone()
            .all(|stack| off(&plan.nearest) <= off(stack) + SAME),
        "the nearest"
    );
    Ok(())
}

/// Kerfs of this width, a step apart each, make the slot.
pub(super) fn kerf_from_slot(request: &Plain, plan: &KerfPlan) -> Held {
    let [steps, step, slot] = ["steps", "step", "slotWidth"].map(|field| number(request, field));
    let (steps, step, slot) = (
        steps.context("steps")?,
        step.context("a step")?,
        slot.context("a slot")?,
    );
    ensure!(is_near(plan.kerf, slot - (steps - 1.0) * step), "the slot");
    ensure!(
        plan.kerf > Mm::ZERO && (steps < 2.0 || plan.kerf.mm() > step),
        "the kerf"
    );
    Ok(())
}

/// A length that was read is written so that it is read again.
pub(super) fn parse_length(_: &Plain, plan: &LengthPlan) -> Held {
    length::reads_back(plan.mm)
}

/// What was written says the length, with what is left over.
pub(super) fn format_length(request: &Plain, plan: &TextPlan) -> Held {
    let asked = number(request, "mm").context("a length")?;
    // Rounded up, a kilometre is longer than what is read.
    if asked.abs() > 999_900.0 {
        return Ok(());
    }
    for unit in Unit::ALL {
        let said = units::parse_length(&plan.text, unit)
            .map_err(|error| anyhow::anyhow!("{error}: {}", plan.text))?;
        let off = ((said + plan.leftover).mm() - asked).abs();
        ensure!(
            off <= if plan.exact { 1e-3 } else { 0.0 } + NOISE,
            "{} is off by {off}",
            plan.text
        );
        ensure!(
            !plan.exact || plan.leftover == Mm::ZERO,
            "exact with {} left over",
            plan.leftover
        );
    }
    Ok(())
}

/// Centring halves what is left over at both ends, and the stroke goes forward.
pub(super) fn sled_fit(_: &Plain, plan: &SledFitPlan) -> Held {
    let runner = &plan.runner;
    ensure!(
        is_near(
            runner.left_after * 2.0,
            (runner.near_left + runner.far_left).mm()
        ),
        "{runner:?}"
    );
    ensure!(
        is_near(plan.travel.end - plan.travel.start, plan.travel.length.mm()),
        "{:?}",
        plan.travel
    );
    ensure!(
        plan.half_chord_base <= plan.half_chord_table,
        "the base covers the blade"
    );
    let slot = &plan.slot;
    ensure!(
        slot.under_near <= slot.top_near && slot.top_near <= slot.top_far,
        "{slot:?}"
    );
    ensure!(slot.top_far <= slot.under_far, "{slot:?}");
    Ok(())
}

/// A strip that is the same at both ends has no error, and a greater error moves the fence farther.
pub(super) fn square_test(request: &Plain, plan: &SquareTestPlan) -> Held {
    let [fence, free] = ["fenceEnd", "freeEnd"].map(|field| number(request, field));
    let tapers = fence.context("one end")? - free.context("the other end")?;
    ensure!(
        tapers == 0.0 || plan.error_radians != 0.0,
        "a taper of {tapers} is no error"
    );
    ensure!(
        (plan.travel == Mm::ZERO) == (plan.towards == Towards::None) || tapers.abs() < NOISE,
        "the move"
    );
    ensure!(plan.travel >= Mm::ZERO, "the move");
    ensure!(
        (plan.angle_degrees - 90.0 - plan.error_degrees).abs() < NOISE,
        "the angle"
    );
    ensure!(plan.uncertainty_radians >= 0.0, "the uncertainty");
    Ok(())
}

/// Every point has its residual, and none is worse than the worst.
pub(super) fn screw_check(request: &Plain, plan: &ScrewCheckPlan) -> Held {
    let points = match find(request, "points") {
        Some(Plain::List(points)) => points.len(),
        _ => 0,
    };
    ensure!(plan.residuals.len() == points, "{points} points");
    let worst = plan.residuals.iter().map(|residual| residual.abs()).max();
    ensure!(
        worst.is_some_and(|worst| is_near(plan.worst, worst.mm())),
        "the worst"
    );
    ensure!(plan.residual >= Mm::ZERO, "the residual");
    Ok(())
}

/// Passes cover the groove from side to side, depths go down to its floor.
pub(super) fn groove_setup(request: &Plain, plan: &GrooveSetupPlan) -> Held {
    let [from, width, bit] =
        ["fromEdge", "width", "bit"].map(|field| number(request, field).unwrap_or(f64::NAN));
    let (first, last) = plan
        .passes
        .first()
        .zip(plan.passes.last())
        .context("no pass")?;
    ensure!(
        is_near(first.fence_to_bit, from - width / 2.0),
        "the first pass"
    );
    ensure!(
        is_near(last.fence_to_bit, from + width / 2.0 - bit),
        "the last pass"
    );
    let mut pairs = plan.passes.iter().zip(plan.passes.iter().skip(1));
    ensure!(
        pairs.all(|(one, next)| (next.fence_to_bit - one.fence_to_bit).mm() < bit),
        "a ridge is left"
    );
    let deepest = number(request, "depth");
    ensure!(
        plan.depths.last().map(|depth| depth.mm()) == deepest,
        "the floor"
    );
    let step = number(request, "passDepth").unwrap_or(f64::INFINITY);
    let before = std::iter::once(&Mm::ZERO).chain(&plan.depths);
    let mut steps = before
        .zip(&plan.depths)
        .map(|(one, next)| (*next - *one).mm());
    ensure!(
        steps.all(|depth| depth > 0.0 && depth <= step + NOISE),
        "a pass too deep"
    );
    Ok(())
}
