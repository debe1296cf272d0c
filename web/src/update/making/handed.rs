//! Rows that come from elsewhere, from the drawers or the sled, and come again when those have changed.
//!
//! Each bears a mark: which row of its source it is, and what it was given. A cell that still holds that is brought up
//! to date; what somebody has typed over it stays.

use super::said;
use crate::notice::Notice;
use crate::state::fields::{Known, measure, part, stock};
use crate::state::{Entry, Form, Group, Id, Item, Making, Row, Spot};
use crate::update::edit::Outcome;

/// A row that comes.
pub(super) struct Handed {
    /// Where it comes from, and which row of that it is: no other has both.
    pub(super) source: &'static str,
    pub(super) key: String,
    pub(super) form: Form,
}

/// What became of rows that came.
#[derive(Default)]
pub(super) struct Became {
    added: usize,
    changed: usize,
    removed: usize,
    /// Cells that something else came for than was typed there.
    kept: Vec<String>,
    /// Rows that come no longer, and in which something was typed.
    left: Vec<String>,
}

/// Parts the texts of a mark: none of them holds it, being names, numbers and sums.
const BETWEEN: char = ';';

/// The cells of a row that are kept up to date.
fn cells(group: Group) -> &'static [Known] {
    match group {
        Group::Stocks => &[stock::THICKNESS],
        Group::Measures => &[measure::VALUE],
        Group::Parts => &[
            part::NAME,
            part::COUNT,
            part::LENGTH,
            part::WIDTH,
            part::STOCK,
            part::MAY_TURN,
        ],
        Group::Drawer | Group::Cutting | Group::Sheets => &[],
    }
}

/// The fields of the mark and of the name: they have the same names in every list.
const MARK: &str = part::FROM.name();
const NAME: &str = part::NAME.name();

fn mark(group: Group, handed: &Handed) -> String {
    let mut mark = format!("{}{BETWEEN}{}", handed.source, handed.key);
    for cell in cells(group) {
        mark.push(BETWEEN);
        mark.push_str(handed.form.text(cell.name()));
    }
    mark
}

/// Source and key of a row that came, and what it was given.
fn read_mark(row: &Row) -> Option<(&str, &str, impl Iterator<Item = &str>)> {
    let mut texts = row.form.text(MARK).split(BETWEEN);
    Some((texts.next()?, texts.next()?, texts))
}

/// A copy of a row is its maker's own: nothing comes for it again.
pub(super) fn own(mut row: Row) -> Row {
    row.form.set(MARK, Entry::default());
    row
}

/// The row that has come before under the same key.
pub(super) fn came(making: &Making, group: Group, handed: &Handed) -> Option<Id> {
    let is_it = |row: &&Row| {
        read_mark(row).is_some_and(|(source, key, _)| source == handed.source && key == handed.key)
    };
    let mut rows = making.rows(group).iter();
    rows.find(is_it).map(Item::id)
}

/// Brings a row up to date that has come before, or adds it; nothing happens where the list is full.
pub(super) fn bring(
    making: &mut Making,
    group: Group,
    handed: &Handed,
    became: &mut Became,
) -> Option<Id> {
    if let Some(id) = came(making, group, handed) {
        update(making, group, id, handed, became);
        return Some(id);
    }
    let mark = Entry::mm(&mark(group, handed));
    let form = handed.form.clone().with(MARK, mark);
    became.added += usize::from(group == Group::Parts);
    making.list_mut(group)?.push(Row {
        form,
        ..Row::default()
    })
}

/// The same for rows that go by their names: where somebody has one of this name already, that is meant, and stays.
pub(super) fn bring_called(
    making: &mut Making,
    group: Group,
    handed: &Handed,
    became: &mut Became,
) -> Option<Id> {
    let is_called = |row: &&Row| {
        let name = row.form.text(NAME).trim();
        row.form.text(MARK).is_empty() && name.eq_ignore_ascii_case(handed.form.text(NAME))
    };
    let own = making.rows(group).iter().find(is_called);
    let Some(own) = own else {
        return bring(making, group, handed, became);
    };
    for cell in cells(group) {
        if own.form.text(cell.name()) != handed.form.text(cell.name()) {
            became.kept.push(cell_of(own, *cell));
        }
    }
    Some(own.id)
}

fn update(making: &mut Making, group: Group, id: Id, handed: &Handed, became: &mut Became) {
    let Some(row) = making.rows(group).iter().find(|row| row.id == id).cloned() else {
        return;
    };
    let given = read_mark(&row).into_iter().flat_map(|(.., given)| given);
    let mut has_changed = false;
    for (cell, given) in cells(group).iter().zip(given) {
        let (now, new) = (row.form.text(cell.name()), handed.form.text(cell.name()));
        if now == new || given == new {
            continue;
        }
        if now == given {
            let entry = handed.form.get(cell.name());
            making.enter(cell.spot(id), entry.cloned().unwrap_or_default());
            has_changed = true;
        } else {
            became.kept.push(cell_of(&row, *cell));
        }
    }
    let spot = Spot {
        group,
        ..part::FROM.spot(id)
    };
    making.enter(spot, Entry::mm(&mark(group, handed)));
    became.changed += usize::from(has_changed);
}

/// `Drawer side, width`.
fn cell_of(row: &Row, cell: Known) -> String {
    let called = called(row);
    format!("{called}, {}", cell.label().to_ascii_lowercase())
}

fn called(row: &Row) -> String {
    row.form.text(NAME).trim().to_owned()
}

/// Takes out the parts of a source that came and come no longer; those that somebody has changed stay as their own.
pub(super) fn take_out(making: &mut Making, source: &str, still: &[Handed], became: &mut Became) {
    let mut gone = Vec::new();
    for row in making.rows(Group::Parts) {
        let Some((from, key, given)) = read_mark(row) else {
            continue;
        };
        if from != source || still.iter().any(|handed| handed.key == key) {
            continue;
        }
        let cells = cells(Group::Parts).iter();
        let is_given = cells
            .zip(given)
            .all(|(cell, given)| row.form.text(cell.name()) == given);
        let is_alone = [part::TRIM, part::LATER]
            .iter()
            .all(|cell| row.form.text(cell.name()).is_empty());
        gone.push((row.id, is_given && is_alone));
    }
    for (id, is_as_given) in gone {
        if is_as_given {
            making.parts.remove(id);
            became.removed += 1;
        } else {
            let name = making.parts.get(id).map(called);
            became.left.extend(name);
            making.parts.change(id, |row| *row = own(row.clone()));
        }
    }
}

impl Became {
    /// What is said of it; `is_change` whether there is anything to undo.
    pub(super) fn outcome(self, is_change: bool) -> Outcome {
        let counts = [
            ("Parts added: ", self.added),
            ("Brought up to date: ", self.changed),
            ("Taken out, being no longer needed: ", self.removed),
        ];
        let counted = counts.into_iter().filter(|(_, count)| *count > 0);
        let counted = counted.map(|(says, count)| format!("{says}{count}."));
        let listed = [
            ("What you typed stays: ", &self.kept),
            (
                "No longer needed, but left because you changed it: ",
                &self.left,
            ),
        ];
        let listed = listed.into_iter().filter(|(_, names)| !names.is_empty());
        let listed = listed.map(|(says, names)| format!("{says}{}.", in_short(names)));
        let all: Vec<_> = counted.chain(listed).collect();
        let says = if all.is_empty() {
            "All these parts are there, and up to date.".to_owned()
        } else {
            all.join(" ")
        };
        let warns = !self.kept.is_empty() || !self.left.is_empty();
        said(if is_change {
            Notice::HandedOver(says, warns)
        } else {
            Notice::Unchanged(says)
        })
    }
}

/// The first few of them.
fn in_short(names: &[String]) -> String {
    const SHOWN: usize = 4;
    let shown: Vec<_> = names.iter().take(SHOWN).map(String::as_str).collect();
    let shown = shown.join("; ");
    match names.len().checked_sub(SHOWN) {
        None | Some(0) => shown,
        Some(more) => format!("{shown}; and {more} more"),
    }
}
