//! A flat region, by a general polygon library.

use i_overlay::core::fill_rule::FillRule;
use i_overlay::core::overlay::Overlay;
use i_overlay::core::overlay_rule::OverlayRule;
use i_overlay::i_float::int::point::IntPoint;
use i_overlay::i_shape::int::shape::IntShapes;

/// Steps of the grid in a millimetre.
const STEPS: f64 = (1_u64 << 40) as f64;

/// Any number of polygons, with holes or without.
pub(crate) struct Region(IntShapes<i64>);

impl Region {
    /// The corners of an upright rectangle, anticlockwise.
    pub(crate) fn corners(x: (f64, f64), y: (f64, f64)) -> Vec<(f64, f64)> {
        vec![(x.0, y.0), (x.1, y.0), (x.1, y.1), (x.0, y.1)]
    }

    /// An upright rectangle.
    pub(crate) fn rectangle(x: (f64, f64), y: (f64, f64)) -> Self {
        Self(vec![vec![contour(&Self::corners(x, y))]])
    }

    /// Everything that is in any of some polygons, each either way round.
    pub(crate) fn union(polygons: impl Iterator<Item = Vec<(f64, f64)>>) -> Self {
        let shapes = polygons.map(|corners| vec![anticlockwise(contour(&corners))]);
        Self(shapes.collect()).combined(&Self(Vec::new()), OverlayRule::Union)
    }

    /// Everything that is in any of some regions.
    pub(crate) fn all(regions: impl Iterator<Item = Self>) -> Self {
        let nothing = Self(Vec::new());
        regions.fold(nothing, |all, region| {
            all.combined(&region, OverlayRule::Union)
        })
    }

    /// What is in this region and not in the other.
    pub(crate) fn minus(&self, other: &Self) -> Self {
        self.combined(other, OverlayRule::Difference)
    }

    /// What is in both regions.
    pub(crate) fn and(&self, other: &Self) -> Self {
        self.combined(other, OverlayRule::Intersect)
    }

    fn combined(&self, other: &Self, rule: OverlayRule) -> Self {
        Self(Overlay::from_subj_and_clip(&self.0, &other.0).overlay(rule, FillRule::NonZero))
    }

    /// Its area, mm². Summed without rounding: holes run the other way and count negative.
    pub(crate) fn area(&self) -> f64 {
        let twice: i128 = self
            .0
            .iter()
            .flatten()
            .map(|contour| twice_area(contour))
            .sum();
        twice as f64 / 2.0 / STEPS / STEPS
    }

    /// Its least place along the second axis, mm; none where there is nothing.
    pub(crate) fn lowest(&self) -> Option<f64> {
        let places = self.0.iter().flatten().flatten().map(|point| point.y);
        places.min().map(|least| least as f64 / STEPS)
    }
}

fn contour(corners: &[(f64, f64)]) -> Vec<IntPoint<i64>> {
    let step = |mm: f64| (mm * STEPS).round() as i64;
    corners
        .iter()
        .map(|(x, y)| IntPoint::new(step(*x), step(*y)))
        .collect()
}

fn anticlockwise(mut contour: Vec<IntPoint<i64>>) -> Vec<IntPoint<i64>> {
    if twice_area(&contour) < 0 {
        contour.reverse();
    }
    contour
}

fn twice_area(contour: &[IntPoint<i64>]) -> i128 {
    let next = contour.iter().cycle().skip(1);
    let wide = i128::from;
    contour
        .iter()
        .zip(next)
        .map(|(a, b)| wide(a.x) * wide(b.y) - wide(b.x) * wide(a.y))
        .sum()
}
