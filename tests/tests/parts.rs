//! Parts against libraries that know nothing of this one: a general evaluator of expressions (fasteval) and a general
//! reader and writer of separated values (csv).

use notchwright_core::parts::tsv::{PartText, read, write};
use notchwright_core::parts::{Expression, Trouble, Value};
use notchwright_core::units::Unit;
use proptest::prelude::*;

/// Expressions that both understand, over `rail` and `t`.
fn an_expression() -> impl Strategy<Value = String> {
    let leaf = prop_oneof![
        (1..900_u32).prop_map(|whole| whole.to_string()),
        (1..90_u32, "[0-9]{1,2}").prop_map(|(whole, part)| format!("{whole}.{part}")),
        Just("t".to_owned()),
        Just("rail".to_owned()),
    ];
    leaf.prop_recursive(5, 24, 2, |inner| {
        let sum = prop::sample::select(vec![" + ", " - ", "*"]);
        prop_oneof![
            3 => (inner.clone(), sum, inner.clone()).prop_map(|(a, sign, b)| a + sign + &b),
            // Without the brackets 1/2/3 would be refused: it can be read in two ways.
            1 => (inner.clone(), inner.clone()).prop_map(|(a, b)| format!("({a})/({b})")),
            1 => inner.clone().prop_map(|a| format!("({a})")),
            1 => inner.prop_map(|a| format!("(-{a})")),
        ]
    })
}

proptest! {
    #[test]
    fn a_general_evaluator_comes_to_the_same(text in an_expression(), t in 3.0..40.0_f64, rail in 1.0..200.0_f64) {
        prop_assume!(text.len() <= 200);
        let mut named = |name: &str, _: Vec<f64>| match name {
            "t" => Some(t),
            "rail" => Some(rail),
            _ => None,
        };
        let expected = fasteval::ez_eval(&text, &mut named).expect("both know the notation");
        let names = |name: &str| Ok(Value::bare(if name == "t" { t } else { rail }));
        match Expression::read(&text).expect("both know the notation").length(Unit::Mm, &names) {
            Ok(length) => prop_assert!(
                (length.mm() - expected).abs() <= 1e-9 * expected.abs().max(1.0),
                "{}: {} is not {}", text, length, expected
            ),
            Err(Trouble::TooLarge) => prop_assert!(expected.abs() > 1e6),
            Err(trouble) => prop_assert_eq!(trouble, Trouble::DivisionByZero),
        }
    }
}

/// The columns of text, in their order; the sixth and the eighth are yes or no.
fn texts(row: &PartText) -> [&str; 6] {
    [
        &row.name,
        &row.count,
        &row.length,
        &row.width,
        &row.stock,
        &row.trim,
    ]
    .map(String::as_str)
}

const CELL: &str = "[a-z0-9 \"\t\r\n*/,.½é]{0,8}";

proptest! {
    #[test]
    fn a_table_of_a_general_writer_is_read(grid in prop::collection::vec(prop::array::uniform6(CELL), 1..6)) {
        let mut writer = csv::WriterBuilder::new().delimiter(b'\t').from_writer(Vec::new());
        // A letter in the first cell and a number in the second: a blank row would be left out, and one of
        // column words taken for such.
        let grid: Vec<[String; 6]> = grid.into_iter().map(|[first, rest @ ..]| {
            let [b, c, d, e, f] = rest;
            [format!("side {first}"), format!("1{b}"), c, d, e, f]
        }).collect();
        for [name, count, length, width, stock, trim] in &grid {
            writer.write_record([name, count, length, width, stock, "yes", trim, ""]).expect("to memory");
        }
        let text = String::from_utf8(writer.into_inner().expect("to memory")).expect("as it was");
        let table = read(&text);
        prop_assert_eq!(table.problems, []);
        let rows: Vec<_> = table.rows.iter().map(texts).collect();
        let given: Vec<_> = grid.iter().map(|row| row.each_ref().map(String::as_str)).collect();
        prop_assert_eq!(rows, given, "{:?}", text);
        prop_assert!(table.rows.iter().all(|row| row.may_turn && !row.later));
    }

    #[test]
    fn a_written_table_is_read_by_a_general_reader(cells in prop::collection::vec(prop::array::uniform6(CELL), 1..6)) {
        let row = |[name, count, length, width, stock, trim]: [String; 6]| PartText {
            name, count, length, width, stock, trim, may_turn: true, later: false,
        };
        let rows: Vec<PartText> = cells.into_iter().map(row).collect();
        let text = write(&rows);
        let mut reader = csv::ReaderBuilder::new().delimiter(b'\t').from_reader(text.as_bytes());
        let records = reader.records().collect::<Result<Vec<_>, _>>().expect("as many cells in each row");
        let read: Vec<Vec<&str>> = records.iter().map(|record| record.iter().map(unguarded).collect()).collect();
        let given: Vec<Vec<&str>> = rows.iter().map(|row| {
            let [name, count, length, width, stock, trim] = texts(row);
            vec![name, count, length, width, stock, "yes", trim, ""]
        }).collect();
        prop_assert_eq!(read, given, "{:?}", text);
    }
}

/// Without the apostrophe that keeps a cell from being a formula.
fn unguarded(cell: &str) -> &str {
    match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(['\t', '\r', '\n']) => rest,
        _ => cell,
    }
}
