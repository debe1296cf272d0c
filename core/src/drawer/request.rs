//! What drawers are asked with.

use crate::cutter::CutterRequest;
use crate::dial::{ScrewRequest, ZeroRequest};
use crate::given::{Given, request};
use crate::joint::box_joint::{BoardRequest, SawRequest};
use crate::joint::dovetail::{ByRequest, SlopeRequest};
use crate::wood::{ClimateRequest, SolidWoodRequest};

request! {
    /// Drawers of one opening, or of one outside size.
    pub struct DrawerBoxRequest {
        /// The opening with its clearances, or the drawer's outside.
        pub size: Given<DrawerSizeRequest> = "size",
        /// Number of drawers; 1 when left out.
        pub count: Given<f64> = "count",
        /// How an opening's height is shared out; equally when left out.
        pub heights: Given<DrawerHeightsRequest> = "heights",
        /// Divider or gap between two drawers of an opening, mm; needed for more than one.
        pub between: Given<f64> = "between",
        /// The sides, as measured.
        pub side: Given<BoardRequest> = "side",
        /// The front, as measured.
        pub front: Given<BoardRequest> = "front",
        /// The back, as measured; as thick as the front when left out.
        pub back: Given<BoardRequest> = "back",
        /// A front applied to the box; the box has the only one when left out.
        pub applied: Given<AppliedFrontRequest> = "applied",
        /// The joint at all four corners.
        pub joint: Given<DrawerJointRequest> = "joint",
        /// The bottom and its groove.
        pub bottom: Given<DrawerBottomRequest> = "bottom",
        /// Solid wood of sides, front and back, its grain along each board; a sheet that does not move when left out.
        pub wood: Given<SolidWoodRequest> = "wood",
        /// The air that the drawers stand in; needed with solid wood.
        pub climate: Given<ClimateRequest> = "climate",
    }

    /// The opening with its clearances, or the drawer's outside.
    pub struct DrawerSizeRequest {
        /// `outside` or `opening`.
        pub kind: Given<String> = "kind",
        /// Width, mm.
        pub width: Given<f64> = "width",
        /// Height, mm; of an opening, of all drawers together.
        pub height: Given<f64> = "height",
        /// Depth, mm.
        pub depth: Given<f64> = "depth",
        /// By opening: `runners` (wooden ones, on which the drawer lies), `side` (slides at the sides) or `under` (slides beneath).
        pub slides: Given<String> = "slides",
        /// By opening: room at each side, mm: for slides at the sides their measured thickness.
        pub side_clearance: Given<f64> = "sideClearance",
        /// By opening: room above each drawer that is left at the dampest, mm.
        pub above: Given<f64> = "above",
        /// By opening, not on wooden runners: room beneath each drawer, mm.
        pub below: Given<f64> = "below",
        /// By opening: room behind each drawer, mm; 0 when left out.
        pub behind: Given<f64> = "behind",
    }

    /// How an opening's height is shared out.
    pub struct DrawerHeightsRequest {
        /// `equal`, `graduated` (each higher than the one above by a step) or `ratio` (so many times as high).
        pub kind: Given<String> = "kind",
        /// Graduated: how much higher, mm.
        pub step: Given<f64> = "step",
        /// By ratio: how many times as high.
        pub ratio: Given<f64> = "ratio",
    }

    /// A front applied to the box.
    pub struct AppliedFrontRequest {
        /// Thickness, mm.
        pub thickness: Given<f64> = "thickness",
        /// How far it reaches past the opening at each side, above the topmost and below the lowest, mm; past the
        /// box where its outside is given. Negative for a front that lies inside: the gap around it.
        pub lap: Given<f64> = "lap",
        /// Gap between two fronts, mm; 2 when left out.
        pub gap: Given<f64> = "gap",
    }

    /// The joint at all four corners.
    pub struct DrawerJointRequest {
        /// `box` or `dovetail`.
        pub kind: Given<String> = "kind",
        /// Box: how the height is divided.
        pub layout: Given<DrawerLayoutRequest> = "layout",
        /// Box: what the sides have at the lower edge: `pin` (when left out) or `socket`.
        pub first: Given<String> = "first",
        /// Dovetail: slope of the flanks; the sides have the tails.
        pub slope: Given<SlopeRequest> = "slope",
        /// Dovetail: number of tails.
        pub tails: Given<f64> = "tails",
        /// Dovetail: half-pin at each edge, at the outer face, mm.
        pub half_pin: Given<f64> = "halfPin",
        /// Dovetail: pin between two tails, at the outer face, mm.
        pub narrow_pin: Given<f64> = "narrowPin",
        /// Dovetail: what decides the widths.
        pub by: Given<ByRequest> = "by",
        /// Dovetail: wood left in front of the tails, mm; 0 when left out.
        pub lap: Given<f64> = "lap",
        /// Dovetail: wood left behind the tails at the back, mm; the same as `lap` when left out, 0 for a through back.
        pub back_lap: Given<f64> = "backLap",
        /// Dovetail: the cutter for upright cuts; the same as `cutter` when left out.
        pub pin_cutter: Given<CutterRequest> = "pinCutter",
        /// The cutter.
        pub cutter: Given<CutterRequest> = "cutter",
        /// The screw.
        pub screw: Given<ScrewRequest> = "screw",
        /// Where the reading is zero; `touch` when left out.
        pub zero: Given<ZeroRequest> = "zero",
        /// Glue gap at each flank, mm; 0.05 when left out.
        pub glue_gap: Given<f64> = "glueGap",
        /// How far pins stand past the mating face, mm, to be planed flush; 0 when left out.
        pub proud: Given<f64> = "proud",
        /// What the saw and sled allow; nothing is checked when left out.
        pub saw: Given<SawRequest> = "saw",
    }

    /// How the height is divided into an odd number of fingers, the same at both edges.
    pub struct DrawerLayoutRequest {
        /// `count`, `finger` (exactly so wide) or `onePass` (as wide as the cutter).
        pub kind: Given<String> = "kind",
        /// By count: number of fingers, pins and sockets together, odd.
        pub count: Given<f64> = "count",
        /// By finger: width of each, mm.
        pub width: Given<f64> = "width",
    }

    /// The bottom and its groove.
    pub struct DrawerBottomRequest {
        /// Thickness, as measured, mm.
        pub thickness: Given<f64> = "thickness",
        /// Its groove in all four boards.
        pub groove: Given<DrawerGrooveRequest> = "groove",
        /// Room between the bottom's edges and the groove's floor, at the dampest, mm; 0.5 when left out.
        pub clearance: Given<f64> = "clearance",
        /// Solid wood, its grain from side to side; a sheet when left out.
        pub wood: Given<SolidWoodRequest> = "wood",
    }

    /// The bottom's groove.
    pub struct DrawerGrooveRequest {
        /// Lower edge of the boards to the groove's lower side, mm.
        pub from_edge: Given<f64> = "fromEdge",
        /// Depth, mm; at most half of the thinnest board.
        pub depth: Given<f64> = "depth",
        /// How much wider than the bottom is thick, mm; 0.1 when left out.
        pub clearance: Given<f64> = "clearance",
        /// Diameter of the bit that routs it, mm; fence settings are left out without it.
        pub bit: Given<f64> = "bit",
    }
}
