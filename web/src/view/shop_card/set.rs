//! One set-up on the card: how it is set, every stop with a box to tick, every end with one.

use notchwright_core::stop::{Set, Stop};
use yew::{Html, classes, html};

use crate::answer::Cut;
use crate::view::context::Context;
use crate::view::saw::steps;
use crate::view::show;

/// The set-up.
pub(super) fn view(index: usize, set: &Set, cut: Cut<'_>, context: Context<'_>) -> Html {
    html! {
        <section class="set" key={index}>
            <h2>{ format!("{}: blade {} high", set.name, context.length(set.height)) }</h2>
            { steps::view(cut, set, context) }
            <ol class="ticks">{ for set.stops.iter().map(|stop| row(stop, context)) }</ol>
            { ends(set, context) }
        </section>
    }
}

/// The last pass of a socket has a line below it.
fn row(stop: &Stop, context: Context<'_>) -> Html {
    let is_last = stop.pass == stop.passes;
    html! {
        <li key={stop.number} class={classes!(is_last.then_some("last-pass"))}>
            <span class="tick" />
            <span class="number">{ stop.number }</span>
            <b>{ format!("{} t {}", show::whole(stop.dial.turns), show::number(stop.dial.division)) }</b>
            <span class="quiet">{ show::column(stop.at, context.unit()) }</span>
        </li>
    }
}

/// The ends that are cut so, where there are several.
fn ends(set: &Set, context: Context<'_>) -> Html {
    let pieces = &context.model.answer.pieces;
    if pieces.count(set.board) <= 1 {
        return Html::default();
    }
    let end = |end| html! { <li><span class="tick" />{ pieces.name(set.board, end) }</li> };
    html! { <ol class="ends">{ for pieces.ends(set.board).map(end) }</ol> }
}
