//! A lead screw's errors over its travel.

use super::marks::{TYPE, at, circle, sheet, width};
use super::plot::{Plot, Range, marker_radius};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{CAP_HEIGHT, Sheet};
use crate::math::sin;
use crate::message;
use crate::screw_check::{Approach, Point as Reading, ScrewCheckPlan};
use crate::units::Mm;

/// Numbers fit below the plot at this many intervals.
const ACROSS: f64 = 3.0;
/// Numbers fit beside the plot at this many intervals.
const UPWARDS: f64 = 4.0;
/// Corners of the fitted line at most.
const CORNERS: u32 = 400;
/// Corners of the fitted line in one turn, so that it looks round.
const PER_TURN: f64 = 12.0;

/// What the fit leaves unexplained at each commanded position: measured − (offset + scale · commanded ± half
/// the backlash + once-per-turn error). Scatter about zero is reading error; a pattern is something else.
///
/// Both axes are to scale. Markers are filled where readings rose or nobody said, open where they fell.
#[must_use]
pub fn screw_residuals(plan: &ScrewCheckPlan) -> Drawing {
    let range = Range::about_zero(plan.residuals.iter().copied());
    let pairs = plan.points.iter().zip(plan.residuals.iter().copied());
    let pairs: Vec<_> = pairs.collect();
    let mut sheet = sheet();
    let plot = draw_ground(&mut sheet, &plan.points, range, "not explained by the fit");
    draw_markers(&mut sheet, &plot, &pairs);
    plot.finish(sheet, "commanded")
}

/// Measured less commanded at each commanded position, and the fitted line through it: offset, lead error and
/// once-per-turn error, midway between the two directions. Its slope is the lead's error, its waves are the
/// screw's wobble, and filled markers stand above or below open ones by the backlash.
///
/// Both axes are to scale. Where the turns are too many to be told apart, the line runs straight between
/// two others that its waves would touch.
#[must_use]
pub fn screw_errors(plan: &ScrewCheckPlan) -> Drawing {
    let pairs: Vec<_> = plan
        .points
        .iter()
        .map(|point| (point, point.measured - point.commanded))
        .collect();
    let fitted = fitted_lines(plan);
    let fits = fitted.iter().flatten().map(|(_, error)| *error);
    let range = Range::of(pairs.iter().map(|(_, error)| *error).chain(fits), UPWARDS);
    let mut sheet = sheet();
    let plot = draw_ground(&mut sheet, &plan.points, range, "measured − commanded");
    let line = |pairs: &Vec<(Mm, Mm)>| pairs.iter().map(|(x, y)| plot.place(*x, *y)).collect();
    sheet.lines(Role::Fitted, fitted.iter().map(line));
    draw_markers(&mut sheet, &plot, &pairs);
    plot.finish(sheet, "commanded")
}

/// Lines of (commanded, error).
fn fitted_lines(plan: &ScrewCheckPlan) -> Vec<Vec<(Mm, Mm)>> {
    let positions = || plan.points.iter().map(|point| point.commanded);
    let (Some(first), Some(last)) = (positions().min(), positions().max()) else {
        return Vec::new();
    };
    let straight = |x: Mm| plan.offset + x * (plan.scale_per_mille / 1000.0);
    let shifted = |by: Mm| [first, last].map(|x| (x, straight(x) + by)).to_vec();
    let Some(once) = plan.once_per_turn else {
        return vec![shifted(Mm::ZERO)];
    };
    let turns = (last - first) / plan.stated_lead;
    if turns * PER_TURN > f64::from(CORNERS) {
        return [Mm::ZERO, once.amplitude, -once.amplitude]
            .map(shifted)
            .to_vec();
    }
    let wave = |x: Mm| {
        let angle = 2.0 * core::f64::consts::PI * (x / plan.stated_lead);
        once.amplitude * sin(angle + once.phase_degrees.to_radians())
    };
    let place = |i: u32| first + (last - first) * (f64::from(i) / f64::from(CORNERS - 1));
    let curve = (0..CORNERS).map(place).map(|x| (x, straight(x) + wave(x)));
    vec![curve.collect()]
}

/// Title, key and axes.
fn draw_ground(sheet: &mut Sheet, points: &[Reading], range: Range, title: &str) -> Plot {
    sheet.text(Role::Words, at(0.3, 1.3), Anchor::Start, message![title]);
    let down = points.iter().any(falls);
    if down {
        draw_key(sheet, points);
    }
    let across = Range::of(points.iter().map(|point| point.commanded), ACROSS);
    let plot = Plot::new(across, range, if down { 4.0 } else { 2.4 }, 9.0);
    plot.draw_axes(sheet);
    plot.draw_numbers_across(sheet);
    plot
}

fn falls(point: &Reading) -> bool {
    point.approach == Some(Approach::Down)
}

/// What filled and open markers mean.
fn draw_key(sheet: &mut Sheet, points: &[Reading]) {
    let baseline = 2.9;
    let mut x = at(0.7, 0.0).x;
    let unsaid = points.iter().any(|point| point.approach.is_none());
    let filled = if unsaid {
        "upwards or unmarked"
    } else {
        "upwards"
    };
    let keys = [
        (
            Role::MeasuredUp,
            filled,
            points.iter().any(|point| !falls(point)),
        ),
        (Role::MeasuredDown, "downwards", true),
    ];
    for (role, words, _) in keys.into_iter().filter(|(_, _, shown)| *shown) {
        let middle = Point::new(x, TYPE * (baseline - CAP_HEIGHT / 2.0));
        sheet.polygons(role, [circle(middle, marker_radius(0))]);
        let text = message![words];
        let beside = Point::new(x + TYPE * 0.6, TYPE * baseline);
        x += TYPE * 1.6 + width(&text);
        sheet.text(Role::Words, beside, Anchor::Start, text);
    }
}

fn draw_markers(sheet: &mut Sheet, plot: &Plot, pairs: &[(&Reading, Mm)]) {
    let radius = marker_radius(pairs.len());
    let (down, up): (Vec<_>, Vec<_>) = pairs.iter().partition(|(point, _)| falls(point));
    for (role, pairs) in [(Role::MeasuredUp, up), (Role::MeasuredDown, down)] {
        let markers = pairs
            .iter()
            .map(|(point, value)| circle(plot.place(point.commanded, *value), radius));
        sheet.polygons(role, markers);
    }
}
