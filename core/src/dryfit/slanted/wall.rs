//! One side of a socket, as the passes of every set leave it.

use super::Point;
use crate::order::in_order;

/// A straight side that the passes of one set would cut.
#[derive(Clone, Copy, Debug)]
pub(super) struct Line {
    pub(super) start: f64,
    pub(super) drift: f64,
}

impl Line {
    fn at(self, depth: f64) -> f64 {
        self.start + self.drift * depth
    }
}

/// The outermost of all sets' sides. It is straight as planned; where blade or wedge are not what they
/// were set to, passes of another set may reach past it and bend it.
#[derive(Clone, Debug)]
pub(super) struct Wall {
    lines: Vec<Line>,
    outermost: fn(f64, f64) -> f64,
}

impl Wall {
    /// The left wall of a socket from the left sides of its passes; none without passes.
    pub(super) fn left(lines: Vec<Line>) -> Option<Self> {
        Self::new(lines, f64::min)
    }

    /// The right wall of a socket from the right sides of its passes.
    pub(super) fn right(lines: Vec<Line>) -> Option<Self> {
        Self::new(lines, f64::max)
    }

    fn new(lines: Vec<Line>, outermost: fn(f64, f64) -> f64) -> Option<Self> {
        (!lines.is_empty()).then_some(Self { lines, outermost })
    }

    pub(super) fn at(&self, depth: f64) -> f64 {
        let places = self.lines.iter().map(|line| line.at(depth));
        places.reduce(self.outermost).unwrap_or_default()
    }

    /// Depths at which it bends, in ascending order, between two others.
    pub(super) fn bends(&self, from: f64, to: f64) -> Vec<f64> {
        let pairs = self.lines.iter().enumerate().flat_map(|(index, one)| {
            let others = self.lines.iter().skip(index + 1);
            others.map(move |other| (one, other))
        });
        let meet = |(one, other): (&Line, &Line)| {
            let depth = (other.start - one.start) / (one.drift - other.drift);
            (depth > from && depth < to).then(|| (depth, one.at(depth)))
        };
        let meetings = pairs.filter_map(meet);
        let on_wall = |(depth, place): &(f64, f64)| (self.at(*depth) - place).abs() <= NOISE;
        let bends = meetings.filter(on_wall).map(|(depth, _)| depth);
        in_order(bends, f64::total_cmp)
    }

    /// What stands between the wall and the straight line that joins its two ends: convex, since the
    /// outermost of straight sides bends only into the socket.
    pub(super) fn bulge(&self, depth: f64) -> Option<Vec<Point>> {
        let bends = self.bends(0.0, depth);
        if bends.is_empty() {
            return None;
        }
        let depths = [0.0].into_iter().chain(bends).chain([depth]);
        Some(depths.map(|depth| (self.at(depth), depth)).collect())
    }
}

/// Nearer than this is the same place, mm.
const NOISE: f64 = 1e-9;
