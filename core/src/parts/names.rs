//! Names that measures and stocks go by.

/// Whether two names are one: upper and lower case are alike in A to Z.
pub(super) fn is_same(a: &str, b: &str) -> bool {
    a.trim().eq_ignore_ascii_case(b.trim())
}

/// Names of more letters are not compared: that takes as long as one's letters times the other's.
const LONGEST: usize = 64;

/// The known name that differs by the fewest slips of the finger, if they are few: one, or a third of its letters.
pub(super) fn nearest<'a>(name: &str, known: &[&'a str]) -> Option<&'a str> {
    let letters = |name: &str| name.chars().take(LONGEST + 1).count();
    if letters(name) > LONGEST {
        return None;
    }
    let mut best = None;
    let mut fewest = (letters(name) / 3).max(1) + 1;
    for candidate in known.iter().filter(|known| letters(known) <= LONGEST) {
        let slips = slips(name, candidate);
        if slips < fewest {
            fewest = slips;
            best = Some(*candidate);
        }
    }
    best
}

/// Letters to put in, take out, exchange, or swap with their neighbour to make one name of the other (the distance of
/// Damerau and Levenshtein, no letter touched twice).
fn slips(a: &str, b: &str) -> usize {
    let [a, b] =
        [a, b].map(|name| -> Vec<char> { name.chars().map(|c| c.to_ascii_lowercase()).collect() });
    let mut rows: Vec<Vec<usize>> = vec![(0..=b.len()).collect()];
    let at = |rows: &[Vec<usize>], i: usize, j: usize| -> usize {
        rows.get(i)
            .and_then(|row| row.get(j))
            .copied()
            .unwrap_or(usize::MAX / 2)
    };
    for i in 1..=a.len() {
        rows.push(vec![i]);
        for j in 1..=b.len() {
            let exchanged = at(&rows, i - 1, j - 1) + usize::from(a.get(i - 1) != b.get(j - 1));
            let mut least = exchanged
                .min(at(&rows, i - 1, j) + 1)
                .min(at(&rows, i, j - 1) + 1);
            if i > 1 && j > 1 && a.get(i - 1) == b.get(j - 2) && a.get(i - 2) == b.get(j - 1) {
                least = least.min(at(&rows, i - 2, j - 2) + 1);
            }
            if let Some(row) = rows.last_mut() {
                row.push(least);
            }
        }
    }
    at(&rows, a.len(), b.len())
}

#[cfg(test)]
mod tests {
    use super::{LONGEST, nearest, slips};

    /// The first two are the usual textbook examples of this distance (from memory), the others are counted.
    #[test]
    fn slips_are_counted() {
        for (a, b, count) in [
            ("kitten", "sitting", 3),
            ("saturday", "sunday", 3),
            ("", "rail", 4),
            ("Rail", "rAIL", 0),
            ("höhe", "hohe", 1),
            ("rail", "rial", 1),
        ] {
            assert_eq!((slips(a, b), slips(b, a)), (count, count), "{a} {b}");
        }
    }

    #[test]
    fn only_a_name_that_is_near_is_proposed() {
        let known = ["t", "rail", "depth", "back_rail"];
        for (name, near) in [
            ("rial", Some("rail")),
            ("rails", Some("rail")),
            ("dept", Some("depth")),
            ("backrail", Some("back_rail")),
            ("apron", None),
            ("d", Some("t")),
        ] {
            assert_eq!(nearest(name, &known), near, "{name}");
        }
    }

    #[test]
    fn long_names_are_not_compared() {
        let [longest, longer] = [LONGEST, LONGEST + 1].map(|letters| "a".repeat(letters));
        let known = [longer.as_str(), longest.as_str()];
        assert_eq!(nearest(&longest, &known), Some(longest.as_str()));
        assert_eq!(nearest(&longer, &known), None);
    }
}
