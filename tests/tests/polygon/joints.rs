//! Joints to try: as planned, and as no plan would have them.

use notchwright_core::cutter::{CutterRequest, GrindRequest};
use notchwright_core::dial::ScrewRequest;
use notchwright_core::dryfit::Seat;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{BoardRequest, BoxJointRequest, LayoutRequest, box_joint};
use notchwright_core::stop::Set;
use notchwright_core::units::Mm;
use proptest::prelude::*;

/// Two boards and the stops they are cut at.
#[derive(Debug)]
pub(crate) struct Cut {
    pub(crate) width: Mm,
    pub(crate) a: Set,
    pub(crate) b: Set,
    pub(crate) seat: Seat,
}

#[expect(clippy::expect_used, reason = "strategies make finite numbers only")]
fn mm(mm: f64) -> Mm {
    Mm::new(mm).expect("a finite length")
}

/// Joints as they are planned.
pub(crate) fn planned() -> impl Strategy<Value = Cut> {
    let boards = (25.0..400.0_f64, 4.0..30.0_f64, 4.0..30.0_f64, 0.0..3.0_f64);
    let details = (cutter(), screw(), layout(), 0.0..0.3_f64, any::<bool>());
    (boards, details).prop_filter_map("no such joint", |((width, a, b, proud), details)| {
        let (cutter, screw, layout, gap, first_is_pin) = details;
        let board = |thickness: f64| BoardRequest {
            thickness: thickness.into(),
        };
        let request = BoxJointRequest {
            width: width.into(),
            a: board(a).into(),
            b: board(b).into(),
            cutter: cutter.into(),
            screw: screw.into(),
            layout: layout.into(),
            first: if first_is_pin { "pin" } else { "socket" }.into(),
            glue_gap: gap.into(),
            proud: proud.min(a).min(b).into(),
            ..BoxJointRequest::default()
        };
        let plan = box_joint(&request).ok()?.plan;
        let seat = Seat {
            thickness_a: mm(a),
            thickness_b: mm(b),
            proud: mm(proud.min(a).min(b)),
        };
        let [a, b] = <[Set; 2]>::try_from(plan.sets).ok()?;
        Some(Cut {
            width: plan.width,
            a,
            b,
            seat,
        })
    })
}

/// Joints whose stops have slipped, been left out or been cut at the wrong height.
pub(crate) fn slipped() -> impl Strategy<Value = Cut> {
    let slips = prop::collection::vec((-2.0..2.0_f64, 0..10_u8), 1..40);
    let height = || prop_oneof![Just(0.0), 0.01..1.5_f64, -1.5..-0.01_f64];
    let heights = (height(), height());
    (planned(), slips, heights).prop_map(|(mut cut, mut slips, heights)| {
        slip(&mut cut.a, &slips, heights.0);
        slips.reverse();
        slip(&mut cut.b, &slips, heights.1);
        cut
    })
}

fn slip(set: &mut Set, slips: &[(f64, u8)], height: f64) {
    set.height += mm(height);
    let mut slips = slips.iter().cycle();
    set.stops.retain_mut(|stop| {
        let (by, fate) = slips.next().copied().unwrap_or_default();
        if fate < 4 {
            stop.at += mm(by);
        }
        fate < 9
    });
}

fn cutter() -> impl Strategy<Value = CutterRequest> {
    let grind = prop_oneof![
        Just(Given::Missing),
        (1.0..40.0_f64).prop_map(|bevel| {
            GrindRequest {
                kind: "alternate".into(),
                bevel_degrees: bevel.into(),
            }
            .into()
        }),
    ];
    (0.8..12.0_f64, 0.0..0.5_f64, grind).prop_map(|(kerf, share, grind)| CutterRequest {
        kerf: kerf.into(),
        overlap: (kerf * share).into(),
        grind,
        ..CutterRequest::default()
    })
}

fn screw() -> impl Strategy<Value = ScrewRequest> {
    let rises = prop_oneof![Just("away"), Just("towards")];
    (0.8..6.0_f64, 10..200_u32, rises).prop_map(|(lead, divisions, rises)| ScrewRequest {
        lead: lead.into(),
        divisions: f64::from(divisions).into(),
        rises: rises.into(),
        ..ScrewRequest::default()
    })
}

fn layout() -> impl Strategy<Value = LayoutRequest> {
    let leftover = prop_oneof![Just("ends"), Just("far"), Just("rip")];
    prop_oneof![
        (2..=40_u32).prop_map(|count| LayoutRequest::count(f64::from(count))),
        (3.0..40.0_f64).prop_map(LayoutRequest::finger),
        leftover.prop_map(LayoutRequest::one_pass),
        (prop::collection::vec(0.5..4.0_f64, 2..20), any::<bool>())
            .prop_map(|(weights, mirrored)| LayoutRequest::pattern(&weights, mirrored)),
    ]
}
