//! Jobs: what they consist of, how far they have come, how they are carried, kept and printed. Only
//! [`view`] may be called from elsewhere, and only once this part of the program has come.

mod carry;
mod files;
mod joints;
mod keep;
mod leaf;
mod list;
mod pieces;
pub(super) mod qr;

use yew::{Html, html};

use super::context::Context;

/// The place.
#[inline(never)]
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <>
            <div class="column">
                { joints::view(context) }
                { pieces::view(context) }
                { list::view(context) }
            </div>
            <div class="column">
                { files::view(context) }
                { carry::view(context) }
                { keep::view(context) }
            </div>
        </>
    }
}
