//! Sheets laid out for cutting.

mod block;
mod bound;
mod chance;
mod checked;
mod cuts;
mod fill;
pub(crate) mod job;
mod pool;
mod reach;
mod rebuild;
mod request;
mod row;
mod rule;
mod search;
mod sequence;

pub use request::{
    EachSideRequest, PartRequest, RoughRequest, SearchRequest, SheetLayoutRequest, SheetRequest,
    SidesRequest, SizeRequest,
};

/// Trial.
pub fn trial(request: &SheetLayoutRequest, rounds: &[u32]) -> Result<Vec<(f64, u32, u32, bool)>, Vec<crate::problem::Problem>> {
    let job = checked::check(request)?;
    let mut search = search::Search::new(&job);
    Ok(rounds.iter().map(|n| {
        search.run(*n);
        let b = search.groups[0].best.as_ref().unwrap();
        (b.wood.used as f64/1000., b.wood.sheets, b.settings, search.is_proven())
    }).collect())
}
