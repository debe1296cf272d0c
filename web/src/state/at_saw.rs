//! How far the cutting has come.

use notchwright_core::plain::Plain;

use super::stored::{Stored, field, stored};

stored! {
    /// Where the person at the saw is; kept when they leave, so that they come back to it.
    pub struct AtSaw {
        /// Whether the saw is what is shown.
        pub open: bool = "open",
        /// Which set of the plan, from 0.
        pub set: usize = "set",
        /// Which step of the set.
        pub step: Step = "step",
        /// A mark of the plan that is being cut, to notice when it becomes another.
        pub plan: u32 = "plan",
    }
}

/// A step of one set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Step {
    /// Setting up: height, zero, which board and which edge.
    #[default]
    SetUp,
    /// One stop of the set, from 0.
    Stop(usize),
    /// All is cut; comes after the last stop of the last set.
    Done,
}

impl Stored for Step {
    fn write(&self) -> Plain {
        match self {
            Self::SetUp => Plain::Text("setUp".to_owned()),
            Self::Stop(stop) => Plain::Object(vec![("stop".to_owned(), stop.write())]),
            Self::Done => Plain::Text("done".to_owned()),
        }
    }

    fn read(plain: &Plain) -> Option<Self> {
        match plain {
            Plain::Text(word) if word == "setUp" => Some(Self::SetUp),
            Plain::Text(word) if word == "done" => Some(Self::Done),
            Plain::Object(fields) => usize::read(field(fields, "stop")?).map(Self::Stop),
            _ => None,
        }
    }
}
