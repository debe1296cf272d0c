//! Whole strips: each as full as a knapsack makes it.

use super::block::Joint;
use super::chance::Chance;
use super::fill::{Bay, Filling};
use super::job::{Axis, Um};
use super::pool::Pool;

/// Fills the last bay with strips along the rule's axis; what stays free beside and beyond is left open.
pub(super) fn fill_with_rows(filling: &mut Filling<'_>, pool: &mut Pool, chance: &mut Chance) {
    let Some(axis) = filling.rule.strips else {
        return;
    };
    let across = axis.other();
    let Some(mut rest) = filling.take_last() else {
        return;
    };
    let mut open = Vec::new();
    while let Some(width) = width_of_strip(filling, pool, rest, axis, chance) {
        let length = rest.size.along(axis);
        let columns = columns(filling, pool, axis, width, length);
        let chosen = fullest(&columns, length, filling.job.kerf);
        let widest = chosen.iter().map(|column| column.width).max();
        let Some(widest) = widest else { break };
        let (mut strip, next) = filling.part(rest, across, widest);
        for (place, column) in chosen.iter().enumerate() {
            let Some(item) = pool.items.get(column.item) else {
                continue;
            };
            let Some(block) = item.row(
                column.turned,
                Joint::sawn(across, filling.job),
                column.count,
            ) else {
                continue;
            };
            let (bay, beyond) = filling.part(strip, axis, column.length);
            filling.put(bay, block, across);
            match beyond {
                Some(beyond) => strip = beyond,
                None => {
                    debug_assert_eq!(place + 1, chosen.len());
                    strip.size = strip.size.with(axis, 0);
                }
            }
        }
        if strip.size.along(axis) > 0 {
            filling.give_back(strip);
        }
        take(pool, &chosen);
        match next {
            Some(next) => rest = next,
            None => return,
        }
    }
    open.push(rest);
    open.into_iter().for_each(|bay| filling.give_back(bay));
}

/// Equal blocks beside each other across a strip.
#[derive(Clone, Copy, Debug)]
struct Column {
    item: usize,
    turned: bool,
    count: u32,
    /// How many such columns there are.
    times: u32,
    /// Along the strip.
    length: Um,
    /// Across it, kerfs included.
    width: Um,
    value: Um,
}

fn width_of_strip(
    filling: &Filling<'_>,
    pool: &Pool,
    rest: Bay,
    axis: Axis,
    chance: &mut Chance,
) -> Option<Um> {
    let mut widths = pool.items.iter().flat_map(|item| {
        let lying = [false, true]
            .into_iter()
            .filter_map(|turned| item.lying(turned));
        lying
            .filter(|size| size.fits(rest.size))
            .map(|size| size.along(axis.other()))
    });
    if filling.rule.widest_first {
        return widths.max();
    }
    let count = widths.clone().count();
    widths.nth(chance.below(count))
}

fn columns(filling: &Filling<'_>, pool: &Pool, axis: Axis, width: Um, length: Um) -> Vec<Column> {
    let mut columns = Vec::new();
    for (index, item) in pool.items.iter().enumerate() {
        for turned in [false, true] {
            let Some(size) = item.lying(turned) else {
                continue;
            };
            let (along, across) = (size.along(axis), size.along(axis.other()));
            if along > length || across > width {
                continue;
            }
            let count = filling.fitting(width, across).min(item.count).max(1);
            let wood = across * Um::from(count);
            if wood * 100 < width * filling.rule.filled {
                continue;
            }
            columns.push(Column {
                item: index,
                turned,
                count,
                times: item.count / count,
                length: along,
                width: wood + filling.job.kerf * (Um::from(count) - 1),
                // In tenths of a square centimetre, far from any overflow.
                value: along / 100 * (wood / 100),
            });
        }
    }
    columns
}

/// What is known of one length of a strip: how long exactly, what it is worth, and how it came about.
#[derive(Clone, Copy, Debug)]
struct Reached {
    length: Um,
    value: Um,
    /// The last column and what was before it, in the log.
    log: usize,
}

/// Lengths are told apart as finely as this share of a strip.
const CELLS: Um = 256;

/// The columns that make most of a strip: a knapsack over the lengths that can be reached, one for each cell.
fn fullest(columns: &[Column], room: Um, kerf: Um) -> Vec<Column> {
    const START: usize = usize::MAX;
    let room = room + kerf;
    let mut log: Vec<(usize, usize)> = Vec::new();
    let mut cells: Vec<Option<Reached>> = vec![None; CELLS as usize + 1];
    if let Some(first) = cells.first_mut() {
        *first = Some(Reached {
            length: 0,
            value: 0,
            log: START,
        });
    }
    for (index, column) in columns.iter().enumerate() {
        // An item that may turn has two columns; the second takes what the first has left, in `no_more_than`.
        for _ in 0..column.times {
            let mut changed = false;
            for cell in (0..cells.len()).rev() {
                let Some(before) = cells.get(cell).copied().flatten() else {
                    continue;
                };
                let length = before.length + column.length + kerf;
                if length > room || !no_more_than(columns, &log, before.log, column) {
                    continue;
                }
                let value = before.value + column.value;
                let place = (length * CELLS).checked_div(room).unwrap_or(0) as usize;
                let Some(there) = cells.get_mut(place) else {
                    continue;
                };
                let better = there.is_none_or(|there| {
                    value > there.value || (value == there.value && length < there.length)
                });
                if better {
                    log.push((index, before.log));
                    *there = Some(Reached {
                        length,
                        value,
                        log: log.len() - 1,
                    });
                    changed = true;
                }
            }
            if !changed {
                break;
            }
        }
    }
    let best = cells.iter().flatten().max_by_key(|reached| reached.value);
    let mut chosen = Vec::new();
    let mut at = best.map_or(START, |best| best.log);
    while let Some((column, before)) = log.get(at) {
        chosen.extend(columns.get(*column).copied());
        at = *before;
    }
    chosen
}

/// Whether one more column leaves no item used more often than there are of it.
fn no_more_than(
    columns: &[Column],
    log: &[(usize, usize)],
    mut at: usize,
    column: &Column,
) -> bool {
    let all = column.times * column.count;
    let mut used = column.count;
    while let Some((index, before)) = log.get(at) {
        let same = columns
            .get(*index)
            .filter(|other| other.item == column.item);
        used += same.map_or(0, |other| other.count);
        at = *before;
    }
    used <= all
}

/// Takes what was chosen from the pool, later items first, since an item that is used up is taken out.
fn take(pool: &mut Pool, chosen: &[Column]) {
    for index in (0..pool.items.len()).rev() {
        let used = chosen
            .iter()
            .filter(|column| column.item == index)
            .map(|column| column.count)
            .sum();
        if used > 0 {
            pool.take(index, used);
        }
    }
}
