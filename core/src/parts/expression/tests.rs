//! What is read, what is refused, and that both the text and the value of any tree come back.

use proptest::prelude::*;

use super::{Expression, ExpressionFault, Node, Operator, Trouble, Value};
use crate::units::{Literal, Mm, Unit, parse_length, tokens};

const T: f64 = 15.6;
const RAIL: f64 = 45.0;

fn names(name: &str) -> Result<Value, Trouble> {
    match name {
        "t" | "T" => Ok(Value::length(Mm::constant(T))),
        "rail" | "Querstück_2" | "戸" => Ok(Value::length(Mm::constant(RAIL))),
        name => Err(Trouble::UnknownName(name.to_owned())),
    }
}

fn length(text: &str, unit: Unit) -> Result<f64, Trouble> {
    let read = Expression::read(text).unwrap_or_else(|error| panic!("{text:?}: {error:?}"));
    read.length(unit, &names).map(Mm::mm)
}

#[track_caller]
fn comes_to(text: &str, unit: Unit, mm: f64) {
    let got = length(text, unit).unwrap_or_else(|trouble| panic!("{text:?}: {trouble:?}"));
    assert!((got - mm).abs() < 1e-9, "{text:?}: {got} is not {mm}");
}

/// Derived: with a pencil.
#[test]
fn dimensions_are_worked_out() {
    for (text, mm) in [
        ("300 - 2*t", 268.8),
        ("=300-2*T", 268.8),
        ("300 − 2×t", 268.8),
        ("rail + 2·t", 76.2),
        ("(rail*10 - 3*t)/2", 201.6),
        ("（rail - t）÷ 2", 14.7),
        ("Querstück_2 + 戸", 90.0),
        ("19,05", 19.05),
        ("2,5*t", 39.0),
        ("-t + 100", 84.4),
        ("100 - -t", 115.6),
        ("10 + 2*3 - 4/2", 14.0),
        ("300/2", 150.0),
        ("300.5/2", 150.25),
        ("100 - 20 - 3", 77.0),
        ("600/t*t/2", 300.0),
        ("min(rail; t)", 15.6),
        ("MAX(rail; 3*t) + 1", 47.8),
        ("round(t*3; 5)", 45.0),
        ("round(300 - 2*t; 0.5)", 269.0),
        ("3 cm + 1 in", 55.4),
        ("1-1/2\"", 38.1),
        ("2'-3\"", 685.8),
    ] {
        comes_to(text, Unit::Mm, mm);
    }
}

/// Derived: 1 in = 25.4 mm, and 11 1/2 in = 292.1 mm.
#[test]
fn numbers_added_to_lengths_are_in_the_unit_at_hand_and_factors_are_not() {
    for (text, mm) in [
        ("11 1/2 - 2*t", 292.1 - 31.2),
        ("11 1/2\" - 2*t", 292.1 - 31.2),
        ("11½ - 2*t", 292.1 - 31.2),
        ("1' 2 3/4\" + t", 14.75 * 25.4 + T),
        ("6' - 2*t", 72.0 * 25.4 - 31.2),
        ("6'-2*t", 72.0 * 25.4 - 31.2),
        ("6' - t", 72.0 * 25.4 - T),
        ("(11 1/2 - 1/2*t)/2", (292.1 - 7.8) / 2.0),
        ("100 mm - 1", 74.6),
        ("2*3", 6.0 * 25.4),
        ("min(1; rail)", 25.4),
        ("12/t*rail", 12.0 * 25.4 / T * RAIL),
    ] {
        comes_to(text, Unit::Inch, mm);
    }
}

#[test]
fn a_length_alone_is_the_one_that_every_other_field_reads() {
    for text in [
        "3/4",
        "1 1/2",
        "1-1/2",
        "2'-3 1/8\"",
        "19,05",
        "12 cm",
        "¾",
        "≈ 1/3",
    ] {
        for unit in Unit::ALL {
            let read = parse_length(text, unit).unwrap();
            assert_eq!(length(text, unit), Ok(read.mm()), "{text}");
        }
    }
}

#[test]
fn what_is_no_length_is_no_dimension() {
    for (text, trouble) in [
        ("rial + t", Trouble::UnknownName("rial".into())),
        ("rail*t", Trouble::NotALength),
        ("3 in * 2 in", Trouble::NotALength),
        ("rail/t", Trouble::NotALength),
        ("rail/t + t", Trouble::NotALength),
        ("t/(rail - 45)", Trouble::DivisionByZero),
        ("t/(0.1*3 - 0.3)", Trouble::DivisionByZero),
        ("round(t; 0)", Trouble::DivisionByZero),
        ("999999999*999999999*t", Trouble::TooLarge),
        ("2000 m", Trouble::TooLarge),
        ("2000 m - 1999 m", Trouble::TooLarge),
    ] {
        assert_eq!(length(text, Unit::Mm), Err(trouble), "{text}");
    }
}

#[test]
fn unclear_texts_are_refused_where_the_trouble_begins() {
    use ExpressionFault::{Length, NoOperator, NoValue, TooLong, TwoValues, TwoWays, Unclosed};
    let is_length = |fault: &ExpressionFault| matches!(fault, Length(_));
    for (text, at, expected) in [
        ("300 -", 5, Some(NoValue)),
        ("300 - * t", 6, Some(NoValue)),
        ("()", 1, Some(NoValue)),
        ("2 t", 2, Some(NoOperator)),
        ("2t", 1, Some(NoOperator)),
        ("t 2", 2, Some(NoOperator)),
        ("rail2.5", 5, Some(NoOperator)),
        ("(t", 2, Some(Unclosed)),
        ("min(t, rail)", 5, Some(TwoValues)),
        ("min t", 4, Some(TwoValues)),
        ("min(t; 2; 3)", 8, None),
        ("t + 1-1/2", 6, Some(TwoWays)),
        ("20-1/2*t", 3, Some(TwoWays)),
        ("t/1/2", 2, Some(TwoWays)),
        ("2' - 3\"", 3, Some(TwoWays)),
        ("2'-3\" + t", 2, Some(TwoWays)),
        ("t)", 1, None),
        ("t'", 1, None),
        ("t + 1,234", 4, None),
        ("t + 1 234", 4, None),
        ("t + 1 5/4", 6, None),
        ("", 0, None),
        ("=", 1, None),
    ] {
        let error = Expression::read(text).expect_err(text);
        assert_eq!(error.at, at, "{text}: {error:?}");
        match expected {
            Some(fault) => assert_eq!(error.fault, fault, "{text}"),
            None => assert!(is_length(&error.fault), "{text}: {error:?}"),
        }
    }
    for text in [
        "(".repeat(60) + "t",
        "-".repeat(60) + "t",
        "t+".repeat(150) + "t",
    ] {
        assert_eq!(Expression::read(&text).unwrap_err().fault, TooLong);
    }
}

fn a_literal() -> impl Strategy<Value = Node> {
    let text = prop_oneof![
        (0..=2000_u32).prop_map(|whole| whole.to_string()),
        (0..100_u32, "[0-9]{1,6}").prop_map(|(whole, part)| format!("{whole}.{part}")),
        (0..100_u32, 1..64_u32).prop_map(|(over, under)| format!("{over}/{under}")),
        (0..100_u32, 0..7_u32).prop_map(|(whole, over)| format!("{whole} {over}/8")),
    ];
    let unit = prop::sample::select(vec!["", "", "", " mm", " cm", " m", " in", " ft"]);
    (text, unit).prop_map(|(text, unit)| {
        let text = text + unit;
        let tokens = tokens(&text).unwrap();
        let mut cursor = crate::units::Cursor {
            rest: &tokens,
            end: text.len(),
        };
        Node::Literal(Literal::read(&mut cursor).unwrap())
    })
}

fn a_tree(leaf: impl Strategy<Value = Node> + 'static) -> impl Strategy<Value = Node> {
    use Operator::{Add, Divide, Greatest, Least, Multiply, Round, Subtract};
    let name = prop::sample::select(vec!["t", "rail", "Querstück_2"]);
    let leaf = prop_oneof![leaf, name.prop_map(|name| Node::Name(name.into()))];
    leaf.prop_recursive(4, 12, 2, |inner| {
        let operators = [Add, Subtract, Multiply, Divide, Least, Greatest, Round];
        let operator = prop::sample::select(operators.to_vec());
        prop_oneof![
            1 => inner.clone().prop_map(|node| Node::Negative(Box::new(node))),
            6 => (operator, inner.clone(), inner)
                .prop_map(|(operator, a, b)| Node::Two(operator, Box::new([a, b]))),
        ]
    })
}

/// The tree's value straight from Rust's own arithmetic, where every number is bare.
fn straight(node: &Node) -> f64 {
    match node {
        Node::Literal(literal) => literal.number(),
        Node::Name(name) => {
            if name == "t" {
                T
            } else {
                RAIL
            }
        }
        Node::Negative(node) => -straight(node),
        Node::Two(operator, two) => {
            let (a, b) = (straight(&two[0]), straight(&two[1]));
            match operator {
                Operator::Add => a + b,
                Operator::Subtract => a - b,
                Operator::Multiply => a * b,
                Operator::Divide => a / b,
                Operator::Least => a.min(b),
                Operator::Greatest => a.max(b),
                Operator::Round => (a / b).round() * b,
            }
        }
    }
}

fn bare(name: &str) -> Result<Value, Trouble> {
    Ok(Value::bare(if name == "t" { T } else { RAIL }))
}

/// Derived: a factor and a step of a length stay numbers, what is added to a length is one.
#[test]
fn an_expression_that_says_its_unit_says_it_once_for_each_length() {
    for (text, stated) in [
        ("15", "15 mm"),
        ("t", "t"),
        ("300 - 2*t", "300 mm - 2*t"),
        ("rail - 15 + 3", "rail - 15 mm + 3 mm"),
        ("2*(t + 6)", "2*(t + 6 mm)"),
        ("2*15", "2 mm*15"),
        ("t*2/3", "t*2/3"),
        ("1 in + 3", "1 in + 3 mm"),
        ("max(t; 12)", "max(t; 12 mm)"),
        ("round(rail/3; 5)", "round(rail/3; 5 mm)"),
        ("rail*(t/12)", "rail*(t/12)"),
        ("12/t*rail", "12 mm/t*rail"),
        ("-5 + t", "-5 mm + t"),
    ] {
        let written = Expression::read(text).unwrap().stated(Unit::Mm).to_string();
        assert_eq!(written, stated, "{text}");
    }
}

fn has_rounding(node: &Node) -> bool {
    match node {
        Node::Literal(_) | Node::Name(_) => false,
        Node::Negative(node) => has_rounding(node),
        Node::Two(operator, two) => *operator == Operator::Round || two.iter().any(has_rounding),
    }
}

proptest! {
    /// Rounding is left out: a hair decides it.
    #[test]
    fn what_says_its_unit_comes_to_the_same_in_another(tree in a_tree(a_literal()), is_inch: bool) {
        prop_assume!(!has_rounding(&tree));
        let (own, other) = if is_inch { (Unit::Inch, Unit::Mm) } else { (Unit::Mm, Unit::Inch) };
        let lengths = |name: &str| Ok(Value::length(Mm::new(if name == "t" { T } else { RAIL }).unwrap()));
        let Ok(before) = Expression(tree.clone()).length(own, &lengths) else { return Ok(()) };
        let after = Expression(tree).stated(own).length(other, &lengths);
        let after = after.unwrap().mm();
        prop_assert!((after - before.mm()).abs() <= 1e-6 * (1.0 + before.mm().abs()), "{before:?} {after}");
    }

    #[test]
    fn what_is_written_is_read_back(tree in a_tree(a_literal())) {
        let written = Expression(tree.clone()).to_string();
        prop_assume!(written.chars().count() <= 200);
        let read = Expression::read(&written);
        prop_assert_eq!(read, Ok(Expression(tree)), "{}", written);
    }

    #[test]
    fn a_tree_is_worked_out_as_rust_itself_does(
        tree in a_tree((1..500_u32).prop_map(|whole| {
            let text = whole.to_string();
            Expression::read(&text).unwrap().0
        }))
    ) {
        let expected = straight(&tree);
        match Expression(tree.clone()).value(Unit::Mm, &bare) {
            Ok(value) => prop_assert_eq!(value.number, expected),
            Err(Trouble::DivisionByZero) => {}
            Err(Trouble::TooLarge) => prop_assert!(!expected.is_finite() || expected.abs() > 1e6),
            Err(trouble) => prop_assert!(false, "{:?}", trouble),
        }
    }

    /// A sum with `k` thicknesses in it grows by `k·d` where the sheet is thicker by `d`.
    #[test]
    fn a_dimension_follows_the_thickness_by_its_coefficient(
        terms in prop::collection::vec((-6..=6_i32, 1..=4_u32, 0..900_u32), 1..8),
        t in 3.0..40.0_f64, d in -2.0..2.0_f64
    ) {
        let text = terms.iter().fold(String::from("1000"), |text, (times, over, more)| {
            format!("({text}) + {times}*t/{over} - {more}")
        });
        let Ok(sum) = Expression::read(&text) else { return Err(TestCaseError::reject("too long")) };
        let at = |t: f64| sum.length(Unit::Mm, &|_| Ok(Value::length(Mm::new(t).unwrap()))).unwrap();
        let coefficient: f64 = terms.iter().map(|(times, over, _)| f64::from(*times) / f64::from(*over)).sum();
        prop_assert!(((at(t + d) - at(t)).mm() - coefficient * d).abs() < 1e-8, "{}", text);
    }

    #[test]
    fn any_text_is_read_or_refused(text in r#"[-+*/(); .,0-9tmin'"½×_é=]{0,40}|\PC{0,60}"#) {
        match Expression::read(&text) {
            Ok(read) => { let _ = read.length(Unit::Inch, &names); }
            Err(error) => {
                prop_assert!(error.at <= text.chars().count());
                prop_assert!(!error.to_string().is_empty());
            }
        }
    }
}
