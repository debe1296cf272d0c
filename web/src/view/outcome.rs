//! What is said of an outcome that is not what the fields say.

use yew::{Html, html};

use super::context::Context;
use super::icon::Icon;
use super::labels::label;
use crate::answer::tools::Outcome;

/// What stands in the way of an outcome; readers hear it.
pub(super) fn state<T>(outcome: &Outcome<T>, context: Context<'_>) -> Html {
    html! {
        <div class="state" role="status">
            if !outcome.is_current {
                <p class="stale-label">
                    { Icon::Exclamation.sign("problem") }
                    <span>{ for in_the_way(outcome, context).into_iter().map(|text| html! { <>{ text }{ " " }</> }) }</span>
                </p>
            }
        </div>
    }
}

fn in_the_way<T>(outcome: &Outcome<T>, context: Context<'_>) -> Vec<String> {
    let mut says = Vec::new();
    if outcome.plan.is_some() {
        says.push("From the last good numbers.".to_owned());
    }
    if !outcome.needed.is_empty() {
        let labels: Vec<_> = outcome.needed.iter().map(|field| label(*field)).collect();
        says.push(format!("Still needed: {}.", labels.join(", ")));
    }
    says.extend(outcome.refused.iter().map(|text| context.message(text)));
    if outcome.needed.is_empty() && outcome.refused.is_empty() {
        says.push("The marked fields say what would work.".to_owned());
    }
    says
}
