//! The sled on this saw: one tool at a time. Only [`view`] may be called from elsewhere, and only once
//! this part of the program has come.

mod base;
mod fit;
mod fit_figures;
mod groove;
mod screw;
mod screw_figures;
mod square;
mod square_figures;
mod stroke;

use yew::{Html, html};

use super::context::Context;
use super::segment::Segment;
use crate::msg::{Look, Msg};
use crate::state::Tool;

/// The place.
#[inline(never)]
pub(super) fn view(context: Context<'_>) -> Html {
    let tool = context.model.state.sled.tool;
    let tools = Segment {
        name: "tool",
        legend: "Tool",
        is_plain: true,
        options: &[
            (Tool::Fit, "Fit"),
            (Tool::Base, "Base"),
            (Tool::Square, "Square"),
            (Tool::Screw, "Screw"),
            (Tool::Groove, "Groove"),
        ],
        chosen: tool,
    };
    let (form, outcome) = match tool {
        Tool::Fit => (fit::form(context), fit_figures::view(context)),
        Tool::Base => (base::form(context), base::outcome(context)),
        Tool::Square => (square::form(context), square_figures::view(context)),
        Tool::Screw => (screw::form(context), screw_figures::view(context)),
        Tool::Groove => (groove::form(context), groove::outcome(context)),
    };
    html! {
        <>
            <form key={name(tool)} class="form" aria-label="What is measured" onsubmit={|event: yew::SubmitEvent| event.prevent_default()}>
                <div class="tools">{ tools.view(|tool| Msg::Look(Look::Tool(tool)), context) }</div>
                { form }
            </form>
            <div key={name(tool)} class="outcome">{ outcome }</div>
        </>
    }
}

fn name(tool: Tool) -> &'static str {
    match tool {
        Tool::Fit => "fit",
        Tool::Base => "base",
        Tool::Square => "square",
        Tool::Screw => "screw",
        Tool::Groove => "groove",
    }
}
