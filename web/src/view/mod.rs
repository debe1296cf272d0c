//! Pure functions from the model to what is shown.

mod chips;
mod context;
mod dial;
mod drawing;
mod field;
mod fractions;
mod head;
mod heading;
mod icon;
mod joint;
mod labels;
mod notices;
mod outcome;
mod part;
mod saw;
mod segment;
mod select;
mod shop;
mod show;
mod slanted;
mod sled;
#[cfg(test)]
mod tests;

use yew::{Callback, Html, classes, html};

use crate::model::{Chunk, Model};
use crate::msg::Msg;
use crate::state::Place;
use context::Context;

/// The whole page; whatever happens in it is sent to `emit`.
pub(crate) fn view(model: &Model, emit: &Callback<Msg>) -> Html {
    let context = Context { model, emit };
    let is_at_saw = model.state.at_saw.open;
    html! {
        <div class={classes!("page", is_at_saw.then_some("at-saw"))}>
            if is_at_saw {
                { notices::view(context) }
                { saw::view(context) }
            } else {
                { head::view(context) }
                { match model.state.place {
                    Place::Joint => joint::view(context),
                    Place::Sled => html! {
                        <main class="main joint sled" id="main">{
                            part::waiting(Chunk::Sled, context).unwrap_or_else(|| sled::view(context))
                        }</main>
                    },
                    Place::Shop => html! {
                        <main class="main shop" id="main">{
                            part::waiting(Chunk::Shop, context).unwrap_or_else(|| shop::view(context))
                        }</main>
                    },
                } }
                { notices::view(context) }
            }
        </div>
    }
}
