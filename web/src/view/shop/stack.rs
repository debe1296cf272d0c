//! The stack builder: what is in the box, and the width that is wanted.

use notchwright_core::cutter::{CutterStackPlan, StackPlan};
use notchwright_core::units::Mm;
use yew::{Html, html};

use crate::msg::Edit;
use crate::state::{Field, StackField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::show;

/// The form and its answer.
pub(super) fn view(context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Stack(field), label);
    html! {
        <section class="tool" aria-labelledby="stack">
            <h2 id="stack">{ "Build a grooving stack" }</h2>
            { entry(StackField::Outer, "Outer cutters").hint("Widths, with semicolons between them.").view(context) }
            { entry(StackField::Chippers, "Chippers").view(context) }
            { entry(StackField::Shims, "Shims").view(context) }
            { entry(StackField::Want, "Wanted width").view(context) }
            <div class="section" aria-live="polite">
                { for context.model.answer.stack().map(|plan| answer(plan, context)) }
            </div>
        </section>
    }
}

fn answer(plan: &CutterStackPlan, context: Context<'_>) -> Html {
    match (&plan.below, &plan.above) {
        (Some(below), Some(above)) if below.width.is_same(above.width) => {
            one("Exactly", below, context)
        }
        (below, above) => html! {
            <>
                { for below.as_ref().map(|stack| one("Just below", stack, context)) }
                { for above.as_ref().map(|stack| one("Just above", stack, context)) }
            </>
        },
    }
}

fn one(title: &str, stack: &StackPlan, context: Context<'_>) -> Html {
    let width = context.length(stack.width);
    html! {
        <div class="card section">
            <p class="answer">{ format!("{title}: ") }<b>{ &width }</b></p>
            <p class="quiet">{ pieces(stack, context) }</p>
            <div class="buttons">
                <button type="button" class="button" onclick={context.edit(Edit::AddStack(stack.width))}>
                    { format!("Add it as a cutter of {width}") }
                </button>
            </div>
        </div>
    }
}

fn pieces(stack: &StackPlan, context: Context<'_>) -> String {
    let list = |pieces: &[Mm]| {
        pieces
            .iter()
            .map(|width| show::bare(*width, context.unit()))
            .collect::<Vec<_>>()
            .join(" + ")
    };
    let part = |name: &str, pieces: &[Mm]| {
        (!pieces.is_empty()).then(|| format!("{name} {}", list(pieces)))
    };
    let uses = &stack.uses;
    let parts = [
        part("outer", &uses.outer),
        part("chippers", &uses.chippers),
        part("shims", &uses.shims),
    ];
    super::thing::line(parts)
}
