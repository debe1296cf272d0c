//! The sheet being drawn on: gathers items and knows the usual marks.

use super::item::{Anchor, Drawing, Item, Point, Role, Shape};
use crate::message;
use crate::message::Message;
use crate::units::Mm;

/// A drawing in the making.
#[derive(Debug)]
pub(super) struct Sheet {
    items: Vec<Item>,
    /// Height of usual type; every distance between marks is a multiple of it.
    pub(super) type_size: Mm,
}

/// Type as a share of what it must be read beside: 17 px on a phone that shows 365 px.
const TYPE_SHARE: f64 = 1.0 / 21.0;

impl Sheet {
    /// How far the words of the reference edge reach from it, in type heights.
    pub(super) const REFERENCE_WORDS: f64 = 8.6;

    /// A sheet for things `across` wide and `down` high. Tall ones are shown smaller, so their type grows.
    pub(super) fn new(across: Mm, down: Mm) -> Self {
        Self {
            items: Vec::new(),
            type_size: across.max(down * 0.7) * TYPE_SHARE,
        }
    }

    /// The drawing of what was gathered, as far as its lower right corner.
    pub(super) fn finish(self, corner: Point) -> Drawing {
        Drawing {
            width: corner.x,
            height: corner.y,
            items: self.items,
        }
    }

    /// So many type heights.
    pub(super) fn ems(&self, count: f64) -> Mm {
        self.type_size * count
    }

    /// Adds areas, if there are any.
    pub(super) fn polygons(&mut self, role: Role, polygons: impl IntoIterator<Item = Vec<Point>>) {
        let polygons: Vec<_> = polygons
            .into_iter()
            .filter(|corners| corners.len() > 2)
            .collect();
        if !polygons.is_empty() {
            self.items.push(Item {
                role,
                shape: Shape::Polygons { polygons },
            });
        }
    }

    /// Adds lines, if there are any.
    pub(super) fn lines(&mut self, role: Role, lines: impl IntoIterator<Item = Vec<Point>>) {
        let lines: Vec<_> = lines
            .into_iter()
            .filter(|corners| corners.len() > 1)
            .collect();
        if !lines.is_empty() {
            self.items.push(Item {
                role,
                shape: Shape::Lines { lines },
            });
        }
    }

    /// Adds the outline of a board.
    pub(super) fn outline(&mut self, lines: Vec<Vec<Point>>) {
        let role = if is_dense(&lines) {
            Role::FineOutline
        } else {
            Role::Outline
        };
        self.lines(role, lines);
    }

    /// Adds sockets that are still to come, unless their dashes would run together.
    pub(super) fn sockets_to_come(&mut self, sockets: Vec<Vec<Point>>) {
        if !is_dense(&sockets) {
            self.lines(Role::ToCome, sockets);
        }
    }

    /// Adds the frame of an enlarged part.
    pub(super) fn frame(&mut self, left: Mm, top: Mm, right: Mm, bottom: Mm) {
        let frame = rectangle(left, top, right, bottom);
        self.lines(Role::Frame, [closed(&frame)]);
    }

    /// Frames a part of a strip, from its upper left to its lower right corner, and leads to the upper
    /// corners of where it is shown enlarged below.
    pub(super) fn lead_below(&mut self, part: [Point; 2], enlarged: [Point; 2]) {
        let out = self.ems(0.15);
        let [upper, lower] = part;
        let (top, bottom) = (upper.y - out, lower.y + out);
        self.frame(upper.x, top, lower.x, bottom);
        let [left, right] = enlarged;
        let lead = |from, to| vec![Point::new(from, bottom), to];
        self.lines(Role::Leader, [lead(upper.x, left), lead(lower.x, right)]);
    }

    /// Adds a text of usual size.
    pub(super) fn text(&mut self, role: Role, at: Point, anchor: Anchor, text: Message) {
        let size = self.type_size;
        self.items.push(Item {
            role,
            shape: Shape::Text {
                at,
                anchor,
                size,
                text,
            },
        });
    }

    /// Adds a board's letter, larger than other type, by its upper left corner.
    pub(super) fn letter(&mut self, corner: Point, letter: &str) {
        let size = self.ems(1.3);
        let at = Point::new(corner.x, corner.y + size * CAP_HEIGHT);
        self.items.push(Item {
            role: Role::Letter,
            shape: Shape::Text {
                at,
                anchor: Anchor::Start,
                size,
                text: message![letter],
            },
        });
    }

    /// Adds a dimension line across, with ticks at its ends.
    pub(super) fn dimension_across(&mut self, y: Mm, left: Mm, right: Mm) {
        let tick = self.ems(0.35);
        let mark = |x| vec![Point::new(x, y - tick), Point::new(x, y + tick)];
        let line = vec![Point::new(left, y), Point::new(right, y)];
        self.lines(Role::Dimension, [line, mark(left), mark(right)]);
    }

    /// Adds a dimension line downwards, with ticks at its ends and its number to the right.
    pub(super) fn dimension_down(&mut self, x: Mm, top: Mm, bottom: Mm, number: Message) {
        let tick = self.ems(0.35);
        let mark = |y| vec![Point::new(x - tick, y), Point::new(x + tick, y)];
        let line = vec![Point::new(x, top), Point::new(x, bottom)];
        self.lines(Role::Dimension, [line, mark(top), mark(bottom)]);
        let at = Point::new(
            x + self.ems(0.6),
            (top + bottom + self.ems(CAP_HEIGHT)) / 2.0,
        );
        self.text(Role::Dimension, at, Anchor::Start, number);
    }

    /// Adds the mark of the reference edge: an arrowhead that touches it from the right, and words
    /// where they are wanted; they take [`Self::REFERENCE_WORDS`] from the edge.
    pub(super) fn reference_edge(&mut self, edge: Mm, y: Mm, words: bool) {
        let (long, half) = (self.ems(0.8), self.ems(0.3));
        let head = vec![
            Point::new(edge, y),
            Point::new(edge + long, y - half),
            Point::new(edge + long, y + half),
        ];
        self.polygons(Role::ReferenceEdge, [head]);
        if words {
            let at = Point::new(edge + self.ems(1.1), y + self.ems(CAP_HEIGHT / 2.0));
            self.text(
                Role::ReferenceEdge,
                at,
                Anchor::Start,
                message!["reference edge"],
            );
        }
    }
}

/// Height of capitals and figures as a share of the type's height, in the usual sans-serif faces.
pub(super) const CAP_HEIGHT: f64 = 0.72;

/// Whether lines have more corners than can be told apart across a drawing.
fn is_dense(lines: &[Vec<Point>]) -> bool {
    const TELLABLE: usize = 160;
    lines.iter().map(Vec::len).sum::<usize>() > TELLABLE
}

/// A line once around an area.
pub(super) fn closed(corners: &[Point]) -> Vec<Point> {
    corners.iter().chain(corners.first()).copied().collect()
}

/// The corners of an upright rectangle.
pub(super) fn rectangle(left: Mm, top: Mm, right: Mm, bottom: Mm) -> Vec<Point> {
    vec![
        Point::new(left, top),
        Point::new(right, top),
        Point::new(right, bottom),
        Point::new(left, bottom),
    ]
}

/// Slanting lines across an upright rectangle.
pub(super) fn hatch(corners: &[Point], apart: Mm) -> Vec<Vec<Point>> {
    let (Some(first), Some(opposite)) = (corners.first(), corners.get(2)) else {
        return Vec::new();
    };
    let (left, right) = (first.x.min(opposite.x), first.x.max(opposite.x));
    let (top, bottom) = (first.y.min(opposite.y), first.y.max(opposite.y));
    let step = apart.max(((right - left) + (bottom - top)) / MOST_HATCHES);
    let mut lines = Vec::new();
    let mut sum = left + top + step / 2.0;
    while step > Mm::ZERO && sum < right + bottom {
        let (low, high) = (left.max(sum - bottom), right.min(sum - top));
        lines.push(vec![
            Point::new(low, sum - low),
            Point::new(high, sum - high),
        ]);
        sum += step;
    }
    lines
}

/// More lines than this would be a grey area.
const MOST_HATCHES: f64 = 60.0;
