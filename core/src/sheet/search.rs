//! The search: rounds that each try one layout, and keep it if it is better.
//!
//! What a round does follows from the job, its number and the best layout so far, so that a search can be cut
//! into slices and goes on as if it had never stopped.

use super::block::Block;
use super::bound::{Bound, bound};
use super::chance::Chance;
use super::cuts;
use super::job::{Axis, Job, Kind, Size, Um};
use super::pool::Pool;
use super::rebuild;
use super::region;
use super::rule::KNOWN;
use super::sequence;
use super::written::DEEPEST;

/// A sheet and what is cut from it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Laid {
    pub(super) kind: usize,
    pub(super) block: Block,
}

/// What makes one layout better than another; the first difference decides, less is better.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) struct Wood {
    /// Sheets that would have to be bought beyond the quantities given.
    pub(crate) short: u32,
    /// Price of the whole sheets, where each has one, in thousandths; their number otherwise.
    pub(crate) cost: Um,
    /// Whole sheets.
    pub(crate) wholes: u32,
    /// Their area, which matters where they are of several sizes.
    pub(crate) area: Um,
    /// Length used of the last one.
    pub(crate) used: Um,
    /// Sheets and off-cuts together.
    pub(crate) sheets: u32,
}

/// A layout of all parts of one stock.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    pub(super) laid: Vec<Laid>,
    pub(super) wood: Wood,
    /// Settings of the fence.
    pub(super) settings: u32,
}

impl Layout {
    /// The layout with its last sheet last, and without settings counted.
    pub(super) fn new(job: &Job, mut laid: Vec<Laid>) -> Self {
        let is_offcut = |laid: &Laid| kind(job, laid).is_none_or(|kind| kind.offcut);
        // The last sheet is the one that least is used of; off-cuts come before all others.
        laid = crate::order::in_order(laid, |one, other| {
            let rank = |laid: &Laid| (!is_offcut(laid), laid.kind, -laid.block.size.x);
            rank(one).cmp(&rank(other))
        });
        let wholes: Vec<usize> = (0..laid.len())
            .filter(|index| laid.get(*index).is_some_and(|laid| !is_offcut(laid)))
            .collect();
        let least = wholes
            .iter()
            .copied()
            // Of equals the last one, so that the same layout always comes out in the same order.
            .min_by_key(|index| {
                (
                    laid.get(*index).map_or(0, |laid| laid.block.size.x),
                    usize::MAX - index,
                )
            });
        if let Some(least) = least {
            let last = laid.remove(least);
            laid.push(last);
        }
        let wood = wood(job, &laid);
        Self {
            laid,
            wood,
            settings: u32::MAX,
        }
    }

    fn count_settings(&mut self, job: &Job) {
        self.laid = core::mem::take(&mut self.laid)
            .into_iter()
            .map(|laid| Laid {
                block: cuts::tidy(laid.block),
                ..laid
            })
            .collect();
        let of_sheet = |laid: &Laid| {
            let kind = kind(job, laid)?;
            let cutting = cuts::cutting(job, kind, &laid.block);
            Some(sequence::settings(&sequence::sequence(
                &cutting, kind.grain,
            )))
        };
        self.settings = self.laid.iter().filter_map(of_sheet).sum();
    }
}

pub(super) fn kind<'a>(job: &'a Job, laid: &Laid) -> Option<&'a Kind> {
    job.kinds.get(laid.kind)
}

fn wood(job: &Job, laid: &[Laid]) -> Wood {
    let mut wood = Wood {
        sheets: laid.len() as u32,
        ..Wood::default()
    };
    let group = laid
        .first()
        .and_then(|laid| kind(job, laid))
        .map(|kind| kind.group);
    let own = || {
        job.kinds
            .iter()
            .filter(|kind| Some(kind.group) == group && !kind.offcut)
    };
    let priced = own().all(|kind| kind.price.is_some());
    let mut used_of_each = vec![0_u32; job.kinds.len()];
    for laid in laid {
        if let Some(count) = used_of_each.get_mut(laid.kind) {
            *count += 1;
        }
        wood.used = laid.block.size.x;
    }
    for (kind, used) in job.kinds.iter().zip(used_of_each) {
        wood.short += kind
            .quantity
            .map_or(0, |quantity| used.saturating_sub(quantity));
        if !kind.offcut {
            let price = if priced { thousandths(kind.price) } else { 1 };
            wood.cost += price * Um::from(used);
            wood.wholes += used;
            // In square millimetres: a thousand sheets of the largest size stay far from any overflow.
            wood.area += kind.size.area() / 1_000_000 * Um::from(used);
        }
    }
    wood
}

#[expect(
    clippy::cast_possible_truncation,
    reason = "within its limit, and a float cast saturates"
)]
fn thousandths(price: Option<f64>) -> Um {
    (price.unwrap_or_default() * 1000.0).round() as Um
}

/// How many rounds of a hundred are spent on many small changes.
const SHAKEN: usize = 40;
/// Changes tried in such a round.
const CHANGES: u32 = 4000;
/// Pieces that are laid anew in one round, at most, over all its steps.
const PIECES_IN_ROUND: u32 = 2400;
const MOST_STEPS: u32 = 12;
/// How many rounds of a hundred lay a region in layers, where all pieces differ.
const LAYERED: usize = 80;
/// Regions in such a round.
const REGIONS: u32 = 3;

/// The search for all parts of one stock.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub(super) number: usize,
    /// How many of each part of the job are to be laid; none of other stocks.
    pub(super) counts: Vec<u32>,
    pub(super) best: Option<Layout>,
    /// Where all sheets are of one kind.
    pub(super) bound: Option<Bound>,
}

impl Group {
    fn new(job: &Job, number: usize) -> Self {
        let counts: Vec<u32> = job
            .parts
            .iter()
            .map(|part| if part.group == number { part.count } else { 0 })
            .collect();
        let mut kinds = job.kinds.iter().filter(|kind| kind.group == number);
        let only = kinds.next().filter(|_| kinds.next().is_none());
        let pieces = job
            .parts
            .iter()
            .zip(counts.clone())
            .filter(|(_, count)| *count > 0);
        let bound = only.map(|kind| bound(job, kind, &pieces));
        Self {
            number,
            counts,
            best: None,
            bound,
        }
    }

    pub(super) fn is_proven(&self) -> bool {
        self.best
            .as_ref()
            .zip(self.bound)
            .is_some_and(|(best, bound)| {
                best.wood.short == 0
                    && best.wood.sheets == bound.sheets
                    && best.wood.used <= bound.used
            })
    }

    /// Puts a layout in place of the best one, unless it is worse.
    pub(super) fn offer(&mut self, job: &Job, mut layout: Layout) {
        let Some(best) = &self.best else {
            layout.count_settings(job);
            self.best = Some(layout);
            return;
        };
        let is_deep = layout.laid.iter().any(|laid| laid.block.depth() > DEEPEST);
        if layout.wood > best.wood || is_deep {
            return;
        }
        layout.count_settings(job);
        if (layout.wood, layout.settings) <= (best.wood, best.settings) {
            self.best = Some(layout);
        }
    }

    fn round(&mut self, job: &Job, round: u32) {
        let mut chance = Chance::of_round(round);
        match self.best.clone() {
            Some(best) if round >= KNOWN => {
                self.walk(job, best, &mut chance);
                self.layer(job, &mut chance);
            }
            _ => {
                if let Some(layout) = rebuild::anew(job, self, round, &mut chance) {
                    self.offer(job, layout);
                }
            }
        }
    }

    /// A few layouts, each made from the one before, which may be a little worse than the best.
    fn walk(&mut self, job: &Job, best: Layout, chance: &mut Chance) {
        // The more pieces, the longer a step takes; a round is to stay short.
        let pieces: u32 = self.counts.iter().sum();
        let steps = Um::from((PIECES_IN_ROUND / pieces.max(1)).clamp(1, MOST_STEPS));
        if chance.percent(SHAKEN) {
            let heat = chance.pick(&[0, 2_000, 20_000, 100_000]).unwrap_or(0) * 32;
            if let Some(layout) = super::shake::shaken(job, &best, CHANGES, heat, chance) {
                self.offer(job, layout);
                return;
            }
        }
        let slack = chance.pick(&[0, 0, 2, 5, 20]).unwrap_or(0);
        let mut at = best;
        for step in 0..steps {
            let Some(layout) = rebuild::from(job, self, &at, chance) else {
                continue;
            };
            let used =
                layout.wood.used - at.wood.used.max(1000) * slack * (steps - step) / steps / 1000;
            let eased = Wood {
                used,
                ..layout.wood
            };
            if eased <= at.wood {
                self.offer(job, layout.clone());
                at = layout;
            }
        }
    }

    /// Regions of the best layout laid in layers, one after another. That takes longer than all else in a round, and
    /// does little where many pieces are alike: so the more they differ, the more rounds do it.
    fn layer(&mut self, job: &Job, chance: &mut Chance) {
        let pieces: u32 = self.counts.iter().sum();
        let different = self.counts.iter().filter(|count| **count > 0).count();
        let share = (LAYERED * different).checked_div(pieces as usize);
        if !chance.percent(share.unwrap_or(0)) {
            return;
        }
        for _ in 0..REGIONS {
            let best = self.best.as_ref();
            if let Some(layout) = best.and_then(|best| region::layered(job, self, best, chance)) {
                self.offer(job, layout);
            }
        }
    }

    /// Everything that is to be laid, on sheets of this grain.
    pub(super) fn pool(&self, job: &Job, grain: super::job::Grain) -> Pool {
        Pool::of_parts(job, &self.counts, grain)
    }
}

/// A search that can be continued.
#[derive(Clone, Debug)]
pub(crate) struct Search<'a> {
    pub(super) job: &'a Job,
    pub(super) groups: Vec<Group>,
    rounds: u32,
}

impl<'a> Search<'a> {
    /// A search that has not begun.
    pub(crate) fn new(job: &'a Job) -> Self {
        let last = job.kinds.iter().map(|kind| kind.group).max();
        let groups = (0..=last.unwrap_or(0)).map(|number| Group::new(job, number));
        Self {
            job,
            groups: groups
                .filter(|group| group.counts.iter().any(|count| *count > 0))
                .collect(),
            rounds: 0,
        }
    }

    /// The same, after so many rounds.
    pub(crate) fn after(self, rounds: u32) -> Self {
        Self { rounds, ..self }
    }

    /// One round more.
    pub(crate) fn step(&mut self) {
        for group in &mut self.groups {
            if self.rounds < KNOWN || !group.is_proven() {
                group.round(self.job, self.rounds);
            }
        }
        self.rounds = self.rounds.saturating_add(1);
    }

    /// Up to so many rounds more; at least one where there is no layout yet. Once it is proven that no layout
    /// uses less wood, only the known rules are still tried, for fewer settings of the fence.
    pub(crate) fn run(&mut self, rounds: u32) {
        let has_none = self.groups.iter().any(|group| group.best.is_none());
        for _ in 0..rounds.max(u32::from(has_none)) {
            if self.is_done() {
                break;
            }
            self.step();
        }
    }

    /// Whether another round could change nothing.
    pub(crate) fn is_done(&self) -> bool {
        self.rounds >= KNOWN && self.is_proven()
    }

    /// Rounds made, those of earlier slices included.
    pub(super) fn rounds(&self) -> u32 {
        self.rounds
    }

    pub(crate) fn is_proven(&self) -> bool {
        self.groups.iter().all(Group::is_proven)
    }

    /// Every sheet with its layout, stock after stock.
    pub(super) fn laid(&self) -> impl Iterator<Item = &Laid> {
        self.groups
            .iter()
            .filter_map(|group| group.best.as_ref())
            .flat_map(|best| &best.laid)
    }
}

/// The sheet that may be used along its length up to a limit.
pub(super) fn shortened(size: Size, limit: Um) -> Size {
    size.with(Axis::X, size.x.min(limit))
}
