//! Packings whose best layout is known by construction, and a general-purpose packer as a second opinion.

use std::collections::BTreeMap;

use notchwright_core::sheet::{SheetLayoutPlan, sheet_layout};
use rectangle_pack::{
    GroupedRectsToPlace, RectToInsert, TargetBin, contains_smallest_box, pack_rects,
    volume_heuristic,
};

use crate::split::parted;
use crate::{job, part, sheet};

fn laid(parts: &[(f64, f64)], kerf: f64, steps: u32) -> SheetLayoutPlan {
    let parts = parts
        .iter()
        .map(|(length, width)| part(*length, *width, 1))
        .collect();
    sheet_layout(&job(vec![sheet()], parts, kerf, steps))
        .expect("a good request")
        .plan
}

/// Length of all sheets but the last, and what is used of that.
fn length(plan: &SheetLayoutPlan) -> f64 {
    f64::from(plan.whole_sheets - 1) * 2440.0 + plan.used_length.mm()
}

/// The best layout is one full sheet (derived). What is reached of it was measured when this was written; a search
/// that gets worse than this has lost something.
#[test]
fn what_was_one_sheet_becomes_nearly_one_again() {
    for (count, kerf, steps, least) in [
        (10, 0.0, 200, 1.0),
        (10, 3.2, 200, 1.0),
        (20, 0.0, 200, 0.9),
        (20, 3.2, 200, 0.9),
        (50, 3.2, 100, 0.87),
        (100, 3.2, 40, 0.87),
        (100, 0.0, 120, 0.92),
    ] {
        let parts = parted(2440.0, 1220.0, count, kerf, count as u64);
        let plan = laid(&parts, kerf, steps);
        let reached = 2440.0 / length(&plan);
        assert!(
            reached >= least - 1e-9,
            "{count} parts, kerf {kerf}: {reached}"
        );
        assert!(reached <= 1.0 + 1e-9, "more than there is");
        assert_eq!(plan.search.proven, reached > 1.0 - 1e-9);
    }
}

/// Sheets that the packer of the crate `rectangle-pack` needs; it knows of no saw, so it need not cut from edge to
/// edge. With a kerf added to parts and sheet alike, what it places could be sawn but for that.
fn packed(parts: &[(f64, f64)], kerf: f64) -> u32 {
    let tenths = |mm: f64| ((mm + kerf) * 10.0).round() as u32;
    (1..)
        .find(|count| {
            let mut rectangles: GroupedRectsToPlace<usize, ()> = GroupedRectsToPlace::new();
            for (index, (length, width)) in parts.iter().enumerate() {
                rectangles.push_rect(
                    index,
                    None,
                    RectToInsert::new(tenths(*length), tenths(*width), 1),
                );
            }
            let bin = || TargetBin::new(tenths(2440.0), tenths(1220.0), 1);
            let mut bins: BTreeMap<u32, TargetBin> =
                (0..*count).map(|number| (number, bin())).collect();
            pack_rects(
                &rectangles,
                &mut bins,
                &volume_heuristic,
                &contains_smallest_box,
            )
            .is_ok()
        })
        .expect("there is no end of sheets")
}

#[test]
fn a_packer_without_a_saw_needs_no_fewer_sheets() {
    for seed in 1..9_u64 {
        // Parts of several sheets, so that they are of all sizes.
        let parts: Vec<_> = (0..3)
            .flat_map(|sheet| parted(2440.0, 1220.0, 9, 40.0, seed * 10 + sheet))
            .collect();
        let plan = laid(&parts, 3.2, 60);
        let without_a_saw = packed(&parts, 3.2);
        assert!(
            plan.whole_sheets <= without_a_saw,
            "{} sheets, and {without_a_saw}",
            plan.whole_sheets
        );
    }
}
