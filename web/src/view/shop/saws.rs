//! Saws: what sets a bound to every joint; the rest is measured in the sled's place.

use yew::{Html, html};

use super::thing::{Rack, length, line};
use crate::msg::{Msg, Shelf};
use crate::state::{Field, Place, Saw, SawField};
use crate::view::context::Context;
use crate::view::field::Entry;

/// The shelf.
pub(super) fn view(context: Context<'_>) -> Html {
    let rack = Rack {
        shelf: Shelf::Saws,
        title: "Saws",
        one: "saw",
        list: &context.model.state.work.shop.saws,
    };
    rack.view(
        |saw| says(saw, context),
        |saw| fields(saw, context),
        context,
    )
}

fn says(saw: &Saw, context: Context<'_>) -> String {
    let field = |field| Field::Saw(saw.id, field);
    line([
        length("blade up to", field(SawField::GreatestHeight), context),
        length("slot at", field(SawField::ToSlot), context),
    ])
}

fn fields(saw: &Saw, context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Saw(saw.id, field), label);
    html! {
        <>
            <div class="fields">
                { entry(SawField::Name, "Name").view(context) }
                { entry(SawField::GreatestHeight, "Greatest blade height")
                    .hint("Above the table; blank if you do not know.")
                    .view(context) }
            </div>
            { rest("Choose it, and its table and slots are measured there.", context) }
        </>
    }
}

/// The way to what is measured in the sled's place.
pub(super) fn rest(says: &'static str, context: Context<'_>) -> Html {
    html! {
        <div class="rule">
            <p class="quiet">{ says }</p>
            <button type="button" class="button" onclick={context.send(Msg::Go(Place::Sled))}>{ "To the sled" }</button>
        </div>
    }
}
