//! From any step to any other: set-ups, ends, stops, and what the wheel reads.

use notchwright_core::stop::{Set, Stop};
use yew::{Html, html};

use super::lost::Lost;
use super::{Here, board};
use crate::msg::{Msg, SawMove};
use crate::state::Step;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::{instruct, show};

/// The list, folded away below the place in it. Another step makes another list, which is folded again.
pub(super) fn view(place: String, here: &Here<'_>, context: Context<'_>) -> Html {
    let at = here.at;
    html! {
        <details class="jump" key={format!("{}-{:?}-{:?}", at.set, at.end, at.step)}>
            <summary><span>{ place }</span>{ Icon::Down.view() }<span class="for-readers">{ ", jump to another" }</span></summary>
            <nav class="list" aria-label="Steps">
                { lost(here, context) }
                <h2>{ "Set-ups" }</h2>
                <ol>{ for (0..here.course.legs()).map(|leg| set_up(leg, here, context)) }</ol>
                { ends(here, context) }
                <h2>{ "Stops" }</h2>
                <ol>
                    { for here.passes.iter().enumerate().map(|(index, (set, stop))| html! {
                        <li key={index}>{ step(here, at.set, Step::Stop(index), label(index, set, stop, here), context) }</li>
                    }) }
                </ol>
            </nav>
        </details>
    }
}

/// Whoever lost count finds the stop by what the wheel reads.
fn lost(here: &Here<'_>, context: Context<'_>) -> Html {
    let readings = here
        .passes
        .iter()
        .map(|(_, stop)| stop.dial)
        .collect::<Vec<_>>();
    html! {
        <Lost {readings} divisions={here.set.divisions} set={here.at.set} emit={context.emit.clone()} />
    }
}

fn set_up(leg: usize, here: &Here<'_>, context: Context<'_>) -> Html {
    let Some(set) = here.course.set(leg) else {
        return Html::default();
    };
    let name = if here.course.is_merged() {
        "both boards".to_owned()
    } else {
        instruct::in_sentence(set)
    };
    html! { <li key={leg}>{ step(here, leg, Step::SetUp, html! { format!("Set up for {name}") }, context) }</li> }
}

/// Every end of this set-up, those that are cut with a tick.
fn ends(here: &Here<'_>, context: Context<'_>) -> Html {
    if !here.is_many() {
        return Html::default();
    }
    let end = |load: crate::answer::course::Load| {
        let is_here = load == here.load;
        let is_done = load.is_done(&here.at.done);
        html! {
            <li key={format!("{:?}", load.end)}>
                <button
                    type="button"
                    class="button"
                    aria-current={is_here.then_some("step")}
                    onclick={context.send(Msg::Saw(SawMove::Take(load.end)))}
                >
                    { board::sentence(&here.course.name(&load)) }
                    if is_done {
                        { Icon::Tick.view() }<span class="for-readers">{ ", cut" }</span>
                    }
                </button>
            </li>
        }
    };
    html! {
        <>
            <h2>{ "Ends" }</h2>
            <ol class="ends">{ for here.course.loads(here.at.set).into_iter().map(end) }</ol>
        </>
    }
}

fn label(index: usize, set: &Set, stop: &Stop, here: &Here<'_>) -> Html {
    let turns = show::whole(stop.dial.turns);
    let division = show::number(stop.dial.division);
    html! {
        <>
            <span class="for-readers">{ "Pass " }</span>
            <span class="number">{ index + 1 }</span>
            <span>{ turns }{ " t" }<span class="for-readers">{ "urns" }</span>{ " " }{ division }</span>
            if here.course.is_merged() {
                <span>{ format!(" {:?}", set.board) }</span>
            }
        </>
    }
}

fn step(here: &Here<'_>, leg: usize, step: Step, label: Html, context: Context<'_>) -> Html {
    let is_here = here.at.set == leg && here.at.step == step;
    html! {
        <button
            type="button"
            class="button"
            aria-current={is_here.then_some("step")}
            onclick={context.send(Msg::Saw(SawMove::Jump(leg, step)))}
        >{ label }</button>
    }
}
