//! At the saw: one thing at a time, over the whole screen.

mod done;
mod jump;
mod set_up;
pub(super) mod steps;
mod stop;

use notchwright_core::stop::Set;
use yew::{Html, html};

use super::context::Context;
use super::heading::Heading;
use super::part;
use crate::answer::Cut;
use crate::msg::{Msg, SawMove};
use crate::state::Step;

/// The step that is due.
pub(super) fn view(context: Context<'_>) -> Html {
    let at = &context.model.state.at_saw;
    if let Some(waiting) = context
        .model
        .needed()
        .and_then(|chunk| part::waiting(chunk, context))
    {
        return html! {
            <main class="saw done">
                <header class="over">
                    <Heading text="At the saw" />
                    { leave(context) }
                </header>
                { waiting }
            </main>
        };
    }
    let Some(cut) = context.model.answer.cut() else {
        return no_plan(context);
    };
    let Some(set) = cut.sets.get(at.set) else {
        return no_plan(context);
    };
    match at.step {
        Step::SetUp => set_up::view(cut, set, context),
        Step::Stop(index) => match set.stops.get(index) {
            Some(stop) => stop::view(cut, set, stop, context),
            None => no_plan(context),
        },
        Step::Done => done::view(cut, context),
    }
}

/// The head of every page at the saw: what it is about, a way to any other step, a way out.
fn over(title: &str, place: String, cut: Cut<'_>, context: Context<'_>) -> Html {
    html! {
        <header class="over">
            <Heading key={title} text={title.to_owned()} />
            { jump::view(place, cut.sets, context) }
            { leave(context) }
        </header>
    }
}

fn leave(context: Context<'_>) -> Html {
    html! {
        <button type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Leave))}>{ "Leave" }</button>
    }
}

fn no_plan(context: Context<'_>) -> Html {
    html! {
        <main class="saw done">
            <header class="over">
                <Heading text="Nothing to cut" />
                { leave(context) }
            </header>
            <p>{ "The joint's numbers have problems. Leave, and mend the marked fields." }</p>
        </main>
    }
}

/// The name of a set within a sentence.
fn in_sentence(set: &Set) -> String {
    let mut name = set.name.chars();
    let first = name.next().map(|first| first.to_ascii_lowercase());
    first.into_iter().chain(name).collect()
}
