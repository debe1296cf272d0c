//! The worked job that the page opens on: a chest of eight drawers, whose sides meet the front at one end and
//! the back at the other; a saw with its sled; a test that found the fence a little out, a screw measured
//! over three turns, and a groove for a drawer bottom.

use super::State;
use crate::keep::saved;

/// As it would be saved: a text takes less of what a phone fetches than what makes the same.
const DEMO: &str = include_str!("demo.json");

impl State {
    /// A worked job: change the board's width, and everything follows.
    #[must_use]
    pub fn demo() -> Self {
        // A test sees to it that it can be read.
        saved::restore(DEMO).map_or_else(|_| Self::default(), |restored| restored.state)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_worked_job_is_read_whole_and_saved_as_it_stands() {
        let restored = saved::restore(DEMO).unwrap();
        assert!(restored.is_whole);
        let saved: serde_json::Value = serde_json::from_str(&saved::save(&restored.state)).unwrap();
        let written: serde_json::Value = serde_json::from_str(DEMO).unwrap();
        assert_eq!(saved, written);
        assert_eq!(restored.state, State::demo());
    }
}
