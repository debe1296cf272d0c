//! The way through the cutting: set-ups, ends of boards, passes.

use notchwright_core::order::in_order;
use notchwright_core::stop::{Board, Set, Stop};

use super::Pieces;
use crate::state::{Done, End, Order};

/// The way through the sets of one plan.
#[derive(Clone, Debug)]
pub struct Course<'a> {
    sets: &'a [Set],
    pieces: &'a Pieces,
    /// Both sets in one, where both boards come to each stop.
    both: Option<Vec<(usize, usize)>>,
}

/// What is on the carriage between two set-ups: one end, or where both boards come to each stop one of each.
#[derive(Clone, Debug, PartialEq)]
pub struct Load {
    /// What it is known by.
    pub end: End,
    /// The set-ups it is cut in, with the end of each.
    pub ends: Vec<(usize, End)>,
}

impl Load {
    /// Whether all of it has been cut.
    #[must_use]
    pub fn is_done(&self, done: &Done) -> bool {
        self.ends.iter().all(|(set, end)| done.has(*set, *end))
    }

    /// Notes whether all of it has been cut.
    pub fn mark(&self, done: &mut Done, is_done: bool) {
        for (set, end) in &self.ends {
            done.mark(*set, *end, is_done);
        }
    }
}

impl<'a> Course<'a> {
    /// Through `sets` in this order; `both` are their stops in one order, where they can be.
    #[must_use]
    pub fn new(sets: &'a [Set], pieces: &'a Pieces, order: Order) -> Self {
        let both = match order {
            Order::Boards => None,
            Order::Stops => merged(sets),
        };
        Self { sets, pieces, both }
    }

    /// Whether both boards can come to each stop.
    #[must_use]
    pub fn can_merge(sets: &[Set]) -> bool {
        merged(sets).is_some()
    }

    /// Whether both boards come to each stop.
    #[must_use]
    pub fn is_merged(&self) -> bool {
        self.both.is_some()
    }

    /// The sets.
    #[must_use]
    pub fn sets(&self) -> &'a [Set] {
        self.sets
    }

    /// How many set-ups there are.
    #[must_use]
    pub fn legs(&self) -> usize {
        if self.is_merged() { 1 } else { self.sets.len() }
    }

    /// How many ends of `board` there are.
    #[must_use]
    pub fn count(&self, board: Board) -> usize {
        self.pieces.count(board)
    }

    /// How many cuttings of an end in a set-up there are in all.
    #[must_use]
    pub fn cuttings(&self) -> usize {
        let ends = |set: &Set| self.pieces.count(set.board);
        self.sets.iter().map(ends).sum()
    }

    /// How many ends there are in all, each of them cut in every set-up of its board.
    #[must_use]
    pub fn ends(&self) -> usize {
        let is_cut = |board: &Board| self.sets.iter().any(|set| set.board == *board);
        let cut = [Board::A, Board::B].into_iter().filter(is_cut);
        cut.map(|board| self.pieces.count(board)).sum()
    }

    /// How many cuttings have been done.
    #[must_use]
    pub fn done(&self, done: &Done) -> usize {
        let sets = self.sets.iter().enumerate();
        let ends = sets.flat_map(|(set, of)| self.pieces.ends(of.board).map(move |end| (set, end)));
        ends.filter(|(set, end)| done.has(*set, *end)).count()
    }

    /// The set that is set up for; with both boards at each stop, the first.
    #[must_use]
    pub fn set(&self, leg: usize) -> Option<&'a Set> {
        self.sets.get(leg).filter(|_| leg < self.legs())
    }

    /// All that comes onto the carriage in set-up `leg`, in order.
    #[must_use]
    pub fn loads(&self, leg: usize) -> Vec<Load> {
        let ends = |board| self.pieces.ends(board).collect::<Vec<_>>();
        if self.is_merged() {
            return paired(&ends(Board::A), &ends(Board::B));
        }
        let Some(set) = self.set(leg) else {
            return Vec::new();
        };
        let alone = |end| Load {
            end,
            ends: vec![(leg, end)],
        };
        self.pieces.ends(set.board).map(alone).collect()
    }

    /// The load that `end` stands for, or else the first.
    #[must_use]
    pub fn load(&self, leg: usize, end: End) -> Option<Load> {
        let mut loads = self.loads(leg);
        let place = loads.iter().position(|load| load.end == end).unwrap_or(0);
        (!loads.is_empty()).then(|| loads.swap_remove(place))
    }

    /// The passes of `load`, each with its set.
    #[must_use]
    pub fn passes(&self, leg: usize, load: &Load) -> Vec<(&'a Set, &'a Stop)> {
        let pass = |set: usize, stop: usize| {
            let set = self.sets.get(set)?;
            Some((set, set.stops.get(stop)?))
        };
        match &self.both {
            Some(both) => {
                let is_on = |(set, _): &&(usize, usize)| load.ends.iter().any(|(on, _)| on == set);
                let both = both.iter().filter(is_on);
                both.filter_map(|(set, stop)| pass(*set, *stop)).collect()
            }
            None => {
                let stops = self.set(leg).map_or(0, |set| set.stops.len());
                (0..stops).filter_map(|stop| pass(leg, stop)).collect()
            }
        }
    }

    /// What is on the carriage, in words: nothing where only one thing ever is.
    #[must_use]
    pub fn name(&self, load: &Load) -> String {
        let name = |(set, end): &(usize, End)| {
            let board = self.sets.get(*set).map(|set| set.board)?;
            Some(self.pieces.name(board, *end)).filter(|name| !name.is_empty())
        };
        let names: Vec<_> = load.ends.iter().filter_map(name).collect();
        names.join(" with ")
    }

    /// Passes that are still to come after `passed` passes of `end` in set-up `leg`, and the travel of the
    /// wheel to get through them.
    #[must_use]
    pub fn left(&self, leg: usize, end: End, passed: usize, done: &Done) -> Left {
        let mut left = Left::default();
        for other in 0..self.legs() {
            for load in self.loads(other) {
                let is_here = other == leg && load.end == end;
                if !is_here && load.is_done(done) {
                    continue;
                }
                let passes = self.passes(other, &load);
                left.add(
                    passes
                        .get(if is_here { passed } else { 0 }..)
                        .unwrap_or_default(),
                );
            }
        }
        left
    }
}

/// What is still to be done.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Left {
    /// Passes.
    pub passes: usize,
    /// Turns of the wheel from stop to stop.
    pub turns: f64,
}

impl Left {
    fn add(&mut self, passes: &[(&Set, &Stop)]) {
        self.passes += passes.len();
        let turns = |(set, stop): &(&Set, &Stop)| {
            stop.dial.turns as f64 + stop.dial.division / f64::from(set.divisions.max(1))
        };
        if let (Some(first), Some(last)) = (passes.first(), passes.last()) {
            self.turns += turns(last) - turns(first);
        }
    }
}

/// One of each as long as there are; those left over alone.
fn paired(a: &[End], b: &[End]) -> Vec<Load> {
    let pair = |place: usize| {
        let ends: Vec<_> = [(0, a.get(place)), (1, b.get(place))]
            .into_iter()
            .filter_map(|(set, end)| Some((set, *end?)))
            .collect();
        let (set, end) = *ends.first()?;
        let end = if set == 0 { end } else { end.alone_of_b() };
        Some(Load { end, ends })
    };
    (0..a.len().max(b.len())).filter_map(pair).collect()
}

/// Both boards' stops with rising readings, where one set-up of the blade does for both.
fn merged(sets: &[Set]) -> Option<Vec<(usize, usize)>> {
    let [a, b] = sets else { return None };
    let is_upright = |set: &Set| set.tilt_degrees == 0.0 && set.yaw_degrees == 0.0;
    let is_same = a.height.is_same(b.height) && a.kerf.is_same(b.kerf) && a.board != b.board;
    if !(is_same && is_upright(a) && is_upright(b)) {
        return None;
    }
    let all = sets.iter().enumerate().flat_map(|(set, of)| {
        let stops = of.stops.iter().enumerate();
        stops.map(move |(stop, at)| (set, stop, at.dial.reading))
    });
    let sorted = in_order(all, |one, other| one.2.mm().total_cmp(&other.2.mm()));
    Some(
        sorted
            .into_iter()
            .map(|(set, stop, _)| (set, stop))
            .collect(),
    )
}
