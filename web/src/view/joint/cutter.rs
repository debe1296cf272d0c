//! Which of the shop's cutters is on the arbor, and what in the shop stands in the joint's way.

use yew::{Html, html};

use crate::msg::{Edit, Msg, Shelf};
use crate::state::{Cutter, Field, Item, Place};
use crate::view::chips::{self, Chip};
use crate::view::context::Context;
use crate::view::icon::Icon;

/// The cutters.
pub(in crate::view) fn view(context: Context<'_>) -> Html {
    let cutters = &context.model.state.work.shop.cutters;
    let chip = |cutter: &Cutter| Chip {
        key: cutter.id().to_string(),
        name: name(cutter).into(),
        says: vec![kerf(cutter, context)],
        is_best: false,
        is_chosen: cutters.is_chosen(cutter.id()),
        choose: Msg::Edit(Edit::Choose(Shelf::Cutters, cutter.id())),
    };
    let chips: Vec<_> = cutters.items().iter().map(chip).collect();
    html! {
        <section class="section">
            { chips::view("cutter", html! { <h2>{ "Cutter on the arbor" }</h2> }, &chips, Html::default(), context) }
            { in_the_way(context) }
        </section>
    }
}

fn name(cutter: &Cutter) -> String {
    if cutter.name.is_blank() {
        "Cutter without a name".into()
    } else {
        cutter.name.text.clone()
    }
}

fn kerf(cutter: &Cutter, context: Context<'_>) -> String {
    let field = Field::Cutter(cutter.id(), crate::state::CutterField::Kerf);
    if cutter.kerf.is_blank() {
        "kerf not measured yet".into()
    } else {
        format!("cuts {}", context.typed_length(field))
    }
}

/// Problems of the shop's things that this joint uses, and those of no field at all.
fn in_the_way(context: Context<'_>) -> Html {
    let answer = &context.model.answer;
    let in_shop = |field: &Field| {
        matches!(
            field,
            Field::Saw(..) | Field::Sled(..) | Field::Cutter(..) | Field::Screw(..)
        )
    };
    let problems: Vec<_> = answer
        .shown_problems()
        .filter(|problem| problem.field.as_ref().is_none_or(in_shop))
        .map(|problem| context.message(&problem.message))
        .collect();
    if problems.is_empty() {
        return Html::default();
    }
    html! {
        <div class="field wrong">
            { for problems.into_iter().map(|text| html! {
                <p class="problem" role="status">{ Icon::Exclamation.sign("problem") }<span>{ text }</span></p>
            }) }
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::Go(Place::Shop))}>
                    { "Mend it in the shop" }
                </button>
            </div>
        </div>
    }
}

/// The chosen cutter as one line: `Rip blade, cuts 3.07 mm`.
pub(in crate::view) fn line(context: Context<'_>) -> String {
    let Some(cutter) = context.model.state.work.shop.cutters.chosen() else {
        return String::new();
    };
    format!("{}, {}", name(cutter), kerf(cutter, context))
}
