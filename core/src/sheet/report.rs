//! From a search to a plan.

use super::cuts::{self, Cutting, Fate, Piece};
use super::job::{Axis, Budget, Job, Kind, Part, Size, mm};
use super::plan::{
    CutStep, LaidPart, LaidSheet, Offcut, PieceKind, Place, SearchReached, SheetLayoutPlan, Side,
    StockBound, Yielded,
};
use super::search::{Laid, Search};
use super::sequence::{self, Turn};
use super::written;

pub(super) fn plan(search: &Search<'_>) -> SheetLayoutPlan {
    let job = search.job;
    let mut sheets = Vec::new();
    for laid in search.laid() {
        if let Some(kind) = job.kinds.get(laid.kind) {
            sheets.push(sheet(job, kind, laid, sheets.len() as u32 + 1));
        }
    }
    let kind = |sheet: &LaidSheet| job.kinds.get(sheet.kind);
    let wholes = || sheets.iter().filter_map(kind).filter(|kind| !kind.offcut);
    let whole_sheets = wholes().map(|_| 1).sum();
    let area: f64 = sheets
        .iter()
        .filter_map(kind)
        .map(|kind| kind.size.area() as f64)
        .sum();
    let wood: f64 = sheets.iter().map(|sheet| wood(job, sheet)).sum();
    SheetLayoutPlan {
        whole_sheets,
        offcuts_used: sheets.len() as u32 - whole_sheets,
        used_length: sheets
            .last()
            .map(|sheet| sheet.used_length)
            .unwrap_or_default(),
        settings: sheets.iter().map(|sheet| sheet.settings).sum(),
        share: share(wood, area),
        // The sum of no sheets is −0.
        cost: wholes()
            .map(|kind| kind.price)
            .sum::<Option<f64>>()
            .map(|cost| cost + 0.0),
        bounds: bounds(search),
        search: reached(search),
        job: Job {
            budget: Budget::default(),
            ..job.clone()
        },
        sheets,
    }
}

pub(super) fn reached(search: &Search<'_>) -> SearchReached {
    SearchReached {
        steps: search.rounds(),
        done: search.is_done(),
        best: written::write(search),
        proven: search.is_proven(),
    }
}

fn share(wood: f64, area: f64) -> f64 {
    if area > 0.0 { wood / area } else { 0.0 }
}

fn wood(job: &Job, sheet: &LaidSheet) -> f64 {
    let parts = sheet
        .parts
        .iter()
        .filter_map(|laid| job.parts.get(laid.part));
    parts.map(|part| part.size.area() as f64).sum()
}

fn bounds(search: &Search<'_>) -> Vec<StockBound> {
    let of_stock = |number: usize| {
        let kind = search.job.kinds.iter().find(|kind| kind.group == number);
        kind.and_then(|kind| kind.stock.clone())
    };
    let known = search
        .groups
        .iter()
        .filter_map(|group| Some((group.number, group.bound?)));
    known
        .map(|(number, bound)| StockBound {
            stock: of_stock(number),
            sheets: bound.sheets,
            used_length: mm(bound.used),
        })
        .collect()
}

fn place(piece: &Piece) -> Place {
    Place {
        x: mm(piece.x),
        y: mm(piece.y),
        length: mm(piece.size.x),
        width: mm(piece.size.y),
    }
}

fn sheet(job: &Job, kind: &Kind, laid: &Laid, number: u32) -> LaidSheet {
    let cutting = cuts::cutting(job, kind, &laid.block);
    let turns = sequence::sequence(&cutting, kind.grain);
    let offcuts = cutting
        .pieces
        .iter()
        .filter(|piece| piece.fate == Fate::Offcut);
    let mut sheet = LaidSheet {
        number,
        kind: laid.kind,
        name: kind.name.clone(),
        stock: kind.stock.clone(),
        thickness: kind.thickness,
        length: mm(kind.size.x),
        width: mm(kind.size.y),
        parts: cutting
            .pieces
            .iter()
            .filter_map(|piece| part(job, piece))
            .collect(),
        offcuts: offcuts
            .map(|piece| Offcut {
                place: place(piece),
                keep: job.worth_keeping(piece.size),
            })
            .collect(),
        cuts: steps(job, &cutting, &turns),
        settings: sequence::settings(&turns),
        used_length: mm(laid.block.size.x),
        share: 0.0,
        cutting,
    };
    sheet.share = share(wood(job, &sheet), kind.size.area() as f64);
    sheet
}

fn part(job: &Job, piece: &Piece) -> Option<LaidPart> {
    let Fate::Part {
        part: index,
        turned,
    } = piece.fate
    else {
        return None;
    };
    let part = job.parts.get(index)?;
    Some(LaidPart {
        number: part.number,
        part: index,
        name: part.name.clone(),
        place: place(piece),
        turned,
        later: part.later,
    })
}

fn steps(job: &Job, cutting: &Cutting, turns: &[Turn]) -> Vec<CutStep> {
    let yielded = |index: usize| {
        let piece = cutting.pieces.get(index)?;
        let part = match piece.fate {
            Fate::Part { part, .. } => job.parts.get(part),
            _ => None,
        };
        Some(Yielded {
            piece: index,
            place: place(piece),
            is: match piece.fate {
                Fate::Part { .. } => PieceKind::Part,
                Fate::Offcut => PieceKind::Offcut,
                Fate::Trimming => PieceKind::Trimming,
                Fate::Cut(_) => PieceKind::Piece,
            },
            part: part.map(|part: &Part| part.number),
        })
    };
    let step = |(step, turn): (u32, &Turn)| CutStep {
        step,
        kind: turn.cut.kind.into(),
        piece: turn.piece,
        place: cutting.pieces.get(turn.piece).map_or_else(nowhere, place),
        across: match turn.cut.axis {
            Axis::X => Side::Length,
            Axis::Y => Side::Width,
        },
        fence: mm(turn.cut.fence),
        same_setting: turn.same_setting,
        later: turn.cut.later,
        yields: [Some(turn.cut.kept), turn.cut.rest]
            .into_iter()
            .flatten()
            .filter_map(yielded)
            .collect(),
    };
    (1..).zip(turns).map(step).collect()
}

fn nowhere() -> Place {
    place(&Piece {
        x: 0,
        y: 0,
        size: Size::default(),
        fate: Fate::Offcut,
    })
}
