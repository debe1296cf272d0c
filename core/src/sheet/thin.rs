//! Taking some blocks out of a layout, and filling the holes anew.

use super::block::{Block, Joint, What};
use super::chance::Chance;
use super::fill::fill;
use super::job::{Axis, Job, Um};
use super::pool::{Keeps, Pool};
use super::rebuild::{choose, lay, put_in_order, target};
use super::rule::Rule;
use super::search::{Group, Laid, Layout, shortened};

/// The best layout with some blocks of a few sheets laid again, in the holes that they leave or elsewhere; the
/// last sheet is to become shorter.
pub(super) fn refilled(
    job: &Job,
    group: &Group,
    best: &Layout,
    rule: &Rule,
    chance: &mut Chance,
) -> Option<Layout> {
    let chosen = choose(best, chance);
    let last = best.laid.len().saturating_sub(1);
    let grain = job.kinds.get(best.laid.get(*chosen.first()?)?.kind)?.grain;
    let limit = target(group, best, chance).max(1);
    let share = chance.pick(&[0, 1, 3, 8, 15, 30])?;
    let keeps = Keeps {
        waste_per_mille: 20,
        percent: chance.pick(&[0, 0, 50])?,
    };
    let mut pool = Pool::of_parts(job, &[], grain);
    let mut thinned = Vec::new();
    for index in &chosen {
        let laid = best.laid.get(*index)?;
        let kind = job.kinds.get(laid.kind)?;
        if kind.grain != grain || !job.lifts(kind.size, kind) {
            return None;
        }
        let limit = if *index == last {
            limit
        } else {
            kind.usable().x
        };
        let rest = thin(
            job,
            laid.block.clone(),
            share,
            limit,
            &keeps,
            &mut pool,
            chance,
        );
        thinned.push((laid.kind, rest, limit));
    }
    let mut laid = put_back(job, group, thinned, pool, rule, chance)?;
    let kept = best.laid.iter().enumerate();
    laid.extend(
        kept.filter(|(index, _)| !chosen.contains(index))
            .map(|(_, laid)| laid.clone()),
    );
    Some(Layout::new(job, laid))
}

/// Sheets on which something may lie, each up to a length first, filled with what a pool holds; and what does not
/// go on them, on others.
pub(super) fn put_back(
    job: &Job,
    group: &Group,
    sheets: Vec<(usize, Option<Block>, Um)>,
    mut pool: Pool,
    rule: &Rule,
    chance: &mut Chance,
) -> Option<Vec<Laid>> {
    put_in_order(&mut pool, rule, chance);
    let mut laid: Vec<Laid> = Vec::new();
    for (index, rest, limit) in sheets {
        let kind = job.kinds.get(index)?;
        let usable = kind.usable();
        let near = fill(job, shortened(usable, limit), rest, &mut pool, rule, chance);
        let used = near.as_ref().map_or(-job.kerf, |near| near.size.x);
        let beyond = usable.with(Axis::X, usable.x - used - job.kerf);
        let far = if limit < usable.x && beyond.x > 0 {
            fill(job, beyond, None, &mut pool, rule, chance)
        } else {
            None
        };
        let joint = Joint::sawn(Axis::X, job);
        let block = Block::join(joint, [near, far].into_iter().flatten());
        laid.extend(block.map(|block| Laid { kind: index, block }));
    }
    laid.extend(lay(job, group, pool, &[], rule, None, chance)?.laid);
    Some(laid)
}

/// Takes blocks out until so many per cent of the wood are gone and the rest is no longer than a limit.
pub(super) fn thin(
    job: &Job,
    block: Block,
    percent: Um,
    limit: Um,
    keeps: &Keeps,
    pool: &mut Pool,
    chance: &mut Chance,
) -> Option<Block> {
    let most = block.wood() / 100 * percent;
    let mut gone = 0;
    let mut left = Some(block);
    while let Some(block) = left {
        if gone > most && block.size.x <= limit {
            return Some(block);
        }
        let (rest, out) = without_one(block, chance);
        gone += out.wood();
        pool.add(job, out, keeps, chance);
        left = rest;
    }
    None
}

/// The block without one of those in it.
fn without_one(block: Block, chance: &mut Chance) -> (Option<Block>, Block) {
    const WHOLE: usize = 20;
    match block.what {
        What::Join { joint, mut blocks } => {
            let one = blocks.swap_remove(chance.below(blocks.len()));
            let (rest, out) = if chance.percent(WHOLE) {
                (None, one)
            } else {
                without_one(one, chance)
            };
            blocks.extend(rest);
            (Block::join(joint, blocks), out)
        }
        What::Part { .. } => (None, block),
    }
}
