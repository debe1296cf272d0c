//! A cutter that leaves upright walls: a blade, a grooving stack or a straight bit.

use crate::check::Checker;
use crate::given::{Given, request};
use crate::limits;
use crate::math::tan;
use crate::message;
use crate::problem::Code;
use crate::units::Mm;

request! {
    /// A cutter as a request gives it.
    pub struct CutterRequest {
        /// Width it really cuts, measured in a test cut, mm.
        pub kerf: Given<f64> = "kerf",
        /// Diameter, mm.
        pub diameter: Given<f64> = "diameter",
        /// Grind of its teeth; flat when left out.
        pub grind: Given<GrindRequest> = "grind",
        /// Least overlap of neighbouring passes, mm, at most half the kerf; 0.3 when left out.
        pub overlap: Given<f64> = "overlap",
    }

    /// A grind as a request gives it.
    pub struct GrindRequest {
        /// `flat`, `alternate` or `slope`.
        pub kind: Given<String> = "kind",
        /// Bevel of alternately ground teeth, degrees.
        pub bevel_degrees: Given<f64> = "bevelDegrees",
    }
}

/// How the tips of the teeth are ground.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Grind {
    /// Square to the blade: leaves a flat floor.
    Flat,
    /// Each tooth slopes over the whole kerf, alternately left and right, by this tangent.
    Alternate {
        /// Tangent of the bevel.
        slope: f64,
    },
    /// Ground to the dovetail's slope; flat for upright cuts is not promised.
    Slope,
}

/// A checked cutter.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Cutter {
    kerf: Mm,
    diameter: Option<Mm>,
    grind: Grind,
    overlap: Mm,
}

const USUAL_OVERLAP: Mm = Mm::constant(0.3);

impl Cutter {
    /// Checks the request at the checker's place.
    pub fn check(request: &CutterRequest, check: &mut Checker<'_>) -> Option<Self> {
        let kerf = check.length("kerf", &request.kerf, &limits::KERF);
        let diameter = check.optional_length("diameter", &request.diameter, &limits::DIAMETER);
        let grind = match check.optional("grind", &request.grind) {
            Some(Some(grind)) => Grind::check(grind, &mut check.at("grind")),
            Some(None) => Some(Grind::Flat),
            None => None,
        };
        let usual = kerf.map_or(USUAL_OVERLAP, |kerf| USUAL_OVERLAP.min(kerf / 2.0));
        let overlap = check.length_or("overlap", &request.overlap, &limits::OVERLAP, usual);
        let (kerf, overlap, grind, diameter) = (kerf?, overlap?, grind?, diameter?);
        if overlap.is_above(kerf / 2.0) {
            let most = kerf / 2.0;
            let message = message!["Passes may overlap by at most half the kerf, ", most, "."];
            check.refuse("overlap", Code::TooLarge, message, Some(most.mm()));
            return None;
        }
        Some(Self {
            kerf,
            diameter,
            grind,
            overlap,
        })
    }

    /// Width of its cut.
    #[must_use]
    pub fn kerf(&self) -> Mm {
        self.kerf
    }

    /// Diameter of a blade or a stack, where it is known; a bit is about as wide as it cuts, and stands
    /// upright.
    #[must_use]
    pub fn blade_diameter(&self) -> Option<Mm> {
        let is_blade = |diameter: &Mm| diameter.is_above(self.kerf * 2.0);
        self.diameter.filter(is_blade)
    }

    /// Grind of its teeth.
    #[must_use]
    pub fn grind(&self) -> Grind {
        self.grind
    }

    /// Greatest step from one pass to the next that still keeps the wanted overlap.
    #[must_use]
    pub fn stride(&self) -> Mm {
        self.kerf - self.overlap
    }
}

impl Grind {
    fn check(request: &GrindRequest, check: &mut Checker<'_>) -> Option<Self> {
        let kinds = [
            ("flat", "flat"),
            ("alternate", "alternate"),
            ("slope", "slope"),
        ];
        let kind = check.word("kind", &request.kind, &kinds)?;
        if kind == "alternate" {
            let degrees = check.number("bevelDegrees", &request.bevel_degrees, &limits::BEVEL)?;
            return Some(Self::Alternate {
                slope: tan(degrees.to_radians()),
            });
        }
        check.unused(
            "this grind",
            &[("bevelDegrees", request.bevel_degrees.is_missing())],
        );
        Some(if kind == "slope" {
            Self::Slope
        } else {
            Self::Flat
        })
    }

    /// Height of the ridge that one pass leaves in the middle of its kerf.
    ///
    /// Two teeth pass, each deepest at its own side, so the floor rises from both sides to a ridge in
    /// the middle, `kerf / 2 · tan β` high (derived).
    #[must_use]
    pub fn ridge(self, kerf: Mm) -> Mm {
        match self {
            Self::Alternate { slope } => kerf / 2.0 * slope,
            Self::Flat | Self::Slope => Mm::ZERO,
        }
    }
}
