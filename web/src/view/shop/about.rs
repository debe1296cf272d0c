//! What this is.

use yew::{Html, html};

/// The texts.
pub(super) fn view() -> Html {
    html! {
        <section class="tool" aria-labelledby="about">
            <h2 id="about">{ "About" }</h2>
            <div class="prose">
                <p>{ "Notchwright works out box joints and dovetails for a table-saw sled whose carriage moves on a screw: the \
                      dial setting of every pass, and a dry fit before any wood is cut." }</p>
                <p>{ "It knows nothing of your saw but what you tell it. The saw's manual, local codes and a qualified \
                      person come first." }</p>
                <p class="quiet">{ concat!("Version ", env!("CARGO_PKG_VERSION"), ".") }</p>
            </div>
        </section>
    }
}
