//! `cargo xtask size`: what the first answer needs and what comes after it, compressed as a host would.

use anyhow::{Result, ensure};

use crate::build::{Files, read_below};
use crate::compress::compressed;
use crate::layout::Layout;
use crate::single::SINGLE;
use crate::worker;
use crate::{split, styles};

/// The most that a first answer may need, in bytes: a few seconds on a poor line in a shop.
const BUDGET: usize = 250_000;
/// The most that the page as a single file may have, in bytes: it is copied about.
const SINGLE_BUDGET: usize = 1_000_000;
/// Prints each file and the totals; fails above the budget.
pub(crate) fn run(layout: &Layout) -> Result<()> {
    let mut files = Files::new();
    read_below(&layout.dist(), "", &mut files)?;
    let (mut first, mut later) = (0, 0);
    for name in worker::fetched(&files) {
        let bytes = files.get(name).map_or(&[][..], Vec::as_slice);
        let size = compressed(bytes)?.len();
        if comes_later(name) {
            println!("{size:>9}  {name}, later");
            later += size;
        } else {
            println!("{size:>9}  {name}");
            first += size;
        }
    }
    println!("{first:>9}  before the first answer, of {BUDGET} bytes");
    println!("{later:>9}  after it, to be kept for working offline");
    let single = files.get(SINGLE).map_or(0, Vec::len);
    println!("{single:>9}  {SINGLE} as it is, of {SINGLE_BUDGET} bytes");
    ensure!(
        single <= SINGLE_BUDGET,
        "{SINGLE} has {} bytes too many",
        single - SINGLE_BUDGET
    );
    ensure!(
        first <= BUDGET,
        "the first answer needs {} bytes too many",
        first - BUDGET
    );
    Ok(())
}

/// Chunks and their look; the service worker, which starts once the page has; the icon for home screens; the search
/// for layouts.
fn comes_later(name: &str) -> bool {
    split::comes_later(name)
        || name == styles::LATER
        || name == worker::WORKER
        || name.starts_with("search")
        || name.ends_with("-192.png")
}
