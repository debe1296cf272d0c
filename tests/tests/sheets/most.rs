//! As many pieces as may be, so long and narrow that each is cut off what the one before has left.

use std::thread;

use notchwright_core::sheet::{PartRequest, SheetLayoutRequest, SheetRequest, sheet_layout};

use crate::{job, part};

/// What a page leaves its calls, in bytes: a mebibyte.
const STACK: usize = 1 << 20;

fn largest() -> SheetRequest {
    SheetRequest {
        length: 10_000.0.into(),
        width: 10_000.0.into(),
        ..SheetRequest::default()
    }
}

/// A third of the rules without chance.
fn is_laid_out(parts: impl Iterator<Item = PartRequest>) {
    let request: SheetLayoutRequest = job(vec![largest()], parts.collect(), 1.0, 12);
    let laid = thread::Builder::new()
        .stack_size(STACK)
        .spawn(move || sheet_layout(&request).expect("it can be cut").plan)
        .expect("a thread");
    let plan = laid.join().expect("no panic");
    let pieces: usize = plan.sheets.iter().map(|sheet| sheet.parts.len()).sum();
    assert_eq!(pieces, 2000);
}

#[test]
fn strips_beside_strips_are_laid_out_in_the_stack_of_a_page() {
    is_laid_out((0..500).map(|number| part(9000.0 + f64::from(number), 3.0, 4)));
}

/// Each is as long as what is left of one side or of the other.
#[test]
fn strips_around_strips_are_laid_out_in_the_stack_of_a_page() {
    is_laid_out((0..500).map(|number| PartRequest {
        may_turn: true.into(),
        ..part(9996.0 - 16.0 * f64::from(number), 3.0, 4)
    }));
}
