//! What is made besides joints: drawers, numbered parts, and the sheets that they are cut from.
//!
//! Nothing here knows what its fields mean. What does is in a part of the program that comes later, and names
//! them; a first answer only has to keep what was typed.

use std::rc::Rc;

use notchwright_core::plain::Plain;

use super::entry::Entry;
use super::field::Kind;
use super::id::Id;
use super::list::{Item, List};
use super::stored::{Stored, stored};
pub use ticks::{Mark, Ticks};

pub mod fields;
mod ticks;

/// Texts by the names of their fields. A field that nothing was typed into is not there.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Form(Rc<Vec<(String, Entry)>>);

/// More fields than any form has.
const MOST_FIELDS: usize = 64;
/// Bytes: longer than the name of any field.
const LONGEST_NAME: usize = 24;

impl Form {
    /// What was typed into a field, if anything was.
    #[must_use]
    pub fn get(&self, name: &str) -> Option<&Entry> {
        self.0
            .iter()
            .find(|(field, _)| field == name)
            .map(|(_, entry)| entry)
    }

    /// The text of a field; blank where nothing was typed.
    #[must_use]
    pub fn text(&self, name: &str) -> &str {
        self.get(name).map_or("", |entry| entry.text.as_str())
    }

    /// Puts a text into a field; a blank one is taken out.
    pub fn set(&mut self, name: &str, entry: Entry) {
        let fields = Rc::make_mut(&mut self.0);
        fields.retain(|(field, _)| field != name);
        if !entry.text.is_empty() && fields.len() < MOST_FIELDS && name.len() <= LONGEST_NAME {
            // In the order of their names, so that two forms that say the same are the same.
            let place = fields.partition_point(|(field, _)| field.as_str() < name);
            fields.insert(place, (name.to_owned(), entry));
        }
    }

    /// The same with a text in one of its fields.
    #[must_use]
    pub fn with(mut self, name: &str, entry: Entry) -> Self {
        self.set(name, entry);
        self
    }
}

impl Stored for Form {
    fn write(&self) -> Plain {
        let fields = self.0.iter();
        Plain::Object(
            fields
                .map(|(name, entry)| (name.clone(), entry.write()))
                .collect(),
        )
    }

    fn read(&mut self, plain: &Plain) -> bool {
        let Plain::Object(fields) = plain else {
            return false;
        };
        for (name, plain) in fields {
            let mut entry = Entry::default();
            if entry.read(plain) {
                self.set(name, entry);
            }
        }
        true
    }

    fn is_usual(&self) -> bool {
        self.0.is_empty()
    }
}

stored! {
    /// One of several alike.
    pub struct Row {
        /// Which one.
        pub id: Id = "id",
        /// Its fields.
        pub form: Form = "is",
    }
}

impl Item for Row {
    const MOST: usize = 500;

    fn id(&self) -> Id {
        self.id
    }

    fn with_id(self, id: Id) -> Self {
        Self { id, ..self }
    }
}

stored! {
    /// What a job is made of.
    pub struct Making {
        /// A box or a chest of drawers.
        pub drawer: Form = "drawer",
        /// How sheets are cut up.
        pub cutting: Form = "cutting",
        /// Boards and sheets that parts are cut from.
        pub stocks: List<Row> = "stocks",
        /// Sheets and off-cuts that are there.
        pub sheets: List<Row> = "sheets",
        /// Lengths with a name, which parts are measured by.
        pub measures: List<Row> = "measures",
        /// Numbered parts.
        pub parts: List<Row> = "parts",
    }
}

/// A form, or a list of them.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Group {
    /// The box or chest of drawers.
    Drawer,
    /// How sheets are cut up.
    Cutting,
    /// What parts are cut from.
    Stocks,
    /// Sheets and off-cuts.
    Sheets,
    /// Lengths with a name.
    Measures,
    /// Parts.
    Parts,
}

/// One field of a form.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub struct Spot {
    /// Where the form is.
    pub group: Group,
    /// Which row of a list; 0 for a form that is none.
    pub row: Id,
    /// The field.
    pub name: &'static str,
    /// What it is called in the page.
    pub label: &'static str,
    /// What belongs into it.
    pub kind: Kind,
}

impl Group {
    /// The word for it in ids and requests.
    #[must_use]
    pub fn word(self) -> &'static str {
        match self {
            Self::Drawer => "drawer",
            Self::Cutting => "cutting",
            Self::Stocks => "stock",
            Self::Sheets => "sheet",
            Self::Measures => "measure",
            Self::Parts => "part",
        }
    }
}

impl Spot {
    /// The id of its input.
    pub(super) fn id(self) -> String {
        let Self {
            group, row, name, ..
        } = self;
        match row {
            Id(0) => format!("{}-{name}", group.word()),
            row => format!("{}-{row}-{name}", group.word()),
        }
    }
}

impl Making {
    /// The rows of a list; none of a form that is no list.
    #[must_use]
    pub fn rows(&self, group: Group) -> &[Row] {
        match group {
            Group::Drawer | Group::Cutting => &[],
            Group::Stocks => self.stocks.items(),
            Group::Sheets => self.sheets.items(),
            Group::Measures => self.measures.items(),
            Group::Parts => self.parts.items(),
        }
    }

    /// A list, to be changed.
    pub(crate) fn list_mut(&mut self, group: Group) -> Option<&mut List<Row>> {
        Some(match group {
            Group::Drawer | Group::Cutting => return None,
            Group::Stocks => &mut self.stocks,
            Group::Sheets => &mut self.sheets,
            Group::Measures => &mut self.measures,
            Group::Parts => &mut self.parts,
        })
    }

    fn form(&self, group: Group, row: Id) -> Option<&Form> {
        match group {
            Group::Drawer => Some(&self.drawer),
            Group::Cutting => Some(&self.cutting),
            _ => {
                let mut rows = self.rows(group).iter();
                rows.find(|other| other.id == row).map(|row| &row.form)
            }
        }
    }

    /// What was typed; none where nothing was, or where the row is gone.
    #[must_use]
    pub fn entry(&self, spot: Spot) -> Option<&Entry> {
        self.form(spot.group, spot.row)?.get(spot.name)
    }

    /// Puts a text into a field; nothing happens where the row is gone.
    pub fn enter(&mut self, spot: Spot, entry: Entry) {
        let form = match spot.group {
            Group::Drawer => Some(&mut self.drawer),
            Group::Cutting => Some(&mut self.cutting),
            group => self
                .list_mut(group)
                .and_then(|list| list.get_mut(spot.row))
                .map(|row| &mut row.form),
        };
        let Some(form) = form else { return };
        if spot.group == Group::Stocks && spot.name == fields::stock::THICKNESS.name() {
            remember_former(form, &entry);
        }
        form.set(spot.name, entry);
    }

    /// Whoever types a first measurement on measures nothing anew: `began` is what was there before.
    pub(crate) fn settle_first(&mut self, spot: Spot, began: &Self) {
        let [thickness, former] =
            [fields::stock::THICKNESS, fields::stock::FORMER].map(fields::Known::name);
        if spot.group != Group::Stocks || spot.name != thickness {
            return;
        }
        let was_blank = began
            .form(spot.group, spot.row)
            .is_some_and(|stock| stock.text(thickness).is_empty() && stock.text(former).is_empty());
        if was_blank {
            self.stocks
                .change(spot.row, |row| row.form.set(former, Entry::default()));
        }
    }
}

/// A stock that is measured anew goes on knowing what it was, until somebody settles that.
fn remember_former(stock: &mut Form, now: &Entry) {
    let former = fields::stock::FORMER.name();
    match stock.get(former) {
        Some(was) if was == now => stock.set(former, Entry::default()),
        Some(_) => {}
        None => {
            let was = stock.get(fields::stock::THICKNESS.name()).cloned();
            stock.set(former, was.unwrap_or_default());
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn text(text: &str) -> Plain {
        Plain::Text(text.to_owned())
    }

    #[test]
    fn what_was_typed_is_kept_and_what_is_blank_is_not() {
        let form = Form::default()
            .with("width", Entry::mm("300 - 2*t"))
            .with("name", Entry::mm("Side"));
        assert_eq!(form.text("width"), "300 - 2*t");
        let blank = form.clone().with("width", Entry::default());
        assert_eq!(blank.get("width"), None);
        let again = Form::default()
            .with("name", Entry::mm("Side"))
            .with("width", Entry::mm("300 - 2*t"));
        assert_eq!(form, again);
    }

    #[test]
    fn a_form_is_read_as_it_was_written_and_no_larger_than_any() {
        let form = Form::default().with("name", Entry::mm("Side"));
        let mut read = Form::default();
        assert!(read.read(&form.write()));
        assert_eq!(read, form);
        let many = (0..99).map(|number| (format!("f{number}"), text("1")));
        let long = ("a".repeat(25), text("1"));
        let hostile = Plain::Object(many.chain([long]).collect());
        let mut read = Form::default();
        assert!(read.read(&hostile));
        assert_eq!(read.0.len(), MOST_FIELDS);
        assert!(!Form::default().read(&text("no form")));
    }

    #[test]
    fn rows_are_found_by_their_ids_and_what_is_typed_past_them_is_lost_on_nobody() {
        let mut making = Making::default();
        let id = making.parts.push(Row::default()).unwrap();
        let spot = |row| Spot {
            group: Group::Parts,
            row,
            name: "width",
            label: "Width",
            kind: Kind::Length,
        };
        making.enter(spot(id), Entry::mm("80"));
        let before = making.clone();
        making.enter(spot(Id(9)), Entry::mm("90"));
        assert_eq!(making, before);
        assert_eq!(making.entry(spot(id)), Some(&Entry::mm("80")));
        assert_eq!(spot(id).id(), "part-1-width");
    }
}
