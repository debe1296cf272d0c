//! Drawings of drawers, compared byte for byte with those in `golden/`.

use super::compare;

use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::drawer::{
    AppliedFrontRequest, DrawerBottomRequest, DrawerBoxRequest, DrawerGrooveRequest,
    DrawerHeightsRequest, DrawerJointRequest, DrawerLayoutRequest, DrawerSizeRequest, drawer_box,
};
use notchwright_core::drawing::{Drawing, drawer_elevation, drawer_plan_view};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::dovetail::SlopeRequest;
use notchwright_core::units::{Mm, write_number};
use notchwright_core::wood::{ClimateRequest, SolidWoodRequest};

const STYLE: &str = include_str!("../../golden/drawer-style.css");

fn golden(name: &str, drawing: &Drawing) {
    compare(name, STYLE, drawing, |length: Mm| {
        format!("{} mm", write_number(length.mm(), 2))
    });
}

fn board(thickness: f64) -> Given<BoardRequest> {
    BoardRequest {
        thickness: thickness.into(),
    }
    .into()
}

/// A chart chest with eight shallow ash drawers, whose fingers are one pass of a 6.35 mm cutter.
fn chest() -> DrawerBoxRequest {
    DrawerBoxRequest {
        size: DrawerSizeRequest {
            kind: "opening".into(),
            width: 900.0.into(),
            height: 640.0.into(),
            depth: 600.0.into(),
            slides: "runners".into(),
            side_clearance: 1.0.into(),
            above: 2.0.into(),
            behind: 10.0.into(),
            ..DrawerSizeRequest::default()
        }
        .into(),
        count: 8.0.into(),
        between: 10.0.into(),
        side: board(12.0),
        front: board(14.0),
        joint: DrawerJointRequest {
            kind: "box".into(),
            layout: DrawerLayoutRequest {
                kind: "onePass".into(),
                ..DrawerLayoutRequest::default()
            }
            .into(),
            cutter: CutterRequest {
                kerf: 6.35.into(),
                ..CutterRequest::default()
            }
            .into(),
            screw: ScrewRequest {
                lead: 2.0.into(),
                divisions: 100.0.into(),
                ..ScrewRequest::default()
            }
            .into(),
            ..DrawerJointRequest::default()
        }
        .into(),
        bottom: DrawerBottomRequest {
            thickness: 6.0.into(),
            groove: DrawerGrooveRequest {
                from_edge: 10.0.into(),
                depth: 6.0.into(),
                bit: 6.0.into(),
                ..DrawerGrooveRequest::default()
            }
            .into(),
            ..DrawerBottomRequest::default()
        }
        .into(),
        wood: SolidWoodRequest {
            species: "white-ash".into(),
            sawn: "flat".into(),
            moisture: 8.0.into(),
            ..SolidWoodRequest::default()
        }
        .into(),
        climate: ClimateRequest {
            kind: "humidity".into(),
            driest: 35.0.into(),
            wettest: 65.0.into(),
            temperature: 20.0.into(),
        }
        .into(),
        ..DrawerBoxRequest::default()
    }
}

/// A narrow stand of five graduated drawers behind applied fronts.
fn stand() -> DrawerBoxRequest {
    let chest = chest();
    DrawerBoxRequest {
        size: DrawerSizeRequest {
            kind: "opening".into(),
            width: 420.0.into(),
            height: 700.0.into(),
            depth: 450.0.into(),
            slides: "side".into(),
            side_clearance: 12.5.into(),
            above: 6.0.into(),
            below: 4.0.into(),
            ..DrawerSizeRequest::default()
        }
        .into(),
        count: 5.0.into(),
        between: 0.0.into(),
        heights: DrawerHeightsRequest {
            kind: "graduated".into(),
            step: 25.0.into(),
            ..DrawerHeightsRequest::default()
        }
        .into(),
        applied: AppliedFrontRequest {
            thickness: 18.0.into(),
            lap: 12.0.into(),
            gap: 3.0.into(),
        }
        .into(),
        joint: match chest.joint {
            Given::Value(joint) => DrawerJointRequest {
                layout: DrawerLayoutRequest {
                    kind: "finger".into(),
                    width: 12.0.into(),
                    ..DrawerLayoutRequest::default()
                }
                .into(),
                first: "socket".into(),
                ..joint
            }
            .into(),
            joint => joint,
        },
        wood: Given::Missing,
        climate: Given::Missing,
        ..chest
    }
}

/// One drawer with a half-blind front of 19 and a through back of 10.
fn lapped() -> DrawerBoxRequest {
    let chest = chest();
    DrawerBoxRequest {
        size: DrawerSizeRequest {
            kind: "outside".into(),
            width: 300.0.into(),
            height: 90.0.into(),
            depth: 240.0.into(),
            ..DrawerSizeRequest::default()
        }
        .into(),
        count: Given::Missing,
        between: Given::Missing,
        front: board(19.0),
        back: board(10.0),
        joint: match chest.joint {
            Given::Value(joint) => DrawerJointRequest {
                kind: "dovetail".into(),
                layout: Given::Missing,
                slope: SlopeRequest::ratio(7.0).into(),
                tails: 2.0.into(),
                half_pin: 8.0.into(),
                narrow_pin: 7.0.into(),
                lap: 5.0.into(),
                back_lap: 0.0.into(),
                ..joint
            }
            .into(),
            joint => joint,
        },
        bottom: match chest.bottom {
            Given::Value(bottom) => DrawerBottomRequest {
                groove: DrawerGrooveRequest {
                    from_edge: 12.0.into(),
                    depth: 5.0.into(),
                    ..DrawerGrooveRequest::default()
                }
                .into(),
                ..bottom
            }
            .into(),
            bottom => bottom,
        },
        wood: Given::Missing,
        climate: Given::Missing,
        ..chest
    }
}

#[test]
fn a_drawer_with_two_kinds_of_ends() {
    let plan = drawer_box(&lapped()).expect("a good request").plan;
    let view = drawer_plan_view(&plan, 0).expect("a drawer");
    golden("drawer-lapped-plan", &view);
}

#[test]
fn drawers() {
    for (name, request) in [("chest", chest()), ("stand", stand())] {
        let plan = drawer_box(&request).expect("a good request").plan;
        let elevation = drawer_elevation(&plan).expect("an opening");
        golden(&format!("drawer-{name}-elevation"), &elevation);
        let view = drawer_plan_view(&plan, 0).expect("a drawer");
        golden(&format!("drawer-{name}-plan"), &view);
    }
}
