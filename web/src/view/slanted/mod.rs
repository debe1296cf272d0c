//! Joints with slanted flanks. Only the functions here may be called from elsewhere, and only once this part of the program has come.

mod dovetail;
mod figures;
mod helpers;
mod layout;
mod set_up;
mod sliding;
mod tails;

use notchwright_core::drawing::{Drawing, Paper, dovetail_progress, marking_template};
use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::stop::Set;
use yew::{Html, html};

use super::context::Context;
use super::joint;
use crate::state::JointKind;

/// Form and outcome.
#[inline(never)]
pub(super) fn view(context: Context<'_>) -> Html {
    let (form, outcome) = match context.model.state.work.joint.kind {
        JointKind::Sliding => (sliding::form(context), sliding::outcome(context)),
        JointKind::Box | JointKind::Dovetail => (dovetail::form(context), figures::view(context)),
    };
    html! {
        <>
            <form class="form" aria-label="The joint" onsubmit={|event: yew::SubmitEvent| event.prevent_default()}>
                { joint::kinds(context) }
                { form }
            </form>
            { outcome }
        </>
    }
}

/// What to do before the first pass of a set of dovetails, in order.
#[inline(never)]
pub(super) fn steps(
    plan: &DovetailPlan,
    set: &Set,
    context: Context<'_>,
) -> Vec<(&'static str, String)> {
    set_up::steps(plan, set, context)
}

/// The board of a set after so many of its passes, with the next one marked.
#[inline(never)]
pub(super) fn progress(plan: &DovetailPlan, set: &Set, before: usize) -> Drawing {
    dovetail_progress(plan, set, before)
}

/// The boards as cut and the closed joint, each with what it shows.
#[inline(never)]
pub(crate) fn pictures(plan: &DovetailPlan) -> Vec<(&'static str, Drawing)> {
    figures::pictures(plan)
}

/// The sheets of the full-size template.
#[inline(never)]
pub(crate) fn template(plan: &DovetailPlan, paper: Paper) -> Vec<Drawing> {
    marking_template(plan, paper)
}
