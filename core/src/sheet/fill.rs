//! Filling a rectangle: one block after another goes into a corner of a free bay, and parts what is left in two.

use super::block::{Block, Joint, What};
use super::chance::Chance;
use super::job::{Axis, Job, Size, Um};
use super::pool::Pool;
use super::row;
use super::rule::{Next, Rule, Split};

/// A free rectangle, and the node of the tree that it is.
#[derive(Clone, Copy, Debug)]
pub(super) struct Bay {
    pub(super) size: Size,
    pub(super) node: usize,
}

#[derive(Debug)]
enum Node {
    Free,
    Block(Block),
    Parted {
        axis: Axis,
        first: usize,
        second: usize,
    },
}

/// A rectangle being filled.
#[derive(Debug)]
pub(super) struct Filling<'a> {
    pub(super) job: &'a Job,
    pub(super) rule: &'a Rule,
    nodes: Vec<Node>,
    bays: Vec<Bay>,
}

/// Where a block goes.
#[derive(Clone, Copy, Debug)]
struct Choice {
    score: Um,
    bay: usize,
    item: usize,
    turned: bool,
    axis: Axis,
    count: u32,
    size: Size,
}

/// Fills a rectangle, in which something that fits may already be laid, with what a pool holds, by a rule; the
/// block that comes of it, if anything fits.
pub(super) fn fill(
    job: &Job,
    room: Size,
    laid: Option<Block>,
    pool: &mut Pool,
    rule: &Rule,
    chance: &mut Chance,
) -> Option<Block> {
    let mut filling = Filling {
        job,
        rule,
        nodes: Vec::new(),
        bays: Vec::new(),
    };
    let root = filling.open(room)?;
    if let Some(block) = laid {
        let bay = filling.take_last()?;
        filling.lay(bay, block);
    } else if rule.strips.is_some() {
        row::fill_with_rows(&mut filling, pool, chance);
    }
    match rule.next {
        Next::Part => filling.parts_into_bays(pool, chance),
        Next::Smallest | Next::Last => filling.bays_with_parts(pool, chance),
    }
    filling.block(root)
}

impl Filling<'_> {
    /// Opens a bay, if it has any size.
    fn open(&mut self, size: Size) -> Option<usize> {
        if size.x <= 0 || size.y <= 0 {
            return None;
        }
        let node = self.nodes.len();
        self.nodes.push(Node::Free);
        self.bays.push(Bay { size, node });
        Some(node)
    }

    fn set(&mut self, node: usize, to: Node) {
        if let Some(node) = self.nodes.get_mut(node) {
            *node = to;
        }
    }

    fn node(&mut self, node: Node) -> usize {
        self.nodes.push(node);
        self.nodes.len() - 1
    }

    /// Takes a bay that is free.
    pub(super) fn take_last(&mut self) -> Option<Bay> {
        self.bays.pop()
    }

    /// Opens again what was taken.
    pub(super) fn give_back(&mut self, bay: Bay) {
        self.bays.push(bay);
    }

    /// Parts a bay across an axis: the first part is so long, and both are open. Gives the second one, if any.
    pub(super) fn part(&mut self, bay: Bay, axis: Axis, length: Um) -> (Bay, Option<Bay>) {
        let rest = bay.size.along(axis) - length - self.job.kerf;
        let near = bay.size.with(axis, length);
        let first = self.node(Node::Free);
        let far = bay.size.with(axis, rest);
        let second = (rest > 0).then(|| Bay {
            size: far,
            node: self.node(Node::Free),
        });
        let node = second.map_or(first, |bay| bay.node);
        self.set(
            bay.node,
            Node::Parted {
                axis,
                first,
                second: node,
            },
        );
        let first = Bay {
            size: near,
            node: first,
        };
        (first, second)
    }

    /// Puts a block into a bay's corner; what is left is parted first along `axis`.
    pub(super) fn put(&mut self, bay: Bay, block: Block, axis: Axis) {
        let size = block.size;
        let (strip, rest) = self.part(bay, axis, size.along(axis));
        if let Some(rest) = rest {
            self.bays.push(rest);
        }
        let (corner, rest) = self.part(strip, axis.other(), size.along(axis.other()));
        if let Some(rest) = rest {
            self.bays.push(rest);
        }
        self.set(corner.node, Node::Block(block));
    }

    /// Lays a block that fits into a bay, part by part: what is left beside each is open.
    fn lay(&mut self, bay: Bay, block: Block) {
        match block.what {
            What::Part { .. } => self.put(bay, block, Axis::X),
            What::Join { joint, blocks } => {
                let mut rest = bay;
                for block in blocks {
                    let (near, far) = self.part(rest, joint.axis, block.size.along(joint.axis));
                    self.lay(near, block);
                    match far {
                        Some(far) => rest = far,
                        None => return,
                    }
                }
                self.give_back(rest);
            }
        }
    }

    /// Bay after bay gets the block that suits it.
    fn bays_with_parts(&mut self, pool: &mut Pool, chance: &mut Chance) {
        while !pool.is_empty() && !self.bays.is_empty() {
            let index = match self.rule.next {
                Next::Smallest => self.smallest(),
                Next::Last | Next::Part => self.bays.len() - 1,
            };
            let bay = self.bays.swap_remove(index);
            let mut best = None;
            for item in 0..pool.items.len() {
                self.consider(bay, 0, pool, item, &mut best, chance);
            }
            if let Some(choice) = best {
                self.place(bay, pool, choice);
            }
        }
    }

    fn smallest(&self) -> usize {
        let areas = self.bays.iter().map(|bay| bay.size.area()).enumerate();
        areas
            .min_by_key(|(_, area)| *area)
            .map_or(0, |(index, _)| index)
    }

    /// Item after item, as the pool has them, goes into the bay that suits it.
    fn parts_into_bays(&mut self, pool: &mut Pool, chance: &mut Chance) {
        let mut item = 0;
        while item < pool.items.len() {
            let mut best = None;
            for (index, bay) in self.bays.iter().enumerate() {
                self.consider(*bay, index, pool, item, &mut best, chance);
            }
            match best {
                Some(choice) => {
                    let before = pool.items.len();
                    let bay = self.bays.swap_remove(choice.bay);
                    self.place(bay, pool, choice);
                    debug_assert!(pool.items.len() <= before);
                }
                None => item += 1,
            }
        }
    }

    fn consider(
        &self,
        bay: Bay,
        index: usize,
        pool: &Pool,
        item: usize,
        best: &mut Option<Choice>,
        chance: &mut Chance,
    ) {
        let Some(found) = pool.items.get(item) else {
            return;
        };
        for turned in [false, true] {
            let Some(one) = found.lying(turned) else {
                continue;
            };
            if !one.fits(bay.size) {
                continue;
            }
            for axis in [Axis::X, Axis::Y] {
                let count = if self.rule.stacks {
                    self.fitting(bay.size.along(axis), one.along(axis))
                        .min(found.count)
                } else {
                    1
                };
                if count == 1 && axis == Axis::Y {
                    continue;
                }
                let length =
                    one.along(axis) * Um::from(count) + self.job.kerf * (Um::from(count) - 1);
                let size = one.with(axis, length);
                let score = self.rule.score(size, bay.size) + chance.up_to(self.rule.noise);
                if best.is_none_or(|best| score > best.score) {
                    *best = Some(Choice {
                        score,
                        bay: index,
                        item,
                        turned,
                        axis,
                        count,
                        size,
                    });
                }
            }
        }
    }

    /// How many of a length fit into a room, with a kerf between neighbours.
    pub(super) fn fitting(&self, room: Um, length: Um) -> u32 {
        let count = (room + self.job.kerf)
            .checked_div(length + self.job.kerf)
            .unwrap_or(0);
        u32::try_from(count).unwrap_or(0)
    }

    fn place(&mut self, bay: Bay, pool: &mut Pool, choice: Choice) {
        let joint = Joint::sawn(choice.axis, self.job);
        let item = pool.items.get(choice.item);
        let block = item.and_then(|item| item.row(choice.turned, joint, choice.count));
        if let Some(block) = block {
            pool.take(choice.item, choice.count);
            let axis = self.first_cut(bay.size, choice.size);
            self.put(bay, block, axis);
        }
    }

    /// Which way what is left of a bay is parted first.
    fn first_cut(&self, bay: Size, taken: Size) -> Axis {
        let rest = |axis: Axis| (bay.along(axis) - taken.along(axis) - self.job.kerf).max(0);
        // Parted along an axis, the rest beyond is as wide as the bay.
        let largest = |axis: Axis| {
            let beyond = rest(axis) * bay.along(axis.other());
            let beside = rest(axis.other()) * taken.along(axis);
            beyond.max(beside)
        };
        let x_is_larger = largest(Axis::X) >= largest(Axis::Y);
        match self.rule.split {
            Split::Along(axis) => axis,
            Split::LargestRest if x_is_larger => Axis::X,
            Split::SmallestRest if !x_is_larger => Axis::X,
            Split::LargestRest | Split::SmallestRest => Axis::Y,
        }
    }

    /// What has been laid below a node. The two that a node is parted into come after it: from the last one upwards
    /// no call waits for another, however deep they lie in one another.
    fn block(self, root: usize) -> Option<Block> {
        let mut blocks: Vec<Option<Block>> = vec![None; self.nodes.len()];
        let joint = |axis| Joint::sawn(axis, self.job);
        for (index, node) in self.nodes.into_iter().enumerate().rev() {
            let block = match node {
                Node::Free => None,
                Node::Block(block) => Some(block),
                Node::Parted {
                    axis,
                    first,
                    second,
                } => {
                    let two = [first, second].map(|node| blocks.get_mut(node)?.take());
                    Block::join(joint(axis), two.into_iter().flatten())
                }
            };
            if let Some(place) = blocks.get_mut(index) {
                *place = block;
            }
        }
        blocks.get_mut(root)?.take()
    }
}
