//! One thing on a shelf: choose it, see how it is, change it in place.

use yew::{Html, classes, html};

use crate::msg::{Edit, Msg, Shelf};
use crate::state::{Entry, Field, Id, List, Named};
use crate::view::context::Context;
use crate::view::icon::Icon;

/// A shelf with its heading.
pub(super) struct Rack<'a, T: Named> {
    /// Which shelf.
    pub(super) shelf: Shelf,
    /// Its heading.
    pub(super) title: &'static str,
    /// One of its things: `saw`.
    pub(super) one: &'static str,
    /// The things.
    pub(super) list: &'a List<T>,
}

impl<T: Named> Rack<'_, T> {
    /// The shelf; `says` is the line below a thing's name, `fields` what can be changed of it.
    pub(super) fn view(
        &self,
        says: impl Fn(&T) -> String,
        fields: impl Fn(&T) -> Html,
        context: Context<'_>,
    ) -> Html {
        html! {
            <section class="shelf">
                <fieldset>
                    <legend><h2>{ self.title }</h2></legend>
                    <ul>{ for self.list.items().iter().map(|item| self.thing(item, says(item), fields(item), context)) }</ul>
                </fieldset>
                <div class="buttons">
                    <button type="button" class="button" onclick={context.edit(Edit::Add(self.shelf))}>
                        { Icon::Plus.view() }{ format!("Add a {}", self.one) }
                    </button>
                </div>
            </section>
        }
    }

    fn thing(&self, item: &T, says: String, fields: Html, context: Context<'_>) -> Html {
        let id = item.id();
        let is_chosen = self.list.is_chosen(id);
        let name = named(item.name(), self.one);
        let has_problem = context
            .model
            .answer
            .problems
            .iter()
            .any(|problem| problem.field.is_some_and(|field| self.has(field, id)));
        html! {
            <li key={id.0} class={classes!("thing", is_chosen.then_some("chosen"))}>
                <label class="pick">
                    <input
                        type="radio"
                        name={format!("chosen-{}", self.one)}
                        checked={is_chosen}
                        onchange={context.edit(Edit::Choose(self.shelf, id))}
                    />
                    <b>{ &name }</b>
                    if has_problem {
                        <small class="mend">{ Icon::Exclamation.view() }{ "Something in it needs mending." }</small>
                    } else {
                        <small>{ says }</small>
                    }
                </label>
                <details>
                    <summary class="button plain">{ "Edit" }<span class="for-readers">{ format!(" {name}") }</span></summary>
                    <div class="inside">
                        { fields }
                        { self.buttons(id, context) }
                    </div>
                </details>
            </li>
        }
    }

    fn buttons(&self, id: Id, context: Context<'_>) -> Html {
        html! {
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::Edit(Edit::Duplicate(self.shelf, id)))}>
                    { "Duplicate" }
                </button>
                <button type="button" class="button" onclick={context.send(Msg::Edit(Edit::Remove(self.shelf, id)))}>
                    { "Remove" }
                </button>
            </div>
        }
    }

    fn has(&self, field: Field, id: Id) -> bool {
        match (self.shelf, field) {
            (Shelf::Saws, Field::Saw(of, _))
            | (Shelf::Sleds, Field::Sled(of, _))
            | (Shelf::Cutters, Field::Cutter(of, _))
            | (Shelf::Screws, Field::Screw(of, _)) => of == id,
            _ => false,
        }
    }
}

fn named(name: &Entry, one: &str) -> String {
    if name.is_blank() {
        format!("A {one} without a name")
    } else {
        name.text.clone()
    }
}

/// The parts of a line that there is something to say in.
pub(super) fn line(parts: impl IntoIterator<Item = Option<String>>) -> String {
    parts.into_iter().flatten().collect::<Vec<_>>().join(" · ")
}

/// What was typed into a length field with its unit, after `words`; nothing when it is blank.
pub(super) fn length(words: &str, field: Field, context: Context<'_>) -> Option<String> {
    let is_blank = context.text(field).trim().is_empty();
    (!is_blank).then(|| format!("{words} {}", context.typed_length(field)))
}
