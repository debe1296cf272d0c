//! Saws, each with the sled on it.

use yew::{Html, html};

use super::thing::{Rack, length, line};
use crate::msg::Shelf;
use crate::state::{Field, Saw, SawField};
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
        length("base", field(SawField::Base), context),
        length("travel", field(SawField::Travel), context),
    ])
}

fn fields(saw: &Saw, context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Saw(saw.id, field), label);
    html! {
        <div class="fields">
            { entry(SawField::Name, "Name").view(context) }
            { entry(SawField::GreatestHeight, "Greatest blade height")
                .hint("Above the table; blank if you do not know.")
                .view(context) }
            { entry(SawField::Base, "Sled base, thickness").view(context) }
            { entry(SawField::Travel, "Carriage travel").hint("Blank if you do not know.").view(context) }
        </div>
    }
}
