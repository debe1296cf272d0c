//! What is read, what is refused, and that nothing at all makes the reader stumble.

use proptest::prelude::*;

use super::{LengthError, LengthFault, Unit, parse_length};

/// 1 in = 25.4 mm exactly (NIST SP 811, from memory); 1 ft = 12 in; the rest is derived.
const INCH: f64 = 25.4;

#[track_caller]
fn reads(text: &str, unit: Unit, mm: f64) {
    let read = parse_length(text, unit).unwrap_or_else(|error| panic!("{text:?}: {error}"));
    assert!(
        (read.mm() - mm).abs() < 1e-9,
        "{text:?} in {unit:?}: {} is not {mm}",
        read.mm()
    );
}

#[track_caller]
fn refused(text: &str, unit: Unit) -> LengthError {
    let error = match parse_length(text, unit) {
        Ok(length) => panic!("{text:?} in {unit:?} was read as {length}"),
        Err(error) => error,
    };
    assert_eq!(error.given, text);
    assert!(error.at <= text.chars().count());
    error
}

#[test]
fn lengths_that_say_their_unit_are_read_alike_in_both_units() {
    for (text, mm) in [
        ("1 1/2\"", 1.5 * INCH),
        ("1-1/2\"", 1.5 * INCH),
        ("1–1/2 in", 1.5 * INCH),
        ("1 ¾ in", 1.75 * INCH),
        ("1¾″", 1.75 * INCH),
        ("1-¾”", 1.75 * INCH),
        ("3/4 inch", 19.05),
        ("3/4 INCHES", 19.05),
        ("3 in.", 3.0 * INCH),
        ("3''", 3.0 * INCH),
        ("3′′", 3.0 * INCH),
        ("2' 3-1/8\"", 27.125 * INCH),
        ("2'-3 1/8\"", 27.125 * INCH),
        ("2' - 3 1/8\"", 27.125 * INCH),
        ("2'3", 27.0 * INCH),
        ("2 ft 3 1/8 in", 27.125 * INCH),
        ("2 ft. 3⅛ in.", 27.125 * INCH),
        ("2 ft.3 in", 27.0 * INCH),
        ("2 feet 11.5 inches", 35.5 * INCH),
        ("1 foot", 12.0 * INCH),
        ("2’ 3”", 27.0 * INCH),
        ("2'", 24.0 * INCH),
        ("2.5 ft", 30.0 * INCH),
        ("2 1/2'", 30.0 * INCH),
        ("-2' 3\"", -27.0 * INCH),
        ("12 mm", 12.0),
        ("12mm", 12.0),
        ("12 MM.", 12.0),
        ("½ mm", 0.5),
        ("12 millimetres", 12.0),
        ("1 millimeter", 1.0),
        ("7 cm", 70.0),
        ("7 Centimetres", 70.0),
        ("0,5 m", 500.0),
        ("2 meters", 2000.0),
        ("1000 m", 1e6),
        ("１２ｍｍ", 12.0),
        ("１／２＂", 12.7),
        ("12 ㎜", 12.0),
        ("7㎝", 70.0),
        ("= 12 mm", 12.0),
        ("≈ 1 1/2\"", 1.5 * INCH),
        ("~12 mm", 12.0),
        ("12 mm,", 12.0),
        ("12 mm;", 12.0),
        ("\"12 mm\"", 12.0),
        ("“2' 3\"”", 27.0 * INCH),
        ("'3/4 in'", 19.05),
    ] {
        reads(text, Unit::Mm, mm);
        reads(text, Unit::Inch, mm);
    }
}

#[test]
fn a_bare_number_is_in_the_unit_at_hand() {
    for (text, number) in [
        ("19", 19.0),
        ("19.05", 19.05),
        ("19,05", 19.05),
        ("1.234", 1.234),
        ("0,125", 0.125),
        ("1234,567", 1234.567),
        ("00012", 12.0),
        (".5", 0.5),
        (",5", 0.5),
        ("5.", 5.0),
        ("5,", 5.0),
        ("3/4", 0.75),
        ("3 / 4", 0.75),
        ("5/4", 1.25),
        ("0/4", 0.0),
        ("1 0/4", 1.0),
        ("1\u{2009}1\u{2044}2", 1.5),
        ("1\u{A0}1\u{2215}2", 1.5),
        ("1\u{2007}1/2", 1.5),
        ("\u{3000}1\u{3000}1/2\u{3000}", 1.5),
        ("\u{FEFF}12\u{200B}", 12.0),
        ("12\n", 12.0),
        ("1⅟8", 1.125),
        ("⅟16", 0.0625),
        ("+5", 5.0),
        ("＋5", 5.0),
        ("-5", -5.0),
        ("\u{2212}5", -5.0),
        ("–1 1/2", -1.5),
        ("-0", 0.0),
        ("１９．０５", 19.05),
        ("=5", 5.0),
    ] {
        reads(text, Unit::Mm, number);
        reads(text, Unit::Inch, number * INCH);
    }
}

#[test]
fn every_vulgar_fraction_is_its_own_value() {
    for (text, value) in [
        ("¼", 1.0 / 4.0),
        ("½", 1.0 / 2.0),
        ("¾", 3.0 / 4.0),
        ("⅐", 1.0 / 7.0),
        ("⅑", 1.0 / 9.0),
        ("⅒", 1.0 / 10.0),
        ("⅓", 1.0 / 3.0),
        ("⅔", 2.0 / 3.0),
        ("⅕", 1.0 / 5.0),
        ("⅖", 2.0 / 5.0),
        ("⅗", 3.0 / 5.0),
        ("⅘", 4.0 / 5.0),
        ("⅙", 1.0 / 6.0),
        ("⅚", 5.0 / 6.0),
        ("⅛", 1.0 / 8.0),
        ("⅜", 3.0 / 8.0),
        ("⅝", 5.0 / 8.0),
        ("⅞", 7.0 / 8.0),
        ("↉", 0.0),
    ] {
        reads(text, Unit::Inch, value * INCH);
        reads(&format!("2{text}"), Unit::Inch, (2.0 + value) * INCH);
    }
}

#[test]
fn common_inch_fractions_are_the_nearest_number_to_their_millimetres() {
    // Derived: n/d · 25.4 mm, as the compiler rounds it.
    for (text, mm) in [
        ("1/64", 0.396_875),
        ("1/32", 0.793_75),
        ("1/16", 1.5875),
        ("3/4", 19.05),
        ("0.7", 17.78),
    ] {
        assert_eq!(parse_length(text, Unit::Inch).unwrap().mm(), mm, "{text}");
    }
}

#[test]
fn unclear_lengths_are_refused_where_the_trouble_begins() {
    use LengthFault::*;
    let reading = |decimal: &str, thousands: &str| CommaOrThousands {
        decimal: decimal.into(),
        thousands: thousands.into(),
    };
    for (text, at, fault) in [
        ("", 0, Empty),
        (" \u{A0}", 2, Empty),
        ("abc", 0, NotANumber),
        ("mm", 0, NotANumber),
        ("mm 12", 0, NotANumber),
        ("NaN", 0, NotANumber),
        ("inf", 0, NotANumber),
        ("-", 1, NotANumber),
        ("--5", 1, NotANumber),
        ("=", 1, NotANumber),
        (".", 0, NotANumber),
        ("1,234", 0, reading("1.234", "1234")),
        ("- 12,345 mm", 2, reading("12.345", "12345")),
        ("１，２３４", 0, reading("1.234", "1234")),
        (
            "1 234",
            0,
            SpacedDigits {
                joined: "1234".into(),
            },
        ),
        (
            "1\u{202F}234,5 mm",
            0,
            SpacedDigits {
                joined: "1234.5".into(),
            },
        ),
        (
            "12 345 678",
            0,
            SpacedDigits {
                joined: "12345678".into(),
            },
        ),
        ("1,234.5", 0, TwoMarks),
        ("1.234,5", 0, TwoMarks),
        ("1.234.567", 0, TwoMarks),
        ("12..", 0, TwoMarks),
        ("1 2", 2, TwoNumbers),
        // In one piece it would have two marks, or more digits than are read.
        ("5 162. 162.", 2, TwoNumbers),
        ("1 234.5 678", 2, TwoNumbers),
        ("1 234 567 890 123 456 789", 0, TooManyDigits),
        ("0 125", 2, TwoNumbers),
        ("1 1/2 3", 6, TwoNumbers),
        ("½½", 1, TwoNumbers),
        ("1\" 1/2", 3, TwoNumbers),
        ("3/0", 2, ZeroBelow),
        ("1 3/0", 4, ZeroBelow),
        (
            "1 5/4",
            2,
            FractionPastOne {
                better: "2 1/4".into(),
            },
        ),
        ("1 2/2", 2, FractionPastOne { better: "2".into() }),
        ("1.5 1/2", 0, DecimalWithFraction),
        ("1.5¾", 0, DecimalWithFraction),
        ("1,5/2", 0, DecimalWithFraction),
        ("1/2.5", 2, DecimalWithFraction),
        ("3/", 2, BrokenFraction),
        ("/4", 0, BrokenFraction),
        ("3//4", 2, BrokenFraction),
        ("1/2/3", 3, BrokenFraction),
        ("3/-4", 2, BrokenFraction),
        ("⅟", 1, BrokenFraction),
        ("1 - 1/2", 2, Sum),
        ("1 -1/2", 2, Sum),
        ("1- 1/2", 1, Sum),
        ("3-4", 1, Sum),
        ("1+1/2", 1, Sum),
        ("3 mm 2 in", 5, MixedUnits),
        ("3 mm\"", 4, MixedUnits),
        ("3 in 2 ft", 5, MixedUnits),
        ("2' 3 mm", 5, MixedUnits),
        ("2' 3 cm", 5, MixedUnits),
        ("2' 3'", 4, MixedUnits),
        ("1 m 20 cm", 4, MixedUnits),
        ("3 mm in", 5, MixedUnits),
        ("2.5' 3\"", 0, FeetNotWhole),
        ("1/2 ft 3 in", 0, FeetNotWhole),
        ("1'234", 2, InchesPastFoot),
        ("2' 12\"", 3, InchesPastFoot),
        ("3 furlongs", 2, UnknownUnit("furlongs".into())),
        ("3 mm deep", 5, UnknownUnit("deep".into())),
        ("0x1F", 1, UnknownUnit("x".into())),
        ("1e", 1, UnknownUnit("e".into())),
        ("1e3", 1, Exponent),
        ("1.5E-3 mm", 3, Exponent),
        ("1234567890123456789", 0, TooManyDigits),
        ("0.1234567890123456789", 0, TooManyDigits),
        ("1/1234567890", 2, TooManyDigits),
        ("1234567890 1/2", 0, TooManyDigits),
        ("1000.001 m", 0, TooLong),
        ("-999999999999999999 ft", 1, TooLong),
        ("999999999999999999' 3\"", 0, TooLong),
        ("\"3/4\"", 0, QuoteMarks),
        ("'12'", 0, QuoteMarks),
        ("'12 mm", 0, QuoteMarks),
        ("12 ± 0.1", 3, Unexpected('±')),
        ("$5", 0, Unexpected('$')),
        ("5 .", 2, Unexpected('.')),
        ("12 mm =", 6, Unexpected('=')),
        ("¾ mm 🪚", 5, Unexpected('🪚')),
    ] {
        let error = refused(text, Unit::Mm);
        assert_eq!((error.at, &error.fault), (at, &fault), "{text:?}");
    }
}

#[test]
fn quotes_that_change_nothing_do_no_harm() {
    reads("\"3/4\"", Unit::Inch, 19.05);
    assert_eq!(refused("'12'", Unit::Inch).fault, LengthFault::QuoteMarks);
}

#[test]
fn pasted_numbers_may_have_all_the_digits_of_a_float() {
    reads("19.049999999999997", Unit::Mm, 19.05);
}

#[test]
fn what_a_refusal_tells_to_write_is_read() {
    for (text, advice) in [
        ("", &["19.05", "3/4", "2' 3-1/8\""][..]),
        ("abc", &["19.05", "3/4", "12 mm"]),
        ("12,345", &["12.345", "12345"]),
        ("1 234", &["1234"]),
        ("1,234.5", &["1234.5"]),
        ("1 2", &["3 1/4"]),
        ("3/0", &["3/4"]),
        ("1 5/4", &["2 1/4"]),
        ("1.5 1/2", &["1.75", "1 3/4"]),
        ("3/", &["3/4", "1 3/4"]),
        ("1 - 1/2", &["1 1/2", "1-1/2"]),
        ("3 mm 2 in", &["54 mm", "2 in", "2' 3\""]),
        ("2.5' 3\"", &["2' 6\"", "2.5 ft"]),
        ("2' 14\"", &["3' 2\"", "38 in"]),
        ("1e3", &["1000", "0.001"]),
        ("0.1234567890123456789", &["19.051"]),
        ("2000 m", &["1000 m"]),
        ("'12'", &["3/4 in", "2 ft"]),
        ("$5", &["19.05", "3/4", "12 mm"]),
    ] {
        let message = refused(text, Unit::Mm).to_string();
        for advice in advice {
            assert!(message.contains(advice), "{text:?}: {message}");
            assert!(parse_length(advice, Unit::Mm).is_ok(), "{advice}");
        }
    }
}

proptest! {
    #[test]
    fn any_text_is_read_or_refused(characters in proptest::collection::vec(any::<char>(), 0..40)) {
        let text = String::from_iter(characters);
        for unit in [Unit::Mm, Unit::Inch] {
            match parse_length(&text, unit) {
                Ok(length) => prop_assert!(length.mm().abs() <= 1e6),
                Err(error) => prop_assert!(error.at <= text.chars().count() && !error.to_string().is_empty()),
            }
        }
    }

    #[test]
    fn any_mixture_of_what_lengths_are_made_of_is_read_or_refused(text in "[0-9０-９.,/⁄'\"″′’ ¾⅟½+≈=e;a-z\u{2013}\u{2009}㎜-]{0,24}") {
        for unit in [Unit::Mm, Unit::Inch] {
            match parse_length(&text, unit) {
                Ok(length) => prop_assert!(length.mm().abs() <= 1e6),
                Err(error) => prop_assert!(error.at <= text.chars().count()),
            }
        }
    }

    #[test]
    fn a_minus_sign_only_turns_the_length_round(number in 0_u32..1_000_000, over in 0_u32..64) {
        let text = format!("{number} {over}/64 mm");
        let there = parse_length(&text, Unit::Mm).unwrap();
        prop_assert_eq!(parse_length(&format!("-{text}"), Unit::Mm).unwrap(), -there);
    }
}
