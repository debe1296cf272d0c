//! One board of a dovetail at the saw: what is cut, what is next, what is still to come.

use super::marks::{Columns, sheet, wood};
use super::plane::{Place, View, Window};
use super::visible::outline;
use crate::drawing::item::{Anchor, Drawing, Point, Role};
use crate::drawing::sheet::CAP_HEIGHT;
use crate::drawing::sheet::Sheet;
use crate::dryfit::slanted::{passes, wood_left};
use crate::joint::dovetail::DovetailPlan;
use crate::math::within;
use crate::message;
use crate::order::in_order;
use crate::stop::{Board, Set, Stop};
use crate::units::Mm;

/// A pass narrower than this share of the board is shown enlarged too: about 3 px on the narrowest phones.
const LEGIBLE: f64 = 0.01;
/// How many times the depth of cut is shown of the tail board.
const DEPTHS_SHOWN: f64 = 1.9;
/// How many kerfs an enlarged part is wide.
const KERFS_SHOWN: f64 = 24.0;

/// The board of a set before its pass at index `before`: what all sets before it and its own earlier passes
/// have cut, the next pass lit, the rest of its sockets dashed. Past the last stop nothing is lit.
///
/// The tail board stands on its end, seen on the face towards the operator; the pin board is seen from above,
/// its outer face below. The edge against the stop is at the left: turned over, the board is mirrored. To
/// scale across; along the depth it fills the strip. Where a pass would be too narrow to see, its surroundings
/// are enlarged below a strip of the whole board.
#[must_use]
pub fn dovetail_progress(plan: &DovetailPlan, set: &Set, before: usize) -> Drawing {
    let mut sheet = sheet(plan.width, Mm::ZERO);
    let columns = Columns::new(&sheet, plan.width);
    let progress = Progress::new(plan, set, before);
    let strip = Strip {
        window: progress.board,
        left: columns.left,
        width: plan.width,
        top: sheet.ems(1.7),
        height: sheet.ems(4.6),
    };
    write_edges(&mut sheet, set, &columns);
    let bottom = match progress.enlarged() {
        None => {
            progress.draw(&mut sheet, &strip);
            strip.bottom()
        }
        Some((left, right)) => progress.draw_enlarged(&mut sheet, &strip, left, right),
    };
    let corner = Point::new(columns.across, bottom + sheet.ems(1.5));
    sheet.finish(corner)
}

/// Says above the strip which edge is against the stop.
fn write_edges(sheet: &mut Sheet, set: &Set, columns: &Columns) {
    let middle = sheet.ems(0.8);
    let baseline = middle + sheet.ems(CAP_HEIGHT / 2.0);
    let (left, right) = columns.limits();
    let right = Point::new(right, baseline);
    if set.flipped {
        let left = Point::new(left, baseline);
        sheet.text(Role::Words, left, Anchor::Start, message!["other edge"]);
        let words = message!["reference edge"];
        sheet.text(Role::ReferenceEdge, right, Anchor::End, words);
    } else {
        sheet.reference_edge(columns.left, middle, true);
        if set.board == Board::B {
            sheet.text(Role::Words, right, Anchor::End, message!["inner face"]);
        }
    }
}

/// Where a part of the board is drawn.
#[derive(Clone, Copy)]
struct Strip {
    window: Window,
    left: Mm,
    width: Mm,
    top: Mm,
    height: Mm,
}

impl Strip {
    fn bottom(&self) -> Mm {
        self.top + self.height
    }

    fn view(&self) -> View {
        let window = self.window;
        View {
            window,
            corner: Point::new(self.left, self.bottom()),
            across: self.width.mm() / (window.right - window.left),
            along: -(self.height.mm() / (window.deep - window.shallow)),
        }
    }
}

/// The board in the orientation of its set.
struct Progress<'a> {
    set: &'a Set,
    board: Window,
    wood: Vec<Vec<Place>>,
    outline: Vec<Vec<Place>>,
    /// The next pass: one outline for each kind of tooth.
    current: Vec<Vec<Place>>,
    to_come: Vec<Vec<Place>>,
}

impl<'a> Progress<'a> {
    fn new(plan: &DovetailPlan, set: &'a Set, before: usize) -> Self {
        let (done, coming) = set.stops.split_at(before.min(set.stops.len()));
        let taken = |stops: &[Stop]| passes(&with_stops(set, stops), &plan.bench);
        let earlier = plan.sets.iter().take_while(|other| *other != set);
        let mut cut: Vec<_> = earlier
            .filter(|other| other.board == set.board)
            .flat_map(|other| passes(other, &plan.bench))
            .collect();
        cut.extend(taken(done));
        let width = plan.width.mm();
        let turned = |places: Vec<Place>| -> Vec<Place> {
            let turn = |(x, depth): Place| (if set.flipped { width - x } else { x }, depth);
            places.into_iter().map(turn).collect()
        };
        let cut: Vec<_> = cut.into_iter().map(turned).collect();
        let board = Window {
            left: 0.0,
            right: width,
            shallow: 0.0,
            deep: match set.board {
                Board::A => set.height.mm() * DEPTHS_SHOWN,
                Board::B => plan.thickness_b.mm(),
            },
        };
        let sockets = coming.chunk_by(|one, next| one.space == next.space);
        let to_come = sockets.filter_map(|stops| socket(taken(stops)));
        Self {
            set,
            board,
            wood: wood_left(&board.corners(), &cut),
            outline: outline(&board, [true, true, true, set.board == Board::B], &cut),
            current: taken(coming.get(..1).unwrap_or_default())
                .into_iter()
                .map(turned)
                .collect(),
            to_come: to_come.map(turned).collect(),
        }
    }

    /// What part of the board is shown enlarged, if any must be.
    fn enlarged(&self) -> Option<(f64, f64)> {
        let (kerf, width) = (self.set.kerf.mm(), self.board.right);
        let middle = middle(self.current.first()?);
        if kerf > width * LEGIBLE {
            return None;
        }
        let half = kerf * KERFS_SHOWN / 2.0;
        let middle = within(middle, half, width - half);
        Some((middle - half, middle + half))
    }

    /// Draws the whole board in a thin strip and below it the part between `left` and `right`; returns
    /// where that ends.
    fn draw_enlarged(&self, sheet: &mut Sheet, strip: &Strip, left: f64, right: f64) -> Mm {
        let thin = Strip {
            height: sheet.ems(2.0),
            ..*strip
        };
        let enlarged = Strip {
            window: Window {
                left,
                right,
                ..strip.window
            },
            top: thin.bottom() + sheet.ems(1.4),
            ..*strip
        };
        self.draw(sheet, &thin);
        self.draw(sheet, &enlarged);
        let view = thin.view();
        sheet.lead_below(
            [
                Point::new(view.x(left), thin.top),
                Point::new(view.x(right), thin.bottom()),
            ],
            [
                Point::new(enlarged.left, enlarged.top),
                Point::new(enlarged.left + enlarged.width, enlarged.top),
            ],
        );
        enlarged.bottom()
    }

    fn draw(&self, sheet: &mut Sheet, strip: &Strip) {
        let view = strip.view();
        sheet.polygons(wood(self.set.board), view.areas(&self.wood));
        sheet.outline(view.lines(&self.outline));
        sheet.sockets_to_come(view.lines(&self.to_come));
        self.draw_reference_edge(sheet, &view);
        let Some(current) = self.current.first() else {
            return;
        };
        sheet.polygons(Role::CurrentPass, view.areas(&self.current));
        let x = view.x(within(
            middle(current),
            strip.window.left,
            strip.window.right,
        ));
        sheet.polygons(Role::CurrentPass, [pointer(sheet, x, strip.bottom())]);
    }

    /// A bar along it, where the strip shows it.
    fn draw_reference_edge(&self, sheet: &mut Sheet, view: &View) {
        let edge = if self.set.flipped {
            self.board.right
        } else {
            0.0
        };
        if edge < view.window.left || edge > view.window.right {
            return;
        }
        let side = [self.board.shallow, self.board.deep].map(|depth| view.place((edge, depth)));
        sheet.lines(Role::ReferenceEdge, [side.to_vec()]);
    }
}

fn with_stops(set: &Set, stops: &[Stop]) -> Set {
    Set {
        stops: stops.to_vec(),
        ..set.clone()
    }
}

/// Walls and floor of what neighbouring passes of one set open together.
fn socket(passes: Vec<Vec<Place>>) -> Option<Vec<Place>> {
    let passes = in_order(passes, |a, b| start(a).total_cmp(&start(b)));
    let (first, last) = (passes.first()?, passes.last()?);
    Some(vec![
        *first.first()?,
        *first.last()?,
        *last.get(2)?,
        *last.get(1)?,
    ])
}

fn start(pass: &[Place]) -> f64 {
    pass.first().map_or(0.0, |corner| corner.0)
}

/// The middle of a pass where the blade enters.
fn middle(pass: &[Place]) -> f64 {
    let far = pass.get(1).map_or(0.0, |corner| corner.0);
    (start(pass) + far) / 2.0
}

/// An arrowhead from below.
fn pointer(sheet: &Sheet, x: Mm, y: Mm) -> Vec<Point> {
    let (tip, foot, half) = (y + sheet.ems(0.2), y + sheet.ems(1.0), sheet.ems(0.45));
    vec![
        Point::new(x, tip),
        Point::new(x + half, foot),
        Point::new(x - half, foot),
    ]
}
