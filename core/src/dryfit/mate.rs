//! Two swept boards slid together.

use super::floor::{self, Piece};
use super::sweep::{Span, Swept};
use super::{DryFit, Flank, Side, Uncut};
use crate::stop::Board;
use crate::units::Mm;

/// How far the boards are pushed together.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Seat {
    /// Thickness of board A.
    pub thickness_a: Mm,
    /// Thickness of board B.
    pub thickness_b: Mm,
    /// How far each board's pins stand past the other's outer face.
    pub proud: Mm,
}

/// Slides two boards together, both against the same reference edge, and measures what is there.
///
/// In A's face (x along the width, z from A's end) board B fills `z` from `proud` to
/// `proud + thickness_b` wherever it has wood; A has wood outside its cuts and above its floors. B's
/// face is the same with the letters exchanged.
#[must_use]
pub fn dry_fit(a: &Swept, b: &Swept, seat: Seat) -> DryFit {
    let flanks = flanks(a, b);
    let gaps = || {
        flanks
            .iter()
            .flat_map(|flank| [flank.gap_at_outer, flank.gap_at_inner])
    };
    let face_a = Face::new(a, b, seat.proud, seat.thickness_b);
    let face_b = Face::new(b, a, seat.proud, seat.thickness_a);
    let uncut = face_a
        .uncut(Board::A)
        .into_iter()
        .chain(face_b.uncut(Board::B))
        .collect();
    DryFit {
        smallest_gap: gaps().min().unwrap_or_default(),
        largest_gap: gaps().max().unwrap_or_default(),
        floor_gap_a: face_a.floor_gap(),
        floor_gap_b: face_b.floor_gap(),
        uncut,
        clash: overlaps(&a.pins(), &b.pins()),
        gap_area_a: face_a.gap_area(),
        gap_area_b: face_b.gap_area(),
        clash_area_a: face_a.clash_area(),
        clash_area_b: face_b.clash_area(),
        flanks,
    }
}

/// Each socket of A against the pin of B that fills it.
fn flanks(a: &Swept, b: &Swept) -> Vec<Flank> {
    let pins = b.pins();
    let flank = |x, side, gap| Flank {
        x,
        side,
        gap_at_outer: gap,
        gap_at_inner: gap,
    };
    let mut flanks = Vec::new();
    let mut pins = pins.as_slice();
    for socket in &a.sockets {
        // Pins that end before this socket cannot fill a later one either.
        let passed = pins.iter().take_while(|pin| pin.to <= socket.from).count();
        pins = pins.get(passed..).unwrap_or_default();
        let meets = pins.iter().take_while(|pin| pin.from < socket.to);
        let Some(pin) = meets.max_by_key(|pin| pin.shared(*socket).map(Span::length)) else {
            continue;
        };
        // A socket that is open at a board edge has no flank there.
        if socket.from.is_above(Mm::ZERO) {
            flanks.push(flank(socket.from, Side::Right, pin.from - socket.from));
        }
        if socket.to.is_below(a.width) {
            flanks.push(flank(socket.to, Side::Left, socket.to - pin.to));
        }
    }
    flanks
}

fn overlaps(a: &[Span], b: &[Span]) -> bool {
    shared(a, b)
        .iter()
        .any(|span| !span.length().is_same(Mm::ZERO))
}

/// What two lists of spans, each in order and apart, have in common.
fn shared(a: &[Span], b: &[Span]) -> Vec<Span> {
    let (mut a, mut b) = (a.iter().peekable(), b.iter().peekable());
    let mut all = Vec::new();
    while let (Some(x), Some(y)) = (a.peek(), b.peek()) {
        all.extend(x.shared(**y));
        if x.to <= y.to {
            a.next()
        } else {
            b.next()
        };
    }
    all
}

/// The joint as it is seen in one board's face.
struct Face<'a> {
    own: &'a Swept,
    mate: &'a Swept,
    /// Thickness of the mating board: the height of the joint in this face.
    thickness: Mm,
    /// From the own board's end to where the mate's inner face comes: the depth line.
    depth: Mm,
    /// The own board's floors.
    floors: Vec<Piece>,
}

impl<'a> Face<'a> {
    fn new(own: &'a Swept, mate: &'a Swept, proud: Mm, thickness: Mm) -> Self {
        let depth = proud + thickness;
        let short = depth - own.height;
        let floors = own
            .open
            .iter()
            .flat_map(|open| floor::pieces(own, *open, short))
            .collect();
        Self {
            own,
            mate,
            thickness,
            depth,
            floors,
        }
    }

    fn floor_gap(&self) -> Mm {
        -self
            .floors
            .iter()
            .map(|piece| piece.highest())
            .max()
            .unwrap_or_default()
    }

    fn clash_area(&self) -> f64 {
        let beside: Mm = shared(&self.own.wood, &self.mate.wood)
            .iter()
            .map(|span| span.length())
            .sum();
        beside.mm() * self.thickness.mm() + self.floor_area(&self.mate.wood)
    }

    fn gap_area(&self) -> f64 {
        let beside: Mm = shared(&self.own.open, &self.mate.open)
            .iter()
            .map(|span| span.length())
            .sum();
        beside.mm() * self.thickness.mm() - self.floor_area(&self.mate.open)
    }

    /// Area of the own floors above the depth line, below the mate's spans, within the mate's thickness.
    fn floor_area(&self, spans: &[Span]) -> f64 {
        let mut spans = spans;
        let mut area = 0.0;
        for piece in &self.floors {
            let passed = spans
                .iter()
                .take_while(|span| piece.is_past(**span))
                .count();
            spans = spans.get(passed..).unwrap_or_default();
            let met = spans
                .iter()
                .map_while(|span| piece.reaches(*span).then(|| piece.within(*span)));
            area += met
                .flatten()
                .map(|piece| piece.area(self.thickness))
                .sum::<f64>();
        }
        area
    }

    /// Slivers between passes, and what stands on the floor of each socket.
    fn uncut(&self, board: Board) -> Vec<Uncut> {
        let sliver = |span: Span| Uncut {
            board,
            area: span.length().mm() * self.depth.mm(),
            height: self.depth,
            near: span.middle(),
        };
        let slivers = self.own.slivers().map(sliver);
        let on_floors = self.own.sockets.iter().filter_map(|socket| {
            let before = self.floors.partition_point(|piece| !piece.reaches(*socket));
            let from_there = self.floors.iter().skip(before);
            let pieces = from_there.map_while(|piece| piece.within(*socket));
            let (highest, area) = pieces.fold((Mm::ZERO, 0.0), |(highest, area), piece| {
                (highest.max(piece.highest()), area + piece.area(self.depth))
            });
            let stands = !highest.is_same(Mm::ZERO);
            stands.then(|| Uncut {
                board,
                area,
                height: highest,
                near: socket.middle(),
            })
        });
        slivers.chain(on_floors).collect()
    }
}
