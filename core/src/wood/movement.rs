//! How much a width changes when its moisture does.

use super::moisture::Moisture;
use crate::units::Mm;

/// Change of a width for each percent of moisture, as a share of the width.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Coefficient(f64);

/// Below and above this, percent, the coefficients are only an estimate (Wood Handbook, chapter 13).
const LINEAR: [f64; 2] = [6.0, 14.0];

/// Whether a moisture is within the 6 to 14 % that the coefficients are given for.
#[must_use]
pub fn is_linear(moisture: Moisture) -> bool {
    let [least, most] = LINEAR;
    (least..=most).contains(&moisture.in_percent())
}

impl Coefficient {
    /// A coefficient as it is printed in table 13-5.
    pub(crate) const fn new(per_percent: f64) -> Self {
        Self(per_percent)
    }

    /// The coefficient of a wood whose shrinkage from green to oven-dry is known, percent of the green width:
    /// `C = S / (3000 − 20·S)`. Derived: with no more shrinkage above 30 % moisture, the width at 10 %, from
    /// which the handbook's coefficients count, is `1 − S·20/3000` of the green one.
    ///
    /// `shrinkage` is held within [`crate::limits::SHRINKAGE`].
    #[must_use]
    pub fn from_shrinkage(shrinkage: f64) -> Self {
        let limit = crate::limits::SHRINKAGE;
        let shrinkage = crate::math::within(shrinkage, limit.least, limit.most);
        Self(shrinkage / (3000.0 - 20.0 * shrinkage))
    }

    /// Change for each percent of moisture, as a share of the width.
    #[must_use]
    pub const fn per_percent(self) -> f64 {
        self.0
    }

    /// What a width becomes, as a share of itself: `1 + C·(M_F − M_I)`, the handbook's
    /// `ΔD = D_I·C·(M_F − M_I)`.
    #[must_use]
    pub fn growth(self, from: Moisture, to: Moisture) -> f64 {
        1.0 + self.0 * (to.in_percent() - from.in_percent())
    }

    /// Change of a width, mm: `ΔD = D_I·C·(M_F − M_I)` for moistures of 6 to 14 %.
    #[must_use]
    pub fn change(self, width: Mm, from: Moisture, to: Moisture) -> Mm {
        width * (self.growth(from, to) - 1.0)
    }
}
