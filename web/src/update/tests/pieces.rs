//! The way through every end of every piece.

use notchwright_core::stop::Board;
use proptest::collection::vec;
use proptest::prelude::*;

use super::{arrived, started, type_in, with_one_board_of_each};
use crate::effect::Effect;
use crate::keep::saved;
use crate::model::Model;
use crate::msg::{Msg, SawMove, Way};
use crate::notice::Notice;
use crate::state::{Field, JointField, Order, PiecesField, Progress, Step};
use crate::testing::saw_move;
use crate::update::Found;

fn go(model: &mut Model, movement: SawMove) -> Progress {
    model.update(Msg::Saw(movement));
    model.state.progress().clone()
}

fn set(model: &mut Model, field: PiecesField, text: &str) {
    type_in(model, Field::Pieces(field), text);
}

/// Two drawers of boards that are alike, so that both can be cut at each stop.
fn two_alike() -> Model {
    let mut model = started();
    type_in(&mut model, Field::Joint(JointField::ThicknessB), "12");
    set(&mut model, PiecesField::Count, "2");
    model
}

fn left(model: &Model) -> usize {
    let at = model.state.progress();
    let course = model.answer.course(model.state.at_saw.order).unwrap();
    let passed = match at.step {
        Step::Stop(stop) => stop,
        _ => 0,
    };
    course.left(at.set, at.end, passed, &at.done).passes
}

#[test]
fn every_end_of_every_set_is_cut_once_in_either_order() {
    for order in [Order::Boards, Order::Stops] {
        let mut model = two_alike();
        model.update(Msg::Way(Way::Order(order)));
        go(&mut model, SawMove::Open);
        let sets = model.answer.cut().unwrap().sets.to_vec();
        let all: usize = sets.iter().map(|set| set.stops.len() * 4).sum();
        assert_eq!(left(&model), all);
        let (mut passes, mut boards, mut set_ups) = (0, 0, 0);
        loop {
            let at = model.state.progress().clone();
            match at.step {
                Step::SetUp => set_ups += 1,
                Step::Board => boards += 1,
                Step::Stop(_) => {
                    assert_eq!(left(&model), all - passes);
                    passes += 1;
                }
                Step::Done => break,
            }
            go(&mut model, SawMove::Next);
        }
        assert_eq!(passes, all);
        let expected = if order == Order::Boards {
            (2, 8)
        } else {
            (1, 4)
        };
        assert_eq!((set_ups, boards), expected);
        let at = model.state.progress();
        assert_eq!((at.done.count(), at.of), (8, 8));
        // It stays done until somebody begins anew.
        go(&mut model, SawMove::Next);
        assert!(!model.state.at_saw.open);
        assert_eq!(go(&mut model, SawMove::Open).step, Step::Done);
        assert_eq!(go(&mut model, SawMove::Anew).done.count(), 0);
    }
}

#[test]
fn back_undoes_next_step_by_step() {
    let mut model = two_alike();
    let mut way = vec![go(&mut model, SawMove::Open)];
    while way.last().unwrap().step != Step::Done {
        way.push(go(&mut model, SawMove::Next));
    }
    for before in way.iter().rev().skip(1) {
        let at = go(&mut model, SawMove::Back);
        assert_eq!((at.set, at.step), (before.set, before.step));
        if matches!(at.step, Step::Stop(_) | Step::Board) {
            assert_eq!((at.end, &at.done), (before.end, &before.done));
        }
    }
}

#[test]
fn both_boards_come_to_each_stop_only_where_one_set_up_does() {
    let mut model = started();
    model.update(Msg::Way(Way::Order(Order::Stops)));
    assert!(!model.answer.course(Order::Stops).unwrap().is_merged());
    let model = two_alike();
    let course = model.answer.course(Order::Stops).unwrap();
    let load = course.loads(0).remove(0);
    let passes = course.passes(0, &load);
    assert_eq!(
        passes.len(),
        course
            .sets()
            .iter()
            .map(|set| set.stops.len())
            .sum::<usize>()
    );
    assert!(
        passes
            .windows(2)
            .all(|pair| !pair[1].1.dial.reading.is_below(pair[0].1.dial.reading))
    );
    assert_eq!(
        course.name(&load),
        "drawer 1, left side with drawer 1, front, first end"
    );
}

#[test]
fn boards_that_are_left_over_come_alone() {
    let mut model = two_alike();
    set(&mut model, PiecesField::NamesB, "front; back");
    let course = model.answer.course(Order::Stops).unwrap();
    let loads = course.loads(0);
    assert_eq!(loads.len(), 8);
    assert_eq!(loads.iter().filter(|load| load.ends.len() == 2).count(), 4);
    let alone = loads.last().unwrap();
    assert!(
        course
            .passes(0, alone)
            .iter()
            .all(|(set, _)| set.board == Board::B)
    );
}

#[test]
fn marks_stay_with_their_ends_whatever_becomes_of_the_pieces() {
    let mut model = two_alike();
    go(&mut model, SawMove::Open);
    let third = model.answer.course(Order::Boards).unwrap().loads(0)[2].end;
    go(&mut model, SawMove::Mark(third, true));
    set(&mut model, PiecesField::Count, "5");
    set(&mut model, PiecesField::NamesA, "left; right; middle");
    let at = model.state.progress();
    assert!(at.done.has(0, third));
    assert_eq!(model.answer.pieces.name(Board::A, third), "drawer 2, left");
    go(&mut model, SawMove::Mark(third, false));
    assert_eq!(model.state.progress().done.count(), 0);
}

#[test]
fn another_plan_keeps_what_is_cut_and_says_so() {
    let mut model = two_alike();
    go(&mut model, SawMove::Open);
    let first = model.answer.course(Order::Boards).unwrap().loads(0)[0].end;
    go(&mut model, SawMove::Mark(first, true));
    type_in(&mut model, Field::Joint(JointField::GlueGap), "0.2");
    assert_eq!(model.notices, [Notice::PlanChanged]);
    assert!(model.state.progress().done.has(0, first));
    // The next end is the one that is not cut yet.
    go(&mut model, SawMove::Jump(0, Step::SetUp));
    assert_ne!(go(&mut model, SawMove::Next).end, first);
}

#[test]
fn the_saw_waits_for_its_part_of_the_program() {
    let (mut model, _) = Model::start(Found::default());
    model.update(Msg::Saw(SawMove::Open));
    assert!(model.state.at_saw.open);
    model.update(Msg::Saw(SawMove::Next));
    assert_eq!(model.state.progress().step, Step::SetUp);
    let mut model = arrived(model);
    assert_eq!(model.notices, []);
    assert_eq!(go(&mut model, SawMove::Next).step, Step::Board);
    let (mut model, _) = Model::start(Found::default());
    model.update(Msg::Saw(SawMove::Open));
    model.update(Msg::Saw(SawMove::Leave));
    assert!(!arrived(model).state.at_saw.open);
}

#[test]
fn the_pace_is_that_of_passes_and_of_nothing_else() {
    let mut model = with_one_board_of_each();
    let mut at = |now: f64, movement: SawMove| {
        model.now = now;
        model.update(Msg::Saw(movement));
        model.state.at_saw.pace
    };
    at(0.0, SawMove::Open);
    at(1e6, SawMove::Next);
    assert_eq!(at(1_020_000.0, SawMove::Next), 20_000);
    assert_eq!(at(1_060_000.0, SawMove::Next), 25_000);
    // Leafing, being away, a clock that was set back.
    assert_eq!(at(1_060_500.0, SawMove::Next), 25_000);
    assert_eq!(at(9_000_000.0, SawMove::Next), 25_000);
    assert_eq!(at(5000.0, SawMove::Next), 25_000);
    at(6000.0, SawMove::Back);
    assert_eq!(at(26_000.0, SawMove::Next), 25_000);
}

fn speaks(effects: &[Effect]) -> Option<&str> {
    effects.iter().find_map(|effect| match effect {
        Effect::Speak(words) => Some(words.as_str()),
        _ => None,
    })
}

#[test]
fn words_move_on_and_settings_are_spoken() {
    let mut model = with_one_board_of_each();
    go(&mut model, SawMove::Open);
    assert_eq!(model.update(Msg::Heard("next".into())), []);
    assert_eq!(model.state.progress().step, Step::SetUp);
    model.update(Msg::Way(Way::Listens(true)));
    model.update(Msg::Way(Way::Speaks(true)));
    let effects = model.update(Msg::Heard("and the Next.".into()));
    assert_eq!(model.state.progress().step, Step::Stop(0));
    assert_eq!(speaks(&effects), Some("11 turns, 57."));
    assert_eq!(
        speaks(&model.update(Msg::Heard("again".into()))),
        Some("11 turns, 57.")
    );
    model.update(Msg::Heard("pause".into()));
    assert!(model.state.at_saw.paused);
    model.update(Msg::Heard("next".into()));
    assert_eq!(model.state.progress().step, Step::Stop(0));
    model.update(Msg::Heard("resume".into()));
    model.update(Msg::Heard("next".into()));
    assert_eq!(model.state.progress().step, Step::Stop(1));
    model.update(Msg::Heard("back".into()));
    assert_eq!(model.state.progress().step, Step::Stop(0));
    assert!(
        model
            .update(Msg::Saw(SawMove::Leave))
            .contains(&Effect::Hush)
    );
    assert_eq!(model.update(Msg::Heard("next".into())), []);
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(48))]
    /// A tab that is killed at any moment comes back to the same stop of the same end, with the same marks.
    #[test]
    fn a_killed_tab_comes_back(moves in vec(saw_move(), 0..40)) {
        let mut model = two_alike();
        for movement in moves {
            model.update(Msg::Saw(movement));
        }
        let (again, _) = Model::start(Found {
            stored: Some(saved::save(&model.state)),
            ..Found::default()
        });
        let again = arrived(again);
        prop_assert_eq!(&again.state, &model.state);
        let course = again.answer.course(again.state.at_saw.order).unwrap();
        let at = again.state.progress();
        prop_assert!(at.set < course.legs());
        if let Step::Stop(stop) = at.step {
            let load = course.load(at.set, at.end).unwrap();
            prop_assert!(stop < course.passes(at.set, &load).len());
        }
    }
}
