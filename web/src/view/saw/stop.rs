//! One stop: what the dial must read, and what is then cut.

use notchwright_core::drawing::board_progress;
use notchwright_core::stop::{Set, Stop};
use yew::{Html, classes, html};

use super::{over, steps};
use crate::answer::{Cut, Of};
use crate::msg::{Msg, SawMove};
use crate::view::context::Context;
use crate::view::dial::{self, Face};
use crate::view::{drawing, show, slanted};

/// The page.
pub(super) fn view(cut: Cut<'_>, set: &Set, stop: &Stop, context: Context<'_>) -> Html {
    let divisions = set.divisions;
    let place = format!("pass {} of {}", stop.number, set.stops.len());
    let aloud = format!("{}. Dial: {}.", place, steps::reading(stop.dial));
    html! {
        <main class="saw stop">
            { over(&set.name, place, cut, context) }
            <p class="for-readers" role="status">{ aloud }</p>
            { setting(stop, divisions) }
            <div class="wheel">{ dial::view(Face { divisions, setting: stop.dial.division }) }</div>
            <div class="work">
                <p class="move">{ travel(set, stop) }</p>
                { strip(cut, set, stop, context) }
                <p class="which">{ which(stop) }</p>
            </div>
            <div class="buttons">
                <button key="back" type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Back))}>{ "Back" }</button>
                <button key="next" type="button" class="button signal" onclick={context.send(Msg::Saw(SawMove::Next))}>
                    { "Cut, next" }
                </button>
            </div>
        </main>
    }
}

fn setting(stop: &Stop, divisions: u32) -> Html {
    let turns = show::whole(stop.dial.turns);
    let division = show::number(stop.dial.division);
    let figures = match turns.chars().count() + division.chars().count() {
        ..=4 => None,
        5 => Some("figures-5"),
        6 => Some("figures-6"),
        _ => Some("figures-many"),
    };
    let turns_word = if stop.dial.turns == 1 {
        "turn"
    } else {
        "turns"
    };
    html! {
        <div class={classes!("setting", figures)}>
            <p><strong>{ turns }</strong><span>{ turns_word }</span></p>
            <p><strong>{ division }</strong><span>{ format!("divisions of {divisions}") }</span></p>
            if stop.dial.turns < 0 {
                <p class="below-zero">{ steps::reading(stop.dial) }</p>
            }
        </div>
    }
}

/// How to get there. The first stop is reached from the run-up, the others from the stop before.
fn travel(set: &Set, stop: &Stop) -> Html {
    if stop.number == 1 {
        let run_up = steps::reading(set.run_up);
        return html! { <>{ "Turn back past " }<b>{ run_up }</b>{ ", then come up to it" }</> };
    }
    let division = show::number(stop.move_division);
    let turns = usize::try_from(stop.move_turns).unwrap_or_default();
    let by = match turns {
        0 => format!("{division} divisions"),
        _ => format!("{} {division}", show::count(turns, "turn", "turns")),
    };
    html! { <>{ "Turn on by " }<b>{ by }</b></> }
}

fn which(stop: &Stop) -> Html {
    let socket = stop.socket + 1;
    if stop.passes == 1 {
        return html! { format!("Socket {socket}, one pass.") };
    }
    html! {
        <>
            { format!("Socket {socket}, pass {} of {}.", stop.pass, stop.passes) }
            <span class="same-way">{ " Keep turning the same way." }</span>
        </>
    }
}

fn strip(cut: Cut<'_>, set: &Set, stop: &Stop, context: Context<'_>) -> Html {
    let before = stop.number.saturating_sub(1);
    let picture = match cut.of {
        Of::Box(plan) => board_progress(set, plan.width, before),
        Of::Dovetail(plan) => slanted::progress(plan, set, before),
    };
    let label = format!(
        "{} with this pass marked, {} cut before it",
        set.name,
        stop.number.saturating_sub(1)
    );
    drawing::view(&picture, "strip", label, &|length| {
        show::bare(length, context.unit())
    })
}
