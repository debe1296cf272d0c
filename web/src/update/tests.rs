//! What each message does.

mod course;
mod files;
mod jobs;
mod making;
mod making_corners;
mod making_drawer;
mod making_handed;
mod making_joint;
mod open;
mod rows;
mod saw;
mod sheet;
mod slanted;
mod sled;
mod tabs;
mod ways;

use notchwright_core::units::{Mm, Unit};
use proptest::collection::vec;
use proptest::prelude::*;

use crate::effect::Effect;
use crate::model::{Chunk, Model};
use crate::msg::{Edit, Msg, Shelf};
use crate::notice::Notice;
use crate::state::{
    Cutter, CutterField, Entry, Field, Id, JointField, LayoutKind, Named, Place, State,
};
use crate::testing::{msg, started};

const WIDTH: Field = Field::Joint(JointField::Width);

fn type_in(model: &mut Model, field: Field, text: &str) {
    model.update(Msg::Edit(Edit::Type(field, text.into())));
}

fn names(model: &Model) -> Vec<&str> {
    let cutters = model.state.work.shop.cutters.items();
    cutters
        .iter()
        .map(|cutter| cutter.name().text.as_str())
        .collect()
}

#[test]
fn the_answer_follows_every_keystroke() {
    let mut model = started();
    for (text, width) in [("1", None), ("18", None), ("180", Some(180.0))] {
        type_in(&mut model, WIDTH, text);
        let plan = model
            .answer
            .current()
            .map(|planned| planned.plan.width.mm());
        assert_eq!(plan, width, "{text}");
    }
}

#[test]
fn typing_into_one_field_is_one_step_back() {
    let mut model = started();
    for text in ["1", "15", "150"] {
        type_in(&mut model, WIDTH, text);
    }
    type_in(&mut model, Field::Joint(JointField::GlueGap), "0.1");
    model.update(Msg::Undo);
    assert_eq!(model.state.shown(WIDTH), "150");
    assert_eq!(model.state.shown(Field::Joint(JointField::GlueGap)), "0.05");
    model.update(Msg::Undo);
    assert_eq!(model.state.shown(WIDTH), "140");
    assert!(!model.can_undo);
    model.update(Msg::Redo);
    assert_eq!(model.state.shown(WIDTH), "150");
    // What is typed now begins a step of its own, and there is nothing to make again.
    type_in(&mut model, WIDTH, "160");
    assert!(!model.can_redo);
    model.update(Msg::Undo);
    assert_eq!(model.state.shown(WIDTH), "150");
}

#[test]
fn what_changes_nothing_is_no_step() {
    let mut model = started();
    type_in(&mut model, WIDTH, "140");
    model.update(Msg::Edit(Edit::Remove(Shelf::Cutters, Id(99))));
    model.update(Msg::Edit(Edit::Choose(Shelf::Cutters, Id(1))));
    type_in(&mut model, Field::Cutter(Id(99), CutterField::Kerf), "3");
    assert!(!model.can_undo);
}

#[test]
fn switching_units_and_back_shows_what_was_typed() {
    let mut model = started();
    let typed = "5 1/2";
    model.update(Msg::Units(Unit::Inch));
    type_in(&mut model, WIDTH, typed);
    model.update(Msg::Units(Unit::Mm));
    assert_eq!(model.state.shown(WIDTH), "139.7");
    // The browser sends what a field shows when it is left as it is.
    type_in(&mut model, WIDTH, "139.7");
    model.update(Msg::Units(Unit::Inch));
    assert_eq!(model.state.shown(WIDTH), typed);
}

#[test]
fn undo_leaves_the_place_and_the_unit_alone() {
    let mut model = started();
    type_in(&mut model, WIDTH, "150");
    model.update(Msg::Units(Unit::Inch));
    let effects = model.update(Msg::Go(Place::Shop));
    assert_eq!(effects, [Effect::ScrollToTop, Effect::Fetch(Chunk::Shop)]);
    model.update(Msg::Undo);
    assert_eq!(model.state.place, Place::Shop);
    assert_eq!(model.state.units, Unit::Inch);
    assert_eq!(model.state.work, State::demo().work);
}

#[test]
fn what_was_removed_comes_back() {
    let mut model = started();
    let before = model.state.clone();
    model.update(Msg::Edit(Edit::Remove(Shelf::Cutters, Id(1))));
    assert_eq!(names(&model), ["Grooving stack", "Straight bit"]);
    assert_eq!(model.notices, [Notice::Removed("Rip blade".into())]);
    assert!(model.notices[0].can_undo());
    model.update(Msg::Undo);
    assert_eq!(model.state, before);
    assert_eq!(model.notices, []);
}

#[test]
fn a_notice_that_offers_undo_goes_when_undo_would_mean_something_else() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Remove(Shelf::Cutters, Id(1))));
    type_in(&mut model, WIDTH, "150");
    assert_eq!(model.notices, []);
}

#[test]
fn a_new_thing_is_blank_and_ready_to_be_named() {
    let mut model = started();
    let effects = model.update(Msg::Edit(Edit::Add(Shelf::Cutters)));
    assert_eq!(effects, [Effect::Focus("cutter-4-name".into())]);
    let blank = Cutter {
        id: Id(4),
        ..Cutter::default()
    };
    assert_eq!(model.state.work.shop.cutters.get(Id(4)), Some(&blank));
    // It is not in use, so that the joint's answer stays.
    assert!(model.state.work.shop.cutters.is_chosen(Id(1)));
    assert!(model.answer.current().is_some());
}

#[test]
fn a_copy_differs_in_name_alone() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Duplicate(Shelf::Cutters, Id(2))));
    let shop = &model.state.work.shop;
    let copy = Cutter {
        name: Entry::mm("Grooving stack copy"),
        id: Id(4),
        ..shop.cutters.get(Id(2)).unwrap().clone()
    };
    assert_eq!(shop.cutters.get(Id(4)), Some(&copy));
}

#[test]
fn a_full_shelf_says_so_and_a_copy_without_a_name_has_none() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Add(Shelf::Saws)));
    while model.notices.is_empty() {
        let saws = &model.state.work.shop.saws;
        assert!(saws.items().len() <= 50);
        let last = saws.items().last().unwrap().id;
        model.update(Msg::Edit(Edit::Duplicate(Shelf::Saws, last)));
    }
    assert_eq!(model.notices, [Notice::Full]);
    let saws = model.state.work.shop.saws.items();
    assert!(saws.iter().skip(1).all(|saw| saw.name.is_blank()));
}

#[test]
fn a_stack_and_a_measured_kerf_become_cutters() {
    let mut model = started();
    model.update(Msg::Edit(Edit::AddStack(Mm::constant(12.0))));
    let kerf = Field::Cutter(Id(4), CutterField::Kerf);
    assert_eq!(model.state.shown(kerf), "12");
    model.update(Msg::Edit(Edit::Set(kerf, Mm::constant(12.07))));
    assert_eq!(model.state.shown(kerf), "12.07");
}

#[test]
fn a_picked_count_is_the_layout() {
    let mut model = started();
    model.update(Msg::Edit(Edit::Layout(LayoutKind::OnePass)));
    model.update(Msg::Edit(Edit::Count(11)));
    assert_eq!(model.answer.current().unwrap().plan.count, 11);
    model.update(Msg::Undo);
    assert_eq!(model.state.work.joint.layout, LayoutKind::OnePass);
}

#[test]
fn a_notice_is_said_once_until_it_is_dismissed() {
    let mut model = started();
    model.update(Msg::Say(Notice::OfflineReady));
    model.update(Msg::Say(Notice::OfflineReady));
    assert_eq!(model.notices, [Notice::OfflineReady]);
    model.update(Msg::Dismiss(Notice::OfflineReady));
    assert_eq!(model.notices, []);
}

#[test]
fn what_only_the_browser_can_do_is_asked_of_it() {
    let mut model = started();
    for (msg, effect) in [
        (Msg::UseUpdate, Effect::UseUpdate),
        (Msg::CopyLink, Effect::CopyLink),
    ] {
        assert_eq!(model.update(msg), [effect]);
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    /// Whatever happens, it can all be undone, and made again.
    #[test]
    fn undo_goes_all_the_way_back_and_redo_all_the_way_forth(messages in vec(msg(), 0..30)) {
        let mut model = started();
        for msg in messages {
            model.update(msg);
        }
        let work = model.state.work.clone();
        while model.can_redo {
            model.update(Msg::Redo);
        }
        let last = model.state.work.clone();
        while model.can_undo {
            model.update(Msg::Undo);
        }
        prop_assert_eq!(&model.state.work, &State::demo().work);
        let mut seen_again = model.state.work == work;
        while model.can_redo {
            model.update(Msg::Redo);
            seen_again |= model.state.work == work;
        }
        prop_assert_eq!(&model.state.work, &last);
        prop_assert!(seen_again);
    }
}
