//! Sockets as their stops open them.

use super::strip::Strips;
use super::wall::{Line, Wall};
use super::{Bench, Point};
use crate::order::in_order;
use crate::stop::{Board, Set};

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

    /// Its outermost side on the left or on the right.
    fn line(&self, side: fn(f64, f64) -> f64, outermost: fn(f64, f64) -> f64) -> Option<Line> {
        let width = self.strips.width;
        let sides = self.near.iter().map(|near| side(*near, near + width));
        sides.reduce(outermost).map(|start| Line {
            start,
            drift: self.strips.drift,
        })
    }
}

impl Socket {
    fn new(sets: &[&Set], space: usize, depth: f64, bench: &Bench) -> Self {
        let cuts: Vec<_> = sets.iter().map(|set| Cut::new(set, space, bench)).collect();
        let is_cut = |side: f64| {
            let along = |cut: &Cut| cut.strips.run_along(side) && !cut.near.is_empty();
            cuts.iter().any(along)
        };
        let lefts = || {
            let lines = cuts.iter().map(|cut| cut.line(|near, _| near, f64::min));
            Wall::left(lines.flatten().collect())
        };
        let rights = || {
            let lines = cuts.iter().map(|cut| cut.line(|_, far| far, f64::max));
            Wall::right(lines.flatten().collect())
        };
        Self {
            space,
            left: is_cut(-1.0).then(lefts).flatten(),
            right: is_cut(1.0).then(rights).flatten(),
            cuts,
            depth,
            width: bench.width.mm(),
        }
    }

    pub(super) fn left_at(&self, depth: f64) -> f64 {
        self.left.as_ref().map_or(0.0, |wall| wall.at(depth))
    }

    pub(super) fn right_at(&self, depth: f64) -> f64 {
        self.right
            .as_ref()
            .map_or(self.width, |wall| wall.at(depth))
    }

    pub(super) fn middle(&self) -> f64 {
        (self.left_at(0.0) + self.right_at(0.0)) / 2.0
    }

    /// All of it, between straight lines that join the ends of its walls.
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

    /// What of its outline is no part of it, because a wall bends.
    pub(super) fn bulges(&self) -> impl Iterator<Item = Vec<Point>> {
        let walls = [&self.left, &self.right].into_iter().flatten();
        walls.filter_map(|wall| wall.bulge(self.depth))
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
