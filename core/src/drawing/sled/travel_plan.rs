//! A sled over its stroke, seen from above.

use super::labels::{Area, Labels, Spot};
use super::marks::{arrow, broken, contact, contact_words, dimension, words};
use super::travel::{Contact, Travel, runner_ends};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, rectangle};
use crate::message;
use crate::sled::SledFitPlan;
use crate::sled::checked::{Side, Sideways};
use crate::units::Mm;

/// The sled on its saw from above, the operator below: `pushed` 0 pulled fully back, 1 pushed through.
///
/// To scale, and the extent is the same for every `pushed`, so that a slider moves only the sled. The
/// runner is drawn where it is, before it is moved. What is not known is not drawn as if it were: the
/// table is broken off at its sides, and the carriage and the front rail are as thick as their words.
#[must_use]
pub fn sled_travel_plan(plan: &SledFitPlan, pushed: f64) -> Drawing {
    let mut picture = Picture::new(Travel::new(plan, pushed));
    picture.draw_table();
    picture.draw_base();
    picture.draw_contacts();
    picture.draw_rails();
    picture.write_words();
    picture.sheet.finish(picture.corner)
}

/// What a base takes up of the width beside its table's margins.
const BASE_SHARE: f64 = 1.35;
/// The table on each side of the base, in type heights: room for its word.
const SIDE: f64 = 3.2;
/// Words beside a runner in the middle of the narrowest table, in type heights.
const LEAST_TABLE: f64 = 19.0;
/// Room for words above and below all that moves, in type heights.
const ROOM: f64 = 1.7;
/// How thick the carriage and the front rail are drawn, in type heights: around a word.
const RAIL: f64 = 1.4;

struct Picture<'a> {
    travel: Travel<'a>,
    sheet: Sheet,
    labels: Labels,
    /// The table's sides, the base's left edge.
    left: Mm,
    right: Mm,
    base_left: Mm,
    /// What lies farthest from the operator, and where that is on the sheet.
    high: Mm,
    top: Mm,
    corner: Point,
}

impl<'a> Picture<'a> {
    fn new(travel: Travel<'a>) -> Self {
        let width = travel.job.base_width;
        let (low, high) = travel.extent();
        let sheet = Sheet::new(width * BASE_SHARE, high - low);
        let table = (width + sheet.ems(SIDE * 2.0)).max(sheet.ems(LEAST_TABLE));
        let (left, top) = (sheet.ems(0.5), sheet.ems(ROOM));
        let right = left + table;
        let bottom = top + (high - low) + sheet.ems(ROOM + 1.5);
        let corner = Point::new(right + left, bottom);
        Self {
            travel,
            labels: Labels::new(corner),
            left,
            right,
            base_left: left + (table - width) / 2.0,
            high,
            top,
            corner,
            sheet,
        }
    }

    /// A place across, given from the base's left edge.
    fn x(&self, from_left: Mm) -> Mm {
        self.base_left + from_left
    }

    /// A place along the feed.
    fn y(&self, along: Mm) -> Mm {
        self.top + (self.high - along)
    }

    /// A place on the sled, given from the base's near edge.
    fn on_sled(&self, from_near_edge: Mm) -> Mm {
        self.y(self.travel.on_sled(from_near_edge))
    }

    fn blade_x(&self) -> Mm {
        self.x(self.travel.job.blade_line)
    }

    fn runner_x(&self) -> Mm {
        self.x(self.travel.plan.runner.from_base_left)
    }

    /// Around a middle across, from one place along the feed to another.
    fn strip(middle: Mm, width: Mm, near: Mm, far: Mm) -> Vec<Point> {
        rectangle(middle - width / 2.0, far, middle + width / 2.0, near)
    }

    fn draw_table(&mut self) {
        let job = self.travel.job;
        let (front, rear) = (self.y(self.travel.front()), self.y(self.travel.rear()));
        let tooth = self.sheet.ems(0.3);
        let side = |x, from, to| broken(Point::new(x, from), Point::new(x, to), tooth);
        let mut table = side(self.left + tooth, front, rear);
        table.extend(side(self.right - tooth, rear, front));
        self.sheet.polygons(Role::Table, [table]);

        let slots: Vec<_> = [Some(job.first), job.second]
            .into_iter()
            .flatten()
            .map(|slot| self.slot_x(slot))
            .filter(|middle| {
                let reach = job.runner_width / 2.0 + tooth * 2.0;
                *middle - reach > self.left && *middle + reach < self.right
            })
            .map(|middle| Self::strip(middle, job.runner_width, front, rear))
            .collect();
        self.sheet.polygons(Role::Opening, slots);
    }

    fn slot_x(&self, slot: Sideways) -> Mm {
        match slot.side {
            Side::Left => self.blade_x() - slot.from_blade,
            Side::Right => self.blade_x() + slot.from_blade,
        }
    }

    /// The blade is as long as its chord at the table below the base, and as its chord at the base within the slot.
    fn blade(&mut self, half_chord: Mm) {
        let (near, far) = (self.y(-half_chord), self.y(half_chord));
        let blade = Self::strip(self.blade_x(), self.travel.job.kerf, near, far);
        self.sheet.polygons(Role::Blade, [blade]);
    }

    fn draw_base(&mut self) {
        let Travel { plan, job, .. } = self.travel;
        let (near, far) = runner_ends(job);
        let runners = [
            Some(plan.runner.from_base_left),
            plan.second_runner.map(|second| second.from_base_left),
        ];
        let bar = |from_left| {
            let (near, far) = (self.on_sled(near), self.on_sled(far));
            Self::strip(self.x(from_left), job.runner_width, near, far)
        };
        let bars: Vec<_> = runners.into_iter().flatten().map(bar).collect();
        self.sheet.polygons(Role::Runner, bars);
        self.blade(plan.half_chord_table);

        let (near_edge, far_edge) = (self.on_sled(Mm::ZERO), self.on_sled(job.base_length));
        let (left, right) = (self.x(Mm::ZERO), self.x(job.base_width));
        let base = rectangle(left, far_edge, right, near_edge);
        self.sheet.polygons(Role::SledBase, [base]);
        let slot_near = self.on_sled(plan.slot.top_near).min(near_edge);
        let slot_far = self.on_sled(plan.slot.top_far).max(far_edge);
        let slot = Self::strip(self.blade_x(), job.kerf, slot_near, slot_far);
        self.sheet.polygons(Role::Opening, [slot]);
        self.blade(plan.half_chord_base);

        let middle = |y| Point::new(self.runner_x(), y);
        let line = vec![
            middle(self.on_sled(near).max(near_edge)),
            middle(self.on_sled(far).min(far_edge)),
        ];
        self.sheet.lines(Role::CentreLine, [line]);
    }

    /// The words of the contacts come first: everything else makes way for them.
    fn draw_contacts(&mut self) {
        for at in self.travel.contacts() {
            let middle = Point::new(self.runner_x(), self.y(at.at));
            contact(&mut self.sheet, middle, at.is_off());
            let Some(said) = contact_words(&at) else {
                continue;
            };
            let beside = self.to_the_roomier_side();
            if at.at_end {
                self.dimension(&at, beside);
            }
            let spots = self.spots_beside(middle, beside, at.at_end);
            self.labels
                .write(&mut self.sheet, said.role, &said.rows, spots);
        }
    }

    /// 1 where there is more room right of the runner, −1 where left.
    fn to_the_roomier_side(&self) -> f64 {
        if self.runner_x() * 2.0 < self.corner.x {
            1.0
        } else {
            -1.0
        }
    }

    /// From the edge of the table to the contact.
    fn dimension(&mut self, at: &Contact, beside: f64) {
        let x = self.runner_x() + self.sheet.ems(0.85 * beside);
        let [from, to] = [at.edge, at.at].map(|along| Point::new(x, self.y(along)));
        dimension(&mut self.sheet, from, to);
    }

    /// Beside the contact, or as little above or below as may be.
    fn spots_beside(&self, middle: Point, beside: f64, past_dimension: bool) -> Vec<Spot> {
        let away = if past_dimension { 1.4 } else { 0.9 };
        let x = middle.x + self.sheet.ems(away * beside);
        let anchor = if beside > 0.0 {
            Anchor::Start
        } else {
            Anchor::End
        };
        [0.0, 1.3, -1.3, 2.6, -2.6, 3.9, -3.9]
            .map(|down| Spot::new(x, middle.y + self.sheet.ems(down), anchor))
            .to_vec()
    }

    /// The carriage ends at its face; the front rail begins at its own.
    fn draw_rails(&mut self) {
        let job = self.travel.job;
        let thick = self.sheet.ems(RAIL);
        let carriage = (job.carriage_face - thick).max(Mm::ZERO);
        let rail = (job.front_rail + thick).min(job.base_length);
        for (near, far, name) in [
            (carriage, job.carriage_face, "carriage"),
            (job.front_rail, rail, "front rail"),
        ] {
            let bar = Area {
                left: self.x(Mm::ZERO),
                top: self.on_sled(far),
                right: self.x(job.base_width),
                bottom: self.on_sled(near),
            };
            let corners = rectangle(bar.left, bar.top, bar.right, bar.bottom);
            self.sheet.polygons(Role::Rail, [corners]);
            let spots = self.spots_within(&bar);
            let rows = [message![name]];
            self.labels
                .write(&mut self.sheet, Role::Words, &rows, spots);
            self.labels.keep_clear(bar);
        }
    }

    /// At the ends of a bar and in its middle, where it is thick enough for words and they keep off the blade.
    fn spots_within(&self, bar: &Area) -> Vec<Spot> {
        let middle = (bar.top + bar.bottom) / 2.0;
        let inset = self.sheet.ems(0.5);
        let is_thick = !(bar.bottom - bar.top).is_below(self.sheet.ems(1.0));
        let away = if self.to_the_roomier_side() > 0.0 {
            [
                Spot::new(bar.right - inset, middle, Anchor::End),
                Spot::new(bar.left + inset, middle, Anchor::Start),
            ]
        } else {
            [
                Spot::new(bar.left + inset, middle, Anchor::Start),
                Spot::new(bar.right - inset, middle, Anchor::End),
            ]
        };
        away.into_iter().filter(|_| is_thick).collect()
    }

    fn write_words(&mut self) {
        let blade = self.blade_x();
        let beside = self.travel.job.kerf / 2.0 + self.sheet.ems(0.6);
        let spots: Vec<_> = [0.0, 1.6, -1.6, 3.0, -3.0]
            .into_iter()
            .flat_map(|down| {
                let y = self.y(Mm::ZERO) + self.sheet.ems(down);
                [
                    Spot::new(blade + beside, y, Anchor::Start),
                    Spot::new(blade - beside, y, Anchor::End),
                ]
            })
            .collect();
        let rows = [message!["blade"]];
        self.labels
            .write(&mut self.sheet, Role::Words, &rows, spots);

        let inset = self.sheet.ems(0.4);
        let row = self.sheet.ems(1.0);
        let [rear, front] = [self.travel.rear(), self.travel.front()].map(|edge| self.y(edge));
        let spots = [
            Spot::new(self.left + inset, rear + row, Anchor::Start),
            Spot::new(self.left + inset, front - row, Anchor::Start),
        ];
        let rows = [message!["table"]];
        self.labels
            .write(&mut self.sheet, Role::Words, &rows, spots);

        let bottom = self.corner.y - self.sheet.ems(0.8);
        let middle = self.corner.x / 2.0;
        words(&mut self.sheet, middle, bottom, Anchor::Middle, "operator");
        let x = self.right - self.sheet.ems(SIDE / 2.0);
        let long = self.sheet.ems(3.0);
        arrow(
            &mut self.sheet,
            Point::new(x, rear + row + long),
            Point::new(x, rear + row),
        );
        let y = rear + row + long + self.sheet.ems(0.8);
        words(&mut self.sheet, x, y, Anchor::Middle, "feed");
    }
}
