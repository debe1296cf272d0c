//! Sockets as their stops open them.

use super::strip::Strips;
use super::{Bench, Point};
use crate::order::in_order;
use crate::stop::{Board, Set};

/// One side of a socket, straight through the board.
#[derive(Clone, Copy, Debug)]
pub(super) struct Wall {
    start: f64,
    drift: f64,
}

impl Wall {
    pub(super) fn at(self, depth: f64) -> f64 {
        self.start + self.drift * depth
    }
}

/// A socket, from the board's end or outer face inwards; no wall where it is open at the board's edge.
pub(super) struct Socket {
    pub(super) space: usize,
    pub(super) left: Option<Wall>,
    pub(super) right: Option<Wall>,
    pub(super) cuts: Vec<Cut>,
    pub(super) depth: f64,
    width: f64,
}

/// What one set cuts in one socket.
pub(super) struct Cut {
    pub(super) strips: Strips,
    /// Near sides of its passes at the board's end or outer face, from the reference edge.
    pub(super) near: Vec<f64>,
    pub(super) outlines: Vec<Vec<Point>>,
}

impl Cut {
    fn new(set: &Set, space: usize, bench: &Bench) -> Self {
        let strips = Strips::new(set, bench);
        let own = || set.stops.iter().filter(|stop| stop.space == space);
        Self {
            strips,
            near: own().map(|stop| strips.near(stop)).collect(),
            outlines: own().flat_map(|stop| strips.outlines(stop)).collect(),
        }
    }

    /// Both sides of its passes at a depth.
    fn sides_at(&self, depth: f64) -> impl Iterator<Item = Point> {
        let drift = self.strips.drift * depth;
        let sides = move |near: &f64| (near + drift, near + drift + self.strips.width);
        self.near.iter().map(sides)
    }
}

impl Socket {
    fn new(sets: &[&Set], space: usize, depth: f64, bench: &Bench) -> Self {
        let cuts: Vec<_> = sets.iter().map(|set| Cut::new(set, space, bench)).collect();
        let is_cut = |side: f64| {
            let along = |cut: &Cut| cut.strips.run_along(side) && !cut.near.is_empty();
            cuts.iter().any(along)
        };
        let extreme = |depth: f64, side: fn(Point) -> f64, pick: fn(f64, f64) -> f64| {
            let sides = cuts.iter().flat_map(|cut| cut.sides_at(depth));
            sides.map(side).reduce(pick)
        };
        let wall = |side: fn(Point) -> f64, pick: fn(f64, f64) -> f64| {
            let (start, end) = (extreme(0.0, side, pick)?, extreme(depth, side, pick)?);
            Some(Wall {
                start,
                drift: (end - start) / depth,
            })
        };
        Self {
            space,
            left: is_cut(-1.0)
                .then(|| wall(|side| side.0, f64::min))
                .flatten(),
            right: is_cut(1.0).then(|| wall(|side| side.1, f64::max)).flatten(),
            cuts,
            depth,
            width: bench.width.mm(),
        }
    }

    pub(super) fn left_at(&self, depth: f64) -> f64 {
        self.left.map_or(0.0, |wall| wall.at(depth))
    }

    pub(super) fn right_at(&self, depth: f64) -> f64 {
        self.right.map_or(self.width, |wall| wall.at(depth))
    }

    pub(super) fn middle(&self) -> f64 {
        (self.left_at(0.0) + self.right_at(0.0)) / 2.0
    }

    /// All of it, between its walls.
    pub(super) fn outline(&self) -> [Point; 4] {
        let depth = self.depth;
        [
            (self.left_at(0.0), 0.0),
            (self.right_at(0.0), 0.0),
            (self.right_at(depth), depth),
            (self.left_at(depth), depth),
        ]
    }

    /// What every pass in it takes.
    pub(super) fn outlines(&self) -> Vec<Vec<Point>> {
        let outlines = self.cuts.iter().flat_map(|cut| cut.outlines.iter());
        outlines.cloned().collect()
    }
}

/// The sockets of a board, from the reference edge.
pub(super) fn sockets(sets: &[Set], bench: &Bench, board: Board) -> Vec<Socket> {
    let sets: Vec<_> = sets.iter().filter(|set| set.board == board).collect();
    let depth = match board {
        Board::A => sets.iter().map(|set| set.height).max().unwrap_or_default(),
        Board::B => bench.thickness_b,
    };
    let mut spaces: Vec<usize> = Vec::new();
    for stop in sets.iter().flat_map(|set| &set.stops) {
        if spaces.last() != Some(&stop.space) && !spaces.contains(&stop.space) {
            spaces.push(stop.space);
        }
    }
    let spaces = in_order(spaces, usize::cmp).into_iter();
    spaces
        .map(|space| Socket::new(&sets, space, depth.mm(), bench))
        .collect()
}
