//! The one writer of numbers, for people and for golden files alike.

/// `value` with at most `decimals` decimals: a point before them, no zeros after them, no marks
/// between thousands, never `-0`.
///
/// `value` is finite, as every length and angle here is. The same value gives the same text on
/// every machine and in every country.
///
/// ```
/// use notchwright_core::units::write_number;
/// assert_eq!(write_number(19.050, 3), "19.05");
/// assert_eq!(write_number(-0.000_4, 3), "0");
/// ```
#[must_use]
pub fn write_number(value: f64, decimals: u8) -> String {
    let mut text = format!("{value:.*}", usize::from(decimals));
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    if text == "-0" { "0".into() } else { text }
}

#[cfg(test)]
mod tests {
    use super::write_number;

    #[test]
    fn zeros_and_signs_that_say_nothing_are_left_out() {
        for (value, decimals, text) in [
            (0.0, 0, "0"),
            (-0.0, 3, "0"),
            (-0.000_49, 3, "0"),
            (-0.000_51, 3, "-0.001"),
            (100.0, 0, "100"),
            (100.0, 3, "100"),
            (19.05, 3, "19.05"),
            (19.999_9, 3, "20"),
            (1234.5, 1, "1234.5"),
            (1e9, 3, "1000000000"),
            (15.555_555, 4, "15.5556"),
        ] {
            assert_eq!(write_number(value, decimals), text, "{value} to {decimals}");
        }
    }
}
