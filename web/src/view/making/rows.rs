//! What lists of rows show alike.

use yew::{AttrValue, Callback, Html, html};

use crate::msg::{Edit, MakingEdit, Msg};
use crate::state::{Field, Group, Id, Making, Row, Spot, fields};
use crate::view::context::Context;
use crate::view::field::problem;
use crate::view::icon::Icon;
use crate::view::segment::Segment;
use crate::view::select::Select;

/// The button that adds a row.
pub(super) fn add(group: Group, says: &'static str, context: Context<'_>) -> Html {
    html! {
        <button type="button" class="button" onclick={context.edit(Edit::Making(MakingEdit::Add(group)))}>
            { Icon::Plus.view() }{ says }
        </button>
    }
}

/// The buttons that copy a row and remove it.
pub(super) fn buttons(group: Group, row: Id, name: &str, context: Context<'_>) -> Html {
    let button = |says: &'static str, edit: MakingEdit| {
        html! {
            <button type="button" class="button" onclick={context.edit(Edit::Making(edit))}>
                { says }<span class="for-readers">{ format!(" {name}") }</span>
            </button>
        }
    };
    html! {
        <div class="buttons">
            { button("Duplicate", MakingEdit::Duplicate(group, row)) }
            { button("Remove", MakingEdit::Remove(group, row)) }
        </div>
    }
}

/// The small button that removes a row.
pub(super) fn remove(group: Group, row: Id, name: &str, context: Context<'_>) -> Html {
    let label = format!("Remove {name}");
    let remove = Edit::Making(MakingEdit::Remove(group, row));
    html! {
        <button type="button" class="button plain" aria-label={label} onclick={context.edit(remove)}>{ Icon::Cross.view() }</button>
    }
}

/// One of a few words, the first of which is meant while nothing is chosen.
pub(super) fn words<'a>(
    spot: Spot,
    options: &'a [(&'static str, &'a str)],
    context: Context<'_>,
) -> Html {
    let making = &context.model.state.work.job.making;
    let text = making.entry(spot).map_or("", |entry| entry.text.as_str());
    let usual = options.first().map_or("", |(word, _)| *word);
    let chosen = options.iter().find(|(word, _)| *word == text);
    let segment = Segment {
        name: &Field::Making(spot).id(),
        legend: spot.label,
        is_plain: false,
        options,
        chosen: chosen.map_or(usual, |(word, _)| *word),
    };
    segment.view(
        |word| Msg::Edit(Edit::Making(MakingEdit::Choose(spot, word))),
        context,
    )
}

/// The row of another list that a field refers to, the first of them while it refers to none.
pub(super) fn referred<'a>(making: &'a Making, group: Group, text: &str) -> Option<&'a Row> {
    let rows = making.rows(group);
    let id = text.parse().map(Id);
    let found = id.ok().and_then(|id| rows.iter().find(|row| row.id == id));
    if text.is_empty() { rows.first() } else { found }
}

/// What a row is called, or its place in the list.
pub(super) fn called(row: &Row, place: usize, one: &str) -> String {
    match row.form.text(fields::part::NAME.name()).trim() {
        "" => format!("{one} {}", place + 1),
        name => name.to_owned(),
    }
}

/// The same for a row of which only the list is known.
pub(super) fn called_in(making: &Making, group: Group, row: &Row, one: &str) -> String {
    let mut rows = making.rows(group).iter();
    let place = rows.position(|other| other.id == row.id);
    called(row, place.unwrap_or_default(), one)
}

/// A row of another list, chosen in the device's own list.
pub(super) fn reference(spot: Spot, group: Group, one: &'static str, context: Context<'_>) -> Html {
    let making = &context.model.state.work.job.making;
    let rows = making.rows(group);
    let text = making.entry(spot).map_or("", |entry| entry.text.as_str());
    let chosen = referred(making, group, text);
    let place = chosen.and_then(|chosen| rows.iter().position(|row| row.id == chosen.id));
    let mut ids: Vec<_> = rows.iter().map(|row| row.id).collect();
    let mut options: Vec<_> = rows
        .iter()
        .enumerate()
        .map(|(place, row)| AttrValue::from(called(row, place, one)))
        .collect();
    let is_gone = place.is_none();
    if is_gone {
        ids.push(Id::default());
        options.push("not chosen".into());
    }
    let chosen = place.unwrap_or(options.len().saturating_sub(1));
    let emit = context.emit.clone();
    let choose = Callback::from(move |index: usize| {
        if let Some(id) = ids.get(index).filter(|id| **id != Id::default()) {
            emit.emit(Msg::Edit(Edit::Making(MakingEdit::Refer(spot, *id))));
        }
    });
    let id = Field::Making(spot).id();
    html! {
        <div class="field">
            <label class="box">
                <span class="label">{ spot.label }</span>
                <Select {id} label={spot.label} {options} {chosen} {choose} />
            </label>
            { problem(Field::Making(spot), context) }
        </div>
    }
}
