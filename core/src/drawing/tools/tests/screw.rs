//! The screw check's plots.

use proptest::prelude::*;

use super::{assert_tidy, middle, shapes, texts};
use crate::dial::ScrewRequest;
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::CAP_HEIGHT;
use crate::drawing::tools::marks::TYPE;
use crate::drawing::tools::{screw_errors, screw_residuals};
use crate::given::Given;
use crate::math::sin;
use crate::screw_check::{PointRequest, ScrewCheckPlan, ScrewCheckRequest, screw_check};

type Place = (f64, f64, Option<&'static str>);

fn check(lead: f64, points: &[Place]) -> Option<ScrewCheckPlan> {
    let point = |(commanded, measured, approach): &Place| {
        PointRequest {
            commanded: (*commanded).into(),
            measured: (*measured).into(),
            approach: approach.map_or(Given::Missing, Given::from),
        }
        .into()
    };
    let request = ScrewCheckRequest {
        screw: ScrewRequest {
            lead: lead.into(),
            divisions: 100.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        points: points.iter().map(point).collect::<Vec<_>>().into(),
    };
    screw_check(&request).ok().map(|checked| checked.plan)
}

/// The error of a screw of lead 2: 0.6 ‰, and a wobble of 0.03 mm.
fn error(commanded: f64) -> f64 {
    0.05 + commanded * 0.0006 + 0.03 * sin(core::f64::consts::PI * commanded + 0.4)
}

/// Measured every 3.3 mm from both sides, without noise but for the first two readings.
fn both_ways() -> Vec<Place> {
    let ways = [("up", 0.02), ("down", -0.02)];
    let mut points: Vec<Place> = (0..20)
        .flat_map(|place| {
            let x = f64::from(place) * 3.3;
            ways.map(|(way, lost)| (x, x + error(x) + lost, Some(way)))
        })
        .collect();
    points[0].1 += 0.04;
    points[1].1 -= 0.02;
    points
}

/// The values that a place on paper stands for, read from the numbers beside the axes.
struct Reader {
    across: [(f64, f64); 2],
    up: [(f64, f64); 2],
}

impl Reader {
    fn new(drawing: &Drawing) -> Self {
        let numbers = texts(drawing, Role::Dimension);
        let value = |text: &str| text.trim_end_matches(" mm").parse::<f64>().unwrap();
        let ends = |anchor, place: fn(&Point) -> f64| {
            let numbers: Vec<_> = numbers
                .iter()
                .filter(|number| number.1 == anchor)
                .map(|(text, _, at)| (value(text), place(at)))
                .collect();
            [numbers[0], *numbers.last().unwrap()]
        };
        Self {
            across: ends(Anchor::Middle, |at| at.x.mm()),
            up: ends(Anchor::End, |at| (at.y - TYPE * (CAP_HEIGHT / 2.0)).mm()),
        }
    }

    fn read(&self, x: f64, y: f64) -> (f64, f64) {
        let value = |[first, last]: [(f64, f64); 2], place: f64| {
            first.0 + (last.0 - first.0) * (place - first.1) / (last.1 - first.1)
        };
        (value(self.across, x), value(self.up, y))
    }
}

/// The values of a direction's markers; its key's marker, the first, is not one of them.
fn markers(drawing: &Drawing, role: Role, keyed: bool) -> Vec<(f64, f64)> {
    let reader = Reader::new(drawing);
    shapes(drawing, role)
        .iter()
        .skip(usize::from(keyed))
        .map(|marker| middle(marker))
        .map(|(x, y)| reader.read(x, y))
        .collect()
}

fn assert_same(drawn: &[(f64, f64)], expected: &[(f64, f64)]) {
    assert_eq!(drawn.len(), expected.len());
    for (drawn, expected) in drawn.iter().zip(expected) {
        assert!(
            (drawn.0 - expected.0).abs() < 1e-6,
            "{drawn:?} for {expected:?}"
        );
        assert!(
            (drawn.1 - expected.1).abs() < 1e-6,
            "{drawn:?} for {expected:?}"
        );
    }
}

#[test]
fn errors_are_to_scale_and_told_apart_by_direction() {
    let points = both_ways();
    let drawing = screw_errors(&check(2.0, &points).unwrap());
    assert_tidy(&drawing);
    for (role, way) in [(Role::MeasuredUp, "up"), (Role::MeasuredDown, "down")] {
        let expected: Vec<_> = points
            .iter()
            .filter(|point| point.2 == Some(way))
            .map(|(commanded, measured, _)| (*commanded, measured - commanded))
            .collect();
        assert_same(&markers(&drawing, role, true), &expected);
    }
}

#[test]
fn residuals_are_to_scale() {
    let points = both_ways();
    let plan = check(2.0, &points).unwrap();
    let drawing = screw_residuals(&plan);
    assert_tidy(&drawing);
    let mut drawn = markers(&drawing, Role::MeasuredUp, true);
    drawn.extend(markers(&drawing, Role::MeasuredDown, true));
    let residuals = points.iter().zip(&plan.residuals);
    let (up, down): (Vec<_>, Vec<_>) = residuals.partition(|(point, _)| point.2 == Some("up"));
    let expected: Vec<_> = up
        .iter()
        .chain(&down)
        .map(|(point, residual)| (point.0, residual.mm()))
        .collect();
    assert_same(&drawn, &expected);
}

#[test]
fn round_off_is_not_magnified() {
    let points: Vec<Place> = (0..20)
        .map(|place| f64::from(place) * 3.3)
        .map(|x| (x, x + error(x), None))
        .collect();
    let drawing = screw_residuals(&check(2.0, &points).unwrap());
    let values = markers(&drawing, Role::MeasuredUp, false);
    assert!(values.iter().all(|(_, value)| value.abs() < 1e-9));
    assert_eq!(
        shapes(&drawing, Role::MeasuredDown),
        Vec::<Vec<Point>>::new()
    );
}

#[test]
fn the_fitted_line_wobbles_as_the_screw_does() {
    let points: Vec<Place> = (0..20)
        .map(|place| f64::from(place) * 3.3)
        .map(|x| (x, x + error(x), None))
        .collect();
    let drawing = screw_errors(&check(2.0, &points).unwrap());
    let reader = Reader::new(&drawing);
    let lines = shapes(&drawing, Role::Fitted);
    assert_eq!(lines.len(), 1);
    assert!(lines[0].len() <= 400);
    let (mut first, mut last) = (f64::MAX, f64::MIN);
    for corner in &lines[0] {
        let (x, y) = reader.read(corner.x.mm(), corner.y.mm());
        assert!((y - error(x)).abs() < 1e-6, "{y} at {x}");
        (first, last) = (first.min(x), last.max(x));
    }
    assert!(first.abs() < 1e-6 && (last - 62.7).abs() < 1e-6);
}

#[test]
fn a_wobble_too_fine_to_draw_is_a_band() {
    let points: Vec<Place> = (0..60)
        .map(|place| f64::from(place) * 7.3)
        .map(|x| (x, x + error(x), None))
        .collect();
    let drawing = screw_errors(&check(2.0, &points).unwrap());
    assert_tidy(&drawing);
    let reader = Reader::new(&drawing);
    let starts: Vec<f64> = shapes(&drawing, Role::Fitted)
        .iter()
        .map(|line| reader.read(line[0].x.mm(), line[0].y.mm()).1)
        .collect();
    // Known: an offset of 0.05 and an amplitude of 0.03.
    for (start, expected) in starts.iter().zip([0.05, 0.08, 0.02]) {
        assert!((start - expected).abs() < 1e-6, "{starts:?}");
    }
    assert_eq!(starts.len(), 3);
}

prop_compose! {
    fn any_place(size: f64)(
        commanded in -5000.0..5000.0_f64,
        off in -1.0..1.0_f64,
        way in prop_oneof![Just(None), Just(Some("up")), Just(Some("down"))],
    ) -> Place {
        let commanded = commanded * size;
        (commanded, crate::math::within(commanded + off, -5000.0, 5000.0), way)
    }
}

proptest! {
    #[test]
    fn plots_are_tidy(
        lead in 0.05..100.0_f64,
        points in prop_oneof![Just(1.0), Just(0.05), Just(0.001)]
            .prop_flat_map(|size| proptest::collection::vec(any_place(size), 3..60)),
        wild in -5000.0..5000.0_f64,
        is_wild: bool,
    ) {
        let mut points = points;
        if is_wild {
            points[0].1 = wild;
        }
        if let Some(plan) = check(lead, &points) {
            assert_tidy(&screw_errors(&plan));
            assert_tidy(&screw_residuals(&plan));
            for line in shapes(&screw_errors(&plan), Role::Fitted) {
                prop_assert!(line.len() <= 400);
            }
        }
    }
}
