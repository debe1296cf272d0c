//! What holds for every drawer.

use anyhow::{Context, ensure};
use notchwright_core::drawer::{
    DrawerBoxPlan, DrawerPlace, DrawerPlan, GrooveRun, GrooveStop, Nudged,
};
use notchwright_core::given;
use notchwright_core::groove::groove_setup;
use notchwright_core::joint::{box_joint, dovetail};
use notchwright_core::plain::Plain;
use notchwright_core::stop::Board;
use notchwright_core::units::Mm;
use serde::Serialize;

use super::plans::{self, NOISE, is_near};
use super::replies::{find, number, text};
use super::{Held, joints};

fn or_none(request: &Plain, path: &str) -> f64 {
    number(request, path).unwrap_or(0.0)
}

/// Drawers fill what was asked for, their boards make their outside, and what is handed on can be planned.
pub(super) fn drawer_box(request: &Plain, plan: &DrawerBoxPlan) -> Held {
    let count = number(request, "count").unwrap_or(1.0);
    let made: u32 = plan.drawers.iter().map(|drawer| drawer.count).sum();
    ensure!(f64::from(made) == count, "{made} drawers");
    opening(request, plan)?;
    for drawer in &plan.drawers {
        boards(request, drawer)?;
        height(request, plan, drawer)?;
        groove(request, drawer)?;
        bottom(request, drawer)?;
        joint(drawer)?;
    }
    fronts(request, plan)?;
    let boxes = plan
        .parts
        .iter()
        .filter(|row| row.stock != "applied fronts");
    let boards: u32 = boxes.map(|row| row.count).sum();
    ensure!(
        f64::from(boards) == 5.0 * count,
        "{boards} boards and bottoms"
    );
    let mut sides = plan
        .parts
        .iter()
        .flat_map(|row| [row.length, row.width, row.thickness]);
    ensure!(sides.all(|side| side > Mm::ZERO), "{:?}", plan.parts);
    Ok(())
}

/// From the top down to the floor: a gap, a drawer, what is kept free below it, a divider.
fn opening(request: &Plain, plan: &DrawerBoxPlan) -> Held {
    let is_opening = text(request, "size.kind").as_deref() == Some("opening");
    let count = number(request, "count").unwrap_or(1.0);
    let places = if is_opening { count } else { 0.0 };
    ensure!(
        plan.places.len() as f64 == places,
        "{} places",
        plan.places.len()
    );
    let [above, below] = ["size.above", "size.below"].map(|path| or_none(request, path));
    let mut ceiling = or_none(request, "size.height");
    for place in &plan.places {
        let drawer = plan.drawers.get(place.drawer).context("no such drawer")?;
        hangs(place, drawer, ceiling, above).with_context(|| format!("{place:?}"))?;
        ceiling = place.from_below.mm() - below - or_none(request, "between");
    }
    if let Some(last) = plan.places.last() {
        ensure!(is_near(last.from_below, below), "{last:?}");
        let snug = plan.snug_height.context("no snug height")?;
        ensure!(
            snug.mm() <= or_none(request, "size.height") + NOISE,
            "{snug}"
        );
    }
    Ok(())
}

/// A drawer reaches from its place to the gap above it, and leaves what is kept free there at the dampest.
fn hangs(place: &DrawerPlace, drawer: &DrawerPlan, ceiling: f64, above: f64) -> Held {
    let room = Mm::new(ceiling).context("a ceiling")? - place.from_below;
    let gap = place.gap_above;
    ensure!(is_near(gap.now + drawer.height, room.mm()), "now");
    ensure!(
        gap.now.mm() > above - NOISE && gap.wettest.mm() > above - NOISE,
        "no room above"
    );
    if let Some(movement) = drawer.movement {
        ensure!(
            is_near(gap.wettest + movement.wettest, room.mm()),
            "at the dampest"
        );
        ensure!(
            is_near(gap.driest + movement.driest, room.mm()),
            "at the driest"
        );
        ensure!(movement.driest <= movement.wettest, "{movement:?}");
    }
    Ok(())
}

/// Sides and fronts, less what stands proud and what goes into the lap, are the outside.
fn boards(request: &Plain, drawer: &DrawerPlan) -> Held {
    let proud = or_none(request, "joint.proud") * 2.0;
    let laps = laps(request).iter().sum::<f64>();
    let is_opening = text(request, "size.kind").as_deref() == Some("opening");
    let inset = or_none(request, "applied.lap") < -1e-9 && is_opening;
    let inset = if inset {
        or_none(request, "applied.thickness")
    } else {
        0.0
    };
    let width = or_none(request, "size.width") - 2.0 * or_none(request, "size.sideClearance");
    let depth = or_none(request, "size.depth") - or_none(request, "size.behind") - inset;
    ensure!(is_near(drawer.width, width), "{width} wide");
    ensure!(is_near(drawer.depth, depth), "{depth} deep");
    let [side, front, back] = drawer.boards.as_slice() else {
        anyhow::bail!("{} kinds of boards", drawer.boards.len());
    };
    ensure!(is_near(side.length, depth + proud - laps), "{side:?}");
    ensure!(is_near(front.length, width + proud), "{front:?}");
    ensure!(front.length == back.length, "{back:?}");
    let inside = drawer.inside;
    ensure!(
        is_near(inside.width + side.thickness * 2.0, width),
        "{inside:?}"
    );
    ensure!(
        is_near(inside.depth + front.thickness + back.thickness, depth),
        "{inside:?}"
    );
    ensure!(inside.height > Mm::ZERO, "{inside:?}");
    for (board, asked) in [(side, "side"), (front, "front"), (back, "back")] {
        let thickness = number(request, &format!("{asked}.thickness"));
        let thickness = thickness.unwrap_or_else(|| or_none(request, "front.thickness"));
        ensure!(is_near(board.thickness, thickness), "{board:?}");
        ensure!(board.width == drawer.height, "{board:?}");
    }
    ensure!(
        (side.count, front.count, back.count) == (2, 1, 1),
        "four boards"
    );
    Ok(())
}

/// Wood in front of the tails, and behind those at the back.
fn laps(request: &Plain) -> [f64; 2] {
    let lap = or_none(request, "joint.lap");
    [lap, number(request, "joint.backLap").unwrap_or(lap)]
}

/// A height that is not as it was asked for says so, and was lowered to whole fingers by less than two of them.
fn height(request: &Plain, plan: &DrawerBoxPlan, drawer: &DrawerPlan) -> Held {
    let nudge = drawer
        .nudges
        .iter()
        .find(|nudge| nudge.what == Nudged::Height);
    let Some(nudge) = nudge else {
        let asked = or_none(request, "size.height");
        // A height within a micrometre of whole fingers is one of them.
        let as_asked = (drawer.height.mm() - asked).abs() <= 1e-3 + NOISE;
        ensure!(!plan.places.is_empty() || as_asked, "{asked} high");
        return Ok(());
    };
    let finger = drawer.joint.finger_width.context("no fingers")?;
    ensure!(
        nudge.to < nudge.from && nudge.to == drawer.height,
        "{nudge:?}"
    );
    let whole = finger * f64::from(drawer.joint.count);
    ensure!(
        is_near(whole, drawer.height.mm()),
        "{whole} in whole fingers"
    );
    ensure!(
        nudge.from < drawer.height + finger * 2.0,
        "two fingers more would fit"
    );
    Ok(())
}

/// The groove lies within the boards, as it was asked for or with a word about it, and each run can be routed.
fn groove(request: &Plain, drawer: &DrawerPlan) -> Held {
    let groove = &drawer.groove;
    ensure!(groove.from_edge >= Mm::ZERO, "{groove:?}");
    ensure!(
        (groove.from_edge + groove.width).mm() <= drawer.height.mm() + NOISE,
        "{groove:?}"
    );
    ensure!(
        is_near(groove.depth, or_none(request, "bottom.groove.depth")),
        "{groove:?}"
    );
    let asked = or_none(request, "bottom.groove.fromEdge");
    let nudge = drawer
        .nudges
        .iter()
        .find(|nudge| nudge.what == Nudged::Groove);
    match nudge {
        Some(nudge) => ensure!(
            is_near(nudge.from, asked) && nudge.to == groove.from_edge,
            "{nudge:?}"
        ),
        None => ensure!(
            (groove.from_edge.mm() - asked).abs() <= 1e-3 + NOISE,
            "{groove:?}"
        ),
    }
    for run in &groove.runs {
        routed(request, drawer, run).with_context(|| format!("{run:?}"))?;
    }
    Ok(())
}

fn routed(request: &Plain, drawer: &DrawerPlan, run: &GrooveRun) -> Held {
    let groove = &drawer.groove;
    if let Some(stop) = run.stopped {
        stops(request, drawer, run.board, stop)?;
    }
    for setup in run.setup.iter().chain(&run.back_first) {
        let plan = planned(setup, groove_setup, plans::groove_setup)?;
        ensure!(plan.passes == run.passes, "other passes");
        let first = plan.passes.first().context("no pass")?;
        ensure!(
            is_near(first.fence_to_bit, groove.from_edge.mm()),
            "{first:?}"
        );
    }
    Ok(())
}

/// A stopped groove ends at the floors of the grooves that it meets, or with its board where that ends before.
fn stops(request: &Plain, drawer: &DrawerPlan, board: Board, stop: GrooveStop) -> Held {
    let [side, front, back] = drawer.boards.as_slice() else {
        anyhow::bail!("{} kinds of boards", drawer.boards.len());
    };
    let proud = or_none(request, "joint.proud");
    let (own, outside, mates, laps) = match board {
        Board::A => (side, drawer.depth, [front, back], laps(request)),
        Board::B => (front, drawer.width, [side, side], [0.0; 2]),
    };
    let floors = mates.map(|mate| (mate.thickness - drawer.groove.depth).mm());
    let begins = laps[0] - proud;
    let (from, to) = (begins + stop.from.mm(), begins + stop.to.mm());
    let ends = begins + own.length.mm();
    let is = |found: f64, expected: f64| (found - expected).abs() <= NOISE;
    ensure!(is(from, floors[0].max(begins)), "{stop:?}");
    ensure!(is(to, (outside.mm() - floors[1]).min(ends)), "{stop:?}");
    ensure!(stop.from > Mm::ZERO || stop.to < own.length, "{stop:?}");
    Ok(())
}

/// The bottom lies in its groove at any moisture, and has its room there.
fn bottom(request: &Plain, drawer: &DrawerPlan) -> Held {
    let bottom = &drawer.bottom;
    let clearance = number(request, "bottom.clearance").unwrap_or(0.5);
    let room = (drawer.groove.depth.mm() - clearance) * 2.0;
    ensure!(
        is_near(bottom.length, drawer.inside.width.mm() + room),
        "{bottom:?}"
    );
    let most = drawer.inside.depth.mm() + room + NOISE;
    ensure!(bottom.width.mm() <= most, "{bottom:?}");
    ensure!(
        is_near(bottom.held * 2.0 + drawer.inside.depth, bottom.width.mm()),
        "{bottom:?}"
    );
    ensure!(bottom.held > Mm::ZERO, "{bottom:?}");
    ensure!(
        drawer.groove.width >= bottom.thickness,
        "the groove is too narrow"
    );
    let is_solid = matches!(find(request, "bottom.wood"), Some(Plain::Object(_)));
    ensure!(bottom.movement.is_some() == is_solid, "{bottom:?}");
    if let Some(movement) = bottom.movement {
        ensure!(
            movement.wettest.mm() <= most && movement.driest <= movement.wettest,
            "{movement:?}"
        );
        ensure!(movement.held_least > Mm::ZERO, "{movement:?}");
        ensure!(movement.held_aside < movement.held_least, "{movement:?}");
    }
    Ok(())
}

/// The request that is handed on is planned as it stands, to the drawer's height and its count.
fn joint(drawer: &DrawerPlan) -> Held {
    let joint = &drawer.joint;
    let front = (&joint.box_joint, &joint.dovetail);
    let back = joint
        .back
        .as_ref()
        .map(|back| (&back.box_joint, &back.dovetail));
    for corner in [front].into_iter().chain(back) {
        let (count, width) = match corner {
            (Some(request), None) => {
                let plan = planned(request, box_joint::box_joint, joints::box_joint)?;
                (plan.count, plan.width)
            }
            (None, Some(request)) => {
                let plan = planned(request, dovetail::dovetail, joints::dovetail)?;
                (plan.count, plan.width)
            }
            _ => anyhow::bail!("one joint"),
        };
        ensure!(count == joint.count as usize, "{count} in the joint");
        ensure!(
            is_near(width, drawer.height.mm()),
            "the joint is {width} wide"
        );
    }
    Ok(())
}

/// What a request that is handed on comes to.
fn planned<T: Serialize + given::Shape, P>(
    request: &T,
    tool: fn(&T) -> notchwright_core::problem::Checked<P>,
    rules: fn(&Plain, &P) -> Held,
) -> anyhow::Result<P> {
    let plain: Plain = serde_json::from_value(serde_json::to_value(request)?)?;
    let plan = given::answer(&plain, tool)
        .map_err(|problems| anyhow::anyhow!("handed on and refused: {problems:?}"))?
        .plan;
    rules(&plain, &plan)?;
    Ok(plan)
}

/// Applied fronts, one for each drawer, that do not overlap.
fn fronts(request: &Plain, plan: &DrawerBoxPlan) -> Held {
    let count = match find(request, "applied") {
        Some(Plain::Object(_)) => number(request, "count").unwrap_or(1.0),
        _ => 0.0,
    };
    ensure!(
        plan.applied.len() as f64 == count,
        "{} fronts",
        plan.applied.len()
    );
    let mut below = f64::INFINITY;
    for (front, place) in plan.applied.iter().zip(&plan.places) {
        ensure!(
            front.width > Mm::ZERO && front.height > Mm::ZERO,
            "{front:?}"
        );
        let lower = (place.from_below - front.below).mm();
        ensure!(
            lower + front.height.mm() <= below + NOISE,
            "{front:?} meets the one above"
        );
        below = lower;
    }
    Ok(())
}
