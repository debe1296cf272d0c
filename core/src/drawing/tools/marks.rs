//! Marks that these pictures share, placed in type heights.

use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::{CAP_HEIGHT, Sheet};
use crate::math::{cos, sin};
use crate::message::Message;
use crate::units::{Mm, write_number};

/// Height of type.
pub(super) const TYPE: Mm = Mm::constant(10.0);
/// Width of every picture in type heights: 365 px show type of 17 px.
pub(super) const WIDTH: f64 = 21.4;

/// A sheet whose type is [`TYPE`] high.
pub(super) fn sheet() -> Sheet {
    Sheet::new(TYPE * 21.0, Mm::ZERO)
}

/// The place so many type heights from the upper left corner.
pub(super) fn at(x: f64, y: f64) -> Point {
    Point::new(TYPE * x, TYPE * y)
}

/// The corners of an upright rectangle, in type heights.
pub(super) fn block(left: f64, top: f64, right: f64, bottom: f64) -> Vec<Point> {
    [(left, top), (right, top), (right, bottom), (left, bottom)]
        .map(|(x, y)| at(x, y))
        .to_vec()
}

/// A place turned clockwise about another, by radians.
pub(super) fn turned(place: Point, about: Point, by: f64) -> Point {
    let (x, y) = (place.x - about.x, place.y - about.y);
    Point::new(
        about.x + x * cos(by) - y * sin(by),
        about.y + x * sin(by) + y * cos(by),
    )
}

/// A place on a circle, clockwise from the right, by radians.
pub(super) fn around(centre: Point, radius: Mm, angle: f64) -> Point {
    turned(Point::new(centre.x + radius, centre.y), centre, angle)
}

/// A circle as an area.
pub(super) fn circle(centre: Point, radius: Mm) -> Vec<Point> {
    const CORNERS: u32 = 24;
    let turn = 2.0 * core::f64::consts::PI / f64::from(CORNERS);
    (0..CORNERS)
        .map(|corner| around(centre, radius, turn * f64::from(corner)))
        .collect()
}

/// Adds an arrow's head; `direction` is clockwise from the right, in radians.
pub(super) fn arrow_head(sheet: &mut Sheet, tip: Point, direction: f64) {
    let (long, half) = (TYPE * 0.8, TYPE * 0.32);
    let back = |side: Mm| turned(Point::new(tip.x - long, tip.y + side), tip, direction);
    sheet.polygons(Role::Arrow, [vec![tip, back(half), back(-half)]]);
}

/// Adds a straight arrow from place to place.
pub(super) fn arrow(sheet: &mut Sheet, from: Point, tip: Point) {
    let direction = crate::math::atan2((tip.y - from.y).mm(), (tip.x - from.x).mm());
    sheet.lines(Role::Arrow, [vec![from, tip]]);
    arrow_head(sheet, tip, direction);
}

/// Adds words whose middle stands where wanted, in type heights, moved aside as far as they must to stay
/// between two limits.
pub(super) fn words_between(
    sheet: &mut Sheet,
    role: Role,
    wanted: Point,
    limits: (f64, f64),
    text: Message,
) {
    let half = width(&text) / 2.0;
    let (least, most) = (TYPE * limits.0 + half, TYPE * limits.1 - half);
    let middle = Point::new(wanted.x.min(most).max(least), wanted.y);
    sheet.text(role, middle, Anchor::Middle, text);
}

/// What a text takes across at most, in a sans-serif face and millimetres or inches: the shortest length
/// in millimetres may have five figures in inches.
pub(super) fn width(text: &Message) -> Mm {
    let shown = text.show(|length| format!("{:>5}", write_number(length.mm(), 3)));
    let widths = shown.chars().map(|character| match character {
        'm' | 'w' => 1.0,
        _ => 0.6,
    });
    TYPE * widths.sum::<f64>()
}

/// Adds words in the middle of a place.
pub(super) fn centred(sheet: &mut Sheet, role: Role, place: Point, text: Message) {
    let baseline = Point::new(place.x, place.y + TYPE * (CAP_HEIGHT / 2.0));
    sheet.text(role, baseline, Anchor::Middle, text);
}
