//! The stops of one board as a table.

use std::rc::Rc;

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::problem::Planned;
use notchwright_core::stop::{Set, Stop};
use notchwright_core::units::Unit;
use yew::{Html, Properties, component, html, use_state};

use crate::view::context::Context;
use crate::view::show;

/// The plan that the stops are of.
#[derive(Clone, Debug)]
pub(in crate::view) enum Source {
    /// A box joint.
    Box(Rc<Planned<BoxJointPlan>>),
    /// Dovetails.
    Dovetail(Rc<Planned<DovetailPlan>>),
}

impl Source {
    fn sets(&self) -> &[Set] {
        match self {
            Self::Box(planned) => &planned.plan.sets,
            Self::Dovetail(planned) => &planned.plan.sets,
        }
    }
}

impl PartialEq for Source {
    /// Only the stops are shown.
    fn eq(&self, other: &Self) -> bool {
        self.sets() == other.sets()
    }
}

/// Every table.
pub(in crate::view) fn tables(source: &Source, sets: usize, context: Context<'_>) -> Html {
    let table = |set: usize| {
        html! {
            <Stops key={set} source={source.clone()} {set} unit={context.unit()} on_paper={context.model.on_paper} />
        }
    };
    html! {
        <section class="section all-stops" aria-labelledby="stops">
            <h2 id="stops">{ "Stops" }</h2>
            <p class="quiet">
                { "Turns and divisions from zero, always reached with rising readings. " }
                { format!("At: reference edge to the kerf, {}. Move: from the stop before.", crate::view::field::short(context.unit())) }
            </p>
            <div class="sets">{ for (0..sets).map(table) }</div>
        </section>
    }
}

/// Which table.
#[derive(Clone, Debug, PartialEq, Properties)]
pub(super) struct StopsProps {
    /// The plan.
    pub(super) source: Source,
    /// Which of its sets.
    pub(super) set: usize,
    /// Unit that lengths are shown in.
    pub(super) unit: Unit,
    /// Whether it is for paper, which shows all of it.
    pub(super) on_paper: bool,
}

/// Of longer tables only this much is made until somebody asks for all of it: at the saw the stops come
/// one by one anyway, and on a phone the rest would take most of the time between two keystrokes.
const ROWS_AT_ONCE: usize = 12;

/// The table.
#[component]
pub(super) fn Stops(props: &StopsProps) -> Html {
    let is_whole = use_state(|| false);
    let Some(set) = props.source.sets().get(props.set) else {
        return Html::default();
    };
    let is_short = set.stops.len() > ROWS_AT_ONCE && !*is_whole && !props.on_paper;
    let shown = if is_short {
        ROWS_AT_ONCE
    } else {
        set.stops.len()
    };
    let stops = set.stops.get(..shown).unwrap_or_default();
    let show_all = {
        let is_whole = is_whole.clone();
        move |_| is_whole.set(true)
    };
    html! {
        <div class="stops">
            <div class="held" tabindex="0" role="group" aria-label={format!("{}, stops", set.name)}>
                <table>
                    <caption>{ caption(set, props.unit) }</caption>
                    { head() }
                    { for by_socket(stops).map(|stops| body(stops, props.unit)) }
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
                <th scope="col">{ "Move" }<span class="for-readers">{ ", turns t and divisions" }</span></th>
            </tr>
        </thead>
    }
}

/// Stops in runs of the same socket.
fn by_socket(stops: &[Stop]) -> impl Iterator<Item = &[Stop]> {
    stops.chunk_by(|stop, next| stop.socket == next.socket)
}

fn body(stops: &[Stop], unit: Unit) -> Html {
    let Some(first) = stops.first() else {
        return Html::default();
    };
    let passes = show::count(first.passes, "pass", "passes");
    html! {
        <tbody key={first.socket}>
            <tr class="socket">
                <th scope="rowgroup" colspan="5">{ format!("Socket {} · {passes}", first.socket + 1) }</th>
            </tr>
            { for stops.iter().map(|stop| row(stop, unit)) }
        </tbody>
    }
}

fn row(stop: &Stop, unit: Unit) -> Html {
    html! {
        <tr key={stop.number}>
            <th scope="row">{ stop.number }</th>
            <td class="set">{ show::whole(stop.dial.turns) }</td>
            <td class="set">{ show::number(stop.dial.division) }</td>
            <td>{ show::column(stop.at, unit) }</td>
            <td>{ travel(stop) }</td>
        </tr>
    }
}

/// `11 t 56`: turns only where there are some.
fn travel(stop: &Stop) -> String {
    let division = show::number(stop.move_division);
    match stop.move_turns {
        0 => division,
        turns => format!("{} t {division}", show::whole(turns)),
    }
}
