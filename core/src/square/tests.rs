//! The formula against a panel that is really cut five times.

use proptest::prelude::*;

use super::{SquareTestPlan, SquareTestRequest, Towards, square_test};
use crate::math::{cos, sin};
use crate::problem::Code;

type Point = (f64, f64);

/// A panel with its last cut edge on the fence, which runs along x; the panel lies above it.
struct Panel {
    corners: Vec<Point>,
}

impl Panel {
    fn new() -> Self {
        // Its first edges need not be square, only the one on the fence straight.
        Self {
            corners: vec![(0.0, 0.0), (420.0, 0.0), (400.0, 380.0), (-15.0, 390.0)],
        }
    }

    /// Cuts a strip off the right side, at a right angle plus `error` inside the panel, and turns the fresh
    /// edge to the fence.
    fn cut_and_turn(&mut self, error: f64) {
        let right = self
            .corners
            .iter()
            .fold(f64::MIN, |most, corner| most.max(corner.0));
        let direction = core::f64::consts::FRAC_PI_2 - error;
        let start = (right - 40.0, 0.0);
        self.keep_left_of(start, direction);
        self.corners = self
            .corners
            .iter()
            .map(|corner| turned(*corner, start, -direction))
            .collect();
    }

    fn keep_left_of(&mut self, at: Point, direction: f64) {
        let side = |p: &Point| cos(direction) * (p.1 - at.1) - sin(direction) * (p.0 - at.0);
        let mut kept = Vec::new();
        for (i, p) in self.corners.iter().enumerate() {
            let q = &self.corners[(i + 1) % self.corners.len()];
            let (s, t) = (side(p), side(q));
            if s >= 0.0 {
                kept.push(*p);
            }
            if (s >= 0.0) != (t >= 0.0) {
                let share = s / (s - t);
                kept.push((p.0 + (q.0 - p.0) * share, p.1 + (q.1 - p.1) * share));
            }
        }
        self.corners = kept;
    }

    /// Where its right side is, `y` above the fence.
    fn right_at(&self, y: f64) -> f64 {
        let edges = self.corners.iter().zip(self.corners.iter().cycle().skip(1));
        let crossings = edges
            .filter(|(p, q)| (p.1 <= y) != (q.1 <= y))
            .map(|(p, q)| {
                let share = (y - p.1) / (q.1 - p.1);
                p.0 + (q.0 - p.0) * share
            });
        crossings.fold(f64::MIN, f64::max)
    }
}

fn turned(point: Point, about: Point, by: f64) -> Point {
    let (x, y) = (point.0 - about.0, point.1 - about.1);
    (x * cos(by) - y * sin(by), x * sin(by) + y * cos(by))
}

const APART: f64 = 200.0;
const ARM: f64 = 600.0;

/// Four cuts around, then the widths of the strip between the first cut and the fifth.
fn five_cuts(error: f64) -> SquareTestRequest {
    let mut panel = Panel::new();
    for _ in 0..4 {
        panel.cut_and_turn(error);
    }
    let fifth = |y: f64| panel.right_at(1.0) - 20.0 + y * sin(error) / cos(error);
    let width = |y: f64| panel.right_at(y) - fifth(y);
    SquareTestRequest {
        fence_end: width(10.0).into(),
        free_end: width(10.0 + APART).into(),
        apart: APART.into(),
        pivot_to_adjuster: ARM.into(),
        reading_uncertainty: 0.0.into(),
        ..SquareTestRequest::default()
    }
}

fn plan(request: &SquareTestRequest) -> SquareTestPlan {
    square_test(request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

#[test]
fn a_known_error_is_found() {
    // Confirmed by cutting: an error of 0.001 rad; the handbook's strip is 1.366 wider over 341.48 (derived).
    let plan_of_cuts = plan(&five_cuts(0.001));
    assert!(
        (plan_of_cuts.error_radians - 0.001).abs() < 1e-8,
        "{}",
        plan_of_cuts.error_radians
    );
    let strip = SquareTestRequest {
        fence_end: 21.366.into(),
        free_end: 20.0.into(),
        apart: 341.48.into(),
        pivot_to_adjuster: ARM.into(),
        ..SquareTestRequest::default()
    };
    assert!((plan(&strip).error_radians - 0.001).abs() < 1e-6);
}

#[test]
fn the_correction_goes_the_right_way() {
    for (error, towards) in [(0.002, Towards::Panel), (-0.002, Towards::Away)] {
        let plan = plan(&five_cuts(error));
        assert_eq!(plan.towards, towards);
        assert!((plan.travel.mm() - 1.2).abs() < 1e-4, "{}", plan.travel);
        assert!((plan.angle_degrees - 90.0 - error.to_degrees()).abs() < 1e-5);
    }
}

#[test]
fn a_result_within_the_noise_is_said_to_be() {
    // Derived: √2 · 0.02 / (4 · 200) = 3.54e-5 rad.
    let strip = |taper: f64| SquareTestRequest {
        fence_end: (20.0 + taper).into(),
        free_end: 20.0.into(),
        apart: APART.into(),
        pivot_to_adjuster: ARM.into(),
        board_thickness: 20.0.into(),
        ..SquareTestRequest::default()
    };
    let quiet = plan(&strip(0.02));
    assert!((quiet.uncertainty_radians - 3.535_5e-5).abs() < 1e-9);
    assert!(!quiet.significant);
    assert!(plan(&strip(0.2)).significant);
    let square = plan(&strip(0.0));
    assert_eq!((square.towards, square.travel.mm()), (Towards::None, 0.0));
    // Derived: 20 · 0.2 / 800 = 0.005 mm over the board's thickness; 0.125 over 500.
    assert!((plan(&strip(0.2)).over_thickness.unwrap().mm() - 0.005).abs() < 1e-9);
    assert!((plan(&strip(0.2)).per500.mm() - 0.125).abs() < 1e-9);
}

#[test]
fn problems_come_at_once() {
    let bad = SquareTestRequest {
        fence_end: f64::NAN.into(),
        free_end: (-1.0).into(),
        apart: 0.0.into(),
        ..SquareTestRequest::default()
    };
    let problems = square_test(&bad).unwrap_err();
    let found: Vec<_> = problems
        .iter()
        .map(|problem| (problem.field.as_str(), problem.code))
        .collect();
    assert_eq!(
        found,
        [
            ("fenceEnd", Code::NotFinite),
            ("freeEnd", Code::TooSmall),
            ("apart", Code::TooSmall),
            ("pivotToAdjuster", Code::Missing),
        ]
    );
}

proptest! {
    /// Moving the fence as told and cutting again reads zero.
    #[test]
    fn the_correction_squares_the_fence(error in -0.005..0.005_f64) {
        let plan = plan(&five_cuts(error));
        let turn = plan.travel.mm() / ARM;
        let after = match plan.towards {
            Towards::Panel => error - turn,
            Towards::Away => error + turn,
            Towards::None => error,
        };
        // The formula takes the error's tangent for the error itself.
        let again = super::tests::plan(&five_cuts(after));
        prop_assert!(again.error_radians.abs() < 1e-6, "{} left of {error}", again.error_radians);
    }
}
