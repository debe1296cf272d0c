//! The state with everything that is not worth keeping.

use std::rc::Rc;

use notchwright_core::sheet::SheetLayoutRequest;

use crate::answer::Answer;
use crate::keep::saved;
use crate::notice::Notice;
use crate::state::State;
use crate::update::history::History;

/// All that the views are shown.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Model {
    /// What is shown, saved, undone and carried in the link.
    pub state: State,
    /// What follows from it.
    pub answer: Answer,
    /// What is to be said.
    pub notices: Vec<Notice>,
    /// Texts that were set aside: what could not be read, and what a link replaced.
    pub asides: Vec<Aside>,
    /// Whether the page is being printed: paper is shown all of every table.
    pub on_paper: bool,
    /// Which parts of the program have come.
    pub parts: Parts,
    /// What this browser can do besides.
    pub can: Can,
    /// The address of the page, without the job.
    pub home: String,
    /// The day of the last print, as year-month-day.
    pub today: String,
    /// The time of the last message, milliseconds from any beginning.
    pub now: f64,
    /// When the pass before this one was done, as long as nothing came between.
    pub(crate) passed_at: Option<f64>,
    /// Whether the saw is to be opened as soon as its part of the program has come.
    pub(crate) is_opening: bool,
    /// The search for a layout of sheets.
    pub searching: Searching,
    /// Whether there is something to undo.
    pub can_undo: bool,
    /// Whether there is something to make again.
    pub can_redo: bool,
    pub(crate) history: History,
}

/// How a search for a layout of sheets goes on; what it has found is with the answer.
#[derive(Clone, Debug, PartialEq)]
pub struct Searching {
    /// Whether somebody stopped it.
    pub is_stopped: bool,
    /// Rounds after which it rests.
    pub limit: u32,
    /// What a slice has been asked for: if it changes, what comes is of no use.
    pub(crate) due: Option<Rc<SheetLayoutRequest>>,
    /// Whether slices are made beside the page: hoped until it is seen that they are not.
    pub(crate) is_beside: bool,
    /// Rounds of the next slice.
    pub(crate) pace: u32,
    /// When the last slice began, milliseconds from any beginning.
    pub(crate) began: f64,
    /// When the last one was shown.
    pub(crate) shown: f64,
    /// Whether the last one found nothing that must be shown at once.
    pub(crate) is_quiet: bool,
}

impl Searching {
    /// Rounds that it makes of its own accord, and again whenever somebody lets it go on.
    pub(crate) const ROUNDS: u32 = 1000;
}

impl Default for Searching {
    fn default() -> Self {
        Self {
            is_stopped: false,
            limit: Self::ROUNDS,
            due: None,
            is_beside: true,
            pace: 1,
            began: 0.0,
            shown: 0.0,
            is_quiet: false,
        }
    }
}

/// What only some browsers can do.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Can {
    /// Speak.
    pub speak: bool,
    /// Hear words without sending them anywhere.
    pub listen: bool,
    /// Hand a file or an address to another program of the device.
    pub share: bool,
}

/// A part of the program that a first answer does not wait for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Chunk {
    /// The sled's place.
    Sled,
    /// Joints with slanted flanks.
    Dovetail,
    /// The shop.
    Shop,
    /// Drawers, parts and sheets.
    Parts,
    /// Jobs, at the saw, and on paper.
    Jobs,
}

/// How far each of them has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Parts {
    sled: Part,
    dovetail: Part,
    shop: Part,
    parts: Part,
    jobs: Part,
}

impl Parts {
    /// How far `chunk` has come.
    #[must_use]
    pub fn of(self, chunk: Chunk) -> Part {
        match chunk {
            Chunk::Sled => self.sled,
            Chunk::Dovetail => self.dovetail,
            Chunk::Shop => self.shop,
            Chunk::Parts => self.parts,
            Chunk::Jobs => self.jobs,
        }
    }

    pub(crate) fn set(&mut self, chunk: Chunk, part: Part) {
        match chunk {
            Chunk::Sled => self.sled = part,
            Chunk::Dovetail => self.dovetail = part,
            Chunk::Shop => self.shop = part,
            Chunk::Parts => self.parts = part,
            Chunk::Jobs => self.jobs = part,
        }
    }
}

/// How far a part of the program has come.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Part {
    /// Nobody has needed it yet.
    #[default]
    Away,
    /// It was asked for.
    Asked,
    /// It can be used.
    Here,
    /// It could not be had.
    Failed,
}

/// A text that was set aside.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Aside {
    /// Where it is stored.
    pub key: String,
    /// The text.
    pub text: Rc<str>,
    /// Whether it can be opened: earlier work that a link replaced.
    pub can_open: bool,
}

impl Aside {
    pub(crate) fn new(key: String, text: &str) -> Self {
        let can_open = saved::restore(text).is_ok_and(|restored| restored.is_whole);
        let text = text.into();
        Self {
            key,
            text,
            can_open,
        }
    }

    /// The number at the end of its key; they grow with time.
    pub(crate) fn number(&self) -> u32 {
        let number = self.key.strip_prefix(saved::ASIDE);
        number.and_then(|number| number.parse().ok()).unwrap_or(0)
    }
}
