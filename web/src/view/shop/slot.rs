//! A kerf, found from a slot of several kerfs cut in steps.

use yew::{Html, html};

use crate::msg::Edit;
use crate::state::{Cutter, CutterField, Field, SlotField};
use crate::view::context::Context;
use crate::view::field::Entry;

/// The form and its answer.
pub(super) fn view(context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Slot(field), label).view(context);
    html! {
        <section class="tool" aria-labelledby="slot">
            <h2 id="slot">{ "Kerf from a stepped slot" }</h2>
            <p class="quiet">
                { "Cut several overlapping kerfs, each one step on, and measure the slot. More kerfs do not make it \
                   finer; they only make a slot wide enough for your calliper." }
            </p>
            <div class="fields">
                { entry(SlotField::Kerfs, "Kerfs") }
                { entry(SlotField::Step, "Each step") }
                { entry(SlotField::Width, "Slot width") }
            </div>
            <div aria-live="polite">{ for context.model.answer.kerf().into_iter().map(|found| html! {
                <p class="answer">{ "The kerf is " }<b>{ context.length(found.kerf) }</b>{ "." }</p>
            }) }</div>
            { take(context) }
        </section>
    }
}

fn take(context: Context<'_>) -> Html {
    let chosen = context.model.state.work.shop.cutters.chosen();
    let (Some(found), Some(cutter)) = (context.model.answer.kerf(), chosen) else {
        return Html::default();
    };
    let field = Field::Cutter(cutter.id, CutterField::Kerf);
    html! {
        <div class="buttons">
            <button type="button" class="button" onclick={context.edit(Edit::Set(field, found.kerf))}>
                { format!("Take it for {}", name(cutter)) }
            </button>
        </div>
    }
}

fn name(cutter: &Cutter) -> &str {
    if cutter.name.is_blank() {
        "the chosen cutter"
    } else {
        &cutter.name.text
    }
}
