//! The few figures of a plan that are set or marked by hand.

use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::units::Mm;
use yew::{Html, html};

use crate::state::LayoutKind;
use crate::view::context::Context;
use crate::view::show;

/// Fingers, their width, blade heights, and a width to rip to.
pub(super) fn view(plan: &BoxJointPlan, context: Context<'_>) -> Html {
    let fingers = show::count(plan.count, "finger", "fingers");
    let kind = if plan.symmetric {
        "the same from both edges"
    } else {
        "not the same from both edges"
    };
    let length = |length: Mm| {
        (
            context.length(length),
            show::fraction(length, context.unit()),
        )
    };
    html! {
        <dl class="facts">
            { fact("Layout", fingers, Some(kind.into())) }
            { fact(finger(context), context.length(plan.finger_width), show::fraction(plan.finger_width, context.unit())) }
            { for plan.sets.iter().map(|set| {
                let (height, fraction) = length(set.height);
                fact(&format!("Blade height, {}", in_sentence(&set.name)), height, fraction)
            }) }
            { for plan.rip_to.iter().map(|rip| {
                let above = format!("or from wider stock {}", context.length(rip.above));
                fact("Rip to", context.length(rip.below), Some(above))
            }) }
        </dl>
    }
}

fn finger(context: Context<'_>) -> &'static str {
    match context.model.state.work.joint.layout {
        LayoutKind::Pattern => "Finger width, mean",
        _ => "Finger width",
    }
}

fn in_sentence(name: &str) -> String {
    name.replacen("Board", "board", 1)
}

/// One of them.
pub(in crate::view) fn fact(name: &str, value: String, says: Option<String>) -> Html {
    html! {
        <div>
            <dt>{ name.to_owned() }</dt>
            <dd>{ value }{ for says.map(|says| html! { <small>{ says }</small> }) }</dd>
        </div>
    }
}
