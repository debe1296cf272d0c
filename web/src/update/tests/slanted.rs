//! Dovetails: a part of the program that comes later, and five set-ups at the saw.

use proptest::collection::vec;
use proptest::prelude::*;

use super::{WIDTH, type_in};
use crate::effect::Effect;
use crate::keep::{link, parcel};
use crate::model::{Chunk, Model, Part};
use crate::msg::{Edit, Msg, SawMove};
use crate::notice::Notice;
use crate::state::{
    DovetailField, Entry, Field, Id, JointKind, PinsBy, Place, SlidingField, SlopeBy, State, Step,
};
use crate::testing::{assert_within_plan, edit, msg, opened, opened_with, single, started};
use crate::update::Found;

fn make(model: &mut Model, edit: Edit) -> Vec<Effect> {
    model.update(Msg::Edit(edit))
}

fn open() -> Model {
    as_dovetails(started())
}

/// The same, cut on one end of one board each.
fn alone() -> Model {
    as_dovetails(opened_with(&single()).0)
}

fn as_dovetails(mut model: Model) -> Model {
    make(&mut model, Edit::Joint(JointKind::Dovetail));
    model.update(Msg::Came(Chunk::Dovetail));
    model
}

fn is_planned(model: &Model) -> bool {
    let slanted = model.answer.slanted.as_ref();
    slanted.is_some_and(|slanted| slanted.dovetail.is_current)
}

fn go(model: &mut Model, movement: SawMove) -> (usize, Step) {
    model.update(Msg::Saw(movement));
    place(model)
}

fn place(model: &Model) -> (usize, Step) {
    let at = model.state.progress();
    (at.set, at.step)
}

/// How many stops each set-up has.
fn stops(model: &Model) -> Vec<usize> {
    let sets = model.answer.cut().unwrap().sets;
    sets.iter().map(|set| set.stops.len()).collect()
}

/// The page opened again with what it stored, and what it then asks for.
fn opened_again(state: &State) -> (Model, Vec<Effect>) {
    opened_with(state)
}

#[test]
fn the_part_is_asked_for_once_whichever_joint_is_chosen() {
    let mut model = started();
    assert_eq!(model.needed().next(), None);
    let effects = make(&mut model, Edit::Joint(JointKind::Dovetail));
    assert_eq!(effects, [Effect::Fetch(Chunk::Dovetail)]);
    assert_eq!(model.parts.of(Chunk::Dovetail), Part::Asked);
    for kind in [JointKind::Sliding, JointKind::Box, JointKind::Dovetail] {
        assert_eq!(make(&mut model, Edit::Joint(kind)), []);
    }
    assert_eq!(model.answer.slanted, None);
    assert_eq!(model.update(Msg::Came(Chunk::Dovetail)), []);
    assert!(is_planned(&model));
    assert_eq!(make(&mut model, Edit::Joint(JointKind::Box)), []);
    assert_eq!(make(&mut model, Edit::Joint(JointKind::Sliding)), []);
}

#[test]
fn what_comes_after_another_joint_was_chosen_is_used_later() {
    let mut model = started();
    make(&mut model, Edit::Joint(JointKind::Dovetail));
    make(&mut model, Edit::Joint(JointKind::Box));
    model.update(Msg::Came(Chunk::Dovetail));
    assert_eq!(model.answer.slanted, None);
    make(&mut model, Edit::Joint(JointKind::Dovetail));
    assert!(is_planned(&model));
}

#[test]
fn what_could_not_be_had_is_asked_for_again_only_when_told() {
    let mut model = started();
    make(&mut model, Edit::Joint(JointKind::Dovetail));
    assert_eq!(model.update(Msg::DidNotCome(Chunk::Dovetail)), []);
    assert_eq!(make(&mut model, Edit::Joint(JointKind::Sliding)), []);
    let again = model.update(Msg::AskAgain(Chunk::Dovetail));
    assert_eq!(again, [Effect::Fetch(Chunk::Dovetail)]);
    model.update(Msg::Came(Chunk::Dovetail));
    assert!(model.answer.slanted.as_ref().unwrap().sliding.is_current);
}

#[test]
fn undo_and_redo_of_the_joint_ask_for_what_they_need() {
    let mut model = started();
    make(&mut model, Edit::Joint(JointKind::Dovetail));
    model.update(Msg::DidNotCome(Chunk::Dovetail));
    model.update(Msg::Undo);
    assert_eq!(model.state.work, State::demo().work);
    assert!(model.answer.current().is_some());
    model.update(Msg::AskAgain(Chunk::Dovetail));
    assert_eq!(model.parts.of(Chunk::Dovetail), Part::Away);
    assert_eq!(model.update(Msg::Redo), [Effect::Fetch(Chunk::Dovetail)]);
}

#[test]
fn every_choice_of_dovetails_can_be_undone() {
    for edit in [
        Edit::Joint(JointKind::Box),
        Edit::Joint(JointKind::Sliding),
        Edit::Pins(PinsBy::Narrowest),
        Edit::Slope(SlopeBy::Degrees),
        Edit::Tails(3),
        Edit::PinCutter(Id(3)),
        Edit::Type(Field::Dovetail(DovetailField::Lap), "6".into()),
        Edit::Type(Field::Sliding(SlidingField::Taper), "0.8".into()),
    ] {
        let mut model = open();
        let before = model.state.clone();
        make(&mut model, edit.clone());
        assert_ne!(model.state, before, "{edit:?}");
        model.update(Msg::Undo);
        assert_eq!(model.state, before, "{edit:?}");
        assert!(is_planned(&model), "{edit:?}");
    }
}

#[test]
fn a_picked_number_of_tails_is_planned() {
    let mut model = open();
    make(&mut model, Edit::Tails(3));
    let field = Field::Dovetail(DovetailField::Tails);
    assert_eq!(model.state.shown(field), "3");
    let planned = model.answer.slanted.as_ref().unwrap().dovetail.current();
    assert_eq!(planned.unwrap().plan.count, 3);
}

#[test]
fn all_five_set_ups_are_gone_through_before_their_stops() {
    let mut model = alone();
    let stops = stops(&model);
    assert_eq!(stops.len(), 5);
    let mut expected = Vec::new();
    for (set, stops) in stops.into_iter().enumerate() {
        expected.push((set, Step::SetUp));
        expected.extend((0..stops).map(|stop| (set, Step::Stop(stop))));
    }
    let last = expected.len();
    expected.push((4, Step::Done));
    let mut walked = vec![go(&mut model, SawMove::Open)];
    while place(&model).1 != Step::Done {
        walked.push(go(&mut model, SawMove::Next));
    }
    assert_eq!(walked, expected);
    for step in expected[..last].iter().rev() {
        assert_eq!(go(&mut model, SawMove::Back), *step);
    }
    assert_eq!(go(&mut model, SawMove::Back), (0, Step::SetUp));
}

#[test]
fn one_can_jump_to_any_set_and_not_beyond() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    for set in [3, 1, 4] {
        let to = (set, Step::Stop(1));
        assert_eq!(go(&mut model, SawMove::Jump(set, to.1)), to);
    }
    let last = stops(&model)[4] - 1;
    let beyond = go(&mut model, SawMove::Jump(9, Step::Stop(500)));
    assert_eq!(beyond, (4, Step::Stop(last)));
}

#[test]
fn a_killed_tab_comes_back_to_the_same_stop_once_the_part_has_come() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(2, Step::Stop(3)));
    let (mut again, effects) = opened_again(&model.state);
    assert_eq!(effects, [Effect::Fetch(Chunk::Dovetail)]);
    assert_eq!(again.state, model.state);
    assert!(again.answer.cut().is_none());
    // Nothing is cut, and no place lost, while there is no plan.
    go(&mut again, SawMove::Next);
    again.update(Msg::Came(Chunk::Dovetail));
    assert_eq!((again.state, again.notices), (model.state, vec![]));
}

#[test]
fn a_plan_that_changes_under_the_saw_is_said() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    let last = stops(&model)[2] - 1;
    go(&mut model, SawMove::Jump(2, Step::Stop(last)));
    // As when a newer program plans the stored job otherwise.
    let mut state = model.state.clone();
    state.work.joint.dovetail.tails = Entry::mm("2");
    let (mut again, _) = opened_again(&state);
    assert_eq!(again.notices, []);
    again.update(Msg::Came(Chunk::Dovetail));
    assert_eq!(again.notices, [Notice::PlanChanged]);
    let (2, Step::Stop(stop)) = place(&again) else {
        panic!("{:?}", again.state.progress())
    };
    assert!(stop < stops(&again)[2]);
}

#[test]
fn another_joint_begins_at_its_own_first_set_up() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(3, Step::Stop(2)));
    go(&mut model, SawMove::Leave);
    make(&mut model, Edit::Joint(JointKind::Box));
    assert_eq!(go(&mut model, SawMove::Open), (0, Step::SetUp));
    go(&mut model, SawMove::Leave);
    assert_eq!(model.notices, []);
    make(&mut model, Edit::Joint(JointKind::Sliding));
    go(&mut model, SawMove::Open);
    assert!(!model.state.at_saw.open, "a sliding dovetail has no stops");
}

#[test]
fn the_joint_is_not_needed_in_other_places() {
    let mut model = open();
    let before = model.answer.slanted.clone();
    model.update(Msg::Go(Place::Sled));
    assert!(model.needed().eq([Chunk::Sled]));
    type_in(&mut model, WIDTH, "150");
    assert_eq!(model.answer.slanted, before);
    model.update(Msg::Go(Place::Joint));
    assert_ne!(model.answer.slanted, before);
    assert!(is_planned(&model));
}

#[test]
fn a_link_carries_the_whole_joint() {
    let mut model = open();
    for (field, text) in [
        (Field::Dovetail(DovetailField::Weights), "1 2 1 2"),
        (Field::Dovetail(DovetailField::LeanOffset), "6,2"),
        (Field::Sliding(SlidingField::Length), "300"),
    ] {
        type_in(&mut model, field, text);
    }
    make(&mut model, Edit::Pins(PinsBy::Equal));
    make(&mut model, Edit::PinCutter(Id(3)));
    let (there, effects) = opened(Found {
        fragment: link::write(&model.state),
        ..Found::default()
    });
    assert_eq!(effects, [Effect::Fetch(Chunk::Dovetail)]);
    assert_eq!(there.state.work, model.state.work);
}

/// The worked joint with anything changed in it.
fn changed(edits: Vec<Edit>) -> State {
    let mut model = open();
    for edit in edits {
        make(&mut model, edit);
    }
    model.state
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn any_joint_outlives_store_and_link(edits in vec(edit(), 0..20)) {
        let state = changed(edits);
        let (again, _) = opened_again(&state);
        prop_assert_eq!(&again.state, &state);
        let (there, _) = Model::start(Found {
            fragment: link::write(&state),
            ..Found::default()
        });
        let forms = [parcel::with_shop(&state), parcel::with_its_tools(&state)];
        prop_assert!(forms.map(|state| state.work).contains(&there.state.work));
    }

    /// While dovetails are shown, their answer is that of the state, and the step at the saw one of theirs.
    #[test]
    fn the_answer_is_the_states_whatever_happens(messages in vec(msg(), 0..30)) {
        let mut model = open();
        for msg in messages {
            model.update(msg);
            let is_open = model.needed().any(|chunk| chunk == Chunk::Dovetail) && model.parts.of(Chunk::Dovetail) == Part::Here;
            if is_open {
                let answer = model.answer.clone();
                model.refresh();
                prop_assert!(model.answer == answer);
            }
            assert_within_plan(&model)?;
        }
        while model.can_undo {
            model.update(Msg::Undo);
        }
        prop_assert_eq!(&model.state.work, &State::demo().work);
    }
}
