//! How one works at the saw: by the button or by a word, with pauses, at one's own pace.

use proptest::collection::vec;
use proptest::prelude::*;

use crate::effect::Effect;
use crate::model::Model;
use crate::msg::{Msg, SawMove, Way};
use crate::state::{End, Hand, Order, Step};
use crate::testing::{opened_with, saw_move, single};

/// One joint at its first stop.
fn at_a_stop() -> Model {
    let (mut model, _) = opened_with(&single());
    for movement in [SawMove::Open, SawMove::Next] {
        model.update(Msg::Saw(movement));
    }
    assert_eq!(model.state.progress().step, Step::Stop(0));
    model
}

fn step(model: &Model) -> Step {
    model.state.progress().step
}

fn hear(model: &mut Model, words: &str) -> Vec<Effect> {
    model.update(Msg::Heard(words.to_owned()))
}

#[test]
fn words_move_on_and_back() {
    let mut model = at_a_stop();
    model.update(Msg::Way(Way::Listens(true)));
    for (words, expected) in [
        ("next", Step::Stop(1)),
        ("Next.", Step::Stop(2)),
        ("now cut it, next!", Step::Stop(3)),
        ("next board please", Step::Stop(3)),
        ("nextdoor", Step::Stop(3)),
        ("", Step::Stop(3)),
        ("  ¿  ", Step::Stop(3)),
        ("BACK", Step::Stop(2)),
        ("resume", Step::Stop(2)),
        ("again", Step::Stop(2)),
    ] {
        hear(&mut model, words);
        assert_eq!(step(&model), expected, "{words:?}");
    }
}

/// Whatever is said near the saw moves nothing unless it was asked to listen.
#[test]
fn nothing_is_heard_unless_it_listens_at_the_saw() {
    for (listens, leaves) in [(false, false), (true, true), (false, true)] {
        let mut model = at_a_stop();
        model.update(Msg::Way(Way::Listens(listens)));
        if leaves {
            model.update(Msg::Saw(SawMove::Leave));
        }
        let before = model.clone();
        for words in ["next", "back", "again", "pause", "resume"] {
            assert_eq!(hear(&mut model, words), [], "{words}");
            assert_eq!(model, before, "{words}");
        }
    }
}

#[test]
fn a_pause_stops_words_and_ends_with_one() {
    let mut model = at_a_stop();
    model.update(Msg::Way(Way::Listens(true)));
    hear(&mut model, "pause");
    assert!(model.state.at_saw.paused);
    for words in ["next", "back", "again", "pause"] {
        assert_eq!(hear(&mut model, words), [], "{words}");
    }
    assert_eq!(step(&model), Step::Stop(0));
    hear(&mut model, "resume");
    assert!(!model.state.at_saw.paused);
    hear(&mut model, "next");
    assert_eq!(step(&model), Step::Stop(1));
}

#[test]
fn a_pause_outlives_the_tab_and_ends_when_one_leaves() {
    let mut model = at_a_stop();
    model.update(Msg::Saw(SawMove::Pause(true)));
    let (again, _) = opened_with(&model.state);
    assert_eq!(again.state, model.state);
    assert!(again.state.at_saw.paused);
    assert_eq!(step(&again), Step::Stop(0));
    model.update(Msg::Saw(SawMove::Leave));
    model.update(Msg::Saw(SawMove::Open));
    assert!(!model.state.at_saw.paused);
    assert_eq!(step(&model), Step::Stop(0));
}

/// What is said of the present stop.
fn said(model: &Model) -> String {
    let Step::Stop(stop) = step(model) else {
        panic!("{:?}", model.state.progress())
    };
    let sets = model.answer.cut().unwrap().sets;
    crate::answer::spoken::setting(None, &sets[model.state.progress().set].stops[stop])
}

/// Whoever hears a setting without looking must not put the other board under the blade.
#[test]
fn where_both_boards_come_to_each_stop_the_board_is_spoken_too() {
    let mut state = single();
    state.work.joint.thickness_b = state.work.joint.thickness_a.clone();
    state.at_saw.order = Order::Stops;
    let (mut model, _) = opened_with(&state);
    model.update(Msg::Saw(SawMove::Open));
    model.update(Msg::Way(Way::Speaks(true)));
    let course = model.answer.course(Order::Stops).unwrap();
    assert!(course.is_merged());
    let passes = course.passes(0, &course.load(0, End::default()).unwrap());
    let boards: Vec<String> = passes.iter().map(|(set, _)| set.name.clone()).collect();
    assert!(boards.iter().any(|board| *board != boards[0]));
    for board in boards {
        let effects = model.update(Msg::Saw(SawMove::Next));
        let [_, Effect::Speak(words)] = effects.as_slice() else {
            panic!("{effects:?}")
        };
        assert!(words.starts_with(&format!("{board}. ")), "{words}");
    }
}

#[test]
fn each_setting_is_spoken_once_it_is_due() {
    let mut model = at_a_stop();
    let effects = model.update(Msg::Way(Way::Speaks(true)));
    assert_eq!(effects, [Effect::Speak(said(&model))]);
    for movement in [SawMove::Next, SawMove::Next, SawMove::Back] {
        let effects = model.update(Msg::Saw(movement));
        let speak = Effect::Speak(said(&model));
        assert_eq!(effects, [Effect::ScrollToTop, speak], "{movement:?}");
    }
    let again = [Effect::Speak(said(&model))];
    assert_eq!(model.update(Msg::Speak), again);
    model.update(Msg::Way(Way::Listens(true)));
    assert_eq!(hear(&mut model, "repeat"), again);
    // Where no setting is due, the last one is not said on.
    let effects = model.update(Msg::Saw(SawMove::Jump(1, Step::SetUp)));
    assert_eq!(effects, [Effect::ScrollToTop, Effect::Hush]);
    let effects = model.update(Msg::Way(Way::Speaks(false)));
    assert_eq!(effects, [Effect::Hush]);
    let effects = model.update(Msg::Saw(SawMove::Next));
    assert_eq!(effects, [Effect::ScrollToTop]);
    let effects = model.update(Msg::Saw(SawMove::Leave));
    assert_eq!(effects, [Effect::ScrollToTop, Effect::Hush]);
}

#[test]
fn how_one_works_is_kept_and_no_step_back() {
    let mut model = at_a_stop();
    for way in [Way::Hand(Hand::Left), Way::Speaks(true), Way::Listens(true)] {
        model.update(Msg::Way(way));
    }
    let at_saw = &model.state.at_saw;
    assert_eq!(at_saw.hand, Hand::Left);
    assert!(at_saw.speaks && at_saw.listens && !model.can_undo);
    let (again, _) = opened_with(&model.state);
    assert_eq!(again.state, model.state);
}

/// Moves, each so many seconds after the one before, and the pace in seconds after it.
#[test]
fn the_pace_is_that_of_passes_without_absences() {
    let mut model = at_a_stop();
    let next = SawMove::Next;
    for (seconds, movement, pace) in [
        (400.0, next, 0.0),
        (10.0, next, 10.0),
        // Derived: 10 + (20 − 10) / 4.
        (20.0, next, 12.5),
        // Whoever takes longer than five minutes was away, and less than three seconds only leafs.
        (301.0, next, 12.5),
        (2.9, next, 12.5),
        (12.5, next, 12.5),
        // What comes between begins anew.
        (20.0, SawMove::Back, 12.5),
        (20.0, next, 12.5),
        (20.0, SawMove::Pause(true), 12.5),
        (20.0, SawMove::Pause(false), 12.5),
        (20.0, next, 12.5),
        // A clock that is put back says nothing.
        (-3600.0, next, 12.5),
        (12.5, next, 12.5),
    ] {
        model.now += seconds * 1000.0;
        model.update(Msg::Saw(movement));
        let is = f64::from(model.state.at_saw.pace) / 1000.0;
        assert!(
            (is - pace).abs() < 1e-9,
            "{is} after {movement:?} at {seconds} s"
        );
    }
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]
    #[test]
    fn the_pace_is_unknown_or_that_of_a_pass(
        moves in vec((saw_move(), prop_oneof![
            4 => -10.0..1000.0_f64,
            1 => Just(f64::NAN),
            1 => Just(f64::INFINITY),
            1 => any::<f64>(),
        ]), 0..40),
    ) {
        let mut model = at_a_stop();
        for (movement, seconds) in moves {
            model.now = if model.now.is_finite() { model.now } else { 0.0 } + seconds * 1000.0;
            model.update(Msg::Saw(movement));
            let pace = model.state.at_saw.pace;
            prop_assert!(pace == 0 || (3000..=300_000).contains(&pace), "{}", pace);
        }
    }
}
