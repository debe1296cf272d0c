//! The corner of a box joint put together, seen on board A's outer face.

use super::item::{Drawing, Point, Role};
use super::lens::{Lens, lenses};
use super::sheet::{Sheet, closed, hatch, rectangle};
use super::view::{View, visible_end};
use super::window::Window;
use crate::dryfit::{Profile, Span, Swept};
use crate::joint::box_joint::BoxJointPlan;
use crate::stop::Board;
use crate::units::Mm;

/// The corner as the cuts make it: A's pins with the ends of B's pins between them, and beneath it the
/// smallest gap, the largest gap and what stands tallest on A's floors, each enlarged as written below it.
///
/// `thickness_b` is board B's; A's sockets are that much deep and as much more as the pins stand proud.
#[must_use]
pub fn box_joint_mated(plan: &BoxJointPlan, thickness_b: Mm) -> Drawing {
    let mut sheet = Sheet::new(plan.width, plan.depth_a * 2.0);
    let Some(joint) = Joint::new(plan, thickness_b) else {
        return sheet.finish(Point::new(plan.width, plan.depth_a));
    };
    let lenses = lenses(plan, &joint);
    let needed = sheet.ems(Lens::COLUMN) * lenses.len() as f64;
    let across = plan.width.max(needed);
    let left = sheet.ems(0.6);
    let end = sheet.ems(4.6) + plan.depth_a;
    let window = Window {
        left: Mm::ZERO,
        right: plan.width,
        shallow: Mm::ZERO,
        deep: end - sheet.ems(0.6),
    };
    let view = View {
        window,
        corner: Point::new(left + (across - plan.width) / 2.0, end),
        across: 1.0,
        along: -1.0,
    };
    joint.draw(&mut sheet, &view, &joint.visible_a);
    draw_letters(&mut sheet, &joint, &view);
    let top = end + sheet.ems(1.4);
    let column = across / lenses.len().max(1) as f64;
    for (index, lens) in lenses.iter().enumerate() {
        let middle = Point::new(left + column * (index as f64 + 0.5), top);
        lens.draw(&mut sheet, &joint, &view, middle);
    }
    let corner = Point::new(across + sheet.ems(1.2), top + sheet.ems(Lens::HEIGHT));
    sheet.finish(corner)
}

/// Both boards in A's face.
pub(super) struct Joint {
    /// A's end as cut.
    pub(super) a: Profile,
    /// The same in as much detail as can be seen without a lens.
    visible_a: Profile,
    /// Where B's pins are.
    pub(super) b: Vec<Span>,
    /// Where pins of both boards are.
    pub(super) clashes: Vec<Span>,
    /// From A's end to B's outer face.
    pub(super) shallow: Mm,
    /// From A's end to B's inner face.
    pub(super) deep: Mm,
}

impl Joint {
    fn new(plan: &BoxJointPlan, thickness_b: Mm) -> Option<Self> {
        let set = |board| plan.sets.iter().find(|set| set.board == board);
        let (a, b) = (set(Board::A)?, set(Board::B)?);
        let proud = (plan.depth_a - thickness_b).max(Mm::ZERO);
        let swept = |set| Swept::new(set, plan.width);
        let (swept_a, swept_b) = (swept(a), swept(b));
        let clash = |a: &Span| {
            swept_b
                .wood
                .iter()
                .filter_map(|b| b.shared(*a))
                .collect::<Vec<_>>()
        };
        Some(Self {
            visible_a: visible_end(a, plan.width),
            a: swept_a.profile,
            clashes: swept_a
                .wood
                .iter()
                .flat_map(clash)
                .filter(|span| !span.length().is_same(Mm::ZERO))
                .collect(),
            b: swept_b.wood,
            shallow: proud,
            deep: plan.depth_a,
        })
    }

    /// The corner within a view's window, with A's end as given.
    pub(super) fn draw(&self, sheet: &mut Sheet, view: &View, end_of_a: &Profile) {
        let pins: Vec<_> = self
            .b
            .iter()
            .filter_map(|pin| self.block(*pin, view))
            .collect();
        sheet.polygons(Role::BoardB, pins.iter().cloned());
        sheet.polygons(Role::BoardA, view.wood(end_of_a));
        let clashes: Vec<_> = self
            .clashes
            .iter()
            .filter_map(|clash| self.block(*clash, view))
            .collect();
        sheet.polygons(Role::Clash, clashes.iter().cloned());
        let apart = sheet.ems(0.25);
        sheet.lines(
            Role::Clash,
            clashes.iter().flat_map(|clash| hatch(clash, apart)),
        );
        sheet.outline(pins.iter().map(|pin| closed(pin)).collect());
        sheet.outline(view.outline(end_of_a));
    }

    /// A span of B's thickness within a view's window.
    pub(super) fn block(&self, span: Span, view: &View) -> Option<Vec<Point>> {
        let window = view.window;
        let shown = span.shared(Span {
            from: window.left,
            to: window.right,
        })?;
        let (shallow, deep) = (self.shallow.max(window.shallow), self.deep.min(window.deep));
        (shallow < deep).then(|| view.places(&rectangle(shown.from, shallow, shown.to, deep)))
    }
}

fn draw_letters(sheet: &mut Sheet, joint: &Joint, view: &View) {
    let top = view.y(view.window.deep);
    sheet.letter(
        Point::new(view.x(Mm::ZERO) + sheet.ems(0.6), top + sheet.ems(0.6)),
        "A",
    );
    let room =
        |pin: &&Span| pin.length() > sheet.ems(1.4) && joint.deep - joint.shallow > sheet.ems(1.4);
    if let Some(pin) = joint.b.iter().find(room) {
        let corner = Point::new(
            view.x(pin.middle()) - sheet.ems(0.45),
            view.y(joint.deep) + sheet.ems(0.3),
        );
        sheet.letter(corner, "B");
    }
    let words = view.window.right > sheet.ems(Sheet::REFERENCE_WORDS);
    sheet.reference_edge(view.x(Mm::ZERO), top + sheet.ems(2.7), words);
}
