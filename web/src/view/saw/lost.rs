//! "I lost count": what the wheel reads says which stop it is.

use notchwright_core::stop::{Reading, find};
use notchwright_core::units::read_number;
use web_sys::HtmlInputElement;
use yew::{
    Callback, Html, InputEvent, Properties, TargetCast, UseStateHandle, component, html, use_state,
};

use crate::msg::{Msg, SawMove};
use crate::state::Step;
use crate::view::instruct;

/// What is searched.
#[derive(Clone, PartialEq, Properties)]
pub(super) struct LostProps {
    /// The wheel's readings at the stops, rising.
    pub(super) readings: Vec<Reading>,
    /// Graduations of the wheel.
    pub(super) divisions: u32,
    /// The set-up that these stops are of.
    pub(super) set: usize,
    /// Where moves are sent.
    pub(super) emit: Callback<Msg>,
}

/// Two small fields, and what they lead to.
#[component]
pub(super) fn Lost(props: &LostProps) -> Html {
    let turns = use_state(String::new);
    let division = use_state(String::new);
    html! {
        <section class="lost" aria-labelledby="lost">
            <h2 id="lost">{ "I lost count" }</h2>
            <div class="fields">
                { input("lost-turns", "Whole turns", &turns) }
                { input("lost-division", "The wheel reads", &division) }
            </div>
            <div role="status">{ found(props, &turns, &division) }</div>
        </section>
    }
}

fn input(id: &'static str, label: &'static str, text: &UseStateHandle<String>) -> Html {
    let typed = {
        let text = text.clone();
        move |event: InputEvent| {
            let input: HtmlInputElement = event.target_unchecked_into();
            text.set(input.value());
        }
    };
    html! {
        <div class="field">
            <label class="box">
                <span class="label">{ label }</span>
                <span class="entry">
                    <input {id} value={(**text).clone()} inputmode="decimal" autocomplete="off" oninput={typed} />
                </span>
            </label>
        </div>
    }
}

fn found(props: &LostProps, turns: &str, division: &str) -> Html {
    let number = |text: &str| read_number(&text.trim().replace(',', ".").replace('−', "-"));
    let turns = number(turns).filter(|turns| turns.fract() == 0.0);
    let Some(division) = number(division) else {
        return html! { <p class="quiet">{ "Type what the wheel reads; without the turns, every stop that fits is shown." }</p> };
    };
    let sought = find(
        &props.readings,
        props.divisions,
        turns.map(|turns| turns as i64),
        division,
    );
    let stop = |index: usize| {
        let (emit, set) = (props.emit.clone(), props.set);
        let go = move |_| emit.emit(Msg::Saw(SawMove::Jump(set, Step::Stop(index))));
        let reading = props.readings.get(index).copied().map(instruct::reading);
        html! {
            <li key={index}>
                <button type="button" class="button" onclick={go}>
                    { format!("Pass {}: {}", index + 1, reading.unwrap_or_default()) }
                </button>
            </li>
        }
    };
    let (words, stops) = match (sought.at.is_empty(), sought.before) {
        (false, _) => ("That is", sought.at),
        (true, Some(before)) => {
            let around = before.saturating_sub(1)..props.readings.len().min(before + 1);
            ("No stop reads so. The nearest:", around.collect())
        }
        (true, None) => ("No stop of this set-up reads so.", Vec::new()),
    };
    html! {
        <>
            <p>{ words }</p>
            <ol>{ for stops.into_iter().map(stop) }</ol>
        </>
    }
}
