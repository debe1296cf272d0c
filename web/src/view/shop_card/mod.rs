//! The card for the shop: what one needs of a joint at the saw, on one sheet of paper. Only [`view`] may
//! be called from elsewhere, and only once this part of the program has come.

use yew::{Html, html};

use super::context::Context;
use crate::answer::Cut;

/// The card.
#[inline(never)]
pub(super) fn view(cut: Cut<'_>, context: Context<'_>) -> Html {
    let _ = (cut, context);
    html! { <main class="shop-card for-paper" aria-hidden="true"></main> }
}
