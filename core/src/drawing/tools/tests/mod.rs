//! What these pictures must be, whatever they are of.

mod groove;
mod screw;
mod square;

use super::marks;
use crate::drawing::item::{Anchor, Drawing, Item, Point, Role, Shape};
use crate::message::Message;
use crate::units::Mm;

/// Areas and lines of a role, all together.
fn shapes(drawing: &Drawing, role: Role) -> Vec<Vec<Point>> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let corners = items.filter_map(|item| match &item.shape {
        Shape::Polygons { polygons: all } | Shape::Lines { lines: all } => Some(all.clone()),
        Shape::Text { .. } => None,
    });
    corners.flatten().collect()
}

/// Texts of a role as a reader in millimetres sees them, and where they are anchored.
fn texts(drawing: &Drawing, role: Role) -> Vec<(String, Anchor, Point)> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let text = |item: &Item| match &item.shape {
        Shape::Text {
            at, anchor, text, ..
        } => Some((shown(text), *anchor, *at)),
        Shape::Polygons { .. } | Shape::Lines { .. } => None,
    };
    items.filter_map(text).collect()
}

fn shown(text: &Message) -> String {
    text.show(|length| format!("{} mm", length.mm()))
}

/// Where a text of this name is.
fn place_of(drawing: &Drawing, role: Role, words: &str) -> Point {
    let found: Vec<_> = texts(drawing, role)
        .into_iter()
        .filter(|(text, ..)| text == words)
        .collect();
    assert_eq!(found.len(), 1, "{words}");
    found[0].2
}

/// The middle of a regular polygon, or of its corners.
fn middle(corners: &[Point]) -> (f64, f64) {
    let count = corners.len() as f64;
    let sum = |of: fn(&Point) -> Mm| corners.iter().map(|corner| of(corner).mm()).sum::<f64>();
    (
        sum(|corner| corner.x) / count,
        sum(|corner| corner.y) / count,
    )
}

fn least(corners: &[Point], of: fn(&Point) -> Mm) -> f64 {
    corners.iter().map(of).min().unwrap().mm()
}

fn most(corners: &[Point], of: fn(&Point) -> Mm) -> f64 {
    corners.iter().map(of).max().unwrap().mm()
}

/// An upright rectangle: left, top, right, bottom.
type Extent = [f64; 4];

/// The room that a text takes at most.
fn text_room(at: Point, anchor: Anchor, size: Mm, text: &Message) -> Extent {
    let wide = (marks::width(text) * (size / marks::TYPE)).mm();
    let left = match anchor {
        Anchor::Start => at.x.mm(),
        Anchor::Middle => at.x.mm() - wide / 2.0,
        Anchor::End => at.x.mm() - wide,
    };
    let (y, size) = (at.y.mm(), size.mm());
    [left, y - 0.75 * size, left + wide, y + 0.2 * size]
}

/// Everything is within the frame, texts with all of their letters, and no text touches another.
fn assert_tidy(drawing: &Drawing) {
    let frame = [0.0, 0.0, drawing.width.mm(), drawing.height.mm()];
    let mut rooms: Vec<(String, Extent)> = Vec::new();
    for item in &drawing.items {
        let room = match &item.shape {
            Shape::Polygons { polygons: all } | Shape::Lines { lines: all } => {
                let corners = all.concat();
                let (left, right) = (least(&corners, |p| p.x), most(&corners, |p| p.x));
                let (top, bottom) = (least(&corners, |p| p.y), most(&corners, |p| p.y));
                [left, top, right, bottom]
            }
            Shape::Text {
                at,
                anchor,
                size,
                text,
            } => {
                let room = text_room(*at, *anchor, *size, text);
                for (other, taken) in &rooms {
                    assert!(!overlap(room, *taken), "{} over {other}", shown(text));
                }
                rooms.push((shown(text), room));
                room
            }
        };
        assert!(is_within(room, frame), "{item:?} at {room:?}");
    }
}

fn overlap(one: Extent, other: Extent) -> bool {
    one[0] < other[2] && other[0] < one[2] && one[1] < other[3] && other[1] < one[3]
}

fn is_within(room: Extent, frame: Extent) -> bool {
    const ROUND_OFF: f64 = 1e-9;
    room[0] >= frame[0] - ROUND_OFF
        && room[1] >= frame[1] - ROUND_OFF
        && room[2] <= frame[2] + ROUND_OFF
        && room[3] <= frame[3] + ROUND_OFF
}
