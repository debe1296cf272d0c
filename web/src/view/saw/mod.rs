//! At the saw: one thing at a time, over the whole screen.

mod done;
mod jump;
mod set_up;
pub(super) mod steps;
mod stop;

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::stop::Set;
use yew::{Html, html};

use super::context::Context;
use super::heading::Heading;
use crate::msg::{Msg, SawMove};
use crate::state::Step;

/// The step that is due.
pub(super) fn view(context: Context<'_>) -> Html {
    let at = &context.model.state.at_saw;
    let Some(planned) = context.model.answer.current() else {
        return no_plan(context);
    };
    let Some(set) = planned.plan.sets.get(at.set) else {
        return no_plan(context);
    };
    match at.step {
        Step::SetUp => set_up::view(planned, set, context),
        Step::Stop(index) => match set.stops.get(index) {
            Some(stop) => stop::view(&planned.plan, set, stop, context),
            None => no_plan(context),
        },
        Step::Done => done::view(&planned.plan, context),
    }
}

/// The head of every page at the saw: what it is about, a way to any other step, a way out.
fn over(title: &str, place: String, plan: &BoxJointPlan, context: Context<'_>) -> Html {
    html! {
        <header class="over">
            <Heading key={title} text={title.to_owned()} />
            { jump::view(place, plan, context) }
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
    set.name.replacen("Board", "board", 1)
}
