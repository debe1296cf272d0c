//! What a box joint is asked with.

use crate::cutter::CutterRequest;
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::{Given, request};

request! {
    /// A box joint between the ends of two boards of the same width.
    pub struct BoxJointRequest {
        /// Width of both boards, mm.
        pub width: Given<f64> = "width",
        /// Board A.
        pub a: Given<BoardRequest> = "a",
        /// Board B.
        pub b: Given<BoardRequest> = "b",
        /// The cutter.
        pub cutter: Given<CutterRequest> = "cutter",
        /// The screw.
        pub screw: Given<ScrewRequest> = "screw",
        /// Where the reading is zero; `touch` when left out.
        pub zero: Given<ZeroRequest> = "zero",
        /// How the width is divided.
        pub layout: Given<LayoutRequest> = "layout",
        /// What board A has at the reference edge: `pin` (when left out) or `socket`.
        pub first: Given<String> = "first",
        /// Glue gap at each flank, mm; 0.05 when left out.
        pub glue_gap: Given<f64> = "glueGap",
        /// How far pins stand past the mating face, mm; 0 when left out.
        pub proud: Given<f64> = "proud",
        /// A groove along both boards, such as a drawer bottom's.
        pub groove: Given<GrooveRequest> = "groove",
        /// What the saw and sled allow; nothing is checked when left out.
        pub saw: Given<SawRequest> = "saw",
    }

    /// One board.
    pub struct BoardRequest {
        /// Thickness, mm.
        pub thickness: Given<f64> = "thickness",
    }

    /// How the width is divided into pins and sockets.
    pub struct LayoutRequest {
        /// `count`, `finger`, `onePass` or `pattern`.
        pub kind: Given<String> = "kind",
        /// By count: number of spaces, pins and sockets together.
        pub count: Given<f64> = "count",
        /// By finger width: the wanted width, mm.
        pub width: Given<f64> = "width",
        /// One pass per socket: what happens to the rest of the width: `ends`, `far` or `rip`.
        pub leftover: Given<String> = "leftover",
        /// Pattern: relative widths of the spaces, from the reference edge.
        pub weights: Given<Vec<Given<f64>>> = "weights",
        /// Pattern: whether the weights run back again from the last one, which stands in the middle once.
        pub mirrored: Given<bool> = "mirrored",
    }

    /// A groove along the inner faces of both boards.
    pub struct GrooveRequest {
        /// Edge of the board to the groove's nearer side, mm.
        pub from_edge: Given<f64> = "fromEdge",
        /// Width, mm.
        pub width: Given<f64> = "width",
        /// Depth, mm.
        pub depth: Given<f64> = "depth",
        /// Which edge it is measured from: `reference` (when left out) or `far`.
        pub edge: Given<String> = "edge",
    }

    /// What the saw and sled allow.
    pub struct SawRequest {
        /// Greatest height of the blade above the table, mm; no bound when left out.
        pub greatest_height: Given<f64> = "greatestHeight",
        /// Thickness of the sled's base, which the blade comes through, mm; 0 when left out.
        pub base: Given<f64> = "base",
        /// Carriage face to the front rail's near face, mm; no bound when left out, or when the cutter's
        /// diameter is.
        pub window: Given<f64> = "window",
    }
}

impl LayoutRequest {
    /// Division into `count` equal spaces.
    #[must_use]
    pub fn count(count: f64) -> Self {
        Self {
            kind: "count".into(),
            count: count.into(),
            ..Self::default()
        }
    }

    /// Division into fingers about `width` mm wide.
    #[must_use]
    pub fn finger(width: f64) -> Self {
        Self {
            kind: "finger".into(),
            width: width.into(),
            ..Self::default()
        }
    }

    /// One pass per socket; `leftover` is `ends`, `far` or `rip`.
    #[must_use]
    pub fn one_pass(leftover: &str) -> Self {
        Self {
            kind: "onePass".into(),
            leftover: leftover.into(),
            ..Self::default()
        }
    }

    /// Division by weights.
    #[must_use]
    pub fn pattern(weights: &[f64], mirrored: bool) -> Self {
        let weights = weights.iter().copied().map(Given::from).collect::<Vec<_>>();
        Self {
            kind: "pattern".into(),
            weights: weights.into(),
            mirrored: mirrored.into(),
            ..Self::default()
        }
    }
}
