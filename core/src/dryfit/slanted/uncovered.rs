//! What a few convex outlines leave of another: exact, by columns in which every side is straight.

use super::Point;
use crate::order::in_order;

/// What is left.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Left {
    /// Its area, mm².
    pub(super) area: f64,
    /// Its centre of area, across the width.
    pub(super) middle: f64,
    /// The least depth at which there is any.
    pub(super) from: f64,
}

/// Narrower than this is arithmetic's noise, mm.
const NOISE: f64 = 1e-9;

/// What `passes` leave of `region`.
pub(super) fn uncovered(region: &[Point], passes: &[Vec<Point>]) -> Option<Left> {
    let region = Outline::new(region)?;
    let passes: Vec<_> = passes
        .iter()
        .filter_map(|pass| Outline::new(pass))
        .collect();
    let passes = in_order(passes, |a, b| a.least.total_cmp(&b.least));
    let bounds = bounds(&region, &passes);
    let columns = bounds.iter().zip(bounds.iter().skip(1));
    let mut sum = Sum::default();
    for (from, to) in columns.filter(|(from, to)| **to - **from > NOISE) {
        let column = Column::new(*from, *to);
        if let Some(whole) = region.part_in(&column) {
            let started = passes.partition_point(|pass| pass.least < column.middle);
            let over = passes.iter().take(started);
            column.add_left(
                whole,
                over.filter_map(|pass| pass.part_in(&column)),
                &mut sum,
            );
        }
    }
    sum.left()
}

/// Where columns must end: at corners, and where sides cross.
fn bounds(region: &Outline<'_>, passes: &[Outline<'_>]) -> Vec<f64> {
    let mut places: Vec<f64> = region.corners.iter().map(|corner| corner.0).collect();
    for (index, pass) in passes.iter().enumerate() {
        places.extend(pass.corners.iter().map(|corner| corner.0));
        region.crossings(pass, &mut places);
        let later = passes.iter().skip(index + 1);
        for other in later.take_while(|other| other.least < pass.most) {
            pass.crossings(other, &mut places);
        }
    }
    let within = |place: &f64| *place >= region.least && *place <= region.most;
    in_order(places.into_iter().filter(within), f64::total_cmp)
}

struct Outline<'a> {
    corners: &'a [Point],
    least: f64,
    most: f64,
}

/// A side of an outline that is not upright.
#[derive(Clone, Copy)]
struct Side {
    from: Point,
    to: Point,
}

impl Side {
    fn at(self, x: f64) -> f64 {
        self.from.1 + (self.to.1 - self.from.1) * ((x - self.from.0) / (self.to.0 - self.from.0))
    }

    fn spans(self, x: f64) -> bool {
        (self.from.0 < x) != (self.to.0 < x)
    }
}

impl<'a> Outline<'a> {
    fn new(corners: &'a [Point]) -> Option<Self> {
        let places = || corners.iter().map(|corner| corner.0);
        let least = places().min_by(f64::total_cmp)?;
        let most = places().max_by(f64::total_cmp)?;
        Some(Self {
            corners,
            least,
            most,
        })
    }

    fn sides(&self) -> impl Iterator<Item = Side> {
        let next = self.corners.iter().cycle().skip(1);
        let sides = self.corners.iter().zip(next);
        sides.map(|(from, to)| Side {
            from: *from,
            to: *to,
        })
    }

    /// Adds where the sides of two outlines cross.
    fn crossings(&self, other: &Self, places: &mut Vec<f64>) {
        for side in self.sides() {
            places.extend(other.sides().filter_map(|other| crossing(side, other)));
        }
    }

    /// The upper and the lower side over a column.
    fn part_in(&self, column: &Column) -> Option<Part> {
        let mut sides = self.sides().filter(|side| side.spans(column.middle));
        let (a, b) = (sides.next()?, sides.next()?);
        let upper_first = a.at(column.middle) <= b.at(column.middle);
        let (from, to) = if upper_first { (a, b) } else { (b, a) };
        Some(Part { from, to })
    }
}

/// Where two sides cross, across the width.
fn crossing(a: Side, b: Side) -> Option<f64> {
    let (along_a, along_b) = (minus(a.to, a.from), minus(b.to, b.from));
    let turn = cross(along_a, along_b);
    if turn == 0.0 {
        return None;
    }
    let between = minus(b.from, a.from);
    let (on_a, on_b) = (
        cross(between, along_b) / turn,
        cross(between, along_a) / turn,
    );
    let is_on = |share: f64| (0.0..=1.0).contains(&share);
    (is_on(on_a) && is_on(on_b)).then_some(a.from.0 + along_a.0 * on_a)
}

fn minus(a: Point, b: Point) -> Point {
    (a.0 - b.0, a.1 - b.1)
}

fn cross(a: Point, b: Point) -> f64 {
    a.0 * b.1 - a.1 * b.0
}

/// Part of an outline over a column.
#[derive(Clone, Copy)]
struct Part {
    from: Side,
    to: Side,
}

/// A column between two neighbouring bounds.
struct Column {
    from: f64,
    to: f64,
    middle: f64,
}

impl Column {
    fn new(from: f64, to: f64) -> Self {
        Self {
            from,
            to,
            middle: (from + to) / 2.0,
        }
    }

    /// Adds what is left of `whole` between the parts that passes take.
    fn add_left(&self, whole: Part, taken: impl Iterator<Item = Part>, sum: &mut Sum) {
        let at = |side: Side| side.at(self.middle);
        let taken = in_order(taken, |a, b| at(a.from).total_cmp(&at(b.from)));
        let mut reached = whole.from;
        for part in taken {
            let from = if at(part.from) < at(whole.to) {
                part.from
            } else {
                whole.to
            };
            self.add(reached, from, sum);
            if at(part.to) > at(reached) {
                reached = part.to;
            }
        }
        self.add(reached, whole.to, sum);
    }

    fn add(&self, from: Side, to: Side, sum: &mut Sum) {
        let height = to.at(self.middle) - from.at(self.middle);
        if height > NOISE {
            let area = height * (self.to - self.from);
            sum.area += area;
            sum.moment += area * self.middle;
            let highest = from.at(self.from).min(from.at(self.to));
            sum.from = Some(sum.from.map_or(highest, |from| from.min(highest)));
        }
    }
}

#[derive(Default)]
struct Sum {
    area: f64,
    moment: f64,
    from: Option<f64>,
}

impl Sum {
    fn left(self) -> Option<Left> {
        Some(Left {
            area: self.area,
            middle: self.moment / self.area,
            from: self.from?,
        })
    }
}

#[cfg(test)]
mod tests {
    use super::uncovered;

    const SQUARE: [(f64, f64); 4] = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (0.0, 4.0)];

    #[test]
    fn a_square_less_two_triangles_that_cross() {
        // Derived: each triangle takes half the square and they share a quarter of it: 16 − 8 − 8 + 4.
        let falling = vec![(0.0, 0.0), (4.0, 0.0), (4.0, 4.0)];
        let rising = vec![(0.0, 0.0), (4.0, 0.0), (0.0, 4.0)];
        let left = uncovered(&SQUARE, &[falling, rising]).unwrap();
        assert!((left.area - 4.0).abs() < 1e-12, "{left:?}");
        assert!((left.middle - 2.0).abs() < 1e-12, "{left:?}");
        assert!((left.from - 2.0).abs() < 1e-12, "{left:?}");
    }

    #[test]
    fn nothing_is_left_where_all_is_covered_and_all_where_nothing_is() {
        let wide = vec![(-1.0, -1.0), (5.0, -1.0), (5.0, 5.0), (-1.0, 5.0)];
        assert_eq!(uncovered(&SQUARE, &[wide]), None);
        assert_eq!(uncovered(&SQUARE, &[]).unwrap().area, 16.0);
        let beside = vec![(5.0, 0.0), (6.0, 0.0), (6.0, 4.0)];
        assert_eq!(uncovered(&SQUARE, &[beside]).unwrap().area, 16.0);
    }

    #[test]
    fn a_hole_in_the_middle_counts_once() {
        let hole = vec![(1.0, 1.0), (3.0, 1.0), (3.0, 2.0), (1.0, 2.0)];
        let left = uncovered(&SQUARE, &[hole]).unwrap();
        assert!((left.area - 14.0).abs() < 1e-12);
        assert_eq!(left.from, 0.0);
    }
}
