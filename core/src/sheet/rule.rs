//! Rules by which a rectangle is filled: some that are known to do well, and any number drawn by chance.

use super::chance::Chance;
use super::job::{Axis, Size, Um};

/// How to choose what goes where.
#[derive(Clone, Copy, Debug)]
pub(super) struct Rule {
    /// Weight of the share of the bay's area that is taken.
    area: Um,
    /// Weight of the share of the bay's side that is taken, on the side that suits better.
    side: Um,
    /// Weight of the share of each side.
    along: (Um, Um),
    /// How far chance weighs.
    pub(super) noise: Um,
    /// Which way the rest is parted first.
    pub(super) split: Split,
    /// What comes next.
    pub(super) next: Next,
    /// Whether equal blocks may go in together.
    pub(super) stacks: bool,
    /// Whole strips first, along this axis.
    pub(super) strips: Option<Axis>,
    /// Least share of a strip's width that its parts take, per cent.
    pub(super) filled: Um,
    /// Whether a strip is as wide as the widest thing left, or as something drawn by chance.
    pub(super) widest_first: bool,
    /// The order of what is laid.
    pub(super) order: Order,
}

/// Which way the rest of a bay is parted first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Split {
    Along(Axis),
    LargestRest,
    SmallestRest,
}

/// What comes next.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Next {
    /// The smallest bay, and what suits it.
    Smallest,
    /// The latest bay, and what suits it.
    Last,
    /// The next part, and the bay that suits it.
    Part,
}

/// By what parts are put in order, greatest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Order {
    Area,
    Longest,
    AlongX,
    AlongY,
}

impl Order {
    pub(super) fn of(self, size: Size) -> Um {
        match self {
            // In square millimetres, so that the noise on it has room.
            Self::Area => size.area() / 1_000_000,
            Self::Longest => size.x.max(size.y),
            Self::AlongX => size.x,
            Self::AlongY => size.y,
        }
    }
}

const SPLITS: [Split; 4] = [
    Split::Along(Axis::X),
    Split::Along(Axis::Y),
    Split::LargestRest,
    Split::SmallestRest,
];
const NEXTS: [Next; 3] = [Next::Part, Next::Smallest, Next::Last];
const ORDERS: [Order; 4] = [Order::Area, Order::Longest, Order::AlongX, Order::AlongY];
const STRIPS: [Option<Axis>; 3] = [Some(Axis::X), Some(Axis::Y), None];

/// How many rules there are without chance.
pub(super) const KNOWN: u32 = 36;

impl Rule {
    /// One of the rules without chance.
    pub(super) fn known(number: u32) -> Self {
        let number = number as usize;
        let choose = |at: usize, length: usize| at.checked_rem(length).unwrap_or(0);
        Self {
            area: 2,
            side: 6,
            along: (0, 0),
            noise: 0,
            strips: STRIPS.get(choose(number, 3)).copied().flatten(),
            next: NEXTS
                .get(choose(number / 3, 3))
                .copied()
                .unwrap_or(Next::Part),
            split: SPLITS
                .get(choose(number / 9, 4))
                .copied()
                .unwrap_or(Split::LargestRest),
            order: ORDERS
                .get(choose(number / 9 + number, 4))
                .copied()
                .unwrap_or(Order::Area),
            stacks: number.is_multiple_of(2),
            filled: 70,
            widest_first: true,
        }
    }

    /// A rule drawn by chance.
    pub(super) fn drawn(chance: &mut Chance) -> Self {
        let strips = if chance.percent(35) {
            chance.pick(&STRIPS).flatten()
        } else {
            None
        };
        Self {
            area: chance.up_to(6),
            side: chance.up_to(12),
            along: (chance.up_to(4), chance.up_to(4)),
            noise: chance.pick(&[0, 200, 800, 2500]).unwrap_or(0),
            split: chance.pick(&SPLITS).unwrap_or(Split::LargestRest),
            next: chance.pick(&NEXTS).unwrap_or(Next::Part),
            stacks: chance.percent(60),
            strips,
            filled: chance.pick(&[50, 70, 85, 95]).unwrap_or(70),
            widest_first: chance.percent(50),
            order: chance.pick(&ORDERS).unwrap_or(Order::Area),
        }
    }

    /// How well a block suits a bay that it fits into.
    pub(super) fn score(&self, block: Size, bay: Size) -> Um {
        let share = |part: Um, whole: Um| (part * 1000).checked_div(whole).unwrap_or(0);
        let (x, y) = (share(block.x, bay.x), share(block.y, bay.y));
        self.area * (x * y / 1000) + self.side * x.max(y) + self.along.0 * x + self.along.1 * y
    }
}
