//! Jobs and joints: whatever is turned over, nothing is lost and everything keeps its place.

use notchwright_core::stop::Board;
use proptest::collection::vec;
use proptest::prelude::*;

use super::type_in;
use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Leaf, Msg, SawMove, Shelf};
use crate::notice::Notice;
use crate::state::{Entry, Field, Id, JobAtRest, JobForm, JointField, JointForm, State, Work};
use crate::testing::{leaf, msg, started};
use crate::update::Found;

const JOINT: Field = Field::Joint(JointField::Name);

fn edit(model: &mut Model, edit: Edit) -> Vec<Effect> {
    model.update(Msg::Edit(edit))
}

/// Several of which one is open, kept in the plainest way there is.
#[derive(Clone, Debug, PartialEq)]
struct Row<T> {
    all: Vec<T>,
    open: usize,
}

impl<T: Clone> Row<T> {
    fn turn(&mut self, leaf: Leaf, most: usize, blank: T, copied: impl FnOnce(&mut T)) {
        match leaf {
            Leaf::Add => self.add(blank, most),
            Leaf::Open(place) => self.open = place,
            Leaf::Duplicate(place) => {
                let mut copy = self.all[place].clone();
                copied(&mut copy);
                self.add(copy, most);
            }
            Leaf::Remove(place) => self.remove(place, blank),
        }
    }

    fn add(&mut self, new: T, most: usize) {
        if self.all.len() < most {
            self.open += 1;
            self.all.insert(self.open, new);
        }
    }

    fn remove(&mut self, place: usize, blank: T) {
        self.all.remove(place);
        if self.all.is_empty() {
            self.all.push(blank);
        }
        // What comes after the open one follows it, or else what was before.
        if place < self.open || self.open == self.all.len() {
            self.open -= 1;
        }
    }
}

#[derive(Clone, Debug, PartialEq)]
struct Job {
    name: String,
    joints: Row<Joint>,
    saw: Id,
}

#[derive(Clone, Debug, PartialEq)]
struct Joint {
    name: String,
    cutter: Id,
}

/// All that the state holds, in order.
fn read(work: &Work) -> Row<Job> {
    let open = work.job_at_rest();
    let job = |place| job(work.jobs.get(place).unwrap_or(&open));
    Row {
        all: (0..work.jobs.count()).map(job).collect(),
        open: work.jobs.place(),
    }
}

fn job(job: &JobAtRest) -> Job {
    let joint = |place| {
        let resting = job.job.joints.get(place).unwrap_or(&job.open);
        Joint {
            name: resting.joint.name.text.clone(),
            cutter: resting.cutter,
        }
    };
    Job {
        name: job.job.name.text.clone(),
        joints: Row {
            all: (0..job.job.joints.count()).map(joint).collect(),
            open: job.job.joints.place(),
        },
        saw: job.saw,
    }
}

/// Something that is done with the jobs.
#[derive(Clone, Debug)]
enum Turn {
    Job(Leaf),
    Joint(Leaf),
    Saw(Id),
    Cutter(Id),
}

fn turn() -> impl Strategy<Value = Turn> {
    prop_oneof![
        3 => leaf().prop_map(Turn::Job),
        4 => leaf().prop_map(Turn::Joint),
        1 => (1_u16..3).prop_map(|id| Turn::Saw(Id(id))),
        2 => (1_u16..4).prop_map(|id| Turn::Cutter(Id(id))),
    ]
}

/// The same with one that is there.
fn within(leaf: Leaf, count: usize) -> Leaf {
    match leaf {
        Leaf::Add => Leaf::Add,
        Leaf::Open(place) => Leaf::Open(place % count),
        Leaf::Duplicate(place) => Leaf::Duplicate(place % count),
        Leaf::Remove(place) => Leaf::Remove(place % count),
    }
}

const MOST_JOINTS: usize = 24;
const MOST_JOBS: usize = 60;

/// Does the same in the model and in the plain rows. What is added is named after `number`.
fn take(model: &mut Model, row: &mut Row<Job>, turn: &Turn, number: usize) {
    let blank = |cutter| Joint {
        name: String::new(),
        cutter,
    };
    let copied = |name: &mut String| *name = format!("{} copy", name.trim());
    let open = row.open;
    let cutter = row.all[open].joints.all[row.all[open].joints.open].cutter;
    match turn {
        Turn::Saw(saw) => {
            edit(model, Edit::Choose(Shelf::Saws, *saw));
            row.all[open].saw = *saw;
        }
        Turn::Cutter(cutter) => {
            edit(model, Edit::Choose(Shelf::Cutters, *cutter));
            let joints = &mut row.all[open].joints;
            joints.all[joints.open].cutter = *cutter;
        }
        Turn::Job(leaf) => {
            let leaf = within(*leaf, row.all.len());
            edit(model, Edit::Job(leaf));
            let blank = Job {
                name: String::new(),
                joints: Row {
                    all: vec![blank(cutter)],
                    open: 0,
                },
                saw: row.all[open].saw,
            };
            row.turn(leaf, MOST_JOBS, blank, |job| copied(&mut job.name));
            if leaf == Leaf::Add {
                type_in(model, Field::Job, &format!("job {number}"));
                row.all[row.open].name = format!("job {number}");
            }
        }
        Turn::Joint(leaf) => {
            let joints = &mut row.all[open].joints;
            let leaf = within(*leaf, joints.all.len());
            edit(model, Edit::JointOf(leaf));
            if let Leaf::Duplicate(place) = leaf {
                joints.open = place;
            }
            let copied = |joint: &mut Joint| copied(&mut joint.name);
            joints.turn(leaf, MOST_JOINTS, blank(cutter), copied);
            if leaf == Leaf::Add {
                type_in(model, JOINT, &format!("joint {number}"));
                joints.all[joints.open].name = format!("joint {number}");
            }
        }
    }
}

/// The worked job, and a second saw to choose.
fn with_two_saws() -> Model {
    let mut model = started();
    edit(&mut model, Edit::Duplicate(Shelf::Saws, Id(1)));
    model
}

fn ids(work: &Work) -> Vec<Id> {
    work.all_joints().map(|joint| joint.id).collect()
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(96))]

    /// Against rows kept in the plainest way: order, what is open, the tools of what rests.
    #[test]
    fn jobs_and_joints_keep_their_place_and_their_tools(turns in vec(turn(), 0..24)) {
        let mut model = with_two_saws();
        let mut row = read(&model.state.work);
        for (number, turn) in turns.iter().enumerate() {
            take(&mut model, &mut row, turn, number);
            prop_assert_eq!(&read(&model.state.work), &row, "{:?}", turn);
            let mut ids = ids(&model.state.work);
            let count = ids.len();
            ids.sort();
            ids.dedup();
            prop_assert_eq!(ids.len(), count, "two joints have the same id");
        }
    }

    /// Step by step, with the tools that were then in use.
    #[test]
    fn undo_brings_back_every_step(turns in vec(turn(), 0..16)) {
        let mut model = with_two_saws();
        let mut row = read(&model.state.work);
        let mut steps = vec![model.state.work.clone()];
        for (number, turn) in turns.iter().enumerate() {
            take(&mut model, &mut row, turn, number);
            if steps.last() != Some(&model.state.work) {
                steps.push(model.state.work.clone());
            }
        }
        // Naming what was just added is a step of its own.
        while let Some(step) = steps.pop() {
            while model.state.work != step {
                prop_assert!(model.can_undo);
                model.update(Msg::Undo);
            }
        }
    }

    /// What rests asks for its cutter by its id: no other may be found under it.
    #[test]
    fn the_id_of_what_is_gone_is_given_to_nothing_else(messages in vec(msg(), 0..24)) {
        let mut model = started();
        let mut seen = std::collections::BTreeMap::new();
        // Undo forgets what was there, and with it the ids.
        let messages = messages.into_iter().filter(|msg| !matches!(msg, Msg::Undo | Msg::Redo));
        for msg in messages {
            let before: Vec<Id> = cutters(&model);
            model.update(msg);
            for id in cutters(&model) {
                let is_new = !before.contains(&id);
                prop_assert!(!(is_new && seen.contains_key(&id)), "{:?} again", id);
                seen.insert(id, ());
            }
        }
    }
}

fn cutters(model: &Model) -> Vec<Id> {
    let cutters = model.state.work.shop.cutters.items();
    cutters.iter().map(|cutter| cutter.id).collect()
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
    edit(&mut model, Edit::JointOf(Leaf::Open(0)));
    assert!(model.state.work.shop.cutters.is_chosen(Id(1)));
    for _ in 0..3 {
        model.update(Msg::Undo);
    }
    assert_eq!(model.state.work, before);
    edit(&mut model, Edit::JointOf(Leaf::Open(0)));
    assert!(model.state.work.shop.cutters.is_chosen(Id(3)));
}

#[test]
fn there_is_room_for_so_many_and_no_more() {
    for (edit, most, count) in [
        (
            Edit::Job as fn(Leaf) -> Edit,
            MOST_JOBS,
            (|work| work.jobs.count()) as fn(&Work) -> usize,
        ),
        (Edit::JointOf, MOST_JOINTS, |work| work.job.joints.count()),
    ] {
        let mut model = started();
        while count(&model.state.work) < most {
            let before = count(&model.state.work);
            model.update(Msg::Edit(edit(Leaf::Add)));
            assert_eq!(count(&model.state.work), before + 1);
        }
        let full = model.clone();
        let open = full
            .state
            .work
            .jobs
            .place()
            .max(full.state.work.job.joints.place());
        for leaf in [Leaf::Add, Leaf::Duplicate(open)] {
            assert_eq!(model.update(Msg::Edit(edit(leaf))), []);
            assert_eq!(model, full, "{leaf:?}");
        }
        // All of it outlives the tab.
        let (again, _) = crate::testing::opened_with(&full.state);
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
    assert_eq!(read(&model.state.work).all.len(), 1);
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
