//! The part of a board's end that is shown.

use super::item::Point;
use crate::dryfit::Profile;
use crate::units::Mm;

/// A part of a board's face; `y` of its points is the depth from the board's end.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Window {
    /// Nearest to the reference edge.
    pub(super) left: Mm,
    /// Farthest from the reference edge.
    pub(super) right: Mm,
    /// Nearest to the end.
    pub(super) shallow: Mm,
    /// Farthest from the end.
    pub(super) deep: Mm,
}

impl Window {
    /// The end of a board inside the window; where it leaves the window it runs along its border.
    fn end_of(self, profile: &Profile) -> Vec<Point> {
        let places = profile.places();
        let from = places.partition_point(|place| place.x < self.left);
        let to = places.partition_point(|place| place.x <= self.right);
        let shown = places.get(from.saturating_sub(1)..(to + 1).min(places.len()));
        let mut line = Vec::new();
        for pair in shown.unwrap_or_default().windows(2) {
            if let &[from, to] = pair {
                let (from, to) = (Point::new(from.x, from.depth), Point::new(to.x, to.depth));
                self.clip(from, to, &mut line);
            }
        }
        line.dedup();
        line
    }

    /// The wood of a board inside the window, if there is any.
    pub(super) fn wood(self, profile: &Profile) -> Option<Vec<Point>> {
        let mut wood = self.end_of(profile);
        let (first, last) = (*wood.first()?, *wood.last()?);
        if wood.iter().all(|point| point.y == self.deep) {
            return None;
        }
        for corner in [last, first].map(|point| Point::new(point.x, self.deep)) {
            if corner != last && corner != first {
                wood.push(corner);
            }
        }
        Some(wood)
    }

    /// The outline of a board inside the window: its edges and its end, without what only runs along
    /// the window's border.
    pub(super) fn outline(self, profile: &Profile) -> Vec<Vec<Point>> {
        let end = self.end_of(profile);
        let places = profile.places();
        let edge = |on_board: Option<Mm>, shown: Option<&Point>| {
            let shown = shown.filter(|point| on_board == Some(point.x))?;
            Some(Point::new(shown.x, self.deep))
        };
        let near = edge(places.first().map(|place| place.x), end.first());
        let far = edge(places.last().map(|place| place.x), end.last());
        let line: Vec<_> = near.into_iter().chain(end).chain(far).collect();
        broken(&line, |from, to| self.runs_along(from, to))
    }

    /// Walls and floors of what is cut away inside the window.
    pub(super) fn sockets(self, profile: &Profile) -> Vec<Vec<Point>> {
        let along_end = |from: Point, to: Point| from.y == Mm::ZERO && to.y == Mm::ZERO;
        broken(&self.end_of(profile), along_end)
    }

    /// Appends what is inside of the line between two points.
    fn clip(self, from: Point, to: Point, line: &mut Vec<Point>) {
        let (Some(from), Some(to)) = (self.enter(from, to), self.enter(to, from)) else {
            return;
        };
        line.push(self.clamp(from));
        let mut crossings: Vec<Point> = [self.shallow, self.deep]
            .into_iter()
            .filter(|border| from.y.min(to.y) < *border && *border < from.y.max(to.y))
            .map(|border| crossing(from, to, border))
            .collect();
        if to.y < from.y {
            crossings.reverse();
        }
        line.extend(crossings);
        line.push(self.clamp(to));
    }

    /// Moves `point` along the line to `other` until it is between left and right, if it ever is.
    fn enter(self, point: Point, other: Point) -> Option<Point> {
        let x = point.x.clamp(self.left, self.right);
        if x == point.x {
            return Some(point);
        }
        let share = (x - point.x) / (other.x - point.x);
        let y = point.y + (other.y - point.y) * share;
        (0.0..=1.0)
            .contains(&share)
            .then_some(Point::new(x, y))
            .filter(|_| point.x != other.x)
    }

    fn clamp(self, point: Point) -> Point {
        Point::new(point.x, point.y.clamp(self.shallow, self.deep))
    }

    /// Whether a line runs along the border where the wood is only cut off by the window.
    fn runs_along(self, from: Point, to: Point) -> bool {
        let cut_off = |y| y == self.deep || (y == self.shallow && self.shallow > Mm::ZERO);
        from.y == to.y && cut_off(from.y)
    }
}

/// The point at depth `y` on the line through two points of different depths.
fn crossing(from: Point, to: Point, y: Mm) -> Point {
    let share = (y - from.y) / (to.y - from.y);
    Point::new(from.x + (to.x - from.x) * share, y)
}

/// A line without the stretches that `left_out` names.
fn broken(line: &[Point], left_out: impl Fn(Point, Point) -> bool) -> Vec<Vec<Point>> {
    line.chunk_by(|from, to| !left_out(*from, *to))
        .filter(|part| part.len() > 1)
        .map(<[Point]>::to_vec)
        .collect()
}
