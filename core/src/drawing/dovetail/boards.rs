//! Both boards of a dovetail as cut.

use super::joint::{Joint, closed_line, tail_shapes};
use super::marks::{Columns, grain, sheet, tellable_passes, words_between};
use super::plane::{Place, View, Window};
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::{Sheet, closed};
use crate::drawing::sled::labels::text_width;
use crate::dryfit::slanted::SocketShape;
use crate::joint::dovetail::{DovetailPlan, Tail};
use crate::message;
use crate::message::Message;
use crate::stop::Board;
use crate::units::Mm;

/// Both boards, to scale, as their stops cut them: above, the tail board's face with its end upwards; below,
/// the pin board seen on its end with its outer face upwards, so that every tail stands over its socket.
/// What no pass reaches is marked.
///
/// In a half-blind joint the pin board is drawn whole behind its lap, and the sockets to be cut by hand are
/// dashed. Numbers are the layout's, of a pin and a tail near the middle.
#[must_use]
pub fn dovetail_boards(plan: &DovetailPlan) -> Drawing {
    let mut sheet = sheet(plan.width, (plan.depth_a + plan.thickness_b) * 1.6);
    let paper = Paper::new(plan, &sheet);
    let joint = Joint::new(plan);
    draw_tail_board(&mut sheet, plan, &joint, &paper.tail_board);
    draw_pin_board(&mut sheet, plan, &joint, &paper.pin_board);
    paper.dimension_tails(&mut sheet, plan);
    paper.dimension_pins(&mut sheet, plan);
    let bottom = paper.pin_board.y(paper.pin_board.window.deep);
    let corner = Point::new(paper.columns.across, bottom + sheet.ems(2.5));
    sheet.finish(corner)
}

/// Where the boards lie.
struct Paper {
    columns: Columns,
    tail_board: View,
    pin_board: View,
}

/// Rows of the tail board's words on its wood, in type heights.
const BODY: f64 = 4.4;

impl Paper {
    fn new(plan: &DovetailPlan, sheet: &Sheet) -> Self {
        let columns = Columns::new(sheet, plan.width);
        let deep = plan.depth_a + sheet.ems(BODY);
        let end = sheet.ems(4.4);
        let face = end + deep + sheet.ems(2.5);
        let (outer, lap) = (plan.bench.proud.mm(), plan.lap.mm());
        let view = |top, shallow, deep| View {
            window: Window {
                left: 0.0,
                right: plan.width.mm(),
                shallow,
                deep,
            },
            corner: Point::new(columns.left, top),
            across: 1.0,
            along: 1.0,
        };
        let inner = outer + plan.bench.through.mm();
        Self {
            columns,
            tail_board: view(end, 0.0, deep.mm()),
            pin_board: view(face, outer - lap, inner),
        }
    }

    fn dimension_tails(&self, sheet: &mut Sheet, plan: &DovetailPlan) {
        let (left, right) = (self.columns.left, self.columns.right);
        let width = sheet.ems(1.5);
        sheet.dimension_across(width, left, right);
        self.number(sheet, (left, right), sheet.ems(1.1), message![plan.width]);
        let Some(tail) = plan.tails.get(plan.tails.len() / 2) else {
            return;
        };
        let tip = self.spans(tail.from_tip, tail.to_tip);
        let line = sheet.ems(3.8);
        sheet.dimension_across(line, tip.0, tip.1);
        self.number(
            sheet,
            tip,
            line - sheet.ems(0.45),
            message![tail.to_tip - tail.from_tip],
        );
        let base = self.spans(tail.from_base, tail.to_base);
        let line = self.tail_board.y(plan.depth_a.mm()) + sheet.ems(0.6);
        sheet.dimension_across(line, base.0, base.1);
        self.number(
            sheet,
            base,
            line + sheet.ems(1.15),
            message![tail.to_base - tail.from_base],
        );
    }

    fn dimension_pins(&self, sheet: &mut Sheet, plan: &DovetailPlan) {
        let window = self.pin_board.window;
        let above = self.pin_board.y(window.shallow) - sheet.ems(0.6);
        let below = self.pin_board.y(window.deep) + sheet.ems(0.6);
        let rows = [
            (above, above - sheet.ems(0.45), Face::Outer),
            (below, below + sheet.ems(1.15), Face::Inner),
        ];
        for (line, baseline, face) in rows {
            self.dimension_face(sheet, plan, face, line, baseline);
        }
    }

    /// From the left: the half-pin, a pin, and which face it is.
    fn dimension_face(
        &self,
        sheet: &mut Sheet,
        plan: &DovetailPlan,
        face: Face,
        line: Mm,
        baseline: Mm,
    ) {
        let (left, right) = self.columns.limits();
        let words = face.words(plan);
        let most = right - text_width(&words, sheet.type_size) - sheet.ems(0.5);
        let end = Point::new(right, baseline);
        sheet.text(Role::Words, end, Anchor::End, words);
        let (half_pin, pin) = face.pins(plan);
        let mut least = left;
        for (from, to) in [Some(half_pin), pin].into_iter().flatten() {
            let (shown_from, shown_to) = self.spans(from, to);
            sheet.dimension_across(line, shown_from, shown_to);
            let at = Point::new((shown_from + shown_to) / 2.0, baseline);
            let number = message![to - from];
            least = words_between(sheet, Role::Dimension, at, (least, most), number);
            least += sheet.ems(0.5);
        }
    }

    fn spans(&self, from: Mm, to: Mm) -> (Mm, Mm) {
        (self.columns.left + from, self.columns.left + to)
    }

    fn number(&self, sheet: &mut Sheet, span: (Mm, Mm), baseline: Mm, number: Message) {
        let at = Point::new((span.0 + span.1) / 2.0, baseline);
        self.columns.words(sheet, Role::Dimension, at, number);
    }
}

/// A face of the pin board.
#[derive(Clone, Copy, PartialEq)]
enum Face {
    Outer,
    Inner,
}

impl Face {
    /// The half-pin at the reference edge, and the pin nearest to the middle.
    fn pins(self, plan: &DovetailPlan) -> ((Mm, Mm), Option<(Mm, Mm)>) {
        let sides = |tail: &Tail| match self {
            Self::Outer => (tail.from_tip, tail.to_tip),
            Self::Inner => (tail.from_base, tail.to_base),
        };
        let first = plan.tails.first().map(|tail| sides(tail).0);
        let pairs = plan.tails.iter().zip(plan.tails.iter().skip(1));
        let pins = pairs.map(|(before, after)| (sides(before).1, sides(after).0));
        let off_middle = |pin: &(Mm, Mm)| (pin.0 + pin.1 - plan.width).abs();
        let half_pin = (Mm::ZERO, first.unwrap_or_default());
        (half_pin, pins.min_by_key(off_middle))
    }

    fn words(self, plan: &DovetailPlan) -> Message {
        match self {
            Self::Outer if plan.lap.is_above(Mm::ZERO) => message!["lap ", plan.lap],
            Self::Outer => message!["outer face"],
            Self::Inner => message!["inner face"],
        }
    }
}

fn draw_tail_board(sheet: &mut Sheet, plan: &DovetailPlan, joint: &Joint, view: &View) {
    let deep = view.window.deep;
    sheet.polygons(Role::BoardA, view.areas(&[joint.tail_board(deep)]));
    sheet.lines(Role::Grain, grain(view, plan.depth_a.mm()));
    sheet.polygons(Role::Uncut, view.areas(&joint.uncut_tails()));
    let end = joint.tail_end();
    let edge = |corner: Option<&Place>| corner.map(|corner| (corner.0, deep));
    let outline: Vec<Place> = edge(end.first())
        .into_iter()
        .chain(end.iter().copied())
        .chain(edge(end.last()))
        .collect();
    sheet.outline(view.lines(&[outline]));
    draw_passes(sheet, plan, Board::A, view, 0.0);
    let top = end.first().map_or(0.0, |corner| corner.1);
    let side = [top, deep].map(|depth| view.place((0.0, depth)));
    sheet.lines(Role::ReferenceEdge, [side.to_vec()]);
    let (left, bottom) = (view.x(0.0), view.y(deep));
    sheet.reference_edge(left, bottom - sheet.ems(0.9), true);
    let right = view.x(view.window.right).max(left + sheet.ems(11.0));
    let corner = Point::new(right - sheet.ems(1.6), bottom - sheet.ems(1.5));
    sheet.letter(corner, "A");
}

fn draw_pin_board(sheet: &mut Sheet, plan: &DovetailPlan, joint: &Joint, view: &View) {
    let whole = view.window.corners().to_vec();
    if joint.pins.is_empty() {
        sheet.polygons(Role::BoardB, view.areas(core::slice::from_ref(&whole)));
        let sockets = tail_shapes(plan).into_iter().map(|tail| {
            let corners: Vec<Point> = tail.iter().map(|place| view.place(*place)).collect();
            closed(&corners)
        });
        sheet.sockets_to_come(sockets.collect());
        sheet.outline(view.lines(&[closed_line(&whole)]));
    } else {
        let pins = joint.pin_shapes();
        sheet.polygons(Role::BoardB, view.areas(&pins));
        sheet.polygons(Role::Uncut, view.areas(&joint.uncut_pins()));
        sheet.lines(Role::FineOutline, view.lines(&floors(&joint.pins)));
        let outlines: Vec<_> = pins.iter().map(|pin| closed_line(pin)).collect();
        sheet.outline(view.lines(&outlines));
        draw_passes(sheet, plan, Board::B, view, joint.outer);
    }
    let window = view.window;
    let side = [window.shallow, window.deep].map(|depth| view.place((0.0, depth)));
    sheet.lines(Role::ReferenceEdge, [side.to_vec()]);
    if let Some(corner) = letter_b(plan, sheet, view) {
        sheet.letter(corner, "B");
    }
}

/// The pin board's faces go on behind its sockets.
fn floors(sockets: &[SocketShape]) -> Vec<Vec<Place>> {
    let lines = sockets.iter().map(|socket| {
        let [left, right, right_in, left_in] = socket.corners;
        [vec![left, right], vec![left_in, right_in]]
    });
    lines.flatten().collect()
}

/// Passes of a board, shifted down by `down`.
fn draw_passes(sheet: &mut Sheet, plan: &DovetailPlan, board: Board, view: &View, down: f64) {
    let passes: Vec<Vec<Place>> = tellable_passes(&plan.sets, board, &plan.bench)
        .iter()
        .map(|pass| pass.iter().map(|(x, depth)| (*x, depth + down)).collect())
        .collect();
    sheet.polygons(Role::Pass, view.areas(&passes));
}

/// In the middle of the widest tail's place, if it has room there.
fn letter_b(plan: &DovetailPlan, sheet: &Sheet, view: &View) -> Option<Point> {
    let window = view.window;
    let needed = sheet.ems(1.5).mm();
    if window.deep - window.shallow < needed {
        return None;
    }
    let tail = plan
        .tails
        .iter()
        .max_by_key(|tail| tail.to_base - tail.from_base)?;
    let (from, to) = (tail.from_base.mm(), tail.to_base.mm());
    let middle = view.place(((from + to) / 2.0, (window.shallow + window.deep) / 2.0));
    let corner = Point::new(middle.x - sheet.ems(0.45), middle.y - sheet.ems(0.47));
    (to - from > needed).then_some(corner)
}
