//! From the plane that the dry fit measures in to places on the sheet.

use crate::drawing::item::Point;
use crate::dryfit::slanted::{self, clipped};
use crate::units::Mm;

/// A place in the plane: `x`, then the depth from the board's end or outer face, mm.
pub(in crate::drawing) type Place = slanted::Point;

/// What is shown of the plane; its upper side is the one nearer to the end or the outer face.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(in crate::drawing) struct Window {
    pub(in crate::drawing) left: f64,
    pub(in crate::drawing) right: f64,
    pub(in crate::drawing) shallow: f64,
    pub(in crate::drawing) deep: f64,
}

impl Window {
    pub(in crate::drawing) fn corners(&self) -> [Place; 4] {
        [
            (self.left, self.shallow),
            (self.right, self.shallow),
            (self.right, self.deep),
            (self.left, self.deep),
        ]
    }

    /// The part of an area inside the window.
    pub(in crate::drawing) fn area(&self, corners: &[Place]) -> Vec<Place> {
        let part = clipped(corners, |(x, _)| x - self.left);
        let part = clipped(&part, |(x, _)| self.right - x);
        let part = clipped(&part, |(_, depth)| depth - self.shallow);
        clipped(&part, |(_, depth)| self.deep - depth)
    }

    /// The parts of a line inside the window.
    pub(in crate::drawing) fn line(&self, corners: &[Place]) -> Vec<Vec<Place>> {
        let mut parts: Vec<Vec<Place>> = Vec::new();
        for (from, to) in corners.iter().zip(corners.iter().skip(1)) {
            let Some((from, to)) = self.segment(*from, *to) else {
                continue;
            };
            match parts.last_mut() {
                Some(part) if part.last() == Some(&from) => part.push(to),
                _ => parts.push(vec![from, to]),
            }
        }
        parts
    }

    fn segment(&self, from: Place, to: Place) -> Option<(Place, Place)> {
        let along = (to.0 - from.0, to.1 - from.1);
        let (mut enters, mut leaves) = (0.0_f64, 1.0_f64);
        let borders = [
            (from.0 - self.left, along.0),
            (self.right - from.0, -along.0),
            (from.1 - self.shallow, along.1),
            (self.deep - from.1, -along.1),
        ];
        for (inside, change) in borders {
            if change == 0.0 {
                if inside < 0.0 {
                    return None;
                }
            } else if change > 0.0 {
                enters = enters.max(-inside / change);
            } else {
                leaves = leaves.min(-inside / change);
            }
        }
        let at = |share: f64| match share {
            0.0 => from,
            1.0 => to,
            share => (from.0 + along.0 * share, from.1 + along.1 * share),
        };
        (enters < leaves).then(|| (at(enters), at(leaves)))
    }
}

/// A window of the plane laid on the sheet.
#[derive(Clone, Copy, Debug)]
pub(super) struct View {
    pub(super) window: Window,
    /// Where the window's left side at its shallow one lies on the sheet.
    pub(super) corner: Point,
    /// Enlargement across.
    pub(super) across: f64,
    /// Enlargement along the depth; negative where the end or the outer face lies below.
    pub(super) along: f64,
}

impl View {
    pub(super) fn x(&self, x: f64) -> Mm {
        self.corner.x + mm((x - self.window.left) * self.across)
    }

    pub(super) fn y(&self, depth: f64) -> Mm {
        self.corner.y + mm((depth - self.window.shallow) * self.along)
    }

    pub(super) fn place(&self, (x, depth): Place) -> Point {
        Point::new(self.x(x), self.y(depth))
    }

    /// What is in the window of these areas, on the sheet.
    pub(super) fn areas(&self, areas: &[Vec<Place>]) -> Vec<Vec<Point>> {
        let shown = areas.iter().map(|area| self.window.area(area));
        shown.map(|area| self.places(&area)).collect()
    }

    /// What is in the window of these lines, on the sheet.
    pub(super) fn lines(&self, lines: &[Vec<Place>]) -> Vec<Vec<Point>> {
        let shown = lines.iter().flat_map(|line| self.window.line(line));
        shown.map(|line| self.places(&line)).collect()
    }

    fn places(&self, places: &[Place]) -> Vec<Point> {
        places.iter().map(|place| self.place(*place)).collect()
    }
}

/// A length of the plane; none where arithmetic ran out of numbers.
pub(in crate::drawing) fn mm(length: f64) -> Mm {
    Mm::new(length).unwrap_or_default()
}
