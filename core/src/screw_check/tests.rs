//! Screws whose errors are known, measured.

use super::{PointRequest, ScrewCheckPlan, ScrewCheckRequest, screw_check};
use crate::dial::ScrewRequest;
use crate::given::Given;
use crate::math::sin;
use crate::problem::Code;

fn screw() -> ScrewRequest {
    ScrewRequest {
        lead: 2.0.into(),
        divisions: 100.0.into(),
        ..ScrewRequest::default()
    }
}

fn point(commanded: f64, measured: f64, approach: Option<&str>) -> Given<PointRequest> {
    let approach = approach.map_or(Given::Missing, Given::from);
    PointRequest {
        commanded: commanded.into(),
        measured: measured.into(),
        approach,
    }
    .into()
}

fn check(points: Vec<Given<PointRequest>>) -> ScrewCheckPlan {
    let request = ScrewCheckRequest {
        screw: screw().into(),
        points: points.into(),
    };
    screw_check(&request)
        .unwrap_or_else(|problems| panic!("{problems:#?}"))
        .plan
}

#[test]
fn a_long_lead_is_found() {
    // Derived: 1 ‰ too long → lead 2.002; 0.14 mm over 140.
    let plan = check(
        (0..8)
            .map(|i| point(f64::from(i) * 20.0, 0.3 + f64::from(i) * 20.02, None))
            .collect(),
    );
    assert!((plan.lead.mm() - 2.002).abs() < 1e-12);
    assert!((plan.scale_per_mille - 1.0).abs() < 1e-9);
    assert!((plan.offset.mm() - 0.3).abs() < 1e-9);
    assert!(plan.residual.mm() < 1e-9);
    let over = plan
        .over_board
        .iter()
        .find(|over| over.length.mm() == 140.0)
        .unwrap();
    assert!((over.error.mm() - 0.14).abs() < 1e-9);
    assert_eq!(
        (plan.backlash, plan.iso230, plan.once_per_turn),
        (None, None, None)
    );
}

#[test]
fn a_wobble_of_the_turn_is_found_where_it_can_be_told() {
    let wobble = |x: f64| x + 0.03 * sin(core::f64::consts::PI * x + 0.5);
    let plan = check(
        (0..20)
            .map(|i| point(f64::from(i) * 2.3, wobble(f64::from(i) * 2.3), None))
            .collect(),
    );
    let once = plan.once_per_turn.unwrap();
    assert!((once.amplitude.mm() - 0.03).abs() < 1e-9);
    assert!((once.phase_degrees - 0.5_f64.to_degrees()).abs() < 1e-6);
    assert!((plan.scale_per_mille).abs() < 1e-9);
    // Whole turns look the same to it.
    let plan = check(
        (0..20)
            .map(|i| point(f64::from(i) * 2.0, wobble(f64::from(i) * 2.0), None))
            .collect(),
    );
    assert_eq!(plan.once_per_turn, None);
}

#[test]
fn backlash_is_the_difference_of_the_two_ways() {
    let both = |x: f64| {
        [
            point(x, x + 0.06, Some("up")),
            point(x, x - 0.06, Some("down")),
        ]
    };
    let plan = check((0..6).flat_map(|i| both(f64::from(i) * 25.0)).collect());
    assert!((plan.backlash.unwrap().mm() - 0.12).abs() < 1e-9);
    assert_eq!(plan.iso230, None, "one run each way has no spread");
}

#[test]
fn positioning_figures_by_iso_230_2() {
    // Two targets, two runs each way. Worked by hand from the definitions (from memory): deviations
    // at 0: up .01 .03 (mean .02, s .014142), down −.01 .01 (mean 0, s .014142); at 50: up .05 .05 (s 0), down .03 .03.
    let runs = [
        (0.0, "up", [0.01, 0.03]),
        (0.0, "down", [-0.01, 0.01]),
        (50.0, "up", [0.05, 0.05]),
        (50.0, "down", [0.03, 0.03]),
    ];
    let points = runs
        .iter()
        .flat_map(|(x, way, off)| off.map(|off| point(*x, x + off, Some(way))))
        .collect();
    let figures = check(points).iso230.unwrap();
    let s = 0.000_2_f64.sqrt();
    for (got, expected) in [
        (figures.reversal, 0.02),
        (figures.repeatability, 4.0 * s + 0.02),
        (figures.mean_deviation, 0.03),
        (figures.accuracy, 0.05 + 2.0 * s),
    ] {
        assert!((got.mm() - expected).abs() < 1e-9, "{got} for {expected}");
    }
}

#[test]
fn problems_come_at_once() {
    let points = vec![
        point(f64::NAN, 0.0, None),
        point(0.0, 0.0, Some("sideways")),
        Given::Wrong("the number 3".to_owned()),
        point(1.0, 1.0, None),
    ];
    let request = ScrewCheckRequest {
        screw: Given::Missing,
        points: points.into(),
    };
    let problems = screw_check(&request).unwrap_err();
    let found: Vec<_> = problems
        .iter()
        .map(|problem| (problem.field.as_str(), problem.code))
        .collect();
    assert_eq!(
        found,
        [
            ("screw", Code::Missing),
            ("points.0.commanded", Code::NotFinite),
            ("points.1.approach", Code::UnknownWord),
            ("points.2", Code::WrongKind),
        ]
    );
    let same = ScrewCheckRequest {
        screw: screw().into(),
        points: vec![point(5.0, 5.0, None); 4].into(),
    };
    assert_eq!(screw_check(&same).unwrap_err()[0].field, "points");
    let few = ScrewCheckRequest {
        screw: screw().into(),
        points: vec![point(5.0, 5.0, None)].into(),
    };
    assert_eq!(screw_check(&few).unwrap_err()[0].code, Code::TooSmall);
}
