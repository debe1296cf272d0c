//! What to do before the first pass of a set, in order.

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::stop::{Board, Set};
use yew::{Html, html};

use crate::answer::{Cut, Of};
use crate::state::{Field, JointField};
use crate::view::context::Context;
use crate::view::{instruct, joint, slanted};

/// The steps.
pub(in crate::view) fn view(cut: Cut<'_>, set: &Set, context: Context<'_>) -> Html {
    let steps = match cut.of {
        Of::Box(plan) => vec![
            ("Cutter", cutter(set, context)),
            ("Board", board(plan, set, context)),
            ("Zero", instruct::zero(context)),
            ("Run-up", instruct::run_up(set)),
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
    let thickness = context.typed_length(Field::Joint(field));
    let first = if starts_with_pin { "a pin" } else { "a socket" };
    format!(
        "Board {letter}, {thickness} thick, on end, its reference edge against the stop on the carriage. \
         There it begins with {first}."
    )
}
