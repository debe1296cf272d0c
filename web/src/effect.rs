//! What a change asks of the world outside: everything else follows from the state alone.

use crate::model::Chunk;

/// Something to be done at the page's edge.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Effect {
    /// Move the keyboard's focus to the element with this id.
    Focus(String),
    /// Show the page from its top.
    ScrollToTop,
    /// Put this text on the clipboard.
    Copy(String),
    /// Put the address, which carries the whole job, on the clipboard.
    CopyLink,
    /// Offer this text as a file.
    Download {
        /// Name of the file.
        name: String,
        /// What is in it.
        text: String,
    },
    /// Store a text of its own beside the state.
    KeepAside {
        /// Where.
        key: String,
        /// The text.
        text: String,
    },
    /// Remove such a text.
    DropAside {
        /// Where it is.
        key: String,
    },
    /// Fetch a part of the program.
    Fetch(Chunk),
    /// Say what day it is, for a test that is to be kept.
    DateTest,
    /// Say what this browser can do besides.
    AskWhatCan,
    /// Say this aloud, in place of whatever is being said.
    Speak(String),
    /// Say nothing more.
    Hush,
    /// Hand this to another program of the device: a file where that is possible, and otherwise the address.
    Share {
        /// Name of the file.
        name: String,
        /// What is in it.
        text: String,
    },
    /// Ask the browser to keep what is stored.
    Persist,
    /// Let the search for a layout go on, beside the page or as soon as it has been shown.
    Search(Asked),
    /// Print the page.
    Print,
    /// Read this file.
    ReadFile(web_sys::File),
    /// Let the waiting version take over.
    UseUpdate,
}

/// A slice of the search for a layout of sheets.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Asked {
    /// Rounds that were made before.
    pub from: u32,
    /// The best layout of them, as the search writes it.
    pub best: String,
    /// Rounds to make.
    pub rounds: u32,
}
