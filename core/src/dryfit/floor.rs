//! Floors of sockets under teeth that do not cut flat.

use super::sweep::{Span, Swept};
use crate::units::Mm;

/// A straight piece of a floor: its stretch along the width, and how far its two ends stand above the depth line.
#[derive(Clone, Copy, Debug)]
pub(super) struct Piece {
    span: Span,
    start: Mm,
    end: Mm,
}

/// The floor of one open stretch, piece by piece, `short` above what the teeth's corners reach.
///
/// Between the corners of the board's profile the floor is straight, so areas are exact.
pub(super) fn pieces(swept: &Swept, open: Span, short: Mm) -> impl Iterator<Item = Piece> {
    let places = swept.profile.places();
    let past = places.partition_point(|place| place.x <= open.from);
    let places = places.get(past.saturating_sub(1)..).unwrap_or_default();
    let pairs = places.iter().zip(places.iter().skip(1));
    pairs
        .take_while(move |(from, _)| from.x < open.to)
        .filter_map(move |(from, to)| {
            let piece = Piece {
                span: Span {
                    from: from.x,
                    to: to.x,
                },
                start: swept.height - from.depth + short,
                end: swept.height - to.depth + short,
            };
            piece.within(open)
        })
}

impl Piece {
    /// The part of the piece inside a span.
    pub(super) fn within(self, span: Span) -> Option<Self> {
        let shared = self.span.shared(span)?;
        let at = |x: Mm| {
            self.start + (self.end - self.start) * ((x - self.span.from) / self.span.length())
        };
        Some(Self {
            span: shared,
            start: at(shared.from),
            end: at(shared.to),
        })
    }

    /// Whether it begins after a span has ended.
    pub(super) fn is_past(self, span: Span) -> bool {
        span.to <= self.span.from
    }

    /// Whether it ends after a span has begun.
    pub(super) fn reaches(self, span: Span) -> bool {
        span.from < self.span.to
    }

    /// Its highest place above the depth line; negative below it.
    pub(super) fn highest(self) -> Mm {
        self.start.max(self.end)
    }

    /// Area between the depth line and the floor, counted no higher than `cap`, mm².
    pub(super) fn area(self, cap: Mm) -> f64 {
        let (start, end, cap) = (self.start.mm(), self.end.mm(), cap.mm());
        let length = self.span.length().mm();
        let level = |height: f64| height.min(cap).max(0.0);
        if (end - start).abs() < 1e-9 {
            return length * level((start + end) / 2.0);
        }
        // The integral of a slope that is held between 0 and the cap.
        let run = |height: f64| {
            level(height) * level(height) / 2.0 + (height - level(height)).max(0.0) * cap
        };
        length * (run(end) - run(start)) / (end - start)
    }
}
