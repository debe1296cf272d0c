//! Layouts of sheets against a saw that knows nothing of the search, against packings whose best layout is known,
//! and against published instances.

#![expect(
    clippy::expect_used,
    clippy::indexing_slicing,
    reason = "what a helper finds wrong fails its test"
)]

mod doubt;
mod most;
mod most_valuable;
mod packings;
mod problems;
mod properties;
#[path = "../../../core/benches/split/mod.rs"]
mod split;

use notchwright_core::given::Given;
use notchwright_core::sheet::{PartRequest, SearchRequest, SheetLayoutRequest, SheetRequest};

/// One kind of sheet, 2440 by 1220 mm (trade).
fn sheet() -> SheetRequest {
    SheetRequest {
        length: 2440.0.into(),
        width: 1220.0.into(),
        ..SheetRequest::default()
    }
}

/// Parts by length, width and count.
fn part(length: f64, width: f64, count: u32) -> PartRequest {
    PartRequest {
        length: length.into(),
        width: width.into(),
        count: f64::from(count).into(),
        ..PartRequest::default()
    }
}

fn job(
    sheets: Vec<SheetRequest>,
    parts: Vec<PartRequest>,
    kerf: f64,
    steps: u32,
) -> SheetLayoutRequest {
    SheetLayoutRequest {
        sheets: sheets
            .into_iter()
            .map(Given::from)
            .collect::<Vec<_>>()
            .into(),
        parts: parts
            .into_iter()
            .map(Given::from)
            .collect::<Vec<_>>()
            .into(),
        kerf: kerf.into(),
        search: SearchRequest {
            steps: f64::from(steps).into(),
            ..SearchRequest::default()
        }
        .into(),
        ..SheetLayoutRequest::default()
    }
}
