//! What is made: one tool at a time. Only [`view`] may be called from elsewhere, and only once this part of the
//! program has come.

use yew::{Html, html};

use super::context::Context;
use super::segment::Segment;
use crate::msg::{Look, Msg};
use crate::state::PartsTool;

/// The place.
#[inline(never)]
pub(super) fn view(context: Context<'_>) -> Html {
    let tool = context.model.state.parts_tool;
    let tools = Segment {
        name: "parts-tool",
        legend: "Tool",
        is_plain: true,
        options: &[
            (PartsTool::Drawer, "Drawer"),
            (PartsTool::Parts, "Parts"),
            (PartsTool::Sheet, "Sheet"),
        ],
        chosen: tool,
    };
    html! {
        <form class="form" aria-label="What is made" onsubmit={|event: yew::SubmitEvent| event.prevent_default()}>
            <div class="tools">{ tools.view(|tool| Msg::Look(Look::PartsTool(tool)), context) }</div>
        </form>
    }
}
