//! The chosen screw's table.

use notchwright_core::dial::ScrewRequest;
use notchwright_core::screw_check::{PointRequest, ScrewCheckRequest, screw_check};

use super::{assert_stale, fields, said, sled};
use crate::state::{Approach, Entry, Field, Id, Point, PointField, Work};

/// What the worked joint's screw was measured to do.
const MEASURED: [(f64, f64); 8] = [
    (0.0, 0.0),
    (20.0, 20.03),
    (40.0, 40.05),
    (60.0, 60.06),
    (80.0, 80.1),
    (100.0, 100.11),
    (120.0, 120.14),
    (140.0, 140.15),
];

fn by_hand(approach: impl Fn(usize) -> Option<&'static str>) -> ScrewCheckRequest {
    let points = MEASURED.iter().enumerate();
    let point = |(place, (commanded, measured)): (usize, &(f64, f64))| {
        PointRequest {
            commanded: (*commanded).into(),
            measured: (*measured).into(),
            approach: approach(place).map_or_else(Default::default, Into::into),
        }
        .into()
    };
    let points: Vec<_> = points.map(point).collect();
    ScrewCheckRequest {
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        points: points.into(),
    }
}

fn point(commanded: &str, measured: &str, approach: Approach) -> Point {
    Point {
        commanded: Entry::mm(commanded),
        measured: Entry::mm(measured),
        approach,
        ..Point::default()
    }
}

fn measured(work: &mut Work, id: u16, text: &str) {
    let entry = Entry::mm(text);
    work.sled
        .points
        .change(Id(id), |point| point.measured = entry);
}

#[test]
fn the_worked_joints_screw_is_checked_as_by_hand() {
    let planned = screw_check(&by_hand(|_| None)).unwrap();
    assert_eq!(sled(|_| {}).screw.current(), Some(&planned));
}

#[test]
fn a_row_that_is_not_filled_in_is_no_point() {
    let planned = screw_check(&by_hand(|_| None)).unwrap();
    let found = sled(|work| {
        work.sled.points.push(point("160", " ", Approach::Down));
        work.sled.points.push(point("", "160.2", Approach::Down));
        work.sled.points.push(point("wide", "", Approach::Up));
        work.sled.points.push(Point::default());
    });
    assert_eq!(found.screw.current(), Some(&planned));
    assert_eq!(fields(&found), []);
}

#[test]
fn what_is_wrong_is_said_at_its_own_row() {
    let good = sled(|_| {});
    for (text, field) in [("x", PointField::Measured), ("9e9", PointField::Measured)] {
        let found = sled(|work| {
            // The row above is no point, so that the rows of the request are not those of the page.
            measured(work, 2, "");
            measured(work, 5, text);
        });
        assert_eq!(fields(&found), [Some(Field::Point(Id(5), field))]);
        assert_stale(&found.screw, &good.screw);
    }
    let found = sled(|work| {
        measured(work, 1, "");
        let far = Entry::mm("1000000");
        let at_eight = |point: &mut Point| point.commanded = far;
        work.sled.points.change(Id(8), at_eight);
    });
    let commanded = Field::Point(Id(8), PointField::Commanded);
    assert_eq!(fields(&found), [Some(commanded)]);
}

#[test]
fn the_way_of_approach_counts_only_where_both_are_there() {
    let planned = screw_check(&by_hand(|_| None)).unwrap();
    let all_down = sled(|work| {
        for id in 1..=8 {
            let down = |point: &mut Point| point.approach = Approach::Down;
            work.sled.points.change(Id(id), down);
        }
        // Not filled in: its way does not count.
        work.sled.points.push(point("160", "", Approach::Up));
    });
    assert_eq!(all_down.screw.current(), Some(&planned));

    let both = screw_check(&by_hand(|place| {
        Some(if place == 7 { "down" } else { "up" })
    }))
    .unwrap();
    let last_down = sled(|work| {
        let down = |point: &mut Point| point.approach = Approach::Down;
        work.sled.points.change(Id(8), down);
    });
    assert_eq!(last_down.screw.current(), Some(&both));
    assert!(both.plan.backlash.is_some());
}

#[test]
fn too_few_points_are_refused_in_words() {
    let good = sled(|_| {});
    let found = sled(|work| (3..=8).for_each(|id| measured(work, id, "")));
    assert_eq!(
        said(&found.screw.refused),
        ["From 3 to 500 points are needed; these are 2."]
    );
    assert_eq!((fields(&found), found.screw.needed.len()), (vec![], 0));
    assert_stale(&found.screw, &good.screw);
}

#[test]
fn points_at_one_place_are_refused_in_words() {
    let found = sled(|work| {
        for id in 1..=8 {
            let same = |point: &mut Point| point.commanded = Entry::mm("20");
            work.sled.points.change(Id(id), same);
        }
    });
    assert!(!found.screw.is_current);
    assert_eq!(
        said(&found.screw.refused),
        ["These points lie too close together: measure at places some turns apart."]
    );
}
