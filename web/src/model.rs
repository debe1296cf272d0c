//! The state with everything that is not worth keeping.

use std::rc::Rc;

use crate::answer::Answer;
use crate::notice::Notice;
use crate::state::State;

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
    /// Whether there is something to undo.
    pub can_undo: bool,
    /// Whether there is something to make again.
    pub can_redo: bool,
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
