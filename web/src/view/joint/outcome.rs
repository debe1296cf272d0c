//! What follows from the numbers: drawing, verdict, figures, notes, stops.

use std::rc::Rc;

use notchwright_core::drawing::{box_joint_drawing, box_joint_mated};
use notchwright_core::joint::box_joint::BoxJointPlan;
use notchwright_core::stop::Set;
use notchwright_core::units::parse_length;
use yew::{Html, classes, html};

use super::stops::Source;
use super::verdict::Fit;
use super::{facts, notes, stops, verdict};
use crate::msg::{Msg, SawMove};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::{drawing, show};

/// The outcome: of the fields as they stand, or greyed and labelled the last good one.
pub(super) fn view(context: Context<'_>) -> Html {
    let answer = &context.model.answer;
    let Some(planned) = &answer.joint else {
        return nothing_yet();
    };
    let stale = answer.is_stale.then_some("stale");
    let plan = &planned.plan;
    html! {
        <div class="outcome">
            <div class="state" role="status">
                if answer.is_stale {
                    { label("From the last good numbers.") }
                }
            </div>
            <div class={classes!("plan", stale)}>
                <figure class="card figure">{ picture(plan, context) }</figure>
                <div class="beside">
                    { verdict::view(&plan.dry_fit, plan.glue_gap, context) }
                    if !answer.is_stale {
                        { to_the_saw(&plan.sets, Fit::of(&plan.dry_fit), context) }
                    }
                    { facts::view(plan, context) }
                </div>
                { for closed(plan, context) }
                { notes::view(&planned.notes, context) }
                { stops::tables(&Source::Box(Rc::clone(planned)), plan.sets.len(), context) }
            </div>
        </div>
    }
}

fn nothing_yet() -> Html {
    html! {
        <div class="outcome">
            <div class="state" role="status">
                { label("No joint yet.") }
            </div>
        </div>
    }
}

fn label(text: &str) -> Html {
    html! {
        <p class="stale-label">
            { Icon::Exclamation.sign("problem") }
            <span><b>{ text }</b>{ " The marked fields say what would work." }</span>
        </p>
    }
}

fn picture(plan: &BoxJointPlan, context: Context<'_>) -> Html {
    let label = format!(
        "Both boards as cut, A above and B below: {} fingers of {} on {}.",
        plan.count,
        context.length(plan.finger_width),
        context.length(plan.width)
    );
    drawing::view(&box_joint_drawing(plan), "boards", label, &|length| {
        show::bare(length, context.unit())
    })
}

/// The closed corner, with its gaps enlarged; only of the boards that stand in the fields.
fn closed(plan: &BoxJointPlan, context: Context<'_>) -> Option<Html> {
    context.model.answer.current()?;
    let entry = &context.model.state.work.joint.thickness_b;
    let thickness = parse_length(&entry.text, entry.unit).ok()?;
    let picture = box_joint_mated(plan, thickness);
    let label = "The closed corner on board A's face, with its gaps enlarged";
    Some(html! {
        <figure class="card figure closed">
            { drawing::view(&picture, "mated", label, &|length| show::bare(length, context.unit())) }
            <figcaption class="quiet">{ "Dry fit on A's face, gaps enlarged" }</figcaption>
        </figure>
    })
}

/// `A 27, B 24 passes`.
fn each(sets: &[Set]) -> String {
    let each = sets.iter().map(|set| {
        let board = set.name.trim_start_matches("Board ");
        format!("{board} {}", set.stops.len())
    });
    format!("{} passes", each.collect::<Vec<_>>().join(", "))
}

/// The way to the saw.
pub(in crate::view) fn to_the_saw(sets: &[Set], fit: Fit, context: Context<'_>) -> Html {
    let passes = match sets {
        [_, _] => each(sets),
        _ => {
            let all = sets.iter().map(|set| set.stops.len()).sum();
            format!(
                "{}, {}",
                show::count(sets.len(), "set-up", "set-ups"),
                show::count(all, "pass", "passes")
            )
        }
    };
    // Whoever wants a joint that must be driven home may have it, but is not invited.
    let (class, words) = match fit {
        Fit::Clashes => ("against", "At the saw all the same"),
        Fit::Goes | Fit::NeedsChisel => ("signal", "At the saw"),
    };
    html! {
        <div class="go">
            <button type="button" class={classes!("button", class)} onclick={context.send(Msg::Saw(SawMove::Open))}>
                <span>{ words }</span>
                <small>{ passes }</small>
            </button>
        </div>
    }
}
