//! The stops of one board as a table.

use std::rc::Rc;

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::problem::Planned;
use notchwright_core::stop::{Set, Stop};
use notchwright_core::units::Unit;
use yew::{Html, Properties, classes, component, html, use_state};

use crate::view::show;

/// Which table.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct StopsProps {
    /// The plan.
    pub(super) planned: Rc<Planned<BoxJointPlan>>,
    /// Which of its sets.
    pub(super) set: usize,
    /// Unit that lengths are shown in.
    pub(super) unit: Unit,
}

/// Longer tables are cut off here until somebody asks for all of it.
const ROWS_AT_ONCE: usize = 40;

/// The table; paper shows all of it.
#[component]
pub(super) fn Stops(props: &StopsProps) -> Html {
    let is_whole = use_state(|| false);
    let Some(set) = props.planned.plan.sets.get(props.set) else {
        return Html::default();
    };
    let is_short = set.stops.len() > ROWS_AT_ONCE && !*is_whole;
    let show_all = {
        let is_whole = is_whole.clone();
        move |_| is_whole.set(true)
    };
    html! {
        <div class="stops">
            <div class={classes!("held", is_short.then_some("short"))} tabindex="0" role="group" aria-label={format!("{}, stops", set.name)}>
                <table>
                    <caption>{ caption(set, props.unit) }</caption>
                    { head() }
                    { for by_socket(&set.stops).map(|(from, stops)| body(from, stops, props.unit)) }
                </table>
            </div>
            if is_short {
                <button type="button" class="button" onclick={show_all}>
                    { format!("Show all {} stops", set.stops.len()) }
                </button>
            }
        </div>
    }
}

fn caption(set: &Set, unit: Unit) -> Html {
    let passes = show::count(set.stops.len(), "pass", "passes");
    html! {
        <>
            <b>{ &set.name }</b>
            <span class="quiet">{ format!(" · blade {} high · {passes}", show::length(set.height, unit)) }</span>
        </>
    }
}

fn head() -> Html {
    html! {
        <thead>
            <tr>
                <th scope="col">{ "Pass" }</th>
                <th scope="col">{ "Turns" }</th>
                <th scope="col">{ "Div" }<span class="for-readers">{ "isions" }</span></th>
                <th scope="col">{ "At" }</th>
                <th scope="col">{ "Move" }</th>
            </tr>
        </thead>
    }
}

/// Stops in runs of the same socket, each with the index of its first stop.
fn by_socket(stops: &[Stop]) -> impl Iterator<Item = (usize, &[Stop])> {
    stops
        .chunk_by(|stop, next| stop.socket == next.socket)
        .scan(0, |from, run| {
            let first = *from;
            *from += run.len();
            Some((first, run))
        })
}

fn body(from: usize, stops: &[Stop], unit: Unit) -> Html {
    let Some(first) = stops.first() else {
        return Html::default();
    };
    let passes = show::count(first.passes, "pass", "passes");
    let folded = |index: usize| (index >= ROWS_AT_ONCE).then_some("folded");
    html! {
        <tbody key={from}>
            <tr class={classes!("socket", folded(from))}>
                <th scope="rowgroup" colspan="5">{ format!("Socket {} · {passes}", first.socket + 1) }</th>
            </tr>
            { for stops.iter().enumerate().map(|(index, stop)| row(stop, folded(from + index), unit)) }
        </tbody>
    }
}

fn row(stop: &Stop, class: Option<&'static str>, unit: Unit) -> Html {
    html! {
        <tr key={stop.number} {class}>
            <th scope="row">{ stop.number }</th>
            <td class="set">{ show::whole(stop.dial.turns) }</td>
            <td class="set">{ show::number(stop.dial.division) }</td>
            <td>{ show::column(stop.at, unit) }</td>
            <td>{ travel(stop) }</td>
        </tr>
    }
}

/// `11 t 56`: turns only where there are some.
fn travel(stop: &Stop) -> Html {
    let division = show::number(stop.move_division);
    match stop.move_turns {
        0 => html! { division },
        turns => html! {
            <>{ show::whole(turns) }{ " t" }<span class="for-readers">{ "urns" }</span>{ " " }{ division }</>
        },
    }
}
