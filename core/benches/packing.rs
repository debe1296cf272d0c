//! `cargo bench -p notchwright-core --bench packing`: how much of what is possible the search for sheet layouts
//! reaches, and how long it takes. Prints a table and asserts nothing, since machines differ.
//!
//! The parts of each job are one sheet of 2440 by 1220 mm that was parted again and again, so the best layout is
//! one sheet, full to the edge. Reached: that length as a share of the length of all sheets that are used.

#![allow(clippy::indexing_slicing, reason = "a benchmark may stop")]

mod split;

use std::hint::black_box;
use std::time::Instant;

use notchwright_core::given::Given;
use notchwright_core::sheet::{
    PartRequest, SearchRequest, SheetLayoutPlan, SheetLayoutRequest, SheetRequest, sheet_layout,
};

const SHEET: (f64, f64) = (2440.0, 1220.0);

fn main() {
    println!("parts  kerf  may turn  rounds  sheets  reached  settings  time");
    for (kerf, may_turn) in [(0.0, false), (3.2, false), (3.2, true)] {
        for count in [10, 20, 50, 100, 200] {
            for rounds in [0.0, 200.0, 1000.0] {
                let request = parted(count, kerf, may_turn, rounds);
                let start = Instant::now();
                let answer = black_box(sheet_layout(black_box(&request)));
                let time = start.elapsed();
                if let Ok(planned) = answer {
                    let plan = planned.plan;
                    let proven = if plan.search.proven { "proven" } else { "" };
                    println!(
                        "{count:5}  {kerf:4}  {may_turn:8}  {rounds:6}  {:6}  {:6.2}%  {:8}  {time:?} {proven}",
                        plan.sheets.len(),
                        100.0 * SHEET.0 / length(&plan),
                        plan.settings
                    );
                }
            }
        }
    }
}

/// Length of all sheets but the last, and what is used of that.
fn length(plan: &SheetLayoutPlan) -> f64 {
    (plan.sheets.len() as f64 - 1.0) * SHEET.0 + plan.used_length.mm()
}

fn parted(count: usize, kerf: f64, may_turn: bool, rounds: f64) -> SheetLayoutRequest {
    let parts = split::parted(SHEET.0, SHEET.1, count, kerf, count as u64);
    let part = |(length, width): &(f64, f64)| {
        Given::from(PartRequest {
            length: (*length).into(),
            width: (*width).into(),
            may_turn: may_turn.into(),
            ..PartRequest::default()
        })
    };
    let sheet = SheetRequest {
        length: SHEET.0.into(),
        width: SHEET.1.into(),
        ..SheetRequest::default()
    };
    SheetLayoutRequest {
        sheets: vec![Given::from(sheet)].into(),
        parts: parts.iter().map(part).collect::<Vec<_>>().into(),
        kerf: kerf.into(),
        search: SearchRequest {
            steps: rounds.into(),
            ..SearchRequest::default()
        }
        .into(),
        ..SheetLayoutRequest::default()
    }
}
