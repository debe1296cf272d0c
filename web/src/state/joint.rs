//! The joint as it is typed.

use serde::{Deserialize, Serialize};

use super::entry::Entry;
use super::field::typed_fields;
use super::lenient::stored;

stored! {
    /// A box joint.
    pub struct JointForm {
        /// What the piece is called.
        pub job: Entry,
        /// What the joint is called.
        pub name: Entry,
        /// Width of both boards.
        pub width: Entry,
        /// Thickness of board A.
        pub thickness_a: Entry,
        /// Thickness of board B.
        pub thickness_b: Entry,
        /// How the width is divided.
        pub layout: LayoutKind,
        /// By count: number of fingers, pins and sockets together.
        pub count: Entry,
        /// By finger width: the wanted width.
        pub finger_width: Entry,
        /// One pass per socket: what happens to the rest of the width.
        pub leftover: Leftover,
        /// Pattern: relative widths of the spaces, from the reference edge.
        pub weights: Entry,
        /// Pattern: whether the weights run back again from the last one.
        pub mirrored: bool,
        /// What board A has at the reference edge.
        pub first: First,
        /// Glue gap at each flank.
        pub glue_gap: Entry,
        /// How far pins stand past the mating face; blank for flush.
        pub proud: Entry,
        /// Where the reading is zero.
        pub zero: ZeroForm,
        /// A groove along both boards.
        pub groove: GrooveForm,
    }
}

typed_fields! {
    /// The joint's fields.
    JointField of JointForm {
        /// What the piece is called.
        Job: Name = job as "job";
        /// What the joint is called.
        Name: Name = name as "name";
        /// Width of both boards.
        Width: Length = width as "width";
        /// Thickness of board A.
        ThicknessA: Length = thickness_a as "thickness-a";
        /// Thickness of board B.
        ThicknessB: Length = thickness_b as "thickness-b";
        /// Number of fingers.
        Count: Number = count as "count";
        /// Wanted width of a finger.
        FingerWidth: Length = finger_width as "finger-width";
        /// Weights of the pattern.
        Weights: Numbers = weights as "weights";
        /// Glue gap at each flank.
        GlueGap: Length = glue_gap as "glue-gap";
        /// How far pins stand past the mating face.
        Proud: Length = proud as "proud";
        /// Test kerf: the reading at which it was made.
        ZeroReading: Length = zero.reading as "zero-reading";
        /// Test kerf: measured from the reference edge to its near side.
        ZeroMeasured: Length = zero.measured as "zero-measured";
        /// Edge to the groove's nearer side.
        GrooveFromEdge: Length = groove.from_edge as "groove-from-edge";
        /// Width of the groove.
        GrooveWidth: Length = groove.width as "groove-width";
        /// Depth of the groove.
        GrooveDepth: Length = groove.depth as "groove-depth";
    }
}

/// How the width is divided into pins and sockets.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum LayoutKind {
    /// Into a number of equal fingers.
    #[default]
    Count,
    /// Into fingers of about a width.
    Finger,
    /// Into sockets as wide as the cutter.
    OnePass,
    /// By a list of weights.
    Pattern,
}

/// What happens to the width that whole fingers leave over.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum Leftover {
    /// Both end fingers share it.
    #[default]
    Ends,
    /// It stays at the far edge.
    Far,
    /// The boards are ripped to whole fingers.
    Rip,
}

/// What board A has at the reference edge.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum First {
    /// A pin.
    #[default]
    Pin,
    /// A socket.
    Socket,
}

stored! {
    /// Where the reading is zero.
    pub struct ZeroForm {
        /// How it was found.
        pub kind: ZeroKind,
        /// Test kerf: the reading at which it was made.
        pub reading: Entry,
        /// Test kerf: measured from the reference edge to its near side.
        pub measured: Entry,
    }
}

/// How the zero is found.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum ZeroKind {
    /// The reference edge just touches the side of the stopped cutter.
    #[default]
    Touch,
    /// The cutter is flush with the reference edge.
    Flush,
    /// A kerf was made at some reading and measured.
    TestKerf,
}

stored! {
    /// A groove along the inner faces of both boards, such as a drawer bottom's.
    pub struct GrooveForm {
        /// Whether there is one.
        pub on: bool,
        /// Edge to the nearer side.
        pub from_edge: Entry,
        /// Width.
        pub width: Entry,
        /// Depth.
        pub depth: Entry,
        /// Which edge it is measured from.
        pub edge: Edge,
    }
}

/// An edge of a board.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum Edge {
    /// The one against the stop on the carriage.
    #[default]
    Reference,
    /// The other.
    Far,
}
