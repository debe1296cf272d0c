//! Setting up for one board.

use notchwright_core::stop::Set;
use yew::{Html, html};

use super::{in_sentence, over, steps};
use crate::answer::Cut;
use crate::msg::{Msg, SawMove};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::{joint, show};

/// The page; the button to go on stands below the cautions.
pub(super) fn view(cut: Cut<'_>, set: &Set, context: Context<'_>) -> Html {
    let number = context.model.state.at_saw.set + 1;
    let place = format!("set {number} of {}", cut.sets.len());
    html! {
        <main class="saw set-up">
            { over(&format!("Set up for {}", in_sentence(set)), place, cut, context) }
            <div class="body">
                <p class="unplug">{ Icon::Exclamation.sign("caution") }<b>{ "Unplug the saw first." }</b></p>
                { height(set, context) }
                { steps::view(cut, set, context) }
                <section class="section" aria-labelledby="cautions">
                    <h2 id="cautions">{ "Before you switch on" }</h2>
                    { joint::cautions(cut.notes, context) }
                </section>
            </div>
            <div class="buttons">
                if number > 1 {
                    <button type="button" class="button" onclick={context.send(Msg::Saw(SawMove::Back))}>{ "Back" }</button>
                }
                <button type="button" class="button signal" onclick={context.send(Msg::Saw(SawMove::Next))}>
                    { "All is set" }
                </button>
            </div>
        </main>
    }
}

fn height(set: &Set, context: Context<'_>) -> Html {
    let unit = context.unit();
    html! {
        <p class="height">
            <span>{ "Blade above the sled's base" }</span>
            <strong>
                { show::bare(set.height, unit) }
                <small>{ " " }{ crate::view::field::short(unit) }</small>
                { for show::fraction(set.height, unit).map(|text| html! { <small class="quiet">{ "  " }{ text }</small> }) }
            </strong>
        </p>
    }
}
