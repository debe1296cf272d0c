//! How long links are, and that whatever they carry they carry whole.

use proptest::collection::vec;
use proptest::prelude::*;
use qrcodegen::{QrCode, QrCodeEcc};

use super::carried;
use crate::keep::{Extent, Restored, link, parcel, saved};
use crate::msg::{Edit, Leaf, Msg, Shelf};
use crate::state::{Cutter, Entry, Field, Id, JointField, Progress, State, Step};
use crate::testing::{msg, started};

fn read(state: &State) -> State {
    let read = link::read(&link::write(state)).unwrap().unwrap();
    assert_eq!((read.is_whole, read.extent), (true, Extent::Job));
    read.state
}

fn edited(edits: impl IntoIterator<Item = Edit>) -> State {
    let mut model = started();
    for edit in edits {
        model.update(Msg::Edit(edit));
    }
    model.state
}

/// So many different joints beyond those of the worked job, and tools that none of them needs.
fn large(joints: usize) -> State {
    let name = Field::Joint(JointField::Name);
    let added = (0..joints).flat_map(|number| {
        let words = format!("Joint {number}, {:x}", number * 7_919 + 104_729);
        [Edit::JointOf(Leaf::Add), Edit::Type(name, words)]
    });
    let mut state = edited(added);
    for number in 0_u64..40 {
        state.work.shop.cutters.push(Cutter {
            name: Entry::mm(&format!("Cutter {:x}", (number + 7).pow(9))),
            ..Cutter::default()
        });
    }
    state
}

#[test]
fn the_worked_job_goes_with_the_whole_shop() {
    let state = State::demo();
    let fragment = link::write(&state);
    assert!(fragment.len() <= link::LONGEST_FRAGMENT);
    assert_ne!(State::demo(), parcel::with_its_tools(&State::demo()));
    assert_eq!(link::read(&fragment), Some(Ok(carried(state))));
}

/// What other jobs there are makes a link no longer, and goes with none.
#[test]
fn a_link_carries_the_open_job_alone() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Job(Leaf::Add)));
    model.update(Msg::Edit(Edit::Job(Leaf::Open(0))));
    let state = read(&model.state);
    assert_eq!(state.work.jobs.count(), 1);
    assert_eq!(link::write(&model.state), link::write(&State::demo()));
}

#[test]
fn a_long_link_leaves_tools_at_home_that_the_job_does_not_use() {
    let state = large(12);
    let fragment = link::write(&state);
    let there = read(&state);
    assert_eq!(there, parcel::with_its_tools(&state));
    assert!(
        fragment.len() <= link::LONGEST_FRAGMENT,
        "{}",
        fragment.len()
    );
    let shop = &there.work.shop;
    let cutters: Vec<_> = shop
        .cutters
        .items()
        .iter()
        .map(|cutter| cutter.id.0)
        .collect();
    assert_eq!(cutters, [1]);
    assert_eq!(there.work.sled, Default::default());
    assert_eq!(there.work.job_at_rest(), state.work.job_at_rest());
}

/// Every cutter that any joint of the job was planned with, its pins' own among them.
#[test]
fn the_tools_of_every_joint_go_along() {
    let mut state = large(12);
    state.work.shop.cutters.choose(Id(3));
    state.work.open_joint(1);
    state.work.shop.cutters.choose(Id(2));
    state.work.joint.dovetail.pin_cutter = Id(4);
    state.work.open_joint(5);
    let there = read(&state);
    let cutters = there.work.shop.cutters.items().iter();
    let cutters: Vec<_> = cutters.map(|cutter| cutter.id.0).collect();
    assert_eq!(cutters, [1, 2, 3, 4]);
}

/// The most that QR codes hold (ISO/IEC 18004, version 40, level L): 2953 bytes.
#[test]
fn every_link_of_usual_length_fits_into_a_code() {
    let address = format!("https://example.org/{}", link::write(&large(12)));
    let code = QrCode::encode_text(&address, QrCodeEcc::Low).unwrap();
    assert!(address.len() <= 2953);
    assert_eq!(code.size(), 4 * i32::from(code.version().value()) + 17);
    let longest = "a".repeat(link::USUAL_LONGEST + 200);
    assert!(QrCode::encode_text(&longest, QrCodeEcc::Low).is_ok());
}

/// Of all the joints' progress, not only of the first that has any.
#[test]
fn a_link_carries_how_far_each_joint_has_come() {
    for begun in [[true, false], [false, true], [true, true]] {
        let mut state = State::demo();
        let joints: Vec<_> = state.work.joints().map(|joint| joint.id).collect();
        for (joint, begun) in joints.into_iter().zip(begun) {
            if begun {
                state.progress.set(Progress {
                    joint,
                    step: Step::Stop(3 + usize::from(joint.0)),
                    ..Progress::default()
                });
            }
        }
        assert_eq!(read(&state), state, "{begun:?}");
    }
}

#[test]
fn a_file_of_one_job_holds_that_job_and_its_tools() {
    let mut state = large(3);
    state.work.add_job(state.work.blank_job());
    let text = saved::save_job(&state);
    assert!(text.starts_with("{\"version\":3,\"job\":{"), "{text:.40}");
    let expected = carried(parcel::with_its_tools(&state));
    assert_eq!(saved::restore(&text), Ok(expected));
    let Ok(Restored { extent, .. }) = saved::restore(&saved::save(&state)) else {
        panic!("everything cannot be read")
    };
    assert_eq!(extent, Extent::All);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// A link restores the job it was made of, with the tools it was planned with and what has been cut of it.
    #[test]
    fn a_link_restores_the_job_it_was_made_of(messages in vec(msg(), 0..30), others in 0_usize..6) {
        let mut model = started();
        for msg in messages {
            model.update(msg);
        }
        for _ in 0..others {
            model.update(Msg::Edit(Edit::JointOf(Leaf::Add)));
            model.update(Msg::Edit(Edit::Add(Shelf::Cutters)));
        }
        let (here, there) = (&model.state, read(&model.state));
        let (own, its) = (here.work.job_at_rest(), there.work.job_at_rest());
        prop_assert_eq!(&its, &own);
        for joint in here.work.joints() {
            prop_assert_eq!(there.progress.of(joint.id), here.progress.of(joint.id));
        }
        let used = own.job.joints.iter().chain([&own.open]);
        for cutter in used.map(|joint| joint.cutter) {
            let (here, there) = (&here.work.shop.cutters, &there.work.shop.cutters);
            prop_assert_eq!(there.get(cutter), here.get(cutter));
        }
        let shop = &there.work.shop;
        prop_assert_eq!(shop.saws.chosen(), here.work.shop.saws.chosen());
        prop_assert_eq!(shop.sleds.chosen(), here.work.shop.sleds.chosen());
        prop_assert_eq!(shop.screws.chosen(), here.work.shop.screws.chosen());
        // The whole shop went along if there was room for it.
        let whole = parcel::with_shop(here);
        let fits = link::write(&whole).len() <= link::LONGEST_FRAGMENT;
        prop_assert!(fits || there == parcel::with_its_tools(here));
    }
}

#[test]
fn joints_alike_are_packed_together() {
    let one = link::write(&State::demo()).len();
    let state = edited(vec![Edit::JointOf(Leaf::Add); 10]);
    let ten = link::write(&state).len();
    assert!(ten < one + 10 * 40, "{one} {ten}");
}
