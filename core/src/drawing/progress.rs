//! One board at the saw: what is cut, what is next, what is still to come.

use super::item::{Drawing, Point, Role};
use super::sheet::{Sheet, rectangle};
use super::view::View;
use super::window::Window;
use crate::dryfit::{Passes, Profile};
use crate::stop::{Board, Set, Stop};
use crate::units::Mm;

/// A pass narrower than this share of the board is shown enlarged too: about 3 px on the narrowest phones.
const LEGIBLE: f64 = 0.01;
/// How many times the depth of cut is shown of the board.
const DEPTHS_SHOWN: f64 = 1.9;
/// How many kerfs an enlarged part is wide.
const KERFS_SHOWN: f64 = 24.0;

/// The board as it stands on the sled, its end down, before the pass at `current` (an index into the
/// set's stops): earlier passes are cut, the current one stands out, the sockets to come are outlined.
///
/// To scale across the board; along it the depth of cut fills the strip, so that a shallow cut in a
/// wide board can be seen as well, and floors are drawn flat. Where a pass would be too narrow to see,
/// its surroundings are enlarged below a strip of the whole board. Past the last stop everything is cut.
#[must_use]
pub fn board_progress(set: &Set, width: Mm, current: usize) -> Drawing {
    let mut sheet = Sheet::new(width, Mm::ZERO);
    let progress = Progress::new(set, width, current);
    let margin = sheet.ems(0.5);
    let strip = Strip {
        window: Window {
            left: Mm::ZERO,
            right: width,
            shallow: Mm::ZERO,
            deep: set.height * DEPTHS_SHOWN,
        },
        left: margin,
        top: margin,
        width,
        height: sheet.ems(4.4),
    };
    let bottom = match progress.enlarged() {
        None => progress.draw_whole(&mut sheet, &strip),
        Some((left, right)) => progress.draw_enlarged(&mut sheet, &strip, left, right),
    };
    let corner = Point::new(width + margin * 2.0, bottom + sheet.ems(1.5));
    sheet.finish(corner)
}

/// Where a part of the board is drawn.
#[derive(Clone, Copy)]
struct Strip {
    window: Window,
    left: Mm,
    top: Mm,
    width: Mm,
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
            across: self.width / (window.right - window.left),
            along: -(self.height / (window.deep - window.shallow)),
        }
    }
}

struct Progress<'a> {
    set: &'a Set,
    width: Mm,
    current: Option<&'a Stop>,
    cut: Profile,
    to_come: Profile,
}

impl<'a> Progress<'a> {
    fn new(set: &'a Set, width: Mm, current: usize) -> Self {
        let (done, coming) = set.stops.split_at(current.min(set.stops.len()));
        Self {
            set,
            width,
            current: coming.first(),
            cut: Passes::new(set, done).flat().cut(width),
            to_come: Passes::new(set, coming).flat().cut(width),
        }
    }

    /// What part of the board is shown enlarged, if any must be.
    fn enlarged(&self) -> Option<(Mm, Mm)> {
        let current = self.current?;
        if self.set.kerf > self.width * LEGIBLE {
            return None;
        }
        let half = self.set.kerf * KERFS_SHOWN / 2.0;
        let middle = (current.at + self.set.kerf / 2.0).clamp(half, self.width - half);
        Some((middle - half, middle + half))
    }

    /// Draws the whole board; returns where the strip ends.
    fn draw_whole(&self, sheet: &mut Sheet, strip: &Strip) -> Mm {
        self.draw(sheet, strip);
        sheet.reference_edge(strip.left, strip.top + sheet.ems(1.1), true);
        strip.bottom()
    }

    /// Draws the whole board in a thin strip and below it the part between `left` and `right`;
    /// returns where that ends.
    fn draw_enlarged(&self, sheet: &mut Sheet, strip: &Strip, left: Mm, right: Mm) -> Mm {
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
        sheet.reference_edge(thin.left, thin.top + sheet.ems(0.5), false);
        draw_lead(sheet, &thin, &enlarged);
        enlarged.bottom()
    }

    fn draw(&self, sheet: &mut Sheet, strip: &Strip) {
        let view = strip.view();
        let role = if self.set.board == Board::A {
            Role::BoardA
        } else {
            Role::BoardB
        };
        sheet.polygons(role, view.wood(&self.cut));
        sheet.outline(view.outline(&self.cut));
        sheet.sockets_to_come(view.sockets(&self.to_come));
        let Some(current) = self.current else { return };
        let (left, right) = (view.x(current.at), view.x(current.at + self.set.kerf));
        let shown = |x: Mm| x.clamp(strip.left, strip.left + strip.width);
        let top = view.y(self.set.height);
        sheet.polygons(
            Role::CurrentPass,
            [rectangle(shown(left), top, shown(right), strip.bottom())],
        );
        sheet.polygons(
            Role::CurrentPass,
            [pointer(sheet, shown((left + right) / 2.0), strip.bottom())],
        );
    }
}

/// An arrowhead from below, where the blade comes from.
fn pointer(sheet: &Sheet, x: Mm, y: Mm) -> Vec<Point> {
    let (tip, foot, half) = (y + sheet.ems(0.2), y + sheet.ems(1.0), sheet.ems(0.45));
    vec![
        Point::new(x, tip),
        Point::new(x + half, foot),
        Point::new(x - half, foot),
    ]
}

/// Frames the part of the whole strip that is enlarged, and leads the eye down to it.
fn draw_lead(sheet: &mut Sheet, strip: &Strip, enlarged: &Strip) {
    let view = strip.view();
    let (left, right) = (view.x(enlarged.window.left), view.x(enlarged.window.right));
    sheet.lead_below(
        [
            Point::new(left, strip.top),
            Point::new(right, strip.bottom()),
        ],
        [
            Point::new(enlarged.left, enlarged.top),
            Point::new(enlarged.left + enlarged.width, enlarged.top),
        ],
    );
}
