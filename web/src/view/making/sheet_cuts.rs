//! The cuts of a sheet in their order, each to be ticked once it is made.

use notchwright_core::sheet::{CutStep, LaidSheet, PieceKind, Side, StepKind, Yielded};
use yew::{Html, classes, html};

use super::sheet_plan::size;
use crate::answer::tools::SheetAnswer;
use crate::msg::{Edit, MakingEdit, Tick};
use crate::state::Ticks;
use crate::view::context::Context;
use crate::view::icon::Icon;

/// The list, folded away under `title`; `first` is the number of its first cut among those of all sheets.
pub(super) fn list(
    laid: &LaidSheet,
    title: String,
    first: u32,
    made: &Ticks,
    sheet: &SheetAnswer,
    context: Context<'_>,
) -> Html {
    let count = laid.cuts.len();
    let done = made.count(first..first + count as u32);
    let cut = |(number, step): (u32, &CutStep)| {
        let is_made = made.has(number);
        let tick = Tick {
            of: sheet.mark,
            cut: number,
            is_made: !is_made,
        };
        let toggle = context.edit(Edit::Making(MakingEdit::Tick(tick)));
        html! {
            <li key={number}>
                <label class="cut">
                    <input type="checkbox" checked={is_made} disabled={!sheet.layout.is_current} onchange={toggle} />
                    <span>
                        <b>{ format!("{}. {}", step.step, set(step, context)) }</b>
                        <small>{ gives(step, context) }</small>
                    </span>
                </label>
            </li>
        }
    };
    html! {
        <details key={laid.number} class="more">
            <summary>
                <b>{ title }</b>
                <span class="says">{ format!("{done} of {count} made") }</span>
                { Icon::Down.view() }
            </summary>
            <ol class="inside cut-list">{ for (first..).zip(&laid.cuts).map(cut) }</ol>
        </details>
    }
}

/// The list of sheets that are cut alike, for paper: each cut once, with a box to tick for each sheet.
pub(super) fn on_paper(group: &[(u32, &LaidSheet)], made: &Ticks, context: Context<'_>) -> Html {
    let Some((_, laid)) = group.first().filter(|_| context.model.on_paper) else {
        return Html::default();
    };
    let cut = |(place, step): (u32, &CutStep)| {
        let boxes = group.iter().map(|(first, _)| {
            html! { <span class={classes!("tick", made.has(first + place).then_some("made"))} /> }
        });
        html! {
            <li key={place}>
                <span class="boxes">{ for boxes }</span>
                <b>{ format!("{}. {}", step.step, set(step, context)) }</b>
                <small>{ gives(step, context) }</small>
            </li>
        }
    };
    html! { <ol class="for-paper cut-list">{ for (0..).zip(&laid.cuts).map(cut) }</ol> }
}

/// What to do, and where the fence stands.
fn set(step: &CutStep, context: Context<'_>) -> String {
    let what = match step.kind {
        StepKind::Rough => "Cut by hand",
        StepKind::Trim => "Trim",
        StepKind::Rip => "Rip",
        StepKind::Crosscut => "Crosscut",
    };
    let from = match (step.kind, step.across) {
        (StepKind::Rough, _) => "from the edge",
        (StepKind::Crosscut, _) | (StepKind::Trim, Side::Length) => "from the stop",
        (StepKind::Rip, _) | (StepKind::Trim, Side::Width) => "from the fence",
    };
    let again = if step.same_setting { ", as set" } else { "" };
    let later = if step.later { "; later" } else { "" };
    let fence = context.length(step.fence);
    format!("{what} {fence} {from}{again}{later}")
}

/// The piece in hand, and what comes of it.
fn gives(step: &CutStep, context: Context<'_>) -> String {
    let hand = size(step.place.length, step.place.width, context);
    let yields: Vec<_> = step
        .yields
        .iter()
        .map(|yielded| what(yielded, context))
        .collect();
    format!("From {hand}: {}.", yields.join(" and "))
}

fn what(yielded: &Yielded, context: Context<'_>) -> String {
    let size = size(yielded.place.length, yielded.place.width, context);
    match (yielded.is, yielded.part) {
        (PieceKind::Part, Some(number)) => format!("part {number}"),
        (PieceKind::Part | PieceKind::Piece, _) => format!("a piece {size}"),
        (PieceKind::Offcut, _) => format!("off-cut {size}"),
        (PieceKind::Trimming, _) => "a trimming".to_owned(),
    }
}
