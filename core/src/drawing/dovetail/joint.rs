//! Both boards in the plane, as their sockets make them.

use super::plane::Place;
use crate::dryfit::slanted::{SocketShape, socket_shapes};
use crate::joint::dovetail::{DovetailPlan, Tail};
use crate::stop::Board;
use crate::units::Mm;

/// What is drawn of a joint, in the tail board's face: depths from the tail board's end.
pub(super) struct Joint {
    /// The tail board's sockets, from the reference edge.
    pub(super) tails: Vec<SocketShape>,
    /// The pin board's; none in a half-blind joint.
    pub(super) pins: Vec<SocketShape>,
    pub(super) width: f64,
    /// From the tail board's end to the pin board's outer face, or to the plane the tails touch.
    pub(super) outer: f64,
    /// From the tail board's end to the pin board's inner face.
    pub(super) inner: f64,
}

impl Joint {
    pub(super) fn new(plan: &DovetailPlan) -> Self {
        let (bench, sets) = (&plan.bench, &plan.sets);
        let (outer, through) = (bench.proud.mm(), bench.through.mm());
        let shifted = |socket: SocketShape| {
            let down = |(x, depth): Place| (x, depth + outer);
            let uncut = socket.uncut.iter();
            SocketShape {
                corners: socket.corners.map(down),
                uncut: uncut
                    .map(|area| area.iter().copied().map(down).collect())
                    .collect(),
                ..socket
            }
        };
        let pins = socket_shapes(sets, bench, Board::B);
        Self {
            tails: socket_shapes(sets, bench, Board::A),
            pins: pins.into_iter().map(shifted).collect(),
            width: plan.width.mm(),
            outer,
            inner: outer + through,
        }
    }

    /// The tail board's end from edge to edge, with its sockets.
    pub(super) fn tail_end(&self) -> Vec<Place> {
        let mut line = Vec::new();
        if self.tails.first().is_none_or(|socket| socket.has_left) {
            line.push((0.0, 0.0));
        }
        for socket in &self.tails {
            let [left, right, right_floor, left_floor] = socket.corners;
            line.extend(socket.has_left.then_some(left));
            line.extend([left_floor, right_floor]);
            line.extend(socket.has_right.then_some(right));
        }
        if self.tails.last().is_none_or(|socket| socket.has_right) {
            line.push((self.width, 0.0));
        }
        line
    }

    /// The tail board, as far as a depth.
    pub(super) fn tail_board(&self, depth: f64) -> Vec<Place> {
        let mut board = self.tail_end();
        board.extend([(self.width, depth), (0.0, depth)]);
        board
    }

    /// The pins, whole between their sockets.
    pub(super) fn pin_shapes(&self) -> Vec<Vec<Place>> {
        between(&self.pin_sides(), self.width, self.outer, self.inner)
    }

    /// Both sides of every socket of the pin board: left and right at the outer face, then at the inner one.
    fn pin_sides(&self) -> Vec<[f64; 4]> {
        let sides = |socket: &SocketShape| {
            let [left, right, right_in, left_in] = socket.corners;
            [left.0, right.0, left_in.0, right_in.0]
        };
        self.pins.iter().map(sides).collect()
    }

    /// The pins of the layout, where no stops make them.
    pub(super) fn pins_by_hand(&self, plan: &DovetailPlan) -> Vec<Vec<Place>> {
        let sides =
            |tail: &Tail| [tail.from_tip, tail.to_tip, tail.from_base, tail.to_base].map(Mm::mm);
        let sides: Vec<_> = plan.tails.iter().map(sides).collect();
        between(&sides, self.width, self.outer, self.inner)
    }

    /// What no pass reaches in the tail board.
    pub(super) fn uncut_tails(&self) -> Vec<Vec<Place>> {
        let uncut = self.tails.iter().flat_map(|socket| &socket.uncut);
        uncut.cloned().collect()
    }

    /// What no pass reaches in the pin board.
    pub(super) fn uncut_pins(&self) -> Vec<Vec<Place>> {
        let uncut = self.pins.iter().flat_map(|socket| &socket.uncut);
        uncut.cloned().collect()
    }

    /// Every pair of mating flanks, from the reference edge.
    pub(super) fn mates(&self) -> Vec<Mate> {
        let beside = |space: Option<usize>| {
            let mut tails = self.tails.iter();
            tails.find(|socket| Some(socket.space) == space)
        };
        let of_pin_socket = |pin: &SocketShape| {
            let before = beside(pin.space.checked_sub(1)).filter(|socket| socket.has_right);
            let after = beside(pin.space.checked_add(1)).filter(|socket| socket.has_left);
            let left = before.filter(|_| pin.has_left).map(|socket| {
                self.mate(
                    [socket.corners[1], socket.corners[2]],
                    [pin.corners[0], pin.corners[3]],
                    1.0,
                )
            });
            let right = after.filter(|_| pin.has_right).map(|socket| {
                self.mate(
                    [socket.corners[0], socket.corners[3]],
                    [pin.corners[1], pin.corners[2]],
                    -1.0,
                )
            });
            [left, right]
        };
        self.pins.iter().flat_map(of_pin_socket).flatten().collect()
    }

    fn mate(&self, tail: [Place; 2], pin: [Place; 2], sign: f64) -> Mate {
        let at = |wall: [Place; 2], depth: f64| {
            let [from, to] = wall;
            let share = (depth - from.1) / (to.1 - from.1);
            (from.0 + (to.0 - from.0) * share, depth)
        };
        let both = |depth: f64| [at(tail, depth), at(pin, depth)];
        Mate {
            outer: both(self.outer),
            inner: both(self.inner),
            sign,
        }
    }
}

/// The shapes between these sides, from face to face and from edge to edge.
fn between(sides: &[[f64; 4]], width: f64, outer: f64, inner: f64) -> Vec<Vec<Place>> {
    let lefts = [(0.0, 0.0)].into_iter().chain(
        sides
            .iter()
            .map(|[_, right, _, right_in]| (*right, *right_in)),
    );
    let rights = sides
        .iter()
        .map(|[left, _, left_in, _]| (*left, *left_in))
        .chain([(width, width)]);
    let shape = |((left, left_in), (right, right_in))| {
        vec![
            (left, outer),
            (right, outer),
            (right_in, inner),
            (left_in, inner),
        ]
    };
    lefts.zip(rights).map(shape).collect()
}

/// The tails of the layout as far as they go into the pin board.
pub(super) fn tail_shapes(plan: &DovetailPlan) -> Vec<Vec<Place>> {
    let (outer, inner) = (plan.bench.proud, plan.bench.proud + plan.bench.through);
    let shape = |tail: &Tail| {
        let corners = [
            (tail.from_tip, outer),
            (tail.to_tip, outer),
            (tail.to_base, inner),
            (tail.from_base, inner),
        ];
        corners.map(|(x, depth)| (x.mm(), depth.mm())).to_vec()
    };
    plan.tails.iter().map(shape).collect()
}

/// A line once around an area.
pub(super) fn closed_line(corners: &[Place]) -> Vec<Place> {
    corners.iter().chain(corners.first()).copied().collect()
}

/// A flank of a tail against the flank of a pin.
#[derive(Clone, Copy, Debug)]
pub(super) struct Mate {
    /// The tail's and the pin's place at the outer face.
    pub(super) outer: [Place; 2],
    /// The same at the inner face.
    pub(super) inner: [Place; 2],
    /// 1 where the tail is to the right of its flank, −1 where it is to the left.
    sign: f64,
}

impl Mate {
    /// Gap at the outer and at the inner face, across the width, mm; negative where wood overlaps.
    pub(super) fn gaps(&self) -> [f64; 2] {
        [self.outer, self.inner].map(|[tail, pin]| (tail.0 - pin.0) * self.sign)
    }

    /// What is open between both flanks.
    pub(super) fn open(&self) -> Option<Vec<Place>> {
        self.part(|gap| gap)
    }

    /// Where both boards have wood.
    pub(super) fn overlap(&self) -> Option<Vec<Place>> {
        self.part(|gap| -gap)
    }

    /// The part between the flanks where this is positive; it changes evenly from face to face.
    fn part(&self, of_gap: fn(f64) -> f64) -> Option<Vec<Place>> {
        let [outer, inner] = self.gaps().map(of_gap);
        if outer.max(inner) <= NOTHING {
            return None;
        }
        let zero = crate::math::within(outer / (outer - inner), 0.0, 1.0);
        let from = if outer < 0.0 { zero } else { 0.0 };
        let to = if inner < 0.0 { zero } else { 1.0 };
        let between = |from: Place, to: Place, share: f64| {
            let step = |from: f64, to: f64| from + (to - from) * share;
            (step(from.0, to.0), step(from.1, to.1))
        };
        let tail = |share| between(self.outer[0], self.inner[0], share);
        let pin = |share| between(self.outer[1], self.inner[1], share);
        Some(vec![tail(from), pin(from), pin(to), tail(to)])
    }
}

/// Gaps and overlaps of less are none, mm.
const NOTHING: f64 = 1e-3;
