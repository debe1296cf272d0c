//! A groove on the router table: the fence, the passes, the marks of a stopped groove.

mod end_view;
mod stopped;

use super::marks::{WIDTH, at, sheet};
use crate::drawing::item::Drawing;
use crate::groove::GrooveSetupPlan;

/// The board's end as it lies on the table against the fence, with the bit as it stands for the first pass,
/// and below it, for a stopped groove, the board from above at its start and its stop.
///
/// In the end view, distances from the fence are to scale where the groove is wide enough to be seen so;
/// otherwise the board is broken between fence and groove. Heights are not to scale: nobody asks for the
/// board's thickness. From above, distances along the fence are to scale, but for a bit too small to be seen.
/// The board is fed from right to left, against the bit's turning, with the fence beyond it.
#[must_use]
pub fn groove_setup_drawing(plan: &GrooveSetupPlan) -> Drawing {
    let mut sheet = sheet();
    end_view::draw(&mut sheet, plan);
    let bottom = match &plan.marks {
        Some(marks) => stopped::draw(&mut sheet, marks, plan.job.bit, end_view::BOTTOM),
        None => end_view::BOTTOM,
    };
    sheet.finish(at(WIDTH, bottom))
}
