//! The five-cut test, cut by cut, and the strip's measures.

use notchwright_core::drawing::five_cut_steps;
use yew::{Html, html};

use super::fit::choice;
use crate::msg::{Look, Msg, Shelf};
use crate::state::{Field, SquareField};
use crate::view::context::Context;
use crate::view::tool::{entries, figure, group, hinted};

/// What is done at each cut.
const CUTS: [&str; 5] = [
    "Number the panel's edges 1 to 4. Edge 4 against the fence: cut edge 1.",
    "Turn edge 1, just cut, against the fence: cut edge 2.",
    "Turn edge 2 against the fence: cut edge 3.",
    "Turn edge 3 against the fence: cut edge 4.",
    "Turn edge 4 against the fence again: cut a strip off edge 1, a thumb wide. Mark its end at the fence A, the \
     other B, and measure its width close to both.",
];

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    let sleds = &context.model.state.work.shop.sleds;
    html! {
        <>
            { choice("Sled", Shelf::Sleds, sleds, context) }
            { steps(context) }
            { group("The strip, measured", html! {
                <div class="fields">
                    { entries([
                        SquareField::FenceEnd,
                        SquareField::FreeEnd,
                        SquareField::Apart,
                        SquareField::Pivot,
                    ].map(Field::Square), context) }
                    { hinted(Field::Square(SquareField::Uncertainty), "Of your calliper; blank for 0.02 mm.", context) }
                </div>
            }) }
        </>
    }
}

fn steps(context: Context<'_>) -> Html {
    let last = CUTS.len().saturating_sub(1);
    let step = usize::try_from(context.model.state.sled.step)
        .unwrap_or(last)
        .min(last);
    let says = CUTS.get(step).copied().unwrap_or_default();
    let go = |words: &'static str, to: Option<usize>| {
        let to = to.filter(|to| *to <= last);
        let msg = Msg::Look(Look::Cut(
            to.and_then(|to| u32::try_from(to).ok()).unwrap_or(0),
        ));
        html! {
            <button type="button" class="button" disabled={to.is_none()} onclick={context.send(msg)}>{ words }</button>
        }
    };
    html! {
        <section class="section cuts">
            <h2>{ format!("Cut {} of {}", step + 1, CUTS.len()) }</h2>
            { for five_cut_steps().get(step).map(|picture| figure(picture, says, context)) }
            <p aria-live="polite">{ says }</p>
            <div class="buttons">
                { go("Back", step.checked_sub(1)) }
                { go("Next cut", Some(step + 1)) }
            </div>
        </section>
    }
}
