//! The opening from the front.

use crate::drawer::{DrawerBoxPlan, DrawerPlace, DrawerPlan};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, closed, rectangle};
use crate::drawing::sled::labels::{Spot, spread, text_at_middle, text_width};
use crate::message;
use crate::message::Message;
use crate::units::Mm;

/// The opening from the front, to scale: drawers as they are cut, dividers between them, the sides' pins in a
/// drawer's front, and where applied fronts will be. Heights stand in a column at the right.
///
/// `None` for drawers of a given outside, which have no opening.
#[must_use]
pub fn drawer_elevation(plan: &DrawerBoxPlan) -> Option<Drawing> {
    if plan.places.is_empty() {
        return None;
    }
    let mut picture = Picture::new(plan);
    picture.draw_opening();
    picture.draw_drawers();
    picture.draw_applied();
    picture.draw_column();
    picture.draw_sizes();
    Some(picture.sheet.finish(picture.corner))
}

/// The opening is drawn on about three quarters of the width; the column takes the rest.
const COLUMN_SHARE: f64 = 1.35;
/// From row to row of the column, and from the opening to it, in type heights.
const ROW: f64 = 1.25;
const BEND: f64 = 1.8;

/// Places are given from the opening's left and lower edges, and drawn by moving them.
struct Picture<'a> {
    plan: &'a DrawerBoxPlan,
    sheet: Sheet,
    /// Texts of the column with their heights above the opening's lower edge, from the lowest.
    column: Vec<(Mm, Mm, Message)>,
    left: Mm,
    bottom: Mm,
    lowest: Mm,
    corner: Point,
}

impl<'a> Picture<'a> {
    fn new(plan: &'a DrawerBoxPlan) -> Self {
        let space = plan.job.space;
        let sheet = Sheet::new(space.width * COLUMN_SHARE, space.height);
        let em = sheet.type_size;
        let column = column(plan, em * ROW);
        // A front may reach past the opening.
        let past = plan
            .job
            .applied
            .map_or(Mm::ZERO, |front| front.lap.max(Mm::ZERO));
        let rows = || column.iter().map(|(_, row, _)| *row);
        let above = rows().fold(space.height + past, Mm::max) + em * 0.7;
        let lowest = rows().fold(-past, Mm::min) - em * 0.7;
        let words = column.iter().map(|(_, _, text)| text_width(text, em));
        let right = space.width + past + em * BEND + words.max().unwrap_or_default();
        let below = heading(plan).iter().map(|text| text_width(text, em)).max();
        let right = right.max(below.unwrap_or_default()) + em * 0.4;
        let left = em * 0.4 + past;
        let bottom = above + em * 0.4;
        let corner = Point::new(left + right, bottom - lowest + em * 5.2);
        Self {
            plan,
            sheet,
            column,
            left,
            bottom,
            lowest,
            corner,
        }
    }

    fn block(&self, left: Mm, below: Mm, width: Mm, height: Mm) -> Vec<Point> {
        let (left, lower) = (self.left + left, self.bottom - below);
        rectangle(left, lower - height, left + width, lower)
    }

    /// What there is of one place: its drawer, and that drawer's edge from the opening's left.
    fn drawers(&self) -> impl Iterator<Item = (&'a DrawerPlace, &'a DrawerPlan, Mm)> + use<'a> {
        let plan = self.plan;
        let side = plan.job.space.clearances().side;
        let of = move |place: &'a DrawerPlace| Some((place, plan.drawers.get(place.drawer)?, side));
        plan.places.iter().filter_map(of)
    }

    fn draw_opening(&mut self) {
        let job = &self.plan.job;
        let opening = self.block(Mm::ZERO, Mm::ZERO, job.space.width, job.space.height);
        let below = job.space.clearances().below;
        let dividers: Vec<_> = self
            .plan
            .places
            .iter()
            .rev()
            .skip(1)
            .rev()
            .map(|place| {
                let floor = place.from_below - below - job.between;
                self.block(Mm::ZERO, floor, job.space.width, job.between)
            })
            .collect();
        self.sheet.polygons(Role::Opening, [opening.clone()]);
        if job.between.is_above(Mm::ZERO) {
            self.sheet.polygons(Role::Rail, dividers);
        }
        self.sheet.lines(Role::Outline, [closed(&opening)]);
    }

    fn draw_drawers(&mut self) {
        let (mut fronts, mut pins) = (Vec::new(), Vec::new());
        for (place, drawer, side) in self.drawers() {
            let front = self.block(side, place.from_below, drawer.width, drawer.height);
            fronts.push(front);
            pins.extend(self.pins(place, drawer, side));
        }
        let outlines: Vec<_> = fronts.iter().map(|front| closed(front)).collect();
        self.sheet.polygons(Role::BoardB, fronts);
        self.sheet.polygons(Role::BoardA, pins);
        self.sheet.lines(Role::FineOutline, outlines);
    }

    /// Ends of the sides' pins, at both ends of a front; tails are left out.
    fn pins(&self, place: &DrawerPlace, drawer: &DrawerPlan, side: Mm) -> Vec<Vec<Point>> {
        let (Some(finger), thickness) = (drawer.joint.finger_width, self.plan.job.side) else {
            return Vec::new();
        };
        let first = u32::from(!self.plan.job.starts_with_pin());
        let lefts = [side, side + drawer.width - thickness];
        (first..drawer.joint.count)
            .step_by(2)
            .flat_map(|index| {
                let below = place.from_below + finger * f64::from(index);
                lefts.map(|left| self.block(left, below, thickness, finger))
            })
            .collect()
    }

    fn draw_applied(&mut self) {
        let fronts: Vec<_> = self
            .plan
            .places
            .iter()
            .zip(&self.plan.applied)
            .map(|(place, front)| {
                let left = (self.plan.job.space.width - front.width) / 2.0;
                let below = place.from_below - front.below;
                closed(&self.block(left, below, front.width, front.height))
            })
            .collect();
        self.sheet.lines(Role::ToCome, fronts);
    }

    fn draw_column(&mut self) {
        let past = self
            .plan
            .job
            .applied
            .map_or(Mm::ZERO, |front| front.lap.max(Mm::ZERO));
        let edge = self.left + self.plan.job.space.width + past;
        let words = edge + self.sheet.ems(BEND);
        let start = edge - past - self.plan.job.space.clearances().side;
        let leaders: Vec<_> = self
            .column
            .iter()
            .map(|(middle, row, _)| {
                vec![
                    Point::new(start, self.bottom - *middle),
                    Point::new(edge + self.sheet.ems(0.4), self.bottom - *middle),
                    Point::new(words - self.sheet.ems(0.2), self.bottom - *row),
                ]
            })
            .collect();
        self.sheet.lines(Role::Leader, leaders);
        for (_, row, text) in core::mem::take(&mut self.column) {
            let spot = Spot::new(words, self.bottom - row, Anchor::Start);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, text);
        }
    }

    /// Widths below the opening, and what is said of all of it.
    fn draw_sizes(&mut self) {
        let mut y = self.bottom - self.lowest + self.sheet.ems(0.6);
        let right = self.left + self.plan.job.space.width;
        self.sheet.dimension_across(y, self.left, right);
        for text in heading(self.plan) {
            y += self.sheet.ems(1.3);
            let spot = Spot::new(self.left, y, Anchor::Start);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, text);
        }
    }
}

/// Each drawer's middle, its row in the column and its height, from the lowest.
fn column(plan: &DrawerBoxPlan, row: Mm) -> Vec<(Mm, Mm, Message)> {
    let entry = |place: &DrawerPlace| {
        let drawer = plan.drawers.get(place.drawer)?;
        let middle = place.from_below + drawer.height / 2.0;
        Some((middle, message![drawer.height]))
    };
    let entries: Vec<_> = plan.places.iter().rev().filter_map(entry).collect();
    let wanted: Vec<_> = entries.iter().map(|(middle, _)| (*middle, row)).collect();
    entries
        .into_iter()
        .zip(spread(&wanted))
        .map(|((middle, text), row)| (middle, row, text))
        .collect()
}

/// What stands below the opening.
fn heading(plan: &DrawerBoxPlan) -> Vec<Message> {
    let space = plan.job.space;
    let mut rows = vec![message!["opening ", space.width, " × ", space.height]];
    if let (Some(drawer), Some(place)) = (plan.drawers.first(), plan.places.first()) {
        rows.push(message!["drawers ", drawer.width, " wide"]);
        let gap = place.gap_above;
        rows.push(message![
            "above ",
            gap.now,
            ", at the dampest ",
            gap.wettest
        ]);
    }
    rows
}
