//! The order of stops, and what comes onto the carriage.

use notchwright_core::stop::{Board, Set};
use notchwright_core::units::Mm;
use proptest::prelude::*;

use crate::answer::course::{Course, Left};
use crate::answer::{Answer, Pieces};
use crate::state::{Done, End, Ends, Entry, Order, PiecesForm, State};

/// The sets of the worked joint between boards of these thicknesses.
fn sets(thickness_a: &str, thickness_b: &str) -> Vec<Set> {
    let mut work = State::demo().work;
    work.joint.thickness_a = Entry::mm(thickness_a);
    work.joint.thickness_b = Entry::mm(thickness_b);
    let answer = Answer::new(&work, &Answer::default());
    answer.cut().unwrap().sets.to_vec()
}

fn pieces(names_a: &str, names_b: &str) -> Pieces {
    let form = PiecesForm {
        names_a: Entry::mm(names_a),
        names_b: Entry::mm(names_b),
        ..PiecesForm::default()
    };
    Pieces::read(&form).0
}

/// One set-up of the blade does for both boards only where everything about it agrees.
#[test]
fn both_boards_come_to_each_stop_only_where_one_set_up_does_for_both() {
    type Change = fn(&mut Vec<Set>);
    let changes: [(Change, bool); 8] = [
        (|_| {}, true),
        (
            |sets| sets[1].height = sets[0].height + Mm::constant(0.1),
            false,
        ),
        (
            |sets| sets[1].kerf = sets[0].kerf + Mm::constant(0.1),
            false,
        ),
        (|sets| sets[0].tilt_degrees = 7.0, false),
        (|sets| sets[1].yaw_degrees = -7.0, false),
        (|sets| sets[1].board = Board::A, false),
        (|sets| sets.truncate(1), false),
        (|sets| sets.push(sets[0].clone()), false),
    ];
    let pieces = Pieces::default();
    for (number, (change, can_merge)) in changes.into_iter().enumerate() {
        let mut sets = sets("12", "12");
        change(&mut sets);
        assert_eq!(Course::can_merge(&sets), can_merge, "change {number}");
        let course = Course::new(&sets, &pieces, Order::Stops);
        assert_eq!(course.is_merged(), can_merge, "change {number}");
        let legs = if can_merge { 1 } else { sets.len() };
        assert_eq!(course.legs(), legs, "change {number}");
        // Nobody is made to work so.
        assert!(!Course::new(&sets, &pieces, Order::Boards).is_merged());
    }
    assert!(!Course::can_merge(&sets("12", "18")));
}

#[test]
fn boards_are_paired_as_long_as_there_are_and_named_together() {
    let sets = sets("12", "12");
    let pieces = pieces("left; right", "front; back; divider");
    let course = Course::new(&sets, &pieces, Order::Stops);
    let loads = course.loads(0);
    let names: Vec<_> = loads.iter().map(|load| course.name(load)).collect();
    assert_eq!(names, ["left with front", "right with back", "divider"]);
    // One alone comes only to its own stops.
    let passes = |load: usize| course.passes(0, &loads[load]);
    let stops = [sets[0].stops.len(), sets[1].stops.len()];
    assert_eq!(passes(0).len(), stops[0] + stops[1]);
    assert_eq!(passes(2).len(), stops[1]);
    assert!(passes(2).iter().all(|(set, _)| set.board == Board::B));
    assert_eq!(course.legs(), 1);
    assert!(course.set(1).is_none());
    // Each is known by a mark of its own, even where two boards have an end of the same place.
    for load in &loads {
        assert_eq!(course.load(0, load.end).as_ref(), Some(load));
    }
}

#[test]
fn a_single_pair_needs_no_name() {
    let sets = sets("12", "12");
    let pieces = Pieces::default();
    for order in [Order::Boards, Order::Stops] {
        let course = Course::new(&sets, &pieces, order);
        assert_eq!(course.name(&course.load(0, End::default()).unwrap()), "");
        assert_eq!(course.cuttings(), 2);
    }
}

/// Derived: every pass turns the wheel from the stop before it, and a board that is done is left out.
#[test]
fn what_is_left_counts_from_stop_to_stop() {
    let sets = sets("12", "18");
    let pieces = pieces("left; right", "");
    let course = Course::new(&sets, &pieces, Order::Boards);
    let turns = |set: &Set, from: usize| {
        let at = |stop: usize| {
            let dial = sets[set.board as usize].stops[stop].dial;
            dial.turns as f64 + dial.division / f64::from(set.divisions)
        };
        at(set.stops.len() - 1) - at(from)
    };
    let ends: Vec<End> = course.loads(0).iter().map(|load| load.end).collect();
    let mut done = Done::default();
    let passes = [sets[0].stops.len(), sets[1].stops.len()];
    let all = course.left(0, ends[0], 0, &done);
    assert_eq!(all.passes, 2 * passes[0] + passes[1]);
    let expected = 2.0 * turns(&sets[0], 0) + turns(&sets[1], 0);
    assert!((all.turns - expected).abs() < 1e-9);
    done.mark(0, ends[0], true);
    let second = course.left(0, ends[1], 3, &done);
    assert_eq!(second.passes, passes[0] - 3 + passes[1]);
    let expected = turns(&sets[0], 3) + turns(&sets[1], 0);
    assert!((second.turns - expected).abs() < 1e-9);
    done.mark(0, ends[1], true);
    let last = course.left(1, course.loads(1)[0].end, passes[1] - 1, &done);
    assert_eq!(
        last,
        Left {
            passes: 1,
            turns: 0.0
        }
    );
    assert_eq!(course.left(1, ends[0], usize::MAX, &done), Left::default());
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(64))]

    /// Through both boards' stops the readings rise, and each stop comes once.
    #[test]
    fn at_both_boards_stops_readings_rise(
        thickness in 6_u32..25,
        names in "([a-c]; ?){0,3}",
        ends in prop_oneof![Just(Ends::One), Just(Ends::Both)],
    ) {
        let sets = sets(&thickness.to_string(), &thickness.to_string());
        let form = PiecesForm { names_b: Entry::mm(&names), ends_a: ends, ..PiecesForm::default() };
        let (pieces, _) = Pieces::read(&form);
        let course = Course::new(&sets, &pieces, Order::Stops);
        prop_assert!(course.is_merged());
        for load in course.loads(0) {
            let passes = course.passes(0, &load);
            let readings: Vec<Mm> = passes.iter().map(|(_, stop)| stop.dial.reading).collect();
            prop_assert!(readings.is_sorted_by(|one, other| one.mm() <= other.mm()));
            let expected: usize = load.ends.iter().map(|(set, _)| sets[*set].stops.len()).sum();
            prop_assert_eq!(passes.len(), expected);
            for (set, stop) in &passes {
                let same = passes.iter().filter(|(other, at)| other.board == set.board && at.number == stop.number);
                prop_assert_eq!(same.count(), 1);
            }
        }
        let mut ends: Vec<_> = course.loads(0).into_iter().flat_map(|load| load.ends).collect();
        let count = ends.len();
        prop_assert_eq!(count, course.cuttings());
        ends.sort();
        ends.dedup();
        prop_assert_eq!(ends.len(), count);
    }
}
