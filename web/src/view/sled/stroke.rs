//! The sled at any place of its stroke, from above and from the side.

use notchwright_core::drawing::{sled_travel_plan, sled_travel_side};
use notchwright_core::sled::SledFitPlan;
use yew::{Html, InputEvent, TargetCast, html};

use crate::msg::{Look, Msg};
use crate::view::context::Context;
use crate::view::tool::figure;

/// The whole stroke, in thousandths.
const WHOLE: u32 = 1000;

/// Both pictures and what moves the sled in them.
pub(super) fn view(plan: &SledFitPlan, context: Context<'_>) -> Html {
    let pushed = context.model.state.sled.pushed.min(WHOLE);
    let share = f64::from(pushed) / f64::from(WHOLE);
    html! {
        <section class="section stroke">
            <h2>{ "The stroke" }</h2>
            <div class="views">
                { figure(&sled_travel_plan(plan, share), "The sled on the table, from above", context) }
                { figure(&sled_travel_side(plan, share), "The sled on the table, from the side", context) }
            </div>
            { mover(pushed, context) }
        </section>
    }
}

fn mover(pushed: u32, context: Context<'_>) -> Html {
    let slide = context.emit.reform(|event: InputEvent| {
        let input: web_sys::HtmlInputElement = event.target_unchecked_into();
        Msg::Look(Look::Pushed(input.value().parse().unwrap_or(0)))
    });
    let to = |end: u32, words: &'static str| {
        html! {
            <button type="button" class="button" aria-pressed={(pushed == end).to_string()} onclick={context.send(Msg::Look(Look::Pushed(end)))}>
                { words }
            </button>
        }
    };
    html! {
        <div class="mover">
            { to(0, "Pulled back") }
            <input
                id="pushed"
                type="range"
                min="0"
                max={WHOLE.to_string()}
                step="10"
                value={pushed.to_string()}
                aria-label="How far the sled is pushed through"
                oninput={slide}
            />
            { to(WHOLE, "Pushed through") }
        </div>
    }
}
