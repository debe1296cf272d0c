//! All is cut.

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
    html! {
        <main class="saw done">
            { over("Both boards are cut", "all steps".into(), cut, context) }
            <div class="body">
                <p class="unplug">
                    { Icon::Tick.sign("fits") }
                    <b>{ format!("{} at one end of board A and board B.", show::count(passes, "pass", "passes")) }</b>
                </p>
                <ul class="prose">
                    <li>{ "Switch off, unplug, and lower the cutter." }</li>
                    <li>{ "Put the joint together dry, reference edges on the same side, before any glue." }</li>
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
