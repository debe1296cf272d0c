//! The layout that was found: what it takes, and each sheet.

use notchwright_core::drawing::sheet_layout_drawing;
use notchwright_core::sheet::{LaidPart, LaidSheet, SearchReached, SheetLayoutPlan};
use notchwright_core::units::Mm;
use yew::{Html, html};

use super::sheet_cuts;
use crate::answer::tools::SheetAnswer;
use crate::model::Searching;
use crate::msg::{Msg, Search};
use crate::state::fields::cutting;
use crate::state::{Field, Group, Ticks};
use crate::view::context::Context;
use crate::view::joint::cautions;
use crate::view::labels::label;
use crate::view::outcome;
use crate::view::show;
use crate::view::tool::{fact, facts, figure, notes, plan};

/// All of it.
pub(super) fn outcome(context: Context<'_>) -> Html {
    let Some(making) = &context.model.answer.making else {
        return Html::default();
    };
    let sheet = &making.sheet;
    html! {
        <>
            { said(sheet, context) }
            { search(sheet, context) }
            { for sheet.layout.plan.as_deref().map(|planned| plan(&sheet.layout, html! {
                <>
                    { taken(&planned.plan, sheet, context) }
                    { sheets(&planned.plan, sheet, context) }
                    { notes(&planned.notes, context) }
                    if context.model.on_paper {
                        <section class="for-paper">{ cautions(&planned.notes, context) }</section>
                    }
                </>
            })) }
        </>
    }
}

/// What stands in the way, and what is left out.
fn said(sheet: &SheetAnswer, context: Context<'_>) -> Html {
    let making = &context.model.state.work.job.making;
    let mut says = Vec::new();
    if making.rows(Group::Parts).is_empty() {
        says.push("There are no parts yet: list them under Parts.".to_owned());
    }
    let without = sheet.without_sheets.iter();
    says.extend(
        without.map(|stock| {
            format!("No sheet is of {stock}: its parts are left out until you add one.")
        }),
    );
    says.extend(of_parts(context));
    let is_waiting = sheet.can_search && sheet.reached.is_none() && sheet.refused.is_empty();
    html! {
        <>
            if sheet.can_search && !is_waiting { { outcome::state(&sheet.layout, context) } }
            <div role="status">{ for says.into_iter().map(|text| html! { <p class="changed">{ text }</p> }) }</div>
        </>
    }
}

/// What is wrong with parts, whose fields are not shown here.
fn of_parts(context: Context<'_>) -> impl Iterator<Item = String> {
    let making = &context.model.state.work.job.making;
    context
        .model
        .answer
        .shown_problems()
        .filter_map(move |problem| {
            let field @ Field::Making(spot) = problem.field? else {
                return None;
            };
            let row = making
                .rows(spot.group)
                .iter()
                .find(|row| row.id == spot.row);
            let row = row.filter(|_| spot.group == Group::Parts)?;
            let name = super::rows::called_in(making, spot.group, row, "Part");
            Some(format!(
                "{name}, {}: {}",
                label(field),
                context.message(&problem.message)
            ))
        })
}

/// How far the search has come, and its buttons.
fn search(sheet: &SheetAnswer, context: Context<'_>) -> Html {
    if !sheet.can_search || (!sheet.refused.is_empty() && sheet.reached.is_none()) {
        return Html::default();
    }
    let ticks = ticks(context);
    let is_begun = ticks.as_ref().is_some_and(|ticks| sheet.is_of(ticks.of));
    let reached = sheet.reached.as_ref();
    let rounds = reached.map_or(0, |reached| reached.steps);
    let Searching {
        is_stopped, limit, ..
    } = context.model.searching;
    let is_done = reached.is_some_and(|reached| reached.done);
    let rests = is_stopped || rounds >= limit;
    let button = |says: &'static str, search: Search| {
        html! { <button type="button" class="button" onclick={context.send(Msg::Search(search))}>{ says }</button> }
    };
    let is_back = ticks.is_some_and(|ticks| rounds < ticks.of.rounds);
    let (says, control) = match () {
        () if is_begun => (
            "Cutting has begun: the search rests, and this layout stays.",
            None,
        ),
        () if is_done => ("The search is done: no layout takes less wood.", None),
        () if rests => ("The search rests.", Some(button("Search on", Search::GoOn))),
        () if is_back => (
            "Going back to the layout that was begun…",
            Some(button("Stop", Search::Stop)),
        ),
        () => ("Searching for better…", Some(button("Stop", Search::Stop))),
    };
    let runs = control.is_some() && !rests;
    html! {
        <section class="section search" aria-label="Search">
            <div class="search-line">
                <p><span role="status">{ says }</span>{ " " }<span class="quiet">{ format!("Round {rounds}.") }</span></p>
                { for control }
            </div>
            if runs {
                <progress max={limit.to_string()} value={rounds.to_string()} aria-label="Rounds of the search" />
            }
        </section>
    }
}

/// The cuts that were made.
pub(super) fn ticks(context: Context<'_>) -> Option<Ticks> {
    let making = &context.model.state.work.job.making;
    Ticks::read(making.cutting.text(cutting::CUT.name()))
}

fn taken(found: &SheetLayoutPlan, sheet: &SheetAnswer, context: Context<'_>) -> Html {
    let offcuts = found.offcuts_used as usize;
    let with = (offcuts > 0).then(|| {
        format!(
            "and {} on hand",
            show::count(offcuts, "off-cut", "off-cuts")
        )
    });
    let kept = found.sheets.iter().flat_map(|sheet| &sheet.offcuts);
    let kept = kept.filter(|offcut| offcut.keep).count();
    let last = format!("of the last, {} is used", context.length(found.used_length));
    let settings = show::number(f64::from(found.settings));
    let list = [
        Some(fact(
            "Whole sheets",
            found.whole_sheets.to_string(),
            with.or(Some(last)),
        )),
        Some(fact(
            "Used",
            percent(found.share),
            "of the sheets' area becomes parts".to_owned(),
        )),
        found
            .cost
            .map(|cost| fact("Cost", show::number(cost), "of the whole sheets".to_owned())),
        Some(fact("Fence set", format!("{settings} ×"), None)),
        Some(fact("Off-cuts kept", kept.to_string(), None)),
        sheet.reached.as_ref().map(proof),
    ];
    facts("What it takes", list.into_iter().flatten())
}

fn proof(reached: &SearchReached) -> Html {
    if reached.proven {
        fact(
            "Proven",
            "best".to_owned(),
            "no layout takes less wood".to_owned(),
        )
    } else {
        let says = "not proven that nothing is better".to_owned();
        fact(
            "Best of",
            show::count(reached.steps as usize, "round", "rounds"),
            says,
        )
    }
}

fn percent(share: f64) -> String {
    format!("{} %", show::number((share * 1000.0).round() / 10.0))
}

fn sheets(found: &SheetLayoutPlan, sheet: &SheetAnswer, context: Context<'_>) -> Html {
    let made = ticks(context).filter(|ticks| sheet.is_of(ticks.of));
    let made = made.unwrap_or_else(|| Ticks::none(sheet.mark));
    let each = alike(&found.sheets).into_iter().map(|group| {
        let Some((_, laid)) = group.first() else {
            return Html::default();
        };
        let title = title(&group, context);
        let cuts = group.iter().map(|(first, each)| {
            let title = if group.len() > 1 {
                format!("Cuts of sheet {} in their order", each.number)
            } else {
                "Cuts in their order".to_owned()
            };
            sheet_cuts::list(each, title, *first, &made, sheet, context)
        });
        html! {
            <section key={laid.number} class="section laid">
                <h3>{ title.clone() }</h3>
                { figure(&sheet_layout_drawing(found, laid, has_room(laid)), title, context) }
                { left(laid, context) }
                { for cuts }
                { sheet_cuts::on_paper(&group, &made, context) }
            </section>
        }
    });
    let each: Vec<_> = each.collect();
    html! { <section class="section"><h2>{ "Sheet by sheet" }</h2>{ for each }</section> }
}

/// Sheets that are cut alike, one after another, each with the number of its first cut among those of all sheets.
fn alike(sheets: &[LaidSheet]) -> Vec<Vec<(u32, &LaidSheet)>> {
    let mut groups: Vec<Vec<(u32, &LaidSheet)>> = Vec::new();
    let mut first = 1;
    for laid in sheets {
        let is_like = |(_, other): &(u32, &LaidSheet)| {
            (other.kind, &other.cuts, &other.parts) == (laid.kind, &laid.cuts, &laid.parts)
        };
        match groups.last_mut() {
            Some(group) if group.first().is_some_and(is_like) => group.push((first, laid)),
            _ => groups.push(vec![(first, laid)]),
        }
        first += laid.cuts.len() as u32;
    }
    groups
}

/// Whether the cuts' numbers can be told apart in a drawing: on a narrow board they would lie on one another.
fn has_room(laid: &LaidSheet) -> bool {
    laid.width * 4.0 >= laid.length && laid.length * 4.0 >= laid.width
}

fn title(group: &[(u32, &LaidSheet)], context: Context<'_>) -> String {
    let (Some((_, laid)), Some((_, last))) = (group.first(), group.last()) else {
        return String::new();
    };
    let name = laid.name.as_deref().or(laid.stock.as_deref());
    let which = match group.len() {
        1 => format!("Sheet {}", laid.number),
        _ => format!("Sheets {} to {}, alike", laid.number, last.number),
    };
    let size = size(laid.length, laid.width, context);
    format!("{which}: {}, {size}", name.unwrap_or_default())
}

/// A length by a width.
pub(super) fn size(length: Mm, width: Mm, context: Context<'_>) -> String {
    let length = show::bare(length, context.unit());
    format!("{length} × {}", context.length(width))
}

fn left(laid: &LaidSheet, context: Context<'_>) -> Html {
    let kept: Vec<_> = laid
        .offcuts
        .iter()
        .filter(|offcut| offcut.keep)
        .map(|offcut| size(offcut.place.length, offcut.place.width, context))
        .collect();
    let keep = if kept.is_empty() {
        "no off-cut worth keeping".to_owned()
    } else {
        format!("keep {}", kept.join("; "))
    };
    let parts = numbered(laid).join(", ");
    html! {
        <>
            <p>{ parts }</p>
            <p class="quiet">{ format!("{} used; {keep}.", percent(laid.share)) }</p>
        </>
    }
}

/// The parts on a sheet, each number once: `2 × part 3 Drawer back`.
fn numbered(laid: &LaidSheet) -> Vec<String> {
    let mut seen: Vec<(&LaidPart, usize)> = Vec::new();
    for part in &laid.parts {
        match seen.iter_mut().find(|(other, _)| other.part == part.part) {
            Some((_, count)) => *count += 1,
            None => seen.push((part, 1)),
        }
    }
    let said = |(part, count): (&LaidPart, usize)| {
        let name = part.name.as_deref().unwrap_or_default();
        let says = format!("{count} × part {} {name}", part.number);
        says.trim_end().to_owned()
    };
    seen.into_iter().map(said).collect()
}
