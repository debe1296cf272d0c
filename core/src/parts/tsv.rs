//! Parts as a table of tab-separated cells: what a spreadsheet puts on the clipboard, and takes from it.
//!
//! By hand: csv-core 0.1 weighs 5 KB compressed, several times what this does; the tests hold it against the csv crate.

use super::read::MOST_PARTS;
use super::request::{DimensionRequest, PartRequest};
use crate::check::Checker;
use crate::given::Given;
use crate::message;
use crate::problem::{Code, Problem};
use crate::units::read_number;

/// A row of a parts table, its texts as they were typed.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct PartText {
    /// What the part is called.
    pub name: String,
    /// How many are needed.
    pub count: String,
    /// Length, along the grain.
    pub length: String,
    /// Width, across the grain.
    pub width: String,
    /// Name of its stock.
    pub stock: String,
    /// Whether it may be turned across the grain.
    pub may_turn: bool,
    /// What it is cut larger by on each side.
    pub trim: String,
    /// Whether it is cut later, to fit.
    pub later: bool,
}

impl PartText {
    /// The row as a part of a request; blank cells are left out.
    #[must_use]
    pub fn request(&self) -> PartRequest {
        let text = |cell: &str| match cell.trim() {
            "" => Given::Missing,
            _ => Given::Value(cell.to_owned()),
        };
        let dimension = |cell: &str| match text(cell) {
            Given::Value(text) => Given::Value(DimensionRequest::Text(text)),
            _ => Given::Missing,
        };
        let count = match text(&self.count) {
            Given::Value(text) => read_number(text.trim())
                .map_or_else(|| Given::Wrong(format!("the text «{text}»")), Given::Value),
            _ => Given::Missing,
        };
        PartRequest {
            name: self.name.clone().into(),
            number: Given::Missing,
            count,
            length: dimension(&self.length),
            width: dimension(&self.width),
            stock: text(&self.stock),
            may_turn: self.may_turn.into(),
            trim: dimension(&self.trim),
            later: self.later.into(),
        }
    }
}

/// A table that was read.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Table {
    /// Its rows; blank ones are left out.
    pub rows: Vec<PartText>,
    /// Cells that could not be taken, by the row they are in: `parts.3.mayTurn`.
    pub problems: Vec<Problem>,
}

#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Column {
    Name,
    Count,
    Length,
    Width,
    Stock,
    MayTurn,
    Trim,
    Later,
}

/// Columns in the order they are written, with the words that may stand over them; the first is written.
const COLUMNS: [(Column, [&str; 3]); 8] = [
    (Column::Name, ["Name", "part", "description"]),
    (Column::Count, ["Count", "quantity", "qty"]),
    (Column::Length, ["Length", "long", "l"]),
    (Column::Width, ["Width", "wide", "w"]),
    (Column::Stock, ["Stock", "material", "sheet"]),
    (Column::MayTurn, ["May turn", "turn", "mayTurn"]),
    (Column::Trim, ["Trim", "allowance", "trim allowance"]),
    (Column::Later, ["Later", "cut later", "to fit"]),
];

/// Reads a pasted table: columns as they are written, or as a first row of column words says.
///
/// Rows end with a line feed, a carriage return or both; a cell that begins with a quote mark ends at the next one
/// that is not doubled, and may hold tabs and line ends.
#[must_use]
pub fn read(text: &str) -> Table {
    let mut table = Table::default();
    let mut check = Checker::new(&mut table.problems);
    let mut rows = cells(text);
    rows.retain(|row| row.iter().any(|cell| !cell.trim().is_empty()));
    let columns = match rows.first().and_then(|first| header(first, &mut check)) {
        Some(columns) => {
            rows.remove(0);
            columns
        }
        None => COLUMNS.iter().map(|(column, _)| Some(*column)).collect(),
    };
    if rows.len() > MOST_PARTS {
        let message = message![
            "At most ",
            MOST_PARTS,
            " belong here; ",
            rows.len(),
            " were given."
        ];
        check.refuse("parts", Code::TooLarge, message, Some(MOST_PARTS as f64));
    }
    let mut check = check.at("parts");
    let row =
        |(i, cells): (usize, Vec<String>)| row(cells, &columns, &mut check.at(&i.to_string()));
    table.rows = rows
        .into_iter()
        .take(MOST_PARTS)
        .enumerate()
        .map(row)
        .collect();
    table
}

/// The columns that a first row of column words names; at least two make it one. Sums may be called like columns:
/// where one stands twice, or beside a number, the row is a part.
fn header(row: &[String], check: &mut Checker<'_>) -> Option<Vec<Option<Column>>> {
    let columns: Vec<_> = row.iter().map(|cell| column(cell)).collect();
    let times = |column: &Column| columns.iter().flatten().filter(|it| *it == column).count();
    let named = || COLUMNS.iter().map(|(column, _)| times(column));
    let is_named = named().filter(|times| *times > 0).count() >= 2;
    let is_twice = named().any(|times| times > 1);
    let is_number = |cell: &String| cell.trim_start().starts_with(|c: char| c.is_ascii_digit());
    if !is_named || is_twice || row.iter().any(is_number) {
        return None;
    }
    for (i, (cell, column)) in row.iter().zip(&columns).enumerate() {
        if column.is_none() && !cell.trim().is_empty() {
            let message = message!["No column is called «", cell, "»: it is left out."];
            check
                .at("columns")
                .refuse(&i.to_string(), Code::UnknownWord, message, None);
        }
    }
    Some(columns)
}

fn column(word: &str) -> Option<Column> {
    let is_meant = |known: &str| known.eq_ignore_ascii_case(word.trim());
    let found = COLUMNS
        .iter()
        .find(|(_, words)| words.iter().any(|known| is_meant(known)));
    found.map(|(column, _)| *column)
}

fn row(cells: Vec<String>, columns: &[Option<Column>], check: &mut Checker<'_>) -> PartText {
    let mut part = PartText::default();
    for (i, cell) in cells.into_iter().enumerate() {
        let cell = unguarded(cell);
        match columns.get(i) {
            None if !cell.trim().is_empty() => {
                let message = message!["«", cell, "» is in no column: it is left out."];
                check.refuse("", Code::UnknownField, message, None);
            }
            None | Some(None) => {}
            Some(Some(Column::Name)) => part.name = cell,
            Some(Some(Column::Count)) => part.count = cell,
            Some(Some(Column::Length)) => part.length = cell,
            Some(Some(Column::Width)) => part.width = cell,
            Some(Some(Column::Stock)) => part.stock = cell,
            Some(Some(Column::Trim)) => part.trim = cell,
            Some(Some(Column::MayTurn)) => part.may_turn = truth("mayTurn", &cell, check),
            Some(Some(Column::Later)) => part.later = truth("later", &cell, check),
        }
    }
    part
}

fn truth(field: &str, cell: &str, check: &mut Checker<'_>) -> bool {
    let is_among = |words: &[&str]| {
        words
            .iter()
            .any(|word| word.eq_ignore_ascii_case(cell.trim()))
    };
    let yes = is_among(&["yes", "y", "x", "true", "1"]);
    if !yes && !is_among(&["", "no", "n", "false", "0"]) {
        let message = message!["Yes or no belongs here, not «", cell, "»."];
        check.refuse(field, Code::UnknownWord, message, None);
    }
    yes
}

fn cells(text: &str) -> Vec<Vec<String>> {
    let text = text.strip_prefix('\u{FEFF}').unwrap_or(text);
    let mut chars = text.chars().peekable();
    let (mut rows, mut row, mut cell) = (Vec::new(), Vec::new(), String::new());
    let (mut quoted, mut fresh) = (false, true);
    while let Some(c) = chars.next() {
        match c {
            '"' if quoted && chars.peek() == Some(&'"') => cell.extend(chars.next()),
            '"' if quoted || fresh => quoted = !quoted,
            '\t' | '\n' | '\r' if !quoted => {
                if c == '\r' {
                    chars.next_if_eq(&'\n');
                }
                row.push(core::mem::take(&mut cell));
                if c != '\t' {
                    rows.push(core::mem::take(&mut row));
                }
                fresh = true;
                continue;
            }
            c => cell.push(c),
        }
        fresh = false;
    }
    row.push(cell);
    rows.push(row);
    rows
}

/// Writes rows with a first row of column words; [`read`] reads them back.
///
/// A cell that a spreadsheet could take for a formula gets an apostrophe before it: one that begins with = + - @, their
/// wide forms, a tab or a line end (OWASP's note on CSV injection, from memory).
#[must_use]
pub fn write(rows: &[PartText]) -> String {
    let mut text = String::new();
    let words = COLUMNS.map(|(_, [word, ..])| word.to_owned());
    for row in [words].into_iter().chain(rows.iter().map(written)) {
        for (i, cell) in row.iter().enumerate() {
            text.push_str(if i > 0 { "\t" } else { "" });
            push_cell(cell, &mut text);
        }
        text.push('\n');
    }
    text
}

fn written(row: &PartText) -> [String; 8] {
    let truth = |truth: bool| if truth { "yes" } else { "" }.to_owned();
    [
        row.name.clone(),
        row.count.clone(),
        row.length.clone(),
        row.width.clone(),
        row.stock.clone(),
        truth(row.may_turn),
        row.trim.clone(),
        truth(row.later),
    ]
}

fn push_cell(cell: &str, text: &mut String) {
    let guard = if cell.starts_with(is_guarded) {
        "'"
    } else {
        ""
    };
    let needs_quotes = cell.starts_with('"') || cell.contains(['\t', '\n', '\r']);
    if needs_quotes {
        let doubled = cell.replace('"', "\"\"");
        text.extend(["\"", guard, &doubled, "\""]);
    } else {
        text.extend([guard, cell]);
    }
}

fn is_guarded(c: char) -> bool {
    matches!(
        c,
        '=' | '+' | '-' | '@' | '＝' | '＋' | '－' | '＠' | '\t' | '\n' | '\r' | '\''
    )
}

fn unguarded(cell: String) -> String {
    match cell.strip_prefix('\'') {
        Some(rest) if rest.starts_with(is_guarded) => rest.to_owned(),
        _ => cell,
    }
}

#[cfg(test)]
mod tests;
