//! What is made: one tool at a time. Only [`view`] may be called from elsewhere, and only once this part of the
//! program has come.

mod drawer;
mod parts;
mod rows;
mod sheet;
mod sheet_cuts;
mod sheet_plan;

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
    let (form, outcome) = match tool {
        PartsTool::Drawer => (drawer::form(context), drawer::outcome(context)),
        PartsTool::Parts => (parts::form(context), parts::outcome(context)),
        PartsTool::Sheet => (sheet::form(context), sheet_plan::outcome(context)),
    };
    html! {
        <>
            <form key={name(tool)} class="form" aria-label="What is made" onsubmit={|event: yew::SubmitEvent| event.prevent_default()}>
                <div class="tools">{ tools.view(|tool| Msg::Look(Look::PartsTool(tool)), context) }</div>
                { form }
            </form>
            <div key={name(tool)} class="outcome">{ outcome }</div>
        </>
    }
}

fn name(tool: PartsTool) -> &'static str {
    match tool {
        PartsTool::Drawer => "drawer",
        PartsTool::Parts => "parts",
        PartsTool::Sheet => "sheet",
    }
}
