//! The end of a board as cut: how deep it is, across the width.

use super::sweep::Span;
use crate::order::in_order;
use crate::stop::{Set, Stop};
use crate::units::Mm;

/// The end of a board after some passes, as the line that is left of it on the board's face.
///
/// It comes from the passes alone, so that slivers between passes and ridges under bevelled teeth
/// are in it. Its places never go back; a wall is two places at one `x`.
#[derive(Clone, Debug, PartialEq)]
pub struct Profile {
    places: Vec<Place>,
}

/// A corner of a profile.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Place {
    /// From the reference edge.
    pub x: Mm,
    /// How deep the board is cut, from its end.
    pub depth: Mm,
}

/// Passes of one cutter at one height.
#[derive(Clone, Debug)]
pub struct Passes {
    starts: Vec<Mm>,
    kerf: Mm,
    height: Mm,
    /// Tangent of the angle at which the teeth slope over their kerf.
    slope: f64,
}

impl Passes {
    /// The passes at some of a set's stops.
    #[must_use]
    pub fn new(set: &Set, stops: &[Stop]) -> Self {
        let starts = stops.iter().map(|stop| stop.at);
        Self {
            starts: in_order(starts, Mm::cmp),
            kerf: set.kerf,
            height: set.height,
            slope: set.ridge / (set.kerf / 2.0),
        }
    }

    /// The same passes as if all teeth were flat.
    #[must_use]
    pub fn flat(self) -> Self {
        Self { slope: 0.0, ..self }
    }

    /// What each pass cuts, from the reference edge outwards.
    pub(super) fn spans(&self) -> impl Iterator<Item = Span> {
        self.starts.iter().map(|start| Span {
            from: *start,
            to: *start + self.kerf,
        })
    }

    /// Cuts the end of a board of this width.
    #[must_use]
    pub fn cut(&self, width: Mm) -> Profile {
        let mut profile = Profile { places: Vec::new() };
        for pair in self.sides(width).windows(2) {
            if let &[from, to] = pair
                && to.is_above(from)
            {
                self.cut_between(from, to, &mut profile);
            }
        }
        profile
    }

    /// Both edges of the board and both sides of every kerf that are between them, in order.
    fn sides(&self, width: Mm) -> Vec<Mm> {
        let sides = self
            .starts
            .iter()
            .flat_map(|start| [*start, *start + self.kerf]);
        let inside = sides.filter(|side| *side > Mm::ZERO && *side < width);
        in_order([Mm::ZERO].into_iter().chain(inside).chain([width]), Mm::cmp)
    }

    /// Appends what is left between two neighbouring sides.
    fn cut_between(&self, from: Mm, to: Mm, profile: &mut Profile) {
        let Some((start, end)) = self.kerf_over(from, to) else {
            profile.push(from, Mm::ZERO);
            profile.push(to, Mm::ZERO);
            return;
        };
        // A tooth is deepest at its own side of the kerf, and two teeth pass.
        let depth = |x: Mm| self.height - (x - start).min(end - x) * self.slope;
        // The ridge is in the middle, unless it would stand out of the end of the board.
        let (half, out) = ((end - start) / 2.0, self.height / self.slope);
        let bends = if out < half {
            [start + out, end - out]
        } else {
            [start + half; 2]
        };
        let bends = bends
            .into_iter()
            .filter(|x| self.slope > 0.0 && x.is_above(from) && x.is_below(to));
        for x in [from].into_iter().chain(bends).chain([to]) {
            profile.push(x, depth(x).clamp(Mm::ZERO, self.height));
        }
    }

    /// The nearest left side and the nearest right side of the kerfs that cover everything between
    /// two neighbouring sides, if any does. Those two alone decide how deep the board is cut there.
    fn kerf_over(&self, from: Mm, to: Mm) -> Option<(Mm, Mm)> {
        let middle = (from + to) / 2.0;
        let after = self.starts.partition_point(|start| *start <= middle);
        let start = *self.starts.get(after.checked_sub(1)?)?;
        let first = self
            .starts
            .partition_point(|start| *start + self.kerf < middle);
        let end = *self.starts.get(first)? + self.kerf;
        (start + self.kerf >= middle).then_some((start, end))
    }
}

impl Profile {
    /// Its corners, from the reference edge.
    #[must_use]
    pub fn places(&self) -> &[Place] {
        &self.places
    }

    /// Adds a corner, dropping the one before where it says nothing new.
    fn push(&mut self, x: Mm, depth: Mm) {
        let place = Place { x, depth };
        if let [.., before, last] = self.places.as_slice() {
            let level = before.depth == last.depth && last.depth == depth;
            if level || *last == place {
                self.places.pop();
            }
        }
        self.places.push(place);
    }
}
