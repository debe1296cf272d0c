//! The end of a board as cut.

use super::item::Point;
use crate::stop::{Set, Stop};
use crate::units::Mm;

/// The end of a board after some passes, seen on its face: how deep it is cut, across the width.
///
/// Made from the stops and not from the layout, so that slivers between passes and ridges under
/// bevelled teeth are in it.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    points: Vec<Point>,
}

/// A part of a board's face.
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

/// Passes of one cutter at one height.
struct Cuts {
    starts: Vec<Mm>,
    kerf: Mm,
    depth: Mm,
    /// Tangent of the teeth's bevel.
    slope: f64,
}

impl Profile {
    /// Cuts the end of a board `width` wide with some of the passes of a set.
    #[must_use]
    pub fn cut(width: Mm, set: &Set, passes: &[Stop]) -> Self {
        let mut starts: Vec<Mm> = passes.iter().map(|stop| stop.at).collect();
        starts.sort_unstable();
        let cuts = Cuts {
            starts,
            kerf: set.kerf,
            depth: set.height,
            slope: set.ridge / (set.kerf / 2.0),
        };
        let mut profile = Self { points: Vec::new() };
        for pair in cuts.places(width).windows(2) {
            if let &[from, to] = pair
                && to.is_above(from)
            {
                cuts.floor(from, to, &mut profile);
            }
        }
        profile
    }

    /// The line along the end: depths at places that never go back, walls as two places at one `x`.
    #[must_use]
    pub fn points(&self) -> &[Point] {
        &self.points
    }

    /// Adds a point, dropping the one before where it says nothing new.
    fn push(&mut self, point: Point) {
        if let [.., before, last] = self.points.as_slice() {
            let level = before.y == last.y && last.y == point.y;
            let wall = before.x == last.x && last.x == point.x;
            if level || wall || *last == point {
                self.points.pop();
            }
        }
        self.points.push(point);
    }

    /// The line inside a window; where it leaves the window it runs along its border.
    pub(super) fn inside(&self, window: Window) -> Vec<Point> {
        let mut line = Vec::new();
        for pair in self.points.windows(2) {
            if let &[from, to] = pair
                && from.x <= window.right
                && to.x >= window.left
            {
                window.clip(from, to, &mut line);
            }
        }
        line.dedup();
        line
    }

    /// The wood inside a window, if there is any.
    pub(super) fn wood(&self, window: Window) -> Option<Vec<Point>> {
        let mut wood = self.inside(window);
        let (first, last) = (*wood.first()?, *wood.last()?);
        if wood.iter().all(|point| point.y == window.deep) {
            return None;
        }
        for corner in [Point::new(last.x, window.deep), Point::new(first.x, window.deep)] {
            if wood.last() != Some(&corner) && wood.first() != Some(&corner) {
                wood.push(corner);
            }
        }
        Some(wood)
    }

    /// The outline inside a window: the board's edges and its end, without what only runs along the
    /// window's border.
    pub(super) fn outline(&self, window: Window) -> Vec<Vec<Point>> {
        let mut line = self.inside(window);
        let reaches = |edge: Option<&Point>, end: Option<&Point>| Some(end?.x == edge?.x).filter(|same| *same);
        if reaches(self.points.last(), line.last()).is_some()
            && let Some(last) = line.last()
        {
            line.push(Point::new(last.x, window.deep));
        }
        if reaches(self.points.first(), line.first()).is_some()
            && let Some(first) = line.first()
        {
            line.insert(0, Point::new(first.x, window.deep));
        }
        broken(&line, |from, to| window.runs_along(from, to))
    }

    /// Walls and floors of what is cut away inside a window.
    pub(super) fn sockets(&self, window: Window) -> Vec<Vec<Point>> {
        let along_end = |from: Point, to: Point| from.y == Mm::ZERO && to.y == Mm::ZERO;
        broken(&self.inside(window), along_end)
    }
}

/// A line without the stretches that `left_out` names.
fn broken(line: &[Point], left_out: impl Fn(Point, Point) -> bool) -> Vec<Vec<Point>> {
    line.chunk_by(|from, to| !left_out(*from, *to))
        .filter(|part| part.len() > 1)
        .map(<[Point]>::to_vec)
        .collect()
}

/// The point at depth `y` on the line through two points of different depths.
fn crossing(from: Point, to: Point, y: Mm) -> Point {
    let share = (y - from.y) / (to.y - from.y);
    Point::new(from.x + (to.x - from.x) * share, y)
}

impl Window {
    /// Appends what is inside of the line between two points.
    fn clip(self, from: Point, to: Point, line: &mut Vec<Point>) {
        let (from, to) = (self.enter(from, to), self.enter(to, from));
        line.push(self.clamp(from));
        let mut border: Vec<Point> = [self.shallow, self.deep]
            .into_iter()
            .filter(|border| (from.y < *border) != (to.y < *border) && from.y != *border && to.y != *border)
            .map(|border| crossing(from, to, border))
            .collect();
        if to.y < from.y {
            border.reverse();
        }
        line.extend(border);
        line.push(self.clamp(to));
    }

    /// Moves `point` along the line to `other` until it is between left and right.
    fn enter(self, point: Point, other: Point) -> Point {
        let x = point.x.clamp(self.left, self.right);
        if x == point.x {
            return point;
        }
        let share = (x - point.x) / (other.x - point.x);
        Point::new(x, point.y + (other.y - point.y) * share)
    }

    /// Whether a line runs along the border at which the wood is only cut off by the window.
    fn runs_along(self, from: Point, to: Point) -> bool {
        let cut_off = |y| y == self.deep || (y == self.shallow && self.shallow > Mm::ZERO);
        from.y == to.y && cut_off(from.y)
    }

    fn clamp(self, point: Point) -> Point {
        Point::new(point.x, point.y.clamp(self.shallow, self.deep))
    }
}

impl Cuts {
    /// Both edges of the board and both sides of every kerf that are between them, in order.
    fn places(&self, width: Mm) -> Vec<Mm> {
        let sides = self.starts.iter().flat_map(|start| [*start, *start + self.kerf]);
        let mut places: Vec<Mm> = sides
            .filter(|side| *side > Mm::ZERO && *side < width)
            .chain([Mm::ZERO, width])
            .collect();
        places.sort_unstable();
        places
    }

    /// Appends the floor between two neighbouring places.
    fn floor(&self, from: Mm, to: Mm, profile: &mut Profile) {
        for x in self.corners(from, to) {
            let y = self.depth_at(x, from, to);
            profile.push(Point::new(x, y));
        }
    }

    /// The nearest sides of kerfs that cover a stretch between neighbouring places, if any does.
    fn sides(&self, from: Mm, to: Mm) -> Option<(Mm, Mm)> {
        let middle = (from + to) / 2.0;
        let after = self.starts.partition_point(|start| *start <= middle);
        let start = *self.starts.get(after.checked_sub(1)?)?;
        if start + self.kerf < middle {
            return None;
        }
        let first = self.starts.partition_point(|start| *start + self.kerf < middle);
        let end = *self.starts.get(first)? + self.kerf;
        Some((start, end))
    }

    /// How deep the deepest tooth went. Of all the kerfs over a place, one has the nearest left side
    /// and one the nearest right side, and a tooth is deepest at the sides.
    fn depth_at(&self, x: Mm, from: Mm, to: Mm) -> Mm {
        self.sides(from, to).map_or(Mm::ZERO, |(start, end)| {
            (self.depth - (x - start).min(end - x) * self.slope).clamp(Mm::ZERO, self.depth)
        })
    }

    /// Where the floor may bend between two neighbouring places, both included.
    fn corners(&self, from: Mm, to: Mm) -> Vec<Mm> {
        let mut corners = vec![from, to];
        if let Some((start, end)) = self.sides(from, to)
            && self.slope > 0.0
        {
            let out = self.depth / self.slope;
            let bends = [(start + end) / 2.0, start + out, end - out];
            corners.extend(bends.iter().filter(|x| **x > from && **x < to));
            corners.sort_unstable();
        }
        corners
    }
}
