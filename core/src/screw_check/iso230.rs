//! Positioning figures by ISO 230-2 (from memory, checked against open motion-stage reports).
//!
//! Per target and direction: mean deviation and standard deviation (n − 1). `B_i = x̄↑ − x̄↓`,
//! `R_i = max(2s↑ + 2s↓ + |B_i|, 4s↑, 4s↓)`, `M` the range of `(x̄↑ + x̄↓)/2`,
//! `A = max(x̄ + 2s) − min(x̄ − 2s)` over both directions.

use serde::Serialize;

use super::{Approach, Point};
use crate::units::Mm;

/// Figures of an axis; all mm.
#[derive(Clone, Copy, Debug, PartialEq, Serialize)]
pub struct Iso230 {
    /// Reversal value: the greatest difference between the two directions.
    #[serde(rename = "B")]
    pub reversal: Mm,
    /// Bidirectional repeatability.
    #[serde(rename = "R")]
    pub repeatability: Mm,
    /// Bidirectional accuracy.
    #[serde(rename = "A")]
    pub accuracy: Mm,
    /// Range of the mean bidirectional deviation.
    #[serde(rename = "M")]
    pub mean_deviation: Mm,
}

/// Mean and standard deviation of one target from one direction.
struct Runs {
    mean: f64,
    deviation: f64,
}

/// `None` unless every target was approached at least twice from each direction, and there are at least two.
pub(super) fn figures(points: &[Point]) -> Option<Iso230> {
    let mut targets: Vec<Mm> = points.iter().map(|point| point.commanded).collect();
    targets.sort_unstable();
    targets.dedup_by(|x, y| x.is_same(*y));
    if targets.len() < 2 || points.iter().any(|point| point.approach.is_none()) {
        return None;
    }
    let both = |target: &Mm| {
        Some((
            runs(points, *target, Approach::Up)?,
            runs(points, *target, Approach::Down)?,
        ))
    };
    let all = targets.iter().map(both).collect::<Option<Vec<_>>>()?;
    let reversal = |(up, down): &(Runs, Runs)| (up.mean - down.mean).abs();
    let repeatability = |both: &(Runs, Runs)| {
        let (up, down) = both;
        (2.0 * up.deviation + 2.0 * down.deviation + reversal(both))
            .max(4.0 * up.deviation)
            .max(4.0 * down.deviation)
    };
    let highest = |(up, down): &(Runs, Runs)| {
        (up.mean + 2.0 * up.deviation).max(down.mean + 2.0 * down.deviation)
    };
    let lowest = |(up, down): &(Runs, Runs)| {
        (up.mean - 2.0 * up.deviation).min(down.mean - 2.0 * down.deviation)
    };
    let middle = |(up, down): &(Runs, Runs)| (up.mean + down.mean) / 2.0;
    let most = |value: &dyn Fn(&(Runs, Runs)) -> f64| {
        all.iter().map(value).fold(f64::NEG_INFINITY, f64::max)
    };
    let least =
        |value: &dyn Fn(&(Runs, Runs)) -> f64| all.iter().map(value).fold(f64::INFINITY, f64::min);
    Some(Iso230 {
        reversal: Mm::new(most(&reversal))?,
        repeatability: Mm::new(most(&repeatability))?,
        accuracy: Mm::new(most(&highest) - least(&lowest))?,
        mean_deviation: Mm::new(most(&middle) - least(&middle))?,
    })
}

fn runs(points: &[Point], target: Mm, approach: Approach) -> Option<Runs> {
    let deviations: Vec<f64> = points
        .iter()
        .filter(|point| point.approach == Some(approach) && point.commanded.is_same(target))
        .map(|point| (point.measured - point.commanded).mm())
        .collect();
    if deviations.len() < 2 {
        return None;
    }
    let count = deviations.len() as f64;
    let mean = deviations.iter().sum::<f64>() / count;
    let squares: f64 = deviations
        .iter()
        .map(|value| (value - mean) * (value - mean))
        .sum();
    Some(Runs {
        mean,
        deviation: (squares / (count - 1.0)).sqrt(),
    })
}
