//! Sleds: what sets a bound to every joint; the rest is measured in the sled's place.

use yew::{Html, html};

use super::saws::rest;
use super::thing::{Rack, length, line};
use crate::msg::Shelf;
use crate::state::{Field, Sled, SledField};
use crate::view::context::Context;
use crate::view::field::Entry;

/// The shelf.
pub(super) fn view(context: Context<'_>) -> Html {
    let rack = Rack {
        shelf: Shelf::Sleds,
        title: "Sleds",
        one: "sled",
        list: &context.model.state.work.shop.sleds,
    };
    rack.view(
        |sled| says(sled, context),
        |sled| fields(sled, context),
        context,
    )
}

fn says(sled: &Sled, context: Context<'_>) -> String {
    let field = |field| Field::Sled(sled.id, field);
    line([
        length("base", field(SledField::Base), context),
        length("travel", field(SledField::Travel), context),
    ])
}

fn fields(sled: &Sled, context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Sled(sled.id, field), label);
    html! {
        <>
            <div class="fields">
                { entry(SledField::Name, "Name").view(context) }
                { entry(SledField::Base, "Base, thickness").view(context) }
                { entry(SledField::Travel, "Carriage travel")
                    .hint("How far the screw moves it; blank if you do not know.")
                    .view(context) }
            </div>
            { rest("Choose it, and its base, rails and runner are measured there.", context) }
        </>
    }
}
