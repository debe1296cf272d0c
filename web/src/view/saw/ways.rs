//! How one works at the saw: the order of boards, the free hand, speaking and listening.

use yew::{Html, html};

use super::Here;
use crate::answer::course::Course;
use crate::msg::{Msg, Way};
use crate::state::{Hand, Order};
use crate::view::context::Context;
use crate::view::segment::Segment;

/// The choices.
pub(super) fn view(here: &Here<'_>, context: Context<'_>) -> Html {
    html! {
        <section class="section ways" aria-labelledby="ways">
            <h2 id="ways">{ "How you work" }</h2>
            { order(here, context) }
            { hand(context) }
            { speaks(context) }
            { listens(context) }
        </section>
    }
}

fn order(here: &Here<'_>, context: Context<'_>) -> Html {
    let [_, _] = here.course.sets() else {
        return Html::default();
    };
    if !Course::can_merge(here.course.sets()) {
        return html! {
            <p class="quiet">{ "These boards need two blade heights: one is cut after the other." }</p>
        };
    }
    let order = Segment {
        name: "saw-order",
        legend: "Order",
        is_plain: false,
        options: &[
            (Order::Boards, "one board, then the other"),
            (Order::Stops, "both boards at each stop"),
        ],
        chosen: context.model.state.at_saw.order,
    };
    order.view(|order| Msg::Way(Way::Order(order)), context)
}

fn hand(context: Context<'_>) -> Html {
    let hand = Segment {
        name: "saw-hand",
        legend: "Button to go on",
        is_plain: false,
        options: &[(Hand::Left, "at the left"), (Hand::Right, "at the right")],
        chosen: context.model.state.at_saw.hand,
    };
    hand.view(|hand| Msg::Way(Way::Hand(hand)), context)
}

fn speaks(context: Context<'_>) -> Html {
    if !context.model.can.speak {
        return html! { <p class="quiet">{ "This browser cannot speak." }</p> };
    }
    let speaks = Segment {
        name: "saw-speaks",
        legend: "Settings",
        is_plain: false,
        options: &[(false, "shown"), (true, "shown and spoken")],
        chosen: context.model.state.at_saw.speaks,
    };
    speaks.view(|speaks| Msg::Way(Way::Speaks(speaks)), context)
}

fn listens(context: Context<'_>) -> Html {
    if !context.model.can.listen {
        return html! {
            <p class="quiet">{ "This browser cannot hear words without sending them away, so the page does not listen." }</p>
        };
    }
    let listens = Segment {
        name: "saw-listens",
        legend: "Go on by",
        is_plain: false,
        options: &[(false, "the button"), (true, "the button or a word")],
        chosen: context.model.state.at_saw.listens,
    };
    html! {
        <>
            { listens.view(|listens| Msg::Way(Way::Listens(listens)), context) }
            if context.model.state.at_saw.listens {
                <p class="quiet">{ "Say “next”, “back”, “again”, “pause” or “resume”, with the saw off." }</p>
            }
        </>
    }
}
