//! Drawers: from an opening to boards, bottoms and joints.

mod corner;
mod found;
mod swelling;

pub(super) use found::outcome;

use notchwright_core::units::Mm;
use yew::{Html, html};

use super::rows::words;
use crate::state::Field;
use crate::state::fields::{Known, drawer};
use crate::view::context::Context;
use crate::view::tool::{entries, folded, group, hinted, said};

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    html! {
        <>
            { group("Drawers", size(context)) }
            { group("Boards and joint", corner::view(context)) }
            { group("Bottom", bottom(context)) }
            { applied(context) }
            { swelling::view(context) }
        </>
    }
}

/// The word chosen for a field; nothing while the first is meant.
fn word<'a>(field: Known, context: Context<'a>) -> &'a str {
    let making = &context.model.state.work.job.making;
    making.drawer.text(field.name())
}

fn all<const N: usize>(fields: [Known; N]) -> [Field; N] {
    fields.map(Known::alone)
}

fn choice(
    field: Known,
    options: &'static [(&'static str, &'static str)],
    context: Context<'_>,
) -> Html {
    words(field.spot(Default::default()), options, context)
}

fn size(context: Context<'_>) -> Html {
    let is_opening = word(drawer::SIZE, context) != "outside";
    html! {
        <>
            { choice(drawer::SIZE, &[("", "the opening"), ("outside", "one drawer")], context) }
            <div class="fields">
                { entries(all([drawer::WIDTH, drawer::HEIGHT, drawer::DEPTH, drawer::COUNT]), context) }
            </div>
            if is_opening { { opening(context) } }
        </>
    }
}

/// What an opening is asked besides.
fn opening(context: Context<'_>) -> Html {
    let is_on_runners = word(drawer::SLIDES, context).is_empty();
    let rule = match word(drawer::HEIGHTS, context) {
        "graduated" => Some(drawer::STEP),
        "ratio" => Some(drawer::RATIO),
        _ => None,
    };
    html! {
        <>
            { choice(drawer::SLIDES, &[("", "wooden runners"), ("side", "slides beside"), ("under", "slides beneath")], context) }
            <div class="fields">
                { entries(all([drawer::ROOM]), context) }
                { hinted(drawer::ABOVE.alone(), blank("At the dampest; ", 2.0, context), context) }
                if !is_on_runners {
                    { hinted(drawer::BELOW.alone(), "None when blank.", context) }
                }
                { hinted(drawer::BEHIND.alone(), "None when blank.", context) }
                { entries(all([drawer::BETWEEN]), context) }
            </div>
            { choice(drawer::HEIGHTS, &[("", "equal"), ("graduated", "by a step"), ("ratio", "by a ratio")], context) }
            <div class="fields">{ entries(rule.map(Known::alone), context) }</div>
        </>
    }
}

fn bottom(context: Context<'_>) -> Html {
    let seldom = all([drawer::BOTTOM_ROOM, drawer::GROOVE_ROOM]);
    let is_usual = seldom.iter().all(|field| context.text(*field).is_empty());
    let says = if is_usual {
        "as usual".to_owned()
    } else {
        said(&seldom, context)
    };
    html! {
        <>
            <div class="fields">
                { entries(all([drawer::BOTTOM]), context) }
                { hinted(drawer::GROOVE_FROM.alone(), blank("", 10.0, context), context) }
                { hinted(drawer::GROOVE_DEPTH.alone(), format!("Blank: {}, or half the thinnest board.", context.length(Mm::constant(6.0))), context) }
                { hinted(drawer::GROOVE_BIT.alone(), "For settings of the fence.", context) }
            </div>
            { folded("Room in the groove", says, &seldom, html! {
                <div class="fields">
                    { hinted(drawer::BOTTOM_ROOM.alone(), blank("To the groove's floor; ", 0.5, context), context) }
                    { hinted(drawer::GROOVE_ROOM.alone(), blank("", 0.1, context), context) }
                </div>
            }, context) }
        </>
    }
}

fn applied(context: Context<'_>) -> Html {
    let fields = all([drawer::APPLIED, drawer::APPLIED_LAP, drawer::APPLIED_GAP]);
    let is_none = fields.iter().all(|field| context.text(*field).is_empty());
    let says = if is_none {
        "none".to_owned()
    } else {
        said(&fields, context)
    };
    let [thickness, lap, gap] = fields;
    folded(
        "Applied front",
        says,
        &fields,
        html! {
            <div class="fields">
                { entries([thickness], context) }
                { hinted(lap, "At each side; less than none for a front inside.", context) }
                { hinted(gap, blank("", 2.0, context), context) }
            </div>
        },
        context,
    )
}

/// What is taken for a field that is blank.
fn blank(before: &str, mm: f64, context: Context<'_>) -> String {
    format!("{before}{} when blank.", context.length(Mm::constant(mm)))
}
