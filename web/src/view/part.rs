//! What is said until a part of the program has come.

use yew::{Html, html};

use super::context::Context;
use super::icon::Icon;
use crate::model::{Chunk, Part};
use crate::msg::Msg;

/// What is said while `chunk` has not come; nothing once it has.
pub(super) fn waiting(chunk: Chunk, context: Context<'_>) -> Option<Html> {
    match context.model.parts.of(chunk) {
        Part::Here => None,
        Part::Away | Part::Asked => Some(html! {
            <p role="status" aria-busy="true">{ "One moment…" }</p>
        }),
        Part::Failed => Some(failed(chunk, context)),
    }
}

fn failed(chunk: Chunk, context: Context<'_>) -> Html {
    html! {
        <div class="field wrong" role="alert">
            <p class="problem">
                { Icon::Exclamation.sign("problem") }
                <span>{ "This part of the page could not be fetched, and there is no copy of it here yet." }</span>
            </p>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::AskAgain(chunk))}>{ "Try again" }</button>
            </div>
        </div>
    }
}
