//! A dovetail to be marked out, at full size, on as many sheets of paper as it takes.

use super::joint::{closed_line, tail_shapes};
use super::plane::{Place, Window};
use crate::drawing::item::Drawing;
use crate::drawing::sled::Paper;
use crate::drawing::template::{Strip, sheets};
use crate::joint::dovetail::{DovetailPlan, Tail};
use crate::message;
use crate::units::Mm;

/// The layout at 1:1 for a knife and a chisel: the pin board's end with its sockets, hatched, behind the lap,
/// and the tail board's face with its flanks, end and baseline. The boards' width runs down the paper from
/// the reference edge, in tiles that overlap by 10 mm.
///
/// Each drawing is exactly as large as the printable part of the paper; a bar of 100 mm on each says whether
/// it was printed so. Both boards share a tile where they fit beside each other; else the pin board's tiles
/// come first. None where a board is thicker than the paper takes, about 105 mm.
#[must_use]
pub fn marking_template(plan: &DovetailPlan, paper: Paper) -> Vec<Drawing> {
    let has_lap = plan.lap.is_above(Mm::ZERO);
    let words = [
        Some(message!["B: the pin board's end,"]),
        Some(message!["outer face to the left"]),
        has_lap.then(|| message!["lap ", plan.lap]),
        Some(message!["A: the tail board's face,"]),
        Some(message!["its end to the left"]),
        Some(message!["baseline ", plan.depth_a]),
    ];
    let words: Vec<_> = words.into_iter().flatten().collect();
    let strips = [pin_board(plan), tail_board(plan)];
    sheets(&strips, plan.width, &words, paper)
}

fn pin_board(plan: &DovetailPlan) -> Strip {
    let (outer, inner) = (plan.bench.proud, plan.bench.proud + plan.bench.through);
    let (from, to) = ((outer - plan.lap).mm(), inner.mm());
    let whole = board(plan, from, to);
    let sockets = tail_shapes(plan);
    let lines = sockets.iter().map(|socket| closed_line(socket));
    Strip {
        letter: "B",
        from,
        to,
        lines: lines.chain([closed_line(&whole)]).collect(),
        waste: sockets,
    }
}

fn tail_board(plan: &DovetailPlan) -> Strip {
    let width = plan.width.mm();
    let baseline = plan.depth_a.mm();
    let to = baseline + TAIL_BODY;
    // Behind a proud end the flanks go on as straight.
    let on = plan.bench.proud.mm() * plan.slope;
    let flank = |tip: Mm, base: Mm, out: f64| vec![(tip.mm() + out, 0.0), (base.mm(), baseline)];
    let flanks = plan.tails.iter().flat_map(|tail: &Tail| {
        [
            flank(tail.from_tip, tail.from_base, -on),
            flank(tail.to_tip, tail.to_base, on),
        ]
    });
    let baseline = vec![(0.0, baseline), (width, baseline)];
    Strip {
        letter: "A",
        from: 0.0,
        to,
        lines: flanks
            .chain([baseline, closed_line(&board(plan, 0.0, to))])
            .collect(),
        waste: Vec::new(),
    }
}

/// What is shown of the tail board past its baseline, mm.
const TAIL_BODY: f64 = 10.0;

fn board(plan: &DovetailPlan, from: f64, to: f64) -> Vec<Place> {
    let board = Window {
        left: 0.0,
        right: plan.width.mm(),
        shallow: from,
        deep: to,
    };
    board.corners().to_vec()
}
