//! Jobs, joints, and bringing them in from elsewhere.

use std::collections::BTreeSet;

use proptest::collection::vec;
use proptest::prelude::*;

use super::{WIDTH, started, type_in};
use crate::keep::{link, saved};
use crate::model::Model;
use crate::msg::{Edit, Leaf, Msg, Shelf};
use crate::notice::Notice;
use crate::state::{Entry, Field, Id, JointField, State, Work};
use crate::testing::leaf;

const NAME: Field = Field::Joint(JointField::Name);

fn joint(model: &mut Model, leaf: Leaf) {
    model.update(Msg::Edit(Edit::JointOf(leaf)));
}

fn job(model: &mut Model, leaf: Leaf) {
    model.update(Msg::Edit(Edit::Job(leaf)));
}

fn joints(work: &Work) -> Vec<&str> {
    work.joints()
        .map(|joint| joint.name.text.as_str())
        .collect()
}

fn jobs(work: &Work) -> Vec<&str> {
    let name = |place| {
        work.jobs
            .get(place)
            .map_or(&work.job, |resting| &resting.job)
    };
    (0..work.jobs.count())
        .map(|place| name(place).name.text.as_str())
        .collect()
}

#[test]
fn a_joint_that_is_added_has_the_numbers_of_the_open_one_and_no_name() {
    let mut model = started();
    joint(&mut model, Leaf::Add);
    let work = &model.state.work;
    assert_eq!(
        joints(work),
        ["Drawers, side to front", "", "Drawers, side to back"]
    );
    assert_eq!(work.joint.width, Entry::mm("140"));
    assert_eq!(work.joint.pieces, Default::default());
    joint(&mut model, Leaf::Remove(1));
    assert_eq!(joints(&model.state.work).len(), 2);
    assert_eq!(model.notices, [Notice::Removed(String::new())]);
    model.update(Msg::Undo);
    assert_eq!(joints(&model.state.work).len(), 3);
}

#[test]
fn every_joint_comes_back_with_its_cutter() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Choose(Shelf::Cutters, Id(2))));
    joint(&mut model, Leaf::Open(1));
    let chosen = |model: &Model| {
        model
            .state
            .work
            .shop
            .cutters
            .chosen()
            .map(|cutter| cutter.id)
    };
    assert_eq!(chosen(&model), Some(Id(1)));
    joint(&mut model, Leaf::Open(0));
    assert_eq!(chosen(&model), Some(Id(2)));
    // A cutter that is gone is not taken for a new one.
    joint(&mut model, Leaf::Open(1));
    model.update(Msg::Edit(Edit::Remove(Shelf::Cutters, Id(3))));
    model.update(Msg::Edit(Edit::Remove(Shelf::Cutters, Id(2))));
    model.update(Msg::Edit(Edit::Add(Shelf::Cutters)));
    let ids: Vec<_> = model
        .state
        .work
        .shop
        .cutters
        .items()
        .iter()
        .map(|it| it.id)
        .collect();
    assert_eq!(ids, [Id(1), Id(4)]);
    let state = saved::restore(&saved::save(&model.state)).unwrap().state;
    assert_eq!(state, model.state);
}

#[test]
fn jobs_have_tools_of_their_own() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Duplicate(Shelf::Saws, Id(1))));
    job(&mut model, Leaf::Add);
    type_in(&mut model, Field::Job, "Tool chest");
    model.update(Msg::Edit(Edit::Choose(Shelf::Saws, Id(2))));
    assert_eq!(jobs(&model.state.work), ["Chart chest", "Tool chest"]);
    let chosen = |model: &Model| model.state.work.shop.saws.chosen().map(|saw| saw.id);
    job(&mut model, Leaf::Open(0));
    assert_eq!(chosen(&model), Some(Id(1)));
    assert_eq!(joints(&model.state.work).len(), 2);
    job(&mut model, Leaf::Open(1));
    assert_eq!(chosen(&model), Some(Id(2)));
    job(&mut model, Leaf::Duplicate(0));
    assert_eq!(
        jobs(&model.state.work),
        ["Chart chest", "Tool chest", "Chart chest copy"]
    );
    job(&mut model, Leaf::Remove(2));
    job(&mut model, Leaf::Remove(0));
    assert_eq!(jobs(&model.state.work), ["Tool chest"]);
    // The last one leaves a blank one in its place.
    job(&mut model, Leaf::Remove(0));
    assert_eq!(jobs(&model.state.work), [""]);
    for _ in 0..3 {
        model.update(Msg::Undo);
    }
    assert_eq!(jobs(&model.state.work).len(), 3);
}

#[test]
fn there_is_an_end_to_jobs_and_joints() {
    let mut model = started();
    for _ in 0..100 {
        joint(&mut model, Leaf::Add);
    }
    assert_eq!(model.state.work.job.joints.count(), 24);
    for _ in 0..100 {
        job(&mut model, Leaf::Add);
    }
    assert_eq!(model.state.work.jobs.count(), 60);
    let read = saved::restore(&saved::save(&model.state)).unwrap();
    assert!(read.is_whole);
    assert_eq!(read.state, model.state);
    model.update(Msg::OpenLink(link::write(&State::demo())));
    assert!(model.notices.contains(&Notice::NoRoom));
    assert_eq!(model.state.work.jobs.count(), 60);
}

#[test]
fn a_link_opened_twice_adds_one_job_and_no_tool() {
    let mut model = started();
    type_in(&mut model, WIDTH, "150");
    let shop = model.state.work.shop.clone();
    let link = link::write(&State::demo());
    model.update(Msg::OpenLink(link.clone()));
    assert_eq!(model.notices, [Notice::JobAdded]);
    assert_eq!(model.state.work.shop, shop);
    job(&mut model, Leaf::Open(0));
    model.update(Msg::OpenLink(link.clone()));
    assert!(model.notices.contains(&Notice::JobKnown));
    assert_eq!(
        (model.state.work.jobs.count(), model.state.work.jobs.place()),
        (2, 1)
    );
    // Whichever of its joints is open, it is the same job.
    joint(&mut model, Leaf::Open(1));
    let before = model.state.clone();
    model.update(Msg::OpenLink(link));
    assert_eq!(model.state, before);
}

#[test]
fn a_job_from_elsewhere_brings_its_tools_and_how_far_it_had_come() {
    let mut there = started();
    there.update(Msg::Edit(Edit::Type(
        Field::Cutter(Id(1), crate::state::CutterField::Kerf),
        "2.2".into(),
    )));
    there.update(Msg::Saw(crate::msg::SawMove::Open));
    there.update(Msg::Saw(crate::msg::SawMove::Next));
    let mut here = started();
    type_in(&mut here, NAME, "Other");
    let effects = there.update(Msg::SaveJob);
    let [crate::effect::Effect::Download { name, text }] = effects.as_slice() else {
        panic!("{effects:?}")
    };
    assert_eq!(name, "chart-chest-job.json");
    here.update(Msg::OpenFile(text.clone()));
    let work = &here.state.work;
    assert_eq!(
        work.shop
            .cutters
            .chosen()
            .map(|cutter| cutter.kerf.text.as_str()),
        Some("2.2")
    );
    assert_eq!(work.shop.cutters.items().len(), 4);
    assert_eq!(work.shop.saws.items().len(), 1);
    assert_eq!(here.state.progress().step, there.state.progress().step);
    assert_ne!(work.joint.id, there.state.work.joint.id);
}

#[test]
fn a_job_of_many_joints_is_carried_without_the_rest_of_the_shop() {
    let mut model = started();
    let is_lean = |model: &Model| link::write(&model.state) == link::write_lean(&model.state);
    assert!(!is_lean(&model));
    for number in 0..22_u32 {
        joint(&mut model, Leaf::Add);
        // Names that nothing can be left out of.
        let part = |part: u32| format!("{:x}", (number * 7 + part).wrapping_mul(2_654_435_761));
        let name: String = (0..7).map(part).collect();
        type_in(&mut model, NAME, &name);
        type_in(&mut model, WIDTH, &format!("{}", 100 + number * 7));
        let gap = format!("0.0{}", number * number);
        type_in(&mut model, Field::Joint(JointField::GlueGap), &gap);
    }
    assert!(is_lean(&model), "{}", link::write(&model.state).len());
    let read = link::read(&link::write(&model.state)).unwrap().unwrap();
    assert_eq!(joints(&read.state.work), joints(&model.state.work));
    assert_eq!(read.state.work.shop.cutters.items().len(), 1);
}

/// Names and ids of all joints of all jobs, and which are open.
fn ids(work: &Work) -> Vec<Id> {
    work.all_joints().map(|joint| joint.id).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn no_turn_of_jobs_or_joints_loses_another(turns in vec((any::<bool>(), leaf()), 0..30)) {
        let mut model = started();
        for (is_job, leaf) in turns {
            let before: BTreeSet<Id> = ids(&model.state.work).into_iter().collect();
            let jobs_before = model.state.work.jobs.count();
            if is_job { job(&mut model, leaf) } else { joint(&mut model, leaf) }
            let now = ids(&model.state.work);
            let unique: BTreeSet<Id> = now.iter().copied().collect();
            prop_assert_eq!(unique.len(), now.len());
            match leaf {
                Leaf::Open(_) => prop_assert_eq!(&before, &unique),
                Leaf::Add | Leaf::Duplicate(_) => prop_assert!(unique.is_superset(&before)),
                Leaf::Remove(_) if is_job => prop_assert!(model.state.work.jobs.count() + 1 >= jobs_before),
                Leaf::Remove(_) => prop_assert!(before.difference(&unique).count() <= 1),
            }
            let read = saved::restore(&saved::save(&model.state)).unwrap();
            prop_assert_eq!(&read.state, &model.state);
        }
        while model.can_undo {
            model.update(Msg::Undo);
        }
        prop_assert_eq!(&model.state.work, &State::demo().work);
    }

    /// Two tabs take turns; whatever either stored is in the other, or kept aside.
    #[test]
    fn tabs_follow_each_other_and_keep_their_own_joint(turns in vec((any::<bool>(), leaf()), 0..12)) {
        let mut tabs = [started(), started()];
        for (first, leaf) in turns {
            let [one, other] = &mut tabs;
            let (acts, follows) = if first { (one, other) } else { (other, one) };
            joint(acts, leaf);
            let own = follows.state.work.joint.id;
            follows.update(Msg::OtherTab(saved::save(&acts.state)));
            prop_assert_eq!(
                ids(&follows.state.work).into_iter().collect::<BTreeSet<_>>(),
                ids(&acts.state.work).into_iter().collect::<BTreeSet<_>>()
            );
            let is_there = ids(&acts.state.work).contains(&own);
            prop_assert!(!is_there || follows.state.work.joint.id == own);
        }
    }
}

#[test]
fn what_was_overtaken_unseen_is_kept_aside() {
    let mut model = started();
    let mut theirs = State::demo();
    theirs.work.joint.width = Entry::mm("77");
    let effects = model.update(Msg::Overtaken(saved::save(&theirs)));
    assert!(matches!(
        effects.as_slice(),
        [crate::effect::Effect::KeepAside { .. }]
    ));
    assert_eq!(model.notices, [Notice::Overtaken]);
    assert!(model.asides[0].can_open);
}
