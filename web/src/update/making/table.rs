//! Rows as they stand in a table.

use notchwright_core::parts::tsv::PartText;
use notchwright_core::units::Unit;

use crate::state::fields::{part, stock};
use crate::state::{Entry, Form, Id, Kind, Making, Row};

/// What a stock goes by in a table: its place in the list where it has no name.
pub(super) fn stock_name(place: usize, row: &Row) -> String {
    match row.form.text(stock::NAME.name()).trim() {
        "" => format!("Stock {}", place + 1),
        name => name.to_owned(),
    }
}

/// The stock of this name, upper and lower case alike, which is added where there is none.
pub(super) fn stock_called(making: &mut Making, name: &str) -> Option<Id> {
    let name = name.trim();
    if name.is_empty() {
        return None;
    }
    let mut stocks = making.stocks.items().iter().enumerate();
    let known = stocks.find(|(place, row)| stock_name(*place, row).eq_ignore_ascii_case(name));
    let known = known.map(|(_, row)| row.id);
    known.or_else(|| {
        making.stocks.push(Row {
            form: Form::default().with(stock::NAME.name(), Entry::mm(name)),
            ..Row::default()
        })
    })
}

/// A part as it stands in a table.
pub(super) fn part_of(text: &PartText, stock: Option<Id>, unit: Unit) -> Form {
    let word = |is: bool, word: &'static str| if is { word } else { "" };
    let stock = stock.map(|id| id.to_string());
    let texts = [
        (part::NAME, text.name.as_str()),
        (part::COUNT, &text.count),
        (part::LENGTH, &text.length),
        (part::WIDTH, &text.width),
        (part::STOCK, stock.as_deref().unwrap_or_default()),
        (part::MAY_TURN, word(text.may_turn, "yes")),
        (part::TRIM, &text.trim),
        (part::LATER, word(text.later, "later")),
    ];
    texts
        .into_iter()
        .fold(Form::default(), |form, (field, text)| {
            let unit = match field.kind() {
                Kind::Sum => unit,
                _ => Unit::Mm,
            };
            form.with(field.name(), Entry::new(text, unit))
        })
}
