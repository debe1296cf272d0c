//! Boards to be marked out by hand, at full size, on as many sheets of paper as it takes.

use super::dovetail::marks::hatched;
use super::dovetail::plane::{Place, Window, mm};
use super::item::{Anchor, Drawing, Point, Role};
use super::sheet::Sheet;
use super::sled::Paper;
use super::sled::labels::{Spot, text_at_middle};
use super::sled::marks::cross;
use crate::message;
use crate::message::Message;
use crate::units::Mm;

/// Strips of boards as wide as `width`, on sheets that are exactly as large as the printable part of the paper.
///
/// The boards' width runs down the paper from the reference edge, in tiles that overlap by 10 mm; a bar of
/// 100 mm on each says whether it was printed at full size. Both strips share a tile where they fit beside
/// each other; else the second one's tiles come first. None where a strip is deeper than the paper takes,
/// about 105 mm. `words` stand beside them.
pub(super) fn sheets(
    strips: &[Strip; 2],
    width: Mm,
    words: &[Message],
    paper: Paper,
) -> Vec<Drawing> {
    let (across, down) = paper.printable();
    let room = across - STRIPS;
    if strips.iter().any(|strip| strip.across().is_above(room)) {
        return Vec::new();
    }
    let [first, second] = strips;
    let together = first.across() + APART + second.across();
    let pages: Vec<Vec<&Strip>> = if together.is_above(room) {
        vec![vec![first], vec![second]]
    } else {
        vec![vec![first, second]]
    };
    let lows = lows(width, down - TOP - BOTTOM);
    let count = pages.len() * lows.len();
    let tiles = pages
        .iter()
        .flat_map(|strips| lows.iter().map(move |low| (strips, *low)));
    let numbered = tiles.enumerate().map(|(index, (strips, low))| {
        let tile = Tile {
            words,
            strips,
            low,
            number: index + 1,
            count,
            is_first: low < Mm::ZERO,
            is_last: Some(&low) == lows.last(),
            width: across,
            height: down,
        };
        tile.draw()
    });
    numbered.collect()
}

/// Paper that two neighbouring tiles both carry.
const OVERLAP: Mm = Mm::constant(10.0);
/// How far the strip goes past the board's edges.
const BEYOND: Mm = Mm::constant(3.0);
/// Left of the strips: the bar and the words.
const STRIPS: Mm = Mm::constant(72.0);
/// Between two strips.
const APART: Mm = Mm::constant(10.0);
/// Above the strips, for their letters.
const TOP: Mm = Mm::constant(12.0);
/// Below them.
const BOTTOM: Mm = Mm::constant(6.0);
/// Ten points.
const TYPE: Mm = Mm::constant(3.5);

/// Where each tile begins, from the reference edge.
fn lows(width: Mm, length: Mm) -> Vec<Mm> {
    let mut lows = vec![-BEYOND];
    let mut next = length - OVERLAP - BEYOND;
    while (next + OVERLAP).is_below(width + BEYOND) {
        lows.push(next);
        next += length - OVERLAP;
    }
    lows
}

/// One board's lines: `x` from the reference edge, then the depth.
pub(super) struct Strip {
    pub(super) letter: &'static str,
    /// The least and the greatest depth.
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) lines: Vec<Vec<Place>>,
    /// What is cut away, to be hatched.
    pub(super) waste: Vec<Vec<Place>>,
}

impl Strip {
    fn across(&self) -> Mm {
        mm(self.to - self.from)
    }
}

struct Tile<'a> {
    words: &'a [Message],
    strips: &'a [&'a Strip],
    /// What its upper end is of the width, from the reference edge.
    low: Mm,
    number: usize,
    count: usize,
    is_first: bool,
    is_last: bool,
    width: Mm,
    height: Mm,
}

impl Tile<'_> {
    fn draw(self) -> Drawing {
        let mut sheet = Sheet::new(self.width, self.height);
        sheet.type_size = TYPE;
        let mut left = STRIPS;
        for strip in self.strips {
            self.draw_strip(&mut sheet, strip, left);
            left += strip.across() + APART;
        }
        self.draw_joints(&mut sheet);
        self.draw_bar(&mut sheet);
        self.write_words(&mut sheet);
        sheet.finish(Point::new(self.width, self.height))
    }

    fn y(&self, x: f64) -> Mm {
        TOP + mm(x) - self.low
    }

    fn draw_strip(&self, sheet: &mut Sheet, strip: &Strip, left: Mm) {
        let high = self.low + self.height - TOP - BOTTOM;
        let window = Window {
            left: self.low.mm(),
            right: high.mm(),
            shallow: strip.from,
            deep: strip.to,
        };
        let place = |at: &Place| Point::new(left + mm(at.1 - strip.from), self.y(at.0));
        let waste: Vec<Vec<Point>> = strip
            .waste
            .iter()
            .map(|area| window.area(area).iter().map(place).collect())
            .collect();
        let apart = Mm::constant(3.0);
        let hatches = waste.iter().flat_map(|area| hatched(area, apart));
        sheet.lines(Role::Grain, hatches);
        let lines = strip.lines.iter().flat_map(|line| window.line(line));
        let lines = lines.map(|line| line.iter().map(place).collect());
        sheet.lines(Role::Outline, lines);
        if self.is_first {
            let edge = [strip.from, strip.to].map(|depth| place(&(0.0, depth)));
            sheet.lines(Role::ReferenceEdge, [edge.to_vec()]);
        }
        let letter = Spot::new(
            left + strip.across() / 2.0,
            Mm::constant(4.0),
            Anchor::Middle,
        );
        text_at_middle(sheet, Role::Letter, letter, message![strip.letter]);
    }

    /// Neighbours carry the same line and crosses in the middle of their overlap.
    fn draw_joints(&self, sheet: &mut Sheet) {
        let half = OVERLAP / 2.0;
        let above = (!self.is_first).then(|| (TOP + half, message!["cut off along this line"]));
        let next = message![
            "lay ",
            self.number + 1,
            " of ",
            self.count,
            " along this line"
        ];
        let below = (!self.is_last).then(|| (self.height - BOTTOM - half, next));
        for (y, text) in [above, below].into_iter().flatten() {
            let ends = [Mm::ZERO, self.width].map(|x| Point::new(x, y));
            sheet.lines(Role::Leader, [ends.to_vec()]);
            let places = [STRIPS - APART / 2.0, self.width - half];
            let crosses = places.map(|x| cross(Point::new(x, y), half * 0.8));
            sheet.lines(Role::Frame, crosses.concat());
            say(sheet, Role::Words, y - Mm::constant(2.8), text);
        }
    }

    /// Along the boards' width, as printers stretch one way and not the other.
    fn draw_bar(&self, sheet: &mut Sheet) {
        let x = Mm::constant(8.0);
        let bottom = self.height - Mm::constant(45.0);
        let top = bottom - Mm::constant(100.0);
        let tick = Mm::constant(2.0);
        let across = |y| vec![Point::new(x - tick, y), Point::new(x + tick, y)];
        let bar = vec![Point::new(x, top), Point::new(x, bottom)];
        sheet.lines(Role::Dimension, [bar, across(top), across(bottom)]);
        say(sheet, Role::Words, top, message!["100 mm: check with a"]);
        let second = top + Mm::constant(5.0);
        say(sheet, Role::Words, second, message!["rule before use"]);
        say(sheet, Role::Words, bottom, message!["0 mm"]);
    }

    fn write_words(&self, sheet: &mut Sheet) {
        let tile = message![self.number, " of ", self.count];
        let top = Mm::constant(26.0);
        let row = Mm::constant(5.0);
        say(sheet, Role::Letter, top, tile);
        let edge = self.is_first.then(|| message!["reference edge at the top"]);
        let mut y = top + row * 1.4;
        for line in edge.into_iter().chain(self.words.iter().cloned()) {
            say(sheet, Role::Words, y, line);
            y += row;
        }
    }
}

/// Words in the column left of the strips.
fn say(sheet: &mut Sheet, role: Role, y: Mm, text: Message) {
    let spot = Spot::new(Mm::constant(14.0), y, Anchor::Start);
    text_at_middle(sheet, role, spot, text);
}
