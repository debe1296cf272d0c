//! Which cuts of a layout were made, as a short text: `1f3a9c20 96 1-5 8`.

use std::collections::BTreeSet;

use crate::state::entry::LONGEST;

/// Which layout it is, and how long the search was that found it: the same search finds it again.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Mark {
    /// The layout's own number.
    pub layout: u32,
    /// Rounds of the search.
    pub rounds: u32,
}

/// The cuts that were made.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Ticks {
    /// Of which layout.
    pub of: Mark,
    /// Their numbers.
    made: BTreeSet<u32>,
}

/// More than any layout has.
const MOST_CUTS: u32 = 10_000;

impl Ticks {
    /// None yet.
    #[must_use]
    pub fn none(of: Mark) -> Self {
        let made = BTreeSet::new();
        Self { of, made }
    }

    /// Reads what [`Self::write`] wrote; nothing else.
    #[must_use]
    pub fn read(text: &str) -> Option<Self> {
        let mut words = text.split(' ');
        let layout = u32::from_str_radix(words.next()?, 16).ok()?;
        let rounds = words.next()?.parse().ok()?;
        let mut made = BTreeSet::new();
        for word in words {
            let (from, to) = word.split_once('-').unwrap_or((word, word));
            let (from, to): (u32, u32) = (from.parse().ok()?, to.parse().ok()?);
            made.extend(from..=to.min(MOST_CUTS));
        }
        let of = Mark { layout, rounds };
        Some(Self { of, made })
    }

    /// Whether a cut was made.
    #[must_use]
    pub fn has(&self, cut: u32) -> bool {
        self.made.contains(&cut)
    }

    /// How many of these were made.
    #[must_use]
    pub fn count(&self, cuts: std::ops::Range<u32>) -> usize {
        self.made.range(cuts).count()
    }

    /// The same after a cut was made, or was not.
    #[must_use]
    pub fn with(mut self, cut: u32, is_made: bool) -> Self {
        if is_made {
            self.made.insert(cut);
        } else {
            self.made.remove(&cut);
        }
        self
    }

    /// The text; blank where no cut was made, and nothing where it would be longer than any field.
    #[must_use]
    pub fn write(&self) -> Option<String> {
        if self.made.is_empty() {
            return Some(String::new());
        }
        let Mark { layout, rounds } = self.of;
        let mut text = format!("{layout:x} {rounds}");
        let mut made = self.made.iter().copied().peekable();
        while let Some(from) = made.next() {
            let mut to = from;
            while let Some(next) = made.next_if_eq(&(to + 1)) {
                to = next;
            }
            text.push_str(&match to {
                to if to == from => format!(" {from}"),
                to => format!(" {from}-{to}"),
            });
        }
        (text.len() <= LONGEST).then_some(text)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn runs_are_written_as_runs_and_read_again() {
        let of = Mark {
            layout: 0x1f3a,
            rounds: 96,
        };
        let ticks = [1, 2, 3, 8]
            .into_iter()
            .fold(Ticks::none(of), |ticks, cut| ticks.with(cut, true));
        assert_eq!(ticks.write().unwrap(), "1f3a 96 1-3 8");
        assert_eq!(Ticks::read("1f3a 96 1-3 8"), Some(ticks.clone()));
        assert_eq!(
            (ticks.count(1..4), ticks.has(8), ticks.has(4)),
            (3, true, false)
        );
        let again = ticks.with(2, false).write().unwrap();
        assert_eq!(again, "1f3a 96 1 3 8");
        assert_eq!(Ticks::none(of).write().unwrap(), "");
    }

    #[test]
    fn what_is_no_such_text_is_nothing() {
        for text in ["", "yes", "1f3a", "1f3a x", "1f3a 9 1-", "xyz 9 1"] {
            assert_eq!(Ticks::read(text), None, "{text}");
        }
        // No text makes a list longer than a layout.
        let vast = Ticks::read("1 1 1-4294967295").unwrap();
        assert_eq!(vast.count(0..u32::MAX), MOST_CUTS as usize);
    }
}
