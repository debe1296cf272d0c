//! A job from elsewhere comes in beside those that are here.

use proptest::collection::vec;
use proptest::prelude::*;

use crate::keep::parcel;
use crate::msg::{Edit, Leaf, Msg};
use crate::state::{
    Brought, Cutter, Done, End, Entry, Id, Item, JobAtRest, JointForm, List, Progress, Progresses,
    Saw, Screw, Sled, State, Step, Work,
};
use crate::testing::{edit, started};

/// A state after these edits.
fn edited(edits: Vec<Edit>) -> State {
    let mut model = started();
    for edit in edits {
        model.update(Msg::Edit(edit));
    }
    model.state
}

/// Every joint has come so far, each a little farther than the one before.
fn cut_all(state: &mut State) {
    let joints: Vec<Id> = state.work.all_joints().map(|joint| joint.id).collect();
    for (number, joint) in joints.into_iter().enumerate() {
        state.progress.set(progress(joint, number));
    }
}

fn progress(joint: Id, stop: usize) -> Progress {
    let mut done = Done::default();
    done.mark(0, End::new(stop, 0, 0), true);
    Progress {
        joint,
        step: Step::Stop(stop),
        done,
        ..Progress::default()
    }
}

/// Brings the open job of `there`.
fn bring(here: &mut State, there: &State) -> Brought {
    here.work
        .bring(&there.work, &there.progress, &mut here.progress)
}

/// What a job says, told so that it can be compared between shops.
#[derive(Debug, PartialEq)]
struct Told {
    joints: Vec<JointForm>,
    name: Entry,
    /// Of each joint the cutter of its pins, where it has one of its own.
    pins: Vec<Option<Cutter>>,
}

fn told(work: &Work) -> Told {
    let pins = |joint: &JointForm| nameless(&work.shop.cutters, joint.dovetail.pin_cutter);
    let bare = |joint: &JointForm| {
        let mut joint = joint.clone();
        (joint.id, joint.dovetail.pin_cutter) = Default::default();
        joint
    };
    Told {
        joints: work.joints().map(bare).collect(),
        name: work.job.name.clone(),
        pins: work.joints().map(pins).collect(),
    }
}

/// The tools of a job: of its joints the cutters, and its saw, its sled, its screw.
fn tools(
    work: &Work,
) -> (
    Vec<Option<Cutter>>,
    Option<Saw>,
    Option<Sled>,
    Option<Screw>,
) {
    let shop = &work.shop;
    let open = work.job_at_rest();
    let cutter = |place| {
        let resting = open.job.joints.get(place).unwrap_or(&open.open);
        nameless(&shop.cutters, resting.cutter)
    };
    (
        (0..open.job.joints.count()).map(cutter).collect(),
        nameless(&shop.saws, open.saw),
        nameless(&shop.sleds, open.sled),
        nameless(&shop.screws, open.screw),
    )
}

/// Whether a job has here whatever it had there; what it was without, it is given.
fn has_its_tools(here: &Work, there: &Work) -> bool {
    let (cutters, saw, sled, screw) = tools(here);
    let (its_cutters, its_saw, its_sled, its_screw) = tools(there);
    let mut pairs = its_cutters.iter().zip(&cutters);
    pairs.all(|(its, own)| its.is_none() || its == own)
        && (its_saw.is_none() || its_saw == saw)
        && (its_sled.is_none() || its_sled == sled)
        && (its_screw.is_none() || its_screw == screw)
}

fn nameless<T: Item>(list: &List<T>, id: Id) -> Option<T> {
    let thing = list.get(id).cloned();
    thing.map(|thing| thing.with_id(Id::default()))
}

fn job(work: &Work, place: usize) -> JobAtRest {
    let open = || work.job_at_rest();
    work.jobs.get(place).cloned().unwrap_or_else(open)
}

/// A job that was without a tool may have the first one that is there.
fn with_tools_of(mut was: JobAtRest, is: &JobAtRest) -> JobAtRest {
    let pairs = [
        (&mut was.saw, is.saw),
        (&mut was.sled, is.sled),
        (&mut was.screw, is.screw),
        (&mut was.open.cutter, is.open.cutter),
    ];
    for (was, is) in pairs {
        if *was == Id::default() {
            *was = is;
        }
    }
    was
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(128))]

    /// It comes as it was, with its tools and with what has been cut of it; all that was here stays.
    #[test]
    fn a_job_comes_with_its_tools_and_its_marks(
        here in vec(edit(), 0..16),
        there in vec(edit(), 0..24),
        is_lean in any::<bool>(),
    ) {
        let mut here = edited(here);
        cut_all(&mut here);
        let mut there = edited(there);
        cut_all(&mut there);
        let parcel = if is_lean { parcel::with_its_tools(&there) } else { parcel::with_shop(&there) };
        let before = here.clone();
        let brought = bring(&mut here, &parcel);
        prop_assert_eq!(told(&here.work), told(&there.work));
        prop_assert!(has_its_tools(&here.work, &there.work));
        let jobs = before.work.jobs.count();
        match brought {
            Brought::New => {
                prop_assert_eq!(here.work.jobs.count(), jobs + 1);
                prop_assert_eq!(here.work.job.joints.place(), there.work.job.joints.place());
                // It stands after the one that was open, and takes the place of none.
                let own = before.work.jobs.place() + 1;
                prop_assert_eq!(here.work.jobs.place(), own);
                for place in (0..=jobs).filter(|place| *place != own) {
                    let was = if place < own { place } else { place - 1 };
                    let is = job(&here.work, place);
                    prop_assert_eq!(&with_tools_of(job(&before.work, was), &is), &is);
                }
                let pairs = here.work.joints().zip(there.work.joints());
                for (joint, other) in pairs {
                    let came = Progress { joint: joint.id, ..there.progress.of(other.id).clone() };
                    prop_assert_eq!(here.progress.of(joint.id), &came);
                }
            }
            Brought::Open | Brought::Known => {
                prop_assert_eq!(here.work.jobs.count(), jobs);
                prop_assert_eq!(&here.progress, &before.progress);
                prop_assert_eq!(&here.work.shop.cutters.items(), &before.work.shop.cutters.items());
            }
            Brought::NoRoom => prop_assert!(false, "there was room"),
        }
        for joint in before.work.all_joints() {
            prop_assert_eq!(here.progress.of(joint.id), before.progress.of(joint.id));
        }
        for cutter in before.work.shop.cutters.items() {
            prop_assert_eq!(here.work.shop.cutters.get(cutter.id), Some(cutter));
        }
        let mut ids: Vec<Id> = here.work.all_joints().map(|joint| joint.id).collect();
        let count = ids.len();
        ids.sort();
        ids.dedup();
        prop_assert_eq!(ids.len(), count);

        // The second time it is here.
        let once = here.clone();
        prop_assert_eq!(bring(&mut here, &parcel), Brought::Open);
        prop_assert_eq!(&here, &once);
        if let Brought::New = brought {
            here.work.open_job(before.work.jobs.place());
            // Where the old one was without a tool, the new one's may have made them alike.
            let again = bring(&mut here, &parcel);
            prop_assert!(matches!(again, Brought::Known | Brought::Open));
            prop_assert_eq!(here.work.jobs.count(), once.work.jobs.count());
            prop_assert_eq!(told(&here.work), told(&once.work));
            prop_assert_eq!(&here.progress, &once.progress);
        }
    }

    /// A link of one's own adds nothing, whatever has become of the tools.
    #[test]
    fn ones_own_job_is_known(edits in vec(edit(), 0..24), is_lean in any::<bool>()) {
        let mut here = edited(edits);
        let before = here.clone();
        let parcel = if is_lean { parcel::with_its_tools(&here) } else { parcel::with_shop(&here) };
        prop_assert_eq!(bring(&mut here, &parcel), Brought::Open);
        prop_assert_eq!(&here, &before);
    }
}

type Change = fn(&mut Work);

/// Only the changed job is another: which joint is open and what its joints are numbered says nothing.
#[test]
fn a_changed_job_is_told_from_the_same() {
    let there = State::demo();
    let changes: [(Change, Brought); 9] = [
        (|_| {}, Brought::Open),
        (|work| work.open_joint(1), Brought::Open),
        (|work| work.joint.id = Id(7), Brought::Open),
        (
            |work| {
                let blank = work.blank_job();
                work.add_job(blank);
            },
            Brought::Known,
        ),
        (|work| work.joint.width = Entry::mm("141"), Brought::New),
        (|work| work.job.name = Entry::mm("Other"), Brought::New),
        (
            |work| work.joint.pieces.count = Entry::mm("9"),
            Brought::New,
        ),
        (|work| work.shop.cutters.choose(Id(2)), Brought::New),
        (
            |work| {
                work.remove_joint(1);
            },
            Brought::New,
        ),
    ];
    for (number, (change, brought)) in changes.into_iter().enumerate() {
        let mut here = State::demo();
        change(&mut here.work);
        assert_eq!(bring(&mut here, &there), brought, "change {number}");
    }
}

#[test]
fn a_tool_that_is_here_is_used_and_another_added() {
    let mut there = State::demo();
    there.work.shop.cutters.change(Id(1), |cutter| {
        cutter.kerf = Entry::mm("2.8");
    });
    let mut here = State::demo();
    assert_eq!(bring(&mut here, &there), Brought::New);
    let shop = &here.work.shop;
    assert_eq!(shop.saws.items().len(), 1);
    let kerfs: Vec<_> = shop
        .cutters
        .items()
        .iter()
        .map(|cutter| cutter.kerf.text.as_str())
        .collect();
    assert_eq!(kerfs, ["3.07", "9.53", "6.35", "2.8"]);
    assert!(shop.cutters.is_chosen(Id(4)));
    here.work.open_job(0);
    assert!(here.work.shop.cutters.is_chosen(Id(1)));
}

/// The tools that came with it, too, are left out where there is no room for the job.
#[test]
fn without_room_nothing_changes() {
    let mut there = State::demo();
    there.work.shop.cutters.change(Id(1), |cutter| {
        cutter.kerf = Entry::mm("2.8");
    });
    let mut full = State::demo();
    while full.work.jobs.has_room() {
        let blank = full.work.blank_job();
        full.work.add_job(blank);
    }
    let mut no_cutter = State::demo();
    while no_cutter
        .work
        .shop
        .cutters
        .push(Cutter::default())
        .is_some()
    {}
    for mut here in [full, no_cutter] {
        let before = here.clone();
        assert_eq!(bring(&mut here, &there), Brought::NoRoom);
        assert_eq!(here, before);
    }
}

#[test]
fn a_job_with_all_its_joints_comes_whole() {
    let there = edited(vec![Edit::JointOf(Leaf::Duplicate(0)); 30]);
    let mut here = State::demo();
    assert_eq!(bring(&mut here, &there), Brought::New);
    assert_eq!(here.work.job.joints.count(), 24);
    assert_eq!(told(&here.work), told(&there.work));
    assert!(has_its_tools(&here.work, &there.work));
    assert_eq!(here.progress, Progresses::default());
}
