//! Boards, numbers and passes as these pictures share them.

use super::plane::{Place, View, mm};
use super::visible::share_inside;
use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::{Sheet, hatch, rectangle};
use crate::drawing::sled::labels::text_width;
use crate::dryfit::slanted::{Bench, passes};
use crate::message::Message;
use crate::stop::{Board, Set};
use crate::units::Mm;

/// Margin at either side, in type heights.
pub(super) const MARGIN: f64 = 0.7;
/// Width of every picture without its margins, in type heights: 365 px show type of 17 px.
pub(super) const ACROSS: f64 = 20.0;

/// A sheet for boards so wide, and what is about so high besides its words.
pub(super) fn sheet(width: Mm, down: Mm) -> Sheet {
    Sheet::new(width * (21.0 / ACROSS), down)
}

/// The role of a board's wood.
pub(super) fn wood(board: Board) -> Role {
    match board {
        Board::A => Role::BoardA,
        Board::B => Role::BoardB,
    }
}

/// Where the boards lie across a sheet: narrow ones in the middle of what the words need.
#[derive(Clone, Copy, Debug)]
pub(super) struct Columns {
    /// The boards' reference edge.
    pub(super) left: Mm,
    /// Their other edge.
    pub(super) right: Mm,
    /// The drawing's width.
    pub(super) across: Mm,
    margin: Mm,
}

impl Columns {
    pub(super) fn new(sheet: &Sheet, width: Mm) -> Self {
        let (margin, least) = (sheet.ems(MARGIN), sheet.ems(ACROSS));
        let across = width.max(least);
        let left = margin + (across - width) / 2.0;
        Self {
            left,
            right: left + width,
            across: across + margin * 2.0,
            margin,
        }
    }

    /// The least and the greatest place of words.
    pub(super) fn limits(&self) -> (Mm, Mm) {
        (self.margin, self.across - self.margin)
    }

    /// Writes words with their middle at a place, or as near to it as they stay within the drawing.
    pub(super) fn words(&self, sheet: &mut Sheet, role: Role, at: Point, text: Message) {
        words_between(sheet, role, at, self.limits(), text);
    }
}

/// Writes words with their middle at a place, or as near to it as they stay between a least and a greatest;
/// returns where they end.
pub(super) fn words_between(
    sheet: &mut Sheet,
    role: Role,
    at: Point,
    (least, most): (Mm, Mm),
    text: Message,
) -> Mm {
    let half = text_width(&text, sheet.type_size) / 2.0;
    let x = at.x.min(most - half).max(least + half);
    sheet.text(role, Point::new(x, at.y), Anchor::Middle, text);
    x + half
}

/// What each pass on a board takes, if so many strips can be told apart over this width.
pub(super) fn tellable_passes(sets: &[Set], board: Board, bench: &Bench) -> Vec<Vec<Place>> {
    const MOST: usize = 24;
    let sets = || sets.iter().filter(|set| set.board == board);
    let is_wide = sets().all(|set| set.kerf > bench.width * 0.018);
    if is_wide && sets().map(|set| set.stops.len()).sum::<usize>() <= MOST {
        sets().flat_map(|set| passes(set, bench)).collect()
    } else {
        Vec::new()
    }
}

/// Grain along a board's face between two depths, spread by the golden section, which never looks regular.
pub(super) fn grain(view: &View, from: f64) -> Vec<Vec<Point>> {
    const LINES: u32 = 23;
    const GOLDEN: f64 = 0.618_033_988_749_894_8;
    let window = view.window;
    let (width, body) = (window.right - window.left, window.deep - from);
    let line = |line: u32| {
        let share = (f64::from(line) * GOLDEN).fract();
        let x = window.left + width * (0.02 + 0.96 * f64::from(line) / f64::from(LINES));
        let lean = width * 0.006 * (share - 0.5);
        let near = from + body * (0.12 + 0.5 * (share * 7.0).fract());
        let places = [
            (x + lean, window.deep),
            (x, (window.deep + near) / 2.0),
            (x - lean / 2.0, near),
        ];
        places.map(|place| view.place(place)).to_vec()
    };
    (0..LINES).map(line).collect()
}

/// Slanting lines across a convex area.
pub(in crate::drawing) fn hatched(corners: &[Point], apart: Mm) -> Vec<Vec<Point>> {
    let places: Vec<Place> = corners.iter().map(|at| (at.x.mm(), at.y.mm())).collect();
    let bounds = [
        places.iter().map(|at| at.0).fold(f64::INFINITY, f64::min),
        places.iter().map(|at| at.1).fold(f64::INFINITY, f64::min),
        places
            .iter()
            .map(|at| at.0)
            .fold(f64::NEG_INFINITY, f64::max),
        places
            .iter()
            .map(|at| at.1)
            .fold(f64::NEG_INFINITY, f64::max),
    ];
    let [left, top, right, bottom] = bounds.map(mm);
    let lines = hatch(&rectangle(left, top, right, bottom), apart);
    let inside = |line: Vec<Point>| -> Option<Vec<Point>> {
        let [from, to] = [line.first()?, line.last()?].map(|at| (at.x.mm(), at.y.mm()));
        let (enters, leaves) = share_inside([from, to], &places)?;
        let at = |share: f64| {
            let (x, y) = (
                from.0 + (to.0 - from.0) * share,
                from.1 + (to.1 - from.1) * share,
            );
            Point::new(mm(x), mm(y))
        };
        Some(vec![at(enters), at(leaves)])
    };
    lines.into_iter().filter_map(inside).collect()
}
