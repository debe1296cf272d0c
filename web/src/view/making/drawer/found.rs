//! What drawers come to.

use notchwright_core::drawer::{DrawerBoxPlan, DrawerPlan, GrooveRun, Nudge, Nudged, PartRow};
use notchwright_core::drawing::{drawer_elevation, drawer_plan_view};
use notchwright_core::stop::Board;
use notchwright_core::units::{Mm, Unit};
use yew::{Html, html};

use crate::msg::{Edit, HandOver};
use crate::view::context::Context;
use crate::view::outcome::state;
use crate::view::show;
use crate::view::tool::{fact, figure, notes, plan};

/// The outcome.
pub(in crate::view::making) fn outcome(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.making else {
        return Html::default();
    };
    let drawer = &answer.drawer;
    let found = drawer.plan.as_ref().map(|planned| {
        let inside = html! {
            <>
                { found(&planned.plan, drawer.is_current, context) }
                { notes(&planned.notes, context) }
            </>
        };
        plan(drawer, inside)
    });
    html! { <>{ state(drawer, context) }{ for found }</> }
}

fn found(found: &DrawerBoxPlan, is_current: bool, context: Context<'_>) -> Html {
    let from_above = "The topmost drawer from above, and its lower corner cut across";
    let drawers = found.drawers.iter().enumerate();
    html! {
        <>
            { for drawer_elevation(found).map(|picture| figure(&picture, "The opening with its drawers, from the front", context)) }
            { for drawers.map(|(place, drawer)| one(found, place, drawer, is_current, context)) }
            { for drawer_plan_view(found, 0).map(|picture| figure(&picture, from_above, context)) }
            <section class="section">
                <h2>{ "Boards" }</h2>
                <dl class="facts">{ for found.parts.iter().map(|row| board(row, context)) }</dl>
                if is_current {
                    <div class="buttons">
                        <button type="button" class="button" onclick={context.edit(Edit::HandOver(HandOver::Parts))}>{ "To Parts" }</button>
                        <button type="button" class="button" onclick={context.edit(Edit::HandOver(HandOver::Sheet))}>{ "To Sheet" }</button>
                    </div>
                }
            </section>
        </>
    }
}

/// A drawer, or several alike.
fn one(
    found: &DrawerBoxPlan,
    place: usize,
    drawer: &DrawerPlan,
    is_current: bool,
    context: Context<'_>,
) -> Html {
    let title = match (found.drawers.len(), drawer.count) {
        (1, 1) => "The drawer".to_owned(),
        (1, count) => format!("{count} drawers, all alike"),
        _ => format!("Drawer {} from the top", place + 1),
    };
    let to_joint = Edit::HandOver(HandOver::Joint(place));
    html! {
        <section class="section">
            <h2>{ title.clone() }</h2>
            <dl class="facts">
                { sizes(drawer, context) }
                { groove(drawer, context) }
                { for fence(drawer, context) }
                { swelling(found, place, drawer, context) }
                { bottom(drawer, context) }
            </dl>
            { for drawer.nudges.iter().map(|nudge| nudged(nudge, context)) }
            if is_current {
                <div class="buttons">
                    <button type="button" class="button" onclick={context.edit(to_joint)}>
                        { "To Joint" }<span class="for-readers">{ format!(": {title}") }</span>
                    </button>
                </div>
            }
        </section>
    }
}

/// Several lengths with one unit: `880 × 68.5 × 590 mm`.
fn product(lengths: &[Mm], context: Context<'_>) -> String {
    joined(lengths, " × ", context)
}

fn joined(lengths: &[Mm], between: &str, context: Context<'_>) -> String {
    let unit = context.unit();
    let all: Vec<_> = lengths.iter().map(|it| show::bare(*it, unit)).collect();
    let gap = match unit {
        Unit::Mm => " ",
        Unit::Inch => "",
    };
    format!("{}{gap}{}", all.join(between), unit.symbol())
}

/// What a solid bottom does in its groove.
fn bottom(drawer: &DrawerPlan, context: Context<'_>) -> Html {
    let Some(moves) = drawer.bottom.movement else {
        return Html::default();
    };
    let length = |length| context.length(length);
    let says = format!(
        "at each edge; from front to back it is then {}, at the dampest {}",
        length(moves.driest),
        length(moves.wettest)
    );
    fact("Bottom held at the driest", length(moves.held_least), says)
}

fn sizes(drawer: &DrawerPlan, context: Context<'_>) -> Html {
    let inside = drawer.inside;
    let count = drawer.joint.count;
    let back = drawer.joint.back.as_ref();
    let says = back.map(|_| "front and back are two joints".to_owned());
    let joint = match drawer.joint.finger_width {
        Some(width) => {
            let fingers = format!("{count} of {}", context.length(width));
            fact("Fingers", fingers, says)
        }
        None => fact("Tails", count.to_string(), says),
    };
    html! {
        <>
            { fact("Outside", product(&[drawer.width, drawer.height, drawer.depth], context), "width, height, depth".to_owned()) }
            { fact("Inside", product(&[inside.width, inside.height, inside.depth], context), None) }
            { joint }
        </>
    }
}

fn groove(drawer: &DrawerPlan, context: Context<'_>) -> Html {
    let groove = &drawer.groove;
    let runs: Vec<_> = groove
        .runs
        .iter()
        .map(|run| run_shown(run, context))
        .collect();
    let says = format!(
        "{} wide, {} deep; {}",
        context.length(groove.width),
        context.length(groove.depth),
        runs.join("; ")
    );
    fact(
        "Groove from the lower edge",
        context.length(groove.from_edge),
        says,
    )
}

fn run_shown(run: &GrooveRun, context: Context<'_>) -> String {
    // Sides mirror each other: only from the front are both grooved alike.
    let (whose, from, end) = match run.board {
        Board::A => ("sides", "", " from the front end"),
        Board::B => ("front and back", "from ", ""),
    };
    let length = |length| context.length(length);
    run.stopped.map_or_else(
        || format!("{whose} from end to end"),
        |stop| {
            format!(
                "{whose} stopped, {from}{} to {}{end}",
                length(stop.from),
                length(stop.to)
            )
        },
    )
}

/// How the fence is set for the groove, in all four boards alike.
fn fence(drawer: &DrawerPlan, context: Context<'_>) -> Option<Html> {
    let passes = &drawer.groove.runs.first()?.passes;
    let settings: Vec<_> = passes.iter().map(|pass| pass.fence_to_bit).collect();
    let says = "to its nearer side; the lower edge runs along the fence".to_owned();
    (!settings.is_empty()).then(|| fact("Fence to the bit", joined(&settings, ", ", context), says))
}

/// What the height does with the air, and what that leaves above.
fn swelling(
    found: &DrawerBoxPlan,
    place: usize,
    drawer: &DrawerPlan,
    context: Context<'_>,
) -> Html {
    let length = |length| context.length(length);
    let from_to = |driest, wettest| {
        format!(
            "{} at the driest, {} at the dampest",
            length(driest),
            length(wettest)
        )
    };
    let moves = drawer.movement;
    let gap = found.places.iter().find(|it| it.drawer == place);
    let gap = gap.map(|it| it.gap_above).map(|gap| {
        let says = moves.map(|_| from_to(gap.driest, gap.wettest));
        fact("Room above, as cut", length(gap.now), says)
    });
    let height = moves.map(|it| {
        fact(
            "Height, as cut",
            length(drawer.height),
            from_to(it.driest, it.wettest),
        )
    });
    html! { <>{ for height }{ for gap }</> }
}

fn nudged(nudge: &Nudge, context: Context<'_>) -> Html {
    let what = match nudge.what {
        Nudged::Height => "Height",
        Nudged::Groove => "Groove",
    };
    let (from, to) = (context.length(nudge.from), context.length(nudge.to));
    let why = context.message(&nudge.reason);
    html! { <p class="changed">{ format!("{what}: {to} in place of {from}. {why}") }</p> }
}

fn board(row: &PartRow, context: Context<'_>) -> Html {
    let size = product(&[row.length, row.width, row.thickness], context);
    let grain = if row.may_turn {
        ", grain either way"
    } else {
        ""
    };
    let count = match row.count {
        1 => "one".to_owned(),
        count => format!("{count} of them"),
    };
    html! {
        <div>
            <dt>{ row.name.clone() }</dt>
            <dd>{ size }<small>{ format!("{count}{grain}") }</small></dd>
        </div>
    }
}
