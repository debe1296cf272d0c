//! The rules by which the width is divided, each number checked by itself.

use super::request::LayoutRequest;
use crate::check::Checker;
use crate::given::Given;
use crate::limits;
use crate::message;
use crate::problem::Code;
use crate::units::{Mm, write_number};

/// A layout rule with its numbers checked one by one, not yet against the board.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Rule {
    Count(u32),
    Finger(Mm),
    OnePass(Leftover),
    Pattern { weights: Vec<f64>, mirrored: bool },
}

/// What one pass per socket does with the rest of the width.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Leftover {
    Ends,
    Far,
    Rip,
}

impl Rule {
    /// Checks the request at the checker's place.
    pub(super) fn check(request: &LayoutRequest, check: &mut Checker<'_>) -> Option<Self> {
        let words = ["count", "finger", "onePass", "pattern"];
        let kind = check.word("kind", &request.kind, &words.map(|word| (word, word)))?;
        let given = [
            ("count", request.count.is_missing(), "count"),
            ("width", request.width.is_missing(), "finger"),
            ("leftover", request.leftover.is_missing(), "onePass"),
            ("weights", request.weights.is_missing(), "pattern"),
            ("mirrored", request.mirrored.is_missing(), "pattern"),
        ];
        for (field, missing, owner) in given {
            if owner != kind {
                check.unused("this layout", &[(field, missing)]);
            }
        }
        match kind {
            "count" => check
                .count("count", &request.count, &limits::FINGER_COUNT)
                .map(Self::Count),
            "finger" => check
                .length("width", &request.width, &limits::FINGER)
                .map(Self::Finger),
            "onePass" => {
                let words = [
                    ("ends", Leftover::Ends),
                    ("far", Leftover::Far),
                    ("rip", Leftover::Rip),
                ];
                check
                    .word("leftover", &request.leftover, &words)
                    .map(Self::OnePass)
            }
            _ => Self::check_pattern(request, check),
        }
    }

    fn check_pattern(request: &LayoutRequest, check: &mut Checker<'_>) -> Option<Self> {
        let mirrored = check
            .optional("mirrored", &request.mirrored)?
            .copied()
            .unwrap_or(false);
        let given = check.required("weights", &request.weights)?;
        let spaces = if mirrored {
            (2 * given.len()).saturating_sub(1)
        } else {
            given.len()
        };
        let (least, most) = (limits::FINGER_COUNT.least, limits::FINGER_COUNT.most);
        if !(least..=most).contains(&(spaces as f64)) {
            let code = if (spaces as f64) < least {
                Code::TooSmall
            } else {
                Code::TooLarge
            };
            let limit = if (spaces as f64) < least { least } else { most };
            let message = message![
                "A pattern needs from ",
                write_number(least, 0),
                " to ",
                write_number(most, 0),
                " spaces; these are ",
                spaces,
                "."
            ];
            check.refuse("weights", code, message, Some(limit));
            return None;
        }
        let weights = Self::check_weights(given, &mut check.at("weights"))?;
        Some(Self::Pattern { weights, mirrored })
    }

    fn check_weights(given: &[Given<f64>], check: &mut Checker<'_>) -> Option<Vec<f64>> {
        let weights: Vec<_> = given
            .iter()
            .enumerate()
            .map(|(i, weight)| check.number(&i.to_string(), weight, &limits::WEIGHT))
            .collect();
        weights.into_iter().collect()
    }
}
