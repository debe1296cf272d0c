//! What the page says once, until it is dismissed.

use yew::{Html, classes, html};

use super::context::Context;
use crate::msg::Msg;
use crate::notice::Notice;

/// The notices. Warnings interrupt a reader, the others wait their turn; at the saw until it is left.
pub(super) fn view(context: Context<'_>) -> Html {
    let is_at_saw = context.model.state.at_saw.open;
    let notices = context.model.notices.iter();
    let due = notices.filter(|notice| notice.is_warning() || !is_at_saw);
    html! {
        <div class="notices" role="status">{ for due.map(|notice| one(notice, context)) }</div>
    }
}

fn one(notice: &Notice, context: Context<'_>) -> Html {
    let text = notice.text();
    html! {
        <div key={text.clone()} class={classes!("notice", passes(notice).then_some("passing"))} role={notice.is_warning().then_some("alert")}>
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

/// Whether it needs no answer.
fn passes(notice: &Notice) -> bool {
    matches!(notice, Notice::OfflineReady | Notice::Copied)
}

fn dismissal(notice: &Notice) -> &'static str {
    match notice {
        Notice::UpdateWaiting => "Later",
        _ => "OK",
    }
}
