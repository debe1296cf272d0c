//! What only paper needs: the numbers that the page shows in its fields.

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::problem::Planned;
use yew::{Html, html};

use super::cutter;
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
            <p><b>{ text(JointField::Job) }</b>{ " " }{ text(JointField::Name) }</p>
            <p>{ measures }</p>
            { for planned.plan.sets.iter().map(|set| html! {
                <>
                    <p><b>{ format!("Set-up for {}", set.name) }</b></p>
                    { steps::view(&planned.plan, set, context) }
                </>
            }) }
        </div>
    }
}
