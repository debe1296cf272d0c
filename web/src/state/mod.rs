//! The one state: what is shown, saved, undone and carried in the link.
//!
//! Whatever can be worked out from it is not in it; see [`crate::answer`].

mod around;
mod at_saw;
mod bring;
mod demo;
mod dovetail;
mod entry;
mod field;
mod id;
mod job;
mod joint;
mod list;
mod making;
mod pieces;
mod progress;
mod saw;
mod shop;
mod sled;
mod stored;
#[cfg(test)]
mod tests;

pub use around::{Around, AtRest};
pub use at_saw::{AtSaw, Hand, Order, Step};
pub use bring::Brought;
pub use dovetail::{
    DovetailField, DovetailForm, JointKind, PinsBy, SlidingField, SlidingForm, SlopeBy,
};
pub(crate) use entry::split_lengths;
pub use entry::{Entry, LONGEST};
pub use field::{Field, Kind};
pub use id::Id;
pub use job::{JobAtRest, JobForm, JointAtRest};
pub use joint::{
    Edge, First, GrooveForm, JointField, JointForm, LayoutKind, Leftover, ZeroForm, ZeroKind,
};
pub use list::{Item, List, Named};
pub use making::{Form, Group, Making, Mark, Row, Spot, Ticks, fields};
pub use pieces::{Ends, PiecesField, PiecesForm};
pub(crate) use progress::MOST_NAMES;
pub use progress::{Done, End, Progress, Progresses};
pub use saw::{MeasuredFrom, Saw, SawField, Section, Side, Sled, SledField};
pub use shop::{
    Cutter, CutterField, GrindKind, LeadBy, Rises, Rounding, Screw, ScrewField, Shop, SlotField,
    SlotForm, StackField, StackForm,
};
pub use sled::{
    Approach, CutField, CutForm, PaperSize, Point, PointField, Prints, RoutField, RoutForm,
    SledForm, SledView, SquareField, SquareForm, SquareTest, Tool, WidthBy,
};
pub(crate) use stored::{Stored, field};

use std::borrow::Cow;

use notchwright_core::units::Unit;

use stored::{stored, words};

stored! {
    /// Everything that must outlive the page.
    pub struct State {
        /// Unit that lengths are shown in and typed in.
        pub units: Unit = "units",
        /// Light or dark.
        pub theme: Theme = "theme",
        /// Which place is open.
        pub place: Place = "place",
        /// How the sled's place was left.
        pub sled: SledView = "sled",
        /// Whether the full-size template of a joint is printed with it.
        pub templates: bool = "templates",
        /// Which tool of the parts' place is open.
        pub parts_tool: PartsTool = "partsTool",
        /// How one works at the saw.
        pub at_saw: AtSaw = "atSaw",
        /// How far the cutting of each joint has come.
        pub progress: Progresses = "progress",
        /// What was typed and chosen.
        pub work: Work = "work",
    }
}

impl State {
    /// What the input of `field` shows.
    #[must_use]
    pub fn shown(&self, field: Field) -> Cow<'_, str> {
        self.work.entry(field).map_or(Cow::Borrowed(""), |entry| {
            entry.shown(field.kind(), self.units)
        })
    }

    /// How far the cutting of the open joint has come.
    #[must_use]
    pub fn progress(&self) -> &Progress {
        self.progress.of(self.work.joint.id)
    }
}

stored! {
    /// What was typed and chosen: the part of the state that undo is about.
    pub struct Work {
        /// The open joint.
        pub joint: JointForm = "joint",
        /// The open job, of which it is one.
        pub job: JobForm = "job",
        /// The other jobs.
        pub jobs: Around<JobAtRest> = "jobs",
        /// Saws, sleds, cutters and screws: entered once, used everywhere.
        pub shop: Shop = "shop",
        /// What is asked of the chosen sled on the chosen saw.
        pub sled: SledForm = "sled",
    }
}

words! {
    /// A place of the page. At the saw is no place: it lies over the one it was entered from.
    pub enum Place {
        /// The joint with its drawing and stops.
        #[default]
        Joint = "joint",
        /// The sled on this saw: runner, travel, square, screw, grooves.
        Sled = "sled",
        /// Drawers, parts, and the sheets that they are cut from.
        Parts = "parts",
        /// Jobs with their joints and pieces; saving, carrying and printing them.
        Jobs = "jobs",
        /// Saws, sleds, cutters, screws, units and theme.
        Shop = "shop",
    }
}

words! {
    /// A tool of the parts' place.
    pub enum PartsTool {
        /// A box or a chest of drawers.
        #[default]
        Drawer = "drawer",
        /// The numbered parts.
        Parts = "parts",
        /// The sheets that they are cut from.
        Sheet = "sheet",
    }
}

words! {
    /// Light or dark.
    pub enum Theme {
        /// As the device is set.
        #[default]
        Device = "device",
        /// Dark ink on light paper.
        Light = "light",
        /// Light ink on dark paper.
        Dark = "dark",
    }
}
