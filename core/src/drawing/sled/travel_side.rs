//! A sled over its stroke, seen from the right.

use super::labels::{Labels, ROW, Spot, text_at_middle};
use super::marks::{arrow, broken, contact, contact_words, dimension, words};
use super::travel::{Travel, runner_ends};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, closed, rectangle};
use crate::message;
use crate::sled::SledFitPlan;
use crate::units::Mm;

/// The sled on its saw from the right, the operator at the left: `pushed` 0 pulled fully back, 1 pushed through.
///
/// To scale, and the extent is the same for every `pushed`. The runner is drawn where it is, before it
/// is moved. Heights that are not known are not measured from anything: the table is broken off below
/// and the board above, and the carriage and the front rail stand as high as can be seen.
#[must_use]
pub fn sled_travel_side(plan: &SledFitPlan, pushed: f64) -> Drawing {
    let mut picture = Picture::new(Travel::new(plan, pushed));
    picture.draw_table();
    picture.draw_sled();
    picture.draw_contacts();
    picture.draw_heights();
    picture.write_words();
    picture.sheet.finish(picture.corner)
}

/// What everything takes up of the width beside the column of heights.
const COLUMN_SHARE: f64 = 1.16;
/// Table and runner as thick as can be seen, in type heights.
const TABLE: f64 = 1.5;
const RUNNER: f64 = 0.6;

struct Picture<'a> {
    travel: Travel<'a>,
    sheet: Sheet,
    labels: Labels,
    /// What lies nearest to the operator, and where that is on the sheet.
    low: Mm,
    left: Mm,
    /// End of what moves; the heights stand right of it.
    right: Mm,
    /// The table's top.
    table: Mm,
    /// How high the carriage, the board and the front rail stand on the base.
    carriage: Mm,
    board: Mm,
    rail: Mm,
    corner: Point,
}

impl<'a> Picture<'a> {
    fn new(travel: Travel<'a>) -> Self {
        let (low, high) = travel.extent();
        let depth = travel.job.depth;
        let sheet = Sheet::new((high - low) * COLUMN_SHARE, travel.job.height() * 2.5);
        let carriage = (depth * 1.3).max(sheet.ems(3.0));
        let board = carriage + sheet.ems(0.9);
        let left = sheet.ems(0.8);
        let right = left + (high - low);
        let table = sheet.ems(4.6) + board + travel.job.base_thickness;
        let corner = Point::new(right + sheet.ems(2.8), table + sheet.ems(TABLE + 4.8));
        Self {
            travel,
            labels: Labels::new(corner),
            low,
            left,
            right,
            table,
            carriage,
            board,
            rail: sheet.ems(1.6),
            corner,
            sheet,
        }
    }

    /// A place along the feed.
    fn x(&self, along: Mm) -> Mm {
        self.left + (along - self.low)
    }

    /// A place on the sled, given from the base's near edge.
    fn on_sled(&self, from_near_edge: Mm) -> Mm {
        self.x(self.travel.on_sled(from_near_edge))
    }

    fn base_top(&self) -> Mm {
        self.table - self.travel.job.base_thickness
    }

    fn draw_table(&mut self) {
        let (front, rear) = (self.x(self.travel.front()), self.x(self.travel.rear()));
        let bottom = self.table + self.sheet.ems(TABLE);
        let (from, to) = (Point::new(rear, bottom), Point::new(front, bottom));
        let mut table = vec![Point::new(front, self.table), Point::new(rear, self.table)];
        table.extend(broken(from, to, self.sheet.ems(0.3)));
        self.sheet.polygons(Role::Table, [table]);
    }

    /// The blade shows through the board and the carriage, which it cuts, and is behind the base.
    fn draw_sled(&mut self) {
        let job = self.travel.job;
        let (near, far) = runner_ends(job);
        let bottom = self.table + self.sheet.ems(RUNNER);
        let runner = rectangle(self.on_sled(near), self.table, self.on_sled(far), bottom);
        self.sheet.polygons(Role::Runner, [runner]);

        let floor = self.base_top();
        let thick = self.sheet.ems(1.4);
        let face = self.on_sled(job.carriage_face);
        let back = self.on_sled((job.carriage_face - thick).max(Mm::ZERO));
        let rail = self.on_sled(job.front_rail);
        let rail_end = self.on_sled((job.front_rail + thick).min(job.base_length));
        let rails = [
            rectangle(back, floor - self.carriage, face, floor),
            rectangle(rail, floor - self.rail, rail_end, floor),
        ];
        self.sheet.polygons(Role::Rail, rails);
        self.draw_board(face, floor);
        self.draw_blade();
        let (near, far) = (self.on_sled(Mm::ZERO), self.on_sled(job.base_length));
        let base = rectangle(near, floor, far, self.table);
        self.sheet.polygons(Role::SledBase, [base]);
    }

    fn draw_board(&mut self, face: Mm, floor: Mm) {
        let far = face + self.travel.job.board_thickness;
        let top = floor - self.board;
        let tooth = self
            .sheet
            .ems(0.25)
            .min(self.travel.job.board_thickness * 0.25);
        let mut board = vec![Point::new(face, floor)];
        board.extend(broken(
            Point::new(face, top + tooth),
            Point::new(far, top + tooth),
            tooth,
        ));
        board.push(Point::new(far, floor));
        self.sheet.polygons(Role::BoardA, [board.clone()]);
        self.sheet.lines(Role::Outline, [closed(&board)]);
    }

    /// What stands above the table: from chord to chord up to its top.
    fn draw_blade(&mut self) {
        const STEPS: u32 = 24;
        let plan = self.travel.plan;
        let heights = (0..=STEPS).map(|step| {
            // Closer together towards the top, where the arc runs level.
            let below = f64::from(STEPS - step) / f64::from(STEPS);
            plan.height * (1.0 - below * below)
        });
        let side: Vec<_> = heights
            .map(|height| {
                (
                    self.travel.job.blade.half_chord(height),
                    self.table - height,
                )
            })
            .collect();
        let near = side.iter().map(|(half, y)| Point::new(self.x(-*half), *y));
        let far = side.iter().rev().skip(1);
        let far = far.map(|(half, y)| Point::new(self.x(*half), *y));
        let blade: Vec<_> = near.chain(far).collect();
        self.sheet.polygons(Role::Blade, [blade]);
    }

    fn draw_contacts(&mut self) {
        let below = self.table + self.sheet.ems(TABLE);
        for at in self.travel.contacts() {
            let middle = Point::new(self.x(at.at), self.table + self.sheet.ems(RUNNER / 2.0));
            contact(&mut self.sheet, middle, at.is_off());
            let Some(said) = contact_words(&at) else {
                continue;
            };
            if at.at_end {
                let y = below + self.sheet.ems(0.5);
                let [from, to] = [at.edge, at.at].map(|along| Point::new(self.x(along), y));
                dimension(&mut self.sheet, from, to);
            }
            let spots = self.spots_below(middle.x, below + self.sheet.ems(1.6));
            self.labels
                .write(&mut self.sheet, said.role, &[said.row], spots);
        }
    }

    /// Below a place, pushed inwards where the drawing ends.
    fn spots_below(&self, x: Mm, y: Mm) -> Vec<Spot> {
        let inset = self.left;
        let rows = [y, y + self.sheet.ems(ROW)];
        rows.into_iter()
            .flat_map(|y| {
                [
                    Spot::new(x, y, Anchor::Middle),
                    Spot::new(inset, y, Anchor::Start),
                    Spot::new(self.corner.x - inset, y, Anchor::End),
                ]
            })
            .collect()
    }

    /// Heights of the blade, right of everything; their numbers above, so that low blades have room for them.
    fn draw_heights(&mut self) {
        let top = self.table - self.travel.plan.height;
        let base = self.base_top();
        let below = |y| {
            vec![
                Point::new(self.x(Mm::ZERO), y),
                Point::new(self.right + self.sheet.ems(2.3), y),
            ]
        };
        let lines = [
            below(top),
            vec![
                Point::new(self.right, base),
                Point::new(self.right + self.sheet.ems(1.3), base),
            ],
        ];
        self.sheet.lines(Role::Leader, lines);
        let plan = self.travel.plan;
        for (column, row, floor, text) in [
            (
                2.0,
                0.9,
                self.table,
                message!["blade ", plan.height, " above the table"],
            ),
            (
                1.0,
                2.1,
                base,
                message![self.travel.job.depth, " above the base"],
            ),
        ] {
            let x = self.right + self.sheet.ems(column);
            let y = self.sheet.ems(row);
            dimension(&mut self.sheet, Point::new(x, floor), Point::new(x, top));
            let line = vec![Point::new(x, top), Point::new(x, y - self.sheet.ems(0.4))];
            self.sheet.lines(Role::Leader, [line]);
            let spot = Spot::new(x - self.sheet.ems(0.4), y, Anchor::End);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, text);
        }
    }

    fn write_words(&mut self) {
        let job = self.travel.job;
        let floor = self.base_top();
        let above = floor - self.board - self.sheet.ems(0.5);
        let face = self.on_sled(job.carriage_face);
        let board = face + job.board_thickness;
        let rail = self.on_sled(job.front_rail);
        let names = [
            ("carriage", face - self.sheet.ems(0.2), above, Anchor::End),
            ("board", board, above, Anchor::Start),
            (
                "rail",
                rail,
                floor - self.rail - self.sheet.ems(0.8),
                Anchor::Start,
            ),
        ];
        for (name, x, y, anchor) in names {
            let rows = [message![name]];
            let spots = [
                Spot::new(x, y, anchor),
                Spot::new(x, y, Anchor::Start),
                Spot::new(x, y, Anchor::End),
            ];
            self.labels
                .write(&mut self.sheet, Role::Words, &rows, spots);
        }
        let y = self.corner.y - self.sheet.ems(0.7);
        words(&mut self.sheet, self.left, y, Anchor::Start, "operator");
        let middle = self.corner.x / 2.0;
        words(&mut self.sheet, middle, y, Anchor::Start, "feed");
        let from = middle + self.sheet.ems(2.8);
        let to = Point::new(from + self.sheet.ems(3.0), y);
        arrow(&mut self.sheet, Point::new(from, y), to);
    }
}
