//! Putting the next end on the carriage, where several are cut alike.

use yew::{Html, html};

use super::{Here, buttons, over};
use crate::msg::{Msg, SawMove};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::instruct;

/// The page.
pub(super) fn view(here: &Here<'_>, context: Context<'_>) -> Html {
    let loads = here.course.loads(here.at.set);
    let number = loads
        .iter()
        .position(|load| *load == here.load)
        .unwrap_or(0)
        + 1;
    let place = format!("end {number} of {}", loads.len());
    let name = here.course.name(&here.load);
    let done = loads
        .iter()
        .filter(|load| load.is_done(&here.at.done))
        .count();
    html! {
        <main class="saw board">
            { over("Next end", place, here, context) }
            <div class="body">
                <p class="end-name">{ sentence(&name) }</p>
                <p>{ clamp(here) }</p>
                <p>{ instruct::run_up(here.set) }</p>
                <progress max={loads.len().to_string()} value={done.to_string()} aria-label="Ends that are cut" />
                <p class="quiet">{ format!("{done} of {} cut with this set-up.", loads.len()) }</p>
                { marked(here, context) }
            </div>
            { buttons(false, SawMove::Next, "It is clamped", context) }
        </main>
    }
}

fn clamp(here: &Here<'_>) -> &'static str {
    if here.course.is_merged() {
        "Have both boards at hand, each with its reference edge marked: at each stop the page says which one goes \
         against the stop on the carriage."
    } else if here.set.flipped {
        "Put it on the carriage turned face for face, the other edge against the stop, and clamp it."
    } else {
        "Put it on the carriage on end, its reference edge against the stop, and clamp it."
    }
}

/// An end that counts as cut already can be taken back.
fn marked(here: &Here<'_>, context: Context<'_>) -> Html {
    if !here.load.is_done(&here.at.done) {
        return Html::default();
    }
    html! {
        <div class="rule">
            <p>{ Icon::Tick.sign("fits") }{ " This end is marked as cut." }</p>
            <button type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Mark(here.load.end, false)))}>
                { "It is not cut yet" }
            </button>
        </div>
    }
}

/// With a capital letter.
pub(super) fn sentence(name: &str) -> String {
    let mut letters = name.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}
