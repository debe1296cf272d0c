//! Drawings of the tools around the joint, compared byte for byte with those in `golden/`.

use super::compare;

use notchwright_core::dial::ScrewRequest;
use notchwright_core::drawing::{
    Drawing, HistoryPoint, five_cut_steps, groove_setup_drawing, screw_errors, screw_residuals,
    square_correction, square_history,
};
use notchwright_core::given::Given;
use notchwright_core::groove::{GrooveSetupRequest, StoppedRequest, groove_setup};
use notchwright_core::math::sin;
use notchwright_core::screw_check::{PointRequest, ScrewCheckRequest, screw_check};
use notchwright_core::square::{SquareTestRequest, square_test};
use notchwright_core::units::{Mm, write_number};

const STYLE: &str = include_str!("../../golden/tools-style.css");

fn golden(name: &str, drawing: &Drawing) {
    compare(name, STYLE, drawing, |length: Mm| {
        format!("{} mm", write_number(length.mm(), 3))
    });
}

#[test]
fn five_cuts() {
    for (cut, drawing) in (1..).zip(five_cut_steps()) {
        golden(&format!("five-cut-{cut}"), &drawing);
    }
}

/// A strip that tapers from the fence end by so much over 340 mm.
fn correction(taper: f64) -> Drawing {
    let request = SquareTestRequest {
        fence_end: (20.0 + taper).into(),
        free_end: 20.0.into(),
        apart: 340.0.into(),
        pivot_to_adjuster: 600.0.into(),
        ..SquareTestRequest::default()
    };
    square_correction(&square_test(&request).expect("a good request").plan)
}

#[test]
fn fences_out_of_square() {
    golden("square-towards", &correction(1.36));
    golden("square-away", &correction(-0.5));
    golden("square-within-noise", &correction(0.01));
}

#[test]
fn tests_of_a_fence() {
    let tests = [0.62, 0.21, -0.09, 0.04, 0.01].map(|error| HistoryPoint {
        error_per_500: Mm::new(error).expect("a number"),
        uncertainty_per_500: Mm::constant(0.12),
    });
    let drawing = square_history(&tests).expect("more than one test");
    golden("square-history", &drawing);
}

/// A lead 0.6 ‰ too long, a wobble of 0.03 mm, and 0.06 mm of backlash where both ways are measured.
fn screw(places: u32, apart: f64, ways: &[Option<&str>]) -> ScrewCheckRequest {
    let point = |place: u32, way: Option<&str>| {
        let commanded = f64::from(place) * apart;
        let lost = match way {
            Some("up") => 0.03,
            Some(_) => -0.03,
            None => 0.0,
        };
        // As uneven as a reading is, and the same every time.
        let reading = 0.008 * sin(f64::from(place) * 12.9 + 40.0 * lost);
        let wobble = 0.03 * sin(core::f64::consts::PI * commanded);
        PointRequest {
            commanded: commanded.into(),
            measured: (0.1 + commanded * 1.0006 + wobble + lost + reading).into(),
            approach: way.map_or(Given::Missing, Given::from),
        }
    };
    let points: Vec<Given<PointRequest>> = (0..places)
        .flat_map(|place| ways.iter().map(move |way| point(place, *way).into()))
        .collect();
    ScrewCheckRequest {
        screw: ScrewRequest {
            lead: 2.0.into(),
            divisions: 100.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        points: points.into(),
    }
}

#[test]
fn screws() {
    let cases = [
        ("one-way", screw(18, 2.3, &[None])),
        ("both-ways", screw(14, 3.3, &[Some("up"), Some("down")])),
        ("long", screw(40, 7.3, &[Some("up"), Some("down"), None])),
    ];
    for (name, request) in cases {
        let plan = screw_check(&request).expect("a good request").plan;
        golden(&format!("screw-{name}-errors"), &screw_errors(&plan));
        golden(&format!("screw-{name}-residuals"), &screw_residuals(&plan));
    }
}

fn groove(from_edge: f64, width: f64, bit: f64) -> GrooveSetupRequest {
    GrooveSetupRequest {
        from_edge: from_edge.into(),
        width: width.into(),
        bit: bit.into(),
        ..GrooveSetupRequest::default()
    }
}

fn stopped(from: f64, to: f64) -> Given<StoppedRequest> {
    let ends = StoppedRequest {
        from: from.into(),
        to: to.into(),
    };
    ends.into()
}

#[test]
fn grooves() {
    let cases = [
        ("one-pass", groove(12.0, 6.0, 6.0)),
        (
            "stopped",
            GrooveSetupRequest {
                stopped: stopped(40.0, 100.0),
                depth: 7.0.into(),
                pass_depth: 3.0.into(),
                ..groove(20.0, 16.0, 6.0)
            },
        ),
        (
            "far-from-the-fence",
            GrooveSetupRequest {
                stopped: stopped(0.0, 1200.0),
                depth: 6.25.into(),
                ..groove(612.5, 9.3, 6.35)
            },
        ),
        (
            "along-the-edge",
            GrooveSetupRequest {
                stopped: stopped(3.0, 15.0),
                ..groove(6.5, 13.0, 12.0)
            },
        ),
    ];
    for (name, request) in cases {
        let plan = groove_setup(&request).expect("a good request").plan;
        golden(&format!("groove-{name}"), &groove_setup_drawing(&plan));
    }
}
