//! How far the cutting has come.

use serde::{Deserialize, Serialize};

use super::lenient::stored;

stored! {
    /// Where the person at the saw is; kept when they leave, so that they come back to it.
    pub struct AtSaw {
        /// Whether the saw is what is shown.
        pub open: bool,
        /// Which set of the plan, from 0.
        pub set: usize,
        /// Which step of the set.
        pub step: Step,
        /// A mark of the plan that is being cut, to notice when it becomes another.
        pub plan: u32,
    }
}

/// A step of one set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "camelCase")]
pub enum Step {
    /// Setting up: height, zero, which board and which edge.
    #[default]
    SetUp,
    /// One stop of the set, from 0.
    Stop(usize),
    /// All is cut; comes after the last stop of the last set.
    Done,
}
