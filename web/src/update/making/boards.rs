//! Boards and bottoms of the drawers among the parts of the job.

use notchwright_core::drawer::PartRow;
use notchwright_core::units::{Mm, parse_length};

use super::drawer::{height, length};
use super::handed::{Became, Handed, bring, came, take_out};
use super::said;
use crate::notice::Notice;
use crate::state::fields::{part, stock};
use crate::state::{Entry, Form, Group, Id, Item, Making, Row};
use crate::update::edit::Outcome;

const SOURCE: &str = "drawers";

/// Adds all of them, or brings them up to date; none where there is no room for all.
pub(super) fn add(making: &mut Making, rows: &[PartRow]) -> Outcome {
    let before = making.clone();
    let mut became = Became::default();
    if bring_all(making, rows, &mut became).is_some() {
        return became.outcome(*making != before);
    }
    *making = before;
    said(Notice::Full)
}

fn bring_all(making: &mut Making, rows: &[PartRow], became: &mut Became) -> Option<()> {
    let (mut of_boards, mut parts) = (Vec::new(), Vec::new());
    for row in rows {
        let is_bottom = row.stock == "bottoms";
        // A board and a bottom of the same thickness are not cut from the same.
        let others: &[Id] = if is_bottom { &of_boards } else { &[] };
        let stock = stock_of(making, row, others, became)?;
        if !is_bottom {
            of_boards.push(stock);
        }
        let part = part_of(row, stock, &making.drawer);
        let handed = handed(&row.name, part);
        bring(making, Group::Parts, &handed, became)?;
        parts.push(handed);
    }
    take_out(making, SOURCE, &parts, became);
    Some(())
}

/// The stock that came for them before, or one of this thickness; it is added where there is neither.
fn stock_of(making: &mut Making, row: &PartRow, others: &[Id], became: &mut Became) -> Option<Id> {
    let form = |name: &str| {
        Form::default()
            .with(stock::NAME.name(), Entry::mm(name))
            .with(stock::THICKNESS.name(), length(row.thickness))
    };
    let name = capital(row.stock);
    let mut handed = handed(row.stock, form(&name));
    if came(making, Group::Stocks, &handed).is_none() {
        if let Some(stock) = as_thick(making, row.thickness, others) {
            return Some(stock);
        }
        handed.form = form(&free_name(making, &name));
    }
    bring(making, Group::Stocks, &handed, became)
}

fn as_thick(making: &Making, thickness: Mm, others: &[Id]) -> Option<Id> {
    let is_as_thick = |stock: &&Row| {
        let entry = stock.form.get(stock::THICKNESS.name());
        let read = entry.and_then(|entry| parse_length(&entry.text, entry.unit).ok());
        read.is_some_and(|measured| measured.is_same(thickness))
    };
    let mut stocks = making.stocks.items().iter();
    let found = stocks.find(|stock| is_as_thick(stock) && !others.contains(&stock.id()));
    found.map(Item::id)
}

/// The name, or the first with a number behind it that no stock has.
fn free_name(making: &Making, name: &str) -> String {
    let is_free = |name: &String| {
        let mut stocks = making.stocks.items().iter();
        !stocks.any(|stock| {
            stock
                .form
                .text(stock::NAME.name())
                .trim()
                .eq_ignore_ascii_case(name)
        })
    };
    let numbered = (2_u16..).map(|number| format!("{name} {number}"));
    let mut names = std::iter::once(name.to_owned()).chain(numbered);
    names.find(is_free).unwrap_or_default()
}

fn handed(key: &str, form: Form) -> Handed {
    Handed {
        source: SOURCE,
        key: key.to_owned(),
        form,
    }
}

fn part_of(row: &PartRow, stock: Id, drawer: &Form) -> Form {
    let width = match row.stock {
        "sides" | "fronts" | "backs" => height(row.width, drawer),
        _ => length(row.width),
    };
    let may_turn = if row.may_turn { "yes" } else { "" };
    Form::default()
        .with(part::NAME.name(), Entry::mm(&capital(&row.name)))
        .with(part::COUNT.name(), Entry::mm(&row.count.to_string()))
        .with(part::LENGTH.name(), length(row.length))
        .with(part::WIDTH.name(), width)
        .with(part::STOCK.name(), Entry::mm(&stock.to_string()))
        .with(part::MAY_TURN.name(), Entry::mm(may_turn))
}

/// The same with a capital letter.
fn capital(text: &str) -> String {
    let mut letters = text.chars();
    let first = letters.next().map(|first| first.to_ascii_uppercase());
    first.into_iter().chain(letters).collect()
}
