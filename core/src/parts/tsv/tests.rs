use proptest::prelude::*;

use super::{PartText, read, write};
use crate::problem::Code;

fn row(cells: [&str; 5]) -> PartText {
    let [name, count, length, width, stock] = cells.map(str::to_owned);
    PartText {
        name,
        count,
        length,
        width,
        stock,
        ..PartText::default()
    }
}

#[test]
fn a_pasted_table_is_read_in_its_own_order() {
    let side = PartText {
        may_turn: true,
        trim: "2".into(),
        ..row(["Side", "2", "19,05", "=300-2*t", "ply"])
    };
    for text in [
        "Side\t2\t19,05\t=300-2*t\tply\tyes\t2",
        "\u{FEFF}Side\t2\t19,05\t=300-2*t\tply\tX\t2\t\r\n\r\n",
        "Name\tCount\tLength\tWidth\tStock\tMay turn\tTrim\rSide\t2\t19,05\t=300-2*t\tply\ty\t2",
        "QTY\tmaterial\tlength\twidth\tallowance\tturn\tpart\n2\tply\t19,05\t=300-2*t\t2\t1\tSide\n\t\t\t",
    ] {
        let table = read(text);
        assert_eq!(table.rows, core::slice::from_ref(&side), "{text}");
        assert_eq!(table.problems, []);
    }
}

#[test]
fn parts_whose_sums_are_column_words_are_no_header() {
    for (text, length, width) in [
        ("Shelf\t2\tlong\twide\tply", "long", "wide"),
        ("Shelf\t\tl\tl\tply", "l", "l"),
    ] {
        let table = read(text);
        assert_eq!(table.problems, [], "{text}");
        let [row] = table.rows.as_slice() else {
            panic!("{table:?}")
        };
        assert_eq!((row.length.as_str(), row.width.as_str()), (length, width));
    }
}

#[test]
fn quotes_hold_line_ends_and_marks_of_inches_stay() {
    let table = read("\"Side,\r\nleft\"\t1\t11 1/2\"\t\"1' 2\"\"\"\t\"ply\"\n");
    assert_eq!(
        table.rows,
        [row(["Side,\r\nleft", "1", "11 1/2\"", "1' 2\"", "ply"])]
    );
}

#[test]
fn what_cannot_be_taken_is_said_by_its_cell() {
    let table = read("Name\tNotes\tLength\tLater\nSide\toak\t300\tmaybe\nBack\t\t200\tno\tmore");
    let problems: Vec<_> = table
        .problems
        .iter()
        .map(|p| (p.field.as_str(), p.code))
        .collect();
    assert_eq!(
        problems,
        [
            ("columns.1", Code::UnknownWord),
            ("parts.0.later", Code::UnknownWord),
            ("parts.1", Code::UnknownField),
        ]
    );
    assert_eq!(table.rows.len(), 2);
    let table = read(&"Side\n".repeat(501));
    assert_eq!((table.rows.len(), table.problems.len()), (500, 1));
}

#[test]
fn no_written_cell_is_a_formula() {
    for cell in ["=1+1", "+1", "-1", "@a", "＝1", "\t=1", "\r=1", "'=1"] {
        let written = write(&[row([cell, cell, cell, cell, cell])]);
        let line = written.split_once('\n').unwrap().1;
        assert!(line.starts_with('\'') || line.starts_with("\"'"), "{line}");
    }
}

const NASTY: &str = "[-=+@'\"\t\r\n a1＝½*]{0,6}|\\PC{0,8}";

prop_compose! {
    fn a_row()(cells in prop::array::uniform6(NASTY), may_turn: bool, later: bool) -> PartText {
        let [name, count, length, width, stock, trim] = cells;
        PartText { name, count, length, width, stock, may_turn, trim, later }
    }
}

fn is_blank(row: &PartText) -> bool {
    let written = super::written(row);
    written.iter().all(|cell| cell.trim().is_empty())
}

proptest! {
    #[test]
    fn what_is_written_is_read_back(rows in prop::collection::vec(a_row(), 0..6)) {
        let rows: Vec<_> = rows.into_iter().filter(|row| !is_blank(row)).collect();
        let table = read(&write(&rows));
        prop_assert_eq!(table.problems, []);
        prop_assert_eq!(table.rows, rows);
    }

    #[test]
    fn any_text_is_a_table(text in "(?s).{0,80}|[\t\r\n\"'a=]{0,60}") {
        for row in read(&text).rows {
            prop_assert!(!is_blank(&row) || text.contains('\''));
        }
    }
}
