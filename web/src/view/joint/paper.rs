//! What only paper needs: the numbers that the page shows in its fields, and what it folds away.

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::problem::Planned;
use notchwright_core::stop::Set;
use yew::{Html, html};

use super::{cutter, notes};
use crate::state::{Field, JointField};
use crate::view::context::Context;
use crate::view::saw::steps;

/// Names, measures and set-up.
pub(super) fn heading(planned: &Planned<BoxJointPlan>, context: Context<'_>) -> Html {
    let text = |field| context.text(Field::Joint(field));
    let unit = crate::view::field::short(context.unit());
    let measures = format!(
        "Boards {} {unit} wide, A {} {unit} thick, B {} {unit} thick. Cutter: {}.",
        text(JointField::Width),
        text(JointField::ThicknessA),
        text(JointField::ThicknessB),
        cutter::line(context)
    );
    html! {
        <div class="for-paper" aria-hidden="true">
            <p class="job"><b>{ text(JointField::Job) }</b>{ " " }{ text(JointField::Name) }</p>
            <p>{ measures }</p>
            <div class="sets">
                { for planned.plan.sets.iter().map(|set| set_up(&planned.plan, set, context)) }
            </div>
            { notes::cautions(&planned.notes, context) }
        </div>
    }
}

fn set_up(plan: &BoxJointPlan, set: &Set, context: Context<'_>) -> Html {
    html! {
        <div>
            <p><b>{ format!("{}: blade {} high", set.name, context.length(set.height)) }</b></p>
            { steps::view(plan, set, context) }
        </div>
    }
}
