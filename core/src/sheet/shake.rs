//! Many small changes to a layout: parts change places, blocks move beside others, turn, or are joined the other
//! way. A change that makes the last sheet longer is soon not allowed any more.
//!
//! Slicing trees changed like this are known from the layout of circuits (Wong and Liu, "A new algorithm for
//! floorplan design", 1986). Only the sizes on the way to the root change, so a change costs next to nothing.

use super::chance::Chance;
use super::forest::Forest;
use super::job::{Job, Um};
use super::search::Layout;

/// The layout after so many changes, each tried and kept or taken back; `None` where sheets cannot share blocks.
pub(super) fn shaken(
    job: &Job,
    layout: &Layout,
    changes: u32,
    heat: Um,
    chance: &mut Chance,
) -> Option<Layout> {
    let mut forest = Forest::new(job, layout)?;
    let mut best = forest.cost();
    let mut best_nodes = forest.clone();
    let mut cost = best;
    for change in 0..changes {
        let left = Um::from(changes - change);
        let warmth = chance.up_to(heat * left / Um::from(changes));
        let Some(done) = forest.change(chance) else {
            continue;
        };
        let changed = forest.cost();
        if forest.fits() && changed <= cost + warmth {
            cost = changed;
            if cost < best {
                best = cost;
                best_nodes = forest.clone();
            }
        } else {
            forest.take_back(done);
        }
    }
    if cost <= best {
        best_nodes = forest;
    }
    Some(Layout::new(job, best_nodes.laid(layout)))
}
