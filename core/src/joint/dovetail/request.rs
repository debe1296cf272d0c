//! What a dovetail is asked with.

use crate::cutter::CutterRequest;
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::{Given, request};
use crate::joint::box_joint::{BoardRequest, SawRequest};

request! {
    /// A dovetail between the ends of two boards of the same width.
    pub struct DovetailRequest {
        /// Width of both boards, mm.
        pub width: Given<f64> = "width",
        /// The tail board, board A.
        pub tail: Given<BoardRequest> = "tail",
        /// The pin board, board B.
        pub pin: Given<BoardRequest> = "pin",
        /// Slope of the flanks.
        pub slope: Given<SlopeRequest> = "slope",
        /// Number of tails.
        pub tails: Given<f64> = "tails",
        /// Half-pin at each edge, at the outer face, where it is narrow, mm.
        pub half_pin: Given<f64> = "halfPin",
        /// Pin between two tails, at the outer face, where it is narrow, mm.
        pub narrow_pin: Given<f64> = "narrowPin",
        /// Relative widths of the tails at their tips, from the reference edge; equal when left out.
        pub weights: Given<Vec<Given<f64>>> = "weights",
        /// What decides the widths; `narrowPin` and `halfPin` when left out.
        pub by: Given<ByRequest> = "by",
        /// Wood left in front of the tails in a half-blind joint, mm; 0 when left out: a through joint.
        pub lap: Given<f64> = "lap",
        /// Glue gap at each flank, measured across the width, mm; 0.05 when left out.
        pub glue_gap: Given<f64> = "glueGap",
        /// How far tails and pins stand past the mating face, mm; 0 when left out.
        pub proud: Given<f64> = "proud",
        /// The cutter that leans.
        pub cutter: Given<CutterRequest> = "cutter",
        /// The cutter for upright cuts; the same as `cutter` when left out.
        pub pin_cutter: Given<CutterRequest> = "pinCutter",
        /// The screw.
        pub screw: Given<ScrewRequest> = "screw",
        /// Where the reading is zero; `touch` when left out.
        pub zero: Given<ZeroRequest> = "zero",
        /// What the saw and sled allow; nothing is checked when left out.
        pub saw: Given<SawRequest> = "saw",
        /// What blade and wedge were really found to be; only the dry fit uses it.
        pub measured: Given<MeasuredRequest> = "measured",
    }

    /// Slope of the flanks.
    pub struct SlopeRequest {
        /// `ratio` or `angle`.
        pub kind: Given<String> = "kind",
        /// By ratio: run for a rise of 1, so 8 for 1:8.
        pub run: Given<f64> = "run",
        /// By angle: degrees from square.
        pub degrees: Given<f64> = "degrees",
    }

    /// What decides the widths of pins and tails.
    pub struct ByRequest {
        /// `widths`: `narrowPin` and `halfPin` as given; `ratio`: tails and pins in proportion at mid
        /// thickness, half-pins half a pin; `equal`: the same with tails as wide as pins; `narrowest`: pins
        /// as narrow as the blade allows, half-pins as given or else the same.
        pub kind: Given<String> = "kind",
        /// By ratio: tail width for a pin width of 1, both at mid thickness.
        pub tail_to_pin: Given<f64> = "tailToPin",
    }

    /// What blade and wedge were really found to be.
    pub struct MeasuredRequest {
        /// Lean of the blade, degrees.
        pub lean_degrees: Given<f64> = "leanDegrees",
        /// Turn of the pin board in plan, degrees.
        pub turn_degrees: Given<f64> = "turnDegrees",
    }
}

impl SlopeRequest {
    /// A slope of 1 in `run`.
    #[must_use]
    pub fn ratio(run: f64) -> Self {
        Self {
            kind: "ratio".into(),
            run: run.into(),
            ..Self::default()
        }
    }

    /// A slope of so many degrees.
    #[must_use]
    pub fn angle(degrees: f64) -> Self {
        Self {
            kind: "angle".into(),
            degrees: degrees.into(),
            ..Self::default()
        }
    }
}

impl ByRequest {
    /// `widths`, `equal` or `narrowest`.
    #[must_use]
    pub fn kind(kind: &str) -> Self {
        Self {
            kind: kind.into(),
            ..Self::default()
        }
    }

    /// Tails and pins in proportion at mid thickness.
    #[must_use]
    pub fn ratio(tail_to_pin: f64) -> Self {
        Self {
            kind: "ratio".into(),
            tail_to_pin: tail_to_pin.into(),
        }
    }
}
