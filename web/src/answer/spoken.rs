//! Settings as they are spoken.

use notchwright_core::stop::Stop;
use notchwright_core::units::write_number;

/// `Board A. 32 turns, 71. Last of this socket.`; the `board` only where either may be on the carriage.
#[must_use]
pub(crate) fn setting(board: Option<&str>, stop: &Stop) -> String {
    let division = write_number(stop.dial.division, 2);
    let turns = stop.dial.turns;
    let dial = match turns {
        0 => division,
        1 => format!("1 turn, {division}"),
        -1 => format!("1 turn below zero, {division}"),
        ..0 => format!("{} turns below zero, {division}", turns.unsigned_abs()),
        _ => format!("{turns} turns, {division}"),
    };
    let last = if stop.pass == stop.passes && stop.passes > 1 {
        " Last of this socket."
    } else {
        ""
    };
    let board = board.map_or_else(String::new, |board| format!("{board}. "));
    format!("{board}{dial}.{last}")
}

#[cfg(test)]
mod tests {
    use notchwright_core::stop::{Reading, Stop};
    use notchwright_core::units::Mm;

    #[test]
    fn settings_are_spoken_as_they_are_set() {
        let rows = [
            (32, 71.0, 1, "32 turns, 71."),
            (1, 7.5, 1, "1 turn, 7.5."),
            (0, 62.0, 2, "62. Last of this socket."),
            (-1, 79.0, 1, "1 turn below zero, 79."),
            (-3, 0.0, 1, "3 turns below zero, 0."),
        ];
        for (turns, division, pass, words) in rows {
            let stop = Stop {
                number: 1,
                at: Mm::ZERO,
                dial: Reading {
                    reading: Mm::ZERO,
                    turns,
                    division,
                },
                travel: Mm::ZERO,
                move_turns: 0,
                move_division: 0.0,
                space: 0,
                socket: 0,
                pass,
                passes: 2,
            };
            assert_eq!(super::setting(None, &stop), words);
            let with_board = format!("Board B. {words}");
            assert_eq!(super::setting(Some("Board B"), &stop), with_board);
        }
    }
}
