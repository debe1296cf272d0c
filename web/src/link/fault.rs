//! Why a link was not opened.

use core::fmt;

/// What is wrong with a link. Its `Display` is a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LinkFault {
    /// Made by a version that this one does not know.
    NewerVersion,
    /// Cut short or changed on its way.
    Damaged,
    /// Larger than any job.
    TooLarge,
}

impl fmt::Display for LinkFault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::NewerVersion => "This link was made by a newer version: update the page first.",
            Self::Damaged => {
                "This link is incomplete or damaged: copy the whole of it and try again."
            }
            Self::TooLarge => "This link is larger than any job: it was not made here.",
        })
    }
}
