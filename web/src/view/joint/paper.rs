//! What only paper needs: the numbers that the page shows in its fields, and what it folds away.

use notchwright_core::stop::Set;
use yew::{Html, html};

use super::{cutter, notes};
use crate::answer::Cut;
use crate::state::{Field, JointField};
use crate::view::context::Context;
use crate::view::saw::steps;

/// Names, measures and set-up.
pub(in crate::view) fn heading(cut: Cut<'_>, context: Context<'_>) -> Html {
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
                { for cut.sets.iter().map(|set| set_up(cut, set, context)) }
            </div>
            { notes::cautions(cut.notes, context) }
        </div>
    }
}

fn set_up(cut: Cut<'_>, set: &Set, context: Context<'_>) -> Html {
    html! {
        <div>
            <p><b>{ format!("{}: blade {} high", set.name, context.length(set.height)) }</b></p>
            { steps::view(cut, set, context) }
        </div>
    }
}
