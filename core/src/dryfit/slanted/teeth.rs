//! Tips of teeth: how the floor of one pass looks.

use crate::cutter::Grind;
use crate::units::Mm;

/// How the tips of the teeth are ground, with the slope they are ground to.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Teeth {
    /// Square to the blade.
    Flat,
    /// Each sloping over the whole kerf, alternately left and right, by this tangent.
    Alternate {
        /// Tangent of the bevel.
        slope: f64,
    },
    /// All sloping the same way, so that the floor is level when the blade leans by this tangent.
    Slanted {
        /// Tangent of the slope.
        slope: f64,
    },
}

impl Teeth {
    /// The teeth of a grind, in a joint whose flanks have this slope.
    #[must_use]
    pub fn new(grind: Grind, slope: f64) -> Self {
        match grind {
            Grind::Flat => Self::Flat,
            Grind::Alternate { slope } => Self::Alternate { slope },
            Grind::Slope => Self::Slanted { slope },
        }
    }

    /// How far the corner at the flank is short of the deepest one under a leaning blade: `kerf · sin θ`
    /// where the tips are square to the blade or bevelled both ways (derived).
    #[must_use]
    pub fn corner_left(self, kerf: Mm, sin: f64) -> Mm {
        match self {
            Self::Flat | Self::Alternate { .. } => kerf * sin,
            Self::Slanted { .. } => Mm::ZERO,
        }
    }

    /// Each kind of tooth: how far its near and its far corner stand out along the blade; 0 is the outermost.
    pub(super) fn corners(self, kerf: f64) -> Vec<(f64, f64)> {
        match self {
            Self::Flat => vec![(0.0, 0.0)],
            Self::Alternate { slope } => vec![(0.0, -kerf * slope), (-kerf * slope, 0.0)],
            Self::Slanted { slope } => vec![(0.0, -kerf * slope)],
        }
    }
}
