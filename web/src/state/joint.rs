//! The joint as it is typed.

use super::dovetail::{DovetailForm, JointKind, SlidingForm};
use super::entry::Entry;
use super::field::typed_fields;
use super::id::Id;
use super::pieces::PiecesForm;
use super::stored::{stored, words};

stored! {
    /// The joint: what every kind needs, and what each needs for itself.
    pub struct JointForm {
        /// Which one of all: what has been cut of it is known by this.
        pub id: Id = "id",
        /// Which kind of joint it is.
        pub kind: JointKind = "kind",
        /// What the joint is called.
        pub name: Entry = "name",
        /// Width of both boards.
        pub width: Entry = "width",
        /// Thickness of board A; of a dovetail, the tail board.
        pub thickness_a: Entry = "thicknessA",
        /// Thickness of board B; of a dovetail, the pin board.
        pub thickness_b: Entry = "thicknessB",
        /// How the width is divided.
        pub layout: LayoutKind = "layout",
        /// By count: number of fingers, pins and sockets together.
        pub count: Entry = "count",
        /// By finger width: the wanted width.
        pub finger_width: Entry = "fingerWidth",
        /// One pass per socket: what happens to the rest of the width.
        pub leftover: Leftover = "leftover",
        /// Pattern: relative widths of the spaces, from the reference edge.
        pub weights: Entry = "weights",
        /// Pattern: whether the weights run back again from the last one.
        pub mirrored: bool = "mirrored",
        /// What board A has at the reference edge.
        pub first: First = "first",
        /// Glue gap at each flank.
        pub glue_gap: Entry = "glueGap",
        /// How far pins stand past the mating face; blank for flush.
        pub proud: Entry = "proud",
        /// Where the reading is zero.
        pub zero: ZeroForm = "zero",
        /// A groove along both boards.
        pub groove: GrooveForm = "groove",
        /// Dovetails.
        pub dovetail: DovetailForm = "dovetail",
        /// A sliding dovetail.
        pub sliding: SlidingForm = "sliding",
        /// The boards that it is cut on.
        pub pieces: PiecesForm = "pieces",
        /// A mark of where it comes from, and of what it was given there; blank for one that was begun here.
        pub from: Entry = "from",
    }
}

typed_fields! {
    /// The joint's fields.
    JointField of JointForm {
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

words! {
    /// How the width is divided into pins and sockets.
    pub enum LayoutKind {
        /// Into a number of equal fingers.
        #[default]
        Count = "count",
        /// Into fingers of about a width.
        Finger = "finger",
        /// Into sockets as wide as the cutter.
        OnePass = "onePass",
        /// By a list of weights.
        Pattern = "pattern",
    }
}

words! {
    /// What happens to the width that whole fingers leave over.
    pub enum Leftover {
        /// Both end fingers share it.
        #[default]
        Ends = "ends",
        /// It stays at the far edge.
        Far = "far",
        /// The boards are ripped to whole fingers.
        Rip = "rip",
    }
}

words! {
    /// What board A has at the reference edge.
    pub enum First {
        /// A pin.
        #[default]
        Pin = "pin",
        /// A socket.
        Socket = "socket",
    }
}

stored! {
    /// Where the reading is zero.
    pub struct ZeroForm {
        /// How it was found.
        pub kind: ZeroKind = "kind",
        /// Test kerf: the reading at which it was made.
        pub reading: Entry = "reading",
        /// Test kerf: measured from the reference edge to its near side.
        pub measured: Entry = "measured",
    }
}

words! {
    /// How the zero is found.
    pub enum ZeroKind {
        /// The reference edge just touches the side of the stopped cutter.
        #[default]
        Touch = "touch",
        /// The cutter is flush with the reference edge.
        Flush = "flush",
        /// A kerf was made at some reading and measured.
        TestKerf = "testKerf",
    }
}

stored! {
    /// A groove along the inner faces of both boards, such as a drawer bottom's.
    pub struct GrooveForm {
        /// Whether there is one.
        pub on: bool = "on",
        /// Edge to the nearer side.
        pub from_edge: Entry = "fromEdge",
        /// Width.
        pub width: Entry = "width",
        /// Depth.
        pub depth: Entry = "depth",
        /// Which edge it is measured from.
        pub edge: Edge = "edge",
    }
}

words! {
    /// An edge of a board.
    pub enum Edge {
        /// The one against the stop on the carriage.
        #[default]
        Reference = "reference",
        /// The other.
        Far = "far",
    }
}
