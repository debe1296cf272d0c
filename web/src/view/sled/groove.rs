//! A groove on the router table.

use notchwright_core::drawing::groove_setup_drawing;
use notchwright_core::groove::{GrooveSetupPlan, Marks};
use notchwright_core::units::Mm;
use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Field, RoutField, WidthBy};
use crate::view::context::Context;
use crate::view::outcome::state;
use crate::view::segment::Segment;
use crate::view::show;
use crate::view::tool::{entries, fact, facts, figure, folded, group, hinted, notes, plan, said};

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    let rout = &context.model.state.work.sled.rout;
    let by = Segment {
        name: "width-by",
        legend: "Its width is",
        is_plain: false,
        options: &[
            (WidthBy::Sheet, "what the sheet needs"),
            (WidthBy::Width, "known"),
        ],
        chosen: rout.by,
    };
    let width: &[RoutField] = match rout.by {
        WidthBy::Sheet => &[RoutField::Sheet, RoutField::Clearance],
        WidthBy::Width => &[RoutField::Width],
    };
    let stopped = [RoutField::From, RoutField::To].map(Field::Rout);
    let says = if rout.from.is_blank() && rout.to.is_blank() {
        "from end to end".to_owned()
    } else {
        said(&stopped, context)
    };
    html! {
        <>
            { group("Groove on the router table", html! {
                <>
                    { by.view(|by| Msg::Edit(Edit::WidthBy(by)), context) }
                    <div class="fields">
                        { entries(width.iter().map(|field| Field::Rout(*field)), context) }
                        { hinted(Field::Rout(RoutField::FromEdge), "From the reference edge.", context) }
                        { entries([RoutField::Bit, RoutField::Depth, RoutField::PassDepth].map(Field::Rout), context) }
                    </div>
                </>
            }) }
            { folded("Stopped groove", says, &stopped, html! {
                <>
                    <p class="quiet">{ "Both from the board's leading end; blank for a groove from end to end." }</p>
                    <div class="fields">{ entries(stopped, context) }</div>
                </>
            }, context) }
        </>
    }
}

/// The outcome.
pub(super) fn outcome(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.sled else {
        return Html::default();
    };
    let groove = &answer.groove;
    let found = groove.plan.as_ref().map(|planned| {
        let found = &planned.plan;
        let label = "The board on the router table, with the groove and the bit's passes";
        plan(
            groove,
            html! {
                <>
                    { figure(&groove_setup_drawing(found), label, context) }
                    { passes(found, context) }
                    { for found.marks.map(|marks| self::marks(marks, found.end_radius, context)) }
                    { notes(&planned.notes, context) }
                </>
            },
        )
    });
    html! { <>{ state(groove, context) }{ for found }</> }
}

fn passes(plan: &GrooveSetupPlan, context: Context<'_>) -> Html {
    let depths = list(&plan.depths, context);
    html! {
        <section class="section">
            <h2>{ "Fence to the bit's nearer side" }</h2>
            <ol class="settings">{ for plan.passes.iter().map(|pass| html! {
                <li><b>{ context.length(pass.fence_to_bit) }</b>{ for show::fraction(pass.fence_to_bit, context.unit()).map(|fraction| html! { <small>{ fraction }</small> }) }</li>
            }) }</ol>
            if !depths.is_empty() {
                <p>{ format!("At each setting, raise the bit to {depths}.") }</p>
            }
            <p class="quiet">{ "Both grooves of a pair from the same reference edge: then they are parallel, even on a board that is not square." }</p>
        </section>
    }
}

fn list(lengths: &[Mm], context: Context<'_>) -> String {
    let all: Vec<_> = lengths
        .iter()
        .map(|length| context.length(*length))
        .collect();
    all.join(", then ")
}

fn marks(marks: Marks, radius: Mm, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    facts(
        "Marks for a stopped groove",
        [
            fact(
                "Start, past the far mark",
                length(marks.start_past_far_mark),
                format!(
                    "leading end {} from the bit's middle",
                    length(marks.start_from_middle)
                ),
            ),
            fact(
                "Stop, past the near mark",
                length(marks.stop_past_near_mark),
                format!(
                    "leading end {} from the bit's middle",
                    length(marks.stop_from_middle)
                ),
            ),
            fact("Feed between them", length(marks.feed), None),
            fact(
                "Round ends, radius",
                length(radius),
                "square them with a chisel or round the sheet".to_owned(),
            ),
        ],
    )
}
