//! The board's end on the table.

use crate::drawing::item::{Anchor, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::drawing::tools::marks::{TYPE, WIDTH, at, block, words_between};
use crate::groove::{GrooveSetupPlan, Job};
use crate::message;
use crate::units::Mm;

/// Where things are, in type heights.
const FENCE_BACK: f64 = 0.7;
const FACE: f64 = 2.8;
const FENCE_TOP: f64 = 2.4;
const BOARD_TOP: f64 = 5.0;
const FLOOR: f64 = 7.2;
const TABLE: f64 = 9.2;
const TABLE_BOTTOM: f64 = 10.2;
const SHANK: f64 = 11.2;
/// Where the groove's far side is at most, and the board breaks off.
const FAR: f64 = 12.0;
const BROKEN: f64 = 13.2;
/// Lower end of this view.
pub(super) const BOTTOM: f64 = 14.2;

/// More passes than this could not be told apart: only first and last are drawn.
const TELLABLE: usize = 8;

pub(super) fn draw(sheet: &mut Sheet, plan: &GrooveSetupPlan) {
    let across = Across::new(&plan.job);
    let words = at(FENCE_BACK, 1.3);
    sheet.text(Role::Words, words, Anchor::Start, message!["end view"]);
    let table = block(FENCE_BACK, TABLE, WIDTH - 0.7, TABLE_BOTTOM);
    sheet.polygons(Role::Table, [table]);
    let fence = block(FENCE_BACK, FENCE_TOP, FACE, TABLE);
    sheet.polygons(Role::Rail, [fence]);
    draw_board(sheet, &across);
    draw_passes(sheet, plan, &across);
    draw_fence_settings(sheet, plan, &across);
    if let Some(depth) = plan.job.depth {
        let [top, bottom] = [FLOOR, TABLE].map(|y| TYPE * y);
        sheet.dimension_down(TYPE * (BROKEN + 0.7), top, bottom, message![depth]);
    }
}

/// Distances from the fence on paper.
struct Across {
    /// Fence to the groove's near side.
    near: Mm,
    /// The same on paper.
    near_drawn: Mm,
    /// Fence to the groove's far side.
    far: Mm,
    /// Paper for each mm within the groove.
    scale: f64,
    broken: bool,
}

impl Across {
    fn new(job: &Job) -> Self {
        const SEEN: f64 = 2.5;
        const BROKEN_AT: f64 = 6.0;
        let (near, far) = (
            job.from_edge - job.width / 2.0,
            job.from_edge + job.width / 2.0,
        );
        let room = TYPE * (FAR - FACE);
        let scale = room / far;
        let broken = job.width * scale < TYPE * SEEN;
        let near_drawn = if broken {
            TYPE * BROKEN_AT
        } else {
            near * scale
        };
        Self {
            near,
            near_drawn,
            far,
            scale: if broken {
                (room - near_drawn) / job.width
            } else {
                scale
            },
            broken,
        }
    }

    /// Where a distance from the fence is, at the groove's near side or beyond it.
    fn x(&self, from_fence: Mm) -> Mm {
        TYPE * FACE + self.near_drawn + (from_fence - self.near) * self.scale
    }

    fn place(&self, from_fence: Mm, y: f64) -> Point {
        Point::new(self.x(from_fence), TYPE * y)
    }

    /// The area from one distance to another, between two heights.
    fn block(&self, from: Mm, to: Mm, top: f64, bottom: f64) -> Vec<Point> {
        vec![
            self.place(from, top),
            self.place(to, top),
            self.place(to, bottom),
            self.place(from, bottom),
        ]
    }
}

fn draw_board(sheet: &mut Sheet, across: &Across) {
    let (near, far) = (across.near, across.far);
    let outline = vec![
        at(BROKEN, BOARD_TOP),
        at(FACE, BOARD_TOP),
        at(FACE, TABLE),
        across.place(near, TABLE),
        across.place(near, FLOOR),
        across.place(far, FLOOR),
        across.place(far, TABLE),
        at(BROKEN, TABLE),
    ];
    sheet.polygons(Role::BoardA, [outline.clone()]);
    sheet.lines(Role::Outline, [outline]);
    let end = vec![at(BROKEN, BOARD_TOP), at(BROKEN, TABLE)];
    sheet.lines(Role::Leader, [end]);
    if across.broken {
        let (middle, lean, half) = (FACE + 3.0, 0.4, 0.3);
        let (top, bottom) = (BOARD_TOP - 0.2, TABLE);
        let gap = [
            (middle + lean - half, top),
            (middle + lean + half, top),
            (middle - lean + half, bottom),
            (middle - lean - half, bottom),
        ];
        sheet.polygons(Role::Opening, [gap.map(|(x, y)| at(x, y)).to_vec()]);
    }
}

/// The bit stands at the first pass; the others are dashed.
fn draw_passes(sheet: &mut Sheet, plan: &GrooveSetupPlan, across: &Across) {
    let bit = plan.job.bit;
    let block = |from: Mm, bottom| across.block(from, from + bit, FLOOR, bottom);
    let (Some(first), Some(last)) = (plan.passes.first(), plan.passes.last()) else {
        return;
    };
    sheet.polygons(Role::Blade, [block(first.fence_to_bit, SHANK)]);
    let others = match plan.passes.get(1..) {
        Some(others) if others.len() <= TELLABLE => others,
        Some([.., _]) => core::slice::from_ref(last),
        _ => &[],
    };
    let others = others.iter().map(|pass| block(pass.fence_to_bit, TABLE));
    sheet.polygons(Role::Pass, others);
}

/// Fence to the bit's nearer side: for the first pass below the table, for the last above the board.
fn draw_fence_settings(sheet: &mut Sheet, plan: &GrooveSetupPlan, across: &Across) {
    let face = TYPE * FACE;
    let (Some(first), Some(last)) = (plan.passes.first(), plan.passes.last()) else {
        return;
    };
    let alone = plan.passes.len() == 1;
    let name = if alone {
        "fence to bit "
    } else {
        "first pass "
    };
    let first = first.fence_to_bit;
    let (line, baseline) = (SHANK + 0.6, SHANK + 1.9);
    let [down, up] = [TABLE_BOTTOM, line].map(|y| at(FACE, y));
    sheet.lines(Role::Dimension, [vec![down, up]]);
    sheet.dimension_across(TYPE * line, face, across.x(first));
    let middle = Point::new((face + across.x(first)) / 2.0, TYPE * baseline);
    let limits = (FENCE_BACK, WIDTH - 0.3);
    words_between(
        sheet,
        Role::Dimension,
        middle,
        limits,
        message![name, first],
    );
    if alone {
        return;
    }
    let last = last.fence_to_bit;
    let line = BOARD_TOP - 0.9;
    let leader = vec![across.place(last, FLOOR), across.place(last, line)];
    sheet.lines(Role::Leader, [leader]);
    sheet.dimension_across(TYPE * line, face, across.x(last));
    let middle = Point::new((face + across.x(last)) / 2.0, TYPE * (line - 0.6));
    let limits = (FACE + 0.4, WIDTH - 0.3);
    words_between(
        sheet,
        Role::Dimension,
        middle,
        limits,
        message!["last pass ", last],
    );
}
