//! A socket of a dovetail's board as polygons: opened from wall to wall, and what passes leave in it.

use notchwright_core::stop::{Board, Stop};

use super::super::region::Region;
use super::requests::Case;
use super::sweep::{Corner, Line, Sweep};

/// The passes that all sets make in one space of the layout.
pub(super) struct Socket<'a> {
    passes: Vec<(Sweep<'a>, &'a Stop)>,
    /// Whether there is wood on both sides: the first and the last socket of the tail board are open.
    has_left: bool,
    has_right: bool,
    width: f64,
    depth: f64,
}

/// Between which depths a socket is looked at, and how far that is moved when it is laid over its mate.
#[derive(Clone, Copy)]
pub(super) struct Place {
    pub(super) depths: (f64, f64),
    pub(super) moved: f64,
}

/// The sockets of a board, from the reference edge.
pub(super) fn sockets(case: &Case, board: Board) -> Vec<Socket<'_>> {
    let sets = || case.plan.sets.iter().filter(move |set| set.board == board);
    let mut spaces: Vec<usize> = sets()
        .flat_map(|set| set.stops.iter().map(|stop| stop.space))
        .collect();
    spaces.sort_unstable();
    spaces.dedup();
    let last = 2 * case.plan.count;
    let socket = |space: usize| Socket {
        passes: sets()
            .flat_map(|set| {
                let sweep = Sweep::new(set, case);
                set.stops.iter().map(move |stop| (sweep, stop))
            })
            .filter(|(_, stop)| stop.space == space)
            .collect(),
        has_left: space != 0,
        has_right: space != last,
        width: case.plan.width.mm(),
        depth: match board {
            Board::A => case.proud + case.through(),
            Board::B => case.pin_thickness,
        },
    };
    spaces.into_iter().map(socket).collect()
}

impl Socket<'_> {
    fn sides(&self) -> impl Iterator<Item = (Line, Line)> {
        let passes = self.passes.iter();
        passes.map(|(sweep, stop)| sweep.sides(stop))
    }

    /// Its opening at a depth.
    pub(super) fn opened_at(&self, depth: f64) -> (f64, f64) {
        let lefts = self.sides().map(|(left, _)| left.at(depth));
        let rights = self.sides().map(|(_, right)| right.at(depth));
        let left = lefts.fold(f64::INFINITY, f64::min);
        let right = rights.fold(f64::NEG_INFINITY, f64::max);
        (
            if self.has_left { left } else { 0.0 },
            if self.has_right { right } else { self.width },
        )
    }

    /// All that is right of any pass's left side and left of any pass's right side: from wall to wall,
    /// whatever is left standing between them, and down to the baseline.
    pub(super) fn opened(&self, place: Place) -> Region {
        let Place { depths, moved } = place;
        let beyond = self.width + depths.1;
        let laid = |line: Line, end: f64| {
            vec![
                (line.at(depths.0), depths.0 + moved),
                (end, depths.0 + moved),
                (end, depths.1 + moved),
                (line.at(depths.1), depths.1 + moved),
            ]
        };
        let across = (-beyond, self.width + beyond);
        let mut opened = Region::rectangle((0.0, self.width), (depths.0 + moved, depths.1 + moved));
        if self.has_left {
            opened = opened.and(&Region::union(
                self.sides().map(|(left, _)| laid(left, across.1)),
            ));
        }
        if self.has_right {
            opened = opened.and(&Region::union(
                self.sides().map(|(_, right)| laid(right, across.0)),
            ));
        }
        opened
    }

    /// What no pass reaches.
    pub(super) fn left(&self) -> Region {
        let all = Place {
            depths: (0.0, self.depth),
            moved: 0.0,
        };
        let taken = self.passes.iter();
        let taken = taken.flat_map(|(sweep, stop)| sweep.taken(stop));
        self.opened(all).minus(&Region::union(taken))
    }

    /// What teeth leave on its floor, at the outer face: `x` across the width and how far from the end.
    pub(super) fn ridges(&self) -> Region {
        let passes = || self.passes.iter();
        let whole = passes().map(|(sweep, stop)| {
            let (near, far) = sweep.sides(stop);
            Region::corners((near.at(0.0), far.at(0.0)), (0.0, sweep.set.height.mm()))
        });
        let teeth = passes().flat_map(|(sweep, stop)| {
            let teeth = sweep.tips.short_by(sweep.set.kerf.mm());
            teeth
                .into_iter()
                .map(|short_by| profile(sweep, stop, short_by))
        });
        Region::union(whole).minus(&Region::union(teeth))
    }
}

/// One kind of tooth at the outer face, stretched along it as the kerf is; the end is at 0.
fn profile(sweep: &Sweep<'_>, stop: &Stop, short_by: (f64, f64)) -> Vec<Corner> {
    let (near, far) = sweep.sides(stop);
    let (near, far) = (near.at(0.0), far.at(0.0));
    let deep = sweep.set.height.mm();
    let off = -short_by.0.max(short_by.1) - deep;
    vec![
        (near, off),
        (far, off),
        (far, deep - short_by.1),
        (near, deep - short_by.0),
    ]
}
