//! Blocks that could be built of some pieces, far more than can be cut together: each knows its pieces, and blocks
//! that share none can lie on the same sheet.
//!
//! Joining blocks to larger ones as long as little is wasted goes back to Wang, "Two algorithms for constrained
//! two-dimensional cutting stock problems", Operations Research 31 (1983); cited from memory.

use super::block::{Block, Joint};
use super::chance::Chance;
use super::job::{Axis, Job, Size, Um};
use super::pool::{Item, Pool, beside};

const WORDS: usize = 4;
/// Pieces that are looked at together; others stay in the pool.
const MOST_PIECES: usize = 64 * WORDS;

/// Which pieces are in a block.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(super) struct Pieces([u64; WORDS]);

impl Pieces {
    fn one(number: usize) -> Self {
        let mut pieces = Self::default();
        if let Some(word) = pieces.0.get_mut(number / 64) {
            *word = 1 << (number % 64);
        }
        pieces
    }

    pub(super) fn meet(&self, other: &Self) -> bool {
        let mut words = self.0.iter().zip(&other.0);
        words.any(|(one, other)| one & other != 0)
    }

    pub(super) fn with(mut self, other: &Self) -> Self {
        for (one, other) in self.0.iter_mut().zip(&other.0) {
            *one |= other;
        }
        self
    }
}

#[derive(Clone, Copy, Debug)]
enum Of {
    Item {
        item: usize,
        turned: bool,
    },
    Join {
        axis: Axis,
        first: usize,
        second: usize,
    },
}

/// A block as it would lie.
#[derive(Clone, Copy, Debug)]
pub(super) struct Made {
    pub(super) size: Size,
    /// Area of its parts, each with a kerf at two edges.
    pub(super) wood: Um,
    /// The same, with more for what should rather be used.
    pub(super) value: Um,
    pub(super) pieces: Pieces,
    of: Of,
}

/// Shelves for blocks of nearly the same side.
const SHELVES: usize = 512;
/// Neighbours that are tried for a block, to take the best of them.
const TRIED: usize = 16;

/// What could be built, and is not used up yet.
#[derive(Debug)]
pub(super) struct Yard<'a> {
    pub(super) job: &'a Job,
    room: Size,
    pub(super) made: Vec<Made>,
    /// Blocks by their side along `X`, and along `Y`.
    shelves: [Vec<Vec<usize>>; 2],
    /// The pool's item that each piece is of.
    items: Vec<usize>,
}

impl<'a> Yard<'a> {
    /// Every piece of a pool that fits a room, both ways where it may turn, with what each is worth.
    pub(super) fn new(
        job: &'a Job,
        room: Size,
        pool: &Pool,
        value: impl Fn(&Item, Um) -> Um,
    ) -> Self {
        let mut yard = Self {
            job,
            room,
            made: Vec::new(),
            shelves: [Vec::new(), Vec::new()],
            items: Vec::new(),
        };
        for (index, item) in pool.items.iter().enumerate() {
            for _ in 0..item.count {
                if yard.items.len() < MOST_PIECES {
                    yard.add(index, item, &value);
                }
            }
        }
        yard.put_up();
        yard
    }

    fn add(&mut self, index: usize, item: &Item, value: &impl Fn(&Item, Um) -> Um) {
        let pieces = Pieces::one(self.items.len());
        self.items.push(index);
        for turned in [false, true] {
            let Some(size) = item.lying(turned).filter(|size| size.fits(self.room)) else {
                continue;
            };
            let wood = self.with_kerf(size);
            self.made.push(Made {
                size,
                wood,
                value: value(item, wood),
                pieces,
                of: Of::Item {
                    item: index,
                    turned,
                },
            });
        }
    }

    pub(super) fn with_kerf(&self, size: Size) -> Um {
        (size.x + self.job.kerf) * (size.y + self.job.kerf)
    }

    fn put_up(&mut self) {
        self.shelves = [vec![Vec::new(); SHELVES], vec![Vec::new(); SHELVES]];
        for index in 0..self.made.len() {
            self.put(index);
        }
    }

    fn put(&mut self, index: usize) {
        let Some(size) = self.made.get(index).map(|made| made.size) else {
            return;
        };
        for axis in [Axis::X, Axis::Y] {
            let place = self.shelf(axis, size.along(axis));
            if let Some(shelf) = self.shelves_mut(axis).get_mut(place) {
                shelf.push(index);
            }
        }
    }

    fn shelf(&self, axis: Axis, length: Um) -> usize {
        let last = SHELVES as Um - 1;
        let shelf = (length * last).checked_div(self.room.along(axis));
        shelf.unwrap_or(0).max(0).min(last) as usize
    }

    fn shelves_mut(&mut self, axis: Axis) -> &mut [Vec<usize>] {
        let [x, y] = &mut self.shelves;
        match axis {
            Axis::X => x,
            Axis::Y => y,
        }
    }

    /// Shelves with blocks whose side is so long, and perhaps some others.
    fn shelves(&self, axis: Axis, least: Um, most: Um) -> &[Vec<usize>] {
        let [x, y] = &self.shelves;
        let shelves = match axis {
            Axis::X => x,
            Axis::Y => y,
        };
        let range = self.shelf(axis, least)..=self.shelf(axis, most);
        shelves.get(range).unwrap_or_default()
    }

    /// Blocks whose side is so long.
    pub(super) fn as_long(&self, axis: Axis, least: Um, most: Um) -> impl Iterator<Item = usize> {
        let on_shelves = self.shelves(axis, least, most).iter().flatten().copied();
        on_shelves.filter(move |index| {
            self.made
                .get(*index)
                .is_some_and(|made| (least..=most).contains(&made.size.along(axis)))
        })
    }

    /// Joins blocks by chance until there are so many, or it becomes hard to find more that waste little.
    pub(super) fn grow(&mut self, most: usize, waste_per_mille: Um, chance: &mut Chance) {
        for _ in 0..2 * most.saturating_sub(self.made.len()) {
            if let Some(made) = self.joined_by_chance(waste_per_mille, chance)
                && !self.has(&made)
            {
                self.made.push(made);
                self.put(self.made.len() - 1);
            }
        }
    }

    /// A block beside the best of a few that are nearly as broad.
    fn joined_by_chance(&self, waste_per_mille: Um, chance: &mut Chance) -> Option<Made> {
        let first = chance.below(self.made.len());
        let axis = if chance.percent(50) { Axis::X } else { Axis::Y };
        let broad = self.made.get(first)?.size.along(axis.other());
        let slack = broad * waste_per_mille * 2 / 1000;
        let shelves = self.shelves(axis.other(), broad - slack, broad + slack);
        let (before, after) = shelves.split_at_checked(chance.below(shelves.len()))?;
        let near = after.iter().chain(before).flatten().filter(|index| {
            let made = self.made.get(**index);
            made.is_some_and(|made| (made.size.along(axis.other()) - broad).abs() <= slack)
        });
        let joined = near
            .take(TRIED)
            .filter_map(|second| self.joined(first, *second, axis));
        let ranked = joined.filter_map(|made| {
            let whole = self.with_kerf(made.size);
            let waste = (whole - made.wood).checked_div(whole / 100_000)?;
            (waste <= waste_per_mille * 100).then_some((waste, made))
        });
        ranked.min_by_key(|(waste, _)| *waste).map(|(_, made)| made)
    }

    fn joined(&self, first: usize, second: usize, axis: Axis) -> Option<Made> {
        let (one, two) = (self.made.get(first)?, self.made.get(second)?);
        if one.pieces.meet(&two.pieces) {
            return None;
        }
        let size = beside(one.size, two.size, Joint::sawn(axis, self.job));
        size.fits(self.room).then_some(Made {
            size,
            wood: one.wood + two.wood,
            value: one.value + two.value,
            pieces: one.pieces.with(&two.pieces),
            of: Of::Join {
                axis,
                first,
                second,
            },
        })
    }

    fn has(&self, made: &Made) -> bool {
        self.as_long(Axis::X, made.size.x, made.size.x)
            .filter_map(|index| self.made.get(index))
            .any(|other| other.size == made.size && other.pieces == made.pieces)
    }

    /// Takes away everything that these pieces are in.
    pub(super) fn use_up(&mut self, used: &Pieces) {
        let mut numbers = Vec::new();
        let mut left: Vec<Made> = Vec::new();
        for mut made in core::mem::take(&mut self.made) {
            numbers.push(left.len());
            if made.pieces.meet(used) {
                continue;
            }
            // What it is made of is there still, since it has none of these pieces either.
            if let Of::Join { first, second, .. } = &mut made.of {
                for child in [first, second] {
                    *child = numbers.get(*child).copied().unwrap_or_default();
                }
            }
            left.push(made);
        }
        self.made = left;
        self.put_up();
    }

    /// A block with all that is in it.
    pub(super) fn block(&self, index: usize, pool: &Pool) -> Option<Block> {
        match self.made.get(index)?.of {
            Of::Item { item, turned } => {
                let joint = Joint::sawn(Axis::X, self.job);
                pool.items.get(item)?.row(turned, joint, 1)
            }
            Of::Join {
                axis,
                first,
                second,
            } => {
                let blocks = [self.block(first, pool)?, self.block(second, pool)?];
                Block::join(Joint::sawn(axis, self.job), blocks)
            }
        }
    }

    /// Takes pieces out of the pool that this was made of.
    pub(super) fn take_from(&self, pool: &mut Pool, used: &Pieces) {
        // Later items first, since an item that is used up is taken out.
        for (number, item) in self.items.iter().enumerate().rev() {
            if used.meet(&Pieces::one(number)) {
                pool.take(*item, 1);
            }
        }
    }
}
