//! From places on a board to places on the sheet.

use super::item::Point;
use super::window::Window;
use crate::dryfit::{Passes, Profile};
use crate::stop::Set;
use crate::units::Mm;

/// Ridges lower than this share of the board's width are thinner than the lines they are drawn with.
const VISIBLE: f64 = 0.001;

/// The end of a board in as much detail as can be seen when the whole width is drawn.
pub(super) fn visible_end(set: &Set, width: Mm) -> Profile {
    let passes = Passes::new(set, &set.stops);
    if set.ridge < width * VISIBLE {
        passes.flat().cut(width)
    } else {
        passes.cut(width)
    }
}

/// A window of a board's face laid on the sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct View {
    /// What is shown of the board.
    pub(super) window: Window,
    /// Where the window's corner nearest to the reference edge and the end lies on the sheet.
    pub(super) corner: Point,
    /// Enlargement across.
    pub(super) across: f64,
    /// Enlargement along the board; negative where the end points downwards.
    pub(super) along: f64,
}

impl View {
    /// A place on the board, on the sheet.
    pub(super) fn place(&self, on_board: Point) -> Point {
        Point::new(
            self.corner.x + (on_board.x - self.window.left) * self.across,
            self.corner.y + (on_board.y - self.window.shallow) * self.along,
        )
    }

    /// A place across the board, on the sheet.
    pub(super) fn x(&self, x: Mm) -> Mm {
        self.corner.x + (x - self.window.left) * self.across
    }

    /// A depth from the end, on the sheet.
    pub(super) fn y(&self, depth: Mm) -> Mm {
        self.corner.y + (depth - self.window.shallow) * self.along
    }

    /// Places on the board, on the sheet.
    pub(super) fn places(&self, on_board: &[Point]) -> Vec<Point> {
        on_board.iter().map(|point| self.place(*point)).collect()
    }

    /// The wood of a board within the window.
    pub(super) fn wood(&self, profile: &Profile) -> Option<Vec<Point>> {
        self.window.wood(profile).map(|wood| self.places(&wood))
    }

    /// The outline of a board within the window, open where the board goes on.
    pub(super) fn outline(&self, profile: &Profile) -> Vec<Vec<Point>> {
        self.window
            .outline(profile)
            .iter()
            .map(|line| self.places(line))
            .collect()
    }

    /// Walls and floors of what is cut away within the window.
    pub(super) fn sockets(&self, profile: &Profile) -> Vec<Vec<Point>> {
        self.window
            .sockets(profile)
            .iter()
            .map(|line| self.places(line))
            .collect()
    }
}
