//! One of several of which one is open.

use yew::{Html, classes, html};

use crate::msg::{Edit, Leaf};
use crate::state::Entry;
use crate::view::context::Context;

/// A row: what it is called, what is to be said of it, and what can be done with it.
pub(super) struct Row<'a> {
    pub(super) place: usize,
    pub(super) is_open: bool,
    pub(super) name: &'a Entry,
    /// What it is, for one without a name: `joint`.
    pub(super) one: &'static str,
    pub(super) says: Html,
    pub(super) edit: fn(Leaf) -> Edit,
}

impl Row<'_> {
    /// The row.
    pub(super) fn view(&self, context: Context<'_>) -> Html {
        let name = self.name.text.trim();
        let name = if name.is_empty() {
            format!("A {} without a name", self.one)
        } else {
            name.to_owned()
        };
        let button = |words: &'static str, leaf: Leaf| {
            html! {
                <button type="button" class="button" onclick={context.edit((self.edit)(leaf))}>
                    { words }<span class="for-readers">{ format!(" {name}") }</span>
                </button>
            }
        };
        html! {
            <li key={self.place} class={classes!("leaf", self.is_open.then_some("open"))}>
                <b>{ &name }</b>
                <div class="says">{ self.says.clone() }</div>
                <div class="buttons">
                    if self.is_open {
                        <span class="is-open">{ "Open" }</span>
                    } else {
                        { button("Open", Leaf::Open(self.place)) }
                    }
                    { button("Duplicate", Leaf::Duplicate(self.place)) }
                    { button("Remove", Leaf::Remove(self.place)) }
                </div>
            </li>
        }
    }
}
