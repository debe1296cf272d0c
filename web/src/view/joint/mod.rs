//! The joint: numbers on one side, what follows from them on the other.

mod boards;
mod cutter;
mod facts;
mod fingers;
mod fit;
mod groove;
mod more;
mod notes;
mod outcome;
mod stops;
mod verdict;
mod zero;

use yew::{Html, html};

use super::context::Context;
use super::segment::Segment;
use super::{part, slanted};
use crate::model::Chunk;
use crate::msg::{Edit, Msg};
use crate::state::JointKind;

pub(super) use boards::view_as as boards_as;
pub(super) use cutter::{line as cutter_line, view as cutters};
pub(super) use facts::fact;
pub(super) use notes::{cautions, view as notes_view};
pub(super) use outcome::to_the_saw;
pub(super) use stops::{Source, tables};
pub(super) use verdict::{Fit, view as verdict_view};
pub(super) use zero::view as zero_view;

/// The place.
pub(super) fn view(context: Context<'_>) -> Html {
    let inside = match context.model.state.work.joint.kind {
        JointKind::Box => box_joint(context),
        JointKind::Dovetail | JointKind::Sliding => match part::waiting(Chunk::Dovetail, context) {
            None => slanted::view(context),
            Some(waiting) => html! {
                <>
                    <div class="form">{ kinds(context) }</div>
                    <div class="outcome">{ waiting }</div>
                </>
            },
        },
    };
    html! { <main class="main joint" id="main">{ inside }</main> }
}

/// Which joint.
pub(super) fn kinds(context: Context<'_>) -> Html {
    let kinds = Segment {
        name: "joint-kind",
        legend: "Joint",
        is_plain: true,
        options: &[
            (JointKind::Box, "Box joint"),
            (JointKind::Dovetail, "Dovetails"),
            (JointKind::Sliding, "Sliding"),
        ],
        chosen: context.model.state.work.joint.kind,
    };
    html! {
        <div class="tools">{ kinds.view(|kind| Msg::Edit(Edit::Joint(kind)), context) }</div>
    }
}

fn box_joint(context: Context<'_>) -> Html {
    html! {
        <>
            <form class="form" aria-label="The joint" onsubmit={|event: yew::SubmitEvent| event.prevent_default()}>
                { kinds(context) }
                { boards::view(context) }
                { cutter::view(context) }
                { fingers::view(context) }
                { more::view(context) }
            </form>
            { outcome::view(context) }
        </>
    }
}
