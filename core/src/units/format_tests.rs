//! What is written, and that it reads back.

use proptest::prelude::*;

use super::{Denominator, Mm, Style, Unit, format_length, parse_length};

fn fraction(parts: u16) -> Style {
    Style::InchFraction {
        finest: Denominator::new(parts).unwrap(),
    }
}

#[test]
fn millimetres_say_at_most_a_micrometre() {
    for (mm, text) in [
        (19.05, "19.05 mm"),
        (12.0, "12 mm"),
        (15.555_555_6, "15.556 mm"),
        (-0.000_4, "0 mm"),
        (-1.5, "-1.5 mm"),
        (2440.0, "2440 mm"),
    ] {
        let written = format_length(Mm::new(mm).unwrap(), Style::usual(Unit::Mm));
        assert_eq!(
            (written.text.as_str(), written.exact, written.leftover),
            (text, true, Mm::ZERO)
        );
    }
}

#[test]
fn inch_fractions_are_in_lowest_terms() {
    // Decimal equivalents: derived, n/64 in = n · 0.396875 mm.
    for (mm, parts, text) in [
        (0.0, 64, "0\""),
        (0.396_875, 64, "1/64\""),
        (1.5875, 64, "1/16\""),
        (19.05, 64, "3/4\""),
        (38.1, 64, "1 1/2\""),
        (50.8, 64, "2\""),
        (-38.1, 64, "-1 1/2\""),
        (688.975, 8, "27 1/8\""),
        (25.4, 1, "1\""),
        (10.16, 10, "2/5\""),
        (25.4 * 3.0 / 1024.0, 1024, "3/1024\""),
    ] {
        let written = format_length(Mm::new(mm).unwrap(), fraction(parts));
        assert_eq!(
            (written.text.as_str(), written.exact, written.leftover),
            (text, true, Mm::ZERO),
            "{mm}"
        );
    }
}

#[test]
fn a_fraction_that_is_not_exact_says_so_and_keeps_the_rest() {
    // Derived: the leftover is the length less the fraction · 25.4 mm.
    for (mm, parts, text, leftover) in [
        (19.0, 64, "≈ 3/4\"", -0.05),
        (50.7, 64, "≈ 2\"", -0.1),
        (25.4 - 0.19, 64, "≈ 1\"", -0.19),
        (-0.1, 64, "≈ 0\"", -0.1),
        (-19.0, 64, "≈ -3/4\"", 0.05),
        (20.0, 1, "≈ 1\"", -5.4),
        // 39 168 in: in 1024ths more than any length is millimetres long.
        (994_867.202, 1024, "≈ 39168\"", 0.002),
    ] {
        let written = format_length(Mm::new(mm).unwrap(), fraction(parts));
        assert_eq!((written.text.as_str(), written.exact), (text, false));
        assert!(
            (written.leftover.mm() - leftover).abs() < 1e-9,
            "{mm}: {:?}",
            written.leftover
        );
    }
}

#[test]
fn inch_decimals_carry_the_mark() {
    let style = Style::InchDecimals { decimals: 3 };
    for (mm, text, exact) in [
        (19.05, "0.75\"", true),
        (20.0, "0.787\"", false),
        (-0.001, "0\"", true),
    ] {
        let written = format_length(Mm::new(mm).unwrap(), style);
        assert_eq!((written.text.as_str(), written.exact), (text, exact));
    }
}

#[test]
fn an_inch_has_from_1_to_1024_parts() {
    for (parts, allowed) in [
        (0, false),
        (1, true),
        (3, true),
        (1024, true),
        (1025, false),
    ] {
        assert_eq!(
            Denominator::new(parts).map(Denominator::parts),
            allowed.then_some(parts)
        );
    }
}

#[test]
fn the_longest_length_is_written_in_full() {
    let longest = Mm::new(1e9).unwrap();
    assert_eq!(
        format_length(longest, Style::usual(Unit::Mm)).text,
        "1000000000 mm"
    );
    // Derived: 39 370 078.700 79 in. Rounded up, the longest itself would be longer than any length.
    assert_eq!(
        format_length(longest - Mm::constant(1.0), fraction(1024)).text,
        "≈ 39370078 359/512\""
    );
}

fn any_style() -> impl Strategy<Value = (Style, f64)> {
    let last_place = |decimals: u8| (0..decimals).fold(1.0, |place, _| place / 10.0);
    prop_oneof![
        (0_u8..=9)
            .prop_map(move |decimals| (Style::Millimetres { decimals }, last_place(decimals))),
        (0_u8..=9).prop_map(move |decimals| (
            Style::InchDecimals { decimals },
            25.4 * last_place(decimals)
        )),
        (0_u32..=10).prop_map(|power| (fraction(1 << power), 25.4 / f64::from(1_u32 << power))),
        (1_u16..=1024).prop_map(|parts| (fraction(parts), 25.4 / f64::from(parts))),
    ]
}

proptest! {
    #[test]
    fn what_is_written_is_read_back_to_half_the_last_place(
        mm in -5000.0..5000.0_f64,
        (style, last_place) in any_style(),
        unit in prop_oneof![Just(Unit::Mm), Just(Unit::Inch)],
    ) {
        let length = Mm::new(mm).unwrap();
        let written = format_length(length, style);
        let read = parse_length(&written.text, unit).unwrap();
        prop_assert!((read - length).abs().mm() <= last_place / 2.0 + 1e-9, "{}", written.text);
        prop_assert!((read + written.leftover).is_same(length), "{}", written.text);
        prop_assert_eq!(written.exact, read.is_same(length));
        prop_assert!(!written.text.contains("-0 ") && !written.text.contains("-0\""));
    }

    #[test]
    fn a_whole_number_of_parts_is_exact(parts in -30_000_i32..30_000, power in 0_u32..=10) {
        let length = Mm::INCH * f64::from(parts) / f64::from(1_u32 << power);
        let written = format_length(length, fraction(1 << power));
        prop_assert!(written.exact, "{}", written.text);
        prop_assert!((parse_length(&written.text, Unit::Mm).unwrap() - length).abs().mm() < 1e-9);
    }
}
