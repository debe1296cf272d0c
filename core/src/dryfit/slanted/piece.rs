//! Floors of the pin board's sockets across the passes of one set.

use super::Teeth;
use crate::order::in_order;

/// A straight piece of a floor: a stretch across the passes, and how high its two ends stand above the
/// depth line; infinite where no pass comes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Piece {
    pub(super) from: f64,
    pub(super) to: f64,
    pub(super) start: f64,
    pub(super) end: f64,
}

impl Piece {
    pub(super) fn at(&self, x: f64) -> f64 {
        if self.start.is_infinite() {
            return self.start;
        }
        self.start + (self.end - self.start) * ((x - self.from) / (self.to - self.from))
    }
}

/// The passes of one set in one socket, all alike.
pub(super) struct Family {
    /// Near sides, across the passes.
    pub(super) starts: Vec<f64>,
    /// Width of each, along the face.
    pub(super) width: f64,
    /// Kerf: the same, square to the pass.
    pub(super) kerf: f64,
    pub(super) teeth: Teeth,
    pub(super) depth: f64,
}

impl Family {
    /// The floor from one place to another, piece by piece.
    pub(super) fn pieces(&self, from: f64, to: f64) -> Vec<Piece> {
        let starts = in_order(self.starts.iter().copied(), f64::total_cmp);
        let sides = starts
            .iter()
            .flat_map(|start| [*start, *start + self.width])
            .filter(|side| *side > from && *side < to);
        let bounds = in_order([from].into_iter().chain(sides).chain([to]), f64::total_cmp);
        let pairs = bounds.iter().zip(bounds.iter().skip(1));
        let pairs = pairs.filter(|(from, to)| *to > *from);
        pairs
            .flat_map(|(from, to)| self.between(&starts, *from, *to))
            .collect()
    }

    /// Between two neighbouring sides: the last pass that starts before and the first that ends after
    /// decide, if they are over this place at all.
    fn between(&self, starts: &[f64], from: f64, to: f64) -> Vec<Piece> {
        let middle = (from + to) / 2.0;
        let over = || {
            starts
                .iter()
                .filter(|start| **start < middle && **start + self.width > middle)
        };
        let (Some(last), Some(first)) = (over().next_back(), over().next()) else {
            return vec![Piece {
                from,
                to,
                start: f64::INFINITY,
                end: f64::INFINITY,
            }];
        };
        let share = self.kerf / self.width;
        let (start, end) = (*last, *first + self.width);
        let height = |x: f64| {
            let height = match self.teeth {
                Teeth::Flat => 0.0,
                Teeth::Slanted { slope } => (x - start) * share * slope,
                Teeth::Alternate { slope } => (x - start).min(end - x) * share * slope,
            };
            height.min(self.depth)
        };
        let ridge = (start + end) / 2.0;
        let bend = Some(ridge).filter(|ridge| *ridge > from && *ridge < to);
        let bounds: Vec<_> = [from].into_iter().chain(bend).chain([to]).collect();
        let pairs = bounds.iter().zip(bounds.iter().skip(1));
        pairs
            .map(|(from, to)| Piece {
                from: *from,
                to: *to,
                start: height(*from),
                end: height(*to),
            })
            .collect()
    }
}
