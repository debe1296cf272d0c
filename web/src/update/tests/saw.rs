//! At the saw.

use proptest::collection::vec;
use proptest::prelude::*;

use super::{WIDTH, type_in};
use crate::model::Model;
use crate::msg::{Edit, Msg, SawMove};
use crate::notice::Notice;
use crate::state::{Entry, First, Step};
use crate::testing::{assert_within_plan, msg, opened_with, single, started};

/// One joint, cut on one end of one board each.
fn alone() -> Model {
    opened_with(&single()).0
}

fn go(model: &mut Model, movement: SawMove) -> (usize, Step) {
    model.update(Msg::Saw(movement));
    place(model)
}

fn place(model: &Model) -> (usize, Step) {
    let at = model.state.progress();
    (at.set, at.step)
}

fn stops(model: &Model) -> Vec<usize> {
    let sets = &model.answer.current().unwrap().plan.sets;
    sets.iter().map(|set| set.stops.len()).collect()
}

#[test]
fn every_set_is_set_up_before_its_stops_are_cut() {
    let mut model = alone();
    let mut walked = vec![go(&mut model, SawMove::Open)];
    while place(&model).1 != Step::Done {
        walked.push(go(&mut model, SawMove::Next));
    }
    let mut expected = Vec::new();
    for (set, stops) in stops(&model).into_iter().enumerate() {
        expected.push((set, Step::SetUp));
        expected.extend((0..stops).map(|stop| (set, Step::Stop(stop))));
    }
    let last = expected.len();
    expected.push((1, Step::Done));
    assert_eq!(walked, expected);

    for step in expected[..last].iter().rev() {
        assert_eq!(go(&mut model, SawMove::Back), *step);
    }
    assert_eq!(go(&mut model, SawMove::Back), (0, Step::SetUp));
}

#[test]
fn from_the_end_on_is_out_and_the_next_time_begins_anew() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(1, Step::Done));
    go(&mut model, SawMove::Next);
    assert!(!model.state.at_saw.open);
    assert_eq!(go(&mut model, SawMove::Open), (0, Step::SetUp));
}

#[test]
fn leaving_keeps_the_place() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(1, Step::Stop(4)));
    go(&mut model, SawMove::Leave);
    assert!(!model.state.at_saw.open);
    assert_eq!(go(&mut model, SawMove::Open), (1, Step::Stop(4)));
}

#[test]
fn another_plan_begins_at_its_first_set_up() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(1, Step::Stop(4)));
    go(&mut model, SawMove::Leave);
    type_in(&mut model, WIDTH, "150");
    assert_eq!(go(&mut model, SawMove::Open), (0, Step::SetUp));
    assert_eq!(model.notices, []);
}

#[test]
fn a_killed_tab_comes_back_to_the_same_stop() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(0, Step::Stop(6)));
    let (again, effects) = opened_with(&model.state);
    assert_eq!(again.state, model.state);
    assert!(again.state.at_saw.open);
    assert_eq!((again.notices, effects), (vec![], vec![]));
}

#[test]
fn a_plan_that_changes_under_the_saw_is_said() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Jump(0, Step::Stop(20)));
    // As when a newer program plans the stored job otherwise.
    let mut state = model.state.clone();
    state.work.joint.count = Entry::mm("3");
    state.work.joint.first = First::Socket;
    let (again, _) = opened_with(&state);
    assert_eq!(again.notices, [Notice::PlanChanged]);
    assert!(again.state.at_saw.open);
    let (set, Step::Stop(stop)) = place(&again) else {
        panic!("{:?}", again.state.progress())
    };
    assert!(stop < stops(&again)[set]);
}

#[test]
fn nothing_is_cut_from_a_stale_plan() {
    let mut model = alone();
    type_in(&mut model, WIDTH, "wide");
    go(&mut model, SawMove::Open);
    assert!(!model.state.at_saw.open);
}

#[test]
fn one_can_leave_even_when_there_is_no_plan() {
    let mut model = alone();
    go(&mut model, SawMove::Open);
    model.update(Msg::Edit(Edit::Type(WIDTH, "wide".into())));
    assert!(model.state.at_saw.open);
    go(&mut model, SawMove::Next);
    assert_eq!(place(&model), (0, Step::SetUp));
    go(&mut model, SawMove::Leave);
    assert!(!model.state.at_saw.open);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    #[test]
    fn the_step_at_the_saw_is_always_one_of_the_plan(messages in vec(msg(), 0..40)) {
        let mut model = started();
        for msg in messages {
            model.update(msg);
            assert_within_plan(&model)?;
        }
    }
}
