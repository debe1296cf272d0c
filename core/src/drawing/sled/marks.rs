//! Marks that more than one picture of a sled needs.

use core::f64::consts::TAU;

use super::labels::{Spot, text_at_middle};
use super::travel::Contact;
use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::math;
use crate::message;
use crate::message::Message;
use crate::units::Mm;

/// A circle as a polygon that no printer shows the corners of.
pub(super) fn circle(middle: Point, radius: Mm) -> Vec<Point> {
    const CORNERS: u32 = 32;
    (0..CORNERS)
        .map(|corner| {
            let angle = f64::from(corner) * TAU / f64::from(CORNERS);
            Point::new(
                middle.x + radius * math::cos(angle),
                middle.y + radius * math::sin(angle),
            )
        })
        .collect()
}

/// An upright cross.
pub(in crate::drawing) fn cross(middle: Point, arm: Mm) -> [Vec<Point>; 2] {
    [
        vec![
            Point::new(middle.x - arm, middle.y),
            Point::new(middle.x + arm, middle.y),
        ],
        vec![
            Point::new(middle.x, middle.y - arm),
            Point::new(middle.x, middle.y + arm),
        ],
    ]
}

fn diamond(middle: Point, arm: Mm) -> Vec<Point> {
    vec![
        Point::new(middle.x, middle.y - arm),
        Point::new(middle.x + arm, middle.y),
        Point::new(middle.x, middle.y + arm),
        Point::new(middle.x - arm, middle.y),
    ]
}

fn slanting_cross(middle: Point, arm: Mm) -> [Vec<Point>; 2] {
    let corner =
        |across: f64, down: f64| Point::new(middle.x + arm * across, middle.y + arm * down);
    [
        vec![corner(-1.0, -1.0), corner(1.0, 1.0)],
        vec![corner(-1.0, 1.0), corner(1.0, -1.0)],
    ]
}

/// How far the mark of a contact reaches from its middle, in type heights.
pub(super) const CONTACT_REACH: f64 = 0.45;

/// Where the runner touches the slot: a diamond, filled and crossed out off the table.
pub(super) fn contact(sheet: &mut Sheet, middle: Point, is_off: bool) {
    let role = if is_off {
        Role::ContactOff
    } else {
        Role::Contact
    };
    sheet.polygons(role, [diamond(middle, sheet.ems(0.36))]);
    if is_off {
        sheet.lines(role, slanting_cross(middle, sheet.ems(CONTACT_REACH)));
    }
}

/// What is to be said of a contact, in one row and in two, and the role it plays.
pub(super) struct ContactWords {
    pub(super) role: Role,
    pub(super) row: Message,
    pub(super) rows: [Message; 2],
}

/// Only what is off the table, or at the end of its stroke, is worth words.
pub(super) fn contact_words(contact: &Contact) -> Option<ContactWords> {
    let length = contact.left.abs();
    if contact.is_off() {
        Some(ContactWords {
            role: Role::ContactOff,
            row: message![length, " off the table"],
            rows: [message![length, " off"], message!["the table"]],
        })
    } else if contact.at_end {
        Some(ContactWords {
            role: Role::Dimension,
            row: message![length, " of table left"],
            rows: [message![length], message!["of table left"]],
        })
    } else {
        None
    }
}

/// A line that is broken off: it runs zigzag from one place to another, across or down.
pub(super) fn broken(from: Point, to: Point, tooth: Mm) -> Vec<Point> {
    const FEWEST: f64 = 2.0;
    const MOST: f64 = 40.0;
    let (across, down) = (to.x - from.x, to.y - from.y);
    let length = across.abs().max(down.abs());
    let teeth = crate::math::within((length / (tooth * 3.0)).round(), FEWEST, MOST);
    let is_upright = down.abs() > across.abs();
    let mut line = vec![from];
    let mut half = 0.5;
    let mut side = 1.0;
    while half < teeth {
        let share = half / teeth;
        let at = Point::new(from.x + across * share, from.y + down * share);
        let off = tooth * (0.5 * side);
        line.push(if is_upright {
            Point::new(at.x + off, at.y)
        } else {
            Point::new(at.x, at.y + off)
        });
        half += 0.5;
        side = -side;
    }
    line.push(to);
    line
}

/// An arrow with its head at its end, across or down.
pub(super) fn arrow(sheet: &mut Sheet, from: Point, to: Point) {
    let (long, half) = (sheet.ems(0.8), sheet.ems(0.32));
    let length = (to.x - from.x).abs().max((to.y - from.y).abs());
    let (across, down) = ((to.x - from.x) / length, (to.y - from.y) / length);
    let neck = Point::new(to.x - long * across, to.y - long * down);
    let head = vec![
        to,
        Point::new(neck.x + half * down, neck.y + half * across),
        Point::new(neck.x - half * down, neck.y - half * across),
    ];
    sheet.lines(Role::Arrow, [vec![from, neck]]);
    sheet.polygons(Role::Arrow, [head]);
}

/// A dimension line with ticks at its ends, across or down; its number is written elsewhere.
pub(super) fn dimension(sheet: &mut Sheet, from: Point, to: Point) {
    let tick = sheet.ems(0.35);
    let is_upright = from.x == to.x;
    let mark = |at: Point| {
        let (across, down) = if is_upright {
            (tick, Mm::ZERO)
        } else {
            (Mm::ZERO, tick)
        };
        vec![
            Point::new(at.x - across, at.y - down),
            Point::new(at.x + across, at.y + down),
        ]
    };
    sheet.lines(Role::Dimension, [vec![from, to], mark(from), mark(to)]);
}

/// Words by themselves, their left end or middle at a place.
pub(super) fn words(sheet: &mut Sheet, x: Mm, y: Mm, anchor: Anchor, words: &str) {
    text_at_middle(sheet, Role::Words, Spot::new(x, y, anchor), message![words]);
}
