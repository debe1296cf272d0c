//! What to do before the first pass of a set, in order.

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::stop::{Board, Reading, Set};
use yew::{Html, html};

use crate::answer::{Cut, Of};
use crate::state::{Field, JointField, ZeroKind};
use crate::view::context::Context;
use crate::view::{field, joint, show, slanted};

/// The steps.
pub(in crate::view) fn view(cut: Cut<'_>, set: &Set, context: Context<'_>) -> Html {
    let steps = match cut.of {
        Of::Box(plan) => vec![
            ("Cutter", cutter(set, context)),
            ("Board", board(plan, set, context)),
            ("Zero", zero(context)),
            ("Run-up", run_up(set)),
        ],
        Of::Dovetail(plan) => slanted::steps(plan, set, context),
    };
    html! {
        <ol class="steps">
            { for steps.into_iter().map(|(title, says)| html! {
                <li><h2>{ title }</h2><p>{ says }</p></li>
            }) }
        </ol>
    }
}

fn cutter(set: &Set, context: Context<'_>) -> String {
    format!(
        "{}. Every stop counts on a kerf of {}: make a test cut and measure it.",
        joint::cutter_line(context),
        context.length(set.kerf)
    )
}

fn board(plan: &BoxJointPlan, set: &Set, context: Context<'_>) -> String {
    let (letter, field, starts_with_pin) = match set.board {
        Board::A => ("A", JointField::ThicknessA, plan.first_is_pin),
        Board::B => ("B", JointField::ThicknessB, !plan.first_is_pin),
    };
    let thickness = context.text(Field::Joint(field));
    let unit = field::short(context.unit());
    let first = if starts_with_pin { "a pin" } else { "a socket" };
    format!(
        "Board {letter}, {thickness} {unit} thick, on end, its reference edge against the stop on the carriage. \
         There it begins with {first}."
    )
}

pub(in crate::view) fn zero(context: Context<'_>) -> String {
    let text = |field| context.text(Field::Joint(field));
    match context.model.state.work.joint.zero.kind {
        ZeroKind::Touch => {
            "Turn the wheel until the board's reference edge just touches the side of the stopped cutter; there the dial \
             reads 0."
                .into()
        }
        ZeroKind::Flush => {
            "Turn the wheel until the stopped cutter is flush with the board's reference edge and would take one kerf \
             off it; there the dial reads 0."
                .into()
        }
        ZeroKind::TestKerf => format!(
            "Leave the dial's zero as it was for the test kerf: made at {}, it lies {} {} from the reference edge.",
            text(JointField::ZeroReading),
            text(JointField::ZeroMeasured),
            field::short(context.unit())
        ),
    }
}

pub(in crate::view) fn run_up(set: &Set) -> String {
    let first = set
        .stops
        .first()
        .map(|stop| reading(stop.dial))
        .unwrap_or_default();
    format!(
        "Turn back past {}, then come up to the first stop, {first}. Arrive at every stop with rising readings.",
        reading(set.run_up)
    )
}

/// `31 turns 25`, `1 turn below zero, at 79`.
pub(super) fn reading(reading: Reading) -> String {
    let division = show::number(reading.division);
    match reading.turns {
        ..0 => {
            let below = usize::try_from(reading.turns.unsigned_abs()).unwrap_or(usize::MAX);
            format!(
                "{} below zero, at {division}",
                show::count(below, "turn", "turns")
            )
        }
        turns => {
            let turns = usize::try_from(turns).unwrap_or(usize::MAX);
            format!("{} {division}", show::count(turns, "turn", "turns"))
        }
    }
}

#[cfg(test)]
mod tests {
    use notchwright_core::stop::Reading;
    use notchwright_core::units::Mm;

    #[test]
    fn readings_below_zero_say_so() {
        let rows = [
            (31, 25.0, "31 turns 25"),
            (1, 79.5, "1 turn 79.5"),
            (0, 62.0, "0 turns 62"),
            (-1, 79.0, "1 turn below zero, at 79"),
            (-12, 0.0, "12 turns below zero, at 0"),
        ];
        for (turns, division, words) in rows {
            let reading = Reading {
                reading: Mm::ZERO,
                turns,
                division,
            };
            assert_eq!(super::reading(reading), words);
        }
    }
}
