//! One board after its passes: what is open, what was left standing, how the floors look.

use super::profile::{Passes, Profile};
use crate::order::in_order;
use crate::stop::{Set, Stop};
use crate::units::Mm;

/// A stretch along the width, from the reference edge.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Span {
    /// Nearer end.
    pub from: Mm,
    /// Farther end.
    pub to: Mm,
}

impl Span {
    /// Its length; never negative.
    #[must_use]
    pub fn length(self) -> Mm {
        (self.to - self.from).max(Mm::ZERO)
    }

    /// What it shares with another, if anything.
    #[must_use]
    pub fn shared(self, other: Self) -> Option<Self> {
        let shared = Self {
            from: self.from.max(other.from),
            to: self.to.min(other.to),
        };
        (shared.from < shared.to).then_some(shared)
    }

    /// Its middle.
    #[must_use]
    pub fn middle(self) -> Mm {
        (self.from + self.to) / 2.0
    }
}

/// A board's end after all its passes.
#[derive(Clone, Debug)]
pub struct Swept {
    /// Width of the board.
    pub width: Mm,
    /// Height the cutter was set to: the depth of the deepest corners.
    pub height: Mm,
    /// What is left of its end.
    pub profile: Profile,
    /// Sockets as they are meant to be opened by these stops, from the first pass's near side to the last one's far side.
    pub sockets: Vec<Span>,
    /// Where wood is gone, merged, from the reference edge outwards.
    pub open: Vec<Span>,
    /// Where wood is left, from the reference edge outwards.
    pub wood: Vec<Span>,
}

impl Swept {
    /// Sweeps every pass of a set through a board of this width.
    #[must_use]
    pub fn new(set: &Set, width: Mm) -> Self {
        let board = Span {
            from: Mm::ZERO,
            to: width,
        };
        let passes = Passes::new(set, &set.stops);
        let open = merged(passes.spans().filter_map(|cut| cut.shared(board)));
        Self {
            width,
            height: set.height,
            profile: passes.cut(width),
            sockets: sockets(&set.stops, set.kerf, board),
            wood: between(&open, board),
            open,
        }
    }

    /// Wood that stands inside a socket, between passes that do not meet.
    pub fn slivers(&self) -> impl Iterator<Item = Span> {
        self.sockets.iter().flat_map(|socket| {
            let before = self.wood.partition_point(|wood| wood.from < socket.from);
            let from_there = self.wood.iter().skip(before).copied();
            from_there.take_while(|wood| wood.to <= socket.to)
        })
    }

    /// Wood that is meant to stay: pins, without slivers.
    #[must_use]
    pub fn pins(&self) -> Vec<Span> {
        let slivers: Vec<_> = self.slivers().collect();
        self.wood
            .iter()
            .filter(|wood| !slivers.contains(wood))
            .copied()
            .collect()
    }
}

fn sockets(stops: &[Stop], kerf: Mm, board: Span) -> Vec<Span> {
    let mut spans: Vec<(usize, Span)> = Vec::new();
    for stop in stops {
        let cut = Span {
            from: stop.at,
            to: stop.at + kerf,
        };
        match spans
            .iter_mut()
            .rev()
            .find(|(space, _)| *space == stop.space)
        {
            Some((_, span)) => {
                *span = Span {
                    from: span.from.min(cut.from),
                    to: span.to.max(cut.to),
                }
            }
            None => spans.push((stop.space, cut)),
        }
    }
    let spans = spans.into_iter().filter_map(|(_, span)| span.shared(board));
    in_order(spans, |x, y| x.from.cmp(&y.from))
}

/// Overlapping and touching spans joined; they must come in order of `from`.
fn merged(spans: impl Iterator<Item = Span>) -> Vec<Span> {
    let mut merged: Vec<Span> = Vec::new();
    for span in spans {
        match merged.last_mut() {
            Some(last) if !span.from.is_above(last.to) => last.to = last.to.max(span.to),
            _ => merged.push(span),
        }
    }
    merged
}

/// What lies between the spans, inside the board.
fn between(open: &[Span], board: Span) -> Vec<Span> {
    let starts = [board.from]
        .into_iter()
        .chain(open.iter().map(|span| span.to));
    let ends = open.iter().map(|span| span.from).chain([board.to]);
    starts
        .zip(ends)
        .map(|(from, to)| Span { from, to })
        .filter(|span| span.to.is_above(span.from))
        .collect()
}
