//! Changes of what is made. They come with the parts' part of the program: only [`apply`] may be called from
//! elsewhere, and only once that has come.

mod boards;
pub(super) mod drawer;
mod handed;
mod joints;
pub(super) mod sheet;
pub(super) mod sled;
mod table;

use notchwright_core::parts::Expression;
use notchwright_core::parts::tsv::{self, PartText};
use notchwright_core::units::Unit;

use super::edit::{Outcome, placed, said};
use crate::effect::Effect;
use crate::msg::MakingEdit;
use crate::notice::Notice;
use crate::state::fields::{self, Known, part};
use crate::state::{Entry, Field, Group, Id, Kind, Making, Row, Spot};
use table::{part_of, stock_called, stock_name};

/// Makes the change.
#[inline(never)]
pub(super) fn apply(making: &mut Making, edit: &MakingEdit, unit: Unit) -> Outcome {
    match edit {
        MakingEdit::Choose(spot, word) => making.enter(*spot, Entry::mm(word)),
        MakingEdit::Refer(spot, id) => making.enter(*spot, Entry::mm(&id.to_string())),
        MakingEdit::Add(group) => return add(making, *group, Row::default()),
        MakingEdit::Duplicate(group, id) => {
            let row = making.rows(*group).iter().find(|row| row.id == *id);
            if let Some(row) = row.cloned() {
                return add(making, *group, handed::own(row));
            }
        }
        MakingEdit::Remove(group, id) => {
            let list = making.list_mut(*group);
            if list.and_then(|list| list.remove(*id)).is_some() {
                return said(Notice::Removed(called(*group).to_owned()));
            }
        }
        MakingEdit::Tick(tick) => sheet::tick(making, *tick),
        MakingEdit::Paste(text) => return paste(making, text, unit),
    }
    Outcome::default()
}

fn called(group: Group) -> &'static str {
    match group {
        Group::Stocks => "The stock",
        Group::Sheets => "The sheet",
        Group::Measures => "The measurement",
        Group::Parts | Group::Drawer | Group::Cutting => "The part",
    }
}

fn add(making: &mut Making, group: Group, row: Row) -> Outcome {
    let id = making.list_mut(group).and_then(|list| list.push(row));
    placed(id.map(|id| Effect::Focus(name(group, id).id())))
}

fn name(group: Group, row: Id) -> Field {
    Field::Making(Spot {
        group,
        ..fields::part::NAME.spot(row)
    })
}

/// Adds the rows of a table as parts; a stock that is not there yet is added too.
fn paste(making: &mut Making, text: &str, unit: Unit) -> Outcome {
    let table = tsv::read(text);
    let mut added = 0;
    for row in table.rows {
        let stock = stock_called(making, &row.stock);
        let form = part_of(&row, stock, unit);
        let row = Row {
            form,
            ..Row::default()
        };
        if making.parts.push(row).is_none() {
            return said(Notice::Full);
        }
        added += 1;
    }
    let unread = table.problems.len();
    let says = match unread {
        0 => format!("Parts added: {added}."),
        _ => format!(
            "Parts added: {added}. Cells that could not be read: {unread}; what they leave out is marked."
        ),
    };
    said(Notice::HandedOver(says, unread > 0))
}

/// What is in a cell, as it is read where lengths are in `unit`: a sum that was typed in another says its own.
fn written(entry: &Entry, kind: Kind, unit: Unit) -> String {
    let shown = entry.shown(kind, unit);
    let is_foreign = kind == Kind::Sum && entry.unit != unit && shown == entry.text;
    let sum = is_foreign.then(|| Expression::read(&entry.text).ok());
    let stated = sum.flatten().map(|sum| sum.stated(entry.unit).to_string());
    stated.unwrap_or_else(|| shown.into_owned())
}

/// The parts as a spreadsheet takes them.
#[inline(never)]
pub(super) fn table(making: &Making, unit: Unit) -> String {
    let row = |row: &Row| {
        let text = |field: Known| {
            let entry = row.form.get(field.name());
            entry.map_or_else(String::new, |entry| written(entry, field.kind(), unit))
        };
        let id = text(part::STOCK).parse().map(Id).ok();
        let mut stocks = making.stocks.items().iter().enumerate();
        let stock = stocks.find(|(_, stock)| Some(stock.id) == id);
        PartText {
            name: text(part::NAME),
            count: text(part::COUNT),
            length: text(part::LENGTH),
            width: text(part::WIDTH),
            stock: stock.map_or_else(String::new, |(place, row)| stock_name(place, row)),
            may_turn: text(part::MAY_TURN) == "yes",
            trim: text(part::TRIM),
            later: text(part::LATER) == "later",
        }
    };
    let rows: Vec<_> = making.parts.items().iter().map(row).collect();
    tsv::write(&rows)
}
