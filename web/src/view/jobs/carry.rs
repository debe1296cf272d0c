//! Carrying the open job to another device or another person.

use web_sys::HtmlInputElement;
use yew::{Event, Html, TargetCast, html};

use super::qr;
use crate::keep::link;
use crate::msg::Msg;
use crate::view::context::Context;

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    let model = context.model;
    let length = model.home.len() + link::write(&model.state).len();
    let is_long = length > link::USUAL_LONGEST;
    html! {
        <section class="tool" aria-labelledby="carry">
            <h2 id="carry">{ "Take this job along" }</h2>
            <div class="prose">
                <p>{ "The address of this page carries the open job, with its tools: bookmark it, and the bookmark is a copy." }</p>
                if is_file(context) {
                    <p>{ "This page is a file of this device: its address opens only here. To carry the job elsewhere, save it as a file." }</p>
                }
                if is_long {
                    <p class="caution">{ format!(
                        "This job's link has {length} characters, more than some programs pass on whole: save it as a file."
                    ) }</p>
                }
            </div>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::CopyLink)}>{ "Copy the link" }</button>
                <button type="button" class="button" onclick={context.send(Msg::SaveJob)}>{ "Save this job as a file" }</button>
                if context.model.can.share {
                    <button type="button" class="button" onclick={context.send(Msg::ShareJob)}>{ "Share it" }</button>
                }
                { open(context) }
            </div>
            if !is_file(context) {
                <details class="more">
                    <summary>{ "Show the link as a QR code" }</summary>
                    { qr::view(context).unwrap_or_else(|| html! { <p>{ "The link is too long for a code." }</p> }) }
                </details>
            }
        </section>
    }
}

/// Whether the page was opened from a file, whose address nobody else can open.
fn is_file(context: Context<'_>) -> bool {
    context.model.home.starts_with("file:")
}

/// A file with a job is opened beside what is here; one with everything takes its place.
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
