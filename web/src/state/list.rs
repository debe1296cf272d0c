//! Several of a kind, one of them chosen.

use notchwright_core::plain::Plain;

use super::entry::Entry;
use super::id::Id;
use super::stored::{Stored, field};

/// Something that is kept in a [`List`].
pub trait Item: Clone + Default + PartialEq {
    /// Which one it is.
    fn id(&self) -> Id;
    /// The same thing under another id.
    fn with_id(self, id: Id) -> Self;
    /// More than anybody keeps of them.
    const MOST: usize = 50;
}

/// An item with a name.
pub trait Named: Item {
    /// What it is called.
    fn name(&self) -> &Entry;
    /// What it is called, to be changed.
    fn name_mut(&mut self) -> &mut Entry;
}

/// Several of a kind, one of them chosen; none only when the list is empty.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct List<T: Item> {
    items: Vec<T>,
    chosen: Id,
    /// The last id that was ever given: what rests elsewhere under an id never finds another thing there.
    last: Id,
}

impl<T: Item + Stored> Stored for List<T> {
    fn write(&self) -> Plain {
        let items = self.items.iter().map(Stored::write).collect();
        let items = ("items".to_owned(), Plain::List(items));
        let chosen = ("chosen".to_owned(), self.chosen.write());
        let mut fields = vec![items, chosen];
        if self.last > self.greatest() {
            fields.push(("last".to_owned(), self.last.write()));
        }
        Plain::Object(fields)
    }

    fn read(&mut self, plain: &Plain) -> bool {
        let Plain::Object(fields) = plain else {
            return false;
        };
        if let Some(Plain::List(items)) = field(fields, "items") {
            for plain in items.iter().take(T::MOST) {
                let mut item = T::default();
                // Of two with the same id only the first can be meant.
                if item.read(plain) && self.get(item.id()).is_none() {
                    self.items.push(item);
                }
            }
        }
        if let Some(chosen) = field(fields, "chosen") {
            self.chosen.read(chosen);
        }
        if let Some(last) = field(fields, "last") {
            self.last.read(last);
        }
        self.last = self.last.max(self.greatest());
        true
    }

    fn is_usual(&self) -> bool {
        self.items.is_empty() && self.chosen.is_usual() && self.last.is_usual()
    }
}

impl<T: Item> List<T> {
    /// These items, numbered from 1, the first of them chosen.
    #[must_use]
    pub fn new(items: impl IntoIterator<Item = T>) -> Self {
        let mut list = Self::default();
        for item in items {
            list.push(item);
        }
        list.chosen = list.items.first().map(Item::id).unwrap_or_default();
        list
    }

    /// All items, in the order they were added.
    #[must_use]
    pub fn items(&self) -> &[T] {
        &self.items
    }

    /// The item `id`.
    #[must_use]
    pub fn get(&self, id: Id) -> Option<&T> {
        self.items.iter().find(|item| item.id() == id)
    }

    /// The item `id`, to be changed.
    pub fn get_mut(&mut self, id: Id) -> Option<&mut T> {
        self.items.iter_mut().find(|item| item.id() == id)
    }

    /// Changes the item `id`, if it is there.
    pub fn change(&mut self, id: Id, change: impl FnOnce(&mut T)) {
        if let Some(item) = self.get_mut(id) {
            change(item);
        }
    }

    /// The item in use.
    #[must_use]
    pub fn chosen(&self) -> Option<&T> {
        self.get(self.chosen).or_else(|| self.items.first())
    }

    /// Whether `id` is the item in use.
    #[must_use]
    pub fn is_chosen(&self, id: Id) -> bool {
        self.chosen().is_some_and(|item| item.id() == id)
    }

    /// Takes `id` into use.
    pub fn choose(&mut self, id: Id) {
        if self.get(id).is_some() {
            self.chosen = id;
        }
    }

    /// Adds `item` under an id of its own; nothing happens when the list is full.
    pub fn push(&mut self, item: T) -> Option<Id> {
        if self.items.len() >= T::MOST {
            return None;
        }
        let id = self.free_id(self.last)?;
        self.last = self.last.max(id);
        self.items.push(item.with_id(id));
        Some(id)
    }

    fn greatest(&self) -> Id {
        self.items.iter().map(Item::id).max().unwrap_or_default()
    }

    /// The id after the last one, or any unused one once those are exhausted.
    fn free_id(&self, last: Id) -> Option<Id> {
        let next = last.0.checked_add(1).map(Id);
        next.or_else(|| (1..u16::MAX).map(Id).find(|id| self.get(*id).is_none()))
    }

    /// Leaves only those with these ids.
    pub(crate) fn keep(&mut self, ids: &[Id]) {
        self.items.retain(|item| ids.contains(&item.id()));
    }

    /// Takes `id` out of the list; the item that then stands in its place is chosen if `id` was.
    pub fn remove(&mut self, id: Id) -> Option<T> {
        let place = self.items.iter().position(|item| item.id() == id)?;
        let was_chosen = self.is_chosen(id);
        let removed = self.items.remove(place);
        if was_chosen {
            let heir = self.items.get(place).or(self.items.last());
            self.chosen = heir.map(Item::id).unwrap_or_default();
        }
        Some(removed)
    }
}
