//! A sled over its stroke, seen from above.

use core::iter::successors;

use super::labels::{Area, Labels, Spot};
use super::marks::{CONTACT_REACH, arrow, broken, contact, contact_words, dimension};
use super::travel::{Contact, Travel, runner_ends, runners};
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
    picture.draw_rails();
    picture.avoid_lines();
    picture.draw_feed();
    picture.draw_contacts();
    picture.name_rails();
    picture.write_words();
    picture.sheet.finish(picture.corner)
}

/// What a base takes up of the width beside its table's margins.
const BASE_SHARE: f64 = 1.4;
/// The table on each side of the base, in type heights: room for its word.
const SIDE: f64 = 3.7;
/// Words beside a runner in the middle of the narrowest table, in type heights.
const LEAST_TABLE: f64 = 20.0;
/// Room for words above and below all that moves, in type heights.
const ROOM: f64 = 1.7;
/// How thick the carriage and the front rail are drawn, in type heights: around a word.
const RAIL: f64 = 1.4;
/// How the words of a contact make way for those of another, in type heights, and for how many steps they
/// stay on their side of the runner.
const STEP: f64 = 0.6;
const NEAR: f64 = 10.0;

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

        let reach = job.runner_width / 2.0 + tooth * 2.0;
        let slots: Vec<_> = [Some(job.first), job.second]
            .into_iter()
            .flatten()
            .map(|slot| self.slot_x(slot))
            .filter(|middle| *middle - reach > self.left && *middle + reach < self.right)
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
        let bar = |from_left| {
            let (near, far) = (self.on_sled(near), self.on_sled(far));
            Self::strip(self.x(from_left), job.runner_width, near, far)
        };
        let runners = runners(plan);
        let bars: Vec<_> = runners.iter().copied().map(bar).collect();
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

        let line = |from_left: &Mm| {
            let x = self.x(*from_left);
            vec![Point::new(x, near_edge), Point::new(x, far_edge)]
        };
        let lines: Vec<_> = runners.iter().map(line).collect();
        self.sheet.lines(Role::CentreLine, lines);
    }

    /// The words of the contacts come first: everything else makes way for them.
    fn draw_contacts(&mut self) {
        let contacts = self.travel.contacts();
        for at in &contacts {
            for from_left in runners(self.travel.plan) {
                let middle = Point::new(self.x(from_left), self.y(at.at));
                contact(&mut self.sheet, middle, at.is_off());
                let reach = self.sheet.ems(CONTACT_REACH);
                self.labels.keep_clear(Area::around(middle, reach));
            }
        }
        for at in &contacts {
            self.write_contact(at);
        }
    }

    /// On the roomier side of the runner, or else on the other: what hangs in the air is never left unsaid.
    fn write_contact(&mut self, at: &Contact) {
        let Some(said) = contact_words(at) else {
            return;
        };
        let roomier = self.to_the_roomier_side();
        if at.at_end {
            self.dimension(at, roomier);
        }
        let middle = Point::new(self.runner_x(), self.y(at.at));
        let far = self.corner.y / self.sheet.ems(STEP);
        for (beside, steps) in [(roomier, NEAR), (-roomier, NEAR), (roomier, far)] {
            let spots = self.spots_beside(middle, beside, at, steps);
            if self
                .labels
                .write(&mut self.sheet, said.role, &said.rows, spots)
            {
                return;
            }
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

    /// Beside the contact, or up to some steps above or below, rather towards its edge of the table.
    fn spots_beside(&self, middle: Point, beside: f64, at: &Contact, steps: f64) -> Vec<Spot> {
        let away = if at.at_end { 1.4 } else { 0.9 };
        let outwards = if at.edge > Mm::ZERO { -STEP } else { STEP };
        let x = middle.x + self.sheet.ems(away * beside);
        let anchor = if beside > 0.0 {
            Anchor::Start
        } else {
            Anchor::End
        };
        let steps =
            successors(Some(0.0), |step| Some(step + 1.0)).take_while(|step| *step <= steps);
        steps
            .flat_map(|step| [step, -step])
            .map(|step| Spot::new(x, middle.y + self.sheet.ems(step * outwards), anchor))
            .collect()
    }

    /// The carriage ends at its face; the front rail begins at its own.
    fn rails(&self) -> [(Area, &'static str); 2] {
        let job = self.travel.job;
        let thick = self.sheet.ems(RAIL);
        let back = (job.carriage_face - thick).max(Mm::ZERO);
        let rail = (job.front_rail + thick).min(job.base_length);
        let bar = |near, far| Area {
            left: self.x(Mm::ZERO),
            top: self.on_sled(far),
            right: self.x(job.base_width),
            bottom: self.on_sled(near),
        };
        [
            (bar(back, job.carriage_face), "carriage"),
            (bar(job.front_rail, rail), "front rail"),
        ]
    }

    fn draw_rails(&mut self) {
        let bars = self.rails().map(|(bar, _)| bar.corners());
        self.sheet.polygons(Role::Rail, bars);
    }

    /// Who pushes, and which way, below; away from the words of contacts.
    fn draw_feed(&mut self) {
        let bottom = self.corner.y - self.sheet.ems(0.8);
        let inset = self.sheet.ems(0.3);
        let roomier = self.to_the_roomier_side();
        let (edge, anchor) = if roomier > 0.0 {
            (self.left + inset, Anchor::Start)
        } else {
            (self.right - inset, Anchor::End)
        };
        let x = |ems: f64| edge + self.sheet.ems(ems * roomier);
        let (arrow_x, feed_x) = (x(5.1), x(5.5));
        for (x, name) in [(edge, "operator"), (feed_x, "feed")] {
            let spot = Spot::new(x, bottom, anchor);
            let rows = [message![name]];
            self.labels
                .write(&mut self.sheet, Role::Words, &rows, [spot]);
        }
        let from = Point::new(arrow_x, bottom + self.sheet.ems(0.5));
        let to = Point::new(arrow_x, bottom - self.sheet.ems(1.5));
        arrow(&mut self.sheet, from, to);
        for end in [from, to] {
            let area = Area::around(end, self.sheet.ems(0.5));
            self.labels.keep_clear(area);
        }
    }

    fn name_rails(&mut self) {
        for (bar, name) in self.rails() {
            let spots = self.spots_within(&bar);
            let rows = [message![name]];
            self.labels
                .write(&mut self.sheet, Role::Words, &rows, spots);
        }
    }

    /// Words are easier to read where no line runs through them.
    fn avoid_lines(&mut self) {
        let job = self.travel.job;
        let rails = self.rails().map(|(bar, _)| bar);
        let [bar, _] = rails;
        let edges = [
            (self.on_sled(Mm::ZERO), bar.left, bar.right),
            (self.on_sled(job.base_length), bar.left, bar.right),
            (self.y(self.travel.front()), self.left, self.right),
            (self.y(self.travel.rear()), self.left, self.right),
        ];
        for (edge, left, right) in edges {
            self.labels.avoid(Area {
                left,
                top: edge,
                right,
                bottom: edge + self.sheet.ems(0.05),
            });
        }
        for bar in rails {
            self.labels.avoid(bar);
        }
        let slot = self.travel.plan.slot;
        self.labels.avoid(Area {
            left: self.blade_x() - job.kerf / 2.0,
            top: self.on_sled(slot.top_far),
            right: self.blade_x() + job.kerf / 2.0,
            bottom: self.on_sled(slot.top_near),
        });
        let blade = (job.blade_line, job.kerf);
        let bars = runners(self.travel.plan)
            .into_iter()
            .map(|middle| (middle, job.runner_width));
        for (middle, width) in bars.chain([blade]) {
            let half_chord = self.travel.plan.half_chord_table;
            self.labels.avoid(Area {
                left: self.x(middle - width / 2.0),
                top: self.y(half_chord),
                right: self.x(middle + width / 2.0),
                bottom: self.y(-half_chord),
            });
        }
    }

    /// At the ends of a bar and in its middle, where it is thick enough for words.
    fn spots_within(&self, bar: &Area) -> Vec<Spot> {
        let middle = (bar.top + bar.bottom) / 2.0;
        let inset = self.sheet.ems(0.5);
        let is_thick = !(bar.bottom - bar.top).is_below(self.sheet.ems(1.0));
        let mut ends = [
            Spot::new(bar.right - inset, middle, Anchor::End),
            Spot::new(bar.left + inset, middle, Anchor::Start),
        ];
        if self.to_the_roomier_side() < 0.0 {
            ends.reverse();
        }
        let between = Spot::new((bar.left + bar.right) / 2.0, middle, Anchor::Middle);
        ends.into_iter()
            .chain([between])
            .filter(|_| is_thick)
            .collect()
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

        let row = self.sheet.ems(1.0);
        let inset = self.sheet.ems(0.8);
        let [rear, front] = [self.travel.rear(), self.travel.front()].map(|edge| self.y(edge));
        let (x, anchor) = if self.to_the_roomier_side() > 0.0 {
            (self.right - inset, Anchor::End)
        } else {
            (self.left + inset, Anchor::Start)
        };
        let spots = [rear + row, front - row].map(|y| Spot::new(x, y, anchor));
        let rows = [message!["table"]];
        self.labels
            .write(&mut self.sheet, Role::Words, &rows, spots);
    }
}
