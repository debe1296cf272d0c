//! Layouts as binary trees in which a block can change its place for next to nothing.

use super::block::{Block, Joint, What};
use super::chance::Chance;
use super::job::{Axis, Grain, Job, Size, Um};
use super::search::{Laid, Layout, kind};

/// No node.
const NONE: usize = usize::MAX;

#[derive(Clone, Copy, Debug)]
struct Node {
    parent: usize,
    size: Size,
    what: Kind,
}

#[derive(Clone, Copy, Debug)]
enum Kind {
    Leaf {
        part: usize,
        turned: bool,
    },
    Join {
        axis: Axis,
        first: usize,
        second: usize,
    },
}

/// All sheets as binary trees.
#[derive(Clone, Debug)]
pub(super) struct Forest<'a> {
    job: &'a Job,
    grain: Grain,
    nodes: Vec<Node>,
    /// Root and room of each sheet.
    roots: Vec<(usize, Size)>,
}

/// What was changed, to be taken back.
#[derive(Clone, Copy, Debug)]
pub(super) enum Change {
    Exchanged(usize, usize),
    Turned(usize),
    Flipped(usize),
    /// A node, its brother of before, the axis of their joint, and whether it came first.
    Moved {
        node: usize,
        beside: usize,
        axis: Axis,
        first: bool,
    },
}

impl<'a> Forest<'a> {
    pub(super) fn new(job: &'a Job, layout: &Layout) -> Option<Self> {
        let first = kind(job, layout.laid.first()?)?;
        let mut forest = Self {
            job,
            grain: first.grain,
            nodes: Vec::new(),
            roots: Vec::new(),
        };
        for laid in &layout.laid {
            let kind = kind(job, laid)?;
            if kind.grain != first.grain || !job.lifts(kind.size, kind) {
                return None;
            }
            let root = forest.add(&laid.block, NONE)?;
            forest.roots.push((root, kind.usable()));
        }
        Some(forest)
    }

    fn push(&mut self, parent: usize, size: Size, what: Kind) -> usize {
        self.nodes.push(Node { parent, size, what });
        self.nodes.len() - 1
    }

    fn add(&mut self, block: &Block, parent: usize) -> Option<usize> {
        match &block.what {
            What::Part { part, turned } => {
                let what = Kind::Leaf {
                    part: *part,
                    turned: *turned,
                };
                Some(self.push(parent, block.size, what))
            }
            What::Join { joint, blocks } => self.add_all(joint.axis, blocks, parent),
        }
    }

    /// Halves until one is left, so that ways to the root stay short.
    fn add_all(&mut self, axis: Axis, blocks: &[Block], parent: usize) -> Option<usize> {
        if let [one] = blocks {
            return self.add(one, parent);
        }
        let (first, second) = blocks.split_at_checked(blocks.len() / 2)?;
        let node = self.push(
            parent,
            Size::default(),
            Kind::Join {
                axis,
                first: NONE,
                second: NONE,
            },
        );
        let first = self.add_all(axis, first, node)?;
        let second = self.add_all(axis, second, node)?;
        self.set(
            node,
            Kind::Join {
                axis,
                first,
                second,
            },
        );
        self.measure(node);
        Some(node)
    }

    fn get(&self, node: usize) -> Option<Node> {
        self.nodes.get(node).copied()
    }

    fn set(&mut self, node: usize, what: Kind) {
        if let Some(node) = self.nodes.get_mut(node) {
            node.what = what;
        }
    }

    fn set_parent(&mut self, node: usize, parent: usize) {
        if let Some(node) = self.nodes.get_mut(node) {
            node.parent = parent;
        }
    }

    /// Measures one node; says whether that changed anything.
    fn measure(&mut self, index: usize) -> bool {
        let Some(node) = self.get(index) else {
            return false;
        };
        let size = match node.what {
            Kind::Leaf { part, turned } => {
                let part = self.job.parts.get(part);
                part.and_then(|part| part.on(self.grain, turned))
                    .unwrap_or(node.size)
            }
            Kind::Join {
                axis,
                first,
                second,
            } => {
                let [first, second] = [first, second]
                    .map(|child| self.get(child).map(|node| node.size).unwrap_or_default());
                let across = axis.other();
                Size::default()
                    .with(axis, first.along(axis) + second.along(axis) + self.job.kerf)
                    .with(across, first.along(across).max(second.along(across)))
            }
        };
        if let Some(node) = self.nodes.get_mut(index) {
            node.size = size;
        }
        size != node.size
    }

    /// Measures a node and all it is in, as far as anything changes.
    fn measure_up(&mut self, mut node: usize) {
        while self.measure(node) {
            match self.get(node) {
                Some(Node { parent, .. }) => node = parent,
                None => return,
            }
        }
    }

    pub(super) fn fits(&self) -> bool {
        self.roots
            .iter()
            .all(|(root, room)| self.get(*root).is_some_and(|root| root.size.fits(*room)))
    }

    /// Length of the last sheet first, its width as a little help.
    pub(super) fn cost(&self) -> Um {
        let sizes = self
            .roots
            .iter()
            .filter_map(|(root, _)| self.get(*root))
            .map(|root| root.size);
        let all: Um = sizes.clone().map(|size| size.x * 32 + size.y).sum();
        sizes
            .clone()
            .next_back()
            .map_or(0, |last| all + last.x * 32)
    }

    pub(super) fn change(&mut self, chance: &mut Chance) -> Option<Change> {
        let node = chance.below(self.nodes.len());
        match chance.below(8) {
            0 => self.turn(node),
            1 => self.flip(node),
            2..=4 => self.exchange(node, chance.below(self.nodes.len())),
            _ => {
                let axis = if chance.percent(50) { Axis::X } else { Axis::Y };
                let first = chance.percent(50);
                self.move_beside(node, chance.below(self.nodes.len()), axis, first)
            }
        }
    }

    pub(super) fn take_back(&mut self, change: Change) {
        match change {
            Change::Exchanged(one, other) => drop(self.exchange(one, other)),
            Change::Turned(leaf) => drop(self.turn(leaf)),
            Change::Flipped(join) => drop(self.flip(join)),
            Change::Moved {
                node,
                beside,
                axis,
                first,
            } => drop(self.move_beside(node, beside, axis, first)),
        }
    }

    fn turn(&mut self, leaf: usize) -> Option<Change> {
        let Kind::Leaf { part, turned } = self.get(leaf)?.what else {
            return None;
        };
        self.job.parts.get(part)?.on(self.grain, !turned)?;
        self.set(
            leaf,
            Kind::Leaf {
                part,
                turned: !turned,
            },
        );
        self.measure_up(leaf);
        Some(Change::Turned(leaf))
    }

    fn flip(&mut self, join: usize) -> Option<Change> {
        let Kind::Join {
            axis,
            first,
            second,
        } = self.get(join)?.what
        else {
            return None;
        };
        self.set(
            join,
            Kind::Join {
                axis: axis.other(),
                first,
                second,
            },
        );
        self.measure_up(join);
        Some(Change::Flipped(join))
    }

    /// Whether one is in the other, or the same.
    fn is_within(&self, mut inner: usize, outer: usize) -> bool {
        while inner != NONE {
            if inner == outer {
                return true;
            }
            inner = self.get(inner).map_or(NONE, |node| node.parent);
        }
        false
    }

    fn replace_child(&mut self, parent: usize, old: usize, new: usize) {
        self.set_parent(new, parent);
        if parent == NONE {
            if let Some(root) = self.roots.iter_mut().find(|(root, _)| *root == old) {
                root.0 = new;
            }
            return;
        }
        if let Some(Kind::Join { first, second, .. }) =
            self.nodes.get_mut(parent).map(|node| &mut node.what)
        {
            if *first == old {
                *first = new;
            } else if *second == old {
                *second = new;
            }
        }
    }

    /// Two blocks change places.
    fn exchange(&mut self, one: usize, other: usize) -> Option<Change> {
        if self.is_within(one, other) || self.is_within(other, one) {
            return None;
        }
        let parents = [one, other].map(|node| self.get(node).map(|node| node.parent));
        let [Some(first), Some(second)] = parents else {
            return None;
        };
        // Under the same parent nothing would change.
        if first == second && first != NONE {
            return None;
        }
        self.replace_child(first, one, NONE - 1);
        self.replace_child(second, other, one);
        self.replace_child(first, NONE - 1, other);
        self.measure_up(first);
        self.measure_up(second);
        Some(Change::Exchanged(one, other))
    }

    /// A block leaves its place, and is joined to another one.
    fn move_beside(
        &mut self,
        node: usize,
        beside: usize,
        axis: Axis,
        first: bool,
    ) -> Option<Change> {
        let joint = self.get(node)?.parent;
        if joint == beside || self.is_within(beside, node) {
            return None;
        }
        let Node {
            parent: above,
            what:
                Kind::Join {
                    axis: old_axis,
                    first: one,
                    second: two,
                },
            ..
        } = self.get(joint)?
        else {
            return None;
        };
        let was_first = one == node;
        let brother = if was_first { two } else { one };
        self.replace_child(above, joint, brother);
        let new_above = self.get(beside)?.parent;
        self.replace_child(new_above, beside, joint);
        let (one, two) = if first {
            (node, beside)
        } else {
            (beside, node)
        };
        self.set(
            joint,
            Kind::Join {
                axis,
                first: one,
                second: two,
            },
        );
        self.set_parent(beside, joint);
        self.set_parent(node, joint);
        self.measure_up(above);
        self.measure(joint);
        // The joint may measure the same as before at another place: go on from above it.
        self.measure_up(new_above);
        Some(Change::Moved {
            node,
            beside: brother,
            axis: old_axis,
            first: was_first,
        })
    }

    fn block(&self, index: usize) -> Option<Block> {
        let node = self.get(index)?;
        match node.what {
            Kind::Leaf { part, turned } => Block::part(self.job, part, turned, self.grain),
            Kind::Join {
                axis,
                first,
                second,
            } => {
                let blocks = [self.block(first)?, self.block(second)?];
                Block::join(Joint::sawn(axis, self.job), blocks)
            }
        }
    }

    pub(super) fn laid(&self, layout: &Layout) -> Vec<Laid> {
        let kinds = layout.laid.iter().map(|laid| laid.kind);
        let sheets = kinds.zip(&self.roots);
        sheets
            .filter_map(|(kind, (root, _))| {
                Some(Laid {
                    kind,
                    block: self.block(*root)?,
                })
            })
            .collect()
    }
}
