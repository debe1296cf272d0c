//! How an opening's height is shared out among its drawers.

use super::request::DrawerHeightsRequest;
use crate::check::Checker;
use crate::limits;
use crate::units::Mm;

/// The rule from drawer to drawer, downwards.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Heights {
    Equal,
    /// Each higher than the one above by this.
    Step(Mm),
    /// Each so many times as high as the one above.
    Ratio(f64),
}

impl Heights {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &DrawerHeightsRequest, check: &mut Checker<'_>) -> Option<Self> {
        let words = ["equal", "graduated", "ratio"];
        let kind = check.word("kind", &request.kind, &words.map(|word| (word, word)))?;
        let given = [
            ("step", request.step.is_missing(), "graduated"),
            ("ratio", request.ratio.is_missing(), "ratio"),
        ];
        for (field, missing, owner) in given {
            if owner != kind {
                check.unused("these heights", &[(field, missing)]);
            }
        }
        match kind {
            "graduated" => check
                .length("step", &request.step, &limits::GRADUATION)
                .map(Self::Step),
            "ratio" => check
                .number("ratio", &request.ratio, &limits::GRADUATION_RATIO)
                .map(Self::Ratio),
            _ => Some(Self::Equal),
        }
    }

    /// Heights from the top that together make `room`; those of a graduation with too large a step are below 0.
    pub(super) fn share(self, room: Mm, count: u32) -> Vec<Mm> {
        let top = self.top(room, count);
        self.below_top(top, count)
    }

    /// Room that drawers need whose topmost is so high.
    pub(super) fn room_for(self, top: Mm, count: u32) -> Mm {
        self.below_top(top, count).into_iter().sum()
    }

    /// Derived: the sum of an arithmetic row is `n·t + s·n·(n − 1)/2`, of a geometric one `t·(1 + r + … + rⁿ⁻¹)`.
    fn top(self, room: Mm, count: u32) -> Mm {
        let n = f64::from(count);
        match self {
            Self::Equal => room / n,
            Self::Step(step) => room / n - step * ((n - 1.0) / 2.0),
            Self::Ratio(_) => {
                let shares: Mm = self.below_top(Mm::constant(1.0), count).into_iter().sum();
                Mm::constant(1.0) * (room / shares)
            }
        }
    }

    fn below_top(self, top: Mm, count: u32) -> Vec<Mm> {
        let mut height = top;
        (0..count)
            .map(|_| {
                let here = height;
                height = match self {
                    Self::Equal => height,
                    Self::Step(step) => height + step,
                    Self::Ratio(ratio) => height * ratio,
                };
                here
            })
            .collect()
    }
}
