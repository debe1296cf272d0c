//! How square a fence was from test to test.

use super::marks::{TYPE, at, circle, sheet};
use super::plot::{Plot, Range, marker_radius};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::message;
use crate::units::Mm;

/// What one five-cut test found.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HistoryPoint {
    /// The fence's error over 500 mm, mm; positive where the angle inside the panel is too great.
    pub error_per_500: Mm,
    /// What the readings leave uncertain of it, mm to either side.
    pub uncertainty_per_500: Mm,
}

/// Errors over 500 mm from the first test to the last, to scale, with their uncertainties as bars and a line
/// where the fence is square; nothing for fewer than two tests.
#[must_use]
pub fn square_history(tests: &[HistoryPoint]) -> Option<Drawing> {
    let [_, .., _] = tests else {
        return None;
    };
    let mut sheet = sheet();
    let reach = |test: &HistoryPoint| test.error_per_500.abs() + test.uncertainty_per_500.abs();
    let plot = Plot::new(
        Range::of((1..=tests.len()).map(place_of), 3.0),
        Range::about_zero(tests.iter().map(reach)),
        2.4,
        9.0,
    );
    let title = message!["error over ", Mm::constant(500.0)];
    sheet.text(Role::Words, at(0.3, 1.3), Anchor::Start, title);
    plot.draw_axes(&mut sheet);
    for number in [1, tests.len()] {
        plot.draw_mark_across(&mut sheet, place_of(number), Some(message![number]));
    }
    let placed = || (1..).map(place_of).zip(tests);
    let bars = placed().flat_map(|(x, test)| bar(&plot, x, test));
    sheet.lines(Role::MeasuredUp, bars);
    let radius = marker_radius(tests.len());
    let markers = placed().map(|(x, test)| circle(plot.place(x, test.error_per_500), radius));
    sheet.polygons(Role::MeasuredUp, markers);
    Some(plot.finish(sheet, "test"))
}

/// Tests stand side by side, one unit apart.
fn place_of(number: usize) -> Mm {
    const APART: Mm = Mm::constant(1.0);
    APART * number as f64
}

/// From the least to the greatest the error may be, with a tick at each end.
fn bar(plot: &Plot, x: Mm, test: &HistoryPoint) -> [Vec<Point>; 3] {
    let tick = TYPE * 0.25;
    let ends =
        [-1.0, 1.0].map(|side| plot.place(x, test.error_per_500 + test.uncertainty_per_500 * side));
    let across = |end: Point| {
        vec![
            Point::new(end.x - tick, end.y),
            Point::new(end.x + tick, end.y),
        ]
    };
    let [low, high] = ends;
    [ends.to_vec(), across(low), across(high)]
}
