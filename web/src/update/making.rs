//! Changes of what is made. They come with the parts' part of the program: only [`apply`] may be called from
//! elsewhere, and only once that has come.

use super::edit::{Outcome, placed, said};
use crate::effect::Effect;
use crate::msg::MakingEdit;
use crate::notice::Notice;
use crate::state::{Entry, Field, Group, Id, Kind, Making, Row, Spot};

/// Makes the change.
#[inline(never)]
pub(super) fn apply(making: &mut Making, edit: &MakingEdit) -> Outcome {
    match edit {
        MakingEdit::Choose(spot, word) => making.enter(*spot, Entry::mm(word)),
        MakingEdit::Refer(spot, id) => making.enter(*spot, Entry::mm(&id.to_string())),
        MakingEdit::Add(group) => return add(making, *group, Row::default()),
        MakingEdit::Duplicate(group, id) => {
            let row = making.rows(*group).iter().find(|row| row.id == *id);
            if let Some(row) = row.cloned() {
                return add(making, *group, row);
            }
        }
        MakingEdit::Remove(group, id) => {
            let list = making.list_mut(*group);
            if list.and_then(|list| list.remove(*id)).is_some() {
                return said(Notice::Removed(called(*group).to_owned()));
            }
        }
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
        row,
        name: "name",
        kind: Kind::Name,
    })
}
