//! Requests from all over the legal domain.

use proptest::prelude::*;
use proptest::strategy::Union;

use super::super::{BoardRequest, BoxJointRequest, LayoutRequest};
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::Given;

/// Any request whose single fields are legal; whether the joint can be made is another matter.
pub(super) fn request() -> impl Strategy<Value = BoxJointRequest> {
    let boards = (2.0..3000.0_f64, 0.5..200.0_f64, 0.5..200.0_f64);
    let fit = (any::<bool>(), 0.0..2.0_f64, 0.0..0.5_f64);
    (boards, cutter(), screw(), zero(), layout(), fit).prop_map(
        |(boards, cutter, screw, zero, layout, fit)| {
            let ((width, a, b), (first_is_pin, gap, proud)) = (boards, fit);
            BoxJointRequest {
                width: width.into(),
                a: BoardRequest {
                    thickness: a.into(),
                }
                .into(),
                b: BoardRequest {
                    thickness: b.into(),
                }
                .into(),
                cutter: cutter.into(),
                screw: screw.into(),
                zero: zero.into(),
                layout: layout.into(),
                first: if first_is_pin { "pin" } else { "socket" }.into(),
                glue_gap: gap.into(),
                proud: proud.into(),
                ..BoxJointRequest::default()
            }
        },
    )
}

/// Requests as they come up in a shop; nearly all of them can be made.
pub(super) fn usual_request() -> impl Strategy<Value = BoxJointRequest> {
    let usual = (30.0..600.0_f64, 1.6..6.0_f64, 0.01..0.15_f64, 3..=200_u32);
    (request(), usual).prop_map(|(request, (width, kerf, gap, count))| {
        let most = (width / (kerf + 2.0)).max(2.0);
        let layout = match request.layout {
            Given::Value(LayoutRequest {
                kind: Given::Value(ref kind),
                ..
            }) if kind == "count" || kind == "finger" => {
                LayoutRequest::count(f64::from(count).min(most.floor())).into()
            }
            ref layout => layout.clone(),
        };
        let cutter = match request.cutter {
            Given::Value(ref cutter) => CutterRequest {
                kerf: kerf.into(),
                overlap: Given::Missing,
                ..cutter.clone()
            },
            _ => CutterRequest::default(),
        };
        BoxJointRequest {
            width: width.into(),
            cutter: cutter.into(),
            glue_gap: gap.into(),
            layout,
            ..request
        }
    })
}

fn cutter() -> impl Strategy<Value = CutterRequest> {
    let grind = prop_oneof![
        Just(Given::Missing),
        Just(
            GrindRequest {
                kind: "flat".into(),
                ..GrindRequest::default()
            }
            .into()
        ),
        (0.0..45.0_f64).prop_map(|bevel| {
            GrindRequest {
                kind: "alternate".into(),
                bevel_degrees: bevel.into(),
            }
            .into()
        }),
    ];
    (0.2..60.0_f64, 0.0..0.5_f64, grind).prop_map(|(kerf, share, grind)| CutterRequest {
        kerf: kerf.into(),
        overlap: (kerf * share).into(),
        grind,
        ..CutterRequest::default()
    })
}

pub(super) fn screw() -> impl Strategy<Value = ScrewRequest> {
    let pitch = prop_oneof![
        (0.5..25.0_f64).prop_map(|lead| (Given::Value(lead), Given::Missing)),
        (4.0..40.0_f64).prop_map(|threads| (Given::Missing, Given::Value(threads))),
    ];
    let rounding = prop_oneof!["division", "half", "none"];
    let rises = prop_oneof!["away", "towards"];
    (pitch, 1..=400_u32, 0.0..1.0_f64, rounding, rises).prop_map(
        |(pitch, divisions, backlash, rounding, rises)| ScrewRequest {
            lead: pitch.0,
            threads_per_inch: pitch.1,
            divisions: f64::from(divisions).into(),
            backlash: backlash.into(),
            rounding: rounding.into(),
            rises: rises.into(),
            travel: Given::Missing,
        },
    )
}

fn zero() -> impl Strategy<Value = ZeroRequest> {
    let simple = |kind: &str| ZeroRequest {
        kind: kind.into(),
        ..ZeroRequest::default()
    };
    prop_oneof![
        Just(simple("touch")),
        Just(simple("flush")),
        (-500.0..500.0_f64, -50.0..500.0_f64).prop_map(|(reading, measured)| ZeroRequest {
            kind: "testKerf".into(),
            reading: reading.into(),
            measured: measured.into(),
        }),
    ]
}

fn layout() -> impl Strategy<Value = LayoutRequest> {
    let leftover = prop_oneof!["ends", "far", "rip"];
    Union::new([
        (2..=500_u32)
            .prop_map(|count| LayoutRequest::count(f64::from(count)))
            .boxed(),
        (0.2..1500.0_f64).prop_map(LayoutRequest::finger).boxed(),
        leftover
            .prop_map(|leftover| LayoutRequest::one_pass(&leftover))
            .boxed(),
        (prop::collection::vec(0.5..10.0_f64, 2..40), any::<bool>())
            .prop_map(|(weights, mirrored)| LayoutRequest::pattern(&weights, mirrored))
            .boxed(),
    ])
}
