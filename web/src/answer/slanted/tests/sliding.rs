//! A sliding dovetail.

use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::sliding::{
    BitRequest, SlidingDovetailPlan, SlidingDovetailRequest, TaperRequest, sliding_dovetail,
};

use super::{assert_stale, fields, put, slanted, typed};
use crate::state::{Field, JointField, JointKind, SlidingField, Work};

const SLIDING: JointKind = JointKind::Sliding;

/// The worked one, as a script would ask for it.
fn by_hand() -> SlidingDovetailRequest {
    SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: 12.7.into(),
            flank_degrees: 14.0.into(),
            ..BitRequest::default()
        }
        .into(),
        depth: 9.5.into(),
        board: BoardRequest {
            thickness: 18.0.into(),
        }
        .into(),
        ..SlidingDovetailRequest::default()
    }
}

#[track_caller]
fn assert_agree(
    change: impl FnOnce(&mut Work),
    request: &SlidingDovetailRequest,
) -> SlidingDovetailPlan {
    let found = slanted(SLIDING, change);
    assert_eq!(found.problems, []);
    let planned = sliding_dovetail(request).unwrap();
    assert_eq!(found.sliding.current(), Some(&planned));
    planned.plan
}

fn own(field: SlidingField) -> Field {
    Field::Sliding(field)
}

#[test]
fn the_worked_one_is_the_handbooks_example() {
    let plan = assert_agree(|_| {}, &by_hand());
    // Derived: 12.7 − 2 · 9.5 · tan 14°.
    assert!((plan.mouth.mm() - 7.963).abs() < 5e-4, "{}", plan.mouth);
}

#[test]
fn a_wide_and_tapered_one_is_planned_as_by_hand() {
    let change = |work: &mut Work| {
        for (field, text) in [
            (SlidingField::CuttingLength, "12"),
            (SlidingField::Floor, "16"),
            (SlidingField::Taper, "0.8"),
            (SlidingField::Length, "300"),
        ] {
            put(work, own(field), text);
        }
        put(work, Field::Joint(JointField::GlueGap), "0.1");
    };
    let request = SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: 12.7.into(),
            flank_degrees: 14.0.into(),
            cutting_length: 12.0.into(),
        }
        .into(),
        socket_floor: 16.0.into(),
        glue_gap: 0.1.into(),
        taper: TaperRequest {
            by: 0.8.into(),
            length: 300.0.into(),
        }
        .into(),
        ..by_hand()
    };
    let plan = assert_agree(change, &request);
    // Derived: half of 0.8 for each flank.
    assert!((plan.taper.unwrap().per_side.mm() - 0.4).abs() < 1e-9);
    assert!(!plan.socket_fence_moves.is_empty());
}

#[test]
fn a_length_alone_is_no_taper_and_a_taper_needs_one() {
    let length = own(SlidingField::Length);
    assert_agree(|work| put(work, length, "300"), &by_hand());
    let found = typed(SLIDING, own(SlidingField::Taper), "0.8");
    assert_eq!(found.sliding.needed, [length]);
    assert_eq!(fields(&found), []);
}

#[test]
fn what_must_be_filled_in_is_listed_in_order_and_is_no_problem() {
    let needed = [
        SlidingField::Tip,
        SlidingField::Flank,
        SlidingField::Depth,
        SlidingField::Thickness,
    ]
    .map(own);
    let good = slanted(SLIDING, |_| {});
    let found = slanted(SLIDING, |work| {
        needed.iter().for_each(|field| put(work, *field, ""));
    });
    assert_eq!(found.sliding.needed, needed);
    assert_eq!(fields(&found), []);
    assert_stale(&found.sliding, &good.sliding);
    for field in needed {
        assert_eq!(typed(SLIDING, field, "").sliding.needed, [field]);
    }
}

#[test]
fn a_text_that_cannot_be_read_is_a_problem_at_its_own_field() {
    let good = slanted(SLIDING, |_| {});
    let all = SlidingField::ALL.iter().map(|field| own(*field));
    for field in all.chain([Field::Joint(JointField::GlueGap)]) {
        let found = typed(SLIDING, field, "a hair");
        assert_eq!(fields(&found), [Some(field)]);
        assert_stale(&found.sliding, &good.sliding);
        assert_eq!(found.sliding.needed, [], "{field:?}");
    }
}

#[test]
fn what_cannot_be_is_said_at_its_field() {
    for (field, text) in [
        (SlidingField::Flank, "0"),
        (SlidingField::Flank, "50"),
        // Derived: the neck is gone at 12.7 / (2 · tan 14°) = 25.47.
        (SlidingField::Depth, "26"),
        (SlidingField::Floor, "12"),
        (SlidingField::Floor, "19"),
    ] {
        let found = typed(SLIDING, own(field), text);
        let told = fields(&found);
        assert!(
            told.contains(&Some(own(field))),
            "{field:?} {text}: {told:?}"
        );
        assert!(!found.sliding.is_current);
    }
    let short = typed(SLIDING, own(SlidingField::CuttingLength), "9");
    assert_eq!(fields(&short), [Some(own(SlidingField::Depth))]);
}
