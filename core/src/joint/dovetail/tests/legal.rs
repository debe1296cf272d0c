//! Requests from all over the legal domain.

use proptest::prelude::*;

use super::super::{ByRequest, DovetailRequest, MeasuredRequest, SlopeRequest};
use super::board;
use crate::cutter::{CutterRequest, GrindRequest};
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::Given;

/// Any request whose single fields are legal; whether the joint can be made is another matter.
pub(super) fn request() -> impl Strategy<Value = DovetailRequest> {
    let boards = (2.0..3000.0_f64, 0.5..200.0_f64, 0.5..200.0_f64, slope());
    let widths = (1..=60_u32, 0.1..100.0_f64, 0.1..100.0_f64, by());
    let fit = (0.0..2.0_f64, 0.0..2.0_f64, 0.0..20.0_f64, 0..3_u32);
    let tools = (
        cutter(0.2..60.0),
        option(cutter(0.2..60.0)),
        screw(),
        zero(),
    );
    let measured =
        option(
            (0.1..45.0_f64, 0.1..45.0_f64).prop_map(|(lean, turn)| MeasuredRequest {
                lean_degrees: lean.into(),
                turn_degrees: turn.into(),
            }),
        );
    (boards, widths, fit, tools, measured).prop_map(|(boards, widths, fit, tools, measured)| {
        let (width, tail, pin, slope) = boards;
        let (tails, narrow_pin, half_pin, by) = widths;
        let (gap, proud, lap, which) = fit;
        let (cutter, pin_cutter, screw, zero) = tools;
        let by_widths = by.is_missing();
        DovetailRequest {
            width: width.into(),
            tail: board(tail).into(),
            pin: board(pin).into(),
            slope: slope.into(),
            tails: f64::from(tails).into(),
            half_pin: only(by_widths, half_pin),
            narrow_pin: only(by_widths, narrow_pin),
            by,
            glue_gap: gap.into(),
            proud: only(which == 1, proud),
            lap: only(which == 2, lap),
            cutter: cutter.into(),
            pin_cutter,
            screw: screw.into(),
            zero: zero.into(),
            measured,
            ..DovetailRequest::default()
        }
    })
}

/// Requests as they come up in a shop; nearly all of them can be made.
pub(super) fn usual_request() -> impl Strategy<Value = DovetailRequest> {
    let boards = (4.0..30.0_f64, 4.0..30.0_f64, slope(), 1..=12_u32);
    let cutters = (1.6..4.0_f64, cutter(1.6..4.0), option(cutter(1.6..4.0)));
    // How much wider than they must be pins, half-pins and tails are.
    let spare = (0.0..12.0_f64, 0.0..12.0_f64, 0.0..40.0_f64);
    let fit = (
        0.0..0.2_f64,
        prop_oneof![Just(0.0), 0.0..1.0_f64],
        option(weights()),
    );
    let tools = (screw(), zero());
    (boards, cutters, spare, fit, tools).prop_map(|(boards, cutters, spare, fit, tools)| {
        let ((tail, pin, slope, tails), (gap, proud, weights)) = (boards, fit);
        let (kerf, cutter, pin_cutter) = cutters;
        let cutter = CutterRequest {
            kerf: kerf.into(),
            ..cutter
        };
        let tangent = tangent(&slope);
        let widest = 4.0 * (1.0 + tangent * tangent).sqrt();
        let narrow_pin = widest + 2.0 * proud * tangent + spare.0;
        let half_pin = 1.0 + proud * tangent + spare.1;
        let tip = widest + 2.0 * tangent * pin + 1.0 + spare.2;
        let count = f64::from(tails);
        let weights = match weights {
            Given::Value(weights) => weights
                .into_iter()
                .take(tails as usize)
                .collect::<Vec<_>>()
                .into(),
            _ => Given::Missing,
        };
        DovetailRequest {
            width: (count * tip + (count - 1.0) * narrow_pin + 2.0 * half_pin).into(),
            tail: board(tail.max(proud)).into(),
            pin: board(pin).into(),
            slope: slope.into(),
            tails: count.into(),
            half_pin: half_pin.into(),
            narrow_pin: narrow_pin.into(),
            weights,
            glue_gap: gap.into(),
            proud: proud.into(),
            cutter: cutter.into(),
            pin_cutter,
            screw: tools.0.into(),
            zero: tools.1.into(),
            ..DovetailRequest::default()
        }
    })
}

fn only<T>(is_given: bool, value: T) -> Given<T> {
    if is_given {
        Given::Value(value)
    } else {
        Given::Missing
    }
}

fn option<T: std::fmt::Debug>(given: impl Strategy<Value = T>) -> impl Strategy<Value = Given<T>> {
    prop::option::of(given).prop_map(|given| given.map_or(Given::Missing, Given::Value))
}

/// Twelve nearly equal weights, so that the narrowest tail still stands.
fn weights() -> impl Strategy<Value = Vec<Given<f64>>> {
    prop::collection::vec((1.0..1.1_f64).prop_map(Given::Value), 12)
}

pub(super) fn tangent(slope: &SlopeRequest) -> f64 {
    match (&slope.run, &slope.degrees) {
        (Given::Value(run), _) => 1.0 / run,
        (_, Given::Value(degrees)) => crate::math::tan(degrees.to_radians()),
        _ => panic!("a slope"),
    }
}

fn slope() -> impl Strategy<Value = SlopeRequest> {
    prop_oneof![
        (1.0..20.0_f64).prop_map(SlopeRequest::ratio),
        (4.0..10.0_f64).prop_map(|run| SlopeRequest::ratio(run.round())),
        (0.1..45.0_f64).prop_map(SlopeRequest::angle),
    ]
}

fn by() -> impl Strategy<Value = Given<ByRequest>> {
    prop_oneof![
        Just(Given::Missing),
        (0.1..20.0_f64).prop_map(|ratio| ByRequest::ratio(ratio).into()),
        Just(ByRequest::kind("equal").into()),
        Just(ByRequest::kind("narrowest").into()),
    ]
}

fn cutter(kerf: std::ops::Range<f64>) -> impl Strategy<Value = CutterRequest> {
    let simple = |kind: &str| GrindRequest {
        kind: kind.into(),
        ..GrindRequest::default()
    };
    let grind = prop_oneof![
        Just(Given::Missing),
        Just(simple("slope").into()),
        (0.0..45.0_f64).prop_map(|bevel| {
            GrindRequest {
                kind: "alternate".into(),
                bevel_degrees: bevel.into(),
            }
            .into()
        }),
    ];
    (kerf, grind).prop_map(|(kerf, grind)| CutterRequest {
        kerf: kerf.into(),
        grind,
        ..CutterRequest::default()
    })
}

fn screw() -> impl Strategy<Value = ScrewRequest> {
    let rounding = prop_oneof!["division", "half", "none"];
    let rises = prop_oneof!["away", "towards"];
    (0.5..10.0_f64, 20..=400_u32, 0.0..1.0_f64, rounding, rises).prop_map(
        |(lead, divisions, backlash, rounding, rises)| ScrewRequest {
            lead: lead.into(),
            divisions: f64::from(divisions).into(),
            backlash: backlash.into(),
            rounding: rounding.into(),
            rises: rises.into(),
            ..ScrewRequest::default()
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
