//! The parts laid out on sheets.

use std::rc::Rc;

use notchwright_core::given::Given;
use notchwright_core::message;
use notchwright_core::parts::{PartRow, PartsDraft};
use notchwright_core::problem::{Code, Problem};
use notchwright_core::sheet::{
    PartRequest, RoughRequest, SearchReached, SearchRequest, SheetLayoutPlan, SheetLayoutRequest,
    SheetRequest, SidesRequest, SizeRequest, sheet_layout, sheet_search,
};

use super::Draft;
use super::parts::stock_name;
use crate::answer::FieldProblem;
use crate::answer::tools::{MakingAnswer, SheetAnswer};
use crate::effect::Asked;
use crate::keep::saved;
use crate::state::fields::{Known, cutting, part, sheet};
use crate::state::{CutterField, Field, Group, Mark, Row, Work};

/// What follows from `work`: what was found before, as long as that is for the same request.
pub(super) fn answer(
    work: &Work,
    parts: &PartsDraft,
    before: Option<&SheetAnswer>,
    problems: &mut Vec<FieldProblem>,
) -> SheetAnswer {
    let mut draft = Draft::new(work);
    let sheets = sheets(&mut draft);
    let (laid, without_sheets) = laid(&mut draft, parts, &sheets);
    let mut answer = before.cloned().unwrap_or_default();
    answer.can_search = !sheets.is_empty() && !laid.is_empty();
    answer.without_sheets = without_sheets;
    let each = |sheets: Vec<SheetRequest>| sheets.into_iter().map(Given::Value).collect::<Vec<_>>();
    let request = SheetLayoutRequest {
        sheets: each(sheets).into(),
        parts: laid
            .into_iter()
            .map(Given::Value)
            .collect::<Vec<_>>()
            .into(),
        kerf: kerf(&mut draft),
        rough: rough(&mut draft),
        least_offcut: least(&mut draft),
        search: Given::Missing,
    };
    if *answer.request != request {
        answer.request = Rc::new(request);
        answer.reached = None;
        answer.refused = Vec::new();
    }
    settle(draft, &mut answer, problems);
    answer
}

/// What is missing is still to be typed; everything else is a problem beside its field.
fn settle(draft: Draft<'_>, answer: &mut SheetAnswer, problems: &mut Vec<FieldProblem>) {
    let is_missing = |problem: &Problem| problem.code == Code::Missing;
    let refused = answer.refused.iter().cloned();
    let (missing, refused): (Vec<_>, Vec<_>) = refused.partition(is_missing);
    let missing = missing.iter();
    let layout = &mut answer.layout;
    layout.needed = missing
        .filter_map(|problem| draft.blank(&problem.field))
        .collect();
    let found = draft.finish(refused);
    layout.is_current = answer.reached.is_some() && answer.refused.is_empty() && found.is_empty();
    // The chosen cutter's kerf is not beside these fields: what is wrong with it is said of all.
    let is_here = |found: &FieldProblem| matches!(found.field, Some(Field::Making(_)));
    let (of_fields, others): (Vec<_>, Vec<_>) = found.into_iter().partition(is_here);
    let said = |other: FieldProblem| match other.field {
        Some(_) => message!["In the shop, the chosen cutter's kerf: "].and(other.message),
        None => other.message,
    };
    layout.refused = others.into_iter().map(said).collect();
    problems.extend(of_fields);
}

/// Goes on searching for so many rounds, here and now.
pub(crate) fn search(work: &Work, before: &MakingAnswer, rounds: u32) -> MakingAnswer {
    let found = sheet_search(&request(&before.sheet, rounds));
    take(work, before, found)
}

/// Goes on with the search of a saved state, away from the page. Nothing where there is none to go on with, or the
/// request is refused: the page says why.
#[inline(never)]
pub(crate) fn search_beside(state: &str, asked: &Asked) -> Option<SearchReached> {
    let state = saved::restore(state).ok()?.state;
    let mut sheet = super::answer(&state.work, None).sheet;
    sheet.reached = (asked.from > 0).then(|| SearchReached {
        steps: asked.from,
        done: false,
        best: asked.best.clone(),
        proven: false,
    });
    sheet_search(&request(&sheet, asked.rounds)).ok()
}

/// Goes on with what a search found.
pub(crate) fn take(
    work: &Work,
    before: &MakingAnswer,
    found: Result<SearchReached, Vec<Problem>>,
) -> MakingAnswer {
    let mut making = before.clone();
    let sheet = &mut making.sheet;
    let is_news = match found {
        Ok(reached) => {
            let is_news = sheet.reached.as_ref().is_none_or(|before| {
                (&before.best, before.done, before.proven)
                    != (&reached.best, reached.done, reached.proven)
            });
            sheet.reached = Some(reached);
            is_news
        }
        Err(refused) => {
            sheet.refused = refused;
            true
        }
    };
    if is_news {
        lay_out(sheet);
        return super::answer(work, Some(&making));
    }
    making
}

/// The plan of what was found.
fn lay_out(sheet: &mut SheetAnswer) {
    let Some(reached) = &sheet.reached else {
        return;
    };
    let rounds = reached.steps;
    match sheet_layout(&request(sheet, 0)) {
        Ok(planned) => {
            let layout = mark(&planned.plan);
            sheet.mark = Mark { layout, rounds };
            sheet.layout.plan = Some(Rc::new(planned));
            sheet.refused = Vec::new();
        }
        Err(refused) => sheet.refused = refused,
    }
}

fn request(sheet: &SheetAnswer, rounds: u32) -> SheetLayoutRequest {
    let from = |reached: &SearchReached| SearchRequest {
        from: f64::from(reached.steps).into(),
        best: reached.best.clone().into(),
        ..SearchRequest::default()
    };
    let reached = sheet.reached.as_ref();
    SheetLayoutRequest {
        search: SearchRequest {
            steps: f64::from(rounds).into(),
            ..reached.map_or_else(SearchRequest::default, from)
        }
        .into(),
        ..(*sheet.request).clone()
    }
}

/// A number that another layout hardly has: the FNV-1a hash, 32 bits, of every cut and every part.
fn mark(plan: &SheetLayoutPlan) -> u32 {
    let mut hash = 0x811c_9dc5_u32;
    let mut add = |bits: u64| {
        for byte in bits.to_le_bytes() {
            hash = (hash ^ u32::from(byte)).wrapping_mul(0x0100_0193);
        }
    };
    for sheet in &plan.sheets {
        add(sheet.kind as u64);
        for cut in &sheet.cuts {
            add(cut.piece as u64);
            add(cut.kind as u64);
            add(cut.fence.mm().to_bits());
        }
        for part in &sheet.parts {
            add(u64::from(part.number));
            add(part.place.x.mm().to_bits());
            add(part.place.y.mm().to_bits());
        }
    }
    hash
}

fn path(list: &str, place: usize, field: Known) -> std::borrow::Cow<'static, str> {
    format!("{list}.{place}.{}", field.name()).into()
}

fn is(row: &Row, field: Known, word: &str) -> bool {
    row.form.text(field.name()) == word
}

fn sheets(draft: &mut Draft<'_>) -> Vec<SheetRequest> {
    let rows = draft.work().job.making.rows(Group::Sheets);
    let is_weighed = is_rough(draft) && !text(draft, cutting::HEAVIEST).is_empty();
    let rows = rows.iter().enumerate();
    rows.map(|(place, row)| {
        let at = |field| (path("sheets", place, field), field.of(row.id));
        let mut length = |field| {
            let (path, field) = at(field);
            draft.length_at(path, field)
        };
        let (long, wide, trim) = (
            length(sheet::LENGTH),
            length(sheet::WIDTH),
            length(sheet::EDGE_TRIM),
        );
        let mut number = |field| {
            let (path, field) = at(field);
            draft.number_at(path, field)
        };
        let (quantity, price) = (number(sheet::QUANTITY), number(sheet::PRICE));
        let mass = if is_weighed {
            number(sheet::MASS)
        } else {
            Given::Missing
        };
        let (name_path, name) = at(sheet::NAME);
        let (stock_path, of) = at(sheet::STOCK);
        let name = draft.text_at(name_path, name);
        let _ = draft.text_at(stock_path, of);
        SheetRequest {
            name,
            stock: stock_name(draft.work(), row.form.text(sheet::STOCK.name())),
            length: long,
            width: wide,
            thickness: Given::Missing,
            grain: match row.form.text(sheet::GRAIN.name()) {
                "" => Given::Missing,
                word => word.to_owned().into(),
            },
            edge_trim: trim_of(&trim),
            quantity,
            price,
            mass,
            offcut: Given::Value(is(row, sheet::OFFCUT, "yes")),
        }
    })
    .collect()
}

fn trim_of(trim: &Given<f64>) -> Given<SidesRequest> {
    match trim {
        Given::Value(trim) => Given::Value(SidesRequest::All(*trim)),
        _ => Given::Missing,
    }
}

/// The parts that there are sheets for, and the stocks of those that there are none for.
fn laid(
    draft: &mut Draft<'_>,
    parts: &PartsDraft,
    sheets: &[SheetRequest],
) -> (Vec<PartRequest>, Vec<String>) {
    let rows = draft.work().job.making.rows(Group::Parts);
    let (mut laid, mut without) = (Vec::new(), Vec::new());
    for (row, found) in rows.iter().zip(&parts.rows) {
        let Some(found) = &found.part else { continue };
        let is_own = |sheet: &SheetRequest| sheet.stock == Given::Value(found.stock.clone());
        if sheets.iter().any(is_own) {
            // They are known already: this is where a problem with them belongs.
            for field in [part::LENGTH, part::WIDTH] {
                let _ = draft.sum_at(path("parts", laid.len(), field), field.of(row.id));
            }
            laid.push(piece(found));
        } else if !without.contains(&found.stock) {
            without.push(found.stock.clone());
        }
    }
    (laid, without)
}

fn piece(part: &PartRow) -> PartRequest {
    PartRequest {
        name: part.name.clone().into(),
        number: f64::from(part.number).into(),
        count: f64::from(part.count).into(),
        length: part.length.finished.mm().into(),
        width: part.width.finished.mm().into(),
        may_turn: part.may_turn.into(),
        trim: Given::Value(SidesRequest::All(part.trim.mm())),
        stock: part.stock.clone().into(),
        later: part.later.into(),
    }
}

/// The chosen cutter's where none is given.
fn kerf(draft: &mut Draft<'_>) -> Given<f64> {
    let chosen = draft.work().shop.cutters.chosen().map(|cutter| cutter.id);
    match chosen {
        Some(id) if text(draft, cutting::KERF).is_empty() => {
            draft.length("kerf", Field::Cutter(id, CutterField::Kerf))
        }
        _ => draft.length("kerf", cutting::KERF.alone()),
    }
}

fn text<'a>(draft: &Draft<'a>, field: Known) -> &'a str {
    draft.work().job.making.cutting.text(field.name()).trim()
}

fn is_rough(draft: &Draft<'_>) -> bool {
    text(draft, cutting::ROUGH) == "on"
}

fn rough(draft: &mut Draft<'_>) -> Given<RoughRequest> {
    if !is_rough(draft) {
        return Given::Missing;
    }
    RoughRequest {
        longest: draft.length("rough.longest", cutting::LONGEST.alone()),
        widest: draft.length("rough.widest", cutting::WIDEST.alone()),
        heaviest: draft.number("rough.heaviest", cutting::HEAVIEST.alone()),
        allowance: draft.length("rough.allowance", cutting::ALLOWANCE.alone()),
        kerf: draft.length("rough.kerf", cutting::ROUGH_KERF.alone()),
    }
    .into()
}

fn least(draft: &mut Draft<'_>) -> Given<SizeRequest> {
    let length = draft.length("leastOffcut.length", cutting::LEAST_LENGTH.alone());
    let width = draft.length("leastOffcut.width", cutting::LEAST_WIDTH.alone());
    if length.is_missing() && width.is_missing() {
        return Given::Missing;
    }
    SizeRequest { length, width }.into()
}
