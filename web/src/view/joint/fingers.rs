//! How the width is divided into pins and sockets.

use notchwright_core::joint::box_joint::Choice;
use notchwright_core::order::in_order;
use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Field, JointField, LayoutKind, Leftover};
use crate::view::chips::{self, Chip};
use crate::view::context::Context;
use crate::view::field::{self, Entry};
use crate::view::segment::Segment;
use crate::view::select::Select;
use crate::view::show;

/// The rules, in the order of the list.
const RULES: [(LayoutKind, &str); 4] = [
    (LayoutKind::Count, "by number"),
    (LayoutKind::Finger, "by width"),
    (LayoutKind::OnePass, "one pass per socket"),
    (LayoutKind::Pattern, "by a pattern"),
];

/// The rule, and what it needs to know.
pub(super) fn view(context: Context<'_>) -> Html {
    let joint = &context.model.state.work.joint;
    html! {
        <section class="section" aria-labelledby="fingers">
            <div class="rule">
                <h2 id="fingers">{ "Fingers" }</h2>
                { rules(joint.layout, context) }
            </div>
            { match joint.layout {
                LayoutKind::Count => by_number(context),
                LayoutKind::Finger => by_width(context),
                LayoutKind::OnePass => one_pass(context),
                LayoutKind::Pattern => pattern(context),
            } }
        </section>
    }
}

fn rules(chosen: LayoutKind, context: Context<'_>) -> Html {
    let choose = context.emit.reform(|index: usize| {
        let rule = RULES.get(index).map(|(rule, _)| *rule).unwrap_or_default();
        Msg::Edit(Edit::Layout(rule))
    });
    html! {
        <Select
            id="joint-layout"
            label="How the width is divided into fingers"
            options={RULES.map(|(_, label)| label.into()).to_vec()}
            chosen={RULES.iter().position(|(rule, _)| *rule == chosen).unwrap_or_default()}
            {choose}
        />
    }
}

/// More chips than this would be a list to search in, not a choice.
const MOST_CHIPS: usize = 7;

fn by_number(context: Context<'_>) -> Html {
    let choices = &context.model.answer.choices;
    let count = Field::Joint(JointField::Count);
    let chosen = context.text(count).trim().parse().ok();
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
    let legend = html! { <span class="for-readers">{ "Number of fingers, pins and sockets together" }</span> };
    let other = Entry::new(count, "Or type").bare().view(context);
    html! {
        <>
            { chips::view("count", legend, &chips, other, context) }
            { field::problem(count, context) }
            <p class="quiet">{ for reason(choices, chosen, context) }</p>
        </>
    }
}

fn chip(choice: &Choice, is_best: bool, chosen: Option<u32>, context: Context<'_>) -> Chip {
    let passes = show::count(choice.passes_per_socket, "pass", "passes");
    Chip {
        key: choice.count.to_string(),
        name: choice.count.to_string().into(),
        says: vec![context.length(choice.finger_width), passes],
        is_best,
        is_chosen: chosen == Some(choice.count),
        choose: Msg::Edit(Edit::Count(choice.count as usize)),
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

fn by_width(context: Context<'_>) -> Html {
    let hint = match context.model.answer.current() {
        Some(planned) => format!(
            "{} fingers of {} are the nearest odd number.",
            planned.plan.count,
            context.length(planned.plan.finger_width)
        ),
        None => "The nearest odd number of equal fingers is taken.".into(),
    };
    Entry::new(Field::Joint(JointField::FingerWidth), "Wanted finger width")
        .hint(hint)
        .view(context)
}

fn one_pass(context: Context<'_>) -> Html {
    let leftover = Segment {
        name: "leftover",
        legend: "Sockets are as wide as the cutter. The rest of the width",
        is_plain: false,
        options: &[
            (Leftover::Ends, "goes to both end fingers"),
            (Leftover::Far, "stays at the far edge"),
            (Leftover::Rip, "is ripped off"),
        ],
        chosen: context.model.state.work.joint.leftover,
    };
    leftover.view(|leftover| Msg::Edit(Edit::Leftover(leftover)), context)
}

fn pattern(context: Context<'_>) -> Html {
    let mirrored = Segment {
        name: "mirrored",
        legend: "After the last weight",
        is_plain: false,
        options: &[(true, "run back (mirrored)"), (false, "end")],
        chosen: context.model.state.work.joint.mirrored,
    };
    html! {
        <>
            { Entry::new(Field::Joint(JointField::Weights), "Weights from the reference edge")
                .hint("Relative widths of pins and sockets, with spaces between them: 1 1 2 1 3")
                .view(context) }
            { mirrored.view(|mirrored| Msg::Edit(Edit::Mirrored(mirrored)), context) }
        </>
    }
}
