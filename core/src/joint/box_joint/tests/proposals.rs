//! What a refusal proposes is tried.

use super::{cutter, plan, problems, request, screw};
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::joint::box_joint::{BoxJointRequest, LayoutRequest, box_joint};
use crate::problem::Code;

/// The bound that the only problem of a request names for `field`.
#[track_caller]
fn limit(request: &BoxJointRequest, field: &str, code: Code) -> Option<f64> {
    let problems = problems(request);
    assert_eq!(problems.len(), 1, "{problems:?}");
    assert_eq!((problems[0].0.as_str(), problems[0].1), (field, code));
    problems[0].2
}

#[test]
fn as_many_fingers_as_the_cutter_can_make() {
    let refused = BoxJointRequest {
        cutter: cutter(16.0).into(),
        ..request(LayoutRequest::count(9.0))
    };
    let most = limit(&refused, "layout.count", Code::CutterTooWide).unwrap();
    plan(&BoxJointRequest {
        layout: LayoutRequest::count(most).into(),
        ..refused
    });
}

#[test]
fn fingers_as_wide_as_they_must_be() {
    for (width, kerf, asked, code) in [
        (140.0, 3.2, 3.0, Code::CutterTooWide),
        (128.3, 3.4, 0.9, Code::CutterTooWide),
        (86.7, 13.3, 9.0, Code::CutterTooWide),
        (3000.0, 3.2, 4.0, Code::TooSmall),
    ] {
        let refused = BoxJointRequest {
            width: width.into(),
            cutter: cutter(kerf).into(),
            ..request(LayoutRequest::finger(asked))
        };
        let least = limit(&refused, "layout.width", code).unwrap();
        plan(&BoxJointRequest {
            layout: LayoutRequest::finger(least).into(),
            ..refused
        });
    }
}

/// Derived: not even three fingers leave a socket of 29 mm on 86.7.
#[test]
fn no_width_of_fingers_is_proposed_where_none_would_do() {
    let refused = BoxJointRequest {
        width: 86.7.into(),
        cutter: cutter(29.0).into(),
        ..request(LayoutRequest::finger(29.0))
    };
    assert_eq!(limit(&refused, "layout.width", Code::CutterTooWide), None);
}

fn test_kerf(reading: f64, measured: f64) -> ZeroRequest {
    ZeroRequest {
        kind: "testKerf".into(),
        reading: reading.into(),
        measured: measured.into(),
    }
}

fn travels(travel: f64, zero: ZeroRequest, layout: LayoutRequest) -> BoxJointRequest {
    let screw = ScrewRequest {
        travel: travel.into(),
        ..screw(2.0, 100.0)
    };
    BoxJointRequest {
        width: 280.0.into(),
        screw: screw.into(),
        zero: zero.into(),
        ..request(layout)
    }
}

#[test]
fn a_board_as_wide_as_the_carriage_travels() {
    let touch = || ZeroRequest {
        kind: "touch".into(),
        ..ZeroRequest::default()
    };
    for (travel, zero, layout) in [
        (100.0, touch(), LayoutRequest::count(9.0)),
        (145.0, touch(), LayoutRequest::finger(19.5)),
        (100.0, touch(), LayoutRequest::one_pass("ends")),
        (
            100.0,
            touch(),
            LayoutRequest::pattern(&[1.0, 2.0, 7.0], false),
        ),
        (150.0, test_kerf(0.0, -20.0), LayoutRequest::count(9.0)),
        // Both boards' stops are rounded, so that the trip grows in steps.
        (
            100.0,
            test_kerf(100.0, 100.0),
            LayoutRequest::pattern(&[1.6, 1.004_150_453_955_901_4], false),
        ),
    ] {
        let refused = travels(travel, zero, layout);
        let widest = limit(&refused, "width", Code::BeyondTravel).unwrap();
        let narrower = |width: f64| BoxJointRequest {
            width: width.into(),
            ..refused.clone()
        };
        plan(&narrower(widest));
        // Nor is it needlessly narrow; the number of fingers may change on the way.
        assert!(box_joint(&narrower(widest + 5.0)).is_err(), "{widest}");
    }
}

/// Where the zero is what is far away, no board is narrow enough; a zero on the board's middle would do.
#[test]
fn a_zero_too_far_away_is_not_made_up_for_by_a_narrower_board() {
    let far = travels(300.0, test_kerf(0.0, -400.0), LayoutRequest::count(9.0));
    assert_eq!(limit(&far, "width", Code::BeyondTravel), None);
    let message = box_joint(&far).unwrap_err()[0]
        .message
        .show(|mm| mm.mm().to_string());
    assert!(
        message.ends_with("a zero nearer to the board's middle would work."),
        "{message}"
    );
    plan(&BoxJointRequest {
        zero: test_kerf(0.0, 140.0).into(),
        ..far
    });
}
