//! What helps to set up: the wedge that turns the pin board, and a check of the blade's lean.

use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::math::atan2;
use notchwright_core::units::{Mm, parse_length, write_number};
use yew::{Html, html};

use crate::state::{DovetailField, Field};
use crate::view::context::Context;
use crate::view::field::Entry;

fn read(field: DovetailField, context: Context<'_>) -> Option<Mm> {
    let entry = context.model.state.work.joint.dovetail.entry(field);
    parse_length(&entry.text, entry.unit).ok()
}

fn plan(context: Context<'_>) -> Option<&DovetailPlan> {
    let slanted = context.model.answer.slanted.as_deref()?;
    slanted.dovetail.current().map(|planned| &planned.plan)
}

/// A wedge along the carriage: as much thicker at one end as the slope times its length.
pub(super) fn wedge(context: Context<'_>) -> Html {
    let entry =
        |field, label: &'static str| Entry::new(Field::Dovetail(field), label).view(context);
    let says = plan(context).and_then(|plan| {
        let length = read(DovetailField::WedgeLength, context)?;
        let thin = read(DovetailField::WedgeThin, context)?;
        let rise = length * plan.slope;
        Some(format!(
            "Thin end {}, thick end {}: it turns the pin board by {}°. The same shift at the end of an angled fence: {}.",
            context.length(thin),
            context.length(thin + rise),
            write_number(plan.angle_degrees, 3),
            context.length(rise)
        ))
    });
    html! {
        <section class="section">
            <h2>{ "Wedge for the pin board" }</h2>
            <div class="fields">
                { entry(DovetailField::WedgeLength, "Along the carriage") }
                { entry(DovetailField::WedgeThin, "Thin end") }
            </div>
            <p aria-live="polite">{ for says }</p>
        </section>
    }
}

/// The blade's lean, measured with a square: how far it leans over a height.
pub(super) fn lean(context: Context<'_>) -> Html {
    let entry =
        |field, label: &'static str| Entry::new(Field::Dovetail(field), label).view(context);
    let says = plan(context).and_then(|plan| {
        let offset = read(DovetailField::LeanOffset, context)?;
        let height = read(DovetailField::LeanHeight, context).filter(|height| *height > Mm::ZERO)?;
        let leans = atan2(offset.mm(), height.mm()).to_degrees();
        Some(format!(
            "The blade leans {}°, {}° off what was asked: over that height it should be {}. The dry fit counts with it.",
            write_number(leans, 3),
            write_number(leans - plan.angle_degrees, 3).replace('-', "−"),
            context.length(height * plan.slope)
        ))
    });
    html! {
        <section class="section">
            <h2>{ "Check of the blade's lean" }</h2>
            <p class="quiet">{ "Blank while it is not measured." }</p>
            <div class="fields">
                { entry(DovetailField::LeanOffset, "Leans by") }
                { entry(DovetailField::LeanHeight, "Over a height of") }
            </div>
            <p aria-live="polite">{ for says }</p>
        </section>
    }
}
