//! Two boards cut at these stops, slid together.

use super::Bench;
use super::floor::floor;
use super::socket::{Socket, sockets};
use super::uncovered::{Left, uncovered};
use super::wall::Wall;
use crate::dryfit::{DryFit, Flank, Side, Uncut};
use crate::order::in_order;
use crate::stop::{Board, Set};
use crate::units::Mm;

/// Slides a tail board and a pin board together, both against the same reference edge, and measures what
/// is there.
///
/// Gaps are measured across the width. Areas of gaps and overlaps count the flanks: in A's face over the
/// pin board's thickness, less the lap; in B's over the tail board's, at the outer face. Wood on a socket's
/// floor is `uncut`: left for the chisel, it is no clash. Without a set for the pin board there are no flanks.
#[must_use]
pub fn dry_fit(sets: &[Set], bench: &Bench) -> DryFit {
    let tails = sockets(sets, bench, Board::A);
    let pins = sockets(sets, bench, Board::B);
    let mates = mates(&tails, &pins, bench);
    let gaps = || mates.iter().flat_map(Mate::gaps);
    let uncut_a: Vec<_> = tails.iter().filter_map(under_tails).collect();
    let pillars: Vec<_> = pins
        .iter()
        .filter_map(|socket| pillar(socket, bench))
        .collect();
    let floors: Vec<_> = pins.iter().filter_map(floor).collect();
    let highest = |uncut: &[Uncut]| uncut.iter().map(|uncut| uncut.height).max();
    let (floor_a, floor_b) = (highest(&uncut_a), highest(&floors));
    let [gap_area_a, gap_area_b] = areas(&mates, bench, |gap| gap.max(0.0));
    let [clash_area_a, clash_area_b] = areas(&mates, bench, |gap| (-gap).max(0.0));
    DryFit {
        smallest_gap: gaps().map(mm).min().unwrap_or_default(),
        largest_gap: gaps().map(mm).max().unwrap_or_default(),
        floor_gap_a: -floor_a.unwrap_or_default(),
        floor_gap_b: -floor_b.unwrap_or_default(),
        clash: gaps()
            .map(mm)
            .any(|gap| gap < Mm::ZERO && !gap.is_same(Mm::ZERO)),
        gap_area_a,
        gap_area_b,
        clash_area_a,
        clash_area_b,
        flanks: mates.iter().map(Mate::flank).collect(),
        uncut: uncut_a.into_iter().chain(pillars).chain(floors).collect(),
    }
}

fn mm(length: f64) -> Mm {
    Mm::new(length).unwrap_or_default()
}

/// A flank of a tail against the flank of a pin.
struct Mate {
    x: f64,
    side: Side,
    outer: f64,
    /// Where either flank bends: how far from the outer face, and the gap there.
    bends: Vec<(f64, f64)>,
    inner: f64,
    through: f64,
}

impl Mate {
    fn new(side: Side, tail: &Wall, pin: &Wall, bench: &Bench) -> Self {
        let (proud, through) = (bench.proud.mm(), bench.through.mm());
        let gap = |u: f64| {
            let gap = tail.at(proud + u) - pin.at(u);
            match side {
                Side::Left => gap,
                Side::Right => -gap,
            }
        };
        let of_tail = tail.bends(proud, proud + through).into_iter();
        let bends = of_tail.map(|z| z - proud).chain(pin.bends(0.0, through));
        Self {
            x: tail.at(proud),
            side,
            outer: gap(0.0),
            bends: in_order(bends, f64::total_cmp)
                .into_iter()
                .map(|u| (u, gap(u)))
                .collect(),
            inner: gap(through),
            through,
        }
    }

    fn flank(&self) -> Flank {
        Flank {
            x: mm(self.x),
            side: self.side,
            gap_at_outer: mm(self.outer),
            gap_at_inner: mm(self.inner),
        }
    }

    /// The gap at every place where it may be least or greatest, with how far that is from the outer face.
    fn places(&self) -> impl Iterator<Item = (f64, f64)> {
        let bends = self.bends.iter().copied();
        let outer = [(0.0, self.outer)].into_iter();
        outer.chain(bends).chain([(self.through, self.inner)])
    }

    fn gaps(&self) -> impl Iterator<Item = f64> {
        self.places().map(|(_, gap)| gap)
    }

    /// Area of the gap, or of the overlap, through the board.
    fn area(&self, part: fn(f64) -> f64) -> f64 {
        let pieces = self.places().zip(self.places().skip(1));
        let areas =
            pieces.map(|((from, start), (to, end))| straight(start, end, part) * (to - from));
        areas.sum()
    }
}

/// The mean gap, or overlap, where it changes evenly from one place to another.
fn straight(start: f64, end: f64, part: fn(f64) -> f64) -> f64 {
    let both = part(start) + part(end);
    let changes_sign = (start < 0.0) != (end < 0.0);
    let share = if changes_sign {
        both / (start - end).abs()
    } else {
        1.0
    };
    both / 2.0 * share
}

/// Every flank of every tail, from the reference edge. A socket of the pin board takes the tail between
/// the tail board's sockets just before and just after it.
fn mates(tails: &[Socket], pins: &[Socket], bench: &Bench) -> Vec<Mate> {
    let beside = |space: Option<usize>| tails.iter().find(|socket| Some(socket.space) == space);
    let of_pin_socket = |pin: &Socket| {
        let before = beside(pin.space.checked_sub(1)).and_then(|socket| socket.right.as_ref());
        let after = beside(pin.space.checked_add(1)).and_then(|socket| socket.left.as_ref());
        let left = before.zip(pin.left.as_ref());
        let right = after.zip(pin.right.as_ref());
        [
            left.map(|(tail, pin)| Mate::new(Side::Left, tail, pin, bench)),
            right.map(|(tail, pin)| Mate::new(Side::Right, tail, pin, bench)),
        ]
    };
    pins.iter().flat_map(of_pin_socket).flatten().collect()
}

/// Areas in A's face, through the pin board, and in B's, over the tail board at the outer face, mm².
fn areas(mates: &[Mate], bench: &Bench, part: fn(f64) -> f64) -> [f64; 2] {
    let tail = bench.thickness_a.mm();
    // The sum of nothing is −0, which is no area.
    [
        0.0 + mates.iter().map(|mate| mate.area(part)).sum::<f64>(),
        0.0 + mates
            .iter()
            .map(|mate| part(mate.outer) * tail)
            .sum::<f64>(),
    ]
}

/// Less than this is arithmetic's noise, mm².
const NO_AREA: f64 = 1e-6;

fn left_in(socket: &Socket) -> Option<Left> {
    let taken: Vec<_> = socket
        .outlines()
        .into_iter()
        .chain(socket.bulges())
        .collect();
    let left = uncovered(&socket.outline(), &taken)?;
    (left.area > NO_AREA).then_some(left)
}

/// What no pass reaches in a socket of the tail board.
fn under_tails(socket: &Socket) -> Option<Uncut> {
    let left = left_in(socket)?;
    Some(Uncut {
        board: Board::A,
        area: left.area,
        height: mm(socket.depth - left.from),
        near: mm(left.middle),
    })
}

/// What no pass reaches in a socket of the pin board: it stands as high as the socket is deep.
fn pillar(socket: &Socket, bench: &Bench) -> Option<Uncut> {
    let left = left_in(socket)?;
    Some(Uncut {
        board: Board::B,
        area: left.area,
        height: bench.thickness_a + bench.proud,
        near: mm(left.middle),
    })
}
