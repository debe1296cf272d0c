//! One stop: what the dial must read, and what is then cut.

use notchwright_core::drawing::board_progress;
use notchwright_core::stop::{Set, Stop};
use notchwright_core::units::write_number;
use yew::{Html, classes, html};

use super::{Here, buttons, over};
use crate::answer::Of;
use crate::msg::{Msg, SawMove};
use crate::view::context::Context;
use crate::view::dial::{self, Face};
use crate::view::icon::Icon;
use crate::view::{drawing, instruct, show, slanted};

/// The page.
pub(super) fn view(
    here: &Here<'_>,
    index: usize,
    set: &Set,
    stop: &Stop,
    context: Context<'_>,
) -> Html {
    let divisions = set.divisions;
    let place = format!("pass {} of {}", index + 1, here.passes.len());
    let board = if here.course.is_merged() {
        format!("{}, ", set.name)
    } else {
        String::new()
    };
    let aloud = format!("{board}{place}. Dial: {}.", instruct::reading(stop.dial));
    html! {
        <main class="saw stop">
            { over(&set.name, place, here, context) }
            <p class="for-readers" role="status">{ aloud }</p>
            { setting(stop, divisions) }
            <div class="wheel">{ dial::view(Face { divisions, setting: stop.dial.division }) }</div>
            <div class="work">
                <p class="move">{ travel(here, index, set, stop) }</p>
                { strip(here, set, stop, context) }
                <div class="rest">
                    <p class="which">{ which(stop) }</p>
                    { pauses(context) }
                </div>
                <p class="left quiet">{ left(here, index, context) }</p>
            </div>
            { buttons(false, SawMove::Next, "Cut, next", context) }
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
                <p class="below-zero">{ instruct::reading(stop.dial) }</p>
            }
        </div>
    }
}

/// How to get there. The first stop is reached from the run-up, the others from the stop before.
fn travel(here: &Here<'_>, index: usize, set: &Set, stop: &Stop) -> Html {
    let before = index
        .checked_sub(1)
        .and_then(|before| here.passes.get(before));
    let Some((_, before)) = before else {
        let run_up = instruct::reading(set.run_up);
        return html! { <>{ "Turn back past " }<b>{ run_up }</b>{ ", then come up to it" }</> };
    };
    let divisions = f64::from(set.divisions);
    let on = (stop.dial.turns - before.dial.turns) as f64 * divisions + stop.dial.division
        - before.dial.division;
    // Divisions have two places at most: what floats add beyond would make 80 of them out of a turn.
    let on = (on * 100.0).round() / 100.0;
    let turns = (on / divisions).floor();
    let division = write_number(on - turns * divisions, 2);
    let by = match turns as usize {
        0 if division == "0" => {
            return html! { <>{ "Leave the wheel " }<b>{ "as it stands" }</b></> };
        }
        0 => format!("{division} divisions"),
        turns => format!("{} {division}", show::count(turns, "turn", "turns")),
    };
    html! { <>{ "Turn on by " }<b>{ by }</b></> }
}

/// The last pass of a socket is marked: after it the socket should measure what it is to be.
fn which(stop: &Stop) -> Html {
    let socket = stop.socket + 1;
    if stop.passes == 1 {
        return html! { format!("Socket {socket}, one pass.") };
    }
    html! {
        <>
            { format!("Socket {socket}, pass {} of {}.", stop.pass, stop.passes) }
            if stop.pass == stop.passes {
                <b class="last-pass">{ Icon::Tick.view() }{ " Last of this socket." }</b>
            } else {
                <span class="same-way">{ " Keep turning the same way." }</span>
            }
        </>
    }
}

/// What is still to come.
fn left(here: &Here<'_>, index: usize, context: Context<'_>) -> String {
    let left = here
        .course
        .left(here.at.set, here.at.end, index, &here.at.done);
    let pace = f64::from(context.model.state.at_saw.pace);
    let minutes = left.passes as f64 * pace / 60_000.0;
    let time = match minutes {
        minutes if minutes <= 0.0 => String::new(),
        minutes if minutes < 1.5 => ", about a minute".to_owned(),
        minutes => format!(", about {} min", write_number(minutes.ceil(), 0)),
    };
    format!(
        "Left: {}, {}{time}.",
        show::count(left.passes, "pass", "passes"),
        show::count(left.turns.round() as usize, "turn", "turns")
    )
}

/// Hearing it again, and a way to rest.
fn pauses(context: Context<'_>) -> Html {
    let button = |label: &'static str, icon: Icon, msg: Msg| {
        html! {
            <button type="button" class="button plain" aria-label={label} onclick={context.send(msg)}>{ icon.view() }</button>
        }
    };
    html! {
        <>
            if context.model.state.at_saw.speaks {
                { button("Say it again", Icon::Sound, Msg::Speak) }
            }
            { button("Pause", Icon::Pause, Msg::Saw(SawMove::Pause(true))) }
        </>
    }
}

fn strip(here: &Here<'_>, set: &Set, stop: &Stop, context: Context<'_>) -> Html {
    let before = stop.number.saturating_sub(1);
    let picture = match here.cut.of {
        Of::Box(plan) => board_progress(set, plan.width, before),
        Of::Dovetail(plan) => slanted::progress(plan, set, before),
    };
    let label = format!("{} with this pass marked, {before} cut before it", set.name);
    drawing::view(&picture, "strip", label, &|length| {
        show::bare(length, context.unit())
    })
}
