//! What seldom changes, folded away with a line that says how it stands.

use yew::{Html, html};

use super::{fit, groove, zero};
use crate::state::{Field, First, JointField};
use crate::view::context::Context;
use crate::view::icon::Icon;

/// The fit, the zero and the groove.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <details class="more">
            <summary>
                <b>{ "Fit, zero and groove" }</b>
                if needs_mending(context) {
                    <span class="mend">{ Icon::Exclamation.view() }{ "Something in here needs mending." }</span>
                } else {
                    <span class="says">{ says(context) }</span>
                }
                { Icon::Down.view() }
            </summary>
            <div class="inside">
                { fit::view(context) }
                { zero::view(context) }
                { groove::view(context) }
            </div>
        </details>
    }
}

const FIELDS: [JointField; 7] = [
    JointField::GlueGap,
    JointField::Proud,
    JointField::ZeroReading,
    JointField::ZeroMeasured,
    JointField::GrooveFromEdge,
    JointField::GrooveWidth,
    JointField::GrooveDepth,
];

fn needs_mending(context: Context<'_>) -> bool {
    let answer = &context.model.answer;
    FIELDS
        .iter()
        .any(|field| answer.problems_of(Field::Joint(*field)).next().is_some())
}

fn says(context: Context<'_>) -> String {
    let joint = &context.model.state.work.joint;
    let first = match joint.first {
        First::Pin => "A starts with a pin",
        First::Socket => "A starts with a socket",
    };
    let gap = context.text(Field::Joint(JointField::GlueGap));
    let groove = if joint.groove.on {
        "with a groove"
    } else {
        "no groove"
    };
    format!(
        "{first} · gap {gap} · zero {} · {groove}",
        zero::short(joint.zero.kind)
    )
}
