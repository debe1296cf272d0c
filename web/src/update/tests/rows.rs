//! Jobs and joints against rows kept in the plainest way: whatever is turned over, everything keeps its place.

use std::collections::BTreeSet;

use proptest::collection::vec;
use proptest::prelude::*;

use super::jobs::{JOINT, MOST_JOBS, MOST_JOINTS, edit};
use super::type_in;
use crate::model::Model;
use crate::msg::{Edit, Leaf, Msg, Shelf};
use crate::state::{Field, Id, JobAtRest, Work};
use crate::testing::{leaf, msg, started};

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

/// Does the same in the model and in the plain rows. What is added is named after `number`.
fn take(model: &mut Model, row: &mut Row<Job>, turn: &Turn, number: usize) {
    let blank = |cutter| Joint {
        name: String::new(),
        cutter,
    };
    let copied = |name: &mut String| {
        if !name.trim().is_empty() {
            *name = format!("{} copy", name.trim());
        }
    };
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
            if let Leaf::Duplicate(place) = leaf
                && joints.all.len() < MOST_JOINTS
            {
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
        let mut seen = BTreeSet::new();
        // Undo forgets what was there, and with it the ids.
        let messages = messages.into_iter().filter(|msg| !matches!(msg, Msg::Undo | Msg::Redo));
        for msg in messages {
            let before: Vec<Id> = cutters(&model);
            model.update(msg);
            for id in cutters(&model) {
                let is_new = !before.contains(&id);
                prop_assert!(!(is_new && seen.contains(&id)), "{:?} again", id);
                seen.insert(id);
            }
        }
    }
}

fn cutters(model: &Model) -> Vec<Id> {
    let cutters = model.state.work.shop.cutters.items();
    cutters.iter().map(|cutter| cutter.id).collect()
}
