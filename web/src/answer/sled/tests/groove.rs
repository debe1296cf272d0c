//! The groove on the router table.

use notchwright_core::groove::{GrooveSetupRequest, StoppedRequest, groove_setup};

use super::{assert_stale, fields, put, sled, typed};
use crate::state::{Field, RoutField, WidthBy, Work};

fn by_hand(width: f64) -> GrooveSetupRequest {
    GrooveSetupRequest {
        from_edge: 12.0.into(),
        width: width.into(),
        bit: 5.0.into(),
        pass_depth: 3.0.into(),
        depth: 6.0.into(),
        ..GrooveSetupRequest::default()
    }
}

fn rout(work: &mut Work, field: RoutField, text: &str) {
    put(work, Field::Rout(field), text);
}

#[track_caller]
fn assert_agree(change: impl FnOnce(&mut Work), request: &GrooveSetupRequest) {
    let planned = groove_setup(request).unwrap();
    assert_eq!(sled(change).groove.current(), Some(&planned));
}

#[test]
fn its_width_is_the_sheets_with_its_room() {
    assert_agree(|_| {}, &by_hand(5.8 + 0.2));
    let no_room = |work: &mut Work| rout(work, RoutField::Clearance, "");
    assert_agree(no_room, &by_hand(5.8));
}

#[test]
fn a_known_width_needs_no_sheet() {
    let known = |work: &mut Work| {
        work.sled.rout.by = WidthBy::Width;
        rout(work, RoutField::Width, "8");
        rout(work, RoutField::Sheet, "thin");
        rout(work, RoutField::Clearance, "some");
    };
    assert_agree(known, &by_hand(8.0));
    assert_eq!(fields(&sled(known)), []);
}

#[test]
fn it_is_stopped_only_when_an_end_is_given() {
    let ends = |work: &mut Work| {
        rout(work, RoutField::From, "40");
        rout(work, RoutField::To, "100");
    };
    let stopped = StoppedRequest {
        from: 40.0.into(),
        to: 100.0.into(),
    };
    let request = GrooveSetupRequest {
        stopped: stopped.into(),
        ..by_hand(5.8 + 0.2)
    };
    assert_agree(ends, &request);
    let (from, to) = (Field::Rout(RoutField::From), Field::Rout(RoutField::To));
    for (given, other) in [(from, to), (to, from)] {
        let found = typed(given, "40");
        assert_eq!(found.groove.needed, [other]);
        assert_eq!(fields(&found), []);
    }
}

#[test]
fn what_must_be_filled_in_is_listed_in_order() {
    let found = sled(|work| {
        for field in RoutField::ALL {
            rout(work, *field, "");
        }
    });
    let needed = [RoutField::FromEdge, RoutField::Sheet, RoutField::Bit];
    assert_eq!(found.groove.needed, needed.map(Field::Rout));
    assert_eq!((fields(&found), found.groove.refused.len()), (vec![], 0));
    // A depth of pass says nothing without a depth.
    let no_depth = typed(Field::Rout(RoutField::Depth), "");
    assert_eq!(no_depth.groove.needed, [Field::Rout(RoutField::Depth)]);
}

#[test]
fn what_is_wrong_is_said_at_its_field_and_the_last_good_plan_stays() {
    let good = sled(|_| {});
    for (field, text) in [
        (RoutField::FromEdge, "there"),
        (RoutField::FromEdge, "1"),
        (RoutField::Sheet, "thin"),
        (RoutField::Clearance, "some"),
        (RoutField::Bit, "small"),
        (RoutField::Bit, "7"),
        (RoutField::Depth, "-6"),
        (RoutField::PassDepth, "0"),
        (RoutField::From, "there"),
        (RoutField::To, "there"),
    ] {
        let found = typed(Field::Rout(field), text);
        assert_eq!(fields(&found), [Some(Field::Rout(field))], "{text}");
        assert_stale(&found.groove, &good.groove);
    }
}
