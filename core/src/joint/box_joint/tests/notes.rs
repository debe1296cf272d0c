//! What to know of a joint.

use super::{codes, cutter, plan, request, screw};
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::ScrewRequest;
use crate::joint::box_joint::{BoxJointRequest, LayoutRequest};

#[test]
fn alternately_ground_teeth_leave_ridges() {
    // Derived: kerf / 2 · tan β; 3.2 and 15° → 0.429 mm.
    let grind = GrindRequest {
        kind: "alternate".into(),
        bevel_degrees: 15.0.into(),
    };
    let request = BoxJointRequest {
        cutter: CutterRequest {
            grind: grind.into(),
            ..cutter(3.2)
        }
        .into(),
        ..request(LayoutRequest::count(9.0))
    };
    let plan = plan(&request);
    assert!(
        (plan.dry_fit.floor_gap_a.mm() + 0.4287).abs() < 5e-5,
        "{}",
        plan.dry_fit.floor_gap_a
    );
    assert_eq!(plan.dry_fit.uncut.len(), 9);
    assert!(!plan.dry_fit.clash);
    assert!(codes(&request).contains(&"floor-ridge"));
}

#[test]
fn notes_come_when_they_should() {
    let base = || request(LayoutRequest::count(9.0));
    let plain = codes(&base());
    for code in [
        "not-symmetric",
        "thin-fingers",
        "gap-finer-than-dial",
        "coarse-dial",
        "floor-ridge",
        "clash",
        "rip-first",
    ] {
        assert!(!plain.contains(&code), "{code}");
    }
    for code in [
        "four-corners",
        "unplug",
        "hands",
        "guard",
        "scrap",
        "manual",
    ] {
        assert!(plain.contains(&code), "{code}");
    }
    let cases = [
        (
            "not-symmetric",
            BoxJointRequest {
                layout: LayoutRequest::count(8.0).into(),
                ..base()
            },
        ),
        (
            "thin-fingers",
            BoxJointRequest {
                layout: LayoutRequest::count(25.0).into(),
                ..base()
            },
        ),
        (
            "wide-fingers",
            BoxJointRequest {
                layout: LayoutRequest::count(5.0).into(),
                ..base()
            },
        ),
        (
            "gap-finer-than-dial",
            BoxJointRequest {
                glue_gap: 0.0.into(),
                ..base()
            },
        ),
        (
            "wide-glue-line",
            BoxJointRequest {
                glue_gap: 0.3.into(),
                ..base()
            },
        ),
        (
            "coarse-dial",
            BoxJointRequest {
                screw: screw(2.0, 10.0).into(),
                ..base()
            },
        ),
        (
            "fine-dial",
            BoxJointRequest {
                screw: ScrewRequest {
                    rounding: "half".into(),
                    ..screw(1.0, 250.0)
                }
                .into(),
                ..base()
            },
        ),
        (
            "wide-stock",
            BoxJointRequest {
                width: 700.0.into(),
                ..base()
            },
        ),
        (
            "rip-first",
            BoxJointRequest {
                layout: LayoutRequest::one_pass("rip").into(),
                ..base()
            },
        ),
    ];
    for (code, request) in cases {
        assert!(
            codes(&request).contains(&code),
            "{code}: {:?}",
            codes(&request)
        );
    }
}
