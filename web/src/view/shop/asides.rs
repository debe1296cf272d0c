//! Texts that were set aside: what could not be read, and what a link replaced.

use yew::{Html, html};

use crate::model::Aside;
use crate::msg::Msg;
use crate::view::context::Context;

/// The texts, if there are any.
pub(super) fn view(context: Context<'_>) -> Html {
    let asides = &context.model.asides;
    if asides.is_empty() {
        return Html::default();
    }
    html! {
        <section class="shelf" aria-labelledby="asides">
            <h2 id="asides">{ "Set aside" }</h2>
            <ul>{ for asides.iter().map(|aside| one(aside, context)) }</ul>
        </section>
    }
}

fn one(aside: &Aside, context: Context<'_>) -> Html {
    let button = |label: &'static str, msg: Msg| {
        html! { <button type="button" class="button" onclick={context.send(msg)}>{ label }</button> }
    };
    let says = if aside.can_open {
        "Earlier work, kept when something else took its place."
    } else {
        "Stored work that could not be read."
    };
    let key = || aside.key.clone();
    html! {
        <li key={key()} class="card section">
            <p>{ says }</p>
            <div class="buttons">
                if aside.can_open {
                    { button("Open it", Msg::OpenAside(key())) }
                }
                { button("Save as a file", Msg::SaveAside(key())) }
                { button("Copy", Msg::CopyAside(key())) }
                { button("Throw away", Msg::DropAside(key())) }
            </div>
        </li>
    }
}
