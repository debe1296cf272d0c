//! How far the carriage has to go: a joint that it cannot reach is refused.

use crate::message;
use crate::message::Message;
use crate::problem::{Code, Problem};
use crate::stop::Set;
use crate::units::Mm;

/// What the carriage does in one or more set-ups: from the lowest reading to the highest.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(super) struct Trip {
    whole: Mm,
    without_zero: Mm,
}

impl Trip {
    /// The trip through all stops of these sets.
    pub(super) fn of<'a>(sets: impl IntoIterator<Item = &'a Set>) -> Self {
        let readings: Vec<_> = sets
            .into_iter()
            .flat_map(|set| &set.stops)
            .map(|stop| stop.dial.reading)
            .collect();
        let least = readings.iter().copied().min().unwrap_or_default();
        let most = readings.iter().copied().max().unwrap_or_default();
        Self {
            // The carriage must also reach its own zero.
            whole: most.max(Mm::ZERO) - least.min(Mm::ZERO),
            without_zero: most - least,
        }
    }

    fn over(self, travel: Mm) -> Option<Mm> {
        let over = self.whole - travel;
        over.is_above(Mm::ZERO).then_some(over)
    }

    /// Says what would work where the trip is longer than the travel. `width` is the board's, and `narrower`
    /// the trip for the same joint on a board of another width, where there can be one; `who` begins the
    /// sentence.
    pub(super) fn within(
        self,
        travel: Mm,
        who: Message,
        width: Mm,
        narrower: impl Fn(Mm) -> Option<Self>,
    ) -> Result<(), Vec<Problem>> {
        let Some(over) = self.over(travel) else {
            return Ok(());
        };
        let widest = widest(width - over, travel, narrower);
        let zero_helps = !(self.without_zero - travel).is_above(Mm::ZERO);
        let message = who
            .and(message![
                " would have to travel ",
                self.whole,
                " and can travel ",
                travel,
                "; "
            ])
            .and(remedy(widest, zero_helps));
        Err(vec![Problem {
            field: "width".to_owned(),
            code: Code::BeyondTravel,
            message,
            limit: widest.map(Mm::mm),
        }])
    }
}

fn remedy(widest: Option<Mm>, zero_helps: bool) -> Message {
    match (widest, zero_helps) {
        (Some(widest), true) => message![
            "a board of at most ",
            widest,
            " would work, or a zero nearer to its middle."
        ],
        (Some(widest), false) => message!["a board of at most ", widest, " would work."],
        (None, true) => message!["a zero nearer to the board's middle would work."],
        (None, false) => message!["a carriage that travels farther would work."],
    }
}

/// More than enough: each try comes nearer by most of what is missing.
const TRIES: usize = 20;
/// The least that each try takes off, so that rounding to the dial cannot hold it up.
const STRIDE: Mm = Mm::constant(0.2);
/// A bound that was rounded to be shown must do as well, either way.
const SHOWN: [Mm; 3] = [Mm::ZERO, Mm::constant(0.02), Mm::constant(-0.02)];

/// The first of ever narrower boards that can be cut. Stops move with the width, but not all as far, from step to
/// step of the dial, and not where the zero is what is far away.
fn widest(first: Mm, travel: Mm, narrower: impl Fn(Mm) -> Option<Trip>) -> Option<Mm> {
    let mut width = first;
    for _ in 0..TRIES {
        let trips = SHOWN.map(|off| narrower(width + off));
        let [Some(as_said), Some(above), Some(below)] = trips else {
            return None;
        };
        match as_said.max(above).max(below).over(travel) {
            None => return Some(width),
            Some(over) => width = width - over.max(STRIDE),
        }
    }
    None
}
