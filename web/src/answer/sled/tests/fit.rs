//! The chosen sled on the chosen saw.

use notchwright_core::problem::Planned;
use notchwright_core::sled::{
    BaseRequest, BladeRequest, CutRequest, LeftOverRequest, RunnerRequest, SledFitPlan,
    SledFitRequest, SledRequest, TableRequest, sled_fit,
};

use super::{assert_stale, fields, put, sled, typed};
use crate::state::{
    CutField, CutterField, Entry, Field, Id, JointField, MeasuredFrom, SawField, Section, Side,
    SledField, Work,
};

const DEPTH: Field = Field::Cut(CutField::Depth);
const THICKNESS: Field = Field::Cut(CutField::Thickness);

/// The worked joint's cut: 18 deep into a board 18 thick and 140 wide.
fn cut(depth: f64, board_thickness: f64, board_width: f64) -> CutRequest {
    CutRequest {
        depth: depth.into(),
        board_thickness: board_thickness.into(),
        board_width: board_width.into(),
        carriage_travel: 320.0.into(),
        ..CutRequest::default()
    }
}

/// The worked joint's sled and saw, as a script would give them.
fn by_hand(cut: CutRequest) -> SledFitRequest {
    let holes = [60.0, 230.0, 400.0].map(Into::into).to_vec();
    SledFitRequest {
        saw: TableRequest {
            blade_to_slot: 118.5.into(),
            measured_from: "nearTooth".into(),
            slot_side: "left".into(),
            front_to_arbor: 305.0.into(),
            arbor_to_rear: 372.0.into(),
            greatest_height: 80.0.into(),
            second_slot: 142.0.into(),
            slot_section: "plain".into(),
        }
        .into(),
        blade: BladeRequest {
            diameter: 254.0.into(),
            kerf: 3.07.into(),
        }
        .into(),
        sled: SledRequest {
            base: BaseRequest {
                thickness: 15.0.into(),
                width: 520.0.into(),
                length: 560.0.into(),
                margin: 20.0.into(),
            }
            .into(),
            carriage_face: 170.0.into(),
            front_rail: 370.0.into(),
            runner: RunnerRequest {
                contact_near: 20.0.into(),
                contact_far: 440.0.into(),
                width: 19.0.into(),
                holes: holes.into(),
                hole_clearance: 0.5.into(),
            }
            .into(),
            ..SledRequest::default()
        }
        .into(),
        cut: cut.into(),
        play: 0.1.into(),
        ..SledFitRequest::default()
    }
}

fn demo() -> SledFitRequest {
    by_hand(cut(18.0, 18.0, 140.0))
}

#[track_caller]
fn assert_agree(change: impl FnOnce(&mut Work), request: &SledFitRequest) -> Planned<SledFitPlan> {
    let found = sled(change);
    let planned = sled_fit(request).unwrap();
    assert_eq!(found.fit.current(), Some(&planned));
    planned
}

#[test]
fn the_worked_joints_sled_is_fitted_as_by_hand() {
    assert_agree(|_| {}, &demo());
}

#[test]
fn words_are_handed_on() {
    let mut request = demo();
    request.saw = TableRequest {
        blade_to_slot: 118.5.into(),
        measured_from: "centre".into(),
        slot_side: "right".into(),
        front_to_arbor: 305.0.into(),
        arbor_to_rear: 372.0.into(),
        greatest_height: 80.0.into(),
        second_slot: 142.0.into(),
        slot_section: "t".into(),
    }
    .into();
    let change = |work: &mut Work| {
        work.shop.saws.change(Id(1), |saw| {
            saw.side = Side::Right;
            saw.measured_from = MeasuredFrom::Centre;
            saw.section = Section::T;
        });
    };
    let otherwise = assert_agree(change, &request);
    assert_ne!(otherwise, sled_fit(&demo()).unwrap());
}

#[test]
fn what_is_blank_of_the_cut_is_the_joints() {
    let change = |work: &mut Work| {
        work.joint.thickness_a = Entry::mm("20");
        work.joint.proud = Entry::mm("1");
        work.joint.width = Entry::mm("150");
    };
    let thicker = assert_agree(change, &by_hand(cut(21.0, 20.0, 150.0)));
    let usual = sled_fit(&demo()).unwrap();
    assert_ne!(thicker.plan.travel, usual.plan.travel);
    assert_ne!(thicker.plan.runner.forward, usual.plan.runner.forward);
}

#[test]
fn what_is_typed_of_the_cut_goes_before_the_joints() {
    let change = |work: &mut Work| {
        put(work, DEPTH, "10");
        put(work, THICKNESS, "12");
        put(work, Field::Cut(CutField::Width), "100");
    };
    assert_agree(change, &by_hand(cut(10.0, 12.0, 100.0)));
}

#[test]
fn a_text_that_cannot_be_read_is_a_problem_at_its_own_field() {
    let good = sled(|_| {});
    let (saw, on_sled) = (
        |field| Field::Saw(Id(1), field),
        |field| Field::Sled(Id(1), field),
    );
    let in_fit = [
        saw(SawField::ToSlot),
        saw(SawField::SecondSlot),
        saw(SawField::Front),
        saw(SawField::Rear),
        on_sled(SledField::Width),
        on_sled(SledField::Length),
        on_sled(SledField::BladeLine),
        on_sled(SledField::RunnerWidth),
        on_sled(SledField::ContactNear),
        on_sled(SledField::ContactFar),
        on_sled(SledField::Margin),
        on_sled(SledField::Holes),
        on_sled(SledField::HoleClearance),
    ];
    let in_cut = CutField::ALL.iter().map(|field| Field::Cut(*field));
    for field in in_fit.into_iter().chain(in_cut) {
        let found = typed(field, "a hair");
        assert_eq!(fields(&found), [Some(field)]);
        assert_stale(&found.fit, &good.fit);
        assert_eq!((found.fit.needed, found.fit.refused), (vec![], vec![]));
        assert!(found.square.is_current, "{field:?}");
    }
}

#[test]
fn what_must_be_filled_in_is_listed_in_order_and_is_no_problem() {
    let needed = [
        Field::Cutter(Id(1), CutterField::Diameter),
        Field::Saw(Id(1), SawField::ToSlot),
        Field::Saw(Id(1), SawField::Front),
        Field::Saw(Id(1), SawField::Rear),
        Field::Saw(Id(1), SawField::GreatestHeight),
        Field::Sled(Id(1), SledField::Base),
        Field::Sled(Id(1), SledField::Width),
        Field::Sled(Id(1), SledField::Length),
        Field::Sled(Id(1), SledField::CarriageFace),
        Field::Sled(Id(1), SledField::FrontRail),
        Field::Sled(Id(1), SledField::ContactNear),
        Field::Sled(Id(1), SledField::ContactFar),
        Field::Sled(Id(1), SledField::RunnerWidth),
    ];
    let good = sled(|_| {});
    let found = sled(|work| needed.iter().for_each(|field| put(work, *field, " ")));
    assert_eq!(found.fit.needed, needed);
    assert_eq!((fields(&found), found.fit.refused.len()), (vec![], 0));
    assert_stale(&found.fit, &good.fit);
    for field in needed {
        assert_eq!(typed(field, "").fit.needed, [field]);
    }
}

#[test]
fn a_cut_that_the_joint_does_not_say_is_needed() {
    let found = sled(|work| {
        put(work, Field::Joint(JointField::ThicknessA), "");
        put(work, Field::Joint(JointField::ThicknessB), "");
    });
    assert_eq!(found.fit.needed, [DEPTH, THICKNESS]);
}

#[test]
fn what_may_stay_blank_is_not_asked_for() {
    let found = sled(|work| {
        for field in [
            Field::Saw(Id(1), SawField::SecondSlot),
            Field::Sled(Id(1), SledField::Travel),
            Field::Sled(Id(1), SledField::Margin),
            Field::Sled(Id(1), SledField::Holes),
            Field::Sled(Id(1), SledField::HoleClearance),
            Field::Cut(CutField::Play),
        ] {
            put(work, field, "");
        }
    });
    let plan = &found.fit.current().unwrap().plan;
    assert_eq!((plan.second_runner, plan.yaw), (None, None));
    assert_eq!((plan.holes, plan.widest_board), (None, None));
}

#[test]
fn left_overs_are_compared_only_when_both_were_measured() {
    let (near, far) = (Field::Cut(CutField::Near), Field::Cut(CutField::Far));
    for field in [near, far] {
        let found = typed(field, "12");
        let plan = &found.fit.current().unwrap().plan;
        assert_eq!(plan.from_measured, None, "{field:?}");
    }
    let both = |work: &mut Work| {
        put(work, near, "12");
        put(work, far, "-7");
    };
    let measured = LeftOverRequest {
        near: 12.0.into(),
        far: (-7.0).into(),
    };
    let request = SledFitRequest {
        measured: measured.into(),
        ..demo()
    };
    let planned = assert_agree(both, &request);
    assert!(planned.plan.from_measured.is_some());
}

#[test]
fn what_does_not_go_together_is_said_at_its_field() {
    let rail = Field::Sled(Id(1), SledField::FrontRail);
    let contact = Field::Sled(Id(1), SledField::ContactFar);
    assert_eq!(fields(&typed(contact, "10")), [Some(contact)]);
    assert_eq!(fields(&typed(DEPTH, "70")), [Some(DEPTH)]);
    let narrow = typed(rail, "250");
    assert!(fields(&narrow).contains(&Some(rail)), "{narrow:?}");
}
