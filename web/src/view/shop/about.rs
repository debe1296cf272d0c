//! Where the work is kept, and what this is.

use web_sys::HtmlInputElement;
use yew::{Event, Html, TargetCast, html};

use crate::msg::Msg;
use crate::view::context::Context;

/// A file is opened in place of what is here, which is kept aside.
fn open(context: Context<'_>) -> Html {
    let emit = context.emit.clone();
    let chosen = move |event: Event| {
        let input: HtmlInputElement = event.target_unchecked_into();
        if let Some(file) = input.files().and_then(|files| files.get(0)) {
            emit.emit(Msg::ReadFile(file));
        }
        // The same file can then be chosen again.
        input.set_value("");
    };
    html! {
        <label class="button file">
            <input type="file" id="open-file" accept=".json,application/json" onchange={chosen} />
            { "Open a file" }
        </label>
    }
}

/// The texts.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <section class="tool" aria-labelledby="about">
            <h2 id="about">{ "Where your work is kept" }</h2>
            <div class="prose">
                <p>{ "Only on this device, in this browser. Nothing is sent anywhere, and after the first visit no network \
                      is needed." }</p>
                <p>{ "A phone may wipe what a page has stored after a week without a visit. The address of this page carries \
                      the whole job, shop included: bookmark it, and the bookmark is your copy." }</p>
            </div>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::CopyLink)}>{ "Copy the link" }</button>
                <button type="button" class="button" onclick={context.send(Msg::SaveAll)}>{ "Save it all as a file" }</button>
                { open(context) }
            </div>
            <h2>{ "About" }</h2>
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
