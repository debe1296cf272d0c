//! Pure functions from the model to what is shown.

mod chips;
mod context;
mod counts;
mod dial;
mod drawing;
mod field;
mod fractions;
mod head;
mod heading;
mod icon;
mod instruct;
mod jobs;
mod joint;
mod labels;
mod making;
mod notices;
mod outcome;
mod part;
mod saw;
mod segment;
mod select;
mod shop;
mod shop_card;
mod show;
pub(crate) mod slanted;
mod sled;
#[cfg(test)]
mod tests;
mod tool;

pub(crate) use show::bare as bare_length;
use yew::{Callback, Html, classes, html};

use crate::model::{Chunk, Model, Part};
use crate::msg::{Msg, SawMove};
use crate::state::Place;
use context::Context;
use heading::Heading;

/// The whole page; whatever happens in it is sent to `emit`.
pub(crate) fn view(model: &Model, emit: &Callback<Msg>) -> Html {
    let context = Context { model, emit };
    let is_at_saw = model.state.at_saw.open;
    let card = shop_card(context);
    html! {
        <div class={classes!("page", is_at_saw.then_some("at-saw"), card.is_some().then_some("has-card"))}>
            { for card }
            if is_at_saw {
                { notices::view(context) }
                { at_saw(context) }
            } else {
                { head::view(context) }
                { match model.state.place {
                    Place::Joint => joint::view(context),
                    Place::Sled => html! {
                        <main class="main joint sled" id="main">{
                            part::waiting(Chunk::Sled, context).unwrap_or_else(|| sled::view(context))
                        }</main>
                    },
                    Place::Parts => html! {
                        <main class="main joint parts" id="main">{
                            part::waiting(Chunk::Parts, context).unwrap_or_else(|| making::view(context))
                        }</main>
                    },
                    Place::Jobs => html! {
                        <main class="main jobs" id="main">{
                            part::waiting(Chunk::Jobs, context).unwrap_or_else(|| jobs::view(context))
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

/// What is printed of a joint that can be cut, in place of all else.
fn shop_card(context: Context<'_>) -> Option<Html> {
    let model = context.model;
    let is_wanted = model.on_paper && matches!(model.state.place, Place::Joint | Place::Jobs);
    let has_come = model.parts.of(Chunk::Jobs) == Part::Here;
    let cut = model.answer.cut().filter(|_| is_wanted && has_come)?;
    Some(shop_card::view(cut, context))
}

/// At the saw, or what is said until it can be shown: one can always leave.
fn at_saw(context: Context<'_>) -> Html {
    let mut needed = context.model.needed();
    let waiting = needed.find_map(|chunk| part::waiting(chunk, context));
    waiting.map_or_else(
        || saw::view(context),
        |waiting| {
            html! {
                <main class="saw done">
                    <header class="over">
                        <Heading text="At the saw" />
                        <button type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Leave))}>{ "Leave" }</button>
                    </header>
                    { waiting }
                </main>
            }
        },
    )
}
