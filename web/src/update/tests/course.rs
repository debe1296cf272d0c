//! The way through many ends: every one once, back step by step, and what has been cut stays cut.

use std::collections::BTreeMap;

use notchwright_core::stop::Board;
use proptest::collection::vec;
use proptest::prelude::*;

use super::{WIDTH, type_in};
use crate::answer::course::{Course, Left};
use crate::keep::saved;
use crate::model::{Chunk, Model, Part};
use crate::msg::{Edit, Leaf, Msg, SawMove, Way};
use crate::notice::Notice;
use crate::state::{
    End, Ends, Entry, Field, JointKind, Order, PiecesField, PiecesForm, Progress, State, Step,
};
use crate::testing::{msg, opened_with, started};
use crate::update::Found;

const COUNT: Field = Field::Pieces(PiecesField::Count);

fn go(model: &mut Model, movement: SawMove) -> Progress {
    model.update(Msg::Saw(movement));
    model.state.progress().clone()
}

fn course(model: &Model) -> Course<'_> {
    model.answer.course(model.state.at_saw.order).unwrap()
}

/// The ends of a board, in order.
fn ends(model: &Model, board: Board) -> Vec<End> {
    model.answer.pieces.ends(board).collect()
}

/// The worked job at the saw: two boards that need two heights, of eight drawers.
fn at_the_saw() -> Model {
    let mut model = started();
    go(&mut model, SawMove::Open);
    model
}

/// What is left at the present step.
fn left(model: &Model) -> Left {
    let at = model.state.progress();
    let passed = match at.step {
        Step::Stop(stop) => stop,
        _ => 0,
    };
    course(model).left(at.set, at.end, passed, &at.done)
}

fn pieces() -> impl Strategy<Value = PiecesForm> {
    let ends = || prop_oneof![Just(Ends::One), Just(Ends::Both)];
    let names = || "([a-c]{1,3}; ?){0,3}".prop_map(|names| Entry::mm(&names));
    (1_usize..4, names(), names(), ends(), ends()).prop_map(
        |(count, names_a, names_b, ends_a, ends_b)| PiecesForm {
            what: Entry::mm("drawer"),
            count: Entry::mm(&count.to_string()),
            names_a,
            names_b,
            ends_a,
            ends_b,
        },
    )
}

/// A few fingers of these boards, at the saw.
fn few(pieces: PiecesForm, thickness_b: &str, kind: JointKind, order: Order) -> Model {
    let mut state = State::demo();
    let joint = &mut state.work.joint;
    joint.width = Entry::mm("60");
    joint.count = Entry::mm("3");
    joint.dovetail.tails = Entry::mm("1");
    joint.thickness_b = Entry::mm(thickness_b);
    (joint.kind, joint.pieces) = (kind, pieces);
    state.at_saw.order = order;
    let (mut model, _) = opened_with(&state);
    if kind == JointKind::Dovetail {
        model.update(Msg::Came(Chunk::Dovetail));
    }
    go(&mut model, SawMove::Open);
    model
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Whatever the order and however many there are: each end of each set once, then all is done; and back the
    /// same way, with less and less marked as cut.
    #[test]
    fn every_end_of_every_set_is_cut_once_and_back_is_the_same_way(
        pieces in pieces(),
        thickness_b in prop_oneof![Just("12"), Just("18")],
        kind in prop_oneof![3 => Just(JointKind::Box), 1 => Just(JointKind::Dovetail)],
        order in prop_oneof![Just(Order::Boards), Just(Order::Stops)],
    ) {
        let mut model = few(pieces, thickness_b, kind, order);
        let whole = course(&model).cuttings();
        prop_assert_eq!(course(&model).is_merged(), order == Order::Stops && thickness_b == "12" && kind == JointKind::Box);
        let mut cut: BTreeMap<(usize, End), usize> = BTreeMap::new();
        let mut walked = vec![model.state.progress().clone()];
        let mut before = left(&model);
        while model.state.progress().step != Step::Done {
            let at = model.state.progress().clone();
            let (passes, load) = {
                let course = course(&model);
                let load = course.load(at.set, at.end).unwrap();
                (course.passes(at.set, &load).len(), load)
            };
            let after = go(&mut model, SawMove::Next);
            if at.step == Step::Stop(passes - 1) {
                for (set, end) in load.ends {
                    prop_assert!(!at.done.has(set, end));
                    prop_assert!(after.done.has(set, end));
                    *cut.entry((set, end)).or_default() += 1;
                }
            } else {
                prop_assert_eq!(&after.done, &at.done);
            }
            prop_assert_eq!(after.of, whole);
            if after.step != Step::Done {
                // One pass less after each, and no more turns.
                let now = left(&model);
                let was_pass = usize::from(matches!(at.step, Step::Stop(_)));
                prop_assert_eq!(now.passes + was_pass, before.passes);
                prop_assert!(now.turns <= before.turns + 1e-9 && now.turns > -1e-9);
                before = now;
                walked.push(after);
            }
            prop_assert!(walked.len() < 5000);
        }
        prop_assert_eq!(before.passes, 1, "the last pass");
        prop_assert!(before.turns.abs() < 1e-9);
        let expected = {
            let course = course(&model);
            let sets = course.sets().iter().enumerate();
            sets.flat_map(|(set, of)| ends(&model, of.board).into_iter().map(move |end| ((set, end), 1))).collect()
        };
        prop_assert_eq!(cut, expected);
        prop_assert_eq!(model.state.progress().done.count(), whole);

        for step in walked.iter().rev() {
            prop_assert_eq!(&go(&mut model, SawMove::Back), step);
        }
        prop_assert_eq!(go(&mut model, SawMove::Back), walked[0].clone());
    }

    /// A tab may be killed at any moment: it comes back to the same step of the same end, with the same marks.
    #[test]
    fn a_killed_tab_comes_back_with_everything(messages in vec(msg(), 0..40)) {
        let mut model = at_the_saw();
        for msg in messages {
            // The jobs' part does not go away again.
            if msg != Msg::DidNotCome(Chunk::Jobs) {
                model.update(msg);
            }
        }
        let (mut again, _) = opened_with(&model.state);
        prop_assert_eq!(&again.state, &model.state);
        for chunk in [Chunk::Sled, Chunk::Dovetail, Chunk::Shop] {
            if model.parts.of(chunk) == Part::Here {
                again.update(Msg::Came(chunk));
            }
        }
        prop_assert_eq!(&again.state, &model.state);
        prop_assert_eq!(again.notices, []);
        prop_assert_eq!(again.answer.cut().is_some(), model.answer.cut().is_some());
    }

    /// However one jumps about, what is left is a number of passes and turns that there are.
    #[test]
    fn what_is_left_is_never_more_than_all(messages in vec(msg(), 0..30)) {
        let mut model = at_the_saw();
        for msg in messages {
            model.update(msg);
            let open = model.state.at_saw.open && model.parts.of(Chunk::Jobs) == Part::Here;
            if let (true, Some(course)) = (open, model.answer.course(model.state.at_saw.order)) {
                let all = course.left(0, End::default(), 0, &Default::default());
                let left = left(&model);
                prop_assert!(left.passes <= all.passes, "{:?} of {:?}", left, all);
                prop_assert!((-1e-6..=all.turns + 1e-6).contains(&left.turns), "{:?} of {:?}", left, all);
            }
        }
    }
}

#[test]
fn any_end_can_be_taken_marked_and_jumped_to() {
    let mut model = at_the_saw();
    let ends = ends(&model, Board::A);
    assert_eq!(ends.len(), 16);
    let at = go(&mut model, SawMove::Take(ends[5]));
    assert_eq!((at.set, at.end, at.step), (0, ends[5], Step::Board));
    // To mark one in the list leaves one where one is.
    assert_eq!(model.update(Msg::Saw(SawMove::Mark(ends[6], true))), []);
    let marked = model.state.progress();
    assert!(marked.done.has(0, ends[6]) && !marked.done.has(1, ends[6]));
    assert_eq!((marked.end, marked.step), (at.end, at.step));
    // The next one is the next that is not cut; the last is followed by those left out before.
    let stops = course(&model).sets()[0].stops.len();
    let at = go(&mut model, SawMove::Jump(0, Step::Stop(stops - 1)));
    assert_eq!((at.end, at.step), (ends[5], Step::Stop(stops - 1)));
    assert_eq!(go(&mut model, SawMove::Next).end, ends[7]);
    go(&mut model, SawMove::Take(ends[15]));
    go(&mut model, SawMove::Jump(0, Step::Stop(stops - 1)));
    let at = go(&mut model, SawMove::Next);
    assert_eq!((at.set, at.end, at.step), (0, ends[0], Step::Board));
    assert_eq!(
        go(&mut model, SawMove::Mark(ends[6], false)).done.count(),
        2
    );
    // An end that is not there any more is the first.
    let at = go(&mut model, SawMove::Take(End::new(150, 0, 0)));
    assert_eq!((at.end, at.step), (ends[0], Step::Board));
}

#[test]
fn a_set_up_that_was_jumped_over_is_come_back_to() {
    let mut model = at_the_saw();
    go(&mut model, SawMove::Jump(1, Step::SetUp));
    let fronts = ends(&model, Board::B);
    for end in &fronts[1..] {
        go(&mut model, SawMove::Mark(*end, true));
    }
    assert_eq!(go(&mut model, SawMove::Next).end, fronts[0]);
    let stops = course(&model).sets()[1].stops.len();
    go(&mut model, SawMove::Jump(1, Step::Stop(stops - 1)));
    let at = go(&mut model, SawMove::Next);
    assert_eq!((at.set, at.step), (0, Step::SetUp));
    assert_eq!(at.end, ends(&model, Board::A)[0]);
}

#[test]
fn from_the_end_on_is_out_and_nothing_is_cut_again_unasked() {
    let mut model = at_the_saw();
    for (set, board) in [(0, Board::A), (1, Board::B)] {
        go(&mut model, SawMove::Jump(set, Step::SetUp));
        for end in ends(&model, board) {
            go(&mut model, SawMove::Mark(end, true));
        }
    }
    go(&mut model, SawMove::Jump(1, Step::Done));
    go(&mut model, SawMove::Next);
    assert!(!model.state.at_saw.open);
    let at = go(&mut model, SawMove::Open);
    assert_eq!((at.step, at.done.count()), (Step::Done, 32));
    let at = go(&mut model, SawMove::Anew);
    assert_eq!((at.set, at.step, at.done.count()), (0, Step::SetUp, 0));
    assert!(model.state.at_saw.open);
}

/// An end is known by its piece, its board and its side, however many and however named they are.
#[test]
fn other_counts_and_names_keep_the_marks_of_the_same_ends() {
    let mut model = at_the_saw();
    let before = ends(&model, Board::A);
    for end in [before[1], before[4]] {
        go(&mut model, SawMove::Mark(end, true));
    }
    go(&mut model, SawMove::Leave);
    for (field, text) in [
        (COUNT, "9"),
        (Field::Pieces(PiecesField::NamesA), "left; right; middle"),
        (Field::Pieces(PiecesField::What), "tray"),
    ] {
        type_in(&mut model, field, text);
        let at = go(&mut model, SawMove::Open);
        assert!(at.done.has(0, before[1]) && at.done.has(0, before[4]));
        assert_eq!((at.set, at.step), (0, Step::SetUp), "the plan is the same");
        go(&mut model, SawMove::Leave);
    }
    let name = |end| model.answer.pieces.name(Board::A, end);
    assert_eq!(name(before[1]), "tray 1, right");
    assert_eq!(name(before[4]), "tray 3, left");
}

#[test]
fn another_plan_keeps_what_was_cut_and_begins_at_its_first_set_up() {
    let mut model = at_the_saw();
    let first = ends(&model, Board::A)[0];
    go(&mut model, SawMove::Jump(1, Step::SetUp));
    go(&mut model, SawMove::Jump(0, Step::Stop(3)));
    go(&mut model, SawMove::Mark(first, true));
    go(&mut model, SawMove::Leave);
    type_in(&mut model, WIDTH, "150");
    let at = go(&mut model, SawMove::Open);
    assert_eq!((at.set, at.step), (0, Step::SetUp));
    assert!(at.done.has(0, first));
    assert_eq!(model.notices, []);
}

#[test]
fn a_plan_that_changes_under_the_saw_keeps_the_marks_and_is_said() {
    let mut model = at_the_saw();
    let first = ends(&model, Board::A)[0];
    go(&mut model, SawMove::Mark(first, true));
    let mut theirs = model.state.clone();
    theirs.work.joint.width = Entry::mm("150");
    model.update(Msg::OtherTab(saved::save(&theirs)));
    assert_eq!(model.notices, [Notice::PlanChanged]);
    assert!(model.state.progress().done.has(0, first));
    // Once said, it is the plan that is cut.
    model.update(Msg::Dismiss(Notice::PlanChanged));
    go(&mut model, SawMove::Next);
    assert_eq!(model.notices, []);
}

/// In another order a stop has another number.
#[test]
fn another_order_begins_its_set_up_again_and_keeps_what_was_cut() {
    let mut model = started();
    model.update(Msg::Edit(Edit::JointOf(Leaf::Open(1))));
    go(&mut model, SawMove::Open);
    let first = ends(&model, Board::A)[0];
    go(&mut model, SawMove::Mark(first, true));
    go(&mut model, SawMove::Jump(1, Step::Stop(7)));
    model.update(Msg::Way(Way::Order(Order::Stops)));
    let at = model.state.progress();
    assert_eq!((at.set, at.step), (0, Step::SetUp));
    assert!(at.done.has(0, first));
    assert_eq!(course(&model).legs(), 1);
    model.update(Msg::Way(Way::Order(Order::Boards)));
    assert_eq!(course(&model).legs(), 2);
    assert!(model.state.progress().done.has(0, first));
    assert_eq!(model.notices, []);
}

#[test]
fn each_joint_is_cut_as_far_as_it_was_left() {
    let mut model = at_the_saw();
    let first = go(&mut model, SawMove::Jump(0, Step::Stop(5)));
    go(&mut model, SawMove::Leave);
    model.update(Msg::Edit(Edit::JointOf(Leaf::Open(1))));
    assert_eq!(go(&mut model, SawMove::Open).step, Step::SetUp);
    let second = go(&mut model, SawMove::Jump(1, Step::Stop(2)));
    go(&mut model, SawMove::Leave);
    model.update(Msg::Edit(Edit::JointOf(Leaf::Open(0))));
    assert_eq!(go(&mut model, SawMove::Open), first);
    go(&mut model, SawMove::Leave);
    model.update(Msg::Edit(Edit::JointOf(Leaf::Open(1))));
    assert_eq!(go(&mut model, SawMove::Open), second);
}

/// The part for the saw comes right after the start: whoever is faster waits there.
#[test]
fn the_saw_waits_for_its_part() {
    let (mut model, _) = Model::start(Found::default());
    go(&mut model, SawMove::Open);
    assert!(model.state.at_saw.open);
    // Nothing moves yet; but one can leave, and come again.
    assert_eq!(go(&mut model, SawMove::Next), Progress::default());
    go(&mut model, SawMove::Leave);
    assert!(!model.state.at_saw.open);
    go(&mut model, SawMove::Open);
    model.update(Msg::Came(Chunk::Jobs));
    assert!(model.state.at_saw.open);
    assert_eq!(model.notices, []);
    let at = model.state.progress().clone();
    assert_ne!(at.plan, 0);
    assert_eq!(go(&mut model, SawMove::Next).step, Step::Board);
}

#[test]
fn whoever_left_while_waiting_is_not_led_back() {
    let (mut model, _) = Model::start(Found::default());
    go(&mut model, SawMove::Open);
    go(&mut model, SawMove::Leave);
    model.update(Msg::Came(Chunk::Jobs));
    assert!(!model.state.at_saw.open);
}
