//! Jobs and joints: added, opened, copied, removed, and what comes along.

use super::type_in;
use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Leaf, Msg, SawMove, Shelf};
use crate::notice::Notice;
use crate::state::{Entry, Field, Id, JobForm, JointField, JointForm, State, Work, fields};
use crate::testing::{opened_with, started};
use crate::update::Found;
use notchwright_core::stop::Board;

pub(super) const MOST_JOINTS: usize = 24;
pub(super) const MOST_JOBS: usize = 60;
pub(super) const JOINT: Field = Field::Joint(JointField::Name);

pub(super) fn edit(model: &mut Model, edit: Edit) -> Vec<Effect> {
    model.update(Msg::Edit(edit))
}

#[test]
fn a_joint_that_is_opened_brings_its_cutter() {
    let mut model = started();
    edit(&mut model, Edit::JointOf(Leaf::Open(1)));
    edit(&mut model, Edit::Choose(Shelf::Cutters, Id(3)));
    edit(&mut model, Edit::JointOf(Leaf::Open(0)));
    assert!(model.state.work.shop.cutters.is_chosen(Id(1)));
    edit(&mut model, Edit::JointOf(Leaf::Open(1)));
    assert!(model.state.work.shop.cutters.is_chosen(Id(3)));
    for _ in 0..4 {
        model.update(Msg::Undo);
    }
    assert_eq!(model.state.work, State::demo().work);
}

/// The cutter of a joint at rest was removed meanwhile: another is in use, and one that is added later is not
/// taken for it; undo brings back both.
#[test]
fn a_cutter_that_is_gone_is_missed_and_comes_back() {
    let mut model = started();
    edit(&mut model, Edit::Choose(Shelf::Cutters, Id(3)));
    edit(&mut model, Edit::JointOf(Leaf::Open(1)));
    let before = model.state.work.clone();
    edit(&mut model, Edit::Remove(Shelf::Cutters, Id(3)));
    edit(&mut model, Edit::Add(Shelf::Cutters));
    assert_eq!(model.notices, []);
    edit(&mut model, Edit::JointOf(Leaf::Open(0)));
    assert!(model.state.work.shop.cutters.is_chosen(Id(1)));
    assert_eq!(model.notices, [Notice::ToolGone]);
    for _ in 0..3 {
        model.update(Msg::Undo);
    }
    assert_eq!(model.state.work, before);
    edit(&mut model, Edit::JointOf(Leaf::Open(0)));
    assert!(model.state.work.shop.cutters.is_chosen(Id(3)));
}

#[test]
fn there_is_room_for_so_many_and_no_more() {
    type Turn = fn(Leaf) -> Edit;
    type Count = fn(&Work) -> usize;
    let both: [(Turn, usize, Count, Notice); 2] = [
        (
            Edit::Job,
            MOST_JOBS,
            |work| work.jobs.count(),
            Notice::NoRoom,
        ),
        (
            Edit::JointOf,
            MOST_JOINTS,
            |work| work.job.joints.count(),
            Notice::Full,
        ),
    ];
    for (edit, most, count, refusal) in both {
        let mut model = started();
        while count(&model.state.work) < most {
            let before = count(&model.state.work);
            model.update(Msg::Edit(edit(Leaf::Add)));
            assert_eq!(count(&model.state.work), before + 1);
        }
        let full = model.clone();
        let work = &full.state.work;
        let open = work.jobs.place().max(work.job.joints.place());
        for leaf in [Leaf::Add, Leaf::Duplicate(open), Leaf::Duplicate(0)] {
            assert_eq!(model.update(Msg::Edit(edit(leaf))), []);
            assert_eq!(model.notices, std::slice::from_ref(&refusal), "{leaf:?}");
            model.update(Msg::Dismiss(refusal.clone()));
            assert_eq!(model, full, "{leaf:?}");
        }
        // All of it outlives the tab.
        let (again, _) = opened_with(&full.state);
        assert_eq!(again.state, full.state);
        assert_eq!(again.notices, []);
    }
}

#[test]
fn a_new_joint_has_the_numbers_of_the_open_one_and_is_for_nothing_yet() {
    let mut model = started();
    let before = model.state.work.clone();
    let effects = edit(&mut model, Edit::JointOf(Leaf::Add));
    assert_eq!(effects, [Effect::Focus("joint-name".into())]);
    let work = &model.state.work;
    let expected = JointForm {
        id: Id(2),
        name: Entry::default(),
        pieces: Default::default(),
        ..before.joint.clone()
    };
    assert_eq!(work.joint, expected);
    assert_eq!(work.job.joints.place(), 1);
    assert_eq!(work.job.joints.count(), 3);

    let effects = edit(&mut model, Edit::Job(Leaf::Add));
    assert_eq!(effects, [Effect::Focus("job-name".into())]);
    let work = &model.state.work;
    assert_eq!(work.job, JobForm::default());
    assert_eq!(
        (work.joint.id, &work.joint.width),
        (Id(3), &before.joint.width)
    );
}

#[test]
fn what_is_removed_is_named_and_offers_undo() {
    let mut model = started();
    for (removal, name) in [
        (Edit::JointOf(Leaf::Remove(1)), "Drawers, side to back"),
        (Edit::JointOf(Leaf::Remove(0)), "Drawers, side to front"),
        (Edit::Job(Leaf::Remove(0)), "Chart chest"),
    ] {
        edit(&mut model, removal.clone());
        assert_eq!(model.notices, [Notice::Removed(name.into())], "{removal:?}");
    }
    assert_eq!(model.state.work.all_joints().count(), 1);
    assert_eq!(model.state.work.job, JobForm::default());
    for _ in 0..3 {
        model.update(Msg::Undo);
    }
    assert_eq!(model.state, State::demo());
}

#[test]
fn places_beyond_the_last_are_none() {
    let mut model = started();
    for leaf in [Leaf::Open(7), Leaf::Remove(7)] {
        edit(&mut model, Edit::Job(leaf));
        edit(&mut model, Edit::JointOf(leaf));
    }
    assert_eq!(model.state, State::demo());
    assert!(!model.can_undo);
}

/// What turns them over comes with the jobs' part: before that nothing happens.
#[test]
fn jobs_wait_for_their_part() {
    let (mut model, _) = Model::start(Found::default());
    for turn in [Edit::Job(Leaf::Add), Edit::JointOf(Leaf::Open(1))] {
        assert_eq!(edit(&mut model, turn), []);
        assert_eq!(model.state, State::demo());
    }
    model.update(Msg::Came(Chunk::Jobs));
    edit(&mut model, Edit::JointOf(Leaf::Open(1)));
    assert_eq!(model.state.work.joint.id, Id(1));
}

/// The open joint with one end marked as cut.
fn mark_one(model: &mut Model) {
    let end = model.answer.pieces.ends(Board::A).next().unwrap();
    for movement in [SawMove::Open, SawMove::Mark(end, true), SawMove::Leave] {
        model.update(Msg::Saw(movement));
    }
    assert_eq!(model.state.progress().done.count(), 1);
}

/// What has been cut of one joint never counts as cut of another, and is not forgotten with it.
#[test]
fn a_new_joint_has_nothing_cut_and_one_that_comes_back_what_it_had() {
    let mut model = started();
    edit(&mut model, Edit::JointOf(Leaf::Add));
    mark_one(&mut model);
    let marked = model.state.progress().clone();
    edit(&mut model, Edit::JointOf(Leaf::Remove(1)));
    edit(&mut model, Edit::JointOf(Leaf::Add));
    assert_eq!(model.state.progress().done.count(), 0);
    for _ in 0..2 {
        model.update(Msg::Undo);
    }
    assert_eq!(model.state.progress(), &marked);
    // As if it had never been added.
    model.update(Msg::Undo);
    edit(&mut model, Edit::Job(Leaf::Add));
    assert_eq!(model.state.progress().done.count(), 0);
}

/// Another chest is cut from other sheets.
#[test]
fn a_copy_of_a_job_has_no_cut_of_its_sheets_made() {
    for place in [0, 1] {
        let mut model = started();
        let cut = fields::cutting::CUT;
        let made = Entry::mm("1f3a 96 1-3");
        model.state.work.job.making.cutting.set(cut.name(), made);
        if place == 1 {
            edit(&mut model, Edit::Job(Leaf::Add));
            edit(&mut model, Edit::Job(Leaf::Open(0)));
            edit(&mut model, Edit::Job(Leaf::Open(1)));
        }
        edit(&mut model, Edit::Job(Leaf::Duplicate(0)));
        let work = &model.state.work;
        assert_eq!(work.job.name.text, "Chart chest copy");
        assert_eq!(work.job.making.cutting.text(cut.name()), "");
        let original = &work.jobs.get(0).unwrap().job.making;
        assert_eq!(original.cutting.text(cut.name()), "1f3a 96 1-3");
        assert_eq!(work.job.making.parts, original.parts);
    }
}

#[test]
fn undo_and_redo_take_back_nothing_that_was_cut() {
    let mut model = started();
    type_in(&mut model, JOINT, "Case");
    mark_one(&mut model);
    let marked = model.state.progress().clone();
    for msg in [Msg::Undo, Msg::Redo] {
        model.update(msg);
        assert_eq!(model.state.progress(), &marked);
    }
}
