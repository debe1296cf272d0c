//! From what is typed of a joint with slanted flanks to its plan, and from its problems back to the fields.

mod dovetail;
mod refused;
mod sliding;

use notchwright_core::message::Message;

use super::super::Answer;
use crate::answer::tools::{Outcome, SlantedAnswer};
use crate::model::Chunk;
use crate::state::{Entry, Field, JointKind, State, Work};

/// What follows once something has changed in the worked joint of this kind, whose answer was good.
fn answer(kind: JointKind, change: impl FnOnce(&mut Work)) -> Answer {
    let mut work = State::demo().work;
    work.joint.kind = kind;
    let mut good = Answer::new(&work, &Answer::default());
    good.add(Chunk::Dovetail, &work);
    change(&mut work);
    let mut answer = Answer::new(&work, &good);
    answer.add(Chunk::Dovetail, &work);
    answer
}

fn slanted(kind: JointKind, change: impl FnOnce(&mut Work)) -> SlantedAnswer {
    SlantedAnswer::clone(answer(kind, change).slanted.as_deref().unwrap())
}

fn put(work: &mut Work, field: Field, text: &str) {
    *work.entry_mut(field).unwrap() = Entry::mm(text);
}

/// What follows from this text in one field.
fn typed(kind: JointKind, field: Field, text: &str) -> SlantedAnswer {
    slanted(kind, |work| put(work, field, text))
}

fn fields(answer: &SlantedAnswer) -> Vec<Option<Field>> {
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
fn only_the_joint_that_is_shown_is_worked_out() {
    let boxed = answer(JointKind::Box, |_| {});
    assert!(boxed.current().is_some());
    assert_eq!(boxed.slanted.as_deref(), Some(&SlantedAnswer::default()));

    let dovetail = answer(JointKind::Dovetail, |_| {});
    assert_eq!(dovetail.joint, None);
    let slanted = dovetail.slanted.as_deref().unwrap();
    assert!(slanted.dovetail.is_current && slanted.sliding.plan.is_none());
    assert_eq!(
        dovetail.cut().unwrap().sets,
        slanted.dovetail.current().unwrap().plan.sets
    );

    let sliding = answer(JointKind::Sliding, |_| {});
    let slanted = sliding.slanted.as_deref().unwrap();
    assert!(slanted.sliding.is_current && slanted.dovetail.plan.is_none());
    assert!(sliding.cut().is_none(), "nothing of it is cut on the sled");
}

#[test]
fn the_joint_before_is_not_cut_for_another() {
    let turned_back = answer(JointKind::Dovetail, |work| work.joint.kind = JointKind::Box);
    let planned = turned_back.current().unwrap();
    assert_eq!(turned_back.cut().unwrap().sets, planned.plan.sets);
    let slid = answer(JointKind::Dovetail, |work| {
        work.joint.kind = JointKind::Sliding
    });
    assert!(slid.slanted.as_ref().unwrap().dovetail.is_current);
    assert!(slid.cut().is_none());
}
