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
/// It breaks at the sides and middles of passes and where the slopes of two overlapping passes meet;
/// between breaks it is straight, so areas are exact.
pub(super) fn pieces(swept: &Swept, open: Span, short: Mm) -> Vec<Piece> {
    let mut places = vec![open.from, open.to];
    if !swept.grind.ridge(swept.kerf).is_same(Mm::ZERO) {
        places.extend(breaks(swept, open));
        places.retain(|place| *place >= open.from && *place <= open.to);
        places.sort_unstable();
        places.dedup();
    }
    let spans = places
        .iter()
        .zip(places.iter().skip(1))
        .map(|(from, to)| Span {
            from: *from,
            to: *to,
        });
    spans.map(|span| piece(swept, span, short)).collect()
}

/// The floor steps at the side of a pass, so a piece is measured by the passes that cover its middle.
fn piece(swept: &Swept, span: Span, short: Mm) -> Piece {
    let middle = span.middle();
    let height = |place: Mm| {
        let covering = swept.passes_within(Span {
            from: middle - swept.kerf,
            to: middle,
        });
        covering
            .map(|at| swept.grind.rise(swept.kerf, place - at))
            .min()
            .unwrap_or_default()
            + short
    };
    Piece {
        span,
        start: height(span.from),
        end: height(span.to),
    }
}

fn breaks(swept: &Swept, open: Span) -> Vec<Mm> {
    let reaching = |at: Mm| {
        swept.passes_within(Span {
            from: at,
            to: at + swept.kerf,
        })
    };
    swept
        .passes_within(Span {
            from: open.from - swept.kerf,
            to: open.to,
        })
        .flat_map(|at| {
            let own = [at, at + swept.kerf / 2.0, at + swept.kerf];
            let shared = reaching(at).map(move |next| (at + swept.kerf + next) / 2.0);
            own.into_iter().chain(shared)
        })
        .collect()
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
        let level = |height: f64| height.clamp(0.0, cap.max(0.0));
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
