//! The base's drawing for this saw: on the screen, as a file, on paper, and its holes at full size.

use std::rc::Rc;

use notchwright_core::drawing::dxf::dxf;
use notchwright_core::drawing::svg::svg;
use notchwright_core::drawing::{Drawing, Paper, hole_line_tiles, sled_base};
use notchwright_core::problem::Planned;
use notchwright_core::sled::SledFitPlan;
use yew::{Callback, Html, MouseEvent, classes, html};

use super::fit::pair;
use crate::model::{Chunk, Part};
use crate::msg::{Edit, Look, Msg};
use crate::state::{Entry, PaperSize, Prints};
use crate::view::context::Context;
use crate::view::field::short;
use crate::view::outcome::state;
use crate::view::segment::Segment;
use crate::view::tool::{figure, group, plan};
use crate::view::{drawing, joint, show};

/// What the drawing looks like where no style sheet of the page is: plain ink on white.
const STYLE: &str = include_str!("base.css");

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    let view = &context.model.state.sled;
    let prints = Segment {
        name: "prints",
        legend: "Print",
        is_plain: false,
        options: &[
            (Prints::Drawing, "the drawing"),
            (Prints::HoleLine, "the hole line, full size"),
        ],
        chosen: view.prints,
    };
    let paper = Segment {
        name: "paper",
        legend: "On paper",
        is_plain: false,
        options: &[(PaperSize::A4, "A4"), (PaperSize::Letter, "Letter")],
        chosen: view.paper,
    };
    html! {
        <>
            { pair(context) }
            { group("To build it", html! {
                <>
                    <p class="quiet">{ "Everything on it is where it goes on this saw; the runner as it is after moving. Change the numbers under Fit." }</p>
                    { prints.view(|prints| Msg::Look(Look::Prints(prints)), context) }
                    { paper.view(|paper| Msg::Look(Look::Paper(paper)), context) }
                </>
            }) }
        </>
    }
}

/// The outcome.
pub(super) fn outcome(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.sled else {
        return Html::default();
    };
    let fit = &answer.fit;
    let found = fit.plan.as_ref().map(|planned| {
        let inside = html! {
            <>
                { heading(context) }
                { shown(&planned.plan, context) }
                { for fit.is_current.then(|| buttons(planned, context)) }
                { on_paper(&planned.plan, context) }
            </>
        };
        plan(fit, inside)
    });
    let prints = match context.model.state.sled.prints {
        Prints::Drawing => "prints-drawing",
        Prints::HoleLine => "prints-holes",
    };
    html! { <div class={classes!("section", prints)}>{ state(fit, context) }{ for found }</div> }
}

/// What it is, for somebody who has only the paper.
fn heading(context: Context<'_>) -> Html {
    let shop = &context.model.state.work.shop;
    let name = |name: Option<&Entry>| name.map_or("", |name| name.text.as_str()).to_owned();
    let sled = name(shop.sleds.chosen().map(|sled| &sled.name));
    let saw = name(shop.saws.chosen().map(|saw| &saw.name));
    let unit = short(context.unit());
    html! {
        <header class="for-paper">
            <b class="job">{ format!("Base of {sled}") }</b>
            <span>{ format!("for {saw}; {}; lengths in {unit}", joint::cutter_line(context)) }</span>
        </header>
    }
}

fn shown(plan: &SledFitPlan, context: Context<'_>) -> Html {
    let label = "The base from above with every distance, its near edge below";
    html! { <div class="base-drawing">{ figure(&sled_base(plan), label, context) }</div> }
}

fn buttons(planned: &Rc<Planned<SledFitPlan>>, context: Context<'_>) -> Html {
    html! {
        <div class="buttons">
            <button type="button" class="button" onclick={save(planned, context)}>{ "Save as SVG" }</button>
            <button type="button" class="button" onclick={save_dxf(planned, context)}>{ "Save as DXF" }</button>
            <button type="button" class="button" onclick={context.send(Msg::Print)}>{ "Print" }</button>
            if context.model.parts.of(Chunk::Parts) == Part::Here {
                <button type="button" class="button" onclick={context.edit(Edit::SledParts)}>{ "Add its parts to this job" }</button>
            }
        </div>
    }
}

/// The file is made when it is asked for.
fn save(planned: &Rc<Planned<SledFitPlan>>, context: Context<'_>) -> Callback<MouseEvent> {
    let (planned, unit) = (Rc::clone(planned), context.unit());
    context.emit.reform(move |_| Msg::SaveFile {
        name: "sled-base.svg",
        text: svg(&sled_base(&planned.plan), STYLE, |length| {
            show::bare(length, unit)
        }),
    })
}

fn save_dxf(planned: &Rc<Planned<SledFitPlan>>, context: Context<'_>) -> Callback<MouseEvent> {
    let (planned, unit) = (Rc::clone(planned), context.unit());
    context.emit.reform(move |_| Msg::SaveFile {
        name: "sled-base.dxf",
        text: dxf(&sled_base(&planned.plan), |length| show::bare(length, unit)),
    })
}

/// The tiles are on paper only; a rule on the screen would show nothing.
fn on_paper(plan: &SledFitPlan, context: Context<'_>) -> Html {
    let view = &context.model.state.sled;
    if view.prints == Prints::Drawing {
        return Html::default();
    }
    let paper = match view.paper {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    };
    let tiles = hole_line_tiles(plan, paper);
    if tiles.is_empty() {
        return html! { <p>{ "The runner has no holes yet: say where they are, under Fit." }</p> };
    }
    html! {
        <section class="section tiles" aria-label="The hole line at full size">
            <p class="quiet">{ format!(
                "{} of the hole line. Print without scaling, check the bar with a rule, then tape them together at the marks.",
                show::count(tiles.len(), "sheet", "sheets")
            ) }</p>
            { for tiles.iter().map(|one| tile(one, view.paper, context)) }
        </section>
    }
}

fn tile(tile: &Drawing, paper: PaperSize, context: Context<'_>) -> Html {
    let write = |length| show::bare(length, context.unit());
    let paper = match paper {
        PaperSize::A4 => None,
        PaperSize::Letter => Some("letter"),
    };
    html! { <div class={classes!("tile", paper)}>{ drawing::full_size(tile, "A sheet of the hole line", &write) }</div> }
}
