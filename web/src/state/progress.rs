//! How far the cutting of each joint has come.

use notchwright_core::plain::Plain;

use super::at_saw::Step;
use super::id::Id;
use super::stored::{Stored, stored};

stored! {
    /// How far the cutting of one joint has come; kept when the saw is left, so that one comes back to it.
    pub struct Progress {
        /// Which joint.
        pub joint: Id = "joint",
        /// A mark of the plan that is being cut, to notice when it becomes another.
        pub plan: u32 = "plan",
        /// Which set-up, from 0.
        pub set: usize = "set",
        /// Which end of which board.
        pub end: End = "end",
        /// Which step with this end.
        pub step: Step = "step",
        /// What has been cut.
        pub done: Done = "done",
        /// How many cuttings of an end in a set-up there were in all when it was last at the saw.
        pub of: usize = "of",
    }
}

/// One end of one board: which piece, which board of it, which end, all from 0.
///
/// It is the same end however many pieces or boards there are besides.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct End(u32);

/// More boards than anything has that are cut alike.
pub(crate) const MOST_NAMES: usize = 20;
const ENDS: u32 = 2;
const BOARDS: u32 = MOST_NAMES as u32 * ENDS;
const ALONE_OF_B: u32 = 1 << 31;

impl End {
    /// The end of a board of a piece, of which there are at most 20 with two ends each.
    #[must_use]
    pub fn new(piece: usize, board: usize, end: usize) -> Self {
        let number = |number| u32::try_from(number).unwrap_or(0);
        let board = number(board).min(BOARDS / ENDS - 1);
        let on_board = board * ENDS + number(end).min(ENDS - 1);
        Self(
            number(piece)
                .saturating_mul(BOARDS)
                .saturating_add(on_board),
        )
    }

    /// What an end of board B that is alone on the carriage is known by where both boards are cut in one set-up:
    /// the same end of board A is another.
    #[must_use]
    pub(crate) fn alone_of_b(self) -> Self {
        Self(self.0 | ALONE_OF_B)
    }

    /// Which piece.
    #[must_use]
    pub fn piece(self) -> usize {
        (self.0 / BOARDS) as usize
    }

    /// Which of its boards.
    #[must_use]
    pub fn board(self) -> usize {
        (self.0 % BOARDS / ENDS) as usize
    }

    /// Which end of the board.
    #[must_use]
    pub fn end(self) -> usize {
        (self.0 % ENDS) as usize
    }
}

impl Stored for End {
    fn write(&self) -> Plain {
        self.0.write()
    }
    fn read(&mut self, plain: &Plain) -> bool {
        self.0.read(plain)
    }
    fn is_usual(&self) -> bool {
        self.0 == 0
    }
}

/// Which ends have been cut in which set-up.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Done(Vec<Vec<End>>);

/// No joint takes more.
const MOST_SETS: usize = 12;
/// More ends than anybody cuts alike.
const MOST_ENDS: usize = 8000;

impl Done {
    /// Whether `end` has been cut in set-up `set`.
    #[must_use]
    pub fn has(&self, set: usize, end: End) -> bool {
        self.0.get(set).is_some_and(|ends| ends.contains(&end))
    }

    /// How many cuttings of an end in a set-up have been done.
    #[must_use]
    pub fn count(&self) -> usize {
        self.0.iter().map(Vec::len).sum()
    }

    /// Whether all that has been cut in `other` has been cut here, and more.
    #[must_use]
    pub fn is_more_than(&self, other: &Self) -> bool {
        let sets = other.0.iter().enumerate();
        let mut cut = sets.flat_map(|(set, ends)| ends.iter().map(move |end| (set, *end)));
        self.count() > other.count() && cut.all(|(set, end)| self.has(set, end))
    }

    /// Notes whether `end` has been cut in set-up `set`.
    pub fn mark(&mut self, set: usize, end: End, is_done: bool) {
        if set >= MOST_SETS || self.has(set, end) == is_done {
            return;
        }
        while self.0.len() <= set {
            self.0.push(Vec::new());
        }
        if let Some(ends) = self.0.get_mut(set) {
            if is_done && ends.len() < MOST_ENDS {
                let place = ends.partition_point(|other| *other < end);
                ends.insert(place, end);
            } else {
                ends.retain(|other| *other != end);
            }
        }
        while self.0.last().is_some_and(Vec::is_empty) {
            self.0.pop();
        }
    }
}

impl Stored for Done {
    fn write(&self) -> Plain {
        let set = |ends: &Vec<End>| Plain::List(ends.iter().map(Stored::write).collect());
        Plain::List(self.0.iter().map(set).collect())
    }

    fn read(&mut self, plain: &Plain) -> bool {
        let Plain::List(sets) = plain else {
            return false;
        };
        for (set, plain) in sets.iter().enumerate().take(MOST_SETS) {
            let Plain::List(ends) = plain else { continue };
            for plain in ends.iter().take(MOST_ENDS) {
                let mut end = End::default();
                if end.read(plain) {
                    self.mark(set, end, true);
                }
            }
        }
        true
    }

    fn is_usual(&self) -> bool {
        self.0.is_empty()
    }
}

/// How far the cutting of every joint has come.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Progresses {
    all: Vec<Progress>,
    /// Of a joint that has not been cut at all.
    none: Progress,
}

impl Progresses {
    /// Of `joint`.
    #[must_use]
    pub fn of(&self, joint: Id) -> &Progress {
        let mut all = self.all.iter();
        all.find(|progress| progress.joint == joint)
            .unwrap_or(&self.none)
    }

    /// Sets the progress of its joint; nothing is kept of one that has not begun.
    pub fn set(&mut self, progress: Progress) {
        let joint = progress.joint;
        self.forget(joint);
        let begun = Progress {
            joint,
            ..Progress::default()
        };
        if progress != begun {
            self.all.push(progress);
        }
    }

    /// Forgets how far `joint` has come.
    pub fn forget(&mut self, joint: Id) {
        self.all.retain(|progress| progress.joint != joint);
    }

    /// All of them.
    pub fn iter(&self) -> impl Iterator<Item = &Progress> {
        self.all.iter()
    }
}

/// More joints than there can be.
const MOST: usize = 2000;

impl Stored for Progresses {
    fn write(&self) -> Plain {
        Plain::List(self.all.iter().map(Stored::write).collect())
    }

    fn read(&mut self, plain: &Plain) -> bool {
        let Plain::List(all) = plain else {
            return false;
        };
        for plain in all.iter().take(MOST) {
            let mut progress = Progress::default();
            if progress.read(plain) {
                self.set(progress);
            }
        }
        true
    }

    fn is_usual(&self) -> bool {
        self.all.is_empty()
    }
}
