//! One drawer from above, and its side cut across.

use crate::drawer::{DrawerBoxPlan, DrawerPlan, End};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, closed, hatch, rectangle};
use crate::drawing::sled::labels::{Spot, text_at_middle, text_width};
use crate::message;
use crate::message::Message;
use crate::units::Mm;

/// One of the plan's drawers from above, to scale, its front below; dashed are its bottom where it lies in the
/// grooves, and tails that end behind a lap. Beneath it the lower corner of a side, cut across and enlarged, with groove and bottom.
///
/// `None` where the plan has no such drawer.
#[must_use]
pub fn drawer_plan_view(plan: &DrawerBoxPlan, drawer: usize) -> Option<Drawing> {
    let drawer = plan.drawers.get(drawer)?;
    let mut picture = Picture::new(plan, drawer);
    picture.draw_boards();
    picture.draw_sizes();
    let bottom = picture.draw_section();
    let corner = Point::new(picture.right, bottom);
    Some(picture.sheet.finish(corner))
}

struct Picture<'a> {
    drawer: &'a DrawerPlan,
    side: Mm,
    front: End,
    back: End,
    sheet: Sheet,
    left: Mm,
    top: Mm,
    right: Mm,
}

impl<'a> Picture<'a> {
    fn new(plan: &DrawerBoxPlan, drawer: &'a DrawerPlan) -> Self {
        let sheet = Sheet::new(drawer.width * 1.3, drawer.depth);
        let em = sheet.type_size;
        let (left, top) = (em * 0.6, em * 0.6);
        let beside = text_width(&message![drawer.depth], em) + em * 1.8;
        let words = em * (SECTION_LEFT + SECTION + 1.5);
        let longest = section_words(drawer)
            .iter()
            .map(|text| text_width(text, em))
            .max();
        let right = (left + drawer.width + beside).max(words + longest.unwrap_or_default());
        let [front, back] = plan.job.ends();
        let rows = across(drawer, front, back);
        let across = rows.iter().map(|text| text_width(text, em)).max();
        Self {
            drawer,
            side: plan.job.side,
            front,
            back,
            left,
            top,
            right: right.max(left + across.unwrap_or_default()) + em * 0.4,
            sheet,
        }
    }

    fn block(&self, left: Mm, top: Mm, width: Mm, height: Mm) -> Vec<Point> {
        let (left, top) = (self.left + left, self.top + top);
        rectangle(left, top, left + width, top + height)
    }

    fn draw_boards(&mut self) {
        let (width, depth) = (self.drawer.width, self.drawer.depth);
        let (side, front, back) = (self.side, self.front.thickness, self.back.thickness);
        let inner = depth - front - back;
        let sides = [Mm::ZERO, width - side].map(|left| self.block(left, back, side, inner));
        let ends = [
            self.block(Mm::ZERO, Mm::ZERO, width, back),
            self.block(Mm::ZERO, depth - front, width, front),
        ];
        let inside = self.block(side, back, width - side * 2.0, inner);
        let bottom = self.drawer.bottom;
        let panel = self.block(
            (width - bottom.length) / 2.0,
            back + (inner - bottom.width) / 2.0,
            bottom.length,
            bottom.width,
        );
        let dashed = self.blind_tails().into_iter().chain([panel]);
        let dashed: Vec<_> = dashed.map(|outline| closed(&outline)).collect();
        let outlines: Vec<_> = sides
            .iter()
            .chain(&ends)
            .map(|board| closed(board))
            .collect();
        self.sheet.polygons(Role::SledBase, [inside]);
        self.sheet.polygons(Role::BoardA, sides);
        self.sheet.polygons(Role::BoardB, ends);
        self.sheet.lines(Role::FineOutline, outlines);
        self.sheet.lines(Role::ToCome, dashed);
    }

    /// Where tails end within front and back.
    fn blind_tails(&self) -> Vec<Vec<Point>> {
        let front = (self.drawer.depth - self.front.thickness, self.front);
        let back = (self.back.lap, self.back);
        let mut tails = Vec::new();
        for (top, end) in [front, back] {
            if end.lap.is_above(Mm::ZERO) {
                for left in [Mm::ZERO, self.drawer.width - self.side] {
                    tails.push(self.block(left, top, self.side, end.thickness - end.lap));
                }
            }
        }
        tails
    }

    fn draw_sizes(&mut self) {
        let (left, top) = (self.left, self.top);
        let (right, below) = (left + self.drawer.width, top + self.drawer.depth);
        let beside = right + self.sheet.ems(0.8);
        let depth = message![self.drawer.depth];
        self.sheet.dimension_down(beside, top, below, depth);
        let mut y = below + self.sheet.ems(0.9);
        self.sheet.dimension_across(y, left, right);
        for text in across(self.drawer, self.front, self.back) {
            y += self.sheet.ems(1.3);
            let spot = Spot::new(left, y, Anchor::Start);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, text);
        }
    }

    /// The side's lower corner; the answer is the drawing's lower end.
    fn draw_section(&mut self) -> Mm {
        let drawer = self.drawer;
        let groove = &drawer.groove;
        let shown = (groove.from_edge + groove.width + self.side).min(drawer.height);
        let scale = SECTION / (self.side.max(shown * 0.5) / Mm::constant(1.0));
        let em = self.sheet.type_size;
        let drawn = |length: Mm| em * (length.mm() * scale);
        let left = em * SECTION_LEFT;
        let rows = across(drawer, self.front, self.back).len() as f64;
        let top = self.top + drawer.depth + em * (1.3 * rows + 2.5);
        let floor = top + drawn(shown);
        let place =
            |in_side: Mm, above: Mm| Point::new(left + drawn(in_side), floor - drawn(above));
        let inner = self.side;
        let near = inner - groove.depth;
        let (low, high) = (groove.from_edge, groove.from_edge + groove.width);
        let side = vec![
            place(Mm::ZERO, shown),
            place(Mm::ZERO, Mm::ZERO),
            place(inner, Mm::ZERO),
            place(inner, low),
            place(near, low),
            place(near, high),
            place(inner, high),
            place(inner, shown),
        ];
        let reach = (drawer.bottom.length - drawer.inside.width) / 2.0;
        let panel = rectangle(
            place(inner - reach, low).x,
            place(inner, low + drawer.bottom.thickness).y,
            place(inner, low).x + em * 1.2,
            place(inner, low).y,
        );
        let grain = hatch(&panel, em * 0.4);
        self.sheet.polygons(Role::BoardA, [side.clone()]);
        self.sheet.lines(Role::Outline, [side]);
        self.sheet.polygons(Role::SledBase, [panel.clone()]);
        self.sheet.lines(Role::Grain, grain);
        self.sheet.lines(Role::FineOutline, [closed(&panel)]);
        self.sheet
            .reference_edge(place(inner, Mm::ZERO).x, floor, false);
        self.draw_section_words(Point::new(left + em * (SECTION + 1.5), top));
        floor.max(top + em * (1.3 * section_words(drawer).len() as f64)) + em * 0.8
    }

    fn draw_section_words(&mut self, corner: Point) {
        let mut y = corner.y + self.sheet.ems(0.6);
        for text in section_words(self.drawer) {
            let spot = Spot::new(corner.x, y, Anchor::Start);
            text_at_middle(&mut self.sheet, Role::Dimension, spot, text);
            y += self.sheet.ems(1.3);
        }
    }
}

/// Where the section is, and how wide its side is at most, in type heights.
const SECTION_LEFT: f64 = 0.6;
const SECTION: f64 = 3.0;

/// What stands below the drawer from above.
fn across(drawer: &DrawerPlan, front: End, back: End) -> Vec<Message> {
    let mut rows = vec![message![drawer.width, " wide"]];
    if !front.is_as(back) {
        rows.extend([end_words("front ", front), end_words("back ", back)]);
    }
    rows.extend([
        message!["bottom ", drawer.bottom.length, " × ", drawer.bottom.width],
        message!["a side cut across, enlarged:"],
    ]);
    rows
}

fn end_words(name: &'static str, end: End) -> Message {
    let lap = if end.lap.is_above(Mm::ZERO) {
        message![", lap ", end.lap]
    } else {
        Message::default()
    };
    message![name, end.thickness].and(lap)
}

fn section_words(drawer: &DrawerPlan) -> [Message; 4] {
    let groove = &drawer.groove;
    [
        message!["height ", drawer.height],
        message!["edge to groove ", groove.from_edge],
        message!["groove ", groove.width],
        message!["deep ", groove.depth],
    ]
}
