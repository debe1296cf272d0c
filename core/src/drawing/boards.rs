//! Both boards of a box joint face on, as cut.

use super::item::{Anchor, Drawing, Point, Role};
use super::sheet::{CAP_HEIGHT, Sheet, rectangle};
use super::view::{View, visible_end};
use super::window::Window;
use crate::dryfit::Profile;
use crate::joint::box_joint::BoxJointPlan;
use crate::message;
use crate::stop::{Board, Set};
use crate::units::Mm;

/// Passes narrower than this share of the board could not be told apart and are not drawn one by one.
const TELLABLE: f64 = 0.018;

/// Both boards, to scale: A above with its end downwards, B below with its end upwards, the reference
/// edge of both at the left, so that every pin points at the socket it goes into.
#[must_use]
pub fn box_joint_drawing(plan: &BoxJointPlan) -> Drawing {
    let depths = plan.depth_a + plan.depth_b;
    let mut sheet = Sheet::new(plan.width, depths + plan.width * 0.3);
    let paper = Paper::new(plan, &sheet);
    for set in &plan.sets {
        draw_board(&mut sheet, plan.width, set, &paper.view(set.board));
    }
    draw_dimensions(&mut sheet, plan, &paper);
    let words = paper.left + sheet.ems(Sheet::REFERENCE_WORDS);
    let right = words.max(paper.right + sheet.ems(4.4));
    let corner = Point::new(right, paper.bottom + sheet.ems(2.0));
    sheet.finish(corner)
}

/// Where the boards lie.
struct Paper {
    left: Mm,
    right: Mm,
    top: Mm,
    end_a: Mm,
    end_b: Mm,
    bottom: Mm,
    window: Window,
}

impl Paper {
    fn new(plan: &BoxJointPlan, sheet: &Sheet) -> Self {
        let body = sheet.ems(4.0).max(plan.depth_a.max(plan.depth_b) * 0.5);
        // The numbers of both depths stand above one another.
        let apart = sheet
            .ems(0.9)
            .max(sheet.ems(1.3) - (plan.depth_a + plan.depth_b) / 2.0);
        let left = sheet.ems(0.6);
        let top = sheet.ems(2.4);
        let end_a = top + body + plan.depth_a;
        let end_b = end_a + apart;
        Self {
            left,
            right: left + plan.width,
            top,
            end_a,
            end_b,
            bottom: end_b + plan.depth_b + body,
            window: Window {
                left: Mm::ZERO,
                right: plan.width,
                shallow: Mm::ZERO,
                deep: Mm::ZERO,
            },
        }
    }

    fn view(&self, board: Board) -> View {
        let (end, far, along) = match board {
            Board::A => (self.end_a, self.top, -1.0),
            Board::B => (self.end_b, self.bottom, 1.0),
        };
        let window = Window {
            deep: (far - end).abs(),
            ..self.window
        };
        View {
            window,
            corner: Point::new(self.left, end),
            across: 1.0,
            along,
        }
    }
}

fn draw_board(sheet: &mut Sheet, width: Mm, set: &Set, view: &View) {
    let profile = visible_end(set, width);
    let role = if set.board == Board::A {
        Role::BoardA
    } else {
        Role::BoardB
    };
    sheet.polygons(role, view.wood(&profile));
    sheet.lines(Role::Grain, grain(set.height, view));
    sheet.polygons(
        Role::Uncut,
        uncut(&profile, set).iter().map(|area| view.places(area)),
    );
    sheet.outline(view.outline(&profile));
    if set.kerf > width * TELLABLE {
        let pass = |at: Mm| {
            let corners = rectangle(
                at.max(Mm::ZERO),
                Mm::ZERO,
                (at + set.kerf).min(width),
                set.height,
            );
            view.places(&corners)
        };
        sheet.polygons(Role::Pass, set.stops.iter().map(|stop| pass(stop.at)));
    }
    draw_letter_and_edge(sheet, set, &profile, view);
}

/// Wood left standing inside sockets, on the board's face.
fn uncut(profile: &Profile, set: &Set) -> Vec<Vec<Point>> {
    let sockets = set.stops.chunk_by(|one, next| one.socket == next.socket);
    sockets
        .filter_map(|passes| {
            let left = passes.iter().map(|stop| stop.at).min()?;
            let right = passes.iter().map(|stop| stop.at).max()? + set.kerf;
            Window {
                left,
                right,
                shallow: Mm::ZERO,
                deep: set.height,
            }
            .wood(profile)
        })
        .collect()
}

/// Grain runs along the board. The lines are spread by the golden section, which never looks regular.
fn grain(depth: Mm, view: &View) -> Vec<Vec<Point>> {
    const LINES: u32 = 23;
    const GOLDEN: f64 = 0.618_033_988_749_894_8;
    let window = view.window;
    let (width, body) = (window.right - window.left, window.deep - depth);
    (1..=LINES)
        .map(|line| {
            let share = (f64::from(line) * GOLDEN).fract();
            let x =
                window.left + width * (0.02 + 0.96 * f64::from(line - 1) / f64::from(LINES - 1));
            let lean = width * (0.006 * (share - 0.5));
            let near = depth + body * (0.12 + 0.5 * (share * 7.0).fract());
            view.places(&[
                Point::new(x + lean, window.deep),
                Point::new(x, (window.deep + near) / 2.0),
                Point::new(x - lean / 2.0, near),
            ])
        })
        .collect()
}

fn draw_letter_and_edge(sheet: &mut Sheet, set: &Set, profile: &Profile, view: &View) {
    let is_a = set.board == Board::A;
    let far = view.y(view.window.deep);
    let left = view.x(view.window.left);
    let (letter, edge) = if is_a { (0.6, 2.7) } else { (-1.6, -2.7) };
    let name = if is_a { "A" } else { "B" };
    sheet.letter(
        Point::new(left + sheet.ems(0.6), far + sheet.ems(letter)),
        name,
    );
    let end = profile
        .places()
        .first()
        .map_or(Mm::ZERO, |place| place.depth);
    let side = [end, view.window.deep].map(|depth| view.place(Point::new(view.window.left, depth)));
    sheet.lines(Role::ReferenceEdge, [side.to_vec()]);
    sheet.reference_edge(left, far + sheet.ems(edge), is_a);
}

fn draw_dimensions(sheet: &mut Sheet, plan: &BoxJointPlan, paper: &Paper) {
    let line = paper.top - sheet.ems(0.9);
    sheet.dimension_across(line, paper.left, paper.right);
    let above = Point::new((paper.left + paper.right) / 2.0, line - sheet.ems(0.35));
    sheet.text(Role::Dimension, above, Anchor::Middle, message![plan.width]);

    let beside = paper.right + sheet.ems(0.7);
    sheet.dimension_down(
        beside,
        paper.end_a - plan.depth_a,
        paper.end_a,
        message![plan.depth_a],
    );
    sheet.dimension_down(
        beside,
        paper.end_b,
        paper.end_b + plan.depth_b,
        message![plan.depth_b],
    );

    if let Some((from, to)) = shown_finger(plan) {
        let line = paper.bottom + sheet.ems(0.8);
        sheet.dimension_across(line, paper.left + from, paper.left + to);
        let at = Point::new(
            paper.left + to + sheet.ems(0.5),
            line + sheet.ems(CAP_HEIGHT / 2.0),
        );
        sheet.text(Role::Dimension, at, Anchor::Start, message![to - from]);
    }
}

/// The finger whose width is written down: an inner one where there is one, with room for its number beside it.
fn shown_finger(plan: &BoxJointPlan) -> Option<(Mm, Mm)> {
    let index = (plan.count / 3).max(1).min(plan.count.saturating_sub(2));
    Some((
        *plan.boundaries.get(index)?,
        *plan.boundaries.get(index + 1)?,
    ))
}
