//! How square the fence is, what to do about it, and how it was before.

use notchwright_core::drawing::{HistoryPoint, square_correction, square_history};
use notchwright_core::square::{SquareTestPlan, Towards};
use notchwright_core::units::{Mm, write_number};
use yew::{Html, html};

use crate::answer::tools::{KeptTest, SledAnswer};
use crate::msg::{Edit, Msg};
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::outcome::state;
use crate::view::show;
use crate::view::tool::{fact, facts, figure, notes, plan};

/// The outcome.
pub(super) fn view(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.sled else {
        return Html::default();
    };
    let square = &answer.square;
    let found = square.plan.as_ref().map(|planned| {
        plan(
            square,
            html! {
                <>
                    { verdict(&planned.plan, context) }
                    { figure(&square_correction(&planned.plan), correction(&planned.plan, context), context) }
                    { figures(&planned.plan, answer, context) }
                    { notes(&planned.notes, context) }
                </>
            },
        )
    });
    html! {
        <>
            { state(square, context) }
            { for found }
            { history(answer, context) }
        </>
    }
}

fn verdict(plan: &SquareTestPlan, context: Context<'_>) -> Html {
    let (sign, title) = if plan.significant {
        (Icon::Exclamation.sign("warning"), "The fence is out.")
    } else {
        (Icon::Tick.sign("fits"), "Square, as far as this shows.")
    };
    html! {
        <div class="verdict" role="status">
            { sign }
            <strong>{ title }</strong>
            <span>{ correction(plan, context) }</span>
        </div>
    }
}

fn correction(plan: &SquareTestPlan, context: Context<'_>) -> String {
    let by = context.length(plan.travel);
    match plan.towards {
        Towards::Panel => format!("Move the fence's outer end {by} towards the panel."),
        Towards::Away => format!("Move the fence's outer end {by} away from the panel."),
        Towards::None => "Leave the fence where it is.".to_owned(),
    }
}

fn figures(plan: &SquareTestPlan, answer: &SledAnswer, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let noise = Mm::constant(500.0) * plan.uncertainty_radians;
    let joint = plan.over_thickness.map(|slant| {
        fact(
            "In this joint",
            length(slant),
            "slant of a flank over the thicker board".to_owned(),
        )
    });
    let holes = answer.fit.current().and_then(|fit| fit.plan.holes);
    let holes = holes.map(|holes| {
        let says = if plan.per500.abs() <= holes.per500 {
            "over 500 mm, which is enough"
        } else {
            "over 500 mm, which is not enough: drill anew"
        };
        let range = format!("±{}", length(holes.per500));
        fact("Slotted holes allow", range, says.to_owned())
    });
    let error = format!(
        "{}°, or {}° in all",
        write_number(plan.error_degrees, 4).replace('-', "−"),
        write_number(plan.angle_degrees, 4)
    );
    let all = [
        fact("Error over 500 mm", signed(plan.per500, context), error),
        fact(
            "Uncertain by",
            format!("±{}", length(noise)),
            "over 500 mm, from the readings".to_owned(),
        ),
    ];
    facts("In numbers", all.into_iter().chain(joint).chain(holes))
}

fn signed(value: Mm, context: Context<'_>) -> String {
    let sign = if value.is_below(Mm::ZERO) { "−" } else { "+" };
    format!("{sign}{}", context.length(value.abs()))
}

fn history(answer: &SledAnswer, context: Context<'_>) -> Html {
    let keep = answer.square.is_current.then(|| {
        html! {
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::KeepTest)}>{ "Keep this test" }</button>
            </div>
        }
    });
    let points: Vec<_> = answer.tests.iter().filter_map(point).collect();
    html! {
        <section class="section">
            <h2>{ "Tests of this sled" }</h2>
            if answer.tests.is_empty() {
                <p class="quiet">{ "Keep a test, and the next shows whether the fence has moved since." }</p>
            }
            { for square_history(&points).map(|picture| figure(&picture, "Error of each test, in order", context)) }
            <ul class="kept">{ for answer.tests.iter().map(|test| kept(test, context)) }</ul>
            { for keep }
        </section>
    }
}

fn point(test: &KeptTest) -> Option<HistoryPoint> {
    Some(HistoryPoint {
        error_per_500: test.per500?,
        uncertainty_per_500: test.uncertainty,
    })
}

fn kept(test: &KeptTest, context: Context<'_>) -> Html {
    let says = test.per500.map_or_else(
        || "cannot be read".to_owned(),
        |error| {
            format!(
                "{} over 500 mm, ±{}",
                signed(error, context),
                show::bare(test.uncertainty, context.unit())
            )
        },
    );
    html! {
        <li key={test.id.0} class="rule">
            <span><b>{ &test.date }</b>{ " · " }{ says }</span>
            <button type="button" class="button plain" aria-label={format!("Remove the test of {}", test.date)} onclick={context.edit(Edit::RemoveTest(test.id))}>
                { Icon::Cross.view() }
            </button>
        </li>
    }
}
