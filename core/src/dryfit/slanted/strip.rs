//! What one pass takes: a strip of the plane.

use super::{Bench, Point, Teeth};
use crate::math::tan;
use crate::stop::{Board, Set, Stop};

/// How the strips of one set lie.
#[derive(Clone, Copy, Debug)]
pub(super) struct Strips {
    board: Board,
    /// What a strip moves across the width for each millimetre of depth.
    pub(super) drift: f64,
    /// Width of a strip, across the board's width.
    pub(super) width: f64,
    pub(super) kerf: f64,
    /// How far a strip runs in the plane.
    depth: f64,
    /// How high the cutter stands.
    pub(super) height: f64,
    pub(super) teeth: Teeth,
    /// The board's width, where it is turned face for face.
    turned_over: Option<f64>,
}

/// The wood that each pass of a set takes: convex outlines, one for each kind of tooth.
///
/// In the tail board's face `(x, z)` for board A, in the pin board's plan `(x, u)` for board B; always
/// measured from the reference edge, and not trimmed to the board's edges.
#[must_use]
pub fn passes(set: &Set, bench: &Bench) -> Vec<Vec<Point>> {
    let strips = Strips::new(set, bench);
    let outlines = set.stops.iter().flat_map(|stop| strips.outlines(stop));
    outlines.collect()
}

impl Strips {
    pub(super) fn new(set: &Set, bench: &Bench) -> Self {
        let (degrees, found) = match set.board {
            Board::A => (set.tilt_degrees, bench.measured.lean),
            Board::B => (set.yaw_degrees, bench.measured.turn),
        };
        let slope = match (degrees, found) {
            (0.0, _) => 0.0,
            (degrees, Some(found)) => found * degrees.signum(),
            (degrees, None) => tan(degrees.to_radians()),
        };
        let kerf = set.kerf.mm();
        let leans = set.board == Board::A && degrees != 0.0;
        Self {
            board: set.board,
            drift: if set.flipped { slope } else { -slope },
            width: kerf * (1.0 + slope * slope).sqrt(),
            kerf,
            depth: match set.board {
                Board::A => set.height.mm(),
                Board::B => bench.thickness_b.mm(),
            },
            height: set.height.mm(),
            teeth: if leans {
                bench.teeth
            } else {
                bench.upright_teeth
            },
            turned_over: set.flipped.then_some(bench.width.mm()),
        }
    }

    /// Whether its passes run along the left (−1) or the right (+1) side of a socket: sockets of the tail
    /// board widen with depth, those of the pin board narrow.
    pub(super) fn run_along(&self, side: f64) -> bool {
        let widens = match self.board {
            Board::A => 1.0,
            Board::B => -1.0,
        };
        self.drift * side * widens > 0.0
    }

    /// The near side of a pass at the board's end or outer face, from the reference edge.
    pub(super) fn near(&self, stop: &Stop) -> f64 {
        match self.turned_over {
            Some(width) => width - stop.at.mm() - self.width,
            None => stop.at.mm(),
        }
    }

    /// The wood that one pass takes.
    pub(super) fn outlines(&self, stop: &Stop) -> Vec<Vec<Point>> {
        let near = self.near(stop);
        match self.board {
            Board::B => vec![self.outline(near, (self.depth, self.depth))],
            Board::A => {
                let floors = self.floors();
                floors
                    .into_iter()
                    .map(|floor| self.outline(near, floor))
                    .filter(|outline| outline.len() > 2)
                    .collect()
            }
        }
    }

    /// Depth of each kind of tooth at the strip's near and far side; the deepest corner is at the depth
    /// the cutter was set to.
    fn floors(&self) -> Vec<Point> {
        let slope = self.drift.abs();
        let cos = 1.0 / (1.0 + slope * slope).sqrt();
        // The side that the blade leans away from is the deeper one.
        let ahead = self.kerf * slope * cos;
        let corners = self.teeth.corners(self.kerf);
        let floor = |(near, far): &Point| (near * cos, far * cos + ahead);
        let floors: Vec<Point> = corners.iter().map(floor).collect();
        let deepest = floors
            .iter()
            .map(|(near, far)| near.max(*far))
            .fold(f64::NEG_INFINITY, f64::max);
        let set_to = |depth: f64| depth - deepest + self.depth;
        floors
            .into_iter()
            .map(|(near, far)| match self.turned_over {
                Some(_) => (set_to(far), set_to(near)),
                None => (set_to(near), set_to(far)),
            })
            .collect()
    }

    /// A strip from the board's end to a floor that runs from its near to its far side.
    fn outline(&self, near: f64, floor: Point) -> Vec<Point> {
        let at = |side: f64, depth: f64| (side + self.drift * depth, depth);
        let far = near + self.width;
        let whole = [
            at(near, 0.0),
            at(far, 0.0),
            at(far, floor.1),
            at(near, floor.0),
        ];
        clipped(&whole, |(_, depth)| depth)
    }
}

/// The part of a convex outline where `inside` is not negative; `inside` must be linear.
pub(crate) fn clipped(outline: &[Point], inside: impl Fn(Point) -> f64) -> Vec<Point> {
    let next = outline.iter().cycle().skip(1);
    let mut left = Vec::with_capacity(outline.len() + 1);
    for (from, to) in outline.iter().zip(next) {
        let (a, b) = (inside(*from), inside(*to));
        if a >= 0.0 {
            left.push(*from);
        }
        if (a < 0.0 && b > 0.0) || (a > 0.0 && b < 0.0) {
            let share = a / (a - b);
            left.push((
                from.0 + (to.0 - from.0) * share,
                from.1 + (to.1 - from.1) * share,
            ));
        }
    }
    left
}
