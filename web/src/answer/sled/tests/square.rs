//! The five-cut test, this one's and those that were kept.

use notchwright_core::square::{SquareTestRequest, square_test};
use notchwright_core::units::Mm;

use super::{assert_stale, fields, put, sled, typed};
use crate::answer::Answer;
use crate::model::Chunk;
use crate::state::{
    Entry, Field, Id, JointField, Sled, SquareField, SquareForm, SquareTest, State, Work,
};

fn by_hand() -> SquareTestRequest {
    SquareTestRequest {
        fence_end: 24.36.into(),
        free_end: 24.02.into(),
        apart: 340.0.into(),
        pivot_to_adjuster: 460.0.into(),
        board_thickness: 18.0.into(),
        ..SquareTestRequest::default()
    }
}

/// A kept test of this sled; the free end was `free_end` wide.
fn test(sled: u16, free_end: &str) -> SquareTest {
    SquareTest {
        date: Entry::mm("2026-04-30"),
        sled: Id(sled),
        strip: SquareForm {
            free_end: Entry::mm(free_end),
            ..State::demo().work.sled.square
        },
        ..SquareTest::default()
    }
}

#[test]
fn the_worked_joints_strip_is_worked_out_as_by_hand() {
    let planned = square_test(&by_hand()).unwrap();
    assert_eq!(sled(|_| {}).square.current(), Some(&planned));
    // Without a board there is nothing to say of its joint.
    let no_board = sled(|work| {
        put(work, Field::Joint(JointField::ThicknessA), "");
        put(work, Field::Joint(JointField::ThicknessB), "thick");
    });
    assert_eq!(no_board.square.current().unwrap().plan.over_thickness, None);
}

/// The strip is measured whatever the boards are.
#[test]
fn a_board_that_cannot_be_does_not_stand_in_the_strips_way() {
    let found = typed(Field::Joint(JointField::ThicknessB), "9000");
    assert!(found.square.is_current, "{:?}", found.square.refused);
}

#[test]
fn a_blank_strip_is_still_to_be_measured() {
    let mut work = State::demo().work;
    work.sled.square = SquareForm::default();
    let mut answer = Answer::new(&work, &Answer::default());
    answer.add(Chunk::Sled, &work);
    let found = answer.sled.unwrap();
    let needed = [
        SquareField::FenceEnd,
        SquareField::FreeEnd,
        SquareField::Apart,
        SquareField::Pivot,
    ];
    assert_eq!(found.square.needed, needed.map(Field::Square));
    assert_eq!((&found.square.plan, fields(&found)), (&None, vec![]));
}

#[test]
fn what_cannot_be_read_is_said_at_its_field() {
    let good = sled(|_| {});
    for field in SquareField::ALL {
        let found = typed(Field::Square(*field), "a hair");
        assert_eq!(fields(&found), [Some(Field::Square(*field))]);
        assert_stale(&found.square, &good.square);
        assert!(found.fit.is_current);
    }
}

fn with_tests(work: &mut Work) {
    work.shop.sleds.push(Sled::default());
    for kept in [
        test(1, "24.02"),
        test(2, "24.36"),
        test(1, "wide"),
        test(1, "24.4"),
    ] {
        work.sled.tests.push(kept);
    }
}

#[test]
fn the_tests_of_the_chosen_sled_are_worked_out_again() {
    let found = sled(with_tests);
    let ids: Vec<_> = found.tests.iter().map(|test| test.id).collect();
    assert_eq!(ids, [Id(1), Id(3), Id(4)]);
    let planned = square_test(&by_hand()).unwrap();
    let [first, unreadable, last] = found.tests.as_slice() else {
        panic!("{:?}", found.tests)
    };
    assert_eq!(first.per500, Some(planned.plan.per500));
    // Derived: the readings' uncertainty u leaves 500 · √2 u / (4 L) over 500 mm.
    let uncertain = 500.0 * 2.0_f64.sqrt() * 0.02 / (4.0 * 340.0);
    assert!((first.uncertainty.mm() - uncertain).abs() < 1e-12);
    assert_eq!(first.date, "2026-04-30");
    assert_eq!(
        (unreadable.per500, unreadable.uncertainty),
        (None, Mm::ZERO)
    );
    // Derived: 500 (A − B) / (4 L) = 500 · −0.04 / 1360.
    let error = last.per500.unwrap().mm();
    assert!((error + 500.0 * 0.04 / 1360.0).abs() < 1e-9);
    assert!(found.square.is_current);
}

#[test]
fn another_sled_has_tests_of_its_own() {
    let found = sled(|work| {
        with_tests(work);
        work.shop.sleds.choose(Id(2));
    });
    let ids: Vec<_> = found.tests.iter().map(|test| test.id).collect();
    assert_eq!(ids, [Id(2)]);
    assert_eq!(found.tests[0].per500, Some(Mm::ZERO));
}
