//! A sliding dovetail on the router table.

use notchwright_core::drawing::sliding_drawing;
use notchwright_core::joint::sliding::SlidingDovetailPlan;
use yew::{Html, classes, html};

use crate::state::{Field, JointField, SlidingField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::{drawing, joint, outcome, show};

fn entry(field: SlidingField, label: &'static str) -> Entry {
    Entry::new(Field::Sliding(field), label)
}

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    html! {
        <>
            <section class="section">
                <h2>{ "Dovetail bit" }</h2>
                <div class="fields">
                    { entry(SlidingField::Tip, "Diameter at the tip").view(context) }
                    { entry(SlidingField::Flank, "Flank").unit("°").view(context) }
                    { entry(SlidingField::CuttingLength, "Cutting length").hint("Blank if it does not matter.").view(context) }
                </div>
            </section>
            <section class="section">
                <h2>{ "Socket and tongue" }</h2>
                <div class="fields">
                    { entry(SlidingField::Depth, "Depth").view(context) }
                    { entry(SlidingField::Floor, "Socket floor").hint("Blank for one pass.").view(context) }
                    { entry(SlidingField::Thickness, "Tongue board thick").view(context) }
                    { Entry::new(Field::Joint(JointField::GlueGap), "Glue gap, each flank").view(context) }
                    { entry(SlidingField::Taper, "Wider by").hint("Where the tongue enters; blank for straight.").view(context) }
                    { entry(SlidingField::Length, "Over a length of").view(context) }
                </div>
            </section>
        </>
    }
}

/// The outcome.
pub(super) fn outcome(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.slanted else {
        return Html::default();
    };
    let sliding = &answer.sliding;
    let stale = (!sliding.is_current).then_some("stale");
    let found = sliding.plan.as_ref().map(|planned| {
        let label = "Socket and tongue from the end, with their widths";
        html! {
            <div class={classes!("found", stale)}>
                <figure class="card figure">
                    { drawing::view(&sliding_drawing(&planned.plan), "plain", label, &|length| show::bare(length, context.unit())) }
                </figure>
                { facts(&planned.plan, context) }
                { joint::notes_view(&planned.notes, context) }
            </div>
        }
    });
    html! {
        <div class="outcome">
            { outcome::state(sliding, context) }
            { for found }
        </div>
    }
}

fn facts(plan: &SlidingDovetailPlan, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let moves = match plan.socket_fence_moves.first() {
        Some(one) => joint::fact(
            "Fence moves",
            format!("{} × {}", plan.socket_fence_moves.len(), length(*one)),
            Some(format!(
                "first set {} nearer than the middle",
                length(-plan.first_from_middle)
            )),
        ),
        None => joint::fact(
            "Fence moves",
            "none".into(),
            Some("one pass on the middle".into()),
        ),
    };
    let taper = plan.taper.map(|taper| {
        let says = format!(
            "at one end for each flank: {}°",
            notchwright_core::units::write_number(taper.degrees, 3)
        );
        joint::fact("Shim for the taper", length(taper.per_side), Some(says))
    });
    html! {
        <dl class="facts">
            { joint::fact("Socket mouth", length(plan.mouth), Some(format!("floor {}", length(plan.floor)))) }
            { moves }
            { joint::fact("Tongue at its tip", length(plan.tongue_tip), Some(format!("at its shoulder {}", length(plan.tongue_mouth)))) }
            { joint::fact("Cut from each side", length(plan.tongue_cut_per_side), Some("at the tip, on both faces".into())) }
            { for taper }
        </dl>
    }
}
