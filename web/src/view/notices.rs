//! What the page says once, until it is dismissed.

use yew::{Html, html};

use super::context::Context;
use crate::msg::Msg;
use crate::notice::Notice;

/// The notices, over whatever is shown. Warnings interrupt a reader, the others wait their turn.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <div class="notices" role="status">
            { for context.model.notices.iter().map(|notice| one(notice, context)) }
        </div>
    }
}

fn one(notice: &Notice, context: Context<'_>) -> Html {
    let text = notice.text();
    html! {
        <div key={text.clone()} class="notice" role={notice.is_warning().then_some("alert")}>
            <p>{ &text }</p>
            if notice.can_undo() {
                <button type="button" class="button" onclick={context.send(Msg::Undo)}>{ "Undo" }</button>
            }
            if *notice == Notice::UpdateWaiting {
                <button type="button" class="button" onclick={context.send(Msg::UseUpdate)}>{ "Use it now" }</button>
            }
            <button type="button" class="button plain" onclick={context.send(Msg::Dismiss(notice.clone()))}>
                { dismissal(notice) }
            </button>
        </div>
    }
}

fn dismissal(notice: &Notice) -> &'static str {
    match notice {
        Notice::UpdateWaiting => "Later",
        _ => "OK",
    }
}
