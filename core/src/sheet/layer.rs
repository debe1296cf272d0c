//! A room filled layer by layer: blocks of nearly the same width, end to end from edge to edge of what is left,
//! along one axis or the other.
//!
//! Layers of blocks are known from Wei, Tian, Zhu and Lim, "A block-based layer building approach for the 2D
//! guillotine strip packing problem", European Journal of Operational Research 239 (2014); cited from memory.

use super::block::{Block, Joint};
use super::chance::Chance;
use super::job::{Axis, Job, Size, Um};
use super::pool::Pool;
use super::yard::{Pieces, Yard};

/// Blocks to choose from, at most.
const MOST_BLOCKS: usize = 1600;

/// How layers are built.
#[derive(Clone, Copy, Debug)]
pub(super) struct Manner {
    /// Blocks to choose from, for each piece.
    blocks: usize,
    /// Most waste in a block.
    waste_per_mille: Um,
    /// How much narrower than its layer a block may be.
    narrower_per_mille: Um,
    /// Layers from which the best is chosen.
    attempts: usize,
    /// Steps that are spent on each.
    steps: usize,
    /// Least share of a layer that its parts take.
    filled_per_mille: Um,
    /// How much more a part is worth that would not fit elsewhere.
    bonus_per_mille: Um,
    /// How long `elsewhere` is.
    elsewhere: Um,
}

impl Manner {
    /// A manner drawn by chance.
    pub(super) fn drawn(elsewhere: Um, chance: &mut Chance) -> Option<Self> {
        Some(Self {
            blocks: chance.pick(&[6, 12, 24])?,
            waste_per_mille: chance.pick(&[0, 2, 4, 8, 16, 30])?,
            narrower_per_mille: chance.pick(&[5, 10, 20])?,
            attempts: chance.pick(&[10, 30, 60])?,
            steps: chance.pick(&[100, 300, 1000])?,
            filled_per_mille: chance.pick(&[800, 900, 950])?,
            bonus_per_mille: chance.pick(&[100, 300, 1000, 3000])?,
            elsewhere,
        })
    }
}

/// Layers of what a pool holds, as long as they are full enough.
pub(super) fn layers(
    job: &Job,
    room: Size,
    pool: &mut Pool,
    manner: Manner,
    chance: &mut Chance,
) -> Option<Block> {
    let mut yard = Yard::new(job, room, pool, |item, wood| {
        let lying = [item.lying(false), item.lying(true)];
        let mut lengths = lying.into_iter().flatten().map(|size| size.x);
        if lengths.any(|length| length <= manner.elsewhere) {
            wood
        } else {
            wood + wood / 1000 * manner.bonus_per_mille
        }
    });
    let most = MOST_BLOCKS.min(yard.made.len() * manner.blocks);
    let mut rest = room;
    let mut used = Pieces::default();
    let mut layers: Vec<(Axis, Block)> = Vec::new();
    while !yard.made.is_empty() {
        yard.grow(most, manner.waste_per_mille, chance);
        let found = [Axis::X, Axis::Y].map(|axis| best_layer(&yard, rest, axis, &manner, chance));
        let Some(layer) = found.into_iter().flatten().max_by_key(|layer| layer.value) else {
            break;
        };
        let axis = layer.axis;
        let blocks = layer.blocks.iter().map(|index| yard.block(*index, pool));
        let blocks = blocks.collect::<Option<Vec<_>>>()?;
        layers.push((axis, Block::join(Joint::sawn(axis.other(), job), blocks)?));
        used = used.with(&layer.pieces);
        yard.use_up(&layer.pieces);
        rest = rest.with(axis, rest.along(axis) - layer.width - job.kerf);
        if rest.along(axis) <= 0 {
            break;
        }
    }
    yard.take_from(pool, &used);
    // Each layer goes all along what comes after it.
    let mut all = None;
    while let Some((axis, block)) = layers.pop() {
        all = Block::join(
            Joint::sawn(axis, job),
            [Some(block), all].into_iter().flatten(),
        );
    }
    all
}

/// A layer: blocks end to end across an axis.
#[derive(Debug)]
struct Layer {
    axis: Axis,
    /// Along the axis.
    width: Um,
    /// For its area.
    value: Um,
    pieces: Pieces,
    blocks: Vec<usize>,
}

fn best_layer(
    yard: &Yard<'_>,
    rest: Size,
    axis: Axis,
    manner: &Manner,
    chance: &mut Chance,
) -> Option<Layer> {
    let mut best: Option<Layer> = None;
    for _ in 0..manner.attempts {
        let first = yard.made.get(chance.below(yard.made.len()))?;
        let width = first.size.along(axis);
        if width > rest.along(axis) {
            continue;
        }
        let least = width - width * manner.narrower_per_mille / 1000;
        let mut filled = Filled::new(yard, axis, yard.as_long(axis, least, width).collect());
        filled.shuffle(chance);
        filled.steps = manner.steps;
        let room = rest.along(axis.other()) + yard.job.kerf;
        filled.go_on(0, room, Chosen::default());
        let area = yard.with_kerf(rest.with(axis, width)) / 100_000;
        let share = |area_of: Um| area_of.checked_div(area).unwrap_or(0);
        let value = share(filled.best.value);
        if share(filled.best.wood) >= manner.filled_per_mille * 100
            && best.as_ref().is_none_or(|best| value > best.value)
        {
            best = Some(Layer {
                axis,
                width,
                value,
                pieces: filled.best.pieces,
                blocks: filled.best_blocks,
            });
        }
    }
    best
}

/// What is chosen for a layer.
#[derive(Clone, Copy, Debug, Default)]
struct Chosen {
    wood: Um,
    value: Um,
    pieces: Pieces,
}

/// The search for blocks that fill a layer from end to end.
struct Filled<'a> {
    yard: &'a Yard<'a>,
    axis: Axis,
    suited: Vec<usize>,
    steps: usize,
    blocks: Vec<usize>,
    best: Chosen,
    best_blocks: Vec<usize>,
}

impl<'a> Filled<'a> {
    fn new(yard: &'a Yard<'a>, axis: Axis, suited: Vec<usize>) -> Self {
        Self {
            yard,
            axis,
            suited,
            steps: 0,
            blocks: Vec::new(),
            best: Chosen::default(),
            best_blocks: Vec::new(),
        }
    }

    fn shuffle(&mut self, chance: &mut Chance) {
        for index in 0..self.suited.len() {
            let other = chance.below(self.suited.len());
            self.suited.swap(index, other);
        }
    }

    /// Tries each suited block after those that are chosen, as long as steps are left.
    fn go_on(&mut self, from: usize, room: Um, chosen: Chosen) {
        if chosen.value > self.best.value {
            self.best = chosen;
            self.best_blocks.clone_from(&self.blocks);
        }
        for place in from..self.suited.len() {
            let found = self.suited.get(place).copied();
            let Some((index, made)) = found.and_then(|at| Some((at, self.yard.made.get(at)?)))
            else {
                continue;
            };
            let length = made.size.along(self.axis.other()) + self.yard.job.kerf;
            if length > room || made.pieces.meet(&chosen.pieces) {
                continue;
            }
            if self.steps == 0 {
                return;
            }
            self.steps -= 1;
            self.blocks.push(index);
            let chosen = Chosen {
                wood: chosen.wood + made.wood,
                value: chosen.value + made.value,
                pieces: chosen.pieces.with(&made.pieces),
            };
            self.go_on(place + 1, room - length, chosen);
            self.blocks.pop();
        }
    }
}
