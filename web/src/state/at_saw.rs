//! How far the cutting has come.

use notchwright_core::plain::Plain;

use super::stored::{Stored, field, read_word, stored};

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

    fn read(&mut self, plain: &Plain) -> bool {
        if let Plain::Object(fields) = plain {
            let mut stop = 0;
            let is_read = field(fields, "stop").is_some_and(|plain| stop.read(plain));
            if is_read {
                *self = Self::Stop(stop);
            }
            return is_read;
        }
        read_word(self, plain, |word| match word {
            "setUp" => Some(Self::SetUp),
            "done" => Some(Self::Done),
            _ => None,
        })
    }

    fn is_usual(&self) -> bool {
        *self == Self::SetUp
    }
}
