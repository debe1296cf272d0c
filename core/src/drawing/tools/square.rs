//! What to do about a fence that is not square.

use super::marks::{TYPE, WIDTH, arrow, at, block, centred, circle, sheet, turned};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, closed};
use crate::message;
use crate::message::Message;
use crate::square::{SquareTestPlan, Towards};

/// The fence when it is square, in type heights.
const OUTER: f64 = 2.4;
const INNER: f64 = 20.4;
const FACE: f64 = 10.8;
const BACK: f64 = 12.2;
const MIDDLE: f64 = 11.5;
const PIVOT: f64 = 19.4;
const ADJUSTER: f64 = 3.2;
const BLADE: f64 = 16.0;
/// How far a fence is drawn out of square, radians; no real error could be seen.
const EXAGGERATED: f64 = 0.1;

/// The fence from above, out of square the way it is but far more than it is, and the arrow from where its
/// adjuster is to where it must go.
///
/// The panel lies beyond the fence and at the blade's left, the pivot is at the blade's end of the fence. A
/// result within its own uncertainty moves nothing: fence and panel are drawn square, without an arrow.
#[must_use]
pub fn square_correction(plan: &SquareTestPlan) -> Drawing {
    let mut sheet = sheet();
    let towards = if plan.significant {
        plan.towards
    } else {
        Towards::None
    };
    let angle = match towards {
        Towards::Panel => -EXAGGERATED,
        Towards::Away => EXAGGERATED,
        Towards::None => 0.0,
    };
    draw_panel(&mut sheet, angle);
    draw_fence(&mut sheet, angle);
    let (now, square) = (now(at(ADJUSTER, MIDDLE), angle), at(ADJUSTER, MIDDLE));
    let advice = match towards {
        Towards::Panel => message![plan.travel, " towards the panel"],
        Towards::Away => message![plan.travel, " away from the panel"],
        Towards::None => message!["leave the fence as it is"],
    };
    if towards != Towards::None {
        draw_move(&mut sheet, now, square);
    }
    draw_words(&mut sheet, advice);
    sheet.finish(at(WIDTH, 17.4))
}

/// Where a place of the square fence is while the fence is out by `angle`.
fn now(place: Point, angle: f64) -> Point {
    turned(place, at(PIVOT, MIDDLE), angle)
}

fn draw_panel(sheet: &mut Sheet, angle: f64) {
    let (left, top) = (5.0, 2.8);
    let [outer, corner] = [left, BLADE].map(|x| now(at(x, FACE), angle));
    let blade = TYPE * BLADE;
    // The cut runs along the blade, wherever the fence's turning has put the corner.
    let share = (blade - outer.x) / (corner.x - outer.x);
    let corner = Point::new(blade, outer.y + (corner.y - outer.y) * share);
    let panel = vec![
        Point::new(outer.x, TYPE * top),
        at(BLADE, top),
        corner,
        outer,
    ];
    sheet.polygons(Role::BoardA, [panel.clone()]);
    sheet.lines(Role::Outline, [closed(&panel)]);
    sheet.lines(Role::CentreLine, [vec![at(BLADE, 0.6), at(BLADE, 13.6)]]);
}

fn draw_fence(sheet: &mut Sheet, angle: f64) {
    let square = block(OUTER, FACE, INNER, BACK);
    let fence = square.iter().map(|corner| now(*corner, angle)).collect();
    sheet.polygons(Role::Rail, [fence]);
    if angle != 0.0 {
        sheet.lines(Role::ToCome, [closed(&square)]);
    }
    let holes = [PIVOT, ADJUSTER].map(|x| circle(now(at(x, MIDDLE), angle), TYPE * 0.35));
    sheet.polygons(Role::Hole, holes);
}

/// The arrow stands beside the fence's outer end, between lines from the adjuster's two places.
fn draw_move(sheet: &mut Sheet, now: Point, square: Point) {
    let [left, beside, right] = [0.6, 1.4, 2.2].map(|x| TYPE * x);
    let line = |y| vec![Point::new(left, y), Point::new(right, y)];
    sheet.lines(Role::Dimension, [line(now.y), line(square.y)]);
    arrow(
        sheet,
        Point::new(beside, now.y),
        Point::new(beside, square.y),
    );
}

fn draw_words(sheet: &mut Sheet, advice: Message) {
    centred(sheet, Role::Words, at(10.4, 6.6), message!["panel"]);
    let labels = [
        (at(BLADE + 0.5, 1.4), Anchor::Start, "blade"),
        (at(0.6, 15.2), Anchor::Start, "adjuster"),
        (at(INNER, 15.2), Anchor::End, "pivot"),
    ];
    for (place, anchor, words) in labels {
        sheet.text(Role::Words, place, anchor, message![words]);
    }
    sheet.text(Role::Dimension, at(0.6, 16.8), Anchor::Start, advice);
}
