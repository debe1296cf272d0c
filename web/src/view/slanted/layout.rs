//! Tails, pins and slope, asked in the ways people think of them.

use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{DovetailField, Field, PinsBy, SlopeBy};
use crate::view::context::Context;
use crate::view::counts::{Counted, Counts};
use crate::view::field::Entry;
use crate::view::segment::Segment;
use crate::view::select::Select;
use crate::view::show;

/// The ways, in the order of the list.
const WAYS: [(PinsBy, &str); 4] = [
    (PinsBy::Widths, "by their widths"),
    (PinsBy::Ratio, "tail to pin"),
    (PinsBy::Equal, "tails and pins alike"),
    (PinsBy::Narrowest, "as narrow as the blade"),
];

/// The section.
pub(super) fn view(context: Context<'_>) -> Html {
    html! {
        <>
            <section class="section" aria-labelledby="tails">
                <h2 id="tails">{ "Tails" }</h2>
                { number(context) }
                { Entry::new(Field::Dovetail(DovetailField::Weights), "Graduated")
                    .hint("Relative widths of the tails, such as 1 1 2; blank for all alike.")
                    .view(context) }
            </section>
            { pins(context) }
            { slope(context) }
        </>
    }
}

fn entry(field: DovetailField, label: &'static str) -> Entry {
    Entry::new(Field::Dovetail(field), label)
}

fn number(context: Context<'_>) -> Html {
    let slanted = context.model.answer.slanted.as_deref();
    let choices = slanted.map_or(&[][..], |slanted| &slanted.choices);
    let counted = choices.iter().map(|choice| Counted {
        count: choice.count,
        says: vec![
            context.length(choice.tail_tip),
            show::count(choice.total_passes, "pass", "passes"),
        ],
        reason: &choice.reason,
    });
    let counts = Counts {
        name: "tails",
        legend: "Number of tails",
        field: Field::Dovetail(DovetailField::Tails),
        most: 6,
        choose: Edit::Tails,
    };
    counts.view(&counted.collect::<Vec<_>>(), context)
}

fn pins(context: Context<'_>) -> Html {
    let chosen = context.model.state.work.joint.dovetail.by;
    let choose = context.emit.reform(|index: usize| {
        let way = WAYS.get(index).map(|(way, _)| *way).unwrap_or_default();
        Msg::Edit(Edit::Pins(way))
    });
    let fields = match chosen {
        PinsBy::Widths => html! {
            <>
                { entry(DovetailField::NarrowPin, "Pin, outer face").view(context) }
                { entry(DovetailField::HalfPin, "Half-pin, outer face").view(context) }
            </>
        },
        PinsBy::Ratio => entry(DovetailField::Ratio, "Tail to pin, mid thickness")
            .unit(": 1")
            .view(context),
        PinsBy::Equal => Html::default(),
        PinsBy::Narrowest => entry(DovetailField::HalfPin, "Half-pin, outer face").view(context),
    };
    html! {
        <section class="section" aria-labelledby="pins">
            <div class="rule">
                <h2 id="pins">{ "Pins" }</h2>
                <Select
                    id="dovetail-pins"
                    label="How the pins are found"
                    options={WAYS.map(|(_, label)| label.into()).to_vec()}
                    chosen={WAYS.iter().position(|(way, _)| *way == chosen).unwrap_or_default()}
                    {choose}
                />
            </div>
            <div class="fields">{ fields }</div>
        </section>
    }
}

fn slope(context: Context<'_>) -> Html {
    let chosen = context.model.state.work.joint.dovetail.slope_by;
    let by = Segment {
        name: "slope-by",
        legend: "Slope of the flanks",
        is_plain: false,
        options: &[
            (SlopeBy::Run, "1 to a number"),
            (SlopeBy::Degrees, "in degrees"),
        ],
        chosen,
    };
    let field = match chosen {
        SlopeBy::Run => entry(DovetailField::Run, "One to")
            .hint("Usual: 6 in softwood, 8 in hardwood (common practice).")
            .view(context),
        SlopeBy::Degrees => entry(DovetailField::Degrees, "Degrees")
            .unit("°")
            .view(context),
    };
    html! {
        <section class="section">
            { by.view(|by| Msg::Edit(Edit::Slope(by)), context) }
            <div class="fields">{ field }</div>
        </section>
    }
}
