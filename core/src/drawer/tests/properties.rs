//! What holds for every drawer that can be made.

use proptest::prelude::*;
use proptest::test_runner::TestCaseError;

use super::legal;
use crate::check::Checker;
use crate::dial::Screw;
use crate::drawer::{
    DrawerBoxPlan, DrawerBoxRequest, DrawerGroove, DrawerPlan, Nudged, drawer_box,
};
use crate::given::Given;
use crate::groove::groove_setup;
use crate::joint::box_joint::{BoxJointRequest, Make, box_joint};
use crate::joint::dovetail::{DovetailPlan, DovetailRequest, dovetail};
use crate::units::Mm;

/// Arithmetic's noise in a sum of lengths up to some metres.
const NOISE: f64 = 1e-6;

fn number(given: &Given<f64>) -> f64 {
    match given {
        Given::Value(number) => *number,
        _ => 0.0,
    }
}

fn value<T>(given: &Given<T>) -> &T {
    match given {
        Given::Value(value) => value,
        _ => panic!("a legal request has it"),
    }
}

fn same(one: Mm, other: f64) -> Result<(), TestCaseError> {
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

/// Wood in front of the tails, and behind those at the back.
fn laps(request: &DrawerBoxRequest) -> [f64; 2] {
    let joint = value(&request.joint);
    let lap = number(&joint.lap);
    let back = match &joint.back_lap {
        Given::Missing => lap,
        back => number(back),
    };
    [lap, back]
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

/// A groove that is said to be hidden is one that the joint itself finds behind a single finger.
fn groove_is_as_said(request: &DrawerBoxRequest, drawer: &DrawerPlan) -> Result<(), TestCaseError> {
    let groove = &drawer.groove;
    prop_assert!(groove.from_edge + groove.width <= drawer.height + Mm::constant(NOISE));
    for joint in box_joints(drawer) {
        let plan = box_joint(joint).unwrap().plan;
        let ends = plan.groove.unwrap().ends;
        prop_assert_eq!(
            groove.hidden,
            ends.iter().any(|end| end.make == Make::Through)
        );
        for (run, end) in groove.runs.iter().zip(ends) {
            prop_assert_eq!((run.board, run.make), (end.board, end.make));
        }
    }
    for joint in dovetails(drawer) {
        is_behind(groove, &dovetail(joint).unwrap().plan)?;
    }
    prop_assert_eq!(groove.runs.len(), 2);
    side_stops_at_grooves(request, drawer)?;
    if let Some(stop) = groove.runs[1].stopped {
        let length = drawer.boards[1].length.mm();
        let side = drawer.boards[0].thickness + Mm::constant(1.0);
        prop_assert!(stop.from > Mm::ZERO && stop.from < side);
        same(stop.to, length - stop.from.mm())?;
    }
    for run in &groove.runs {
        for setup in run.setup.iter().chain(&run.back_first) {
            let plan = groove_setup(setup).unwrap().plan;
            prop_assert_eq!(&plan.passes, &run.passes);
            same(run.passes[0].fence_to_bit, groove.from_edge.mm())?;
        }
    }
    let asked = number(&value(&value(&request.bottom).groove).depth);
    same(groove.depth, asked)
}

fn box_joints(drawer: &DrawerPlan) -> impl Iterator<Item = &BoxJointRequest> {
    let back = drawer.joint.back.iter();
    let back = back.filter_map(|back| back.box_joint.as_ref());
    drawer.joint.box_joint.iter().chain(back)
}

fn dovetails(drawer: &DrawerPlan) -> impl Iterator<Item = &DovetailRequest> {
    let back = drawer.joint.back.iter();
    let back = back.filter_map(|back| back.dovetail.as_ref());
    drawer.joint.dovetail.iter().chain(back)
}

/// Where a groove runs out at an end grain, one tail or one pin covers it, at its narrow end too.
fn is_behind(groove: &DrawerGroove, plan: &DovetailPlan) -> Result<(), TestCaseError> {
    if !groove.hidden {
        return Ok(());
    }
    let (from, to) = (groove.from_edge, groove.from_edge + groove.width);
    let covers = |lower: Mm, upper: Mm| !from.is_below(lower) && !to.is_above(upper);
    let behind_tail = plan
        .tails
        .iter()
        .any(|tail| covers(tail.from_base, tail.to_base));
    let mut lower = Mm::ZERO;
    let mut behind_pin = false;
    for tail in &plan.tails {
        behind_pin |= covers(lower, tail.from_tip);
        lower = tail.to_tip;
    }
    behind_pin |= covers(lower, plan.width);
    let [side, front] = groove.runs.as_slice() else {
        panic!("two kinds of boards")
    };
    prop_assert!(behind_tail || front.make == Make::Stopped, "{plan:?}");
    // A side that ends behind a lap is covered there.
    prop_assert!(behind_pin || behind_tail, "{side:?}");
    Ok(())
}

/// Measured from the drawer's front, a stopped groove of a side begins and ends at the floors of the grooves in front
/// and back, or runs out where the side ends before those.
fn side_stops_at_grooves(
    request: &DrawerBoxRequest,
    drawer: &DrawerPlan,
) -> Result<(), TestCaseError> {
    let run = &drawer.groove.runs[0];
    let [side, front, back] = drawer.boards.as_slice() else {
        panic!("three kinds of boards")
    };
    let depth = drawer.groove.depth.mm();
    let proud = number(&value(&request.joint).proud);
    let [lap, _] = laps(request);
    let begins = lap - proud;
    let floors = [
        front.thickness.mm() - depth,
        drawer.depth.mm() - back.thickness.mm() + depth,
    ];
    let ends = [begins, begins + side.length.mm()];
    if let Some(stop) = run.stopped {
        same(stop.from, floors[0].max(ends[0]) - begins)?;
        same(stop.to, floors[1].min(ends[1]) - begins)?;
        prop_assert!(stop.from > Mm::ZERO || stop.to < side.length);
        let turned = side.length - stop.to;
        prop_assert_eq!(
            run.back_first.is_some(),
            run.setup.is_some() && !turned.is_same(stop.from)
        );
        if let Some(setup) = &run.back_first {
            let stopped = value(&setup.stopped);
            same(turned, number(&stopped.from))?;
            same(side.length - stop.from, number(&stopped.to))?;
        }
    } else {
        prop_assert!(run.back_first.is_none());
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

/// The request that is handed on can be planned as it stands, and what comes of it goes together.
fn joint_can_be_cut(
    request: &DrawerBoxRequest,
    drawer: &DrawerPlan,
    notes: &[crate::problem::Note],
) -> Result<(), TestCaseError> {
    let told = notes.iter().any(|note| note.code == "clash");
    let joint = value(&request.joint);
    let step = Screw::check(value(&joint.screw), &mut Checker::new(&mut Vec::new()))
        .unwrap()
        .step();
    let [side, front, back] = drawer.boards.as_slice() else {
        panic!("three kinds of boards")
    };
    let is_alike = front.thickness.is_same(back.thickness)
        && (laps(request)[0] - laps(request)[1]).abs() <= 1e-3;
    prop_assert_eq!(drawer.joint.back.is_none(), is_alike);
    let ends = [front, back].into_iter().zip(laps(request));
    let mut corners = Vec::new();
    for request in box_joints(drawer) {
        let plan = box_joint(request).unwrap().plan;
        prop_assert_eq!(plan.count, drawer.joint.count as usize);
        same(plan.finger_width, drawer.joint.finger_width.unwrap().mm())?;
        same(plan.width, drawer.height.mm())?;
        for space in plan.boundaries.windows(2) {
            // A height within a micrometre of whole fingers is one of them.
            prop_assert!(
                (space[1] - space[0]).is_same(plan.finger_width),
                "{:?}",
                space
            );
        }
        // Half a step is what a gap can be off by (README, "How a plan is proven"), a whole one where a
        // socket is one pass on both boards.
        let safe = number(&joint.glue_gap) >= step.mm() * (1.0 + 4e-6);
        prop_assert!(
            !safe || !plan.dry_fit.clash,
            "{:?}",
            plan.dry_fit.smallest_gap
        );
        corners.push((plan.dry_fit, plan.depth_a, plan.depth_b));
    }
    let mut tips: Vec<Mm> = Vec::new();
    for request in dovetails(drawer) {
        let plan = dovetail(request).unwrap().plan;
        prop_assert_eq!(plan.count, drawer.joint.count as usize);
        same(plan.width, drawer.height.mm())?;
        let here: Vec<_> = plan
            .tails
            .iter()
            .flat_map(|tail| [tail.from_tip, tail.to_tip])
            .collect();
        // The same stops at both ends of a side.
        for (front, back) in tips.iter().zip(&here) {
            same(*front, back.mm())?;
        }
        tips = here;
        corners.push((plan.dry_fit, plan.depth_a, plan.depth_b));
    }
    prop_assert_eq!(corners.len(), if is_alike { 1 } else { 2 });
    let proud = number(&joint.proud);
    for ((fit, depth_a, depth_b), (end, lap)) in corners.into_iter().zip(ends) {
        prop_assert!(told || !fit.clash);
        same(depth_a, end.thickness.mm() - lap + proud)?;
        same(depth_b, side.thickness.mm() + proud)?;
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
