//! Setting up for one board.

use notchwright_core::stop::{Board, Set};
use yew::{Html, html};

use super::{Here, button, buttons, over, steps, ways};
use crate::msg::SawMove;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::{instruct, joint, show};

/// What is said behind a number of ends where each is cut in several set-ups.
pub(in crate::view) const IN_EVERY_SET_UP: &str = ", each counted in every set-up";

/// The page; the button to go on stands below the cautions.
pub(super) fn view(here: &Here<'_>, context: Context<'_>) -> Html {
    let number = here.at.set + 1;
    let place = format!("set {number} of {}", here.course.legs());
    let title = if here.course.is_merged() {
        "Set up for both boards".to_owned()
    } else {
        format!("Set up for {}", instruct::in_sentence(here.set))
    };
    html! {
        <main class="saw set-up">
            { over(&title, place, here, context) }
            <div class="body">
                <p class="unplug">{ Icon::Exclamation.sign("caution") }<b>{ "Unplug the saw first." }</b></p>
                { height(here.set, context) }
                { ends(here) }
                { steps::view(here.cut, here.set, context) }
                { ways::view(here, context) }
                { begun(here, context) }
                <section class="section" aria-labelledby="cautions">
                    <h2 id="cautions">{ "Before you switch on" }</h2>
                    { joint::cautions(here.cut.notes, context) }
                </section>
            </div>
            { buttons(number == 1, SawMove::Next, "All is set", context) }
        </main>
    }
}

fn height(set: &Set, context: Context<'_>) -> Html {
    let unit = context.unit();
    html! {
        <p class="height">
            <span>{ "Blade above the sled's base" }</span>
            <strong>
                { show::bare(set.height, unit) }
                <small>{ " " }{ crate::view::field::short(unit) }</small>
                { for show::fraction(set.height, unit).map(|text| html! { <small class="quiet">{ "  " }{ text }</small> }) }
            </strong>
        </p>
    }
}

/// How many ends are cut in this set-up.
fn ends(here: &Here<'_>) -> Html {
    if !here.is_many() {
        return Html::default();
    }
    let loads = here.course.loads(here.at.set).len();
    let pieces = |board| here.course.count(board);
    let each = match here.course.is_merged() {
        true if pieces(Board::A) == pieces(Board::B) => "pairs of ends",
        true => "pairs of ends, some of one end alone,",
        false => "ends",
    };
    html! { <p><b>{ format!("{loads} {each} are cut in this set-up, one after the other.") }</b></p> }
}

/// Some of it has been cut before.
fn begun(here: &Here<'_>, context: Context<'_>) -> Html {
    let done = here.course.done(&here.at.done);
    if done == 0 {
        return Html::default();
    }
    let is_repeated = here.course.cuttings() > here.course.ends();
    let each = if is_repeated { IN_EVERY_SET_UP } else { "" };
    html! {
        <div class="rule">
            <p>{ format!("{} marked as cut{each}.", show::count(done, "end is", "ends are")) }</p>
            { button(SawMove::Anew, "Begin anew, with nothing cut", context) }
        </div>
    }
}
