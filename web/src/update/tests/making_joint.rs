//! Corners of drawers that go on as joints.

use notchwright_core::joint::box_joint::Make;
use notchwright_core::joint::dovetail::{DovetailPlan, dovetail};
use notchwright_core::stop::Board;
use notchwright_core::units::Unit;
use proptest::prelude::*;
use proptest::sample::select;

use super::making_drawer::{choose, hand_over, open, plan, problems, type_in};
use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, HandOver, MakingEdit, Msg};
use crate::state::fields::{Known, drawer, part};
use crate::state::{Field, Group, Id, JointKind, Place, ScrewField};

/// The joint is planned without a problem, and what it says of the groove is what the drawer's plan said.
#[test]
fn the_joint_goes_on_as_a_new_one() {
    for (layout, field, text) in [
        ("count", drawer::FINGERS, "7"),
        // Here the groove is moved to the edge of its finger.
        ("count", drawer::FINGERS, "5"),
        ("finger", drawer::FINGER, "13"),
        ("", drawer::BOTTOM, "5"),
    ] {
        let mut model = open();
        choose(&mut model, drawer::LAYOUT, layout);
        type_in(&mut model, field, text);
        let drawer = plan(&model).drawers[0].clone();
        let before = model.state.work.clone();
        let effects = hand_over(&mut model, HandOver::Joint(0));
        assert_eq!(effects, [Effect::ScrollToTop]);
        assert_eq!(model.state.place, Place::Joint);
        assert_eq!(
            model.state.work.joints().count(),
            before.joints().count() + 1
        );
        assert_eq!(problems(&model), []);
        let joint = &model.answer.current().unwrap().plan;
        assert!((joint.width - drawer.height).mm().abs() <= 0.005);
        assert_eq!(joint.count, drawer.joint.count as usize, "{layout}");
        let groove = joint.groove.as_ref().unwrap();
        let is_hidden = groove.ends.iter().any(|end| end.make == Make::Through);
        assert_eq!(is_hidden, drawer.groove.hidden, "{layout} {text}");
        assert_eq!(model.answer.pieces.count(Board::A), 32);
        model.update(Msg::Undo);
        assert_eq!(model.state.work, before);
    }
}

/// The typed width of the joint that goes on, and of the part; both have to be the same.
fn width(model: &Model) -> String {
    let mut parts = model.clone();
    hand_over(&mut parts, HandOver::Parts);
    let making = &parts.state.work.job.making;
    let part = &making.rows(Group::Parts)[4].form;
    let mut joint = model.clone();
    hand_over(&mut joint, HandOver::Joint(0));
    let joint = &joint.state.work.joint.width;
    assert_eq!(part.get(part::WIDTH.name()), Some(joint));
    assert_eq!(joint.unit, Unit::Mm);
    joint.text.clone()
}

/// 69.25 / 1.01096 is 68.4993 mm. Seven fingers of 3/8 of an inch are 66.675, and five of 13 are 65; one pass of 3.07
/// less 0.05 is 95 steps of 0.03175, 3.01625, and 23 of them are too many: 21 are 63.34125.
#[test]
fn heights_go_on_as_they_are_shown_or_as_fingers_make_them() {
    let mut model = open();
    assert_eq!(width(&model), "68.5");
    choose(&mut model, drawer::LAYOUT, "finger");
    model.update(Msg::Units(Unit::Inch));
    type_in(&mut model, drawer::FINGER, "3/8");
    assert_eq!(width(&model), "66.675");
    model.update(Msg::Units(Unit::Mm));
    type_in(&mut model, drawer::FINGER, "13");
    assert_eq!(width(&model), "65");
    choose(&mut model, drawer::LAYOUT, "");
    let screw = model.state.work.shop.screws.chosen().unwrap().id;
    for (field, text) in [(ScrewField::Lead, "1.5875"), (ScrewField::Divisions, "50")] {
        model.update(Msg::Edit(Edit::Type(
            Field::Screw(screw, field),
            text.into(),
        )));
    }
    assert_eq!(width(&model), "63.3413");
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Whatever is rounded: the joint has the drawer's fingers, and hides the groove where the drawer did.
    #[test]
    fn the_joint_stays_whole(
        tenths in 5_000_u32..9_000,
        layout in select(&["count", "finger", ""][..]),
        fingers in 1_u32..7,
        finger in 80_u32..200,
        groove in 60_u32..200,
        (lead, divisions) in select(&[("2", "100"), ("1.5875", "50"), ("1.27", "64"), ("3.175", "75")][..]),
        unit in select(&[Unit::Mm, Unit::Inch][..]),
    ) {
        let mut model = open();
        let tenth = |tenths: u32| format!("{}.{}", tenths / 10, tenths % 10);
        let screw = model.state.work.shop.screws.chosen().unwrap().id;
        for (field, text) in [(ScrewField::Lead, lead), (ScrewField::Divisions, divisions)] {
            model.update(Msg::Edit(Edit::Type(Field::Screw(screw, field), text.into())));
        }
        choose(&mut model, drawer::LAYOUT, layout);
        type_in(&mut model, drawer::FINGERS, &(2 * fingers + 1).to_string());
        type_in(&mut model, drawer::FINGER, &tenth(finger));
        type_in(&mut model, drawer::HEIGHT, &tenth(tenths));
        type_in(&mut model, drawer::GROOVE_FROM, &tenth(groove));
        model.update(Msg::Units(unit));
        let outcome = &model.answer.making.as_ref().unwrap().drawer;
        prop_assume!(outcome.current().is_some());
        let drawer = plan(&model).drawers[0].clone();
        hand_over(&mut model, HandOver::Joint(0));
        prop_assert_eq!(problems(&model), []);
        let joint = &model.answer.current().unwrap().plan;
        prop_assert_eq!(joint.count, drawer.joint.count as usize);
        let groove = joint.groove.as_ref().unwrap();
        let is_hidden = groove.ends.iter().any(|end| end.make == Make::Through);
        prop_assert_eq!(is_hidden, drawer.groove.hidden, "{:?}", drawer.groove);
    }
}

/// As they were typed, with the drawer's boards; a joint that plans what the drawer's own request does.
#[test]
fn dovetails_go_on_as_dovetails() {
    let mut model = open();
    choose(&mut model, drawer::JOINT, "dovetail");
    let needed = &model.answer.making.as_ref().unwrap().drawer.needed;
    let all = [
        drawer::RUN,
        drawer::TAILS,
        drawer::HALF_PIN,
        drawer::NARROW_PIN,
    ];
    assert!(
        all.iter().all(|field| needed.contains(&field.alone())),
        "{needed:?}"
    );
    for (field, text) in [
        (drawer::RUN, "8"),
        (drawer::TAILS, "3"),
        (drawer::HALF_PIN, "6"),
        (drawer::NARROW_PIN, "5"),
        (drawer::LAP, "4"),
    ] {
        type_in(&mut model, field, text);
    }
    let blade = model.state.work.shop.cutters.items()[0].id;
    let refer = MakingEdit::Refer(drawer::PIN_CUTTER.spot(Id::default()), blade);
    model.update(Msg::Edit(Edit::Making(refer)));
    assert_eq!(problems(&model), []);
    let drawer = plan(&model).drawers[0].clone();
    assert_eq!(drawer.joint.count, 3);
    // The sides end behind the lap at both ends.
    assert!((drawer.boards[0].length.mm() - 582.0).abs() < 1e-9);
    hand_over(&mut model, HandOver::Joint(0));
    model.update(Msg::Came(Chunk::Dovetail));
    let joint = &model.state.work.joint;
    assert_eq!(
        (joint.kind, joint.width.text.as_str()),
        (JointKind::Dovetail, "68.5")
    );
    assert_eq!(
        (
            joint.thickness_a.text.as_str(),
            joint.thickness_b.text.as_str()
        ),
        ("12", "14")
    );
    assert_eq!(joint.dovetail.pin_cutter, blade);
    assert_eq!(problems(&model), []);
    let slanted = model.answer.slanted.as_ref().unwrap();
    let planned = &slanted.dovetail.current().unwrap().plan;
    let asked = dovetail(drawer.joint.dovetail.as_ref().unwrap())
        .unwrap()
        .plan;
    assert_eq!(planned.count, asked.count);
    let tips = |plan: &DovetailPlan| {
        plan.tails
            .iter()
            .map(|tail| (tail.to_tip - tail.from_tip).mm())
            .collect::<Vec<_>>()
    };
    for (planned, asked) in tips(planned).iter().zip(tips(&asked)) {
        // A hundredth in the whole width at most.
        assert!((planned - asked).abs() < 0.01, "{planned} {asked}");
    }
}

/// Every way to pins and slope asks for its own fields alone.
#[test]
fn each_way_to_pins_asks_for_its_own() {
    let ways: [(&str, &[Known]); 4] = [
        ("", &[drawer::HALF_PIN, drawer::NARROW_PIN]),
        ("ratio", &[drawer::TAIL_TO_PIN]),
        ("equal", &[]),
        ("narrowest", &[drawer::HALF_PIN]),
    ];
    for (way, asked) in ways {
        for (slope, of_slope, text) in [("", drawer::RUN, "8"), ("degrees", drawer::DEGREES, "7.5")]
        {
            let mut model = open();
            // What was typed for other kinds stays out of it.
            for field in [
                drawer::NARROW_PIN,
                drawer::HALF_PIN,
                drawer::TAIL_TO_PIN,
                drawer::RUN,
                drawer::DEGREES,
            ] {
                if !asked.iter().any(|one| one.name() == field.name())
                    && field.name() != of_slope.name()
                {
                    type_in(&mut model, field, "wide");
                }
            }
            choose(&mut model, drawer::JOINT, "dovetail");
            choose(&mut model, drawer::PINS, way);
            choose(&mut model, drawer::SLOPE, slope);
            for (field, text) in [(drawer::TAILS, "2"), (of_slope, text)] {
                type_in(&mut model, field, text);
            }
            for field in asked {
                let text = if field.name() == drawer::TAIL_TO_PIN.name() {
                    "2"
                } else {
                    "7"
                };
                type_in(&mut model, *field, text);
            }
            assert_eq!(problems(&model), [], "{way} {slope}");
            assert!(plan(&model).drawers[0].joint.dovetail.is_some());
        }
    }
}
