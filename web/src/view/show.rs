//! Lengths and numbers as they are read off the page, in the reader's unit.

use notchwright_core::message::Message;
use notchwright_core::units::{Mm, Style, Unit, format_length, write_number, write_padded};

/// A length with its unit, as fine as it matters at its size: `15.56 mm`, `0.024 mm`, `0.0009"`.
pub(super) fn length(length: Mm, unit: Unit) -> String {
    let gap = if unit == Unit::Mm { " " } else { "" };
    format!("{}{gap}{}", bare(length, unit), unit.symbol())
}

/// The same without its unit.
pub(crate) fn bare(length: Mm, unit: Unit) -> String {
    let value = length / unit.length();
    let (fine_below, decimals) = match unit {
        Unit::Mm => (1.0, 2),
        Unit::Inch => (0.25, 3),
    };
    let finer = u8::from(value.abs() < fine_below);
    write_number(value, decimals + finer).replace('-', "−")
}

/// A length for a column of them: always the same number of decimals.
pub(super) fn column(length: Mm, unit: Unit) -> String {
    let decimals = if unit == Unit::Mm { 2 } else { 3 };
    write_padded(length / unit.length(), decimals).replace('-', "−")
}

/// In inches, the nearest sixty-fourth; nothing in millimetres.
pub(super) fn fraction(length: Mm, unit: Unit) -> Option<String> {
    (unit == Unit::Inch).then(|| format_length(length, Style::usual(Unit::Inch)).text)
}

/// A sentence with its lengths.
pub(super) fn message(message: &Message, unit: Unit) -> String {
    message.show(|mm| length(mm, unit))
}

/// A plain number, such as a division of the dial: `25`, `79.5`.
pub(super) fn number(value: f64) -> String {
    write_number(value, 2)
}

/// Turns of the wheel, with a true minus sign: `31`, `−1`.
pub(super) fn whole(turns: i64) -> String {
    if turns < 0 {
        format!("−{}", turns.unsigned_abs())
    } else {
        turns.to_string()
    }
}

/// `1 pass`, `6 passes`.
pub(super) fn count(count: usize, one: &str, more: &str) -> String {
    format!("{count} {}", if count == 1 { one } else { more })
}

#[cfg(test)]
mod tests {
    use notchwright_core::units::{Mm, Unit};

    /// Rounding by hand.
    #[test]
    fn lengths_are_as_fine_as_matters() {
        let rows = [
            (15.5556, Unit::Mm, "15.56 mm"),
            (140.0, Unit::Mm, "140 mm"),
            (0.02446, Unit::Mm, "0.024 mm"),
            (15.5556, Unit::Inch, "0.612\""),
            (0.0254, Unit::Inch, "0.001\""),
            (3.07, Unit::Inch, "0.1209\""),
        ];
        for (mm, unit, text) in rows {
            assert_eq!(super::length(Mm::new(mm).unwrap(), unit), text);
        }
    }

    #[test]
    fn a_column_keeps_its_decimals() {
        assert_eq!(super::column(Mm::INCH, Unit::Mm), "25.40");
        assert_eq!(super::column(Mm::INCH, Unit::Inch), "1.000");
        assert_eq!(super::column(-Mm::INCH, Unit::Mm), "−25.40");
    }
}
