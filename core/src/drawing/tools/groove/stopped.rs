//! A stopped groove's board from above, where it is lowered and where it stops.

use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::drawing::tools::marks::{TYPE, WIDTH, arrow, at, circle, words_between};
use crate::groove::Marks;
use crate::message;
use crate::units::Mm;

/// Where things are across, in type heights.
const LEFT: f64 = 0.7;
const LEADING: f64 = 1.4;
const BIT: f64 = 10.8;
const RIGHT: f64 = WIDTH - 0.7;
/// Where things are down from this view's upper end.
const STOP_LINE: f64 = 3.4;
const FENCE: f64 = 4.1;
const FACE: f64 = 5.6;
const MIDDLE: f64 = 8.2;
const EDGE: f64 = 10.8;
const START_LINE: f64 = 11.7;
const BOTTOM: f64 = 13.6;

/// Draws below `top`, in type heights; the answer is the lower end.
pub(super) fn draw(sheet: &mut Sheet, marks: &Marks, bit: Mm, top: f64) -> f64 {
    let view = View::new(marks, bit, top);
    let words = view.at(LEFT, 1.0);
    sheet.text(Role::Words, words, Anchor::Start, message!["from above"]);
    view.draw_fence_and_board(sheet);
    view.draw_dimensions(sheet, marks);
    view.draw_feed(sheet);
    top + BOTTOM
}

/// Where the bit's sides and the board's leading end are.
struct View {
    top: f64,
    far_side: Mm,
    near_side: Mm,
    start: Mm,
    stop: Mm,
}

impl View {
    fn new(marks: &Marks, bit: Mm, top: f64) -> Self {
        const WIDEST: f64 = 4.0;
        const SEEN: f64 = 0.7;
        let far_side = TYPE * BIT;
        // Leading end to the bit's far side, at both.
        let start = marks.start_past_far_mark;
        let stop = marks.stop_past_near_mark - bit;
        let scale = (TYPE * (BIT - LEADING) / start.max(stop)).min(TYPE * WIDEST / bit);
        Self {
            top,
            far_side,
            near_side: far_side + (bit * scale).max(TYPE * SEEN),
            start: far_side - start * scale,
            stop: far_side - stop * scale,
        }
    }

    fn at(&self, x: f64, y: f64) -> Point {
        at(x, self.top + y)
    }

    fn place(&self, x: Mm, y: f64) -> Point {
        Point::new(x, TYPE * (self.top + y))
    }

    fn draw_fence_and_board(&self, sheet: &mut Sheet) {
        let fence = [(LEFT, FENCE), (RIGHT, FENCE), (RIGHT, FACE), (LEFT, FACE)];
        sheet.polygons(Role::Rail, [fence.map(|(x, y)| self.at(x, y)).to_vec()]);
        let in_fence = self.at(RIGHT - 0.5, FACE - 0.4);
        sheet.text(Role::Words, in_fence, Anchor::End, message!["fence"]);
        let right = TYPE * RIGHT;
        let board = vec![
            self.place(right, FACE),
            self.place(self.start, FACE),
            self.place(self.start, EDGE),
            self.place(right, EDGE),
        ];
        sheet.polygons(Role::BoardA, [board.clone()]);
        sheet.lines(Role::Outline, [board]);
        let stopped = vec![
            self.place(self.start, FACE),
            self.place(self.stop, FACE),
            self.place(self.stop, EDGE),
            self.place(self.start, EDGE),
        ];
        sheet.lines(Role::ToCome, [stopped]);
        let centre = self.place((self.far_side + self.near_side) / 2.0, MIDDLE);
        let radius = (self.near_side - self.far_side) / 2.0;
        sheet.polygons(Role::Blade, [circle(centre, radius)]);
    }

    /// The start is measured from the mark at the bit's far side, below the board; the stop from the one at its
    /// near side, above the fence.
    fn draw_dimensions(&self, sheet: &mut Sheet, marks: &Marks) {
        let upright = |x: Mm, from: f64, to: f64| vec![self.place(x, from), self.place(x, to)];
        let lines = [
            upright(self.far_side, FENCE, START_LINE),
            upright(self.near_side, STOP_LINE, MIDDLE),
            upright(self.start, EDGE, START_LINE),
            upright(self.stop, STOP_LINE, FACE),
        ];
        sheet.lines(Role::Dimension, lines);
        let rows = [
            (
                STOP_LINE,
                -0.6,
                self.stop,
                self.near_side,
                "stop ",
                marks.stop_past_near_mark,
            ),
            (
                START_LINE,
                1.3,
                self.start,
                self.far_side,
                "start ",
                marks.start_past_far_mark,
            ),
        ];
        for (row, baseline, from, to, name, length) in rows {
            let line = self.place(from, row).y;
            sheet.dimension_across(line, from, to);
            let middle = self.place((from + to) / 2.0, row + baseline);
            let limits = (LEFT, RIGHT);
            words_between(
                sheet,
                Role::Dimension,
                middle,
                limits,
                message![name, length],
            );
        }
    }

    fn draw_feed(&self, sheet: &mut Sheet) {
        arrow(sheet, self.at(RIGHT - 0.5, 9.6), self.at(RIGHT - 4.1, 9.6));
        let above = self.at(RIGHT - 2.2, 9.0);
        sheet.text(Role::Words, above, Anchor::Middle, message!["feed"]);
    }
}
