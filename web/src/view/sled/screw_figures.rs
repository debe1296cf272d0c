//! What the table says of the screw, and the one tap that takes it into the shop.

use notchwright_core::drawing::{screw_errors, screw_residuals};
use notchwright_core::screw_check::{Iso230, ScrewCheckPlan};
use notchwright_core::units::{Mm, parse_length, write_number};
use yew::{Html, html};

use crate::answer::tools::Outcome;
use crate::msg::Edit;
use crate::state::{Field, LeadBy, ScrewField};
use crate::view::context::Context;
use crate::view::field::short;
use crate::view::outcome::state;
use crate::view::show;
use crate::view::tool::{fact, facts, figure, notes, plan};

/// The outcome.
pub(super) fn view(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.sled else {
        return Html::default();
    };
    let screw = &answer.screw;
    let found = screw.plan.as_ref().map(|planned| {
        plan(
            screw,
            html! {
                <>
                    { figures(&planned.plan, context) }
                    { for screw.is_current.then(|| take(screw, context)) }
                    { plots(&planned.plan, context) }
                    { over_boards(&planned.plan, context) }
                    { for planned.plan.iso230.as_ref().map(|iso| figures_by_standard(iso, context)) }
                    { notes(&planned.notes, context) }
                </>
            },
        )
    });
    html! { <>{ state(screw, context) }{ for found }</> }
}

/// Leads differ in their fourth figure.
fn fine(length: Mm, context: Context<'_>) -> String {
    write_number(length / context.unit().length(), 5)
}

fn figures(plan: &ScrewCheckPlan, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let wobble = plan.once_per_turn.map(|wobble| {
        let degrees = write_number(wobble.phase_degrees, 0).replace('-', "−");
        let phase = format!("phase {degrees}°");
        fact(
            "Comes back every turn",
            format!("±{}", length(wobble.amplitude)),
            phase,
        )
    });
    let backlash = plan
        .backlash
        .map(|backlash| fact("Backlash", length(backlash), None));
    let off = write_number(plan.scale_per_mille, 3).replace('-', "−");
    let lead = format!("{} per turn, off by {off} ‰", short(context.unit()));
    let all = [
        fact("True lead", fine(plan.lead, context), lead),
        fact("Offset at zero", length(plan.offset), None),
        fact(
            "Left unexplained",
            length(plan.residual),
            format!("standard deviation; at worst {}", length(plan.worst)),
        ),
    ];
    facts("The screw", all.into_iter().chain(wobble).chain(backlash))
}

fn take(screw: &Outcome<ScrewCheckPlan>, context: Context<'_>) -> Html {
    let chosen = context.model.state.work.shop.screws.chosen();
    let (Some(chosen), Some(planned)) = (chosen, screw.current()) else {
        return Html::default();
    };
    let name = match chosen.name.text.trim() {
        "" => "the chosen screw",
        name => name,
    };
    let backlash = planned.plan.backlash.map(|backlash| {
        let field = Field::Screw(chosen.id, ScrewField::Backlash);
        html! {
            <button type="button" class="button" onclick={context.edit(Edit::Set(field, backlash))}>
                { format!("Take the backlash for {name}") }
            </button>
        }
    });
    let known = parse_length(&chosen.lead.text, chosen.lead.unit);
    let is_taken = chosen.by == LeadBy::Lead
        && known.is_ok_and(|lead| fine(lead, context) == fine(planned.plan.lead, context));
    html! {
        <div class="buttons">
            if is_taken {
                <p>{ format!("{name} has this lead now.") }</p>
            } else {
                <button type="button" class="button" onclick={context.edit(Edit::TakeLead(chosen.id, planned.plan.lead))}>
                    { format!("Take the lead for {name}") }
                </button>
            }
            { for backlash }
        </div>
    }
}

fn plots(plan: &ScrewCheckPlan, context: Context<'_>) -> Html {
    let errors = "Measured less commanded at each position, with the fit";
    let residuals = "What the fit leaves unexplained at each position";
    html! {
        <section class="section">
            <h2>{ "Error as measured, and what is left of it" }</h2>
            <div class="views">
                { figure(&screw_errors(plan), errors, context) }
                { figure(&screw_residuals(plan), residuals, context) }
            </div>
            <p class="quiet">{ "Filled: reached from below. Open: from above. Line: the fit; where it is three lines, the outer two are \
                                as far as the error that comes back every turn." }</p>
        </section>
    }
}

fn over_boards(plan: &ScrewCheckPlan, context: Context<'_>) -> Html {
    html! {
        <section class="section">
            <h2>{ "If the lead is left as it is" }</h2>
            <ul class="kept">{ for plan.over_board.iter().map(|over| html! {
                <li class="rule">
                    <span>{ format!("over a board of {}", context.length(over.length)) }</span>
                    <b>{ show::length(over.error, context.unit()).replace('-', "−") }</b>
                </li>
            }) }</ul>
        </section>
    }
}

fn figures_by_standard(iso: &Iso230, context: Context<'_>) -> Html {
    let all = [
        fact("Reversal value B", context.length(iso.reversal), None),
        fact(
            "Repeatability R",
            context.length(iso.repeatability),
            "two standard deviations to either side".to_owned(),
        ),
        fact(
            "Accuracy A",
            context.length(iso.accuracy),
            "both directions".to_owned(),
        ),
        fact(
            "Mean deviation M",
            context.length(iso.mean_deviation),
            "range, both directions".to_owned(),
        ),
    ];
    facts("By ISO 230-2", all)
}
