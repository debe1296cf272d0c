//! Tails, pins and slope, asked in the ways people think of them.

use notchwright_core::joint::dovetail::Choice;
use notchwright_core::order::in_order;
use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{DovetailField, Field, PinsBy, SlopeBy};
use crate::view::chips::{self, Chip};
use crate::view::context::Context;
use crate::view::field::{self, Entry};
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

/// More chips than this would be a list to search in, not a choice.
const MOST_CHIPS: usize = 6;

fn number(context: Context<'_>) -> Html {
    let slanted = context.model.answer.slanted.as_deref();
    let choices = slanted.map_or(&[][..], |slanted| &slanted.choices);
    let tails = Field::Dovetail(DovetailField::Tails);
    let chosen = context.text(tails).trim().parse().ok();
    let best = choices.first().map(|choice| choice.count);
    let offered = choices
        .iter()
        .enumerate()
        .filter(|(rank, choice)| *rank < MOST_CHIPS || Some(choice.count) == chosen)
        .map(|(_, choice)| choice);
    let chips: Vec<_> = in_order(offered, |one, other| one.count.cmp(&other.count))
        .into_iter()
        .map(|choice| chip(choice, best == Some(choice.count), chosen, context))
        .collect();
    let legend = html! { <span class="for-readers">{ "Number of tails" }</span> };
    let other = Entry::new(tails, "Or type").bare().view(context);
    html! {
        <>
            { chips::view("tails", legend, &chips, other, context) }
            { field::problem(tails, context) }
            <p class="quiet">{ for reason(choices, chosen, context) }</p>
        </>
    }
}

fn chip(choice: &Choice, is_best: bool, chosen: Option<u32>, context: Context<'_>) -> Chip {
    let passes = show::count(choice.total_passes, "pass", "passes");
    Chip {
        key: choice.count.to_string(),
        name: choice.count.to_string().into(),
        says: vec![context.length(choice.tail_tip), passes],
        is_best,
        is_chosen: chosen == Some(choice.count),
        choose: Msg::Edit(Edit::Tails(choice.count as usize)),
    }
}

/// Why the chosen number stands where it stands, or the best one while another is typed.
fn reason(choices: &[Choice], chosen: Option<u32>, context: Context<'_>) -> Option<String> {
    let choice = choices.iter().find(|choice| Some(choice.count) == chosen);
    let best = choices.first()?;
    let reason = context.message(&choice.unwrap_or(best).reason);
    Some(match choice {
        Some(choice) => format!("{}: {reason}", choice.count),
        None => format!("Recommended is {}: {reason}", best.count),
    })
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
