//! A groove along both boards, such as a drawer bottom's: does it show?

use notchwright_core::joint::box_joint::{GrooveEnd, GroovePlace, Make, Through};
use notchwright_core::stop::Board;
use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Edge, Field, JointField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::segment::Segment;

/// Whether there is one, where it is, and what becomes of it.
pub(super) fn view(context: Context<'_>) -> Html {
    let groove = &context.model.state.work.joint.groove;
    let is_there = Segment {
        name: "groove",
        legend: "Groove for a bottom",
        is_plain: false,
        options: &[(false, "none"), (true, "check one")],
        chosen: groove.on,
    };
    html! {
        <div class="section">
            { is_there.view(|on| Msg::Edit(Edit::Groove(on)), context) }
            if groove.on {
                { measures(groove.edge, context) }
                { outcome(context) }
            }
        </div>
    }
}

fn measures(edge: Edge, context: Context<'_>) -> Html {
    let entry = |field, label: &'static str| Entry::new(Field::Joint(field), label).view(context);
    let edges = Segment {
        name: "groove-edge",
        legend: "Measured from",
        is_plain: false,
        options: &[
            (Edge::Reference, "the reference edge"),
            (Edge::Far, "the far edge"),
        ],
        chosen: edge,
    };
    html! {
        <>
            <div class="fields">
                { entry(JointField::GrooveFromEdge, "Edge to groove") }
                { entry(JointField::GrooveWidth, "Groove width") }
                { entry(JointField::GrooveDepth, "Groove depth") }
            </div>
            { edges.view(|edge| Msg::Edit(Edit::GrooveEdge(edge)), context) }
        </>
    }
}

fn outcome(context: Context<'_>) -> Html {
    let plan = context
        .model
        .answer
        .current()
        .and_then(|planned| planned.plan.groove.as_ref());
    html! {
        <div class="section" aria-live="polite">
            { for plan.iter().map(|groove| html! {
                <>
                    { for groove.ends.iter().map(|end| html! { <p>{ said(*end) }</p> }) }
                    { better(&groove.better, context) }
                </>
            }) }
        </div>
    }
}

fn said(end: GrooveEnd) -> String {
    let board = letter(end.board);
    let through = match end.through {
        Through::Pin => "through a pin",
        Through::Socket => "through a socket",
        Through::Both => "partly through a pin",
    };
    let make = match end.make {
        Make::Through => "groove it from end to end; the mating pin covers it.",
        Make::Stopped => "stop the groove short of both ends, or plug the hole.",
    };
    format!("Board {board}: it runs out {through}, so {make}")
}

fn letter(board: Board) -> &'static str {
    match board {
        Board::A => "A",
        Board::B => "B",
    }
}

fn better(places: &[GroovePlace], context: Context<'_>) -> Html {
    if places.is_empty() {
        return Html::default();
    }
    let place = |place: &GroovePlace| {
        let field = Field::Joint(JointField::GrooveFromEdge);
        let from_edge = context.length(place.from_edge);
        let board = letter(place.through);
        html! {
            <button type="button" class="button" onclick={context.edit(Edit::Set(field, place.from_edge))}>
                { format!("{from_edge}, then {board} right through") }
            </button>
        }
    };
    html! {
        <>
            <p>{ "It would be hidden in one board at" }</p>
            <div class="buttons">{ for places.iter().map(place) }</div>
        </>
    }
}
