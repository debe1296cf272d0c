//! Dovetails that cannot be planned: what is missing, what cannot be read, what cannot be.

use super::{Answer, SlantedAnswer, answer, assert_stale, fields, put, said, slanted, typed};
use crate::model::Chunk;
use crate::state::{
    CutterField, DovetailField, Field, Id, JointField, JointKind, List, PinsBy, SawField,
    ScrewField, SledField, SlopeBy, State, Work, ZeroKind,
};

const DOVETAIL: JointKind = JointKind::Dovetail;

fn own(field: DovetailField) -> Field {
    Field::Dovetail(field)
}

fn good() -> SlantedAnswer {
    slanted(DOVETAIL, |_| {})
}

#[test]
fn what_must_be_filled_in_is_listed_in_order_and_is_no_problem() {
    let needed = [
        Field::Joint(JointField::Width),
        Field::Joint(JointField::ThicknessA),
        Field::Joint(JointField::ThicknessB),
        own(DovetailField::Run),
        own(DovetailField::Tails),
        own(DovetailField::HalfPin),
        own(DovetailField::NarrowPin),
        Field::Cutter(Id(1), CutterField::Kerf),
        Field::Screw(Id(1), ScrewField::Threads),
        Field::Screw(Id(1), ScrewField::Divisions),
    ];
    let found = slanted(DOVETAIL, |work| {
        needed.iter().for_each(|field| put(work, *field, " "));
    });
    assert_eq!(found.dovetail.needed, needed);
    assert_eq!(fields(&found), []);
    assert_stale(&found.dovetail, &good().dovetail);
    for field in needed {
        let found = typed(DOVETAIL, field, "");
        assert_eq!(found.dovetail.needed, [field]);
        assert_eq!((fields(&found), found.dovetail.refused), (vec![], vec![]));
    }
}

#[test]
fn only_what_the_way_of_asking_needs_is_needed() {
    let blank = |by, slope_by| {
        move |work: &mut Work| {
            work.joint.dovetail.by = by;
            work.joint.dovetail.slope_by = slope_by;
            for field in [
                DovetailField::NarrowPin,
                DovetailField::HalfPin,
                DovetailField::Ratio,
                DovetailField::Run,
                DovetailField::Degrees,
            ] {
                put(work, own(field), "");
            }
        }
    };
    for (by, slope_by, needed) in [
        (
            PinsBy::Ratio,
            SlopeBy::Degrees,
            &[DovetailField::Degrees, DovetailField::Ratio][..],
        ),
        (PinsBy::Equal, SlopeBy::Run, &[DovetailField::Run]),
        (
            PinsBy::Narrowest,
            SlopeBy::Degrees,
            &[DovetailField::Degrees],
        ),
    ] {
        let found = slanted(DOVETAIL, blank(by, slope_by));
        let needed: Vec<_> = needed.iter().map(|field| own(*field)).collect();
        assert_eq!(found.dovetail.needed, needed, "{by:?}");
        assert_eq!(found.problems, []);
    }
}

#[test]
fn a_text_that_cannot_be_read_is_a_problem_at_its_own_field() {
    let good = good();
    let read = [
        Field::Joint(JointField::Width),
        Field::Joint(JointField::ThicknessA),
        Field::Joint(JointField::ThicknessB),
        Field::Joint(JointField::GlueGap),
        Field::Joint(JointField::Proud),
        own(DovetailField::Tails),
        own(DovetailField::NarrowPin),
        own(DovetailField::HalfPin),
        own(DovetailField::Run),
        own(DovetailField::Weights),
        own(DovetailField::Lap),
        own(DovetailField::LeanOffset),
        own(DovetailField::LeanHeight),
        Field::Cutter(Id(1), CutterField::Kerf),
        Field::Cutter(Id(1), CutterField::Diameter),
        Field::Screw(Id(1), ScrewField::Threads),
        Field::Saw(Id(1), SawField::GreatestHeight),
        Field::Sled(Id(1), SledField::Base),
        Field::Sled(Id(1), SledField::Travel),
        Field::Sled(Id(1), SledField::FrontRail),
    ];
    for field in read {
        let found = answer(DOVETAIL, |work| put(work, field, "a hair"));
        assert_eq!(found.problems_of(field).count(), 1, "{field:?}");
        assert_eq!(found.shown_problems().count(), 1, "{field:?}");
        let found = found.slanted.unwrap();
        assert_stale(&found.dovetail, &good.dovetail);
        assert_eq!(found.dovetail.needed, [], "{field:?}");
    }
}

#[test]
fn a_field_of_another_way_of_asking_is_not_read() {
    for (by, slope_by, unread) in [
        (PinsBy::Widths, SlopeBy::Run, DovetailField::Ratio),
        (PinsBy::Widths, SlopeBy::Run, DovetailField::Degrees),
        (PinsBy::Widths, SlopeBy::Degrees, DovetailField::Run),
        (PinsBy::Ratio, SlopeBy::Run, DovetailField::HalfPin),
        (PinsBy::Equal, SlopeBy::Run, DovetailField::NarrowPin),
        (PinsBy::Narrowest, SlopeBy::Run, DovetailField::NarrowPin),
    ] {
        let found = slanted(DOVETAIL, |work| {
            work.joint.dovetail.by = by;
            work.joint.dovetail.slope_by = slope_by;
            put(work, own(unread), "a hair");
        });
        assert_eq!(fields(&found), [], "{unread:?}");
        assert!(found.dovetail.is_current, "{unread:?}");
    }
}

/// What is chosen, and what is then typed where.
type Row = (fn(&mut Work), DovetailField, &'static str);

#[test]
fn what_cannot_be_is_said_at_its_field() {
    let angle = |work: &mut Work| work.joint.dovetail.slope_by = SlopeBy::Degrees;
    let rows: [Row; 9] = [
        (|_| {}, DovetailField::Run, "0"),
        (angle, DovetailField::Degrees, "0"),
        (angle, DovetailField::Degrees, "50"),
        (|_| {}, DovetailField::Tails, "61"),
        // Derived: fifteen tails and fourteen pins of 5 leave (140 − 12 − 70) / 15 = 3.87 at the tip, less 4.5.
        (|_| {}, DovetailField::Tails, "15"),
        // Derived: the leaning kerf is 3.07 / cos 7.125° = 3.094 wide, less a gap of 0.05.
        (|_| {}, DovetailField::NarrowPin, "3"),
        (|_| {}, DovetailField::Lap, "18"),
        (|_| {}, DovetailField::Weights, "1 1"),
        (|_| {}, DovetailField::HalfPin, "69"),
    ];
    for (change, field, text) in rows {
        let found = slanted(DOVETAIL, |work| {
            change(work);
            put(work, own(field), text);
        });
        assert_eq!(fields(&found), [Some(own(field))], "{field:?}: {text}");
        assert!(!found.dovetail.is_current);
    }
}

#[test]
fn a_lean_that_no_blade_has_is_said() {
    for (offset, height) in [("50", "6"), ("-6", "50"), ("0", "50")] {
        let found = slanted(DOVETAIL, |work| {
            put(work, own(DovetailField::LeanOffset), offset);
            put(work, own(DovetailField::LeanHeight), height);
        });
        let at = Some(own(DovetailField::LeanOffset));
        assert_eq!(fields(&found), [at], "{offset} over {height}");
    }
}

#[test]
fn a_zero_by_a_test_kerf_needs_both_its_numbers() {
    let found = slanted(DOVETAIL, |work| work.joint.zero.kind = ZeroKind::TestKerf);
    assert_eq!(
        found.dovetail.needed,
        [
            Field::Joint(JointField::ZeroReading),
            Field::Joint(JointField::ZeroMeasured)
        ]
    );
}

#[test]
fn what_is_not_there_at_all_is_said_plainly() {
    let found = slanted(DOVETAIL, |work| {
        work.shop.cutters = List::default();
        work.shop.screws = List::default();
    });
    let mut refused = said(&found.dovetail.refused);
    refused.sort();
    assert_eq!(
        refused,
        [
            "There is no cutter: add one in the shop.",
            "There is no screw: add one in the shop.",
        ]
    );
    assert!(!found.dovetail.is_current);
}

#[test]
fn problems_are_shown_only_while_the_joint_is_open() {
    let field = own(DovetailField::Tails);
    let open = answer(DOVETAIL, |work| put(work, field, "several"));
    assert_eq!(open.problems_of(field).count(), 1);
    let mut work = State::demo().work;
    work.joint.kind = DOVETAIL;
    let left = Answer::new(&work, &open);
    assert_eq!(left.problems_of(field).count(), 0);
}

#[test]
fn what_is_wrong_in_the_shop_is_said_there_too() {
    for (field, text) in [
        (Field::Cutter(Id(1), CutterField::Kerf), "-1"),
        (Field::Screw(Id(1), ScrewField::Divisions), "fine"),
        (Field::Saw(Id(1), SawField::GreatestHeight), "9000"),
        (Field::Sled(Id(1), SledField::Base), "-3"),
    ] {
        for kind in [DOVETAIL, JointKind::Sliding] {
            let mut work = State::demo().work;
            work.joint.kind = kind;
            put(&mut work, field, text);
            let mut in_shop = Answer::new(&work, &Answer::default());
            in_shop.add(Chunk::Shop, &work);
            assert_eq!(in_shop.problems_of(field).count(), 1, "{field:?}");
        }
        let at_joint = answer(DOVETAIL, |work| put(work, field, text));
        assert_eq!(at_joint.problems_of(field).count(), 1, "{field:?}");
        assert!(at_joint.cut().is_none(), "{field:?}");
    }
}
