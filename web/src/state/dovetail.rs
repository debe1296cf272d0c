//! Dovetails as they are typed: what they have beyond the boards, the fit and the zero of every joint.

use super::entry::Entry;
use super::field::typed_fields;
use super::id::Id;
use super::stored::{stored, words};

words! {
    /// Which joint it is.
    pub enum JointKind {
        /// Square pins and sockets.
        #[default]
        Box = "box",
        /// Through or half-blind dovetails.
        Dovetail = "dovetail",
        /// A tongue that slides into a socket.
        Sliding = "sliding",
    }
}

stored! {
    /// Through or half-blind dovetails.
    pub struct DovetailForm {
        /// Number of tails.
        pub tails: Entry = "tails",
        /// How pins and half-pins are found.
        pub by: PinsBy = "by",
        /// Width of a pin at the outer face.
        pub narrow_pin: Entry = "narrowPin",
        /// Width of a half-pin at the outer face.
        pub half_pin: Entry = "halfPin",
        /// Tail to pin at mid thickness.
        pub ratio: Entry = "ratio",
        /// How the slope is given.
        pub slope_by: SlopeBy = "slopeBy",
        /// The slope as one to this.
        pub run: Entry = "run",
        /// The slope in degrees.
        pub degrees: Entry = "degrees",
        /// Relative widths of the tails; blank for all alike.
        pub weights: Entry = "weights",
        /// What is left of the pin board before the tails; blank for through dovetails.
        pub lap: Entry = "lap",
        /// The cutter for the pin board; none for the one that cuts the tails.
        pub pin_cutter: Id = "pinCutter",
        /// Lean of the blade as it was measured: offset.
        pub lean_offset: Entry = "leanOffset",
        /// Lean of the blade as it was measured: over this height.
        pub lean_height: Entry = "leanHeight",
        /// Length of the carriage that a wedge lies along.
        pub wedge_length: Entry = "wedgeLength",
        /// Thickness of the wedge at its thin end.
        pub wedge_thin: Entry = "wedgeThin",
    }
}

typed_fields! {
    /// The dovetails' fields.
    DovetailField of DovetailForm {
        /// Number of tails.
        Tails: Number = tails as "tails";
        /// Width of a pin at the outer face.
        NarrowPin: Length = narrow_pin as "narrow-pin";
        /// Width of a half-pin at the outer face.
        HalfPin: Length = half_pin as "half-pin";
        /// Tail to pin at mid thickness.
        Ratio: Number = ratio as "ratio";
        /// The slope as one to this.
        Run: Number = run as "run";
        /// The slope in degrees.
        Degrees: Number = degrees as "degrees";
        /// Relative widths of the tails.
        Weights: Numbers = weights as "weights";
        /// What is left of the pin board before the tails.
        Lap: Length = lap as "lap";
        /// Lean of the blade as it was measured: offset.
        LeanOffset: Length = lean_offset as "lean-offset";
        /// Lean of the blade as it was measured: over this height.
        LeanHeight: Length = lean_height as "lean-height";
        /// Length of the carriage that a wedge lies along.
        WedgeLength: Length = wedge_length as "wedge-length";
        /// Thickness of the wedge at its thin end.
        WedgeThin: Length = wedge_thin as "wedge-thin";
    }
}

words! {
    /// How pins and half-pins are found.
    pub enum PinsBy {
        /// Their widths are given.
        #[default]
        Widths = "widths",
        /// From the ratio of tail to pin at mid thickness.
        Ratio = "ratio",
        /// Tails and pins alike at mid thickness.
        Equal = "equal",
        /// As narrow as the blade allows.
        Narrowest = "narrowest",
    }
}

words! {
    /// How a slope is given.
    pub enum SlopeBy {
        /// As one to a number.
        #[default]
        Run = "run",
        /// In degrees.
        Degrees = "degrees",
    }
}

stored! {
    /// A sliding dovetail.
    pub struct SlidingForm {
        /// Diameter of the bit at its tip.
        pub tip: Entry = "tip",
        /// Angle of its flank, degrees.
        pub flank: Entry = "flank",
        /// Length of its cutting edge; blank when it does not matter.
        pub cutting_length: Entry = "cuttingLength",
        /// Depth of the socket.
        pub depth: Entry = "depth",
        /// Width of the socket at its floor; blank for the bit's own.
        pub floor: Entry = "floor",
        /// Thickness of the board with the tongue.
        pub thickness: Entry = "thickness",
        /// How much wider the socket is where the tongue enters; blank for none.
        pub taper: Entry = "taper",
        /// Length of the socket.
        pub length: Entry = "length",
    }
}

typed_fields! {
    /// The sliding dovetail's fields.
    SlidingField of SlidingForm {
        /// Diameter of the bit at its tip.
        Tip: Length = tip as "tip";
        /// Angle of its flank, degrees.
        Flank: Number = flank as "flank";
        /// Length of its cutting edge.
        CuttingLength: Length = cutting_length as "cutting-length";
        /// Depth of the socket.
        Depth: Length = depth as "depth";
        /// Width of the socket at its floor.
        Floor: Length = floor as "floor";
        /// Thickness of the board with the tongue.
        Thickness: Length = thickness as "thickness";
        /// How much wider the socket is where the tongue enters.
        Taper: Length = taper as "taper";
        /// Length of the socket.
        Length: Length = length as "length";
    }
}
