//! What to do before the first pass of each set of dovetails.

use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::stop::{Board, Set};
use notchwright_core::units::write_number;

use crate::state::{Field, JointField, ZeroKind};
use crate::view::context::Context;
use crate::view::{instruct, joint};

/// The steps, in order.
pub(super) fn steps(
    plan: &DovetailPlan,
    set: &Set,
    context: Context<'_>,
) -> Vec<(&'static str, String)> {
    vec![
        ("Cutter", cutter(set, context)),
        ("Blade", blade(set)),
        ("Board", board(plan, set, context)),
        ("Zero", zero(set, context)),
        ("Run-up", instruct::run_up(set)),
    ]
}

fn degrees(degrees: f64) -> String {
    format!("{}°", write_number(degrees.abs(), 3))
}

/// Upright cuts and pins may have a cutter of their own.
fn cutter(set: &Set, context: Context<'_>) -> String {
    let work = &context.model.state.work;
    let own = work.shop.cutters.get(work.joint.dovetail.pin_cutter);
    let name = match own.filter(|_| set.tilt_degrees == 0.0) {
        Some(cutter) => cutter.name.text.clone(),
        None => joint::cutter_line(context),
    };
    format!(
        "{name}. Every stop counts on a kerf of {}: make a test cut and measure it.",
        context.length(set.kerf)
    )
}

fn blade(set: &Set) -> String {
    if set.tilt_degrees == 0.0 {
        return "Upright: check it with a square.".to_owned();
    }
    if set.flipped {
        return "Leave its lean and its height as they are.".to_owned();
    }
    format!(
        "Lean it {} towards the reference edge as it rises, and measure the lean: a square on the base, and how far \
         the blade leans over its height. See that it turns freely in the base's slot.",
        degrees(set.tilt_degrees)
    )
}

fn board(plan: &DovetailPlan, set: &Set, context: Context<'_>) -> String {
    let thick = |field| format!("{} thick", context.typed_length(Field::Joint(field)));
    match (set.board, set.flipped) {
        (Board::A, false) => format!(
            "Tail board, {}, on end, outer face to the carriage, reference edge against the stop.",
            thick(JointField::ThicknessA)
        ),
        (Board::A, true) => "The same tail board turned face for face: inner face to the carriage, the other edge against \
                             the stop. These stops count from that edge."
            .to_owned(),
        (Board::B, _) => {
            let (way, thick_end, leading) = if set.yaw_degrees > 0.0 {
                ("clockwise", "at the reference edge", "outer")
            } else {
                ("anticlockwise", "at the other edge", "inner")
            };
            format!(
                "Pin board, {}, on end, outer face to the carriage, reference edge against the stop at your left, turned \
                 {} {way} seen from above: put the wedge between carriage and board, its thick end {thick_end}. The \
                 {leading} arris leads.",
                thick(JointField::ThicknessB),
                degrees(plan.angle_degrees),
            )
        }
    }
}

fn zero(set: &Set, context: Context<'_>) -> String {
    let edge = if set.flipped {
        "edge now against the stop"
    } else {
        "reference edge"
    };
    match context.model.state.work.joint.zero.kind {
        ZeroKind::Touch if set.tilt_degrees != 0.0 => format!(
            "Turn the wheel until the board's end arris at the {edge} just touches the side of the stopped blade, at the \
             base; there the dial reads 0."
        ),
        ZeroKind::Touch if set.yaw_degrees != 0.0 => format!(
            "Turn the wheel until the leading arris of the {edge} just touches the side of the stopped blade; there the \
             dial reads 0. Find it anew for each turn of the board."
        ),
        ZeroKind::TestKerf => format!(
            "These stops count on a test kerf made in this very set-up: at {}, and {} from the {edge} to its nearer \
             side. If it came out otherwise here, leave, type what you measured, and come back.",
            context.typed_length(Field::Joint(JointField::ZeroReading)),
            context.typed_length(Field::Joint(JointField::ZeroMeasured))
        ),
        _ => instruct::zero(context),
    }
}
