//! At the saw: how one works there, and the steps of the way.

use notchwright_core::plain::Plain;

use super::stored::{Stored, field, read_word, stored, words};

stored! {
    /// How one works at the saw.
    pub struct AtSaw {
        /// Whether the saw is what is shown.
        pub open: bool = "open",
        /// Whether the work is interrupted.
        pub paused: bool = "paused",
        /// Whether the next setting is spoken.
        pub speaks: bool = "speaks",
        /// Whether a spoken word moves on.
        pub listens: bool = "listens",
        /// The hand that is free for the page.
        pub hand: Hand = "hand",
        /// In which order boards come.
        pub order: Order = "order",
        /// How long a pass takes this person, milliseconds; 0 while that is unknown.
        pub pace: u32 = "pace",
    }
}

words! {
    /// The hand that is free for the page.
    pub enum Hand {
        /// The right one: buttons to go on are at the right.
        #[default]
        Right = "right",
        /// The left one.
        Left = "left",
    }
}

words! {
    /// In which order boards come under the cutter.
    pub enum Order {
        /// All of one board, then the other.
        #[default]
        Boards = "boards",
        /// At each stop whichever board is cut there.
        Stops = "stops",
    }
}

/// A step of one set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Step {
    /// Setting up: height, zero, which board and which edge.
    #[default]
    SetUp,
    /// Putting the next end of a board on the carriage, where several are cut alike.
    Board,
    /// One stop of the set, from 0.
    Stop(usize),
    /// All is cut; comes after the last stop of the last set.
    Done,
}

impl Stored for Step {
    fn write(&self) -> Plain {
        match self {
            Self::SetUp => Plain::Text("setUp".to_owned()),
            Self::Board => Plain::Text("board".to_owned()),
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
            "board" => Some(Self::Board),
            "done" => Some(Self::Done),
            _ => None,
        })
    }

    fn is_usual(&self) -> bool {
        *self == Self::SetUp
    }
}
