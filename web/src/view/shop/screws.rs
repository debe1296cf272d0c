//! Lead screws, each with its wheel.

use yew::{Html, html};

use super::thing::{Rack, length, line};
use crate::msg::{Edit, Msg, Shelf};
use crate::state::{Field, Id, LeadBy, Rises, Rounding, Screw, ScrewField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::segment::Segment;

/// The shelf.
pub(super) fn view(context: Context<'_>) -> Html {
    let list = &context.model.state.work.shop.screws;
    let rack = Rack {
        shelf: Shelf::Screws,
        title: "Screws",
        one: "screw",
        list,
    };
    rack.view(
        |screw| says(screw, context),
        |screw| fields(screw, context),
        context,
    )
}

fn says(screw: &Screw, context: Context<'_>) -> String {
    let text = |field| context.text(Field::Screw(screw.id, field));
    let lead = match screw.by {
        LeadBy::Lead => length("lead", Field::Screw(screw.id, ScrewField::Lead), context),
        LeadBy::Threads => Some(format!("{} threads per inch", text(ScrewField::Threads))),
    };
    line([
        lead,
        Some(format!("{} divisions", text(ScrewField::Divisions))),
    ])
}

fn fields(screw: &Screw, context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Screw(screw.id, field), label);
    let lead = match screw.by {
        LeadBy::Lead => entry(ScrewField::Lead, "Travel per turn"),
        LeadBy::Threads => entry(ScrewField::Threads, "Threads").unit("per inch"),
    };
    html! {
        <>
            { by(screw, context) }
            <div class="fields">
                { entry(ScrewField::Name, "Name").view(context) }
                { lead.view(context) }
                { entry(ScrewField::Divisions, "Wheel divisions").view(context) }
                { entry(ScrewField::Backlash, "Backlash").hint("Lost motion on turning back; blank for none.").view(context) }
            </div>
            { rounding(screw.id, screw.rounding, context) }
            { rises(screw.id, screw.rises, context) }
        </>
    }
}

fn by(screw: &Screw, context: Context<'_>) -> Html {
    let id = screw.id;
    let by = Segment {
        name: &format!("lead-by-{id}"),
        legend: "The screw is known by",
        is_plain: false,
        options: &[
            (LeadBy::Lead, "its travel per turn"),
            (LeadBy::Threads, "threads per inch"),
        ],
        chosen: screw.by,
    };
    by.view(|by| Msg::Edit(Edit::LeadBy(id, by)), context)
}

fn rounding(id: Id, chosen: Rounding, context: Context<'_>) -> Html {
    let rounding = Segment {
        name: &format!("rounding-{id}"),
        legend: "Settings are rounded to",
        is_plain: false,
        options: &[
            (Rounding::Division, "divisions"),
            (Rounding::Half, "half divisions"),
            (Rounding::None, "nothing"),
        ],
        chosen,
    };
    rounding.view(|rounding| Msg::Edit(Edit::Rounding(id, rounding)), context)
}

fn rises(id: Id, chosen: Rises, context: Context<'_>) -> Html {
    let rises = Segment {
        name: &format!("rises-{id}"),
        legend: "As the reading rises, the cut moves",
        is_plain: false,
        options: &[
            (Rises::Away, "away from the reference edge"),
            (Rises::Towards, "towards the reference edge"),
        ],
        chosen,
    };
    rises.view(|rises| Msg::Edit(Edit::Rises(id, rises)), context)
}
