//! The five-cut test, cut by cut.

use super::marks::{TYPE, WIDTH, around, arrow_head, at, block, centred, sheet};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::message;

/// The panel as it lies for a cut, in type heights.
const LEFT: f64 = 2.4;
const TOP: f64 = 2.6;
const FENCE: f64 = 12.2;
const BLADE: f64 = 12.4;
const KERF: f64 = 0.3;
const OFFCUT: f64 = 1.1;
const STRIP: f64 = 2.4;
const FENCE_BACK: f64 = 13.9;
const BOTTOM: f64 = 14.6;

/// The five cuts from above, one picture each: the fence at the near side, the blade at the panel's right.
///
/// Edges bear the number of the cut that made them; edges still to be cut are dashed. From cut to cut the
/// panel turns a quarter clockwise, so that the edge just cut comes to lie against the fence. The last picture
/// cuts a strip off the first edge, with its fence end A and its free end B.
#[must_use]
pub fn five_cut_steps() -> [Drawing; 5] {
    [1, 2, 3, 4, 5].map(step)
}

fn step(cut: u32) -> Drawing {
    let mut sheet = sheet();
    sheet.polygons(Role::Rail, [block(0.6, FENCE, WIDTH - 0.6, FENCE_BACK)]);
    sheet.polygons(Role::BoardA, [block(LEFT, TOP, BLADE, FENCE)]);
    draw_right_of_blade(&mut sheet, cut);
    let blade = BLADE + KERF / 2.0;
    sheet.lines(
        Role::CentreLine,
        [vec![at(blade, 0.6), at(blade, BOTTOM - 0.2)]],
    );
    draw_edges(&mut sheet, cut);
    let kerf = block(BLADE, TOP - 0.5, BLADE + KERF, FENCE);
    sheet.polygons(Role::CurrentPass, [kerf]);
    if cut > 1 {
        draw_turn(&mut sheet);
    }
    let beside = at(blade + 0.6, 1.4);
    sheet.text(Role::Words, beside, Anchor::Start, message!["blade"]);
    let in_fence = at((LEFT + BLADE) / 2.0, (FENCE + FENCE_BACK) / 2.0);
    centred(&mut sheet, Role::Words, in_fence, message!["fence"]);
    sheet.finish(at(WIDTH, BOTTOM))
}

/// What this cut takes off: an offcut, or the strip that is measured.
fn draw_right_of_blade(sheet: &mut Sheet, cut: u32) {
    let left = BLADE + KERF;
    let right = left + if cut == 5 { STRIP } else { OFFCUT };
    sheet.polygons(Role::BoardA, [block(left, TOP, right, FENCE)]);
    let role = if cut == 5 {
        Role::Outline
    } else {
        Role::ToCome
    };
    let sides = [(left, TOP), (right, TOP), (right, FENCE), (left, FENCE)];
    sheet.lines(role, [sides.map(|(x, y)| at(x, y)).to_vec()]);
    if cut == 5 {
        draw_strip_ends(sheet, (left + right) / 2.0, right + 0.5);
    }
}

fn draw_strip_ends(sheet: &mut Sheet, middle: f64, beside: f64) {
    let ends = [
        (TOP + 1.0, "B", "free end"),
        (FENCE - 1.0, "A", "fence end"),
    ];
    for (y, letter, words) in ends {
        sheet.letter(at(middle - 0.45, y - 0.47), letter);
        let baseline = at(beside, y + 0.36);
        sheet.text(Role::Words, baseline, Anchor::Start, message![words]);
    }
    let first = at(beside, (TOP + FENCE) / 2.0 - 0.47);
    sheet.letter(first, "1");
}

/// Edges that were cut, with their numbers, and edges still to come.
fn draw_edges(sheet: &mut Sheet, cut: u32) {
    let (middle, half_way) = ((LEFT + BLADE) / 2.0, (TOP + FENCE) / 2.0);
    let edges = [
        (0, [(BLADE, TOP), (BLADE, FENCE)], (BLADE - 1.0, half_way)),
        (1, [(LEFT, FENCE), (BLADE, FENCE)], (middle, FENCE - 1.0)),
        (2, [(LEFT, TOP), (LEFT, FENCE)], (LEFT + 1.0, half_way)),
        (3, [(LEFT, TOP), (BLADE, TOP)], (middle, TOP + 1.0)),
    ];
    for (cuts_ago, ends, (x, y)) in edges {
        let made_by = cut.saturating_sub(cuts_ago);
        let role = if made_by > 0 {
            Role::Outline
        } else {
            Role::ToCome
        };
        sheet.lines(role, [ends.map(|(x, y)| at(x, y)).to_vec()]);
        if made_by > 0 {
            sheet.letter(at(x - 0.4, y - 0.47), &made_by.to_string());
        }
    }
}

/// An arrow around the panel's middle: it was turned clockwise.
fn draw_turn(sheet: &mut Sheet) {
    const STEPS: u32 = 16;
    let centre = at((LEFT + BLADE) / 2.0, (TOP + FENCE) / 2.0);
    let (radius, quarter) = (TYPE * 1.8, core::f64::consts::FRAC_PI_2);
    let angle = |step: u32| 2.25 * quarter + 1.5 * quarter * f64::from(step) / f64::from(STEPS);
    let arc: Vec<Point> = (0..=STEPS)
        .map(|step| around(centre, radius, angle(step)))
        .collect();
    sheet.lines(Role::Arrow, [arc]);
    // Past the arc's end by the head's length.
    let end = angle(STEPS) + 0.35;
    arrow_head(sheet, around(centre, radius, end), end + quarter - 0.2);
}
