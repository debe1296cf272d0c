//! The open joint on paper, and as files for other programs.

use yew::{Html, html};

use crate::export::pictures;
use crate::msg::{Export, Look, Msg};
use crate::state::PaperSize;
use crate::view::context::Context;
use crate::view::segment::Segment;

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <section class="tool" aria-labelledby="files">
            <h2 id="files">{ "The open joint on paper and as files" }</h2>
            { offers(context) }
        </section>
    }
}

fn offers(context: Context<'_>) -> Html {
    let model = context.model;
    let Some(cut) = model.answer.cut() else {
        return html! { <p class="quiet">{ "There is nothing to cut yet, or the joint's numbers have problems." }</p> };
    };
    html! {
        <>
            <p class="quiet">{ "One sheet for the bench: set-up, every stop with a box to tick, drawing, cautions." }</p>
            { paper(context) }
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::Print)}>{ "Print the shop card" }</button>
                <button type="button" class="button" onclick={context.send(Msg::Export(Export::Csv))}>
                    { "Stops as CSV" }
                </button>
            </div>
            <ul class="pictures" aria-label="Drawings">
                { for pictures::all(cut.of, &model.state).iter().enumerate().map(|(place, (name, _))| picture(place, name, context)) }
            </ul>
        </>
    }
}

fn paper(context: Context<'_>) -> Html {
    let state = &context.model.state;
    let paper = Segment {
        name: "card-paper",
        legend: "Paper",
        is_plain: false,
        options: &[(PaperSize::A4, "A4"), (PaperSize::Letter, "Letter")],
        chosen: state.sled.paper,
    };
    let templates = Segment {
        name: "card-templates",
        legend: "Full-size template",
        is_plain: false,
        options: &[(false, "not printed"), (true, "printed after the card")],
        chosen: state.templates,
    };
    html! {
        <>
            { paper.view(|paper| Msg::Look(Look::Paper(paper)), context) }
            { templates.view(|templates| Msg::Look(Look::Templates(templates)), context) }
        </>
    }
}

fn picture(place: usize, name: &str, context: Context<'_>) -> Html {
    let button = |what: Export, words: &'static str| {
        html! {
            <button type="button" class="button" onclick={context.send(Msg::Export(what))}>
                { words }<span class="for-readers">{ format!(", {name}") }</span>
            </button>
        }
    };
    html! {
        <li key={place}>
            <span>{ name.to_owned() }</span>
            <span class="buttons">
                { button(Export::Svg(place), "SVG") }
                { button(Export::Dxf(place), "DXF") }
            </span>
        </li>
    }
}
