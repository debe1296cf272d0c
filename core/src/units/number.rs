//! The one writer and the one reader of plain numbers, for people and for golden files alike.
//!
//! Both work on whole numbers. The standard library's are exact for every number there is, and bring
//! tables with them that a phone would have to fetch.

/// Beyond this many units of the last place a number is not written digit by digit.
const LARGEST: f64 = 9e15;
/// Powers of ten that a float holds exactly, up to what a length is ever written or read with.
const TENS: [f64; 16] = [
    1e0, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6, 1e7, 1e8, 1e9, 1e10, 1e11, 1e12, 1e13, 1e14, 1e15,
];

/// `value` with at most `decimals` decimals (9 at most): a point before them, no zeros after them, no
/// marks between thousands, never `-0`.
///
/// Numbers beyond ±9·10¹⁵ units of the last place are named, not written: no length here is as long.
/// The same value gives the same text on every machine and in every country.
///
/// ```
/// use notchwright_core::units::write_number;
/// assert_eq!(write_number(19.050, 3), "19.05");
/// assert_eq!(write_number(-0.000_4, 3), "0");
/// ```
#[must_use]
pub fn write_number(value: f64, decimals: u8) -> String {
    let mut text = write_padded(value, decimals);
    if text.contains('.') {
        text.truncate(text.trim_end_matches('0').trim_end_matches('.').len());
    }
    text
}

/// The same with exactly `decimals` decimals, for columns of numbers.
///
/// ```
/// use notchwright_core::units::write_padded;
/// assert_eq!(write_padded(19.1, 3), "19.100");
/// ```
#[must_use]
pub fn write_padded(value: f64, decimals: u8) -> String {
    let decimals = usize::from(decimals).min(9);
    let scale = TENS.get(decimals).copied().unwrap_or(1.0);
    let places = (value.abs() * scale).round();
    if places.is_nan() {
        return "NaN".to_owned();
    }
    if places > LARGEST {
        return if value < 0.0 { "-∞" } else { "∞" }.to_owned();
    }
    let mut places = places as u64;
    let sign = if value < 0.0 && places > 0 { "-" } else { "" };
    // Written from its last digit to its first: a drawing has hundreds of numbers.
    let mut digits = Vec::new();
    let mut at = 0;
    while at <= decimals || places > 0 {
        if at == decimals && decimals > 0 {
            digits.push('.');
        }
        digits.push(char::from(b'0' + (places % 10) as u8));
        places /= 10;
        at += 1;
    }
    sign.chars().chain(digits.into_iter().rev()).collect()
}

/// Reads digits with at most one decimal point and a sign before them; 15 digits at most, so that the
/// number is the nearest there is.
///
/// ```
/// use notchwright_core::units::read_number;
/// assert_eq!(read_number("-2.5"), Some(-2.5));
/// assert_eq!(read_number("2,5"), None);
/// ```
#[must_use]
pub fn read_number(text: &str) -> Option<f64> {
    let (sign, digits) = match text.strip_prefix(['-', '+']) {
        Some(digits) => (if text.starts_with('-') { -1.0 } else { 1.0 }, digits),
        None => (1.0, text),
    };
    let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
    let all = format!("{whole}{part}");
    let significant = all.trim_start_matches('0').len();
    if all.is_empty() || significant > 15 || !all.bytes().all(|digit| digit.is_ascii_digit()) {
        return None;
    }
    let number = all.bytes().fold(0, |number: u64, digit| {
        number * 10 + u64::from(digit - b'0')
    });
    Some(sign * number as f64 / TENS.get(part.len())?)
}

#[cfg(test)]
mod tests {
    use proptest::prelude::*;

    use super::{read_number, write_number};

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

    #[test]
    fn what_has_no_digits_is_named() {
        for (value, text) in [(f64::NAN, "NaN"), (f64::INFINITY, "∞"), (-1e300, "-∞")] {
            assert_eq!(write_number(value, 3), text);
        }
    }

    #[test]
    fn only_plain_digits_are_a_number() {
        for text in [
            "",
            ".",
            "-",
            "+-1",
            "1.2.3",
            "1e3",
            "0x1",
            "1 2",
            "½",
            "1234567890123456",
        ] {
            assert_eq!(read_number(text), None, "{text}");
        }
        for (text, number) in [
            ("0", 0.0),
            ("007", 7.0),
            (".5", 0.5),
            ("5.", 5.0),
            ("+3", 3.0),
            ("0.000001", 1e-6),
        ] {
            assert_eq!(read_number(text), Some(number), "{text}");
        }
    }

    proptest! {
        /// The standard library's reader is the reference.
        #[test]
        fn reads_as_the_standard_library_does(whole in 0..1_000_000_u32, part in "[0-9]{0,9}") {
            let text = format!("{whole}.{part}");
            prop_assert_eq!(read_number(&text), text.parse().ok());
        }

        /// The standard library's writer is the reference, but where a tie may go either way.
        #[test]
        fn writes_as_the_standard_library_does(value in -1e6..1e6_f64, decimals in 0..=6_u8) {
            let written = write_number(value, decimals);
            let exact = format!("{value:.*}", usize::from(decimals));
            let difference: f64 = written.parse::<f64>().unwrap() - exact.parse::<f64>().unwrap();
            let last_place = 1.0 / super::TENS[usize::from(decimals)];
            prop_assert!(difference.abs() < 1e-9 || (difference.abs() - last_place).abs() < 1e-9);
            prop_assert!((written.parse::<f64>().unwrap() - value).abs() <= last_place * 0.500_001);
        }
    }
}
