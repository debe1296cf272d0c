//! What is asked of the chosen sled on the chosen saw, as it is typed.

use super::entry::Entry;
use super::field::typed_fields;
use super::id::Id;
use super::list::{Item, List};
use super::stored::{stored, words};

stored! {
    /// Everything that is typed in the sled's place beside the saw and the sled themselves.
    pub struct SledForm {
        /// What is to be cut.
        pub cut: CutForm = "cut",
        /// A strip of the five-cut test.
        pub square: SquareForm = "square",
        /// Earlier tests.
        pub tests: List<SquareTest> = "tests",
        /// Positions that were commanded of the chosen screw and then measured.
        pub points: List<Point> = "points",
        /// The lead that they were commanded with, once a corrected one has been taken: the positions stay
        /// what they were.
        pub commanded_with: Entry = "commandedWith",
        /// The screw of that lead.
        pub commanded_screw: Id = "commandedScrew",
        /// A groove on the router table.
        pub rout: RoutForm = "rout",
    }
}

stored! {
    /// A cut, and how the runner was found to stand at both ends of its stroke.
    pub struct CutForm {
        /// Depth of the cut; blank for the joint's.
        pub depth: Entry = "depth",
        /// Thickness of the board; blank for the joint's thicker one.
        pub thickness: Entry = "thickness",
        /// Width of the board; blank for the joint's.
        pub width: Entry = "width",
        /// Room between board and blade before the cut; blank for the usual.
        pub clearance: Entry = "clearance",
        /// How far the carriage face goes past the blade's top; blank for the usual.
        pub over: Entry = "over",
        /// Table left over at the near end, as measured.
        pub near: Entry = "near",
        /// Table left over at the far end, as measured.
        pub far: Entry = "far",
        /// Side play of the runner in its slot.
        pub play: Entry = "play",
    }
}

typed_fields! {
    /// The cut's fields.
    CutField of CutForm {
        /// Depth of the cut.
        Depth: Length = depth as "depth";
        /// Thickness of the board.
        Thickness: Length = thickness as "thickness";
        /// Width of the board.
        Width: Length = width as "width";
        /// Room between board and blade before the cut.
        Clearance: Length = clearance as "clearance";
        /// How far the carriage face goes past the blade's top.
        Over: Length = over as "over";
        /// Table left over at the near end.
        Near: Length = near as "near";
        /// Table left over at the far end.
        Far: Length = far as "far";
        /// Side play of the runner in its slot.
        Play: Length = play as "play";
    }
}

stored! {
    /// A strip of the five-cut test, measured.
    pub struct SquareForm {
        /// Width at the end that was against the fence.
        pub fence_end: Entry = "fenceEnd",
        /// Width at the free end.
        pub free_end: Entry = "freeEnd",
        /// Distance between the two measurements.
        pub apart: Entry = "apart",
        /// Fence's pivot to where it is adjusted.
        pub pivot: Entry = "pivot",
        /// Uncertainty of each reading; blank for the usual.
        pub uncertainty: Entry = "uncertainty",
    }
}

typed_fields! {
    /// The strip's fields.
    SquareField of SquareForm {
        /// Width at the end that was against the fence.
        FenceEnd: Length = fence_end as "fence-end";
        /// Width at the free end.
        FreeEnd: Length = free_end as "free-end";
        /// Distance between the two measurements.
        Apart: Length = apart as "apart";
        /// Fence's pivot to where it is adjusted.
        Pivot: Length = pivot as "pivot";
        /// Uncertainty of each reading.
        Uncertainty: Length = uncertainty as "uncertainty";
    }
}

stored! {
    /// A five-cut test that was kept.
    pub struct SquareTest {
        /// Which one.
        pub id: Id = "id",
        /// The day it was made, as year-month-day.
        pub date: Entry = "date",
        /// The sled that it was made with.
        pub sled: Id = "sled",
        /// The strip, as it was typed.
        pub strip: SquareForm = "strip",
    }
}

stored! {
    /// A position that was commanded and then measured.
    pub struct Point {
        /// Which one.
        pub id: Id = "id",
        /// What the dial was set to.
        pub commanded: Entry = "commanded",
        /// What was measured.
        pub measured: Entry = "measured",
        /// Which way the dial came to it.
        pub approach: Approach = "approach",
    }
}

typed_fields! {
    /// A point's fields.
    PointField of Point {
        /// What the dial was set to.
        Commanded: Length = commanded as "commanded";
        /// What was measured.
        Measured: Length = measured as "measured";
    }
}

words! {
    /// Which way the dial came to a position.
    pub enum Approach {
        /// With rising readings.
        #[default]
        Up = "up",
        /// With falling readings.
        Down = "down",
    }
}

impl Item for SquareTest {
    fn id(&self) -> Id {
        self.id
    }
    fn with_id(self, id: Id) -> Self {
        Self { id, ..self }
    }
}

impl Item for Point {
    fn id(&self) -> Id {
        self.id
    }
    fn with_id(self, id: Id) -> Self {
        Self { id, ..self }
    }
    /// Ten positions from both sides, ten times over.
    const MOST: usize = 200;
}

stored! {
    /// A groove on the router table.
    pub struct RoutForm {
        /// Reference edge to the middle of the groove.
        pub from_edge: Entry = "fromEdge",
        /// How its width is found.
        pub by: WidthBy = "by",
        /// Its width.
        pub width: Entry = "width",
        /// Thickness of the sheet that goes into it, measured.
        pub sheet: Entry = "sheet",
        /// Room for the sheet.
        pub clearance: Entry = "clearance",
        /// Diameter of the bit.
        pub bit: Entry = "bit",
        /// Depth of the groove.
        pub depth: Entry = "depth",
        /// Deepest that one pass may go.
        pub pass_depth: Entry = "passDepth",
        /// Leading end of the board to where the groove begins; blank from end to end.
        pub from: Entry = "from",
        /// Leading end of the board to where the groove ends; blank from end to end.
        pub to: Entry = "to",
    }
}

typed_fields! {
    /// The groove's fields.
    RoutField of RoutForm {
        /// Reference edge to the middle of the groove.
        FromEdge: Length = from_edge as "from-edge";
        /// Its width.
        Width: Length = width as "width";
        /// Thickness of the sheet that goes into it.
        Sheet: Length = sheet as "sheet";
        /// Room for the sheet.
        Clearance: Length = clearance as "clearance";
        /// Diameter of the bit.
        Bit: Length = bit as "bit";
        /// Depth of the groove.
        Depth: Length = depth as "depth";
        /// Deepest that one pass may go.
        PassDepth: Length = pass_depth as "pass-depth";
        /// Where the groove begins.
        From: Length = from as "from";
        /// Where the groove ends.
        To: Length = to as "to";
    }
}

words! {
    /// How a groove's width is found.
    pub enum WidthBy {
        /// From the sheet that goes into it.
        #[default]
        Sheet = "sheet",
        /// It is known.
        Width = "width",
    }
}

stored! {
    /// How the sled's place was left.
    pub struct SledView {
        /// Which of its tools is open.
        pub tool: Tool = "tool",
        /// How far the sled is pushed through in the pictures, in thousandths of the stroke.
        pub pushed: u32 = "pushed",
        /// Which cut of the five-cut test is shown, from 0.
        pub step: u32 = "step",
        /// What is printed of the base.
        pub prints: Prints = "prints",
        /// The paper it is printed on.
        pub paper: PaperSize = "paper",
    }
}

words! {
    /// A tool of the sled's place.
    pub enum Tool {
        /// Where the runner goes, and the stroke.
        #[default]
        Fit = "fit",
        /// The base's drawing.
        Base = "base",
        /// The five-cut test.
        Square = "square",
        /// The screw against a rule.
        Screw = "screw",
        /// A groove on the router table.
        Groove = "groove",
    }
}

words! {
    /// What is printed of the base.
    pub enum Prints {
        /// Its drawing.
        #[default]
        Drawing = "drawing",
        /// The line of the runner's holes, full size.
        HoleLine = "holeLine",
    }
}

words! {
    /// A size of paper.
    pub enum PaperSize {
        /// 210 by 297 mm.
        #[default]
        A4 = "a4",
        /// 8½ by 11 inches.
        Letter = "letter",
    }
}
