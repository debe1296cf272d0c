//! Two boards cut at these stops, slid together.

use super::Bench;
use super::floor::floor;
use super::socket::{Socket, Wall, sockets};
use super::uncovered::{Left, uncovered};
use crate::dryfit::{DryFit, Flank, Side, Uncut};
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
    let gaps = || mates.iter().flat_map(|mate| [mate.outer, mate.inner]);
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
    inner: f64,
}

impl Mate {
    fn flank(&self) -> Flank {
        Flank {
            x: mm(self.x),
            side: self.side,
            gap_at_outer: mm(self.outer),
            gap_at_inner: mm(self.inner),
        }
    }

    /// Area of the gap, or of the overlap, through the board: the gap is straight from face to face.
    fn area(&self, part: fn(f64) -> f64, through: f64) -> f64 {
        let (outer, inner) = (part(self.outer), part(self.inner));
        let changes_sign = (self.outer < 0.0) != (self.inner < 0.0);
        let share = if changes_sign {
            (outer + inner) / (self.outer - self.inner).abs()
        } else {
            1.0
        };
        (outer + inner) / 2.0 * share * through
    }
}

/// Every flank of every tail, from the reference edge. A socket of the pin board takes the tail between
/// the tail board's sockets just before and just after it.
fn mates(tails: &[Socket], pins: &[Socket], bench: &Bench) -> Vec<Mate> {
    let (proud, through) = (bench.proud.mm(), bench.through.mm());
    let place = |tail: Wall, u: f64| tail.at(proud + u);
    let mate = |side, tail: Wall, pin: Wall, sign: f64| Mate {
        x: place(tail, 0.0),
        side,
        outer: (place(tail, 0.0) - pin.at(0.0)) * sign,
        inner: (place(tail, through) - pin.at(through)) * sign,
    };
    let beside = |space: Option<usize>| tails.iter().find(|socket| Some(socket.space) == space);
    let of_pin_socket = |pin: &Socket| {
        let before = beside(pin.space.checked_sub(1)).and_then(|socket| socket.right);
        let after = beside(pin.space.checked_add(1)).and_then(|socket| socket.left);
        let left = before.zip(pin.left);
        let right = after.zip(pin.right);
        [
            left.map(|(tail, pin)| mate(Side::Left, tail, pin, 1.0)),
            right.map(|(tail, pin)| mate(Side::Right, tail, pin, -1.0)),
        ]
    };
    pins.iter().flat_map(of_pin_socket).flatten().collect()
}

/// Areas in A's face, through the pin board, and in B's, over the tail board at the outer face, mm².
fn areas(mates: &[Mate], bench: &Bench, part: fn(f64) -> f64) -> [f64; 2] {
    let (through, tail) = (bench.through.mm(), bench.thickness_a.mm());
    [
        mates.iter().map(|mate| mate.area(part, through)).sum(),
        mates.iter().map(|mate| part(mate.outer) * tail).sum(),
    ]
}

/// Less than this is arithmetic's noise, mm².
const NO_AREA: f64 = 1e-6;

fn left_in(socket: &Socket) -> Option<Left> {
    let left = uncovered(&socket.outline(), &socket.outlines())?;
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
