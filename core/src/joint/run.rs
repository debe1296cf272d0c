//! A row of passes, as ticks of the dial.

use crate::dial::Tick;

/// Passes side by side: ticks spread evenly over a span, from the reference edge outwards.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Run {
    first: Tick,
    span: i64,
    count: i64,
}

impl Run {
    /// One pass.
    pub(super) fn single(tick: Tick) -> Self {
        Self::spread(tick, 0, 1)
    }

    /// `count` passes, at least one, over `span` steps from the first to the last.
    pub(super) fn spread(first: Tick, span: i64, count: i64) -> Self {
        Self { first, span, count }
    }

    /// The fewest passes from one tick to another that are at most `stride` steps apart; one where the
    /// last is not beyond the first.
    pub(super) fn covering(first: Tick, last: Tick, stride: i64) -> Self {
        let (span, stride) = ((last.0 - first.0).max(0), stride.max(1));
        Self::spread(first, span, (span + stride - 1) / stride + 1)
    }

    /// The pass nearest the reference edge.
    pub(super) fn first(self) -> Tick {
        self.first
    }

    /// The pass farthest from the reference edge.
    pub(super) fn last(self) -> Tick {
        Tick(self.first.0 + self.span)
    }

    /// How many passes; at least one.
    pub(super) fn len(self) -> usize {
        usize::try_from(self.count).unwrap_or_default()
    }

    /// Every pass.
    pub(super) fn ticks(self) -> impl DoubleEndedIterator<Item = Tick> {
        let gaps = (self.count - 1).max(1);
        (0..self.count).map(move |i| Tick(self.first.0 + (2 * i * self.span + gaps) / (2 * gaps)))
    }
}

#[cfg(test)]
mod tests {
    use super::Run;
    use crate::dial::Tick;

    #[test]
    fn the_fewest_passes_cover_a_span() {
        for (first, last, stride, ticks) in [
            (3, 3, 10, &[3][..]),
            (3, 1, 10, &[3]),
            (0, 10, 10, &[0, 10]),
            (0, 11, 10, &[0, 6, 11]),
            (-4, 2, 0, &[-4, -3, -2, -1, 0, 1, 2]),
        ] {
            let run = Run::covering(Tick(first), Tick(last), stride);
            let got: Vec<_> = run.ticks().map(|tick| tick.0).collect();
            assert_eq!(got, ticks, "{first} {last} {stride}");
        }
    }
}
