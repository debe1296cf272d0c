//! `cargo bench -p notchwright-core`: how long plans take. Prints medians and asserts nothing, since machines differ.

use std::hint::black_box;
use std::time::{Duration, Instant};

use notchwright_core::cutter::CutterRequest;
use notchwright_core::dial::ScrewRequest;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::{
    BoardRequest, BoxJointRequest, ChoicesRequest, LayoutRequest, box_joint, choices,
};
use notchwright_core::joint::dovetail::{DovetailRequest, SlopeRequest, dovetail};
use notchwright_core::sheet::{
    PartRequest, SearchRequest, SheetLayoutRequest, SheetRequest, sheet_layout,
};

const RUNS: usize = 501;

fn main() {
    for fingers in [9.0, 200.0, 500.0] {
        let request = joint(fingers);
        let time = median(|| drop(black_box(box_joint(black_box(&request)))));
        println!("box joint, {fingers} fingers, plan with dry fit: {time:?}");
    }
    for tails in [4.0, 12.0, 60.0] {
        let request = dovetails(tails);
        let time = median(|| drop(black_box(dovetail(black_box(&request)))));
        println!("dovetail, {tails} tails, plan with dry fit: {time:?}");
    }
    let request = every_choice();
    let time = median(|| drop(black_box(choices(black_box(&request)))));
    println!("every choice for a board of 600 mm: {time:?}");
    for rounds in [1.0, 50.0] {
        let request = sheets(rounds);
        let start = Instant::now();
        drop(black_box(sheet_layout(black_box(&request))));
        println!(
            "sheets for 200 parts of 20 sizes, {rounds} rounds: {:?}",
            start.elapsed()
        );
    }
}

fn median(mut work: impl FnMut()) -> Duration {
    let mut times: Vec<_> = (0..RUNS)
        .map(|_| {
            let start = Instant::now();
            work();
            start.elapsed()
        })
        .collect();
    times.sort_unstable();
    times.get(RUNS / 2).copied().unwrap_or_default()
}

fn board(thickness: f64) -> BoardRequest {
    BoardRequest {
        thickness: thickness.into(),
    }
}

fn cutter() -> CutterRequest {
    CutterRequest {
        kerf: 1.6.into(),
        ..CutterRequest::default()
    }
}

fn screw() -> ScrewRequest {
    ScrewRequest {
        threads_per_inch: 16.0.into(),
        divisions: 80.0.into(),
        ..ScrewRequest::default()
    }
}

fn joint(fingers: f64) -> BoxJointRequest {
    BoxJointRequest {
        width: 1200.0.into(),
        a: board(12.0).into(),
        b: board(18.0).into(),
        cutter: cutter().into(),
        screw: screw().into(),
        layout: LayoutRequest::count(fingers).into(),
        ..BoxJointRequest::default()
    }
}

fn dovetails(tails: f64) -> DovetailRequest {
    DovetailRequest {
        width: (tails * 35.0).into(),
        tail: board(12.0).into(),
        pin: board(18.0).into(),
        slope: SlopeRequest::ratio(8.0).into(),
        tails: tails.into(),
        half_pin: 6.0.into(),
        narrow_pin: 5.0.into(),
        cutter: cutter().into(),
        screw: screw().into(),
        ..DovetailRequest::default()
    }
}

fn every_choice() -> ChoicesRequest {
    ChoicesRequest {
        width: 600.0.into(),
        a: board(12.0).into(),
        b: board(18.0).into(),
        cutter: cutter().into(),
        screw: screw().into(),
        ..ChoicesRequest::default()
    }
}

/// Ten each of twenty sizes.
fn sheets(rounds: f64) -> SheetLayoutRequest {
    let part = |number: u32| {
        let number = f64::from(number);
        Given::from(PartRequest {
            count: 10.0.into(),
            length: (180.0 + 37.0 * number).into(),
            width: (420.0 - 17.0 * number).into(),
            ..PartRequest::default()
        })
    };
    let sheet = SheetRequest {
        length: 2440.0.into(),
        width: 1220.0.into(),
        ..SheetRequest::default()
    };
    SheetLayoutRequest {
        sheets: vec![Given::from(sheet)].into(),
        parts: (0..20).map(part).collect::<Vec<_>>().into(),
        kerf: 3.2.into(),
        search: SearchRequest {
            steps: rounds.into(),
            ..SearchRequest::default()
        }
        .into(),
        ..SheetLayoutRequest::default()
    }
}
