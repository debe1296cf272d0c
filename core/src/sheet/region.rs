//! A region of a sheet: some neighbours that are taken out, and whose room is laid anew in layers, while all else
//! on the sheet stays.

use super::block::{Block, What};
use super::chance::Chance;
use super::job::{Grain, Job, Size, Um};
use super::layer::{Manner, layers};
use super::pool::{Keeps, Pool};
use super::rebuild::target;
use super::rule::Rule;
use super::search::{Group, Layout, shortened};
use super::thin::{put_back, thin};

/// The best layout with a region of one sheet laid anew, of its own parts and some of the last sheet, which is to
/// become shorter.
pub(super) fn layered(
    job: &Job,
    group: &Group,
    best: &Layout,
    chance: &mut Chance,
) -> Option<Layout> {
    let rule = Rule::drawn(chance);
    let last = best.laid.len().checked_sub(1)?;
    // The last sheet mostly gets shorter where another one takes some of its parts.
    let chosen = if last == 0 || chance.percent(15) {
        last
    } else {
        chance.below(last)
    };
    let grain = job.kinds.get(best.laid.get(chosen)?.kind)?.grain;
    let limit = target(group, best, chance).max(1);
    let manner = Manner::drawn(limit, chance)?;
    let share = chance.pick(&[0, 20, 100])?;
    let pieces = chance.pick(&[6, 12, 25, 50, 100])?;
    let apart = Keeps {
        waste_per_mille: 0,
        percent: 0,
    };
    let mut pool = Pool::of_parts(job, &[], grain);
    let mut sheets = Vec::new();
    if chosen != last {
        let (kind, block, room) = sheet(job, best, last, grain, limit)?;
        let rest = thin(job, block, share, room.x, &apart, &mut pool, chance);
        sheets.push((kind, rest, room.x));
    }
    let limit = if chosen == last { limit } else { Um::MAX };
    let (kind, block, room) = sheet(job, best, chosen, grain, limit)?;
    let block = filled_anew(block, room, pieces, chance, &mut |gone, room, chance| {
        for block in gone {
            pool.add(job, block, &apart, chance);
        }
        layers(job, room, &mut pool, manner, chance)
    });
    if block.as_ref().is_some_and(|block| !block.size.fits(room)) {
        return None;
    }
    // The region's sheet is filled up before the last one takes what is left.
    sheets.insert(0, (kind, block, room.x));
    let mut laid = put_back(job, group, sheets, pool, &rule, chance)?;
    let kept = best.laid.iter().enumerate();
    laid.extend(
        kept.filter(|(index, _)| *index != chosen && *index != last)
            .map(|(_, laid)| laid.clone()),
    );
    Some(Layout::new(job, laid))
}

/// A sheet's kind, what lies on it, and what may be used of it up to a length; `None` where it is of another grain
/// or parted by hand.
fn sheet(
    job: &Job,
    best: &Layout,
    index: usize,
    grain: Grain,
    limit: Um,
) -> Option<(usize, Block, Size)> {
    let laid = best.laid.get(index)?;
    let kind = job.kinds.get(laid.kind)?;
    let is_whole = kind.grain == grain && job.lifts(kind.size, kind);
    is_whole.then(|| {
        (
            laid.kind,
            laid.block.clone(),
            shortened(kind.usable(), limit),
        )
    })
}

/// How often the region is within one of the neighbours, where one of them has enough pieces.
const WITHIN: usize = 75;

/// The layout of a sheet with a region of about so many pieces filled anew. What fills it is given the blocks that
/// were there, and the room, which reaches as far as the sheet's does and may be shorter than they were.
fn filled_anew(
    block: Block,
    room: Size,
    pieces: usize,
    chance: &mut Chance,
    fill: &mut impl FnMut(Vec<Block>, Size, &mut Chance) -> Option<Block>,
) -> Option<Block> {
    let What::Join { joint, mut blocks } = block.what else {
        return fill(vec![block], room, chance);
    };
    let axis = joint.axis;
    let large = blocks
        .iter()
        .enumerate()
        .filter(|(_, block)| block.pieces() > pieces);
    let one = chance.below(large.clone().count());
    let within = large.map(|(index, _)| index).nth(one);
    let new = if let Some(index) = within.filter(|_| chance.percent(WITHIN)) {
        let inner = blocks.remove(index);
        let beyond = room.along(axis) - block.size.along(axis);
        let room = room.with(axis, inner.size.along(axis) + beyond);
        filled_anew(inner, room, pieces, chance, fill)
    } else {
        let mut gone = Vec::new();
        let mut count = 0;
        while count < pieces && !blocks.is_empty() {
            let block = blocks.swap_remove(chance.below(blocks.len()));
            count += block.pieces();
            gone.push(block);
        }
        let kept = blocks
            .iter()
            .map(|block| block.size.along(axis) + joint.gap);
        let left = room.along(axis) - kept.sum::<Um>();
        fill(gone, room.with(axis, left), chance)
    };
    Block::join(joint, blocks.into_iter().chain(new))
}
