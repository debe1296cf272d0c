//! The base for this saw, dimensioned for whoever builds it.

use super::labels::{Spot, spread, text_at_middle, text_width};
use super::marks::{circle, contact, dimension, words};
use super::travel::{runner_ends, runners};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, rectangle};
use crate::message;
use crate::message::Message;
use crate::sled::SledFitPlan;
use crate::sled::checked::Job;
use crate::units::Mm;

/// The base from above, its near edge (the operator's) below: where everything on it goes.
///
/// Distances from the near edge stand in a column at the left, distances from the left edge below. The
/// runner, its holes and its contacts are where they belong after it is moved; contacts that are off
/// the table even then are crossed out.
#[must_use]
pub fn sled_base(plan: &SledFitPlan) -> Drawing {
    let mut picture = Picture::new(plan);
    picture.draw_base();
    picture.draw_middles();
    picture.draw_slot();
    picture.draw_screws();
    picture.draw_column();
    picture.draw_row();
    picture.name_middles();
    picture.sheet.finish(picture.corner)
}

/// The base is drawn on about two thirds of the width; the column takes the rest.
const COLUMN_SHARE: f64 = 1.5;
/// From row to row of the column, in type heights.
const ROW: f64 = 1.25;
/// From the column's words to the base, in type heights: the bend of their leaders.
const BEND: f64 = 1.6;
/// Room around words that stand side by side, in type heights.
const APART: f64 = 0.8;

/// A distance of the column: from the near edge, and how far in from the left edge it is drawn.
struct Entry {
    from_near: Mm,
    reach: Mm,
    text: Message,
}

/// A text that stands in a row with others.
struct Beside {
    at: Mm,
    middle: Mm,
    text: Message,
}

/// Places are given from the base's left and near edges, and drawn by moving them.
struct Picture<'a> {
    plan: &'a SledFitPlan,
    job: &'a Job,
    sheet: Sheet,
    column: Vec<(Entry, Mm)>,
    distances: Vec<Beside>,
    names: Vec<Beside>,
    steps: Vec<Beside>,
    /// Nearest and farthest of what is drawn, without rows of words.
    near: Mm,
    far: Mm,
    /// The base's left and near edges on the sheet.
    left: Mm,
    bottom: Mm,
    corner: Point,
}

impl<'a> Picture<'a> {
    fn new(plan: &'a SledFitPlan) -> Self {
        let job = &plan.job;
        let sheet = Sheet::new(job.base_width * COLUMN_SHARE, job.base_length * 1.3);
        let em = sheet.type_size;
        let column = column(plan, em * ROW);
        let distances = in_row(distances(plan), em);
        let names = in_row(names(plan), em);
        let steps = in_row(steps(plan), em);

        let (near, far) = moved_runner(plan);
        let rows = column.iter().map(|(_, row)| *row);
        let near = rows.clone().fold(near.min(Mm::ZERO), Mm::min) - em * 0.7;
        let far = rows.fold(far.max(job.base_length), Mm::max) + em * 0.7;

        let words = column.iter().map(|(entry, _)| text_width(&entry.text, em));
        let column_width = words.max().unwrap_or_default() + em * BEND;
        let sides = |row: &Beside| {
            let half = text_width(&row.text, em) / 2.0;
            (row.middle - half, row.middle + half)
        };
        let beside = distances.iter().chain(&names).chain(&steps).map(sides);
        let (least, most) = beside.fold((-column_width, job.base_width), |(least, most), side| {
            (least.min(side.0), most.max(side.1))
        });
        let near_words = text_width(&message![NEAR_EDGE], em) / 2.0;
        let least = least.min(job.base_width / 2.0 - near_words);
        let most = most.max(job.base_width / 2.0 + near_words);
        let left = em * 0.4 - least;
        let bottom = em * 4.4 + far;
        let corner = Point::new(left + most + em * 0.4, bottom - near + em * 3.6);
        Self {
            plan,
            job,
            sheet,
            column,
            distances,
            names,
            steps,
            near,
            far,
            left,
            bottom,
            corner,
        }
    }

    fn x(&self, from_left: Mm) -> Mm {
        self.left + from_left
    }

    fn y(&self, from_near: Mm) -> Mm {
        self.bottom - from_near
    }

    fn across(&self, from_near: Mm, from: Mm, to: Mm) -> Vec<Point> {
        let y = self.y(from_near);
        vec![Point::new(self.x(from), y), Point::new(self.x(to), y)]
    }

    fn along(&self, from_left: Mm, near: Mm, far: Mm) -> Vec<Point> {
        let x = self.x(from_left);
        vec![Point::new(x, self.y(near)), Point::new(x, self.y(far))]
    }

    fn strip(&self, from_left: Mm, width: Mm, near: Mm, far: Mm) -> Vec<Point> {
        let (left, right) = (from_left - width / 2.0, from_left + width / 2.0);
        rectangle(self.x(left), self.y(far), self.x(right), self.y(near))
    }

    fn draw_base(&mut self) {
        let job = self.job;
        let (width, length) = (job.base_width, job.base_length);
        let base = self.strip(width / 2.0, width, Mm::ZERO, length);
        self.sheet.polygons(Role::SledBase, [base]);
        let stands = [job.carriage_face, job.front_rail];
        let lines = stands.map(|place| self.across(place, Mm::ZERO, width));
        self.sheet.lines(Role::Outline, lines);
    }

    fn draw_middles(&mut self) {
        let (near, far) = moved_runner(self.plan);
        let middles = runners(self.plan);
        let width = self.job.runner_width;
        let bars: Vec<_> = middles
            .iter()
            .map(|middle| self.strip(*middle, width, near, far))
            .collect();
        self.sheet.polygons(Role::Runner, bars);
        let overshoot = self.sheet.ems(0.5);
        let lines: Vec<_> = middles
            .iter()
            .chain([&self.job.blade_line])
            .map(|middle| self.along(*middle, Mm::ZERO, self.far + overshoot))
            .collect();
        self.sheet.lines(Role::CentreLine, lines);
    }

    /// The slot is longer underneath than on top: both ends show.
    fn draw_slot(&mut self) {
        let (job, slot) = (self.job, self.plan.slot);
        let within = |place: Mm| place.max(Mm::ZERO).min(job.base_length);
        let slots = [
            (slot.under_near, slot.under_far),
            (slot.top_near, slot.top_far),
        ]
        .map(|(near, far)| self.strip(job.blade_line, job.kerf, within(near), within(far)));
        self.sheet.polygons(Role::Opening, slots);
    }

    fn draw_screws(&mut self) {
        for middle in runners(self.plan) {
            let at = |place| Point::new(self.x(middle), self.y(moved(self.plan, place)));
            let radius = self.sheet.ems(0.24);
            let holes: Vec<_> = self
                .job
                .holes
                .iter()
                .map(|hole| circle(at(*hole), radius))
                .collect();
            let contacts = [self.job.contact_near, self.job.contact_far].map(at);
            self.sheet.polygons(Role::Hole, holes);
            let is_off = self.plan.runner.left_after.is_below(Mm::ZERO);
            for middle in contacts {
                contact(&mut self.sheet, middle, is_off);
            }
        }
    }

    fn draw_column(&mut self) {
        let (words, base) = (-self.sheet.ems(BEND), -self.sheet.ems(0.4));
        let leader = |(entry, row): &(Entry, Mm)| {
            let bend = self.across(entry.from_near, base, entry.reach);
            let start = self.across(*row, words + self.sheet.ems(0.2), base);
            start.into_iter().take(1).chain(bend).collect()
        };
        let leaders: Vec<Vec<Point>> = self.column.iter().map(leader).collect();
        self.sheet.lines(Role::Leader, leaders);
        for (entry, row) in &self.column {
            let spot = Spot::new(self.x(words), self.y(*row), Anchor::End);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, entry.text.clone());
        }
    }

    /// Distances from the left edge, below.
    fn draw_row(&mut self) {
        let (upper, lower) = (
            self.near - self.sheet.ems(0.3),
            self.near - self.sheet.ems(1.0),
        );
        let leaders: Vec<Vec<Point>> = self
            .distances
            .iter()
            .map(|row| {
                let down = self.along(row.at, Mm::ZERO, upper);
                down.into_iter()
                    .chain(self.along(row.middle, lower, lower).into_iter().take(1))
                    .collect()
            })
            .collect();
        self.sheet.lines(Role::Leader, leaders);
        let y = self.y(self.near - self.sheet.ems(1.6));
        for row in &self.distances {
            let spot = Spot::new(self.left + row.middle, y, Anchor::Middle);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, row.text.clone());
        }
        let middle = self.x(self.job.base_width / 2.0);
        let y = self.y(self.near - self.sheet.ems(2.9));
        words(&mut self.sheet, middle, y, Anchor::Middle, NEAR_EDGE);
    }

    /// Names of the middles, and how far each runner is from the blade line, above.
    fn name_middles(&mut self) {
        let names = self.far + self.sheet.ems(1.3);
        for row in &self.names {
            let spot = Spot::new(self.left + row.middle, self.y(names), Anchor::Middle);
            text_at_middle(&mut self.sheet, Role::Words, spot, row.text.clone());
        }
        let line = self.far + self.sheet.ems(2.4);
        for middle in runners(self.plan) {
            let ends = [middle, self.job.blade_line].map(|x| Point::new(self.x(x), self.y(line)));
            let [from, to] = ends;
            dimension(&mut self.sheet, from, to);
        }
        let numbers = line + self.sheet.ems(1.0);
        for row in &self.steps {
            let spot = Spot::new(self.left + row.middle, self.y(numbers), Anchor::Middle);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, row.text.clone());
        }
    }
}

const NEAR_EDGE: &str = "near edge (operator)";

/// A place on the runner after it is moved.
fn moved(plan: &SledFitPlan, place: Mm) -> Mm {
    place + plan.runner.forward
}

/// The least that the runner can be, after it is moved.
fn moved_runner(plan: &SledFitPlan) -> (Mm, Mm) {
    let (near, far) = runner_ends(&plan.job);
    (moved(plan, near), moved(plan, far))
}

/// Every distance from the near edge with its row, from the near edge on.
fn column(plan: &SledFitPlan, row: Mm) -> Vec<(Entry, Mm)> {
    let (job, slot) = (&plan.job, plan.slot);
    let (blade, runner) = (job.blade_line, plan.runner.from_base_left);
    let edge = Mm::ZERO;
    let holes = job
        .holes
        .iter()
        .map(|hole| ("hole", moved(plan, *hole), runner));
    let mut places: Vec<_> = [
        ("carriage", job.carriage_face, edge),
        ("front rail", job.front_rail, edge),
        ("length", job.base_length, edge),
        ("slot, top", slot.top_near, blade),
        ("slot, top", slot.top_far, blade),
        ("slot, under", slot.under_near, blade),
        ("slot, under", slot.under_far, blade),
        ("contact", moved(plan, job.contact_near), runner),
        ("contact", moved(plan, job.contact_far), runner),
    ]
    .into_iter()
    .chain(holes)
    .collect();
    places.sort_by_key(|(_, from_near, _)| *from_near);
    let wanted: Vec<_> = places
        .iter()
        .map(|(_, from_near, _)| (*from_near, row))
        .collect();
    places
        .into_iter()
        .map(|(name, from_near, reach)| Entry {
            from_near,
            reach,
            text: message![name, " ", from_near],
        })
        .zip(spread(&wanted))
        .collect()
}

fn distances(plan: &SledFitPlan) -> Vec<(Mm, Message)> {
    let places = runners(plan)
        .into_iter()
        .chain([plan.job.blade_line, plan.job.base_width]);
    places.map(|place| (place, message![place])).collect()
}

fn names(plan: &SledFitPlan) -> Vec<(Mm, Message)> {
    let names = runners(plan)
        .into_iter()
        .map(|place| (place, message!["runner"]));
    names
        .chain([(plan.job.blade_line, message!["blade line"])])
        .collect()
}

/// From each runner to the blade line, in the middle between them.
fn steps(plan: &SledFitPlan) -> Vec<(Mm, Message)> {
    let blade = plan.job.blade_line;
    let step = |place: Mm| ((place + blade) / 2.0, message![(place - blade).abs()]);
    runners(plan).into_iter().map(step).collect()
}

/// Texts side by side, as near to their places as they can stand.
fn in_row(mut texts: Vec<(Mm, Message)>, em: Mm) -> Vec<Beside> {
    texts.sort_by_key(|(at, _)| *at);
    let wanted: Vec<_> = texts
        .iter()
        .map(|(at, text)| (*at, text_width(text, em) + em * APART))
        .collect();
    texts
        .into_iter()
        .zip(spread(&wanted))
        .map(|((at, text), middle)| Beside { at, middle, text })
        .collect()
}
