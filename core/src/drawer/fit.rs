//! From checked numbers to drawers: heights that the fingers divide, a groove that they hide, and the joint.

use super::checked::Job;
use super::corner::with_more;
use super::jointing::{corners, problem};
use super::plan::{
    DrawerBoard, DrawerBoxPlan, DrawerInside, DrawerMovement, DrawerPlace, DrawerPlan, GapAbove,
    Nudge, Nudged,
};
use super::{fronts, groove, parts};
use crate::message;
use crate::message::Message;
use crate::problem::{Code, Note, Problem};
use crate::stop::Board;
use crate::units::Mm;

/// A plan, and what its joints warn of.
pub(super) struct Fitted {
    pub(super) plan: DrawerBoxPlan,
    pub(super) warnings: Vec<Note>,
}

/// Fits every drawer; a drawer that cannot be made says why.
pub(super) fn fit(job: &Job) -> Result<Fitted, Vec<Problem>> {
    let heights = job.greatest_heights();
    let alike = job.is_alike();
    let kinds = if alike { 1 } else { heights.len() };
    let count = if alike { job.count } else { 1 };
    let (mut drawers, mut warnings) = (Vec::new(), Vec::new());
    let mut problems: Vec<Problem> = Vec::new();
    for greatest in heights.iter().take(kinds) {
        match drawer(job, *greatest / job.extremes().0, count, &mut warnings) {
            Ok(drawer) => drawers.push(drawer),
            Err(more) => {
                problems = with_more(problems, more);
            }
        }
    }
    if !problems.is_empty() {
        return Err(problems);
    }
    let places = places(job, &heights, &drawers);
    let applied = fronts::fronts(job, &drawers, &places);
    let parts = parts::rows(&drawers, &applied, job.bottom.wood.is_some());
    let plan = DrawerBoxPlan {
        snug_height: (!places.is_empty()).then(|| snug_height(job, &drawers)),
        drawers,
        places,
        applied,
        parts,
        job: job.clone(),
    };
    Ok(Fitted { plan, warnings })
}

/// Opening that leaves nothing over above the drawers as they are.
fn snug_height(job: &Job, drawers: &[DrawerPlan]) -> Mm {
    let greatest = job.extremes().0;
    let high = |drawer: &DrawerPlan| drawer.height * greatest * f64::from(drawer.count);
    drawers.iter().map(high).sum::<Mm>() + job.fixed()
}

/// Each drawer lies at the bottom of its share of the opening; what is left over is above it.
fn places(job: &Job, heights: &[Mm], drawers: &[DrawerPlan]) -> Vec<DrawerPlace> {
    let Some(clearances) = job.space.opening else {
        return Vec::new();
    };
    let (wettest, driest) = at_both(job);
    let last = drawers.len().saturating_sub(1);
    let mut ceiling = job.space.height;
    let mut places = Vec::new();
    for ((number, index), share) in (1..).zip(0..).zip(heights) {
        let index = last.min(index);
        let height = drawers.get(index).map_or(Mm::ZERO, |drawer| drawer.height);
        let room = clearances.above + *share;
        let from_below = ceiling - room;
        places.push(DrawerPlace {
            number,
            drawer: index,
            from_below,
            gap_above: GapAbove {
                now: room - height,
                wettest: room - height * wettest,
                driest: room - height * driest,
            },
        });
        ceiling = from_below - clearances.below - job.between;
    }
    places
}

/// Height at the dampest and at the driest, as shares of the one that boards are cut to.
fn at_both(job: &Job) -> (f64, f64) {
    match (job.climate, job.wood) {
        (Some(climate), Some(wood)) => {
            let growth = |to| wood.across.growth(wood.moisture, to);
            (growth(climate.wettest), growth(climate.driest))
        }
        _ => (1.0, 1.0),
    }
}

fn drawer(
    job: &Job,
    nominal: Mm,
    count: u32,
    warnings: &mut Vec<Note>,
) -> Result<DrawerPlan, Vec<Problem>> {
    let (width, depth) = (job.width(), job.depth());
    let (inside_width, inside_depth) = (width - job.side * 2.0, depth - job.front - job.back);
    let bottom = job.bottom.plan(inside_width, inside_depth, job.climate);
    if let Some(movement) = bottom.movement
        && !movement.held_least.is_above(Mm::ZERO)
    {
        return Err(vec![drops_out(job, inside_depth)]);
    }
    let corner = corners(job, nominal, warnings)?;
    let proud = job.corner.proud * 2.0;
    let [lap, back_lap] = job.corner.laps();
    let lengths = [depth + proud - lap - back_lap, width + proud];
    let groove = groove::plan(job, corner.seat, lengths);
    let asked = job.bottom.groove.from_edge;
    let lowered = (!corner.height.is_same(nominal)).then_some(corner.reason);
    let height = lowered.map(|reason| Nudge {
        what: Nudged::Height,
        from: nominal,
        to: corner.height,
        reason,
    });
    let moved = (!groove.from_edge.is_same(asked)).then(|| Nudge {
        what: Nudged::Groove,
        from: asked,
        to: groove.from_edge,
        reason: why_moved(groove.hidden),
    });
    let board = |name, board, count, thickness| DrawerBoard {
        name,
        board,
        count,
        length: if board == Board::A {
            lengths[0]
        } else {
            lengths[1]
        },
        width: corner.height,
        thickness,
    };
    Ok(DrawerPlan {
        count,
        width,
        height: corner.height,
        depth,
        inside: DrawerInside {
            width: inside_width,
            height: corner.height - groove.from_edge - groove.width,
            depth: inside_depth,
        },
        nudges: height.into_iter().chain(moved).collect(),
        boards: vec![
            board("side", Board::A, 2, job.side),
            board("front", Board::B, 1, job.front),
            board("back", Board::B, 1, job.back),
        ],
        bottom,
        groove,
        joint: corner.joint,
        movement: movement(job, corner.height),
    })
}

fn why_moved(hidden: bool) -> Message {
    if hidden {
        message![
            "Here the groove lies behind one finger at every corner, so that nothing of it shows."
        ]
    } else {
        message!["Farther from the edge it would leave the lowered board."]
    }
}

fn movement(job: &Job, height: Mm) -> Option<DrawerMovement> {
    let (climate, _) = job.climate.zip(job.wood)?;
    let (wettest, driest) = at_both(job);
    Some(DrawerMovement {
        driest_moisture: climate.driest.in_percent(),
        wettest_moisture: climate.wettest.in_percent(),
        driest: height * driest,
        wettest: height * wettest,
    })
}

fn drops_out(job: &Job, inside_depth: Mm) -> Problem {
    let needed = job.bottom.deep_enough(inside_depth, job.climate);
    let most = job.deepest_groove();
    let (words, limit) = if needed.is_above(most) {
        let words = message![
            "At the driest the bottom would shrink out of its groove, which would have to be ",
            needed,
            " deep: more than these boards allow. Take a sheet, a quarter-sawn wood that moves less, or thicker boards."
        ];
        (words, None)
    } else {
        let words = message![
            "At the driest the bottom would shrink out of its groove; at least ",
            needed,
            " deep would hold it."
        ];
        (words, Some(needed.mm()))
    };
    problem("bottom.groove.depth", Code::TooSmall, words, limit)
}
