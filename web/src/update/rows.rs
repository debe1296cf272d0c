//! Rows of what is made, as they come from elsewhere.

use notchwright_core::parts::SledParts;
use notchwright_core::parts::tsv::PartText;
use notchwright_core::units::Unit;

use super::edit::{Outcome, said};
use crate::notice::Notice;
use crate::state::fields::{measure, part, stock};
use crate::state::{Entry, Form, Id, Kind, Making, Row};

/// The stock of this name.
pub(crate) fn stock_called(making: &mut Making, name: &str) -> Option<Id> {
    let name = name.trim();
    if name.is_empty() {
        return None;
    }
    let is_called = |row: &&Row| row.form.text(stock::NAME.name()).trim() == name;
    let known = making.stocks.items().iter().find(is_called);
    let form = || Form::default().with(stock::NAME.name(), Entry::mm(name));
    let known = known.map(|row| row.id);
    known.or_else(|| {
        making.stocks.push(Row {
            form: form(),
            ..Row::default()
        })
    })
}

/// A part as it stands in a table.
pub(crate) fn part_of(text: &PartText, stock: Option<Id>, unit: Unit) -> Row {
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
    let form = texts
        .into_iter()
        .fold(Form::default(), |form, (field, text)| {
            let unit = match field.kind() {
                Kind::Sum => unit,
                _ => Unit::Mm,
            };
            form.with(field.name(), Entry::new(text, unit))
        });
    Row {
        form,
        ..Row::default()
    }
}

/// Adds the parts of a sled, with the stock and the measurements that they need.
pub(super) fn add_sled(making: &mut Making, sled: &SledParts, unit: Unit) -> Outcome {
    for (name, thickness) in &sled.stocks {
        if let Some(id) = stock_called(making, name) {
            making.enter(stock::THICKNESS.spot(id), Entry::of(*thickness, unit));
        }
    }
    for (name, length) in &sled.measures {
        let is_called = |row: &&Row| row.form.text(measure::NAME.name()) == *name;
        let known = making.measures.items().iter().find(is_called);
        let known = known.map(|row| row.id);
        let id = known.or_else(|| making.measures.push(Row::default()));
        if let Some(id) = id {
            making.enter(measure::NAME.spot(id), Entry::mm(name));
            making.enter(measure::VALUE.spot(id), Entry::of(*length, unit));
        }
    }
    let mut added = 0;
    for text in &sled.parts {
        let stock = stock_called(making, &text.stock);
        if making.parts.push(part_of(text, stock, unit)).is_none() {
            return said(Notice::Full);
        }
        added += 1;
    }
    said(Notice::Pasted(added, 0))
}
