//! Every part worked out for its stock.

use serde::Serialize;

use super::dimension::{self, Typed};
use super::measures::{Known, Measures};
use super::read::{self, List, Part, Stock};
use super::request::PartsListRequest;
use crate::check::Checker;
use crate::limits::{self, Limit};
use crate::message;
use crate::problem::{Note, Problem, Severity};
use crate::units::Mm;

/// Parts, worked out.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct PartsListPlan {
    /// The parts, in the order given.
    pub parts: Vec<PartRow>,
    /// What of each stock is needed, in the order given.
    pub stocks: Vec<StockTotal>,
}

/// One kind of part.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct PartRow {
    /// Its number, no other part's.
    pub number: u32,
    /// What it is called.
    pub name: String,
    /// How many are needed.
    pub count: u32,
    /// Name of its stock.
    pub stock: String,
    /// Thickness of its stock as measured, mm.
    pub thickness: Mm,
    /// Length, along the grain.
    pub length: Dimension,
    /// Width, across the grain.
    pub width: Dimension,
    /// What it is cut larger by on each side, to be trimmed, mm.
    pub trim: Mm,
    /// What became of that when the stock was measured again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub trim_change: Option<Change>,
    /// Area of one face of one piece, finished, mm².
    pub area: f64,
    /// Whether it may be turned across the grain.
    pub may_turn: bool,
    /// Whether it is cut later, to fit.
    pub later: bool,
}

impl PartRow {
    /// Whether it is cut otherwise than before its stock was measured again.
    fn has_changed(&self) -> bool {
        let changes = [self.length.change, self.width.change, self.trim_change];
        changes.iter().any(Option::is_some)
    }
}

/// A length or a width.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Dimension {
    /// As it ends up, mm.
    pub finished: Mm,
    /// As it is cut before trimming, mm: the allowance more on both sides.
    pub rough: Mm,
    /// What became of it when the stock was measured again.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub change: Option<Change>,
}

/// A change of a dimension or an allowance with its stock's thickness.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Change {
    /// What it was, mm, of a dimension finished.
    pub was: Mm,
    /// What it has grown by, mm; negative where it has shrunk.
    pub by: Mm,
}

/// What is needed of one stock.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct StockTotal {
    /// Its name.
    pub name: String,
    /// Its thickness as measured, mm.
    pub thickness: Mm,
    /// Kinds of parts cut from it.
    pub parts: u32,
    /// Pieces cut from it.
    pub pieces: u32,
    /// Area of all finished pieces, mm².
    pub area: f64,
    /// Area of all pieces before trimming, mm², without kerfs and offcuts.
    pub rough_area: f64,
}

/// What can be said of a list that may still have problems.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct PartsDraft {
    /// One for each part, in the order given.
    pub rows: Vec<DraftRow>,
    /// What the parts without problems need of each stock without problems.
    pub stocks: Vec<StockTotal>,
    /// What to know.
    pub notes: Vec<Note>,
    /// Every problem of the list.
    pub problems: Vec<Problem>,
}

/// What can be said of one part.
#[derive(Clone, Debug, PartialEq)]
pub struct DraftRow {
    /// Its number.
    pub number: u32,
    /// Its length, where that has no problem; rough only as far as the trim is known.
    pub length: Option<Dimension>,
    /// Its width, likewise.
    pub width: Option<Dimension>,
    /// What became of its trim when the stock was measured again.
    pub trim_change: Option<Change>,
    /// All of it, where nothing has a problem.
    pub part: Option<PartRow>,
}

pub(super) fn draft(request: &PartsListRequest) -> PartsDraft {
    let mut problems = Vec::new();
    let mut check = Checker::new(&mut problems);
    let list = read::list(request, &mut check);
    let shelves = shelves(&list, &mut check);
    let names = list.measures.names();
    let nowhere = Shelf::of(None, &list.measures);
    let mut check_parts = check.at("parts");
    let rows: Vec<DraftRow> = list
        .parts
        .iter()
        .enumerate()
        .map(|(i, part)| {
            let shelf = part.stock.and_then(|place| shelves.get(place));
            row(
                part,
                shelf.unwrap_or(&nowhere),
                &names,
                &mut check_parts.at(&i.to_string()),
            )
        })
        .collect();
    let parts = || rows.iter().filter_map(|row| row.part.as_ref());
    let stocks = list.stocks.iter().flatten();
    PartsDraft {
        stocks: stocks.map(|stock| total(stock, parts())).collect(),
        notes: notes(&rows),
        rows,
        problems,
    }
}

/// A stock with every measure as it is for it, and as it was.
struct Shelf<'a> {
    stock: Option<&'a Stock<'a>>,
    known: Known<'a>,
    former: Option<Known<'a>>,
}

impl<'a> Shelf<'a> {
    fn of(stock: Option<&'a Stock<'a>>, measures: &'a Measures<'a>) -> Self {
        let former = stock.and_then(|stock| stock.former);
        Self {
            stock,
            known: measures.of(stock.map(|stock| stock.thickness)),
            former: former.map(|former| measures.of(Some(former))),
        }
    }
}

/// All stocks, and the problems of measures, each once.
fn shelves<'a>(list: &'a List<'a>, check: &mut Checker<'_>) -> Vec<Shelf<'a>> {
    let mut check = check.at("measures");
    let mut said = Vec::new();
    list.measures.of(None).refuse(&mut said, &mut check);
    let shelf = |stock: &'a Option<Stock<'a>>| {
        let shelf = Shelf::of(stock.as_ref(), &list.measures);
        shelf.known.refuse(&mut said, &mut check);
        shelf
    };
    list.stocks.iter().map(shelf).collect()
}

fn row(part: &Part<'_>, shelf: &Shelf<'_>, names: &[&str], check: &mut Checker<'_>) -> DraftRow {
    let trim = match &part.trim {
        Some(Some(typed)) => length("trim", typed, shelf, &limits::TRIM, names, check),
        Some(None) => Some(Mm::ZERO),
        None => None,
    };
    let trim_change = match (&part.trim, trim) {
        (Some(Some(typed)), Some(now)) => change(typed, now, shelf),
        _ => None,
    };
    let mut dimension = |field: &str, typed: &Option<Typed>| {
        let typed = typed.as_ref()?;
        let finished = length(field, typed, shelf, &limits::PART, names, check)?;
        Some(Dimension {
            finished,
            rough: finished + trim.unwrap_or_default() * 2.0,
            change: change(typed, finished, shelf),
        })
    };
    let length = dimension("length", &part.length);
    let width = dimension("width", &part.width);
    let whole = whole(part, shelf.stock, length, width, trim);
    DraftRow {
        number: part.number,
        length,
        width,
        trim_change,
        part: whole.map(|whole| PartRow {
            trim_change,
            ..whole
        }),
    }
}

fn length(
    field: &str,
    typed: &Typed,
    shelf: &Shelf<'_>,
    limit: &Limit,
    names: &[&str],
    check: &mut Checker<'_>,
) -> Option<Mm> {
    match shelf.known.length(typed) {
        Ok(length) => check.length(field, &length.mm().into(), limit),
        Err(trouble) => {
            dimension::refuse(field, &trouble, names, check);
            None
        }
    }
}

fn change(typed: &Typed, now: Mm, shelf: &Shelf<'_>) -> Option<Change> {
    let was = shelf.former.as_ref()?.length(typed).ok()?;
    (!was.is_same(now)).then(|| Change { was, by: now - was })
}

fn whole(
    part: &Part<'_>,
    stock: Option<&Stock<'_>>,
    length: Option<Dimension>,
    width: Option<Dimension>,
    trim: Option<Mm>,
) -> Option<PartRow> {
    let (stock, length, width) = (stock?, length?, width?);
    Some(PartRow {
        number: part.number,
        name: part.name?.to_owned(),
        count: part.count?,
        stock: stock.name.to_owned(),
        thickness: stock.thickness,
        length,
        width,
        trim: trim?,
        trim_change: None,
        area: length.finished.mm() * width.finished.mm(),
        may_turn: part.may_turn?,
        later: part.later?,
    })
}

fn total<'a>(stock: &Stock<'_>, parts: impl Iterator<Item = &'a PartRow>) -> StockTotal {
    let mut total = StockTotal {
        name: stock.name.to_owned(),
        thickness: stock.thickness,
        parts: 0,
        pieces: 0,
        area: 0.0,
        rough_area: 0.0,
    };
    for part in parts.filter(|part| part.stock == stock.name) {
        let pieces = f64::from(part.count);
        total.parts += 1;
        total.pieces += part.count;
        total.area += part.area * pieces;
        total.rough_area += part.length.rough.mm() * part.width.rough.mm() * pieces;
    }
    total
}

fn notes(rows: &[DraftRow]) -> Vec<Note> {
    let parts = || rows.iter().filter_map(|row| row.part.as_ref());
    let count = |is: fn(&PartRow) -> bool| parts().filter(|part| is(part)).count();
    let changed = count(PartRow::has_changed);
    let later = count(|part| part.later);
    let mut notes = Vec::new();
    if changed > 0 {
        let message = message![
            "Parts that change with the stock as measured: ",
            changed,
            ". What is cut already has the former size."
        ];
        notes.push(Note::new("thickness-changed", Severity::Warning, message));
    }
    if later > 0 {
        let message = message!["Parts cut later, to fit: ", later, "."];
        notes.push(Note::new("cut-later", Severity::Info, message));
    }
    notes
}
