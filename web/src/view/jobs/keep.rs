//! Where the work is kept, and how it is protected.

use yew::{Html, html};

use crate::msg::Msg;
use crate::view::context::Context;

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <section class="tool" aria-labelledby="kept">
            <h2 id="kept">{ "Where your work is kept" }</h2>
            <div class="prose">
                <p>{ "Only on this device, in this browser. Nothing is sent anywhere, and after the first visit no network \
                      is needed." }</p>
                <p>{ "A phone may wipe what a page has stored after a week without a visit. Three things protect your work: \
                      this page on the home screen, a bookmark of the job, or a file." }</p>
            </div>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::SaveAll)}>{ "Save everything as a file" }</button>
                <button type="button" class="button" onclick={context.send(Msg::Persist)}>{ "Ask the browser to keep it" }</button>
            </div>
            <div class="prose served-only">
                <p>{ "The page itself fits into one file, for a phone's own storage or a stick: it opens from there with no \
                      server and no network. Work is kept per file; carry it over with a link or a file of the job." }</p>
                <div class="buttons">
                    <a class="button" href="./notchwright.html" download="notchwright.html">{ "Download the page as a file" }</a>
                </div>
            </div>
        </section>
    }
}
