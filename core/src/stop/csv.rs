//! Stops as comma-separated values (RFC 4180), for a spreadsheet or a controller.

use super::{Board, Set, Stop};
use crate::units::write_number;

/// The columns, each with its unit.
pub const COLUMNS: [&str; 16] = [
    "set",
    "board",
    "tilt_degrees",
    "yaw_degrees",
    "blade_height_mm",
    "kerf_mm",
    "stop",
    "socket",
    "pass",
    "passes",
    "turns",
    "division",
    "reading_mm",
    "at_mm",
    "move_turns",
    "move_division",
];

/// Micrometres, and hundredths of a division.
const DECIMALS: u8 = 4;

/// Every stop of every set, one a line below a line of [`COLUMNS`]. Numbers have a point; sockets count from 1.
#[must_use]
pub fn write(sets: &[Set]) -> String {
    let mut text = line(&COLUMNS.map(str::to_owned));
    for set in sets {
        for stop in &set.stops {
            text.push_str(&row(set, stop));
        }
    }
    text
}

fn row(set: &Set, stop: &Stop) -> String {
    let number = |value| write_number(value, DECIMALS);
    let board = match set.board {
        Board::A => "A",
        Board::B => "B",
    };
    line(&[
        quoted(&set.name),
        board.to_owned(),
        number(set.tilt_degrees),
        number(set.yaw_degrees),
        number(set.height.mm()),
        number(set.kerf.mm()),
        stop.number.to_string(),
        (stop.socket + 1).to_string(),
        stop.pass.to_string(),
        stop.passes.to_string(),
        stop.dial.turns.to_string(),
        number(stop.dial.division),
        number(stop.dial.reading.mm()),
        number(stop.at.mm()),
        stop.move_turns.to_string(),
        number(stop.move_division),
    ])
}

fn line(fields: &[String; 16]) -> String {
    let mut line = fields.join(",");
    line.push_str("\r\n");
    line
}

/// A name between quotes; one that a spreadsheet would take for a formula has an apostrophe before it.
fn quoted(name: &str) -> String {
    let formula = name.starts_with(['=', '+', '-', '@', '\t', '\r']);
    let apostrophe = if formula { "'" } else { "" };
    format!("\"{apostrophe}{}\"", name.replace('"', "\"\""))
}

#[cfg(test)]
mod tests {
    #[test]
    fn names_are_quoted_and_never_formulas() {
        for (name, field) in [
            ("Board A", "\"Board A\""),
            ("5\" side, front", "\"5\"\" side, front\""),
            ("=1+1", "\"'=1+1\""),
            ("", "\"\""),
        ] {
            assert_eq!(super::quoted(name), field);
        }
    }
}
