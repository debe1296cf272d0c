//! The chosen screw's table.

use notchwright_core::dial::ScrewRequest;
use notchwright_core::given::Given;
use notchwright_core::screw_check::{PointRequest, ScrewCheckPlan, ScrewCheckRequest, screw_check};
use notchwright_core::units::parse_length;

use super::{Draft, FieldProblem, Outcome, finish, joint, none};
use crate::state::{Approach, Field, Id, Point, PointField, Work};

pub(super) fn outcome(
    work: &Work,
    before: &Outcome<ScrewCheckPlan>,
    problems: &mut Vec<FieldProblem>,
) -> Outcome<ScrewCheckPlan> {
    let mut draft = Draft::new(work);
    let screw = match work.shop.screws.chosen() {
        Some(screw) => commanded(work, joint::screw_request(&mut draft, screw), screw.id).into(),
        None => none(
            &mut draft,
            "screw",
            "There is no screw: add one in the shop.",
        ),
    };
    let both_ways = has_both(work);
    // A row that is not filled in yet is no point yet.
    let filled = work
        .sled
        .points
        .items()
        .iter()
        .filter(|point| is_filled(point));
    let points: Vec<_> = filled
        .enumerate()
        .map(|(place, point)| point_request(&mut draft, place, point, both_ways).into())
        .collect();
    let request = ScrewCheckRequest {
        screw,
        points: points.into(),
    };
    finish(draft, screw_check(&request), before, problems)
}

/// The screw as it was when the positions were commanded: a lead that was taken since does not move them.
fn commanded(work: &Work, screw: ScrewRequest, id: Id) -> ScrewRequest {
    let form = &work.sled;
    let with = &form.commanded_with;
    match parse_length(&with.text, with.unit) {
        Ok(lead) if form.commanded_screw == id => ScrewRequest {
            lead: lead.mm().into(),
            threads_per_inch: Given::Missing,
            ..screw
        },
        _ => screw,
    }
}

fn is_filled(point: &Point) -> bool {
    !point.commanded.is_blank() && !point.measured.is_blank()
}

fn has_both(work: &Work) -> bool {
    let has = |approach| {
        let mut points = work.sled.points.items().iter();
        points.any(|point| point.approach == approach && is_filled(point))
    };
    has(Approach::Up) && has(Approach::Down)
}

fn point_request(
    draft: &mut Draft<'_>,
    place: usize,
    point: &Point,
    both_ways: bool,
) -> PointRequest {
    let mut length = |name: &str, field| {
        let path = format!("points.{place}.{name}");
        draft.length_at(path.into(), Field::Point(point.id, field))
    };
    let approach = match point.approach {
        Approach::Up => "up",
        Approach::Down => "down",
    };
    PointRequest {
        commanded: length("commanded", PointField::Commanded),
        measured: length("measured", PointField::Measured),
        approach: if both_ways {
            approach.into()
        } else {
            Given::Missing
        },
    }
}
