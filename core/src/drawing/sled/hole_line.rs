//! The runner's hole line at full size, on as many sheets of paper as it takes.

use super::labels::{Labels, Spot, spread, text_at_middle};
use super::marks::{arrow, circle, cross};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::message;
use crate::message::Message;
use crate::sled::SledFitPlan;
use crate::units::Mm;

/// Paper to print on. Every side keeps a margin of 15 mm, which any printer can do without.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Paper {
    /// 210 by 297 mm (ISO 216).
    A4,
    /// 8½ by 11 inches.
    Letter,
}

const MARGIN: Mm = Mm::constant(15.0);

impl Paper {
    /// Width and height within the margins, upright, mm.
    #[must_use]
    pub fn printable(self) -> (Mm, Mm) {
        let (width, height) = match self {
            Self::A4 => (Mm::constant(210.0), Mm::constant(297.0)),
            Self::Letter => (Mm::INCH * 8.5, Mm::INCH * 11.0),
        };
        (width - MARGIN * 2.0, height - MARGIN * 2.0)
    }
}

/// The runner's hole line at 1:1, after the runner is moved: a strip along the paper's longer side, the
/// base's near edge below, in tiles that overlap by 10 mm. None where the runner has no holes.
///
/// Each drawing is exactly as large as the printable part of the paper, so that it is to scale when its
/// width in millimetres is the width it is printed with; a bar on each says whether it was. The strip
/// begins 15 mm before the near edge, or before a hole that lies nearer, and ends 15 mm past the last hole.
#[must_use]
pub fn hole_line_tiles(plan: &SledFitPlan, paper: Paper) -> Vec<Drawing> {
    let holes: Vec<Mm> = plan
        .job
        .holes
        .iter()
        .map(|hole| *hole + plan.runner.forward)
        .collect();
    let (Some(&first), Some(&last)) = (holes.first(), holes.last()) else {
        return Vec::new();
    };
    let (width, height) = paper.printable();
    let start = first.min(Mm::ZERO) - BEYOND;
    let end = last.max(Mm::ZERO) + BEYOND;
    let step = height - OVERLAP;
    let mut starts = vec![start];
    let mut next = start + step;
    while (next + OVERLAP).is_below(end) {
        starts.push(next);
        next += step;
    }
    let count = starts.len();
    starts
        .into_iter()
        .enumerate()
        .map(|(index, low)| {
            let mut sheet = Sheet::new(width, height);
            sheet.type_size = TYPE;
            let tile = Tile {
                plan,
                holes: &holes,
                number: index + 1,
                count,
                low,
                width,
                height,
                sheet,
                labels: Labels::new(Point::new(width, height)),
            };
            tile.draw()
        })
        .collect()
}

/// Paper that two neighbouring tiles both carry.
const OVERLAP: Mm = Mm::constant(10.0);
/// How far the strip goes past what it shows.
const BEYOND: Mm = Mm::constant(15.0);
/// Middle of the strip, right of the words and left of the numbers.
const MIDDLE: Mm = Mm::constant(120.0);
/// A hole as a mark for a centre punch: its circle, and the arms of its cross. Whole on one tile at
/// least, as the arms are shorter than half the overlap.
const RADIUS: Mm = Mm::constant(2.5);
const ARM: Mm = Mm::constant(4.5);
/// Ten points.
const TYPE: Mm = Mm::constant(3.5);
/// Edges of wider runners would run through the words.
const WIDEST: Mm = Mm::constant(60.0);
/// The least room for a number.
const ROW: Mm = Mm::constant(4.6);

struct Tile<'a> {
    plan: &'a SledFitPlan,
    holes: &'a [Mm],
    number: usize,
    count: usize,
    /// What its lower edge is of the strip, from the base's near edge.
    low: Mm,
    width: Mm,
    height: Mm,
    sheet: Sheet,
    labels: Labels,
}

impl Tile<'_> {
    fn draw(mut self) -> Drawing {
        self.draw_runner();
        self.draw_joints();
        self.draw_holes();
        self.draw_bar();
        self.write_words();
        self.draw_edges();
        self.sheet.finish(Point::new(self.width, self.height))
    }

    /// At the first spot with room.
    fn say(&mut self, role: Role, text: Message, spots: impl IntoIterator<Item = Spot>) {
        self.labels.write(&mut self.sheet, role, &[text], spots);
    }

    fn y(&self, from_near_edge: Mm) -> Mm {
        self.height - (from_near_edge - self.low)
    }

    fn high(&self) -> Mm {
        self.low + self.height
    }

    fn has(&self, place: Mm, around: Mm) -> bool {
        !(place - around).is_below(self.low) && !(place + around).is_above(self.high())
    }

    fn draw_runner(&mut self) {
        let line = |x| vec![Point::new(x, Mm::ZERO), Point::new(x, self.height)];
        let width = self.plan.job.runner_width;
        if !width.is_above(WIDEST) {
            let edges = [MIDDLE - width / 2.0, MIDDLE + width / 2.0];
            self.sheet.lines(Role::Outline, edges.map(line));
        }
        self.sheet.lines(Role::CentreLine, [line(MIDDLE)]);
    }

    fn draw_edges(&mut self) {
        let reach = Mm::constant(45.0);
        for (place, name) in [
            (Mm::ZERO, "near edge of the base"),
            (self.plan.job.base_length, "far edge of the base"),
        ] {
            if !self.has(place, Mm::ZERO) {
                continue;
            }
            let y = self.y(place);
            let line = vec![Point::new(MIDDLE - reach, y), Point::new(MIDDLE + reach, y)];
            self.sheet.lines(Role::ReferenceEdge, [line]);
            let end = MIDDLE - reach - Mm::constant(2.0);
            let moves = [0.0, -4.0, 4.0, -8.0, 8.0, -12.0, 12.0];
            let spots = moves.map(|down| Spot::new(end, y + Mm::constant(1.0) * down, Anchor::End));
            self.say(Role::Words, message![name], spots);
        }
    }

    /// Neighbours carry the same line and crosses in the middle of their overlap.
    fn draw_joints(&mut self) {
        let half = OVERLAP / 2.0;
        let below =
            (self.number > 1).then(|| (self.height - half, message!["cut off along this line"]));
        let above = (self.number < self.count).then(|| {
            (
                half,
                message![
                    "lay ",
                    self.number + 1,
                    " of ",
                    self.count,
                    " along this line"
                ],
            )
        });
        for (y, text) in [below, above].into_iter().flatten() {
            let ends = [Mm::ZERO, self.width].map(|x| Point::new(x, y));
            self.sheet.lines(Role::Leader, [ends.to_vec()]);
            let places = [Mm::constant(80.0), MIDDLE, Mm::constant(160.0)];
            let crosses = places.map(|x| cross(Point::new(x, y), half * 0.8));
            self.sheet.lines(Role::Frame, crosses.concat());
            let beside = Spot::new(Mm::constant(16.0), y - Mm::constant(2.6), Anchor::Start);
            self.say(Role::Words, text, [beside]);
        }
    }

    fn draw_holes(&mut self) {
        let holes: Vec<Mm> = self
            .holes
            .iter()
            .copied()
            .filter(|hole| self.has(*hole, ARM))
            .collect();
        let places: Vec<Point> = holes
            .iter()
            .map(|hole| Point::new(MIDDLE, self.y(*hole)))
            .collect();
        let circles = places.iter().map(|place| circle(*place, RADIUS));
        self.sheet.polygons(Role::Hole, circles);
        let crosses = places.iter().flat_map(|place| cross(*place, ARM));
        self.sheet.lines(Role::Hole, crosses);
        self.write_distances(&holes);
    }

    /// Every hole has its number, unless they are closer than numbers can be written one above another.
    fn write_distances(&mut self, holes: &[Mm]) {
        let mut every = 1;
        let mut rows = holes.len();
        while ROW * f64::from(u32::try_from(rows).unwrap_or(u32::MAX)) > self.height - ROW * 2.0 {
            every += 1;
            rows = holes.len().div_ceil(every);
        }
        let numbered: Vec<Mm> = holes.iter().copied().step_by(every).collect();
        let wanted: Vec<_> = numbered.iter().map(|hole| (*hole, ROW)).collect();
        let rows = spread(&wanted);
        let half = ROW / 2.0;
        let mut least = self.low + half;
        let mut most = self.high() + half - wanted.iter().map(|(_, size)| *size).sum::<Mm>();
        let edge = MIDDLE + (self.plan.job.runner_width.min(WIDEST) / 2.0).max(ARM);
        let (bend, start) = (edge + Mm::constant(1.0), edge + Mm::constant(4.0));
        for (hole, row) in numbered.iter().zip(rows) {
            let y = self.y(row.max(least).min(most));
            least += ROW;
            most += ROW;
            let leader = vec![
                Point::new(MIDDLE + ARM, self.y(*hole)),
                Point::new(bend, self.y(*hole)),
                Point::new(start - Mm::constant(0.6), y),
            ];
            self.sheet.lines(Role::Leader, [leader]);
            let spot = Spot::new(start, y, Anchor::Start);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, message![*hole]);
        }
    }

    /// Along the strip, as printers stretch one way and not the other.
    fn draw_bar(&mut self) {
        let x = Mm::constant(8.0);
        let bottom = self.height - Mm::constant(45.0);
        let tick = Mm::constant(2.0);
        let at = |up: f64| bottom - Mm::constant(1.0) * up;
        let across = |up: f64| vec![Point::new(x - tick, at(up)), Point::new(x + tick, at(up))];
        let bar = |from: f64, to: f64| vec![Point::new(x, at(from)), Point::new(x, at(to))];
        self.sheet.lines(
            Role::Dimension,
            [
                bar(0.0, 100.0),
                bar(100.0, 150.0),
                across(0.0),
                across(100.0),
                across(150.0),
            ],
        );
        let beside = x + Mm::constant(4.0);
        for (up, text) in [
            (100.0, "100 mm: check with a rule before use"),
            (150.0, "150 mm"),
            (0.0, "0 mm"),
        ] {
            let spot = Spot::new(beside, at(up), Anchor::Start);
            self.say(Role::Words, message![text], [spot]);
        }
    }

    fn write_words(&mut self) {
        let left = Mm::constant(16.0);
        let row = Mm::constant(5.0);
        let top = Mm::constant(24.0);
        let from_left = self.plan.runner.from_base_left;
        let second = self.plan.second_runner;
        let tile = message![self.number, " of ", self.count];
        let spot = Spot::new(left, top - row * 1.4, Anchor::Start);
        self.say(Role::Letter, tile, [spot]);
        let lines = [
            Some(message!["runner's middle:"]),
            Some(message![from_left, " from the left edge"]),
            second.map(|second| message!["or ", second.from_base_left]),
            Some(message!["numbers: from the near edge"]),
        ];
        let mut y = top;
        for text in lines.into_iter().flatten() {
            self.say(Role::Words, text, [Spot::new(left, y, Anchor::Start)]);
            y += row;
        }
        let feed = Mm::constant(8.0);
        arrow(
            &mut self.sheet,
            Point::new(feed, top + row * 3.0),
            Point::new(feed, top),
        );
        let below = Spot::new(Mm::constant(4.0), top + row * 4.0, Anchor::Start);
        self.say(Role::Words, message!["feed"], [below]);
    }
}
