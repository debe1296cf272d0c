//! A dovetail put together, seen on the tail board's face.

use super::joint::{Joint, Mate, closed_line};
use super::lens::{Lens, lenses};
use super::marks::{Columns, grain, hatched, sheet};
use super::plane::{Place, View, Window};
use crate::drawing::item::{Drawing, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::joint::dovetail::DovetailPlan;

/// The joint as the cuts make it: the tails, their end upwards, with the ends of the pins between them, and
/// beneath it the smallest and the largest gap, enlarged as written below each. Where wood overlaps it is
/// hatched; what no pass reaches between the tails is marked.
///
/// In a half-blind joint the pins stand behind their lap, dashed, as a hand must cut them.
#[must_use]
pub fn dovetail_mated(plan: &DovetailPlan) -> Drawing {
    let mut sheet = sheet(plan.width, plan.depth_a * 2.0);
    let corner = Corner::new(plan);
    let columns = Columns::new(&sheet, plan.width);
    let top = sheet.ems(0.6);
    let view = View {
        window: Window {
            left: 0.0,
            right: plan.width.mm(),
            shallow: corner.shallow(),
            deep: (plan.depth_a + sheet.ems(3.4)).mm(),
        },
        corner: Point::new(columns.left, top),
        across: 1.0,
        along: 1.0,
    };
    corner.draw(&mut sheet, &view);
    sheet.polygons(Role::Uncut, view.areas(&corner.joint.uncut_tails()));
    sheet.lines(Role::Grain, grain(&view, plan.depth_a.mm()));
    draw_letters(&mut sheet, &corner, &view);
    let bottom = view.y(view.window.deep);
    let lenses = lenses(&corner);
    let column = columns.across / lenses.len().max(1) as f64;
    for (index, lens) in lenses.iter().enumerate() {
        let middle = Point::new(column * (index as f64 + 0.5), bottom);
        lens.draw(&mut sheet, &corner, &view, middle);
    }
    let words = if lenses.is_empty() {
        sheet.ems(0.6)
    } else {
        sheet.ems(Lens::HEIGHT)
    };
    let corner = Point::new(columns.across, bottom + words);
    sheet.finish(corner)
}

/// Both boards in the tail board's face.
pub(super) struct Corner {
    pub(super) joint: Joint,
    pins: Vec<Vec<Place>>,
    by_hand: bool,
    lap: f64,
    clashes: Vec<Vec<Place>>,
}

impl Corner {
    fn new(plan: &DovetailPlan) -> Self {
        let joint = Joint::new(plan);
        let by_hand = joint.pins.is_empty();
        let pins = if by_hand {
            joint.pins_by_hand(plan)
        } else {
            joint.pin_shapes()
        };
        let mates = joint.mates();
        Self {
            pins,
            by_hand,
            lap: plan.lap.mm(),
            clashes: mates.iter().filter_map(Mate::overlap).collect(),
            joint,
        }
    }

    /// Nearest to the tail board's end, or beyond it, that there is wood.
    fn shallow(&self) -> f64 {
        (self.joint.outer - self.lap).min(0.0)
    }

    fn lap(&self) -> Option<Vec<Place>> {
        let (outer, width) = (self.joint.outer, self.joint.width);
        let window = Window {
            left: 0.0,
            right: width,
            shallow: outer - self.lap,
            deep: outer,
        };
        (self.lap > 0.0).then(|| window.corners().to_vec())
    }

    /// What a view shows of it, but for what no pass reaches: that would hide the pins.
    pub(super) fn draw(&self, sheet: &mut Sheet, view: &View) {
        let pins: Vec<_> = self.pins.iter().cloned().chain(self.lap()).collect();
        let pins = view.areas(&pins);
        sheet.polygons(Role::BoardB, pins.iter().cloned());
        let deep = view.window.deep.max(self.joint.inner);
        let tails = view.areas(&[self.joint.tail_board(deep)]);
        sheet.polygons(Role::BoardA, tails);
        self.draw_clashes(sheet, view);
        self.draw_outlines(sheet, view, deep);
    }

    fn draw_clashes(&self, sheet: &mut Sheet, view: &View) {
        let clashes = view.areas(&self.clashes);
        sheet.polygons(Role::Clash, clashes.iter().cloned());
        let apart = sheet.ems(0.25);
        let hatches = clashes.iter().flat_map(|clash| hatched(clash, apart));
        sheet.lines(Role::Clash, hatches);
    }

    fn draw_outlines(&self, sheet: &mut Sheet, view: &View, deep: f64) {
        let pins: Vec<_> = self.pins.iter().map(|pin| closed_line(pin)).collect();
        let pins = view.lines(&pins);
        if self.by_hand {
            sheet.sockets_to_come(pins);
        } else {
            sheet.outline(pins);
        }
        let lap: Vec<_> = self.lap().iter().map(|lap| closed_line(lap)).collect();
        let mut end = self.joint.tail_end();
        let edge = |corner: Option<&Place>| corner.map(|corner| (corner.0, deep));
        let (near, far) = (edge(end.first()), edge(end.last()));
        end.extend(far);
        let end: Vec<_> = near.into_iter().chain(end).collect();
        let mut lines = view.lines(&[end]);
        lines.extend(view.lines(&lap));
        sheet.outline(lines);
    }
}

/// A letter on a tail's body, and one on a pin where there is room.
fn draw_letters(sheet: &mut Sheet, corner: &Corner, view: &View) {
    let left = view.x(0.0);
    let bottom = view.y(view.window.deep);
    // Leaders would run through words.
    sheet.reference_edge(left, bottom - sheet.ems(0.9), false);
    let right = view.x(view.window.right).max(left + sheet.ems(11.0));
    let place = Point::new(right - sheet.ems(1.6), bottom - sheet.ems(1.5));
    sheet.letter(place, "A");
    let (outer, inner) = (corner.joint.outer, corner.joint.inner);
    let needed = sheet.ems(1.4).mm();
    let middle = |pin: &Vec<Place>| -> Option<f64> {
        let (left, right) = (pin.first()?.0, pin.get(1)?.0);
        (right - left > needed && inner - outer > needed).then_some((left + right) / 2.0)
    };
    if let Some(x) = corner.pins.iter().find_map(middle) {
        let place = view.place((x, (outer + inner) / 2.0));
        let corner = Point::new(place.x - sheet.ems(0.45), place.y - sheet.ems(0.47));
        sheet.letter(corner, "B");
    }
}
