//! What is still to be laid on sheets: parts, and blocks of parts that stay together.

use super::block::{Block, Joint, What};
use super::chance::Chance;
use super::job::{Axis, Grain, Job, Kind, Size, Um};

/// Equal blocks, as they lie on a sheet of one grain.
#[derive(Clone, Debug)]
pub(super) struct Item {
    pub(super) block: Block,
    /// Whether it may lie the other way too.
    pub(super) may_turn: bool,
    pub(super) count: u32,
}

impl Item {
    /// Its size one way or the other, if it may lie so.
    pub(super) fn lying(&self, turned: bool) -> Option<Size> {
        match turned {
            false => Some(self.block.size),
            true => self.may_turn.then(|| self.block.size.turned()),
        }
    }

    /// So many of it side by side, as they lie.
    pub(super) fn row(&self, turned: bool, joint: Joint, count: u32) -> Option<Block> {
        let one = if turned {
            self.block.clone().turned()
        } else {
            self.block.clone()
        };
        Block::join(joint, (0..count).map(|_| one.clone()))
    }
}

/// Everything still to be laid, as it lies on sheets of one grain.
#[derive(Clone, Debug)]
pub(super) struct Pool {
    pub(super) grain: Grain,
    pub(super) items: Vec<Item>,
}

impl Pool {
    /// So many of each part.
    pub(super) fn of_parts(job: &Job, counts: &[u32], grain: Grain) -> Self {
        let mut pool = Self {
            grain,
            items: Vec::new(),
        };
        for (part, count) in counts.iter().enumerate() {
            pool.add_part(job, part, *count);
        }
        pool
    }

    fn add_part(&mut self, job: &Job, part: usize, count: u32) {
        let Some(block) = Block::part(job, part, false, self.grain) else {
            return;
        };
        let may_turn = Block::part(job, part, true, self.grain).is_some();
        if count > 0 {
            self.items.push(Item {
                block,
                may_turn: may_turn && block_is_oblong(job, part),
                count,
            });
        }
    }

    /// The same for sheets of another grain: blocks come apart, since their parts would turn.
    pub(super) fn on(self, job: &Job, grain: Grain) -> Self {
        if self.grain == grain {
            return self;
        }
        Self::of_parts(job, &self.counts(job), grain)
    }

    /// How many of each part there are.
    pub(super) fn counts(&self, job: &Job) -> Vec<u32> {
        let mut counts = vec![0; job.parts.len()];
        for item in &self.items {
            item.block.each_part(&mut |part, _| {
                if let Some(count) = counts.get_mut(part) {
                    *count += item.count;
                }
            });
        }
        counts
    }

    /// Whether nothing is left.
    pub(super) fn is_empty(&self) -> bool {
        self.items.is_empty()
    }

    /// Takes some of an item.
    pub(super) fn take(&mut self, index: usize, count: u32) {
        if let Some(item) = self.items.get_mut(index) {
            item.count = item.count.saturating_sub(count);
            if item.count == 0 {
                self.items.remove(index);
            }
        }
    }

    /// Adds a block as it lies: it stays together where little of it is waste, and comes apart otherwise.
    pub(super) fn add(&mut self, job: &Job, block: Block, keeps: &Keeps, chance: &mut Chance) {
        let wood = block.wood();
        let area = block.size.area();
        let is_tight = area - wood <= area / 1000 * keeps.waste_per_mille;
        match block.what {
            What::Part { part, .. } => {
                let same = self.items.iter_mut().find(
                    |item| matches!(item.block.what, What::Part { part: p, .. } if p == part),
                );
                match same {
                    Some(item) => item.count += 1,
                    None => self.add_part(job, part, 1),
                }
            }
            What::Join { joint, blocks } => {
                if is_tight && !joint.rough && chance.percent(keeps.percent) {
                    let block = Block {
                        size: block.size,
                        what: What::Join { joint, blocks },
                    };
                    let may_turn = self.may_all_turn(job, &block);
                    self.items.push(Item {
                        block,
                        may_turn,
                        count: 1,
                    });
                } else {
                    for block in blocks {
                        self.add(job, block, keeps, chance);
                    }
                }
            }
        }
    }

    fn may_all_turn(&self, job: &Job, block: &Block) -> bool {
        let mut all = true;
        block.each_part(&mut |part, turned| {
            all &= Block::part(job, part, !turned, self.grain).is_some();
        });
        all
    }

    /// Joins blocks that share an edge, or nearly; the larger waste, the more are joined.
    pub(super) fn join_neighbours(
        &mut self,
        job: &Job,
        kind: &Kind,
        waste_per_mille: Um,
        most: usize,
        chance: &mut Chance,
    ) {
        // A block that several kinds of neighbours suit is joined to the one that wastes least.
        let mut left = most;
        let mut first = 0;
        while left > 0 && first < self.items.len() {
            match self.best_neighbour(job, kind, first, waste_per_mille, chance) {
                Some((second, block)) => {
                    let may_turn = self.may_all_turn(job, &block);
                    let (high, low) = (first.max(second), first.min(second));
                    self.take(high, 1);
                    self.take(low, 1);
                    first = first.min(self.items.len());
                    self.items.push(Item {
                        block,
                        may_turn,
                        count: 1,
                    });
                    first = chance.below(first + 1);
                    left -= 1;
                }
                None => first += 1,
            }
        }
    }

    fn best_neighbour(
        &self,
        job: &Job,
        kind: &Kind,
        first: usize,
        waste_per_mille: Um,
        chance: &mut Chance,
    ) -> Option<(usize, Block)> {
        let item = self.items.get(first)?;
        let mut best: Option<(Um, usize, bool, Joint)> = None;
        for (second, other) in self.items.iter().enumerate() {
            if second == first && item.count < 2 {
                continue;
            }
            for turned in [false, true] {
                let Some(size) = other.lying(turned) else {
                    continue;
                };
                for axis in [Axis::X, Axis::Y] {
                    let joint = Joint::sawn(axis, job);
                    let waste = waste_beside(item.block.size, size, axis);
                    let joined = beside(item.block.size, size, joint);
                    let fits = joined.fits(kind.usable()) && job.lifts_with_margins(joined, kind);
                    if !fits || waste > joined.area() / 1000 * waste_per_mille {
                        continue;
                    }
                    let rank = waste * 1000 / joined.area().max(1) * 8 + chance.up_to(7);
                    if best.as_ref().is_none_or(|best| rank < best.0) {
                        best = Some((rank, second, turned, joint));
                    }
                }
            }
        }
        let (_, second, turned, joint) = best?;
        let other = self.items.get(second)?.block.clone();
        let other = if turned { other.turned() } else { other };
        Some((second, Block::join(joint, [item.block.clone(), other])?))
    }
}

/// A square lies the same both ways.
fn block_is_oblong(job: &Job, part: usize) -> bool {
    job.parts
        .get(part)
        .is_some_and(|part| part.size.x != part.size.y)
}

/// What stays together when a layout comes apart.
#[derive(Clone, Copy, Debug)]
pub(super) struct Keeps {
    /// Most waste of a block that may stay together.
    pub(super) waste_per_mille: Um,
    /// How often such a block does.
    pub(super) percent: usize,
}

/// What is lost where two blocks of different sides are joined.
fn waste_beside(one: Size, other: Size, axis: Axis) -> Um {
    let across = axis.other();
    let step = one.along(across) - other.along(across);
    let shorter = if step > 0 { other } else { one };
    step.abs() * shorter.along(axis)
}

/// The size of two blocks that are joined.
pub(super) fn beside(one: Size, other: Size, joint: Joint) -> Size {
    let across = joint.axis.other();
    Size::default()
        .with(
            joint.axis,
            one.along(joint.axis) + other.along(joint.axis) + joint.gap,
        )
        .with(across, one.along(across).max(other.along(across)))
}
