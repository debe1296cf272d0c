//! What dovetails are asked with.

use yew::{Html, html};

use super::{helpers, layout};
use crate::msg::{Edit, Msg};
use crate::state::{Cutter, DovetailField, Field, Id, Item, JointField};
use crate::view::context::Context;
use crate::view::field::Entry;
use crate::view::icon::Icon;
use crate::view::joint;
use crate::view::select::Select;

const BOARDS: [(JointField, &str); 3] = [
    (JointField::Width, "Board width"),
    (JointField::ThicknessA, "Tails thick"),
    (JointField::ThicknessB, "Pins thick"),
];

/// The form.
pub(super) fn form(context: Context<'_>) -> Html {
    html! {
        <>
            { joint::boards_as(BOARDS, context) }
            { joint::cutters(context) }
            { layout::view(context) }
            { more(context) }
        </>
    }
}

/// What seldom changes.
fn more(context: Context<'_>) -> Html {
    html! {
        <details class="more">
            <summary>
                <b>{ "Fit, zero, lap, wedge and blade" }</b>
                if needs_mending(context) {
                    <span class="mend">{ Icon::Exclamation.view() }{ "Something in here needs mending." }</span>
                } else {
                    <span class="says">{ says(context) }</span>
                }
                { Icon::Down.view() }
            </summary>
            <div class="inside">
                <div class="fields">
                    { Entry::new(Field::Joint(JointField::GlueGap), "Glue gap, each flank").view(context) }
                    { Entry::new(Field::Joint(JointField::Proud), "Stand proud").hint("Blank for flush.").view(context) }
                    { Entry::new(Field::Dovetail(DovetailField::Lap), "Lap").hint("Half-blind; blank for through.").view(context) }
                </div>
                { pin_cutter(context) }
                { joint::zero_view(context) }
                { helpers::wedge(context) }
                { helpers::lean(context) }
            </div>
        </details>
    }
}

fn needs_mending(context: Context<'_>) -> bool {
    let joint = [
        JointField::GlueGap,
        JointField::Proud,
        JointField::ZeroReading,
        JointField::ZeroMeasured,
    ];
    let own = [
        DovetailField::Lap,
        DovetailField::LeanOffset,
        DovetailField::LeanHeight,
        DovetailField::WedgeLength,
        DovetailField::WedgeThin,
    ];
    let answer = &context.model.answer;
    let fields = joint
        .map(Field::Joint)
        .into_iter()
        .chain(own.map(Field::Dovetail));
    let mut wrong = fields.map(|field| answer.problems_of(field).next().is_some());
    wrong.any(|is_wrong| is_wrong)
}

fn says(context: Context<'_>) -> String {
    let gap = context.text(Field::Joint(JointField::GlueGap));
    let lap = context.text(Field::Dovetail(DovetailField::Lap));
    let kind = if lap.trim().is_empty() {
        "through".to_owned()
    } else {
        format!("half-blind, lap {lap}")
    };
    format!("gap {gap} · {kind}")
}

fn pin_cutter(context: Context<'_>) -> Html {
    let cutters = context.model.state.work.shop.cutters.items();
    let name = |cutter: &Cutter| cutter.name.text.clone().into();
    let options = std::iter::once("the same cutter".into()).chain(cutters.iter().map(name));
    let chosen = context.model.state.work.joint.dovetail.pin_cutter;
    let place = cutters.iter().position(|cutter| cutter.id() == chosen);
    let ids: Vec<Id> = cutters.iter().map(Item::id).collect();
    let choose = context.emit.reform(move |index: usize| {
        let id = index
            .checked_sub(1)
            .and_then(|index| ids.get(index).copied());
        Msg::Edit(Edit::PinCutter(id.unwrap_or_default()))
    });
    html! {
        <label class="rule">
            <span class="quiet">{ "Upright cuts and pins with" }</span>
            <Select
                id="pin-cutter"
                label="Cutter for upright cuts and pins"
                options={options.collect::<Vec<_>>()}
                chosen={place.map_or(0, |place| place + 1)}
                {choose}
            />
        </label>
    }
}
