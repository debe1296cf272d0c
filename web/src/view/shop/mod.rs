//! The shop: saws, sleds, cutters and screws, measured once and used everywhere; and what the page itself is told.
//! Only [`view`] may be called from elsewhere, and only once this part of the program has come.

mod about;
mod asides;
mod cutters;
mod saws;
mod screws;
mod settings;
mod sleds;
mod slot;
mod stack;
mod thing;

use yew::{Html, html};

use super::context::Context;

/// The place.
#[inline(never)]
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <>
            <div class="column">
                { asides::view(context) }
                { cutters::view(context) }
                { saws::view(context) }
                { sleds::view(context) }
                { screws::view(context) }
            </div>
            <div class="column">
                { slot::view(context) }
                { stack::view(context) }
                { settings::view(context) }
                { about::view() }
            </div>
        </>
    }
}
