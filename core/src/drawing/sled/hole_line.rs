//! The runner's hole line at full size, on as many sheets of paper as it takes.

use super::labels::{Spot, spread, text_at_middle};
use super::marks::{arrow, circle, cross, words};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::Sheet;
use crate::message;
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
            let tile = Tile {
                plan,
                holes: &holes,
                number: index + 1,
                count,
                low,
                width,
                height,
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
}

impl Tile<'_> {
    fn draw(&self) -> Drawing {
        let mut sheet = Sheet::new(self.width, self.height);
        sheet.type_size = TYPE;
        self.draw_runner(&mut sheet);
        self.draw_edges(&mut sheet);
        self.draw_joints(&mut sheet);
        self.draw_holes(&mut sheet);
        self.draw_bar(&mut sheet);
        self.write_words(&mut sheet);
        sheet.finish(Point::new(self.width, self.height))
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

    fn draw_runner(&self, sheet: &mut Sheet) {
        let line = |x| vec![Point::new(x, Mm::ZERO), Point::new(x, self.height)];
        let width = self.plan.job.runner_width;
        if !width.is_above(WIDEST) {
            let edges = [MIDDLE - width / 2.0, MIDDLE + width / 2.0];
            sheet.lines(Role::Outline, edges.map(line));
        }
        sheet.lines(Role::CentreLine, [line(MIDDLE)]);
    }

    fn draw_edges(&self, sheet: &mut Sheet) {
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
            sheet.lines(Role::ReferenceEdge, [line]);
            let end = MIDDLE - reach - Mm::constant(2.0);
            words(sheet, end, y, Anchor::End, name);
        }
    }

    /// Neighbours carry the same line and crosses in the middle of their overlap.
    fn draw_joints(&self, sheet: &mut Sheet) {
        let half = OVERLAP / 2.0;
        let below =
            (self.number > 1).then(|| (self.height - half, message!["cut off along this line"]));
        let above = (self.number < self.count)
            .then(|| (half, message!["lay ", self.number + 1, " along this line"]));
        for (y, text) in [below, above].into_iter().flatten() {
            let ends = [Mm::ZERO, self.width].map(|x| Point::new(x, y));
            sheet.lines(Role::Leader, [ends.to_vec()]);
            let places = [Mm::constant(80.0), MIDDLE, Mm::constant(160.0)];
            let crosses = places.map(|x| cross(Point::new(x, y), half * 0.8));
            sheet.lines(Role::Frame, crosses.concat());
            let beside = Spot::new(Mm::constant(16.0), y - Mm::constant(2.6), Anchor::Start);
            text_at_middle(sheet, Role::Words, beside, text);
        }
    }

    fn draw_holes(&self, sheet: &mut Sheet) {
        let holes: Vec<Mm> = self
            .holes
            .iter()
            .copied()
            .filter(|hole| self.has(*hole, ARM))
            .collect();
        let at = |hole: &Mm| Point::new(MIDDLE, self.y(*hole));
        sheet.polygons(
            Role::Hole,
            holes.iter().map(|hole| circle(at(hole), RADIUS)),
        );
        sheet.lines(
            Role::Hole,
            holes.iter().flat_map(|hole| cross(at(hole), ARM)),
        );
        self.write_distances(sheet, &holes);
    }

    /// Every hole has its number, unless they are closer than numbers can be written one above another.
    fn write_distances(&self, sheet: &mut Sheet, holes: &[Mm]) {
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
        let below = rows
            .first()
            .map_or(Mm::ZERO, |row| (self.low + half - *row).max(Mm::ZERO));
        let above = rows
            .last()
            .map_or(Mm::ZERO, |row| (*row + half - self.high()).max(Mm::ZERO));
        let edge = MIDDLE + (self.plan.job.runner_width.min(WIDEST) / 2.0).max(ARM);
        let (bend, start) = (edge + Mm::constant(1.0), edge + Mm::constant(4.0));
        for (hole, row) in numbered.iter().zip(rows) {
            let y = self.y(row + below - above);
            let leader = vec![
                Point::new(MIDDLE + ARM, self.y(*hole)),
                Point::new(bend, self.y(*hole)),
                Point::new(start - Mm::constant(0.6), y),
            ];
            sheet.lines(Role::Leader, [leader]);
            let spot = Spot::new(start, y, Anchor::Start);
            text_at_middle(sheet, Role::Dimension, spot, message![*hole]);
        }
    }

    /// Along the strip, as printers stretch one way and not the other.
    fn draw_bar(&self, sheet: &mut Sheet) {
        let x = Mm::constant(8.0);
        let bottom = self.height - Mm::constant(45.0);
        let tick = Mm::constant(2.0);
        let at = |up: f64| bottom - Mm::constant(1.0) * up;
        let across = |up: f64| vec![Point::new(x - tick, at(up)), Point::new(x + tick, at(up))];
        let bar = |from: f64, to: f64| vec![Point::new(x, at(from)), Point::new(x, at(to))];
        sheet.lines(
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
            (0.0, "0"),
        ] {
            words(sheet, beside, at(up), Anchor::Start, text);
        }
    }

    fn write_words(&self, sheet: &mut Sheet) {
        let left = Mm::constant(16.0);
        let row = Mm::constant(5.0);
        let top = Mm::constant(20.0);
        let from_left = self.plan.runner.from_base_left;
        let lines = [
            message![self.number, " of ", self.count],
            message!["Middle of the runner:"],
            message![from_left, " from the left edge."],
            message!["Numbers: from the near edge."],
        ];
        let mut y = top;
        for text in lines {
            text_at_middle(sheet, Role::Words, Spot::new(left, y, Anchor::Start), text);
            y += row;
        }
        let feed = Mm::constant(8.0);
        arrow(
            sheet,
            Point::new(feed, top + row * 3.0),
            Point::new(feed, top),
        );
        words(
            sheet,
            Mm::constant(4.0),
            top + row * 4.0,
            Anchor::Start,
            "feed",
        );
    }
}
