//! Drawers with two kinds of corners: two joints, and what becomes of them when the drawers change.

use notchwright_core::joint::box_joint::Make;
use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::stop::Board;

use super::making_drawer::{choose, hand_over, open, plan, problems, type_in};
use crate::model::{Chunk, Model};
use crate::msg::{Edit, HandOver, Leaf, Msg, SawMove};
use crate::notice::Notice;
use crate::state::fields::{Known, drawer, part, stock};
use crate::state::{Field, Group, JointField, JointForm, PinsBy, Place};

fn fill(model: &mut Model, fields: &[(Known, &str)]) {
    for (field, text) in fields {
        type_in(model, *field, text);
    }
}

/// A front of 19 and a back of 10, the sides of 12.
fn two_ends() -> Model {
    let mut model = open();
    let boards = [
        (drawer::FRONT, "19"),
        (drawer::BACK, "10"),
        (drawer::GROOVE_DEPTH, "5"),
    ];
    fill(&mut model, &boards);
    assert_eq!(problems(&model), []);
    model
}

/// The same with a half-blind front and a through back.
fn half_blind() -> Model {
    let mut model = two_ends();
    choose(&mut model, drawer::JOINT, "dovetail");
    choose(&mut model, drawer::PINS, "ratio");
    let tails = [
        (drawer::RUN, "7"),
        (drawer::TAILS, "2"),
        (drawer::TAIL_TO_PIN, "3"),
        (drawer::LAP, "5"),
        (drawer::BACK_LAP, "0"),
    ];
    fill(&mut model, &tails);
    assert_eq!(problems(&model), []);
    model
}

/// Hands the first drawer over, and goes back to it.
fn to_joint(model: &mut Model) {
    model.notices.clear();
    hand_over(model, HandOver::Joint(0));
    assert_eq!(model.state.place, Place::Joint);
    model.update(Msg::Came(Chunk::Dovetail));
    assert_eq!(problems(model), []);
}

fn back_to_parts(model: &mut Model) {
    model.update(Msg::Go(Place::Parts));
}

/// The joints that the demo does not have.
fn joints(model: &Model) -> Vec<JointForm> {
    let new = model.state.work.joints().filter(|joint| joint.id.0 > 1);
    new.cloned().collect()
}

fn names(model: &Model) -> Vec<String> {
    let names = joints(model).into_iter().map(|joint| joint.name.text);
    names.collect()
}

fn open_joint(model: &mut Model, name: &str) {
    model.update(Msg::Came(Chunk::Jobs));
    let place = {
        let mut joints = model.state.work.joints();
        joints.position(|joint| joint.name.text == name).unwrap()
    };
    model.update(Msg::Edit(Edit::JointOf(Leaf::Open(place))));
}

#[test]
fn front_and_back_go_on_as_two_joints() {
    let mut model = two_ends();
    let drawer = plan(&model).drawers[0].clone();
    let before = model.state.work.clone();
    to_joint(&mut model);
    assert_eq!(model.notices, []);
    let both = ["Drawer, sides to front", "Drawer, sides to back"];
    assert_eq!(names(&model), both);
    let mut undone = model.clone();
    undone.update(Msg::Undo);
    assert_eq!(undone.state.work, before);
    for (name, thickness) in both.iter().zip(["19", "10"]) {
        open_joint(&mut model, name);
        let joint = &model.state.work.joint;
        assert_eq!(
            (
                joint.thickness_a.text.as_str(),
                joint.thickness_b.text.as_str()
            ),
            ("12", thickness)
        );
        let planned = &model.answer.current().unwrap().plan;
        assert_eq!(planned.count, drawer.joint.count as usize);
        let ends = planned.groove.as_ref().unwrap().ends;
        assert!(ends.iter().any(|end| end.make == Make::Through));
        // One end of each of sixteen sides, both of eight fronts.
        let pieces = &model.answer.pieces;
        assert_eq!((pieces.count(Board::A), pieces.count(Board::B)), (16, 16));
    }
}

/// By proportion the back has the front's widths, so that tails have the same tips at both ends of a side.
#[test]
fn tails_are_alike_at_both_ends_of_a_side() {
    let mut model = half_blind();
    let drawer = plan(&model).drawers[0].clone();
    // 590 less the lap.
    assert_eq!(drawer.boards[0].length.mm(), 585.0);
    to_joint(&mut model);
    let mut tips: Vec<Vec<f64>> = Vec::new();
    for (name, lap) in [
        ("Drawer, sides to front", "5"),
        ("Drawer, sides to back", "0"),
    ] {
        open_joint(&mut model, name);
        assert_eq!(problems(&model), []);
        assert_eq!(model.state.work.joint.dovetail.lap.text, lap);
        let slanted = model.answer.slanted.as_ref().unwrap();
        let plan: &DovetailPlan = &slanted.dovetail.current().unwrap().plan;
        let of = plan
            .tails
            .iter()
            .flat_map(|tail| [tail.from_tip, tail.to_tip]);
        tips.push(of.map(notchwright_core::units::Mm::mm).collect());
    }
    assert_eq!(model.state.work.joint.dovetail.by, PinsBy::Widths);
    for (front, back) in tips[0].iter().zip(&tips[1]) {
        assert!((front - back).abs() <= 0.01, "{tips:?}");
    }
}

/// What the drawers gave follows them; what is the joint's own stays.
#[test]
fn the_same_tap_brings_both_up_to_date() {
    let mut model = half_blind();
    to_joint(&mut model);
    let gap = Field::Joint(JointField::GlueGap);
    model.update(Msg::Edit(Edit::Type(gap, "0.1".into())));
    let name = Field::Joint(JointField::Name);
    model.update(Msg::Edit(Edit::Type(name, "Show side".into())));
    let ids: Vec<_> = joints(&model).iter().map(|joint| joint.id).collect();
    back_to_parts(&mut model);
    to_joint(&mut model);
    assert!(matches!(model.notices.as_slice(), [Notice::Unchanged(_)]));
    back_to_parts(&mut model);
    type_in(&mut model, drawer::FRONT, "20");
    to_joint(&mut model);
    let says = "Brought up to date: Show side; Drawer, sides to back.";
    assert_eq!(model.notices, [Notice::HandedOver(says.into(), false)]);
    let found = joints(&model);
    assert_eq!(found.iter().map(|joint| joint.id).collect::<Vec<_>>(), ids);
    assert_eq!(found[0].thickness_b.text, "20");
    assert_eq!(
        (found[0].glue_gap.text.as_str(), found[0].name.text.as_str()),
        ("0.1", "Show side")
    );
    assert_eq!(model.state.work.joint.id, ids[0]);
}

/// A joint that somebody has changed is theirs from then on, and another comes.
#[test]
fn a_changed_joint_stays_and_another_comes() {
    let mut model = two_ends();
    to_joint(&mut model);
    let width = Field::Joint(JointField::Width);
    model.update(Msg::Edit(Edit::Type(width, "60".into())));
    back_to_parts(&mut model);
    to_joint(&mut model);
    let says = "Left beside it, because you changed it: Drawer, sides to front.";
    assert_eq!(model.notices, [Notice::HandedOver(says.into(), true)]);
    let mut widths: Vec<_> = joints(&model)
        .into_iter()
        .map(|joint| joint.width.text)
        .collect();
    widths.sort();
    assert_eq!(widths, ["60", "68.5", "68.5"]);
    assert_eq!(model.state.work.joint.width.text, "68.5");
    back_to_parts(&mut model);
    to_joint(&mut model);
    assert_eq!(joints(&model).len(), 3);
}

/// A back as thick as the front has the front's joint.
#[test]
fn the_backs_joint_goes_with_the_back() {
    let mut model = two_ends();
    to_joint(&mut model);
    back_to_parts(&mut model);
    type_in(&mut model, drawer::BACK, "");
    to_joint(&mut model);
    assert_eq!(names(&model), ["Drawer, sides to front and back"]);
    let says = "Brought up to date: Drawer, sides to front and back. \
                Taken out, being no longer needed: Drawer, sides to back.";
    assert_eq!(model.notices, [Notice::HandedOver(says.into(), false)]);
    assert_eq!(model.answer.pieces.count(Board::A), 32);
}

/// What was cut of a joint that is taken out does not count as cut of one that comes in the same moment.
#[test]
fn a_joint_that_comes_while_another_goes_has_nothing_cut() {
    let mut model = two_ends();
    to_joint(&mut model);
    let width = Field::Joint(JointField::Width);
    model.update(Msg::Edit(Edit::Type(width, "60".into())));
    open_joint(&mut model, "Drawer, sides to back");
    let end = model.answer.pieces.ends(Board::A).next().unwrap();
    for movement in [SawMove::Open, SawMove::Mark(end, true), SawMove::Leave] {
        model.update(Msg::Saw(movement));
    }
    let cut = model.state.progress().clone();
    assert_eq!(cut.done.count(), 1);
    back_to_parts(&mut model);
    type_in(&mut model, drawer::BACK, "");
    to_joint(&mut model);
    let all = ["Drawer, sides to front", "Drawer, sides to front and back"];
    assert_eq!(names(&model), all);
    assert_eq!(model.state.work.joint.name.text, all[1]);
    assert_eq!(model.state.progress().done.count(), 0);
    model.update(Msg::Undo);
    open_joint(&mut model, "Drawer, sides to back");
    assert_eq!(model.state.progress(), &cut);
}

/// Both joints, or none.
#[test]
fn a_job_without_room_for_both_takes_none() {
    let mut model = two_ends();
    model.update(Msg::Came(Chunk::Jobs));
    while model.state.work.job.joints.has_room_for(2) {
        model.update(Msg::Edit(Edit::JointOf(Leaf::Add)));
    }
    back_to_parts(&mut model);
    let before = model.state.work.clone();
    hand_over(&mut model, HandOver::Joint(0));
    assert_eq!(model.state.work, before);
    assert!(model.notices.contains(&Notice::Full));
}

/// A thin back is cut from a stock as thick as it: one that is there, or its own.
#[test]
fn a_back_is_a_part_of_its_own_stock() {
    for (thickness, stocks, of) in [
        ("10", vec![("Fronts", "19"), ("Backs", "10")], "5"),
        ("12", vec![("Fronts", "19")], "1"),
    ] {
        let mut model = two_ends();
        type_in(&mut model, drawer::BACK, thickness);
        hand_over(&mut model, HandOver::Parts);
        let making = &model.state.work.job.making;
        let new = making.rows(Group::Stocks)[3..].iter();
        let new: Vec<_> = new
            .map(|row| {
                let text = |field: Known| row.form.text(field.name());
                (text(stock::NAME), text(stock::THICKNESS))
            })
            .collect();
        assert_eq!(new, stocks);
        let rows = making.rows(Group::Parts);
        let back = &rows[rows.len() - 2].form;
        assert_eq!(back.text(part::NAME.name()), "Drawer back");
        assert_eq!(back.text(part::STOCK.name()), of);
        assert_eq!(back.text(part::WIDTH.name()), "68.5");
    }
}

/// Derived: a groove of 5.8 + 0.1 takes two passes of a bit of 5, 0.9 apart.
#[test]
fn a_bit_sets_the_fence() {
    let mut model = open();
    let passes = |model: &Model| -> Vec<f64> {
        let groove = &plan(model).drawers[0].groove;
        let runs = groove.runs.iter().map(|run| run.passes.clone());
        let all: Vec<_> = runs.collect();
        assert!(all.iter().all(|passes| *passes == all[0]));
        all[0]
            .iter()
            .map(|pass| (pass.fence_to_bit - groove.from_edge).mm())
            .collect()
    };
    assert_eq!(passes(&model), [] as [f64; 0]);
    type_in(&mut model, drawer::GROOVE_BIT, "5");
    let found = passes(&model);
    assert!(
        found[0].abs() < 1e-9 && (found[1] - 0.9).abs() < 1e-9,
        "{found:?}"
    );
    assert_eq!(found.len(), 2);
    type_in(&mut model, drawer::GROOVE_BIT, "6");
    let at = Some(drawer::GROOVE_BIT.alone());
    assert!(problems(&model).iter().any(|(field, _)| *field == at));
}

#[test]
fn what_is_wrong_with_the_back_is_said_beside_it() {
    for (field, typed, says) in [
        (drawer::BACK, "0", "must be"),
        (drawer::BACK, "thin", "begins with a number"),
        (drawer::BACK_LAP, "9.8", "at most"),
        (drawer::BACK_LAP, "-1", "must be"),
    ] {
        let mut model = half_blind();
        type_in(&mut model, field, typed);
        let found = problems(&model);
        let is_it = |(at, text): &(Option<Field>, String)| {
            *at == Some(field.alone()) && text.contains(says)
        };
        assert!(found.iter().any(is_it), "{typed}: {found:?}");
    }
}
