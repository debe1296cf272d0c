//! The joint: numbers on one side, what follows from them on the other.

mod boards;
mod cutter;
mod facts;
mod fingers;
mod fit;
mod groove;
mod more;
mod notes;
mod outcome;
mod paper;
mod stops;
mod verdict;
mod zero;

use yew::{Html, html};

use super::context::Context;

pub(super) use cutter::line as cutter_line;
pub(super) use notes::{cautions, view as notes_view};

/// The place.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <main class="main joint" id="main">
            <form class="form" aria-label="The joint" onsubmit={|event: yew::SubmitEvent| event.prevent_default()}>
                { boards::view(context) }
                { cutter::view(context) }
                { fingers::view(context) }
                { more::view(context) }
            </form>
            { outcome::view(context) }
        </main>
    }
}
