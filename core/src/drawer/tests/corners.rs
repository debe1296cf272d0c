//! What holds for the corners of every drawer, and for the groove that runs through them.

use proptest::prelude::*;
use proptest::test_runner::TestCaseError;

use super::properties::{NOISE, number, same, value};
use crate::check::Checker;
use crate::dial::Screw;
use crate::drawer::{DrawerBoxRequest, DrawerGroove, DrawerPlan};
use crate::given::Given;
use crate::groove::groove_setup;
use crate::joint::box_joint::{BoxJointRequest, Make, box_joint};
use crate::joint::dovetail::{DovetailPlan, DovetailRequest, dovetail};
use crate::units::Mm;

/// Wood in front of the tails, and behind those at the back.
pub(super) fn laps(request: &DrawerBoxRequest) -> [f64; 2] {
    let joint = value(&request.joint);
    let lap = number(&joint.lap);
    let back = match &joint.back_lap {
        Given::Missing => lap,
        back => number(back),
    };
    [lap, back]
}

/// A groove that is said to be hidden is one that the joint itself finds behind a single finger.
pub(super) fn groove_is_as_said(
    request: &DrawerBoxRequest,
    drawer: &DrawerPlan,
) -> Result<(), TestCaseError> {
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

/// The request that is handed on can be planned as it stands, and what comes of it goes together.
pub(super) fn joint_can_be_cut(
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
