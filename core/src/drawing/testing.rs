//! What tests of drawings read from them, and what every drawing must be.

use super::sled::labels::{Area, text_width};
use super::{Anchor, Drawing, Item, Point, Role, Shape};
use crate::units::Mm;

pub(super) fn points(item: &Item) -> Vec<Point> {
    match &item.shape {
        Shape::Polygons { polygons: lines } | Shape::Lines { lines } => lines.concat(),
        Shape::Text { .. } => Vec::new(),
    }
}

/// The lines of a role, all together.
pub(super) fn lines(drawing: &Drawing, role: Role) -> Vec<Vec<Point>> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let lines = items.filter_map(|item| match &item.shape {
        Shape::Lines { lines } => Some(lines.clone()),
        Shape::Polygons { .. } | Shape::Text { .. } => None,
    });
    lines.flatten().collect()
}

/// The areas of a role, all together.
pub(super) fn polygons(drawing: &Drawing, role: Role) -> Vec<Vec<Point>> {
    let items = drawing.items.iter().filter(|item| item.role == role);
    let polygons = items.filter_map(|item| match &item.shape {
        Shape::Polygons { polygons } => Some(polygons.clone()),
        Shape::Lines { .. } | Shape::Text { .. } => None,
    });
    polygons.flatten().collect()
}

/// The texts, and what each takes up: its figures and capitals, and a little below.
pub(super) fn text_areas(drawing: &Drawing) -> Vec<(String, Area)> {
    let texts = drawing.items.iter().filter_map(|item| match &item.shape {
        Shape::Text {
            at,
            anchor,
            size,
            text,
        } => {
            let (top, bottom) = (at.y - *size * 0.72, at.y + *size * 0.2);
            let area = Area::of_text(*at, *anchor, text_width(text, *size), top, bottom);
            Some((text.show(|length| length.to_string()), area))
        }
        Shape::Polygons { .. } | Shape::Lines { .. } => None,
    });
    texts.collect()
}

/// Everything is on the drawing, and no text runs into another.
pub(super) fn assert_legible(drawing: &Drawing) {
    let slack = Mm::constant(1e-6);
    let frame = Area {
        left: -slack,
        top: -slack,
        right: drawing.width + slack,
        bottom: drawing.height + slack,
    };
    for item in &drawing.items {
        for point in points(item) {
            let area = Area::of_text(point, Anchor::Start, Mm::ZERO, point.y, point.y);
            let role = item.role;
            assert!(area.is_within(&frame), "{role:?} at {point:?} of {frame:?}");
        }
    }
    let texts = text_areas(drawing);
    for (index, (text, area)) in texts.iter().enumerate() {
        assert!(area.is_within(&frame), "{text:?} at {area:?} of {frame:?}");
        for (other, other_area) in &texts[..index] {
            assert!(!area.meets(other_area), "{text:?} runs into {other:?}");
        }
    }
}
