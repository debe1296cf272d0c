//! What the tools of the places that come later show alike.

use notchwright_core::drawing::Drawing;
use notchwright_core::problem::Note;
use yew::{AttrValue, Html, classes, html};

use crate::answer::tools::Outcome;
use crate::state::Field;
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::icon::Icon;
use crate::view::labels::label;
use crate::view::{drawing, joint, show};

/// A field with its label.
pub(super) fn entry(field: Field, context: Context<'_>) -> Html {
    Entry::new(field, label(field)).view(context)
}

/// A field with its label and a line below it.
pub(super) fn hinted(field: Field, hint: impl Into<AttrValue>, context: Context<'_>) -> Html {
    Entry::new(field, label(field)).hint(hint).view(context)
}

/// Several fields.
pub(super) fn entries(fields: impl IntoIterator<Item = Field>, context: Context<'_>) -> Html {
    fields
        .into_iter()
        .map(|field| entry(field, context))
        .collect()
}

/// A part of a form with its heading.
pub(super) fn group(title: &'static str, inside: Html) -> Html {
    html! { <section class="section"><h2>{ title }</h2>{ inside }</section> }
}

/// A part of a form that is folded away, with a line that says how it stands; `fields` are those inside.
pub(super) fn folded(
    title: &'static str,
    says: String,
    fields: &[Field],
    inside: Html,
    context: Context<'_>,
) -> Html {
    html! {
        <details class="more">
            <summary>
                <b>{ title }</b>
                if needs_mending(fields, context) {
                    <span class="mend">{ Icon::Exclamation.view() }{ "Something in here is needed or needs mending." }</span>
                } else {
                    <span class="says">{ says }</span>
                }
                { Icon::Down.view() }
            </summary>
            <div class="inside">{ inside }</div>
        </details>
    }
}

fn needs_mending(fields: &[Field], context: Context<'_>) -> bool {
    let answer = &context.model.answer;
    let is_wrong = |field: &Field| answer.problems_of(*field).next().is_some();
    fields
        .iter()
        .any(|field| answer.needs(*field) || is_wrong(field))
}

/// Some fields with their labels and what is in them, where anything is: `Base width 520 mm · …`.
pub(super) fn said(fields: &[Field], context: Context<'_>) -> String {
    let one = |field: &Field| {
        let is_blank = context.text(*field).trim().is_empty();
        (!is_blank).then(|| format!("{} {}", label(*field), context.typed_length(*field)))
    };
    let all: Vec<_> = fields.iter().filter_map(one).collect();
    if all.is_empty() {
        "nothing yet".to_owned()
    } else {
        all.join(" · ")
    }
}

/// Everything of an outcome, greyed while it is not what the fields say.
pub(super) fn plan<T>(outcome: &Outcome<T>, inside: Html) -> Html {
    let stale = (!outcome.is_current).then_some("stale");
    html! { <div class={classes!("found", stale)}>{ inside }</div> }
}

/// A figure's name, its value, and a line below it.
pub(super) fn fact(name: &'static str, value: String, says: impl Into<Option<String>>) -> Html {
    let says: Option<String> = says.into();
    html! {
        <div>
            <dt>{ name }</dt>
            <dd>{ value }{ for says.map(|says| html! { <small>{ says }</small> }) }</dd>
        </div>
    }
}

/// A list of facts with its heading.
pub(super) fn facts(title: &'static str, facts: impl IntoIterator<Item = Html>) -> Html {
    html! {
        <section class="section">
            <h2>{ title }</h2>
            <dl class="facts">{ for facts }</dl>
        </section>
    }
}

/// A drawing in its frame.
pub(super) fn figure(picture: &Drawing, label: impl Into<AttrValue>, context: Context<'_>) -> Html {
    html! {
        <figure class="card figure">
            { drawing::view(picture, "plain", label, &|length| show::bare(length, context.unit())) }
        </figure>
    }
}

/// What to know, the cautions folded away below it.
pub(super) fn notes(notes: &[Note], context: Context<'_>) -> Html {
    if notes.is_empty() {
        return Html::default();
    }
    joint::notes_view(notes, context)
}
