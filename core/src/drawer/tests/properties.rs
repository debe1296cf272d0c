//! What holds for every drawer that can be made.

use proptest::prelude::*;
use proptest::test_runner::TestCaseError;

use super::corners::{groove_is_as_said, joint_can_be_cut, laps};
use super::legal;
use crate::drawer::{DrawerBoxPlan, DrawerBoxRequest, DrawerPlan, Nudged, drawer_box};
use crate::given::Given;
use crate::units::Mm;

/// Arithmetic's noise in a sum of lengths up to some metres.
pub(super) const NOISE: f64 = 1e-6;

pub(super) fn number(given: &Given<f64>) -> f64 {
    match given {
        Given::Value(number) => *number,
        _ => 0.0,
    }
}

pub(super) fn value<T>(given: &Given<T>) -> &T {
    match given {
        Given::Value(value) => value,
        _ => panic!("a legal request has it"),
    }
}

pub(super) fn same(one: Mm, other: f64) -> Result<(), TestCaseError> {
    prop_assert!((one.mm() - other).abs() < NOISE, "{one} and {other}");
    Ok(())
}

fn check(request: &DrawerBoxRequest) -> Result<bool, TestCaseError> {
    let Ok(planned) = drawer_box(request) else {
        return Ok(false);
    };
    let plan = planned.plan;
    prop_assert_eq!(
        plan.drawers.iter().map(|drawer| drawer.count).sum::<u32>(),
        number(&request.count) as u32
    );
    opening_is_filled(request, &plan)?;
    for drawer in &plan.drawers {
        boards_make_the_outside(request, drawer)?;
        nudges_are_reported(request, drawer, &plan)?;
        groove_is_as_said(request, drawer)?;
        bottom_fits(request, drawer)?;
        joint_can_be_cut(request, drawer, &planned.notes)?;
    }
    let boards: u32 = plan
        .parts
        .iter()
        .filter(|row| row.stock != "applied fronts")
        .map(|row| row.count)
        .sum();
    prop_assert_eq!(boards, 5 * number(&request.count) as u32);
    Ok(true)
}

/// Sides and fronts, less what stands proud and what goes into the lap, are the outside.
fn boards_make_the_outside(
    request: &DrawerBoxRequest,
    drawer: &DrawerPlan,
) -> Result<(), TestCaseError> {
    let (size, joint) = (value(&request.size), value(&request.joint));
    let proud = number(&joint.proud) * 2.0;
    let lap = laps(request).iter().sum::<f64>();
    let [side, front, back] = drawer.boards.as_slice() else {
        panic!("three kinds of boards")
    };
    same(
        drawer.width,
        number(&size.width) - 2.0 * number(&size.side_clearance),
    )?;
    let inset = match &request.applied {
        Given::Value(applied) if size.kind == "opening".into() && number(&applied.lap) < 0.0 => {
            number(&applied.thickness)
        }
        _ => 0.0,
    };
    same(
        drawer.depth,
        number(&size.depth) - number(&size.behind) - inset,
    )?;
    same(side.length, drawer.depth.mm() + proud - lap)?;
    same(front.length, drawer.width.mm() + proud)?;
    prop_assert_eq!(front.length, back.length);
    same(
        drawer.inside.width,
        drawer.width.mm() - 2.0 * side.thickness.mm(),
    )?;
    same(
        drawer.inside.depth,
        drawer.depth.mm() - front.thickness.mm() - back.thickness.mm(),
    )?;
    prop_assert!(
        drawer
            .boards
            .iter()
            .all(|board| board.width == drawer.height)
    );
    prop_assert_eq!(
        drawer.boards.iter().map(|board| board.count).sum::<u32>(),
        4
    );
    Ok(())
}

/// From the top: gap, drawer, clearance below, divider, and so on to the opening's floor.
fn opening_is_filled(
    request: &DrawerBoxRequest,
    plan: &DrawerBoxPlan,
) -> Result<(), TestCaseError> {
    let size = value(&request.size);
    let mut down = number(&size.height);
    for place in &plan.places {
        let drawer = &plan.drawers[place.drawer];
        same(
            place.from_below,
            down - place.gap_above.now.mm() - drawer.height.mm(),
        )?;
        // A swollen side never goes into what is kept free above it.
        let above = number(&size.above);
        prop_assert!(place.gap_above.wettest.mm() > above - NOISE, "{place:?}");
        prop_assert!(place.gap_above.now.mm() > above - NOISE, "{place:?}");
        let ceiling = place.from_below.mm() + drawer.height.mm() + place.gap_above.now.mm();
        for (height, gap) in drawer.movement.iter().flat_map(|movement| {
            [
                (movement.wettest, place.gap_above.wettest),
                (movement.driest, place.gap_above.driest),
            ]
        }) {
            same(height + gap, ceiling - place.from_below.mm())?;
        }
        down = place.from_below.mm() - number(&size.below) - number(&request.between);
    }
    if let Some(last) = plan.places.last() {
        same(last.from_below, number(&size.below))?;
        let fits = plan.snug_height.unwrap().mm();
        prop_assert!(fits < number(&size.height) + NOISE, "{fits}");
    }
    Ok(())
}

/// What is not as it was asked has a nudge that says so, from what was asked to what is; nothing is raised.
fn nudges_are_reported(
    request: &DrawerBoxRequest,
    drawer: &DrawerPlan,
    plan: &DrawerBoxPlan,
) -> Result<(), TestCaseError> {
    let find = |what| drawer.nudges.iter().find(|nudge| nudge.what == what);
    if let Some(nudge) = find(Nudged::Height) {
        prop_assert!(nudge.to < nudge.from);
        prop_assert_eq!(nudge.to, drawer.height);
        let finger = drawer.joint.finger_width.unwrap();
        same(drawer.height, finger.mm() * f64::from(drawer.joint.count))?;
        // Two fingers more would not fit.
        prop_assert!(nudge.from.mm() < drawer.height.mm() + 2.0 * finger.mm());
    } else if plan.places.is_empty() {
        same(drawer.height, number(&value(&request.size).height))?;
    } else {
        same(
            plan.drawers
                .iter()
                .map(|drawer| drawer.height)
                .max()
                .unwrap(),
            plan.drawers.last().unwrap().height.mm(),
        )?;
    }
    let asked = number(&value(&value(&request.bottom).groove).from_edge);
    match find(Nudged::Groove) {
        Some(nudge) => {
            same(nudge.from, asked)?;
            prop_assert_eq!(nudge.to, drawer.groove.from_edge);
        }
        None => prop_assert!((drawer.groove.from_edge.mm() - asked).abs() <= 1.001e-3),
    }
    Ok(())
}

/// The bottom lies in its groove at any moisture.
fn bottom_fits(request: &DrawerBoxRequest, drawer: &DrawerPlan) -> Result<(), TestCaseError> {
    let bottom = value(&request.bottom);
    let room = (drawer.groove.depth.mm() - number(&bottom.clearance)) * 2.0;
    same(drawer.bottom.length, drawer.inside.width.mm() + room)?;
    prop_assert!(drawer.bottom.width.mm() < drawer.inside.depth.mm() + room + NOISE);
    same(
        drawer.bottom.held,
        (drawer.bottom.width - drawer.inside.depth).mm() / 2.0,
    )?;
    prop_assert!(drawer.groove.width >= drawer.bottom.thickness);
    prop_assert_eq!(drawer.bottom.movement.is_some(), !bottom.wood.is_missing());
    if let Some(movement) = drawer.bottom.movement {
        prop_assert!(movement.wettest.mm() < drawer.inside.depth.mm() + room + NOISE);
        prop_assert!(movement.held_least > Mm::ZERO);
        prop_assert!(movement.held_aside < movement.held_least);
    }
    Ok(())
}

proptest! {
    #![proptest_config(ProptestConfig { cases: 2000, failure_persistence: None, max_global_rejects: 200_000, ..ProptestConfig::default() })]

    /// Anything legal is either planned as it should be or refused; nothing panics.
    #[test]
    fn any_legal_request(request in legal::request()) {
        check(&request)?;
    }

    /// The same where most drawers can be made, so that the rules are really exercised.
    #[test]
    fn usual_requests(request in legal::usual_request()) {
        let planned = check(&request)?;
        prop_assume!(planned);
    }
}
