//! From any step to any other.

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::stop::{Set, Stop};
use yew::{Html, html};

use super::{in_sentence, steps};
use crate::msg::{Msg, SawMove};
use crate::state::Step;
use crate::view::context::Context;
use crate::view::icon::Icon;

/// The list, folded away below the place in it. Another step makes another list, which is folded again.
pub(super) fn view(place: String, plan: &BoxJointPlan, context: Context<'_>) -> Html {
    let at = &context.model.state.at_saw;
    html! {
        <details class="jump" key={format!("{}-{:?}", at.set, at.step)}>
            <summary>{ place }{ Icon::Down.view() }<span class="for-readers">{ ", jump to another" }</span></summary>
            <nav class="list" aria-label="Steps">
                { for plan.sets.iter().enumerate().map(|(index, set)| steps_of(index, set, context)) }
            </nav>
        </details>
    }
}

fn steps_of(index: usize, set: &Set, context: Context<'_>) -> Html {
    html! {
        <>
            <h2>{ &set.name }</h2>
            <ol>
                <li>{ step(index, Step::SetUp, format!("Set up for {}", in_sentence(set)), context) }</li>
                { for set.stops.iter().enumerate().map(|(stop, shown)| html! {
                    <li key={stop}>{ step(index, Step::Stop(stop), label(shown), context) }</li>
                }) }
            </ol>
        </>
    }
}

fn label(stop: &Stop) -> String {
    format!("{}: {}", stop.number, steps::reading(stop.dial))
}

fn step(set: usize, step: Step, label: String, context: Context<'_>) -> Html {
    let at = &context.model.state.at_saw;
    let is_here = at.set == set && at.step == step;
    html! {
        <button
            type="button"
            class="button"
            aria-current={is_here.then_some("step")}
            onclick={context.send(Msg::Saw(SawMove::Jump(set, step)))}
        >{ label }</button>
    }
}
