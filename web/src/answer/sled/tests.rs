//! From what is typed in the sled's place to each tool's plan, and from its problems back to the fields.

mod fit;
mod groove;
mod screw;
mod square;

use notchwright_core::message::Message;

use super::super::Answer;
use crate::answer::tools::{Outcome, SledAnswer};
use crate::model::Chunk;
use crate::state::{
    CutterField, Entry, Field, Id, LeadBy, List, SawField, ScrewField, SledField, State, Work,
};

/// What follows once something has changed in the worked joint, whose answer was good.
fn answer(change: impl FnOnce(&mut Work)) -> Answer {
    let mut work = State::demo().work;
    let mut good = Answer::new(&work, &Answer::default());
    good.add(Chunk::Sled, &work);
    change(&mut work);
    let mut answer = Answer::new(&work, &good);
    answer.add(Chunk::Sled, &work);
    answer
}

fn sled(change: impl FnOnce(&mut Work)) -> SledAnswer {
    SledAnswer::clone(answer(change).sled.as_deref().unwrap())
}

fn put(work: &mut Work, field: Field, text: &str) {
    *work.entry_mut(field).unwrap() = Entry::mm(text);
}

/// What follows from this text in one field.
fn typed(field: Field, text: &str) -> SledAnswer {
    sled(|work| put(work, field, text))
}

fn fields(answer: &SledAnswer) -> Vec<Option<Field>> {
    let problems = answer.problems.iter();
    problems.map(|problem| problem.field).collect()
}

fn said(messages: &[Message]) -> Vec<String> {
    let say = |length: notchwright_core::units::Mm| format!("{} mm", length.mm());
    messages.iter().map(|message| message.show(say)).collect()
}

/// A plan is there, and is not what the fields say.
fn assert_stale<T: PartialEq + std::fmt::Debug>(outcome: &Outcome<T>, good: &Outcome<T>) {
    assert!(!outcome.is_current);
    assert_eq!(outcome.current(), None);
    assert!(outcome.plan.is_some());
    assert_eq!(outcome.plan, good.plan);
}

#[test]
fn every_tool_of_the_demo_has_a_plan() {
    let sled = sled(|_| {});
    assert_eq!(fields(&sled), []);
    assert!(sled.fit.is_current && sled.square.is_current);
    assert!(sled.screw.is_current && sled.groove.is_current);
    for needed in [
        sled.fit.needed,
        sled.square.needed,
        sled.screw.needed,
        sled.groove.needed,
    ] {
        assert_eq!(needed, []);
    }
    let refused = [
        sled.fit.refused,
        sled.square.refused,
        sled.screw.refused,
        sled.groove.refused,
    ];
    assert_eq!(refused.concat(), []);
}

#[test]
fn what_is_not_there_at_all_is_said_plainly() {
    let sled = sled(|work| {
        work.shop.saws = List::default();
        work.shop.sleds = List::default();
        work.shop.cutters = List::default();
        work.shop.screws = List::default();
    });
    assert_eq!(
        said(&sled.fit.refused),
        [
            "There is no saw: add one in the shop.",
            "There is no cutter: add one in the shop.",
            "There is no sled: add one in the shop.",
        ]
    );
    assert_eq!(
        said(&sled.screw.refused),
        ["There is no screw: add one in the shop."]
    );
    assert!(!sled.fit.is_current && !sled.screw.is_current);
    assert_eq!((sled.fit.needed, sled.screw.needed), (vec![], vec![]));
    assert_eq!(sled.problems, []);
    assert!(sled.square.is_current && sled.groove.is_current);
}

#[test]
fn what_the_joint_has_said_is_not_said_again() {
    let (saw, sled) = (
        |field| Field::Saw(Id(1), field),
        |field| Field::Sled(Id(1), field),
    );
    for (field, text) in [
        (saw(SawField::GreatestHeight), "9000"),
        (saw(SawField::GreatestHeight), "high"),
        (sled(SledField::Base), "-3"),
        (sled(SledField::Travel), "far"),
        (sled(SledField::CarriageFace), "there"),
        (sled(SledField::FrontRail), "there"),
        (sled(SledField::FrontRail), "100"),
        (Field::Cutter(Id(1), CutterField::Kerf), "-1"),
        (Field::Cutter(Id(1), CutterField::Diameter), "round"),
    ] {
        let answer = answer(|work| put(work, field, text));
        assert_eq!(answer.problems_of(field).count(), 1, "{field:?}: {text}");
        assert!(!answer.sled.unwrap().fit.is_current, "{field:?}: {text}");
    }
    let field = Field::Screw(Id(1), ScrewField::Threads);
    let answer = answer(|work| put(work, field, "fine"));
    assert_eq!(answer.problems_of(field).count(), 1);
    assert!(!answer.sled.unwrap().screw.is_current);
}

#[test]
fn problems_are_shown_only_while_the_place_is_open() {
    let field = Field::Saw(Id(1), SawField::ToSlot);
    let mut work = State::demo().work;
    put(&mut work, field, "there");
    let mut open = Answer::new(&work, &Answer::default());
    open.add(Chunk::Sled, &work);
    assert_eq!(open.problems_of(field).count(), 1);
    let left = Answer::new(&work, &open);
    assert_eq!(left.problems_of(field).count(), 0);
    assert_eq!(left.sled, open.sled);
}

#[test]
fn a_lead_that_is_not_typed_yet_is_needed() {
    let sled = sled(|work| {
        let by_lead = |screw: &mut crate::state::Screw| screw.by = LeadBy::Lead;
        work.shop.screws.change(Id(1), by_lead);
    });
    assert_eq!(sled.screw.needed, [Field::Screw(Id(1), ScrewField::Lead)]);
    assert_eq!(sled.problems, []);
    let threads = Field::Screw(Id(1), ScrewField::Threads);
    let answer = answer(|work| put(work, threads, ""));
    assert_eq!(answer.sled.as_ref().unwrap().screw.needed, [threads]);
    // The joint cannot wait for it.
    assert_eq!(answer.problems_of(threads).count(), 1);
    assert_eq!(answer.other_problems().count(), 0);
}
