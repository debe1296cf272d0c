//! Sheets, boards and off-cuts, and how they are cut up.

use notchwright_core::units::Mm;
use yew::{Html, html};

use super::rows::{add, buttons, called, reference, words};
use super::sheet_plan::size;
use crate::state::fields::{Known, cutting, sheet};
use crate::state::{Field, Group, Id, Row};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::tool::{entries, entry, folded, group, hinted, said};

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    let rows = context.model.state.work.job.making.rows(Group::Sheets);
    html! {
        <>
            { group("Sheets and boards", html! {
                <>
                    <ul class="rows">{ for rows.iter().enumerate().map(|(place, row)| sheet_row(place, row, context)) }</ul>
                    <div class="buttons">{ add(Group::Sheets, "Add a sheet", context) }</div>
                </>
            }) }
            { group("Cutting", html! {
                <>
                    { kerf(context) }
                    { rough(context) }
                    { least(context) }
                </>
            }) }
        </>
    }
}

fn sheet_row(place: usize, row: &Row, context: Context<'_>) -> Html {
    html! {
        <li key={row.id.0} class="row">
            <div class="cells always">
                { entry(sheet::NAME.of(row.id), context) }
                { Entry::new(sheet::QUANTITY.of(row.id), sheet::QUANTITY.spot(row.id).label).hint("Blank: any.").view(context) }
                { entry(sheet::LENGTH.of(row.id), context) }
                { entry(sheet::WIDTH.of(row.id), context) }
            </div>
            { reference(sheet::STOCK.spot(row.id), Group::Stocks, "Stock", context) }
            { more(place, row, context) }
        </li>
    }
}

/// What is seldom changed of a sheet.
fn more(place: usize, row: &Row, context: Context<'_>) -> Html {
    let name = called(row, place, "Sheet");
    let mut inside = vec![sheet::EDGE_TRIM.of(row.id), sheet::PRICE.of(row.id)];
    let mass = sheet::MASS.of(row.id);
    let weighed = is_weighed(context).then(|| {
        let hint = "Blank: by its area that of another sheet of its stock.";
        hinted(mass, hint, context)
    });
    inside.extend(weighed.as_ref().map(|_| mass));
    let grain = [
        ("", "along the length"),
        ("width", "along the width"),
        ("none", "none"),
    ];
    let is = [("", "whole"), ("yes", "off-cut on hand")];
    let shown = |field: Known, options: &[(&'static str, &'static str)]| {
        let text = row.form.text(field.name());
        let found = options.iter().find(|(word, _)| *word == text);
        found.map_or("", |(_, says)| *says)
    };
    let says = format!(
        "grain {}, {}",
        shown(sheet::GRAIN, &grain),
        shown(sheet::OFFCUT, &is)
    );
    folded(
        "Grain, edges, price",
        says,
        &inside,
        html! {
            <>
                { words(sheet::GRAIN.spot(row.id), &grain, context) }
                { words(sheet::OFFCUT.spot(row.id), &is, context) }
                { entries(inside.iter().copied().filter(|field| *field != mass), context) }
                { weighed.unwrap_or_default() }
                { buttons(Group::Sheets, row.id, &name, context) }
            </>
        },
        context,
    )
}

/// What is in a field of the cutting's form.
fn text(field: Known, context: Context<'_>) -> &str {
    let making = &context.model.state.work.job.making;
    making.cutting.text(field.name()).trim()
}

fn is_weighed(context: Context<'_>) -> bool {
    text(cutting::ROUGH, context) == "on" && !text(cutting::HEAVIEST, context).is_empty()
}

fn kerf(context: Context<'_>) -> Html {
    let chosen = context.model.state.work.shop.cutters.chosen();
    let hint = chosen.map_or_else(
        || "No cutter is chosen in the shop: say what the saw cuts.".to_owned(),
        |cutter| {
            let kerf = context.entered_length(&cutter.kerf);
            format!(
                "Blank: that of the chosen cutter, {}, {kerf}.",
                cutter.name.text
            )
        },
    );
    let label = cutting::KERF.spot(Id::default()).label;
    Entry::new(cutting::KERF.alone(), label)
        .hint(hint)
        .view(context)
}

/// Breaking large sheets down by hand.
fn rough(context: Context<'_>) -> Html {
    let is_on = text(cutting::ROUGH, context) == "on";
    let fields = [
        cutting::LONGEST,
        cutting::WIDEST,
        cutting::HEAVIEST,
        cutting::ALLOWANCE,
        cutting::ROUGH_KERF,
    ];
    let fields = fields.map(Known::alone);
    let says = if is_on {
        said(
            &[cutting::LONGEST, cutting::WIDEST].map(Known::alone),
            context,
        )
    } else {
        "straight to the table saw".to_owned()
    };
    let inside = html! {
        <>
            { words(cutting::ROUGH.spot(Id::default()), &[("", "to the table saw"), ("on", "cut by hand first")], context) }
            if is_on {
                <p class="quiet">{ "Pieces that a person lifts onto the table saw; for the heaviest, each sheet needs its mass. Left beside the cut: blank for 5 mm." }</p>
                { entries(fields, context) }
            }
        </>
    };
    let shown = if is_on { fields.as_slice() } else { &[] };
    folded("Breaking down large sheets", says, shown, inside, context)
}

fn least(context: Context<'_>) -> Html {
    let fields = [cutting::LEAST_LENGTH, cutting::LEAST_WIDTH].map(Known::alone);
    let is_blank = |field: &Field| context.text(*field).trim().is_empty();
    let says = if fields.iter().all(is_blank) {
        format!(
            "from {}",
            size(Mm::constant(300.0), Mm::constant(100.0), context)
        )
    } else {
        said(&fields, context)
    };
    folded(
        "Off-cuts worth keeping",
        says,
        &fields,
        entries(fields, context),
        context,
    )
}
