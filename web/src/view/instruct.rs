//! Words of instruction that stand in several places: at the saw, on paper, for every kind of joint.

use notchwright_core::stop::{Reading, Set};

use super::context::Context;
use super::show;
use crate::state::{Field, JointField, ZeroKind};

/// How the zero is found.
pub(super) fn zero(context: Context<'_>) -> String {
    let length = |field| context.typed_length(Field::Joint(field));
    match context.model.state.work.joint.zero.kind {
        ZeroKind::Touch => {
            "Turn the wheel until the board's reference edge just touches the side of the stopped cutter; there the dial \
             reads 0."
                .into()
        }
        ZeroKind::Flush => {
            "Turn the wheel until the stopped cutter is flush with the board's reference edge and would take one kerf \
             off it; there the dial reads 0."
                .into()
        }
        ZeroKind::TestKerf => format!(
            "Leave the dial's zero as it was for the test kerf: made at {}, it lies {} from the reference edge.",
            length(JointField::ZeroReading),
            length(JointField::ZeroMeasured)
        ),
    }
}

/// How the first stop is come up to.
pub(super) fn run_up(set: &Set) -> String {
    let first = set
        .stops
        .first()
        .map(|stop| reading(stop.dial))
        .unwrap_or_default();
    format!(
        "Turn back past {}, then come up to the first stop, {first}. Arrive at every stop with rising readings.",
        reading(set.run_up)
    )
}

/// `31 turns 25`, `1 turn below zero, at 79`.
pub(super) fn reading(reading: Reading) -> String {
    let division = show::number(reading.division);
    let turns = usize::try_from(reading.turns.unsigned_abs()).unwrap_or(usize::MAX);
    let turns = show::count(turns, "turn", "turns");
    match reading.turns {
        ..0 => format!("{turns} below zero, at {division}"),
        _ => format!("{turns} {division}"),
    }
}

/// The name of a set within a sentence.
pub(super) fn in_sentence(set: &Set) -> String {
    let mut name = set.name.chars();
    let first = name.next().map(|first| first.to_ascii_lowercase());
    first.into_iter().chain(name).collect()
}

#[cfg(test)]
mod tests {
    use notchwright_core::stop::Reading;
    use notchwright_core::units::Mm;

    #[test]
    fn readings_below_zero_say_so() {
        let rows = [
            (31, 25.0, "31 turns 25"),
            (1, 79.5, "1 turn 79.5"),
            (0, 62.0, "0 turns 62"),
            (-1, 79.0, "1 turn below zero, at 79"),
            (-12, 0.0, "12 turns below zero, at 0"),
        ];
        for (turns, division, words) in rows {
            let reading = Reading {
                reading: Mm::ZERO,
                turns,
                division,
            };
            assert_eq!(super::reading(reading), words);
        }
    }
}
