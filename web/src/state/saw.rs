//! Saws and the sleds that run on them, as they are measured.

use super::entry::Entry;
use super::field::typed_fields;
use super::id::Id;
use super::stored::{stored, words};

stored! {
    /// A table saw.
    pub struct Saw {
        /// Which one.
        pub id: Id = "id",
        /// What it is called.
        pub name: Entry = "name",
        /// Greatest height of the blade above the table; blank when it is not known.
        pub greatest_height: Entry = "greatestHeight",
        /// Side of the blade that the runner's slot is on.
        pub side: Side = "side",
        /// Blade to the middle of that slot.
        pub to_slot: Entry = "toSlot",
        /// Where on the blade that was measured from.
        pub measured_from: MeasuredFrom = "measuredFrom",
        /// Blade to the middle of the slot on its other side; blank when there is none.
        pub second_slot: Entry = "secondSlot",
        /// Section of the slots.
        pub section: Section = "section",
        /// Front edge of the table to the arbor's axis.
        pub front: Entry = "front",
        /// Arbor's axis to the rear edge of the table.
        pub rear: Entry = "rear",
    }
}

typed_fields! {
    /// A saw's fields.
    SawField of Saw {
        /// What it is called.
        Name: Name = name as "name";
        /// Greatest height of the blade above the table.
        GreatestHeight: Length = greatest_height as "greatest-height";
        /// Blade to the middle of the runner's slot.
        ToSlot: Length = to_slot as "to-slot";
        /// Blade to the middle of the slot on its other side.
        SecondSlot: Length = second_slot as "second-slot";
        /// Front edge of the table to the arbor's axis.
        Front: Length = front as "front";
        /// Arbor's axis to the rear edge of the table.
        Rear: Length = rear as "rear";
    }
}

words! {
    /// A side of the blade, seen from the operator.
    pub enum Side {
        /// Left.
        #[default]
        Left = "left",
        /// Right.
        Right = "right",
    }
}

words! {
    /// Where on the blade a distance was measured from.
    pub enum MeasuredFrom {
        /// The tooth nearer the slot.
        #[default]
        NearTooth = "nearTooth",
        /// The middle of the blade.
        Centre = "centre",
    }
}

words! {
    /// Section of a table's slot.
    pub enum Section {
        /// The same width all the way down.
        #[default]
        Plain = "plain",
        /// Wider at its floor.
        T = "t",
    }
}

stored! {
    /// A sled; distances along the feed count from the base's near edge, the operator's.
    pub struct Sled {
        /// Which one.
        pub id: Id = "id",
        /// What it is called.
        pub name: Entry = "name",
        /// Thickness of the base; blank for none.
        pub base: Entry = "base",
        /// How far the screw moves the carriage; blank when it is not known.
        pub travel: Entry = "travel",
        /// Width of the base.
        pub width: Entry = "width",
        /// Length of the base along the feed.
        pub length: Entry = "length",
        /// Blade line from the base's left edge; blank for its middle.
        pub blade_line: Entry = "bladeLine",
        /// Face of the carriage that the board stands against.
        pub carriage_face: Entry = "carriageFace",
        /// Near face of the front rail.
        pub front_rail: Entry = "frontRail",
        /// Width of the runner.
        pub runner_width: Entry = "runnerWidth",
        /// Outermost contact of the runner at the near end.
        pub contact_near: Entry = "contactNear",
        /// Outermost contact of the runner at the far end.
        pub contact_far: Entry = "contactFar",
        /// Least distance of a runner from the base's side edges; blank for none.
        pub margin: Entry = "margin",
        /// The runner's screw holes.
        pub holes: Entry = "holes",
        /// Clearance of the screws in their slotted holes.
        pub hole_clearance: Entry = "holeClearance",
    }
}

typed_fields! {
    /// A sled's fields.
    SledField of Sled {
        /// What it is called.
        Name: Name = name as "name";
        /// Thickness of the base.
        Base: Length = base as "base";
        /// How far the screw moves the carriage.
        Travel: Length = travel as "travel";
        /// Width of the base.
        Width: Length = width as "width";
        /// Length of the base along the feed.
        Length: Length = length as "length";
        /// Blade line from the base's left edge.
        BladeLine: Length = blade_line as "blade-line";
        /// Face of the carriage.
        CarriageFace: Length = carriage_face as "carriage-face";
        /// Near face of the front rail.
        FrontRail: Length = front_rail as "front-rail";
        /// Width of the runner.
        RunnerWidth: Length = runner_width as "runner-width";
        /// The runner's near contact.
        ContactNear: Length = contact_near as "contact-near";
        /// The runner's far contact.
        ContactFar: Length = contact_far as "contact-far";
        /// Least distance of a runner from the base's side edges.
        Margin: Length = margin as "margin";
        /// The runner's screw holes.
        Holes: Lengths = holes as "holes";
        /// Clearance of the screws in their slotted holes.
        HoleClearance: Length = hole_clearance as "hole-clearance";
    }
}
