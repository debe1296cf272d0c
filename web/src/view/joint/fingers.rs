//! How the width is divided into pins and sockets.

use yew::{Html, html};

use crate::msg::{Edit, Msg};
use crate::state::{Field, JointField, LayoutKind, Leftover};
use crate::view::context::Context;
use crate::view::counts::{Counted, Counts};
use crate::view::field::Entry;
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

fn by_number(context: Context<'_>) -> Html {
    let choices = context.model.answer.choices.iter().map(|choice| Counted {
        count: choice.count,
        says: vec![
            context.length(choice.finger_width),
            show::count(choice.passes_per_socket, "pass", "passes"),
        ],
        reason: &choice.reason,
    });
    let counts = Counts {
        name: "count",
        legend: "Number of fingers, pins and sockets together",
        field: Field::Joint(JointField::Count),
        most: 7,
        choose: Edit::Count,
    };
    counts.view(&choices.collect::<Vec<_>>(), context)
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
