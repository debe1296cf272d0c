//! Where pins and tails stand, before any cutter is chosen.

use super::plan::Tail;
use super::slope::Slope;
use crate::units::Mm;

/// What decides the widths of pins and tails, each number checked by itself.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) enum Rule {
    /// These widths at the outer face.
    Widths { pin: Mm, half_pin: Mm },
    /// Tail to pin at mid thickness; half-pins are half a pin.
    Ratio(f64),
    /// Pins of the narrowest width; half-pins as given, or as wide as the pins.
    Narrowest { half_pin: Option<Mm> },
}

/// The board that is divided.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Ground {
    pub(super) width: Mm,
    pub(super) slope: Slope,
    /// Through the pin board as far as the tails go: its thickness less the lap.
    pub(super) through: Mm,
    /// Narrowest pin at the outer face that the leaning cutter can clear the place of.
    pub(super) narrowest_pin: Mm,
}

/// A divided width.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Layout {
    pub(super) width: Mm,
    /// Pin at the outer face.
    pub(super) pin: Mm,
    /// Half-pin at the outer face.
    pub(super) half_pin: Mm,
    /// Mean width of the tails at their tips.
    pub(super) tail: Mm,
    pub(super) tails: Vec<Tail>,
}

impl Ground {
    /// How far a flank runs across the width between the pin board's outer face and the baseline.
    pub(super) fn run(&self) -> Mm {
        self.through * self.slope.tan
    }

    /// The pin and the half-pin of a rule, at the outer face.
    pub(super) fn pins(&self, rule: Rule, tails: u32) -> (Mm, Mm) {
        match rule {
            Rule::Widths { pin, half_pin } => (pin, half_pin),
            Rule::Ratio(ratio) => {
                let at_middle = self.width / f64::from(tails) / (1.0 + ratio);
                let pin = at_middle - self.run();
                (pin, pin / 2.0)
            }
            Rule::Narrowest { half_pin } => {
                let pin = self.narrowest_pin;
                (pin, half_pin.unwrap_or(pin))
            }
        }
    }

    /// Divides the width; no weights mean equal tails. Widths may come out negative.
    pub(super) fn lay_out(&self, rule: Rule, tails: u32, weights: &[f64]) -> Layout {
        let (pin, half_pin) = self.pins(rule, tails);
        let count = f64::from(tails);
        let all_tails = self.width - half_pin * 2.0 - pin * (count - 1.0);
        let total: f64 = weights.iter().sum();
        let share = |i: u32| match weights.get(i as usize) {
            Some(weight) => weight / total,
            None => 1.0 / count,
        };
        let run = self.run();
        let mut before = 0.0;
        let tails = (0..tails)
            .map(|i| {
                let from = half_pin + pin * f64::from(i) + all_tails * before;
                let to = from + all_tails * share(i);
                before += share(i);
                Tail {
                    from_tip: from,
                    to_tip: to,
                    from_base: from + run,
                    to_base: to - run,
                }
            })
            .collect();
        Layout {
            width: self.width,
            pin,
            half_pin,
            tail: all_tails / count,
            tails,
        }
    }
}

impl Layout {
    /// Whether it reads the same from both edges.
    pub(super) fn is_symmetric(&self) -> bool {
        let mirrored = self.tails.iter().rev();
        self.tails
            .iter()
            .zip(mirrored)
            .all(|(x, y)| (x.from_tip + y.to_tip).is_same(self.width))
    }

    /// Width of the narrowest tail at the baseline, and which it is.
    pub(super) fn narrowest_base(&self) -> (usize, Mm) {
        let bases = self.tails.iter().map(|tail| tail.to_base - tail.from_base);
        bases
            .enumerate()
            .min_by_key(|(_, base)| *base)
            .unwrap_or_default()
    }
}
