//! The work is interrupted.

use yew::{Html, html};

use super::{Here, board, leave};
use crate::msg::{Msg, SawMove};
use crate::state::Step;
use crate::view::context::Context;
use crate::view::heading::Heading;
use crate::view::instruct;

/// The page: where the dial stands, and what is on the carriage.
pub(super) fn view(here: &Here<'_>, context: Context<'_>) -> Html {
    html! {
        <main class="saw done paused">
            <header class="over">
                <Heading text="Paused" />
                { leave(context) }
            </header>
            <div class="body">
                <p class="end-name">{ stands(here) }</p>
                <p>{ "The screen may sleep now. Nothing is lost when the page is closed: it comes back to this stop." }</p>
                <p>{ "Before you go on: the board still against the stop, the clamp tight, the dial where it stood." }</p>
            </div>
            <div class="buttons">
                <button type="button" class="button signal" onclick={context.send(Msg::Saw(SawMove::Pause(false)))}>
                    { "Go on" }
                </button>
            </div>
        </main>
    }
}

fn stands(here: &Here<'_>) -> String {
    let Step::Stop(index) = here.at.step else {
        return format!(
            "Before the first pass of {}.",
            instruct::in_sentence(here.set)
        );
    };
    let reading = here
        .passes
        .get(index)
        .map(|(_, stop)| instruct::reading(stop.dial));
    let says = format!(
        "{}pass {} of {} is due, at {}.",
        here.on_carriage(),
        index + 1,
        here.passes.len(),
        reading.unwrap_or_default()
    );
    board::sentence(&says)
}
