//! The numbered parts: what each is cut from, and how large it is for the stock as measured.

use notchwright_core::parts::{Change, Dimension, DraftRow, StockTotal};
use notchwright_core::units::{Mm, Unit};
use yew::{Html, InputEvent, TargetCast, classes, html};

use super::rows::{add, buttons, called, called_in, reference, referred, remove, words};
use crate::msg::{Edit, MakingEdit, Msg};
use crate::state::fields::{self, measure, part, stock};
use crate::state::{Group, Row};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;
use crate::view::tool::{entries, entry, facts, folded, group, notes};

/// Stocks and measurements.
pub(super) fn form(context: Context<'_>) -> Html {
    let making = &context.model.state.work.job.making;
    html! {
        <>
            { group("Stock", html! {
                <>
                    <ul class="rows">{ for making.rows(Group::Stocks).iter().enumerate().map(|(place, row)| stock_row(place, row, context)) }</ul>
                    <div class="buttons">{ add(Group::Stocks, "Add a stock", context) }</div>
                </>
            }) }
            { group("Measurements with a name", html! {
                <>
                    <p class="quiet">{ "Parts can be sums over them, and over t, the thickness of their stock: 300 - 2*t." }</p>
                    <ul class="rows">{ for making.rows(Group::Measures).iter().map(|row| measure_row(row, context)) }</ul>
                    <div class="buttons">{ add(Group::Measures, "Add a measurement", context) }</div>
                </>
            }) }
        </>
    }
}

fn stock_row(place: usize, row: &Row, context: Context<'_>) -> Html {
    let name = called(row, place, "Stock");
    html! {
        <li key={row.id.0} class="row pair stock">
            { entries([stock::NAME, stock::THICKNESS].map(|field| field.of(row.id)), context) }
            { remove(Group::Stocks, row.id, &name, context) }
            { former(row, context) }
        </li>
    }
}

/// What changed when the stock was measured again, until that is settled.
fn former(row: &Row, context: Context<'_>) -> Html {
    let Some(was) = row.form.get(stock::FORMER.name()) else {
        return Html::default();
    };
    let shown = context.entered_length(was);
    let settle = MakingEdit::Choose(stock::FORMER.spot(row.id), "");
    html! {
        <div class="changed" role="status">
            <p>{ format!("It was {shown}: what changed is beside each part.") }</p>
            <button type="button" class="button" onclick={context.edit(Edit::Making(settle))}>{ "That is settled" }</button>
        </div>
    }
}

fn measure_row(row: &Row, context: Context<'_>) -> Html {
    let name = row.form.text(measure::NAME.name());
    html! {
        <li key={row.id.0} class="row pair">
            { entries([measure::NAME, measure::VALUE].map(|field| field.of(row.id)), context) }
            { remove(Group::Measures, row.id, name, context) }
        </li>
    }
}

/// The parts, and what they need of each stock.
pub(super) fn outcome(context: Context<'_>) -> Html {
    let making = &context.model.state.work.job.making;
    let Some(draft) = context
        .model
        .answer
        .making
        .as_ref()
        .map(|making| &making.parts)
    else {
        return Html::default();
    };
    let rows = making.rows(Group::Parts).iter().enumerate();
    html! {
        <>
            <section class="section" aria-labelledby="parts-list">
                <h2 id="parts-list">{ "Parts" }</h2>
                <p class="quiet">{ "Length runs along the grain." }</p>
                <ol class="rows parts-rows">{ for rows.map(|(place, row)| part_row(place, row, draft.rows.get(place), context)) }</ol>
                <div class="buttons">
                    { add(Group::Parts, "Add a part", context) }
                </div>
            </section>
            { totals(context) }
            { table(context) }
            { notes(&draft.notes, context) }
        </>
    }
}

fn part_row(place: usize, row: &Row, found: Option<&DraftRow>, context: Context<'_>) -> Html {
    let number = found.map_or_else(|| (place + 1).to_string(), |found| found.number.to_string());
    let field = |known: fields::Known| known.of(row.id);
    html! {
        <li key={row.id.0} class="row part">
            <b class="number"><span class="for-readers">{ "Part " }</span>{ number }</b>
            <div class={classes!("cells", has_long_sum(row).then_some("sums"))}>
                { entry(field(part::NAME), context) }
                { entry(field(part::COUNT), context) }
                { entry(field(part::LENGTH), context) }
                { entry(field(part::WIDTH), context) }
            </div>
            { for found.map(|found| size(found, context)) }
            { more(place, row, context) }
        </li>
    }
}

/// Whether a length or a width is longer than half of a phone shows.
fn has_long_sum(row: &Row) -> bool {
    const SHOWN: usize = 9;
    let mut dimensions = [part::LENGTH, part::WIDTH].into_iter();
    dimensions.any(|field| row.form.text(field.name()).len() > SHOWN)
}

/// What the dimensions come to, and what became of them.
fn size(found: &DraftRow, context: Context<'_>) -> Html {
    let finished = |dimension: Option<Dimension>| {
        dimension.map_or_else(
            || "?".to_owned(),
            |it| show::bare(it.finished, context.unit()),
        )
    };
    let changes = [
        ("Length", found.length.and_then(|it| it.change)),
        ("Width", found.width.and_then(|it| it.change)),
        ("Trim at each side", found.trim_change),
    ];
    let changed = changes
        .into_iter()
        .filter_map(|(name, change)| Some((name, change?)))
        .map(|(name, change)| change_shown(name, change, context));
    let unit = context.unit().symbol();
    html! {
        <div class="size">
            <p><b>{ format!("{} × {}{}{unit}", finished(found.length), finished(found.width), gap(context)) }</b>{ rough(found, context) }</p>
            { for changed }
        </div>
    }
}

fn gap(context: Context<'_>) -> &'static str {
    match context.unit() {
        Unit::Mm => " ",
        Unit::Inch => "",
    }
}

fn rough(found: &DraftRow, context: Context<'_>) -> String {
    let (Some(length), Some(width)) = (found.length, found.width) else {
        return String::new();
    };
    if length.rough.is_same(length.finished) {
        return String::new();
    }
    let bare = |length: Mm| show::bare(length, context.unit());
    format!(", cut {} × {}", bare(length.rough), bare(width.rough))
}

fn change_shown(name: &str, change: Change, context: Context<'_>) -> Html {
    let by = context.length(change.by);
    let by = if change.by.mm() > 0.0 {
        format!("+{by}")
    } else {
        by
    };
    html! { <p class="changed">{ format!("{name} was {}: {by}.", context.length(change.was)) }</p> }
}

/// What is seldom changed of a part.
fn more(place: usize, row: &Row, context: Context<'_>) -> Html {
    let making = &context.model.state.work.job.making;
    let name = called(row, place, "Part");
    let of = referred(making, Group::Stocks, row.form.text(part::STOCK.name()));
    let of = of.map_or_else(
        || "stock not chosen".to_owned(),
        |row| called_in(making, Group::Stocks, row, "Stock"),
    );
    let turns = row.form.text(part::MAY_TURN.name()) == "yes";
    let later = row.form.text(part::LATER.name()) == "later";
    let says = [
        Some(of.as_str()),
        turns.then_some("may be turned"),
        later.then_some("cut later"),
    ];
    let says = says.into_iter().flatten().collect::<Vec<_>>().join(", ");
    let inside = [part::STOCK, part::TRIM].map(|field| field.of(row.id));
    folded(
        "Stock and grain",
        says,
        &inside,
        html! {
            <>
                { reference(part::STOCK.spot(row.id), Group::Stocks, "Stock", context) }
                { words(part::MAY_TURN.spot(row.id), &[("", "kept along"), ("yes", "may be turned")], context) }
                { entry(part::TRIM.of(row.id), context) }
                { words(part::LATER.spot(row.id), &[("", "with the others"), ("later", "later, to fit")], context) }
                { buttons(Group::Parts, row.id, &name, context) }
            </>
        },
        context,
    )
}

fn totals(context: Context<'_>) -> Html {
    let Some(making) = &context.model.answer.making else {
        return Html::default();
    };
    let total = |stock: &StockTotal| {
        let pieces = show::count(stock.pieces as usize, "piece", "pieces");
        let area = show::number(stock.rough_area / 1e6);
        html! {
            <div>
                <dt>{ stock.name.clone() }</dt>
                <dd>{ format!("{area} m²") }<small>{ format!("{pieces}, before kerfs and off-cuts") }</small></dd>
            </div>
        }
    };
    let used = making.parts.stocks.iter().filter(|stock| stock.pieces > 0);
    facts("What they need", used.map(total))
}

/// To and from a spreadsheet.
fn table(context: Context<'_>) -> Html {
    let paste = context.emit.reform(|event: InputEvent| {
        let area: web_sys::HtmlTextAreaElement = event.target_unchecked_into();
        let text = area.value();
        area.set_value("");
        Msg::Edit(Edit::Making(MakingEdit::Paste(text)))
    });
    html! {
        <details class="more">
            <summary>
                <b>{ "To and from a spreadsheet" }</b>
                <span class="says">{ "copied with tabs between the cells" }</span>
                { Icon::Down.view() }
            </summary>
            <div class="inside">
                <label class="box">
                    <span class="label">{ "Paste a table here" }</span>
                    <textarea rows="3" spellcheck="false" oninput={paste} />
                </label>
                <p class="quiet">{ "Columns: name, pieces, length, width, stock, may turn, trim, cut later; or any order under a first row of such words." }</p>
                <div class="buttons">
                    <button type="button" class="button" onclick={context.send(Msg::CopyParts)}>{ "Copy all parts as a table" }</button>
                </div>
            </div>
        </details>
    }
}
