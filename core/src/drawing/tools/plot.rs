//! A plot's ground: two axes with a few round numbers.

use super::marks::{TYPE, WIDTH, at, width};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{CAP_HEIGHT, Sheet};
use crate::message;
use crate::message::Message;
use crate::units::Mm;

/// The least step between numbers: finer ones would be written alike.
const FINEST: Mm = Mm::constant(0.01);

/// Values along one axis: `from` is at one end of it and `to` at the other.
#[derive(Clone, Copy, Debug)]
pub(super) struct Range {
    from: Mm,
    to: Mm,
    step: Mm,
}

impl Range {
    /// All of these values, with a little room at both ends; so many intervals between numbers at most.
    pub(super) fn of(values: impl IntoIterator<Item = Mm>, intervals: f64) -> Self {
        let ends = values
            .into_iter()
            .fold(None, |ends: Option<(Mm, Mm)>, value| {
                let (least, most) = ends.unwrap_or((value, value));
                Some((least.min(value), most.max(value)))
            });
        let (least, most) = ends.unwrap_or_default();
        // Round-off must not be shown as if it were an error.
        let lacking = (FINEST * 2.0 - (most - least)).max(Mm::ZERO) / 2.0;
        Self::between(least - lacking, most + lacking, intervals)
    }

    /// As far below zero as above, for all of these values.
    pub(super) fn about_zero(values: impl IntoIterator<Item = Mm>) -> Self {
        // The fewest that put at least one number on either side of zero.
        const INTERVALS: f64 = 6.0;
        let farthest = values.into_iter().map(Mm::abs).fold(FINEST, Mm::max);
        Self::between(-farthest, farthest, INTERVALS)
    }

    fn between(least: Mm, most: Mm, intervals: f64) -> Self {
        const ROOM: f64 = 0.07;
        let span = most - least;
        Self {
            from: least - span * ROOM,
            to: most + span * ROOM,
            step: round_step(span / intervals),
        }
    }

    fn share(&self, value: Mm) -> f64 {
        (value - self.from) / (self.to - self.from)
    }

    /// The round numbers within.
    fn numbers(&self) -> Vec<Mm> {
        let mut numbers = Vec::new();
        let mut count = (self.from / self.step).ceil();
        while self.step * count <= self.to {
            numbers.push(self.step * count);
            count += 1.0;
        }
        numbers
    }
}

/// The least of 1, 2, 5, 10, 20, 50 … hundredths that is not below `step`.
fn round_step(step: Mm) -> Mm {
    let mut decade = FINEST;
    loop {
        for times in [1.0, 2.0, 5.0] {
            if !(decade * times).is_below(step) {
                return decade * times;
            }
        }
        decade = decade * 10.0;
    }
}

/// Where values are on paper: `x` to the right and `y` upwards, both to scale between the axes' ends.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plot {
    x: Range,
    y: Range,
    left: Mm,
    right: Mm,
    top: Mm,
    bottom: Mm,
}

impl Plot {
    /// A plot `down` high below `above`, both in type heights, as wide as the paper.
    pub(super) fn new(x: Range, y: Range, above: f64, down: f64) -> Self {
        let width = |number: Mm| width(&message![number]);
        let numbers = y.numbers().into_iter().map(width).max();
        let last = x.numbers().last().copied().map(width);
        Self {
            x,
            y,
            left: TYPE * 0.9 + numbers.unwrap_or_default(),
            // Half of the last number sticks out.
            right: TYPE * (WIDTH - 0.3) - last.unwrap_or_default() / 2.0,
            top: TYPE * above,
            bottom: TYPE * (above + down),
        }
    }

    /// Where a pair of values is.
    pub(super) fn place(&self, x: Mm, y: Mm) -> Point {
        Point::new(
            self.left + (self.right - self.left) * self.x.share(x),
            self.bottom - (self.bottom - self.top) * self.y.share(y),
        )
    }

    /// Adds both axes, the zero line where zero is within, and the numbers of `y`.
    pub(super) fn draw_axes(&self, sheet: &mut Sheet) {
        let [up, across] = [
            vec![
                Point::new(self.left, self.top),
                Point::new(self.left, self.bottom),
            ],
            vec![
                Point::new(self.left, self.bottom),
                Point::new(self.right, self.bottom),
            ],
        ];
        sheet.lines(Role::Axis, [up, across]);
        for number in self.y.numbers() {
            let y = self.place(self.x.from, number).y;
            let from = self.left - TYPE * 0.3;
            let to = if number == Mm::ZERO {
                self.right
            } else {
                self.left
            };
            sheet.lines(Role::Axis, [vec![Point::new(from, y), Point::new(to, y)]]);
            let before = Point::new(from - TYPE * 0.2, y + TYPE * (CAP_HEIGHT / 2.0));
            sheet.text(Role::Dimension, before, Anchor::End, message![number]);
        }
    }

    /// Adds the marks of `x`, and the numbers of those that have room.
    pub(super) fn draw_numbers_across(&self, sheet: &mut Sheet) {
        let mut free = Mm::ZERO;
        for number in self.x.numbers() {
            let text = message![number];
            let (middle, half) = (self.place(number, self.y.from).x, width(&text) / 2.0);
            let text = (middle - half >= free).then_some(text);
            if text.is_some() {
                free = middle + half + TYPE * 0.4;
            }
            self.draw_mark_across(sheet, number, text);
        }
    }

    /// Adds one mark of `x`, and what is to be written below it.
    pub(super) fn draw_mark_across(&self, sheet: &mut Sheet, value: Mm, text: Option<Message>) {
        let x = self.place(value, self.y.from).x;
        let [end, baseline] = [0.3, 1.4].map(|below| Point::new(x, self.bottom + TYPE * below));
        sheet.lines(Role::Axis, [vec![Point::new(x, self.bottom), end]]);
        if let Some(text) = text {
            sheet.text(Role::Dimension, baseline, Anchor::Middle, text);
        }
    }

    /// The drawing, with words for `x` below it.
    pub(super) fn finish(&self, mut sheet: Sheet, words: &str) -> Drawing {
        let below = self.bottom + TYPE * 2.8;
        let right = Point::new(TYPE * (WIDTH - 0.3), below);
        sheet.text(Role::Words, right, Anchor::End, message![words]);
        sheet.finish(Point::new(at(WIDTH, 0.0).x, below + TYPE * 0.5))
    }
}

/// Radius of a marker: the more there are, the smaller, so that neighbours can be told apart.
pub(super) fn marker_radius(count: usize) -> Mm {
    if count > 60 { TYPE * 0.18 } else { TYPE * 0.27 }
}
