//! From any step to any other.

use notchwright_core::stop::{Set, Stop};
use yew::{Html, html};

use super::in_sentence;
use crate::msg::{Msg, SawMove};
use crate::state::Step;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;

/// The list, folded away below the place in it. Another step makes another list, which is folded again.
pub(super) fn view(place: String, sets: &[Set], context: Context<'_>) -> Html {
    let at = &context.model.state.at_saw;
    html! {
        <details class="jump" key={format!("{}-{:?}", at.set, at.step)}>
            <summary><span>{ place }</span>{ Icon::Down.view() }<span class="for-readers">{ ", jump to another" }</span></summary>
            <nav class="list" aria-label="Steps">
                { for sets.iter().enumerate().map(|(index, set)| steps_of(index, set, context)) }
            </nav>
        </details>
    }
}

fn steps_of(index: usize, set: &Set, context: Context<'_>) -> Html {
    html! {
        <>
            <h2>{ &set.name }</h2>
            <ol>
                <li>{ step(index, Step::SetUp, set_up(set), context) }</li>
                { for set.stops.iter().enumerate().map(|(stop, shown)| html! {
                    <li key={stop}>{ step(index, Step::Stop(stop), label(shown), context) }</li>
                }) }
            </ol>
        </>
    }
}

fn set_up(set: &Set) -> Html {
    html! { format!("Set up for {}", in_sentence(set)) }
}

fn label(stop: &Stop) -> Html {
    let turns = show::whole(stop.dial.turns);
    let division = show::number(stop.dial.division);
    html! {
        <>
            <span class="for-readers">{ "Pass " }</span>
            <span class="number">{ stop.number }</span>
            <span>{ turns }{ " t" }<span class="for-readers">{ "urns" }</span>{ " " }{ division }</span>
        </>
    }
}

fn step(set: usize, step: Step, label: Html, context: Context<'_>) -> Html {
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
