//! Enlarged parts of a corner, where what matters is too small to see.

use super::item::{Anchor, Point, Role};
use super::mated::Joint;
use super::sheet::{Sheet, rectangle};
use super::view::View;
use super::window::Window;
use crate::dryfit::{Flank, Side, Span, Uncut};
use crate::joint::box_joint::BoxJointPlan;
use crate::message;
use crate::order::in_order;
use crate::stop::Board;
use crate::units::Mm;

/// One enlarged part.
pub(super) struct Lens {
    title: &'static str,
    /// What is shown: the length written below the lens.
    size: Mm,
    /// What must be in its middle, on A's face.
    focus: Point,
    /// The gap between two flanks, if it is about one.
    gap: Option<Span>,
}

impl Lens {
    /// Room that one takes across, in type heights.
    pub(super) const COLUMN: f64 = 7.0;
    /// Room that one takes downwards, in type heights.
    pub(super) const HEIGHT: f64 = 8.2;
    const ACROSS: f64 = 6.0;
    const DOWN: f64 = 4.0;

    fn of_flank(title: &'static str, flank: &Flank, joint: &Joint) -> Self {
        let gap = flank.gap_at_outer.min(flank.gap_at_inner);
        let mate = match flank.side {
            Side::Left => flank.x - gap,
            Side::Right => flank.x + gap,
        };
        let gap_span = Span {
            from: flank.x.min(mate),
            to: flank.x.max(mate),
        };
        let focus = Point::new(gap_span.middle(), (joint.shallow + joint.deep) / 2.0);
        let title = if gap < Mm::ZERO { "overlap" } else { title };
        Self {
            title,
            size: gap.abs(),
            focus,
            gap: (gap > Mm::ZERO).then_some(gap_span),
        }
    }

    fn of_uncut(uncut: &Uncut, joint: &Joint) -> Option<Self> {
        let x = tallest(joint, uncut)?;
        let focus = Point::new(x, joint.deep - uncut.height / 2.0);
        Some(Self {
            title: "left standing",
            size: uncut.height,
            focus,
            gap: None,
        })
    }

    /// The greatest round enlargement that leaves what is shown a third of the lens.
    fn enlargement(&self, sheet: &Sheet) -> u32 {
        const ROUND: [u32; 7] = [100, 50, 40, 20, 10, 5, 2];
        let room = sheet.ems(Self::DOWN) / 3.0;
        ROUND
            .into_iter()
            .find(|times| self.size * f64::from(*times) <= room)
            .unwrap_or(1)
    }

    /// Draws the lens below the corner, the middle of its upper side at `middle`.
    pub(super) fn draw(&self, sheet: &mut Sheet, joint: &Joint, corner: &View, middle: Point) {
        let times = self.enlargement(sheet);
        let (half, down) = (sheet.ems(Self::ACROSS / 2.0), sheet.ems(Self::DOWN));
        let top = middle.y + sheet.ems(1.4);
        let (left, right, bottom) = (middle.x - half, middle.x + half, top + down);
        let (across, along) = (half / f64::from(times), down / 2.0 / f64::from(times));
        let window = Window {
            left: self.focus.x - across,
            right: self.focus.x + across,
            shallow: self.focus.y - along,
            deep: self.focus.y + along,
        };
        let enlarged = f64::from(times);
        let view = View {
            window,
            corner: Point::new(left, bottom),
            across: enlarged,
            along: -enlarged,
        };
        sheet.polygons(Role::Frame, [rectangle(left, top, right, bottom)]);
        joint.draw(sheet, &view, &joint.a);
        sheet.polygons(Role::Gap, self.gap.and_then(|gap| joint.block(gap, &view)));
        sheet.frame(left, top, right, bottom);
        let from = corner.place(self.focus);
        let lead = |x| vec![from, Point::new(x, top)];
        sheet.lines(Role::Leader, [lead(left), lead(right)]);
        self.write(sheet, times, middle.x, bottom);
    }

    fn write(&self, sheet: &mut Sheet, times: u32, middle: Mm, bottom: Mm) {
        let rows = [
            (1.1, Role::Words, message![self.title]),
            (2.2, Role::Dimension, message![self.size, ", ×", times]),
        ];
        for (row, role, text) in rows {
            sheet.text(
                role,
                Point::new(middle, bottom + sheet.ems(row)),
                Anchor::Middle,
                text,
            );
        }
    }
}

/// What deserves a lens, from the reference edge.
pub(super) fn lenses(plan: &BoxJointPlan, joint: &Joint) -> Vec<Lens> {
    let flanks = &plan.dry_fit.flanks;
    let gap = |flank: &&Flank| flank.gap_at_outer.min(flank.gap_at_inner);
    let (smallest, largest) = (flanks.iter().min_by_key(gap), flanks.iter().max_by_key(gap));
    let mut lenses = Vec::new();
    if let (Some(smallest), Some(largest)) = (smallest, largest) {
        if gap(&smallest).is_same(gap(&largest)) {
            lenses.push(Lens::of_flank("every gap", smallest, joint));
        } else {
            lenses.push(Lens::of_flank("smallest gap", smallest, joint));
            lenses.push(Lens::of_flank("largest gap", largest, joint));
        }
    }
    let left_on_a = plan
        .dry_fit
        .uncut
        .iter()
        .filter(|uncut| uncut.board == Board::A);
    let tallest = left_on_a.max_by_key(|uncut| uncut.height);
    lenses.extend(tallest.and_then(|uncut| Lens::of_uncut(uncut, joint)));
    in_order(lenses, |one, other| one.focus.x.cmp(&other.focus.x))
}

/// The place on A's end where something stands tallest in the socket that an uncut place is in.
fn tallest(joint: &Joint, uncut: &Uncut) -> Option<Mm> {
    let depth = joint.deep - uncut.height;
    let tips = joint
        .a
        .places()
        .iter()
        .filter(|place| place.depth.is_same(depth));
    tips.map(|tip| tip.x)
        .min_by_key(|x| (*x - uncut.near).abs())
}
