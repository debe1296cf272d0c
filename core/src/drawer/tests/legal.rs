//! Requests: the chart chest, and drawers from all over the legal domain.

use proptest::prelude::*;
use proptest::strategy::Union;

use crate::cutter::CutterRequest;
use crate::dial::ScrewRequest;
use crate::drawer::{
    AppliedFrontRequest, DrawerBottomRequest, DrawerBoxRequest, DrawerGrooveRequest,
    DrawerHeightsRequest, DrawerJointRequest, DrawerLayoutRequest, DrawerSizeRequest,
};
use crate::given::Given;
use crate::joint::box_joint::BoardRequest;
use crate::joint::dovetail::{ByRequest, SlopeRequest};
use crate::wood::{ClimateRequest, SPECIES, SolidWoodRequest};

/// A request with something changed.
pub(super) fn edit<T>(mut request: T, change: impl FnOnce(&mut T)) -> T {
    change(&mut request);
    request
}

pub(super) fn board(thickness: f64) -> Given<BoardRequest> {
    BoardRequest {
        thickness: thickness.into(),
    }
    .into()
}

pub(super) fn opening() -> DrawerSizeRequest {
    DrawerSizeRequest {
        kind: "opening".into(),
        width: 900.0.into(),
        height: 640.0.into(),
        depth: 600.0.into(),
        slides: "side".into(),
        side_clearance: 10.0.into(),
        above: 2.0.into(),
        below: 0.0.into(),
        behind: 10.0.into(),
    }
}

pub(super) fn cutter(kerf: f64) -> CutterRequest {
    CutterRequest {
        kerf: kerf.into(),
        ..CutterRequest::default()
    }
}

pub(super) fn screw() -> ScrewRequest {
    ScrewRequest {
        lead: 2.0.into(),
        divisions: 100.0.into(),
        ..ScrewRequest::default()
    }
}

pub(super) fn box_joint() -> DrawerJointRequest {
    DrawerJointRequest {
        kind: "box".into(),
        layout: DrawerLayoutRequest {
            kind: "count".into(),
            count: 7.0.into(),
            ..DrawerLayoutRequest::default()
        }
        .into(),
        cutter: cutter(6.35).into(),
        screw: screw().into(),
        ..DrawerJointRequest::default()
    }
}

pub(super) fn groove() -> DrawerGrooveRequest {
    DrawerGrooveRequest {
        from_edge: 10.0.into(),
        depth: 6.0.into(),
        bit: 6.0.into(),
        ..DrawerGrooveRequest::default()
    }
}

pub(super) fn bottom() -> DrawerBottomRequest {
    DrawerBottomRequest {
        thickness: 6.0.into(),
        groove: groove().into(),
        ..DrawerBottomRequest::default()
    }
}

pub(super) fn ash(sawn: &str) -> SolidWoodRequest {
    SolidWoodRequest {
        species: "white-ash".into(),
        sawn: sawn.into(),
        moisture: 8.0.into(),
        ..SolidWoodRequest::default()
    }
}

/// A chart chest with eight shallow ash drawers.
pub(crate) fn chest() -> DrawerBoxRequest {
    DrawerBoxRequest {
        size: opening().into(),
        count: 8.0.into(),
        between: 10.0.into(),
        side: board(12.0),
        front: board(14.0),
        joint: box_joint().into(),
        bottom: bottom().into(),
        wood: ash("flat").into(),
        climate: ClimateRequest {
            kind: "moisture".into(),
            driest: 6.0.into(),
            wettest: 12.0.into(),
            ..ClimateRequest::default()
        }
        .into(),
        ..DrawerBoxRequest::default()
    }
}

fn given(number: Option<f64>) -> Given<f64> {
    number.map_or(Given::Missing, Given::from)
}

fn size() -> impl Strategy<Value = (DrawerSizeRequest, f64)> {
    let extent = (60.0..1500.0_f64, 40.0..1500.0_f64, 60.0..1200.0_f64);
    let around = (0.0..30.0_f64, 0.0..20.0_f64, 0.0..20.0_f64, 0.0..40.0_f64);
    let kind = prop_oneof!["outside", "runners", "side", "under"];
    (extent, around, kind, 1..=12_u32).prop_map(|(extent, around, kind, count)| {
        let (width, height, depth) = extent;
        let is_opening = kind != "outside";
        let sometimes = |number: f64| given(is_opening.then_some(number));
        let size = DrawerSizeRequest {
            kind: if is_opening { "opening" } else { "outside" }.into(),
            width: width.into(),
            height: height.into(),
            depth: depth.into(),
            slides: if is_opening {
                kind.as_str().into()
            } else {
                Given::Missing
            },
            side_clearance: sometimes(around.0),
            above: sometimes(around.1),
            below: given((kind == "side" || kind == "under").then_some(around.2)),
            behind: sometimes(around.3),
        };
        (size, f64::from(count))
    })
}

fn heights() -> impl Strategy<Value = DrawerHeightsRequest> {
    let kind = |kind: &str, step: Option<f64>, ratio: Option<f64>| DrawerHeightsRequest {
        kind: kind.into(),
        step: given(step),
        ratio: given(ratio),
    };
    Union::new([
        Just(kind("equal", None, None)).boxed(),
        (0.1..40.0_f64)
            .prop_map(move |step| kind("graduated", Some(step), None))
            .boxed(),
        (1.01..1.6_f64)
            .prop_map(move |ratio| kind("ratio", None, Some(ratio)))
            .boxed(),
    ])
}

fn joint() -> impl Strategy<Value = DrawerJointRequest> {
    let layout = Union::new([
        (1..=20_u32)
            .prop_map(|half| ("count", Some(f64::from(2 * half + 1)), None))
            .boxed(),
        (3.0..30.0_f64)
            .prop_map(|width| ("finger", None, Some(width)))
            .boxed(),
        Just(("onePass", None, None)).boxed(),
    ]);
    let dial = (
        0.5..6.0_f64,
        20..=200_u32,
        prop_oneof!["division", "half", "none"],
    );
    let fit = (any::<bool>(), 0.0..0.2_f64, 0.0..0.5_f64);
    let lap = || prop::option::of(0.0..4.0_f64);
    let tails = (
        1..=5_u32,
        3.0..15.0_f64,
        3.0..12.0_f64,
        lap(),
        lap(),
        pins(),
    );
    (0..4_u32, layout, 1.6..9.0_f64, dial, fit, tails).prop_map(
        |(which, layout, kerf, dial, fit, tails)| {
            let screw = ScrewRequest {
                lead: dial.0.into(),
                divisions: f64::from(dial.1).into(),
                rounding: dial.2.as_str().into(),
                ..ScrewRequest::default()
            };
            let shared = DrawerJointRequest {
                cutter: cutter(kerf).into(),
                screw: screw.into(),
                glue_gap: fit.1.into(),
                proud: fit.2.into(),
                ..DrawerJointRequest::default()
            };
            if which == 0 {
                let by_widths = tails.5.kind == "widths".into();
                let is_through = tails.3.is_none() && tails.4.is_none();
                return DrawerJointRequest {
                    kind: "dovetail".into(),
                    slope: SlopeRequest::ratio(7.0).into(),
                    tails: f64::from(tails.0).into(),
                    half_pin: given(by_widths.then_some(tails.1)),
                    narrow_pin: given(by_widths.then_some(tails.2)),
                    by: tails.5.into(),
                    lap: given(tails.3),
                    back_lap: given(tails.4),
                    cutter: cutter(2.4).into(),
                    // Behind a lap nothing stands proud.
                    proud: given(is_through.then_some(fit.2)),
                    ..shared
                };
            }
            DrawerJointRequest {
                kind: "box".into(),
                layout: DrawerLayoutRequest {
                    kind: layout.0.into(),
                    count: given(layout.1),
                    width: given(layout.2),
                }
                .into(),
                first: if fit.0 { "pin" } else { "socket" }.into(),
                ..shared
            }
        },
    )
}

/// By their widths, or by proportion.
fn pins() -> impl Strategy<Value = ByRequest> {
    Union::new([
        Just(ByRequest::kind("widths")).boxed(),
        Just(ByRequest::kind("equal")).boxed(),
        Just(ByRequest::kind("narrowest")).boxed(),
        (1.0..5.0_f64).prop_map(ByRequest::ratio).boxed(),
    ])
}

fn wood() -> impl Strategy<Value = SolidWoodRequest> {
    let sawn = prop_oneof!["flat", "quarter"];
    (0..SPECIES.len(), sawn, 4.0..18.0_f64).prop_map(|(index, sawn, moisture)| SolidWoodRequest {
        species: SPECIES[index].name.into(),
        sawn: sawn.as_str().into(),
        moisture: moisture.into(),
        ..SolidWoodRequest::default()
    })
}

fn climate() -> impl Strategy<Value = ClimateRequest> {
    let air = (5.0..60.0_f64, 0.0..35.0_f64, 0.0..40.0_f64);
    air.prop_map(|(driest, more, celsius)| ClimateRequest {
        kind: "humidity".into(),
        driest: driest.into(),
        wettest: (driest + more).into(),
        temperature: celsius.into(),
    })
}

fn bottoms() -> impl Strategy<Value = DrawerBottomRequest> {
    let groove = (0.0..25.0_f64, 2.0..10.0_f64, 0.0..0.5_f64, any::<bool>());
    (groove, 3.0..12.0_f64, 0.0..3.0_f64).prop_map(|(groove, thickness, clearance)| {
        let groove = DrawerGrooveRequest {
            from_edge: groove.0.into(),
            depth: groove.1.into(),
            clearance: groove.2.into(),
            bit: given(groove.3.then_some(3.0)),
        };
        DrawerBottomRequest {
            thickness: thickness.into(),
            groove: groove.into(),
            clearance: clearance.into(),
            wood: Given::Missing,
        }
    })
}

/// Any request whose single fields are legal; whether its drawers can be made is another matter.
pub(super) fn request() -> impl Strategy<Value = DrawerBoxRequest> {
    let back = prop::option::of(6.0..30.0_f64);
    let boards = (6.0..30.0_f64, 6.0..30.0_f64, 0.0..40.0_f64, back);
    let front = prop::option::of((8.0..25.0_f64, -4.0..15.0_f64, 0.0..5.0_f64));
    let woods = (
        prop::option::of(wood()),
        prop::option::of(wood()),
        climate(),
    );
    (size(), heights(), boards, joint(), bottoms(), woods, front).prop_map(
        |((size, count), heights, boards, joint, bottom, woods, front)| {
            let is_opening = size.kind == "opening".into();
            let is_solid = woods.0.is_some() || woods.1.is_some();
            DrawerBoxRequest {
                size: size.into(),
                count: count.into(),
                heights: is_opening
                    .then_some(heights)
                    .map_or(Given::Missing, Given::from),
                between: given(is_opening.then_some(boards.2)),
                side: board(boards.0),
                front: board(boards.1),
                back: boards.3.map_or(Given::Missing, board),
                applied: front.map_or(Given::Missing, |(thickness, lap, gap)| {
                    AppliedFrontRequest {
                        thickness: thickness.into(),
                        lap: lap.into(),
                        gap: gap.into(),
                    }
                    .into()
                }),
                joint: joint.into(),
                bottom: DrawerBottomRequest {
                    wood: woods.1.map_or(Given::Missing, Given::from),
                    ..bottom
                }
                .into(),
                wood: woods.0.map_or(Given::Missing, Given::from),
                climate: is_solid
                    .then_some(woods.2)
                    .map_or(Given::Missing, Given::from),
            }
        },
    )
}

/// Drawers as they are made: an opening with room for them.
pub(crate) fn usual_request() -> impl Strategy<Value = DrawerBoxRequest> {
    (request(), 300.0..900.0_f64, 70.0..200.0_f64).prop_map(|(request, wide, high)| {
        let Given::Value(count) = request.count else {
            return request;
        };
        let outside = matches!(&request.size, Given::Value(size) if size.kind == "outside".into());
        edit(request, |request| {
            let many = if outside { 1.0 } else { count };
            if let Given::Value(size) = &mut request.size {
                size.width = wide.into();
                size.depth = 400.0.into();
                size.height = (high * many).into();
            }
            if !outside {
                request.between = 12.0.into();
            }
            if let Given::Value(bottom) = &mut request.bottom {
                bottom.clearance = 0.5.into();
            }
        })
    })
}
