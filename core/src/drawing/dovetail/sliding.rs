//! A sliding dovetail seen on its end.

use super::marks::{ACROSS, Columns};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::joint::sliding::SlidingDovetailPlan;
use crate::message;
use crate::units::Mm;

/// Both boards on their end, to one scale: above, the tongue; below, the socket it slides into. Each width is
/// written where it is measured, with the depth they share and what is cut from each side of the tongue's board.
#[must_use]
pub fn sliding_drawing(plan: &SlidingDovetailPlan) -> Drawing {
    let mut sheet = Sheet::new(TYPE * 21.0, Mm::ZERO);
    let columns = Columns::new(&sheet, TYPE * ACROSS);
    let board = plan.tongue_tip + plan.tongue_cut_per_side * 2.0;
    let picture = Picture {
        plan,
        board,
        scale: (TYPE * 9.0 / board).min(TYPE * 4.5 / plan.depth),
        columns,
    };
    let tip = picture.draw_tongue(&mut sheet);
    let bottom = picture.draw_socket(&mut sheet, tip + TYPE * 5.2);
    sheet.finish(Point::new(columns.across, bottom + TYPE * 0.6))
}

const TYPE: Mm = Mm::constant(10.0);
/// Middle of both boards.
const MIDDLE: Mm = Mm::constant(84.0);
/// Half of what is shown of the socket's board.
const HALF: Mm = Mm::constant(62.0);

struct Picture<'a> {
    plan: &'a SlidingDovetailPlan,
    /// Thickness of the tongue's board.
    board: Mm,
    scale: f64,
    columns: Columns,
}

impl Picture<'_> {
    /// Half of a width, on the sheet.
    fn half(&self, width: Mm) -> Mm {
        width * (self.scale / 2.0)
    }

    fn depth(&self) -> Mm {
        self.plan.depth * self.scale
    }

    /// Draws the tongue downwards; returns where its tip is.
    fn draw_tongue(&self, sheet: &mut Sheet) -> Mm {
        let (top, shoulder) = (TYPE * 0.6, TYPE * 4.6);
        let tip = shoulder + self.depth();
        let sides = [
            (self.half(self.board), top),
            (self.half(self.board), shoulder),
            (self.half(self.plan.tongue_mouth), shoulder),
            (self.half(self.plan.tongue_tip), tip),
        ];
        let outline = both_sides(&sides);
        sheet.polygons(Role::BoardA, [outline.clone()]);
        sheet.outline(vec![outline]);
        sheet.dimension_across(
            shoulder - TYPE * 0.6,
            MIDDLE - self.half(self.plan.tongue_mouth),
            MIDDLE + self.half(self.plan.tongue_mouth),
        );
        self.number(sheet, shoulder - TYPE * 1.1, self.plan.tongue_mouth);
        let letter = MIDDLE - self.half(self.board) - TYPE * 1.7;
        sheet.letter(Point::new(letter, top + TYPE * 0.4), "A");
        self.words(sheet, top + TYPE * 1.4, "tongue");
        self.dimension_tip(sheet, tip);
        tip
    }

    fn dimension_tip(&self, sheet: &mut Sheet, tip: Mm) {
        let (line, baseline) = (tip + TYPE * 0.6, tip + TYPE * 1.8);
        let (side, edge) = (self.half(self.board), self.half(self.plan.tongue_tip));
        sheet.dimension_across(line, MIDDLE - edge, MIDDLE + edge);
        self.number(sheet, baseline, self.plan.tongue_tip);
        sheet.dimension_across(line, MIDDLE - side, MIDDLE - edge);
        let end = MIDDLE - TYPE * 3.0;
        let cut = self.plan.tongue_cut_per_side;
        sheet.text(
            Role::Dimension,
            Point::new(end, baseline),
            Anchor::End,
            message![cut],
        );
        let below = Point::new(end, baseline + TYPE * 1.2);
        sheet.text(Role::Words, below, Anchor::End, message!["each side"]);
    }

    /// Draws the socket below a face; returns where its board ends.
    fn draw_socket(&self, sheet: &mut Sheet, face: Mm) -> Mm {
        let floor = face + self.depth();
        let bottom = floor + TYPE * 2.6;
        // From the left end of the board, down into the socket and out again.
        let end = both_sides(&[
            (HALF, bottom),
            (HALF, face),
            (self.half(self.plan.mouth), face),
            (self.half(self.plan.floor), floor),
        ]);
        sheet.polygons(Role::BoardB, [end.clone()]);
        let cut_off = |place: &&Point| place.y < bottom;
        sheet.outline(vec![end.iter().filter(cut_off).copied().collect()]);
        let mouth = self.half(self.plan.mouth);
        sheet.dimension_across(face - TYPE * 0.6, MIDDLE - mouth, MIDDLE + mouth);
        self.number(sheet, face - TYPE * 1.1, self.plan.mouth);
        let half = self.half(self.plan.floor);
        sheet.dimension_across(floor + TYPE * 0.6, MIDDLE - half, MIDDLE + half);
        self.number(sheet, floor + TYPE * 1.8, self.plan.floor);
        let depth = message![self.plan.depth];
        sheet.dimension_down(MIDDLE + HALF + TYPE * 0.7, face, floor, depth);
        let corner = Point::new(MIDDLE - HALF + TYPE * 0.5, bottom - TYPE * 1.5);
        sheet.letter(corner, "B");
        self.words(sheet, face - TYPE * 1.1, "socket");
        bottom
    }

    fn number(&self, sheet: &mut Sheet, baseline: Mm, width: Mm) {
        let at = Point::new(MIDDLE, baseline);
        self.columns
            .words(sheet, Role::Dimension, at, message![width]);
    }

    fn words(&self, sheet: &mut Sheet, baseline: Mm, words: &str) {
        let (_, right) = self.columns.limits();
        let at = Point::new(right, baseline);
        sheet.text(Role::Words, at, Anchor::End, message![words]);
    }
}

/// A line that is the same on both sides of the middle: down on the left as given, back up on the right.
fn both_sides(left: &[(Mm, Mm)]) -> Vec<Point> {
    let side = |sign: f64| move |(half, y): &(Mm, Mm)| Point::new(MIDDLE + *half * sign, *y);
    let right = left.iter().rev().map(side(1.0));
    left.iter().map(side(-1.0)).chain(right).collect()
}
