//! All is cut.

use notchwright_core::stop::Board;
use yew::{Html, html};

use super::over;
use crate::answer::Cut;
use crate::msg::{Msg, SawMove};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::show;

/// The page.
pub(super) fn view(cut: Cut<'_>, context: Context<'_>) -> Html {
    let passes = cut.sets.iter().map(|set| set.stops.len()).sum();
    let is_both = cut.sets.iter().any(|set| set.board == Board::B);
    let (title, boards, dry) = if is_both {
        (
            "Both boards are cut",
            "board A and board B",
            "Put the joint together dry, reference edges on the same side, before any glue.",
        )
    } else {
        (
            "The tail board is cut",
            "the tail board",
            "Mark the pin board out from it, reference edges on the same side, and chop its sockets by hand.",
        )
    };
    html! {
        <main class="saw done">
            { over(title, "all steps".into(), cut, context) }
            <div class="body">
                <p class="unplug">
                    { Icon::Tick.sign("fits") }
                    <b>{ format!("{} at one end of {boards}.", show::count(passes, "pass", "passes")) }</b>
                </p>
                <ul class="prose">
                    <li>{ "Switch off, unplug, and lower the cutter." }</li>
                    <li>{ dry }</li>
                    <li>{ "For the next corner keep the same edge against the stop, and begin again with the set-up." }</li>
                </ul>
            </div>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Back))}>{ "Back" }</button>
                <button type="button" class="button signal" onclick={context.send(Msg::Saw(SawMove::Next))}>
                    { "To the joint" }
                </button>
            </div>
        </main>
    }
}
