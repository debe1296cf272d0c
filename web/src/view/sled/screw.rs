//! The screw's table, filled in as it is measured.

use yew::{Html, html};

use super::fit::choice;
use crate::msg::{Edit, Msg, Shelf};
use crate::state::{Approach, Field, Point, PointField};
use crate::view::context::Context;
use crate::view::field::{self, short};
use crate::view::icon::Icon;

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    let work = &context.model.state.work;
    let points = work.sled.points.items();
    html! {
        <>
            { choice("Screw", Shelf::Screws, &work.shop.screws, context) }
            <section class="section">
                <h2>{ "Commanded and measured" }</h2>
                <p class="quiet">
                    { "Set the dial, measure the carriage against a rule or a dial gauge, type both. Some positions a \
                       part of a turn apart show an error that comes back with every turn; coming to them from above as \
                       well shows the backlash." }
                </p>
                if !points.is_empty() {
                    { table(points, context) }
                }
                <div class="buttons">
                    <button type="button" class="button" onclick={context.edit(Edit::AddPoint)}>
                        { Icon::Plus.view() }{ "Add a position" }
                    </button>
                    if !points.is_empty() {
                        <button type="button" class="button plain" onclick={context.edit(Edit::ClearPoints)}>{ "Clear the table" }</button>
                    }
                </div>
            </section>
        </>
    }
}

fn table(points: &[Point], context: Context<'_>) -> Html {
    let unit = short(context.unit());
    html! {
        <table class="points">
            <thead>
                <tr>
                    <th scope="col">{ format!("Set, {unit}") }</th>
                    <th scope="col">{ format!("Measured, {unit}") }</th>
                    <th scope="col">{ "From" }</th>
                    <th scope="col"><span class="for-readers">{ "Remove" }</span></th>
                </tr>
            </thead>
            <tbody>{ for points.iter().enumerate().map(|(place, point)| row(place + 1, point, context)) }</tbody>
        </table>
    }
}

fn row(number: usize, point: &Point, context: Context<'_>) -> Html {
    let id = point.id;
    let (way, other, arrow) = match point.approach {
        Approach::Up => ("below", Approach::Down, "↑"),
        Approach::Down => ("above", Approach::Up, "↓"),
    };
    let fields = [PointField::Commanded, PointField::Measured].map(|of| Field::Point(id, of));
    let is_wrong = |field: &Field| context.model.answer.problems_of(*field).next().is_some();
    let [set, measured] = fields;
    html! {
        <>
            <tr key={id.0}>
                <td>{ cell(set, format!("Set, position {number}"), context) }</td>
                <td>{ cell(measured, format!("Measured, position {number}"), context) }</td>
                <td>
                    <button
                        type="button"
                        class="button plain"
                        aria-label={format!("Position {number} was reached from {way}: change")}
                        onclick={context.edit(Edit::Approach(id, other))}
                    >
                        { arrow }
                    </button>
                </td>
                <td>
                    <button type="button" class="button plain" aria-label={format!("Remove position {number}")} onclick={context.edit(Edit::RemovePoint(id))}>
                        { Icon::Cross.view() }
                    </button>
                </td>
            </tr>
            if fields.iter().any(is_wrong) {
                <tr key={format!("{id}-problem")}>
                    <td colspan="4">{ for fields.into_iter().filter(is_wrong).map(|wrong| field::problem(wrong, context)) }</td>
                </tr>
            }
        </>
    }
}

fn cell(field: Field, label: String, context: Context<'_>) -> Html {
    let is_wrong = context.model.answer.problems_of(field).next().is_some();
    let add = context.emit.clone();
    let onkeydown = move |event: yew::KeyboardEvent| {
        // Enter goes on to the next position, as down a column.
        if event.key() == "Enter" {
            event.prevent_default();
            add.emit(Msg::Edit(Edit::AddPoint));
        }
    };
    html! {
        <input
            id={field.id()}
            aria-label={label}
            value={context.text(field)}
            inputmode="decimal"
            autocomplete="off"
            spellcheck="false"
            enterkeyhint="next"
            aria-invalid={is_wrong.then_some("true")}
            oninput={context.typed(field)}
            {onkeydown}
        />
    }
}
