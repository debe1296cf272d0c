//! Where the bottom's groove runs so that nothing of it shows, and how it is made in each board.

use super::checked::{End, Job};
use super::plan::{DrawerGroove, GrooveRun, GrooveStop};
use crate::given::Given;
use crate::groove::{GrooveSetupRequest, StoppedRequest, groove_setup};
use crate::joint::box_joint::{GroovePlan, Make};
use crate::joint::dovetail::DovetailPlan;
use crate::stop::Board;
use crate::units::Mm;

/// A place for the groove.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Seat {
    pub(super) from_edge: Mm,
    /// The board that it may run through from end to end there; none where it would show in both.
    pub(super) through: Option<Board>,
}

impl Seat {
    /// A place where the groove shows unless it is stopped in every board.
    pub(super) fn shown(from_edge: Mm) -> Self {
        Self {
            from_edge,
            through: None,
        }
    }

    fn hidden(from_edge: Mm, through: Board) -> Self {
        Self {
            from_edge,
            through: Some(through),
        }
    }
}

/// Less wood than this beneath the groove splits off: as much as the groove is deep (common practice, no
/// source), or what was asked for.
fn least_below(job: &Job) -> Mm {
    let groove = &job.bottom.groove;
    groove.from_edge.min(groove.depth)
}

/// The nearest place inside one finger of a box joint, at most so far from the edge.
pub(super) fn behind_finger(job: &Job, asked: Mm, most: Mm, groove: &GroovePlan) -> Seat {
    let here = groove.ends.iter().find(|end| end.make == Make::Through);
    if let Some(end) = here {
        return Seat::hidden(asked, end.board);
    }
    let places = groove
        .better
        .iter()
        .map(|place| Seat::hidden(place.from_edge, place.through));
    nearest(job, asked, most, places)
}

/// The nearest place behind one tail at its baseline, or behind one pin at its outer face, where both are
/// narrow, at both ends of a side and at most so far from the edge: the board that has the socket there is grooved
/// from end to end.
pub(super) fn behind_tail(job: &Job, most: Mm, front: &DovetailPlan, back: &DovetailPlan) -> Seat {
    let width = job.groove_width();
    let asked = job.bottom.groove.from_edge;
    let both = covers(front).into_iter().zip(covers(back));
    let places = both.filter_map(|(front, back)| {
        let from = front.from.max(back.from);
        let last = front.to.min(back.to) - width;
        (!last.is_below(from)).then(|| Seat::hidden(asked.max(from).min(last), front.through))
    });
    nearest(job, asked, most, places)
}

/// What covers a groove at a corner, where it is narrowest, and the board that is then grooved from end to end.
struct Cover {
    from: Mm,
    to: Mm,
    through: Board,
}

/// Every tail and the pin before it, and the pin after the last.
fn covers(plan: &DovetailPlan) -> Vec<Cover> {
    let mut covers = Vec::with_capacity(plan.tails.len() * 2 + 1);
    let pin = |from, to| Cover {
        from,
        to,
        through: Board::A,
    };
    let mut from = Mm::ZERO;
    for tail in &plan.tails {
        covers.push(pin(from, tail.from_tip));
        covers.push(Cover {
            from: tail.from_base,
            to: tail.to_base,
            through: Board::B,
        });
        from = tail.to_tip;
    }
    covers.push(pin(from, plan.width));
    covers
}

fn nearest(job: &Job, asked: Mm, most: Mm, places: impl Iterator<Item = Seat>) -> Seat {
    places
        .filter(|place| !place.from_edge.is_below(least_below(job).min(asked)))
        .filter(|place| !place.from_edge.is_above(most))
        .min_by_key(|place| (place.from_edge - asked).abs())
        .unwrap_or(Seat::shown(asked))
}

/// The groove in every board.
pub(super) fn plan(job: &Job, seat: Seat, lengths: [Mm; 2]) -> DrawerGroove {
    let groove = &job.bottom.groove;
    let (from_edge, width) = (seat.from_edge, job.groove_width());
    let setup = |stopped: Option<GrooveStop>| {
        groove.bit.map(|bit| GrooveSetupRequest {
            from_edge: (from_edge + width / 2.0).mm().into(),
            width: width.mm().into(),
            bit: bit.mm().into(),
            stopped: stopped.map_or(Given::Missing, |stop| {
                StoppedRequest {
                    from: stop.from.mm().into(),
                    to: stop.to.mm().into(),
                }
                .into()
            }),
            depth: groove.depth.mm().into(),
            ..GrooveSetupRequest::default()
        })
    };
    let run = |board: Board, length: Mm, mates: [End; 2]| {
        // The mate's groove floor: behind it nothing has to go in.
        let begins = |mate: End| mate.thickness - groove.depth + job.corner.proud - mate.lap;
        let [first, last] = mates.map(|mate| begins(mate).max(Mm::ZERO));
        let is_open = !first.is_above(Mm::ZERO) && !last.is_above(Mm::ZERO);
        let is_through = seat.through == Some(board) || is_open;
        let stopped = (!is_through).then(|| GrooveStop {
            from: first,
            to: length - last,
        });
        // Of two sides that mirror each other one is fed front end first, the other back end first.
        let turned = stopped
            .filter(|_| !first.is_same(last))
            .map(|_| GrooveStop {
                from: last,
                to: length - first,
            });
        let (setup, back_first) = (
            setup(stopped),
            turned.and_then(|turned| setup(Some(turned))),
        );
        let passes = setup
            .as_ref()
            .and_then(|setup| groove_setup(setup).ok())
            .map_or_else(Vec::new, |planned| planned.plan.passes);
        GrooveRun {
            board,
            make: if is_through {
                Make::Through
            } else {
                Make::Stopped
            },
            stopped,
            passes,
            setup,
            back_first,
        }
    };
    let [side, front] = lengths;
    let of_side = End {
        thickness: job.side,
        lap: Mm::ZERO,
    };
    DrawerGroove {
        from_edge,
        width,
        depth: groove.depth,
        hidden: seat.through.is_some(),
        runs: vec![
            run(Board::A, side, job.ends()),
            run(Board::B, front, [of_side; 2]),
        ],
    }
}
