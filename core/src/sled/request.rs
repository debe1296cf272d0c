//! What the fit of a sled to a saw is asked with.

use crate::given::{Given, request};

request! {
    /// A sled on one particular saw.
    pub struct SledFitRequest {
        /// The saw.
        pub saw: Given<TableRequest> = "saw",
        /// The blade on its arbor.
        pub blade: Given<BladeRequest> = "blade",
        /// The sled.
        pub sled: Given<SledRequest> = "sled",
        /// What is to be cut.
        pub cut: Given<CutRequest> = "cut",
        /// Table left over as measured at both ends of the stroke; compared with what is computed.
        pub measured: Given<LeftOverRequest> = "measured",
        /// Side play of the runner in its slot, mm.
        pub play: Given<f64> = "play",
    }

    /// A saw table, measured.
    pub struct TableRequest {
        /// Blade to the middle of the slot, mm.
        pub blade_to_slot: Given<f64> = "bladeToSlot",
        /// Where on the blade that was measured from: `centre` (when left out) or `nearTooth`, the side nearer the slot.
        pub measured_from: Given<String> = "measuredFrom",
        /// Side of the blade the slot is on, seen from the operator: `left` or `right`.
        pub slot_side: Given<String> = "slotSide",
        /// Front edge of the table to the arbor's axis, mm.
        pub front_to_arbor: Given<f64> = "frontToArbor",
        /// Arbor's axis to the rear edge of the table, mm.
        pub arbor_to_rear: Given<f64> = "arborToRear",
        /// Greatest height of the blade above the table, mm.
        pub greatest_height: Given<f64> = "greatestHeight",
        /// Blade to the middle of the slot on its other side, mm, measured from the same place on the blade.
        pub second_slot: Given<f64> = "secondSlot",
        /// Section of the slot: `plain` (when left out) or `t`.
        pub slot_section: Given<String> = "slotSection",
    }

    /// A blade.
    pub struct BladeRequest {
        /// Diameter, mm.
        pub diameter: Given<f64> = "diameter",
        /// Width it really cuts, mm.
        pub kerf: Given<f64> = "kerf",
    }

    /// A sled; distances along the feed count from the base's near edge, the operator's.
    pub struct SledRequest {
        /// The base.
        pub base: Given<BaseRequest> = "base",
        /// Face of the carriage that the board stands against, mm.
        pub carriage_face: Given<f64> = "carriageFace",
        /// Near face of the front rail, mm.
        pub front_rail: Given<f64> = "frontRail",
        /// The runner.
        pub runner: Given<RunnerRequest> = "runner",
        /// Blade line from the base's left edge, mm; its middle when left out.
        pub blade_line: Given<f64> = "bladeLine",
    }

    /// The base of a sled.
    pub struct BaseRequest {
        /// Thickness, mm.
        pub thickness: Given<f64> = "thickness",
        /// Width, mm.
        pub width: Given<f64> = "width",
        /// Length along the feed, mm.
        pub length: Given<f64> = "length",
        /// Least distance of a runner from the base's side edges, mm; 0 when left out.
        pub margin: Given<f64> = "margin",
    }

    /// The bar that rides in the slot.
    pub struct RunnerRequest {
        /// Outermost contact with the slot at the near end, mm from the base's near edge.
        pub contact_near: Given<f64> = "contactNear",
        /// Outermost contact with the slot at the far end, mm from the base's near edge.
        pub contact_far: Given<f64> = "contactFar",
        /// Width of the bar, mm.
        pub width: Given<f64> = "width",
        /// Its screw holes, mm from the base's near edge; none when left out.
        pub holes: Given<Vec<Given<f64>>> = "holes",
        /// Clearance of the screws in their slotted holes, mm, which lets the runner turn for squaring.
        pub hole_clearance: Given<f64> = "holeClearance",
    }

    /// What is to be cut.
    pub struct CutRequest {
        /// Depth of the cut, mm.
        pub depth: Given<f64> = "depth",
        /// Thickness of the board, mm.
        pub board_thickness: Given<f64> = "boardThickness",
        /// Width of the board, mm.
        pub board_width: Given<f64> = "boardWidth",
        /// Room between board and blade before the cut, mm; 5 when left out.
        pub clearance: Given<f64> = "clearance",
        /// How far the carriage face goes past the blade's top, mm; 2 when left out.
        pub over: Given<f64> = "over",
        /// How far the screw can move the carriage sideways, mm.
        pub carriage_travel: Given<f64> = "carriageTravel",
    }

    /// Table left over beyond the runner's outermost contacts.
    pub struct LeftOverRequest {
        /// At the near end, sled pulled back, mm; negative where the contact is off the table.
        pub near: Given<f64> = "near",
        /// At the far end, sled pushed through, mm; negative where the contact is off the table.
        pub far: Given<f64> = "far",
    }
}
