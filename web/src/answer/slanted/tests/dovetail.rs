//! Dovetails that are asked for in each way.

use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::{ScrewRequest, ZeroRequest};
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{BoardRequest, SawRequest};
use notchwright_core::joint::dovetail::{
    ByRequest, DovetailChoicesRequest, DovetailPlan, DovetailRequest, MeasuredRequest,
    SlopeRequest, dovetail, dovetail_choices,
};

use super::{SlantedAnswer, put, slanted};
use crate::state::{
    DovetailField, Entry, Field, Id, JointField, JointKind, List, PinsBy, SlopeBy, Work, ZeroKind,
};

fn board(thickness: f64) -> Given<BoardRequest> {
    BoardRequest {
        thickness: thickness.into(),
    }
    .into()
}

/// The worked joint, as a script would ask for it.
fn by_hand() -> DovetailRequest {
    DovetailRequest {
        width: 140.0.into(),
        tail: board(12.0),
        pin: board(18.0),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: 4.0.into(),
        narrow_pin: 5.0.into(),
        half_pin: 6.0.into(),
        cutter: CutterRequest {
            kerf: 3.07.into(),
            diameter: 254.0.into(),
            ..CutterRequest::default()
        }
        .into(),
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            travel: 320.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        saw: SawRequest {
            greatest_height: 80.0.into(),
            base: 15.0.into(),
            // Its front rail at 370, its carriage's face at 170.
            window: 200.0.into(),
        }
        .into(),
        ..DovetailRequest::default()
    }
}

/// Neither a pin nor a half-pin is asked for by its width.
fn by_rule(by: ByRequest) -> DovetailRequest {
    DovetailRequest {
        by: by.into(),
        narrow_pin: Given::Missing,
        half_pin: Given::Missing,
        ..by_hand()
    }
}

fn dovetails(change: impl FnOnce(&mut Work)) -> SlantedAnswer {
    slanted(JointKind::Dovetail, change)
}

#[track_caller]
fn assert_agree(change: impl FnOnce(&mut Work), request: &DovetailRequest) -> DovetailPlan {
    let found = dovetails(change);
    assert_eq!(found.problems, []);
    let planned = dovetail(request).unwrap();
    assert_eq!(found.dovetail.current(), Some(&planned));
    planned.plan
}

fn type_own(field: DovetailField, text: &'static str) -> impl Fn(&mut Work) {
    move |work| put(work, Field::Dovetail(field), text)
}

#[test]
fn the_worked_joint_is_the_handbooks_example() {
    let plan = assert_agree(|_| {}, &by_hand());
    // Derived: (140 − 3 · 5 − 2 · 6) / 4 = 28.25 at the tip, less 2 · 18 / 8 at the baseline.
    let widths = [
        (plan.tail_tip, 28.25),
        (plan.tail_base, 23.75),
        (plan.pin_outer, 5.0),
        (plan.pin_inner, 9.5),
        (plan.half_pin_inner, 8.25),
    ];
    for (width, derived) in widths {
        assert!(
            (width.mm() - derived).abs() < 1e-9,
            "{width}, not {derived}"
        );
    }
}

#[test]
fn pins_are_found_in_each_way() {
    let by = |by| move |work: &mut Work| work.joint.dovetail.by = by;
    let ratio = assert_agree(by(PinsBy::Ratio), &by_rule(ByRequest::ratio(3.0)));
    let equal = assert_agree(by(PinsBy::Equal), &by_rule(ByRequest::kind("equal")));
    let narrowest = DovetailRequest {
        half_pin: 6.0.into(),
        ..by_rule(ByRequest::kind("narrowest"))
    };
    let narrowest = assert_agree(by(PinsBy::Narrowest), &narrowest);
    assert!(narrowest.pin_outer < ratio.pin_outer);
    assert!(ratio.pin_outer < equal.pin_outer);
}

#[test]
fn the_narrowest_pins_may_have_half_pins_as_narrow() {
    let change = |work: &mut Work| {
        work.joint.dovetail.by = PinsBy::Narrowest;
        put(work, Field::Dovetail(DovetailField::HalfPin), "");
    };
    let plan = assert_agree(change, &by_rule(ByRequest::kind("narrowest")));
    assert_eq!(plan.half_pin_outer, plan.pin_outer);
}

#[test]
fn the_slope_is_read_in_both_ways() {
    let steeper = DovetailRequest {
        slope: SlopeRequest::ratio(6.5).into(),
        ..by_hand()
    };
    assert_agree(type_own(DovetailField::Run, "6,5"), &steeper);
    let degrees = DovetailRequest {
        slope: SlopeRequest::angle(8.0).into(),
        ..by_hand()
    };
    let change = |work: &mut Work| work.joint.dovetail.slope_by = SlopeBy::Degrees;
    let plan = assert_agree(change, &degrees);
    assert!((plan.angle_degrees - 8.0).abs() < 1e-12);
}

#[test]
fn what_seldom_changes_is_handed_on() {
    let change = |work: &mut Work| {
        put(work, Field::Joint(JointField::GlueGap), "0.1");
        put(work, Field::Joint(JointField::Proud), "0.5");
        put(work, Field::Dovetail(DovetailField::Weights), "1 1 2 1");
        work.joint.zero.kind = ZeroKind::Flush;
    };
    let request = DovetailRequest {
        glue_gap: 0.1.into(),
        proud: 0.5.into(),
        weights: [1.0, 1.0, 2.0, 1.0].map(Given::from).to_vec().into(),
        zero: ZeroRequest {
            kind: "flush".into(),
            ..ZeroRequest::default()
        }
        .into(),
        ..by_hand()
    };
    let plan = assert_agree(change, &request);
    assert!(!plan.symmetric);
}

#[test]
fn a_lap_leaves_the_pin_board_to_the_chisel() {
    let request = DovetailRequest {
        lap: 6.0.into(),
        ..by_hand()
    };
    let plan = assert_agree(type_own(DovetailField::Lap, "6"), &request);
    // Derived: 18 − 6.
    assert!((plan.depth_a.mm() - 12.0).abs() < 1e-9);
    assert!(plan.sets.iter().all(|set| set.yaw_degrees == 0.0));
}

#[test]
fn upright_cuts_may_have_a_cutter_of_their_own() {
    let request = DovetailRequest {
        pin_cutter: CutterRequest {
            kerf: 6.35.into(),
            ..CutterRequest::default()
        }
        .into(),
        ..by_hand()
    };
    let plan = assert_agree(|work| work.joint.dovetail.pin_cutter = Id(3), &request);
    assert!(
        plan.sets
            .iter()
            .any(|set| (set.kerf.mm() - 6.35).abs() < 1e-9)
    );
    // One that is gone is none.
    assert_agree(|work| work.joint.dovetail.pin_cutter = Id(9), &by_hand());
}

#[test]
fn a_measured_lean_is_what_the_dry_fit_counts_with() {
    let change = |work: &mut Work| {
        put(work, Field::Dovetail(DovetailField::LeanOffset), "6");
        put(work, Field::Dovetail(DovetailField::LeanHeight), "50");
    };
    let request = DovetailRequest {
        measured: MeasuredRequest {
            // Derived: arctan 6 / 50.
            lean_degrees: notchwright_core::math::atan2(6.0, 50.0).to_degrees().into(),
            ..MeasuredRequest::default()
        }
        .into(),
        ..by_hand()
    };
    let off = assert_agree(change, &request);
    let as_asked = assert_agree(|_| {}, &by_hand());
    assert_ne!(off.dry_fit, as_asked.dry_fit);
    assert_eq!(off.sets, as_asked.sets);
    // Half a measurement is none.
    assert_agree(type_own(DovetailField::LeanOffset, "6"), &by_hand());
    assert_agree(type_own(DovetailField::LeanHeight, "50"), &by_hand());
}

#[test]
fn the_chosen_saw_and_sled_bound_it() {
    let low = |work: &mut Work| {
        work.shop
            .saws
            .change(Id(1), |saw| saw.greatest_height = Entry::mm("30"));
    };
    let found = dovetails(low);
    // Derived: 30 · cos θ − 15 is less than the 18 of the pin board.
    assert_eq!(
        super::fields(&found),
        [Some(Field::Joint(JointField::ThicknessB))]
    );
    let unbounded = |work: &mut Work| {
        work.shop.saws = List::default();
        work.shop.sleds = List::default();
    };
    let request = DovetailRequest {
        saw: SawRequest::default().into(),
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        ..by_hand()
    };
    assert_agree(unbounded, &request);
}

#[test]
fn numbers_of_tails_are_offered_without_one_being_typed() {
    let request = by_hand();
    let asked = DovetailChoicesRequest {
        width: request.width,
        tail: request.tail,
        pin: request.pin,
        slope: request.slope,
        half_pin: request.half_pin,
        narrow_pin: request.narrow_pin,
        cutter: request.cutter,
        screw: request.screw,
        ..DovetailChoicesRequest::default()
    };
    let wanted = dovetail_choices(&asked).unwrap().plan.choices;
    let tails = Field::Dovetail(DovetailField::Tails);
    for text in ["4", "", "some", "61"] {
        let found = dovetails(|work| put(work, tails, text));
        assert_eq!(found.choices, wanted, "{text}");
    }
    // None while what they follow from cannot be read.
    for field in [
        Field::Joint(JointField::Width),
        Field::Dovetail(DovetailField::Run),
        Field::Dovetail(DovetailField::NarrowPin),
    ] {
        let found = dovetails(|work| put(work, field, "a hair"));
        assert_eq!(found.choices, [], "{field:?}");
    }
}
