//! What a sheet layout is answered with.

use serde::Serialize;

use super::cuts::{CutKind, Cutting};
use super::job::Job;
use crate::units::Mm;

/// Sheets laid out, and how to cut them.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct SheetLayoutPlan {
    /// Every sheet, in the order of cutting: off-cuts on hand first, the sheet that least is used of last.
    pub sheets: Vec<LaidSheet>,
    /// Whole sheets used.
    pub whole_sheets: u32,
    /// Off-cuts on hand that are used.
    pub offcuts_used: u32,
    /// Length used of the last sheet, mm, from its trimmed edge.
    pub used_length: Mm,
    /// Settings of the fence for all sheets.
    pub settings: u32,
    /// Share of the sheets' area that becomes parts, from 0 to 1.
    pub share: f64,
    /// Price of the whole sheets, where each has one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub cost: Option<f64>,
    /// What no layout can do without, stock after stock, where all sheets of the stock are of one kind.
    pub bounds: Vec<StockBound>,
    /// How far the search has come.
    pub search: SearchReached,
    /// What it was made from, for the drawings.
    #[serde(skip)]
    pub(crate) job: Job,
}

/// One sheet.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct LaidSheet {
    /// Its number, from 1.
    pub number: u32,
    /// Which of the request's sheets it is, from 0.
    pub kind: usize,
    /// What it is called.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Its stock.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock: Option<String>,
    /// Its thickness, mm.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub thickness: Option<Mm>,
    /// Its length, mm.
    pub length: Mm,
    /// Its width, mm.
    pub width: Mm,
    /// Its parts.
    pub parts: Vec<LaidPart>,
    /// What is left over.
    pub offcuts: Vec<Offcut>,
    /// Every cut, in the order of cutting.
    pub cuts: Vec<CutStep>,
    /// Settings of the fence.
    pub settings: u32,
    /// Length used, mm, from the trimmed edge.
    pub used_length: Mm,
    /// Share of its area that becomes parts, from 0 to 1.
    pub share: f64,
    /// Everything that it is parted into, for the drawings.
    #[serde(skip)]
    pub(crate) cutting: Cutting,
}

/// An upright rectangle on a sheet, from the corner where its length and its width begin.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Place {
    /// Along the sheet's length, mm.
    pub x: Mm,
    /// Along the sheet's width, mm.
    pub y: Mm,
    /// Size along the sheet's length, mm.
    pub length: Mm,
    /// Size along the sheet's width, mm.
    pub width: Mm,
}

/// A part in its place, its allowances included.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct LaidPart {
    /// Its number in the list.
    pub number: u32,
    /// Which of the request's parts it is, from 0.
    pub part: usize,
    /// What it is called.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub name: Option<String>,
    /// Where it lies.
    pub place: Place,
    /// Whether its length lies across the grain, or across the length of a sheet without grain.
    pub turned: bool,
    /// Whether it is cut later.
    pub later: bool,
}

/// What is left over.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Offcut {
    /// Where it lies.
    pub place: Place,
    /// Whether it is worth keeping.
    pub keep: bool,
}

/// One cut.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct CutStep {
    /// Its number on this sheet, from 1.
    pub step: u32,
    /// How it is made.
    pub kind: StepKind,
    /// The piece in hand: 0 is the sheet, others were yielded by earlier cuts.
    pub piece: usize,
    /// Where that piece lies on the sheet.
    pub place: Place,
    /// Which of the piece's sides gets shorter: along the sheet's `length` or its `width`.
    pub across: Side,
    /// From the fence, or from the stop for crosscuts, to the blade's nearer side, mm; for a rough cut from the
    /// piece's edge.
    pub fence: Mm,
    /// Whether the fence stays where it was for the cut before.
    pub same_setting: bool,
    /// Whether it is left for later, with the parts that are cut later.
    pub later: bool,
    /// What comes of it: first what was against the fence, then what falls off, unless the blade takes all of it.
    pub yields: Vec<Yielded>,
}

/// Kinds of cuts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum StepKind {
    /// By hand, so that a person can lift what comes to the table saw.
    Rough,
    /// Takes a sheet's edge off, or the allowance of a rough cut.
    Trim,
    /// Along the grain.
    Rip,
    /// Across the grain.
    Crosscut,
}

impl From<CutKind> for StepKind {
    fn from(kind: CutKind) -> Self {
        match kind {
            CutKind::Rough => Self::Rough,
            CutKind::Trim => Self::Trim,
            CutKind::Rip => Self::Rip,
            CutKind::Crosscut => Self::Crosscut,
        }
    }
}

/// One of a sheet's two directions.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum Side {
    /// Along its length.
    Length,
    /// Along its width.
    Width,
}

/// A piece that comes of a cut.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct Yielded {
    /// Its number on this sheet.
    pub piece: usize,
    /// Where it lies on the sheet.
    pub place: Place,
    /// What it is.
    pub is: PieceKind,
    /// Number of the part in its list, where it is one.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub part: Option<u32>,
}

/// What a piece is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize)]
#[serde(rename_all = "lowercase")]
pub enum PieceKind {
    /// A part, done.
    Part,
    /// To be cut once more.
    Piece,
    /// Left over.
    Offcut,
    /// Trimmed off an edge.
    Trimming,
}

/// What no layout of one stock can do without.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct StockBound {
    /// The stock.
    #[serde(skip_serializing_if = "Option::is_none")]
    pub stock: Option<String>,
    /// Fewest sheets.
    pub sheets: u32,
    /// Least length of the last one, mm.
    pub used_length: Mm,
}

/// How far a search has come.
#[derive(Clone, Debug, PartialEq, Serialize)]
#[serde(rename_all = "camelCase")]
pub struct SearchReached {
    /// Rounds made so far, those before `from` included: the next request's `from`.
    pub steps: u32,
    /// Whether going on could change nothing.
    pub done: bool,
    /// The best layout, to go on from: the next request's `best`.
    pub best: String,
    /// Whether no layout uses fewer sheets, or less of the last one, in any stock.
    pub proven: bool,
}
