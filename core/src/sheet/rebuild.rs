//! One round: a layout from nothing, or the best one with some of its sheets taken apart and laid anew.

use super::block::{Block, Joint};
use super::chance::Chance;
use super::fill::fill;
use super::job::{Axis, Job, Kind, Size, Um};
use super::pool::{Keeps, Pool};
use super::rule::Rule;
use super::search::{Group, Laid, Layout, shortened};
use super::thin;
use crate::order::in_order;

/// A layout from nothing, by one of the known rules.
pub(super) fn anew(job: &Job, group: &Group, round: u32, chance: &mut Chance) -> Option<Layout> {
    let rule = Rule::known(round);
    from_nothing(job, group, &rule, chance)
}

fn from_nothing(job: &Job, group: &Group, rule: &Rule, chance: &mut Chance) -> Option<Layout> {
    let supply = supply(job, group, chance);
    let first = job.kinds.get(*supply.first()?)?;
    let mut pool = group.pool(job, first.grain);
    if rule.noise > 0 && chance.percent(60) {
        join_some(job, first, &mut pool, chance);
    }
    lay(job, group, pool, &supply, rule, None, chance)
}

/// The best layout with some of its sheets laid anew.
pub(super) fn from(job: &Job, group: &Group, best: &Layout, chance: &mut Chance) -> Option<Layout> {
    let rule = Rule::drawn(chance);
    if chance.percent(12) {
        return from_nothing(job, group, &rule, chance);
    }
    if chance.percent(70) {
        return thin::refilled(job, group, best, &rule, chance);
    }
    let chosen = choose(best, chance);
    let apart = |index: &usize| chosen.contains(index);
    let again: Vec<&Laid> = chosen
        .iter()
        .filter_map(|index| best.laid.get(*index))
        .collect();
    let kind = job.kinds.get(again.first()?.kind)?;
    let keeps = Keeps {
        waste_per_mille: chance.pick(&[0, 2, 10, 30, 80])?,
        percent: chance.pick(&[0, 50, 80, 95])?,
    };
    let mut pool = Pool::of_parts(job, &[], kind.grain);
    for laid in &again {
        let same_grain = job
            .kinds
            .get(laid.kind)
            .is_some_and(|other| other.grain == kind.grain);
        let keeps = if same_grain {
            keeps
        } else {
            Keeps {
                percent: 0,
                ..keeps
            }
        };
        let blocks = match &laid.block.what {
            // The whole of it would come back as it was.
            super::block::What::Join { blocks, .. } => blocks.clone(),
            super::block::What::Part { .. } => vec![laid.block.clone()],
        };
        for block in blocks {
            pool.add(job, block, &keeps, chance);
        }
    }
    if chance.percent(40) {
        join_some(job, kind, &mut pool, chance);
    }
    let mut kinds: Vec<usize> = again.iter().map(|laid| laid.kind).collect();
    if chance.percent(20) {
        kinds = exchanged(job, group, &kinds, chance);
    }
    let target = target(group, best, chance);
    let mut laid = lay(job, group, pool, &kinds, &rule, Some(target), chance)?.laid;
    let kept = best
        .laid
        .iter()
        .enumerate()
        .filter(|(index, _)| !apart(index));
    laid.extend(kept.map(|(_, laid)| laid.clone()));
    Some(Layout::new(job, laid))
}

/// The last sheet and up to two others.
pub(super) fn choose(best: &Layout, chance: &mut Chance) -> Vec<usize> {
    let last = best.laid.len().saturating_sub(1);
    let mut chosen = Vec::new();
    let others = chance.below(3);
    for _ in 0..others {
        let index = chance.below(best.laid.len());
        if !chosen.contains(&index) && index != last {
            chosen.push(index);
        }
    }
    if chosen.is_empty() || chance.percent(80) {
        chosen.push(last);
    }
    chosen
}

/// A length for the last sheet that would be better: between the least that is possible and what is used.
pub(super) fn target(group: &Group, best: &Layout, chance: &mut Chance) -> Um {
    let least = group
        .bound
        .map_or(best.wood.used / 2, |bound| bound.used)
        .min(best.wood.used);
    let share = chance.pick(&[0, 600, 900, 970, 990, 1000]).unwrap_or(0);
    let target = least + (best.wood.used - least) * share / 1000;
    target.min(best.wood.used - 1)
}

fn join_some(job: &Job, kind: &Kind, pool: &mut Pool, chance: &mut Chance) {
    let waste = chance.pick(&[0, 0, 2, 8, 20]).unwrap_or(0);
    let most = chance.pick(&[4, 16, 64, 200]).unwrap_or(0);
    pool.join_neighbours(job, kind, waste, most, chance);
}

/// The kinds of sheets in an order to use them: off-cuts first, the smallest of them before others.
fn supply(job: &Job, group: &Group, chance: &mut Chance) -> Vec<usize> {
    let own = job
        .kinds
        .iter()
        .enumerate()
        .filter(|(_, kind)| kind.group == group.number);
    let ranked = own.map(|(index, kind)| {
        let rank = if kind.offcut {
            kind.usable().area()
        } else {
            chance.up_to(1000)
        };
        ((!kind.offcut, rank), index)
    });
    in_order(ranked.collect::<Vec<_>>(), |one, other| one.0.cmp(&other.0))
        .into_iter()
        .map(|(_, index)| index)
        .collect()
}

/// Other kinds of whole sheets in place of some.
fn exchanged(job: &Job, group: &Group, kinds: &[usize], chance: &mut Chance) -> Vec<usize> {
    let others = supply(job, group, chance);
    let exchange = |kind: &usize| {
        let other = chance.pick(&others).unwrap_or(*kind);
        if chance.percent(50) { other } else { *kind }
    };
    kinds.iter().map(exchange).collect()
}

/// Lays a pool on sheets: on the kinds given in turn, the last of them up to a length first, and then on as many
/// more as are needed.
pub(super) fn lay(
    job: &Job,
    group: &Group,
    mut pool: Pool,
    kinds: &[usize],
    rule: &Rule,
    last: Option<Um>,
    chance: &mut Chance,
) -> Option<Layout> {
    let mut laid: Vec<Laid> = Vec::new();
    put_in_order(&mut pool, rule, chance);
    let once = last.is_some();
    for (place, index) in kinds.iter().enumerate() {
        let kind = job.kinds.get(*index)?;
        let times = match (once, kind.quantity) {
            (true, _) => 1,
            (false, quantity) => quantity.unwrap_or(u32::MAX),
        };
        for _ in 0..times {
            let limit = last.filter(|_| place + 1 == kinds.len());
            pool = pool.on(job, kind.grain);
            let Some(block) = sheet(job, kind, &mut pool, rule, limit, chance) else {
                break;
            };
            laid.push(Laid {
                kind: *index,
                block,
            });
        }
    }
    while !pool.is_empty() {
        let (index, kind) = largest(job, group, &pool)?;
        pool = pool.on(job, kind.grain);
        let block = sheet(job, kind, &mut pool, rule, None, chance)
            .or_else(|| first_alone(job, kind, &mut pool))?;
        laid.push(Laid { kind: index, block });
    }
    Some(Layout::new(job, laid))
}

pub(super) fn put_in_order(pool: &mut Pool, rule: &Rule, chance: &mut Chance) {
    let items = core::mem::take(&mut pool.items);
    let ranked = items.into_iter().map(|item| {
        let noise = 1000 + chance.up_to(rule.noise / 4);
        (rule.order.of(item.block.size) * noise, item)
    });
    pool.items = in_order(ranked.collect::<Vec<_>>(), |one, other| other.0.cmp(&one.0))
        .into_iter()
        .map(|(_, item)| item)
        .collect();
}

/// The largest whole sheet that something left fits on, or else the largest off-cut.
fn largest<'a>(job: &'a Job, group: &Group, pool: &Pool) -> Option<(usize, &'a Kind)> {
    let fits = |kind: &Kind| {
        let pool = pool.clone().on(job, kind.grain);
        let mut lying = pool
            .items
            .iter()
            .flat_map(|item| [item.lying(false), item.lying(true)]);
        lying.any(|size| size.is_some_and(|size| size.fits(kind.usable())))
    };
    let own = job.kinds.iter().enumerate();
    own.filter(|(_, kind)| kind.group == group.number && fits(kind))
        .max_by_key(|(_, kind)| (kind.quantity.is_none(), !kind.offcut, kind.usable().area()))
}

/// One part by itself, for sheets that nothing else can be made of: broken down by hand it always can be cut.
fn first_alone(job: &Job, kind: &Kind, pool: &mut Pool) -> Option<Block> {
    for index in 0..pool.items.len() {
        let item = pool.items.get(index)?;
        for turned in [false, true] {
            let fits = item
                .lying(turned)
                .is_some_and(|size| size.fits(kind.usable()));
            if fits {
                let block = item.row(turned, Joint::sawn(Axis::X, job), 1)?;
                pool.take(index, 1);
                return Some(block);
            }
        }
    }
    None
}

/// One sheet: up to a length first, and what is beyond with what is left.
pub(super) fn sheet(
    job: &Job,
    kind: &Kind,
    pool: &mut Pool,
    rule: &Rule,
    limit: Option<Um>,
    chance: &mut Chance,
) -> Option<Block> {
    let usable = kind.usable();
    let Some(limit) = limit.filter(|limit| *limit < usable.x && *limit > 0) else {
        return region(job, kind, usable, pool, rule, chance);
    };
    let near = region(job, kind, shortened(usable, limit), pool, rule, chance);
    let Some(near) = near else {
        return region(job, kind, usable, pool, rule, chance);
    };
    let is_rough = !job.lifts(kind.size, kind);
    let gap = match &job.rough {
        Some(rough) if is_rough => rough.gap(),
        _ => job.kerf,
    };
    let rest = usable.with(Axis::X, usable.x - near.size.x - gap);
    let far = if rest.x > 0 {
        region(job, kind, rest, pool, rule, chance)
    } else {
        None
    };
    let joint = Joint {
        axis: Axis::X,
        gap,
        rough: is_rough,
    };
    Block::join(joint, [Some(near), far].into_iter().flatten())
}

/// Fills what a person lifts; anything larger is parted by hand first, and each part filled.
fn region(
    job: &Job,
    kind: &Kind,
    room: Size,
    pool: &mut Pool,
    rule: &Rule,
    chance: &mut Chance,
) -> Option<Block> {
    if job.lifts(kind.size, kind) || job.lifts_with_margins(room, kind) {
        return fill(job, room, None, pool, rule, chance);
    }
    let gap = job.rough.as_ref()?.gap();
    let first = if chance.percent(50) { Axis::X } else { Axis::Y };
    for axis in [first, first.other()] {
        let longest = longest_lifted(job, kind, room, axis);
        if longest <= 0 || longest >= room.along(axis) {
            continue;
        }
        // All of it, or as much as parts the room evenly.
        let even = room.along(axis) / (room.along(axis) / longest + 1);
        let length = if chance.percent(50) { longest } else { even };
        let near = region(job, kind, room.with(axis, length), pool, rule, chance);
        let Some(near) = near else { continue };
        let rest = room.along(axis) - near.size.along(axis) - gap;
        let far = if rest > 0 {
            region(job, kind, room.with(axis, rest), pool, rule, chance)
        } else {
            None
        };
        let joint = Joint {
            axis,
            gap,
            rough: true,
        };
        return Block::join(joint, [Some(near), far].into_iter().flatten());
    }
    None
}

/// How long a piece as broad as the room may be, along an axis, so that a person lifts it; where it is too broad
/// for that, it is parted the other way afterwards.
fn longest_lifted(job: &Job, kind: &Kind, room: Size, axis: Axis) -> Um {
    let Some(rough) = &job.rough else {
        return room.along(axis);
    };
    let around = 2 * rough.around(kind);
    let broad = room.along(axis.other()) + around;
    let by_size = if broad <= rough.widest || broad > rough.longest {
        rough.longest
    } else {
        rough.widest
    };
    let by_mass = match (rough.heaviest, kind.mass) {
        (Some(most), Some(mass)) => whole(most / mass * kind.size.area() as f64 / broad as f64),
        _ => Um::MAX,
    };
    by_size.min(by_mass).min(room.along(axis)) - around
}

#[expect(clippy::cast_possible_truncation, reason = "a float cast saturates")]
fn whole(length: f64) -> Um {
    length.floor() as Um
}
