//! Sentences for people, kept as words and lengths until somebody shows them.
//!
//! A message is not a string until it is shown, so that the person who works in inches reads inches.

use serde::{Serialize, Serializer};

use crate::units::{Mm, write_number};

/// One piece of a [`Message`].
#[derive(Clone, Debug, PartialEq)]
pub enum Piece {
    /// Plain words.
    Words(String),
    /// A length, shown in the reader's unit.
    Length(Mm),
}

/// A sentence or two; serialises as one string with its lengths in millimetres.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Message(Vec<Piece>);

impl Message {
    /// A message of these pieces; usually made by [`message!`](crate::message!).
    #[must_use]
    pub fn new(pieces: Vec<Piece>) -> Self {
        Self(pieces)
    }

    /// This and what comes after it, in one.
    #[must_use]
    pub fn and(mut self, other: Self) -> Self {
        self.0.extend(other.0);
        self
    }

    /// The sentence, each length written by `length`.
    #[must_use]
    pub fn show(&self, length: impl Fn(Mm) -> String) -> String {
        self.0
            .iter()
            .map(|piece| match piece {
                Piece::Words(words) => words.clone(),
                Piece::Length(mm) => length(*mm),
            })
            .collect()
    }
}

impl Serialize for Message {
    fn serialize<S: Serializer>(&self, serializer: S) -> Result<S::Ok, S::Error> {
        serializer.serialize_str(&self.show(in_mm))
    }
}

fn in_mm(length: Mm) -> String {
    format!("{} mm", write_number(length.mm(), 3))
}

impl From<Mm> for Piece {
    fn from(length: Mm) -> Self {
        Self::Length(length)
    }
}

macro_rules! words {
    ($($kind:ty),+) => {$(
        impl From<$kind> for Piece {
            fn from(words: $kind) -> Self {
                Self::Words(words.to_string())
            }
        }
    )+};
}

words!(&str, String, &String, usize, u32, i64);

/// A [`Message`] from a list of words, counts and lengths: `message!["a kerf of ", kerf, "."]`.
#[macro_export]
macro_rules! message {
    ($($piece:expr),+ $(,)?) => {
        $crate::message::Message::new(vec![$($crate::message::Piece::from($piece)),+])
    };
}

#[cfg(test)]
mod tests {
    use crate::units::Mm;

    #[test]
    fn lengths_are_written_by_the_reader() {
        let message = message!["a kerf of ", Mm::INCH, ", ", 3_u32, " times"];
        assert_eq!(
            message.show(|mm| format!("{}\"", mm / Mm::INCH)),
            "a kerf of 1\", 3 times"
        );
    }
}
