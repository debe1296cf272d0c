//! The open joint on paper, and as files for other programs.

use yew::{Html, html};

use crate::msg::Msg;
use crate::view::context::Context;

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <section class="tool" aria-labelledby="files">
            <h2 id="files">{ "The open joint on paper" }</h2>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::Print)}>{ "Print its shop card" }</button>
            </div>
        </section>
    }
}
