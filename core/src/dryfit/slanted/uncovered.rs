//! What convex outlines leave of another: exact, by columns in which every side is straight.

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
    let mut sum = Sum::default();
    each_left(region, passes, |column, from, to| sum.add(column, from, to));
    sum.left()
}

/// The same as areas: neighbouring columns are joined where their sides go on.
pub(super) fn areas_left(region: &[Point], passes: &[Vec<Point>]) -> Vec<Vec<Point>> {
    let mut areas = Vec::new();
    let (mut open, mut going_on): (Vec<Area>, Vec<Area>) = (Vec::new(), Vec::new());
    let mut column_from = f64::NEG_INFINITY;
    each_left(region, passes, |column, from, to| {
        if column.from > column_from {
            column_from = column.from;
            areas.append(&mut open);
            open.append(&mut going_on);
        }
        let part = Area::new(column, from, to);
        let before = open.iter().position(|area| area.goes_on_as(&part));
        going_on.push(match before {
            Some(before) => open.swap_remove(before).followed_by(part),
            None => part,
        });
    });
    areas.append(&mut open);
    areas.append(&mut going_on);
    areas.into_iter().map(Area::corners).collect()
}

/// Hands on every part of a column that no pass takes, columns in ascending order.
fn each_left(region: &[Point], passes: &[Vec<Point>], mut each: impl FnMut(&Column, Side, Side)) {
    let Some(region) = Outline::new(region) else {
        return;
    };
    let passes: Vec<_> = passes
        .iter()
        .filter_map(|pass| Outline::new(pass))
        .collect();
    let passes = in_order(passes, |a, b| a.least.total_cmp(&b.least));
    let bounds = bounds(&region, &passes);
    let mut to_come = passes.iter().peekable();
    let mut over: Vec<&Outline<'_>> = Vec::new();
    for (from, to) in bounds.iter().zip(bounds.iter().skip(1)) {
        if *to - *from <= NOISE {
            continue;
        }
        let column = Column::new(*from, *to);
        while let Some(pass) = to_come.next_if(|pass| pass.least < column.middle) {
            over.push(pass);
        }
        over.retain(|pass| pass.most > column.middle);
        if let Some(whole) = region.part_in(&column) {
            let taken = over.iter().filter_map(|pass| pass.part_in(&column));
            column.each_left(whole, taken, &mut each);
        }
    }
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

    /// Hands on what is left of `whole` between the parts that passes take.
    fn each_left(
        &self,
        whole: Part,
        taken: impl Iterator<Item = Part>,
        each: &mut impl FnMut(&Self, Side, Side),
    ) {
        let at = |side: Side| side.at(self.middle);
        let taken = in_order(taken, |a, b| at(a.from).total_cmp(&at(b.from)));
        let mut left = |from: Side, to: Side| {
            if at(to) - at(from) > NOISE {
                each(self, from, to);
            }
        };
        let mut reached = whole.from;
        for part in taken {
            let from = if at(part.from) < at(whole.to) {
                part.from
            } else {
                whole.to
            };
            left(reached, from);
            if at(part.to) > at(reached) {
                reached = part.to;
            }
        }
        left(reached, whole.to);
    }
}

#[derive(Default)]
struct Sum {
    area: f64,
    moment: f64,
    from: Option<f64>,
}

impl Sum {
    fn add(&mut self, column: &Column, from: Side, to: Side) {
        let height = to.at(column.middle) - from.at(column.middle);
        let area = height * (column.to - column.from);
        self.area += area;
        self.moment += area * column.middle;
        let highest = from.at(column.from).min(from.at(column.to));
        self.from = Some(self.from.map_or(highest, |from| from.min(highest)));
    }

    fn left(self) -> Option<Left> {
        Some(Left {
            area: self.area,
            middle: self.moment / self.area,
            from: self.from?,
        })
    }
}

/// What is left over one column or several: its upper and its lower side, corner by corner.
struct Area {
    upper: Vec<Point>,
    lower: Vec<Point>,
}

impl Area {
    fn new(column: &Column, from: Side, to: Side) -> Self {
        let along = |side: Side| [column.from, column.to].map(|x| (x, side.at(x))).to_vec();
        Self {
            upper: along(from),
            lower: along(to),
        }
    }

    /// Whether it ends exactly where `next` begins.
    fn goes_on_as(&self, next: &Self) -> bool {
        let meets = |end: Option<&Point>, start: Option<&Point>| {
            end.zip(start).is_some_and(|(end, start)| {
                (end.0 - start.0).abs() <= JOINED && (end.1 - start.1).abs() <= JOINED
            })
        };
        meets(self.upper.last(), next.upper.first()) && meets(self.lower.last(), next.lower.first())
    }

    fn followed_by(mut self, next: Self) -> Self {
        self.upper.extend(next.upper.into_iter().skip(1));
        self.lower.extend(next.lower.into_iter().skip(1));
        self
    }

    fn corners(self) -> Vec<Point> {
        let lower = self.lower.into_iter().rev();
        self.upper.into_iter().chain(lower).collect()
    }
}

/// Ends nearer than this are the same, mm: a crossing is found from either side.
const JOINED: f64 = 1e-6;

#[cfg(test)]
mod tests {
    use super::{areas_left, uncovered};

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
    fn areas_add_up_and_run_on_past_columns() {
        let falling = vec![(0.0, 0.0), (4.0, 0.0), (4.0, 4.0)];
        let notch = vec![(1.0, 3.0), (2.0, 3.0), (2.0, 4.0), (1.0, 4.0)];
        let areas = areas_left(&SQUARE, &[falling, notch]);
        // Columns end at 1 and at 2, where the notch's walls are upright: three areas.
        let area = |corners: &Vec<(f64, f64)>| {
            let next = corners.iter().cycle().skip(1);
            let twice: f64 = corners
                .iter()
                .zip(next)
                .map(|(a, b)| a.0 * b.1 - b.0 * a.1)
                .sum();
            twice.abs() / 2.0
        };
        let sizes: Vec<_> = areas.iter().map(area).collect();
        // Derived: the half square is 8; its columns are 3.5, 2.5 less the notch's 1, and 2.
        assert_eq!(sizes, [3.5, 1.5, 2.0]);
        // A peak is one area, although it bends.
        let peak = [(0.0, 0.0), (4.0, 0.0), (4.0, 4.0), (2.0, 1.0), (0.0, 4.0)];
        let cover = [
            vec![peak[0], peak[1], peak[3]],
            vec![peak[1], peak[2], peak[3]],
            vec![peak[0], peak[3], peak[4]],
        ];
        assert_eq!(areas_left(&SQUARE, &cover).len(), 1);
    }

    #[test]
    fn a_hole_in_the_middle_counts_once() {
        let hole = vec![(1.0, 1.0), (3.0, 1.0), (3.0, 2.0), (1.0, 2.0)];
        let left = uncovered(&SQUARE, &[hole]).unwrap();
        assert!((left.area - 14.0).abs() < 1e-12);
        assert_eq!(left.from, 0.0);
    }
}
