//! What is in the shop, as it is typed.

use super::entry::Entry;
use super::field::typed_fields;
use super::id::Id;
use super::list::{Item, List, Named};
use super::saw::{Saw, Sled};
use super::stored::{stored, words};

stored! {
    /// Saws, sleds, cutters and screws, and two sums beside them that find a width of cut.
    pub struct Shop {
        /// Saws.
        pub saws: List<Saw> = "saws",
        /// Sleds.
        pub sleds: List<Sled> = "sleds",
        /// Cutters.
        pub cutters: List<Cutter> = "cutters",
        /// Lead screws.
        pub screws: List<Screw> = "screws",
        /// The stack builder.
        pub stack: StackForm = "stack",
        /// A kerf from a stepped slot.
        pub slot: SlotForm = "slot",
    }
}

stored! {
    /// A cutter: a blade, a grooving stack or a straight bit.
    pub struct Cutter {
        /// Which one.
        pub id: Id = "id",
        /// What it is called.
        pub name: Entry = "name",
        /// Width it really cuts, measured in a test cut.
        pub kerf: Entry = "kerf",
        /// Diameter; blank when it does not matter.
        pub diameter: Entry = "diameter",
        /// Grind of its teeth.
        pub grind: GrindKind = "grind",
        /// Bevel of alternately ground teeth, degrees.
        pub bevel: Entry = "bevel",
        /// Least overlap of neighbouring passes; blank for the usual.
        pub overlap: Entry = "overlap",
    }
}

typed_fields! {
    /// A cutter's fields.
    CutterField of Cutter {
        /// What it is called.
        Name: Name = name as "name";
        /// Width it really cuts.
        Kerf: Length = kerf as "kerf";
        /// Diameter.
        Diameter: Length = diameter as "diameter";
        /// Bevel of alternately ground teeth, degrees.
        Bevel: Number = bevel as "bevel";
        /// Least overlap of neighbouring passes.
        Overlap: Length = overlap as "overlap";
    }
}

words! {
    /// How the tips of the teeth are ground.
    pub enum GrindKind {
        /// Square: leaves a flat floor.
        #[default]
        Flat = "flat",
        /// Sloping alternately left and right: leaves a ridge in each kerf.
        Alternate = "alternate",
        /// Sloping as dovetails do: leaves a flat floor under a leaning blade.
        Slope = "slope",
    }
}

stored! {
    /// The screw that moves the carriage, and its wheel.
    pub struct Screw {
        /// Which one.
        pub id: Id = "id",
        /// What it is called.
        pub name: Entry = "name",
        /// Whether its lead or its threads are given.
        pub by: LeadBy = "by",
        /// Travel per turn.
        pub lead: Entry = "lead",
        /// Threads per inch.
        pub threads: Entry = "threads",
        /// Graduations of the wheel per turn.
        pub divisions: Entry = "divisions",
        /// Lost motion when the wheel changes direction; blank for none.
        pub backlash: Entry = "backlash",
        /// What readings are rounded to.
        pub rounding: Rounding = "rounding",
        /// Where the cut goes as readings rise.
        pub rises: Rises = "rises",
    }
}

typed_fields! {
    /// A screw's fields.
    ScrewField of Screw {
        /// What it is called.
        Name: Name = name as "name";
        /// Travel per turn.
        Lead: Length = lead as "lead";
        /// Threads per inch.
        Threads: Number = threads as "threads";
        /// Graduations of the wheel per turn.
        Divisions: Number = divisions as "divisions";
        /// Lost motion when the wheel changes direction.
        Backlash: Length = backlash as "backlash";
    }
}

words! {
    /// How a screw's travel per turn is given.
    pub enum LeadBy {
        /// As a length.
        #[default]
        Lead = "lead",
        /// As threads per inch.
        Threads = "threads",
    }
}

words! {
    /// What readings are rounded to.
    pub enum Rounding {
        /// Whole divisions.
        #[default]
        Division = "division",
        /// Half divisions.
        Half = "half",
        /// Nothing.
        None = "none",
    }
}

words! {
    /// Where the cut goes on the board as readings rise.
    pub enum Rises {
        /// Away from the reference edge.
        #[default]
        Away = "away",
        /// Towards the reference edge.
        Towards = "towards",
    }
}

stored! {
    /// What is in the box of a grooving stack, and the width that is wanted of it.
    pub struct StackForm {
        /// Widths of the outer cutters.
        pub outer: Entry = "outer",
        /// Widths of the chippers.
        pub chippers: Entry = "chippers",
        /// Thicknesses of the shims.
        pub shims: Entry = "shims",
        /// The wanted width.
        pub want: Entry = "want",
    }
}

typed_fields! {
    /// The stack builder's fields.
    StackField of StackForm {
        /// Widths of the outer cutters.
        Outer: Lengths = outer as "outer";
        /// Widths of the chippers.
        Chippers: Lengths = chippers as "chippers";
        /// Thicknesses of the shims.
        Shims: Lengths = shims as "shims";
        /// The wanted width.
        Want: Length = want as "want";
    }
}

stored! {
    /// A slot made of several kerfs, to find the width of one.
    pub struct SlotForm {
        /// Number of kerfs.
        pub kerfs: Entry = "kerfs",
        /// Carriage travel from one kerf to the next.
        pub step: Entry = "step",
        /// Measured width of the slot.
        pub width: Entry = "width",
    }
}

typed_fields! {
    /// The stepped slot's fields.
    SlotField of SlotForm {
        /// Number of kerfs.
        Kerfs: Number = kerfs as "kerfs";
        /// Carriage travel from one kerf to the next.
        Step: Length = step as "step";
        /// Measured width of the slot.
        Width: Length = width as "width";
    }
}

macro_rules! named {
    ($($item:ident),+) => {$(
        impl Item for $item {
            fn id(&self) -> Id {
                self.id
            }
            fn with_id(self, id: Id) -> Self {
                Self { id, ..self }
            }
        }

        impl Named for $item {
            fn name(&self) -> &Entry {
                &self.name
            }
            fn name_mut(&mut self) -> &mut Entry {
                &mut self.name
            }
        }
    )+};
}

named!(Saw, Sled, Cutter, Screw);
