//! The sled's place, or what is said until that part of the program has come.

use yew::{Html, html};

use super::context::Context;
use super::icon::Icon;
use super::sled;
use crate::model::Part;
use crate::msg::Msg;

/// The place.
pub(super) fn view(context: Context<'_>) -> Html {
    match context.model.sled_part {
        Part::Here => sled::view(context),
        Part::Away | Part::Asked => html! {
            <main class="main" id="main" aria-busy="true"><p role="status">{ "One moment…" }</p></main>
        },
        Part::Failed => html! {
            <main class="main" id="main">
                <div class="field wrong" role="alert">
                    <p class="problem">
                        { Icon::Exclamation.sign("problem") }
                        <span>{ "This part of the page could not be fetched, and there is no copy of it here yet." }</span>
                    </p>
                    <div class="buttons">
                        <button type="button" class="button" onclick={context.send(Msg::AskAgain)}>{ "Try again" }</button>
                    </div>
                </div>
            </main>
        },
    }
}
