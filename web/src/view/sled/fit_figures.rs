//! Where the runner goes, the stroke, and what play does.

use notchwright_core::problem::{Note, Planned};
use notchwright_core::sled::{SledFitPlan, Stroke};
use notchwright_core::units::Mm;
use yew::{Html, html};

use super::stroke;
use crate::state::Side;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::outcome::state;
use crate::view::show;
use crate::view::tool::{fact, facts, notes, plan};

/// The outcome.
pub(super) fn view(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.sled else {
        return Html::default();
    };
    let fit = &answer.fit;
    let found = fit.plan.as_ref().map(|planned| {
        plan(
            fit,
            html! {
                <>
                    { verdict(planned, context) }
                    { runner(&planned.plan, context) }
                    { stroke::view(&planned.plan, context) }
                    { travel(&planned.plan, context) }
                    { turning(&planned.plan, context) }
                    { notes(&below(&planned.notes), context) }
                </>
            },
        )
    });
    html! { <>{ state(fit, context) }{ for found }</> }
}

/// Whether it stays on the table; readers hear it whenever it changes.
fn verdict(planned: &Planned<SledFitPlan>, context: Context<'_>) -> Html {
    let off = planned
        .notes
        .iter()
        .find(|note| LEAVES.contains(&note.code));
    let runner = &planned.plan.runner;
    let (sign, title, says) = match off {
        Some(note) => (
            Icon::Cross.sign("clash"),
            "The runner leaves the table.",
            context.message(&note.message),
        ),
        None => (
            Icon::Tick.sign("fits"),
            "The runner stays on the table.",
            format!(
                "At the nearer end of its stroke {} are left.",
                context.length(runner.near_left.min(runner.far_left))
            ),
        ),
    };
    html! {
        <div class="verdict" role="status">
            { sign }
            <strong>{ title }</strong>
            <span>{ says }</span>
        </div>
    }
}

/// What the verdict does not say already.
fn below(notes: &[Note]) -> Vec<Note> {
    let others = notes.iter().filter(|note| !LEAVES.contains(&note.code));
    others.cloned().collect()
}

/// Notes of a runner that does not stay on.
const LEAVES: [&str; 2] = ["runner-too-long", "leaves-table"];

fn runner(plan: &SledFitPlan, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let runner = &plan.runner;
    let side = context
        .model
        .state
        .work
        .shop
        .saws
        .chosen()
        .map(|saw| saw.side);
    let side = match side {
        Some(Side::Right) => "right of the blade line",
        _ => "left of the blade line",
    };
    let measured = plan.from_measured.map(|measured| {
        let says = format!(
            "{}, by your left-overs; then {} left at both ends",
            way(measured.forward),
            length(measured.left_after)
        );
        fact("As measured, move it", length(measured.forward.abs()), says)
    });
    let second = plan.second_runner.map(|second| {
        let from_left = format!(
            "{} from the base's left edge",
            length(second.from_base_left)
        );
        fact("The other runner", length(second.from_blade), from_left)
    });
    let now = format!(
        "{}; left over as it is: near end {}, far end {}",
        way(runner.forward),
        length(runner.near_left),
        length(runner.far_left)
    );
    let all = [
        fact(
            "Runner's middle",
            length(runner.from_blade),
            side.to_owned(),
        ),
        fact(
            "From the base's left edge",
            length(runner.from_base_left),
            None,
        ),
        fact("Move the runner", length(runner.forward.abs()), now),
        fact("Then left at both ends", length(runner.left_after), None),
        fact(
            "Longest span that stays on",
            length(runner.longest_span),
            "between the outermost contacts".to_owned(),
        ),
    ];
    facts("Runner", all.into_iter().chain(measured).chain(second))
}

/// Which way, in the words of somebody at the saw.
fn way(forward: Mm) -> &'static str {
    if forward.is_above(Mm::ZERO) {
        "away from you"
    } else if forward.is_below(Mm::ZERO) {
        "towards you"
    } else {
        "it is in the middle"
    }
}

fn travel(plan: &SledFitPlan, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let Stroke {
        start,
        end,
        length: stroke,
    } = plan.travel;
    let slot = plan.slot;
    let to = |from: Mm, to: Mm| format!("{} to {}", show::bare(from, context.unit()), length(to));
    let widest = plan.widest_board.map(|widest| {
        fact(
            "Widest board",
            length(widest),
            "that the screw brings past the blade".to_owned(),
        )
    });
    let all = [
        fact(
            "Blade above the table",
            length(plan.height),
            format!("deepest cut here {}", length(plan.deepest_cut)),
        ),
        fact(
            "Travel",
            length(stroke),
            format!(
                "carriage face {} before the arbor to {} past it",
                length(-start),
                length(end)
            ),
        ),
        fact(
            "Smallest travel for this board",
            length(plan.smallest_travel),
            None,
        ),
        fact(
            "Smallest window for this cut",
            length(plan.smallest_window),
            "carriage face to front rail".to_owned(),
        ),
        fact(
            "Half chord of the blade",
            length(plan.half_chord_base),
            format!(
                "on the base; {} at the table",
                length(plan.half_chord_table)
            ),
        ),
        fact(
            "Slot through the base, on top",
            to(slot.top_near, slot.top_far),
            format!(
                "underneath {}, from the near edge",
                to(slot.under_near, slot.under_far)
            ),
        ),
    ];
    facts("Travel and blade", all.into_iter().chain(widest))
}

fn turning(plan: &SledFitPlan, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let play = plan.yaw.map(|yaw| {
        let over = yaw
            .over_width
            .map(|over| format!(", {} at the board's far edge", length(over)));
        fact(
            "Play lets the sled turn",
            degrees(yaw.degrees),
            format!(
                "a flank wanders {} over the board's thickness{}",
                length(yaw.over_thickness),
                over.unwrap_or_default()
            ),
        )
    });
    let holes = plan.holes.map(|holes| {
        fact(
            "Slotted holes allow",
            format!("±{}", degrees(holes.degrees)),
            format!("±{} over 500 mm, for squaring", length(holes.per500)),
        )
    });
    let all: Vec<_> = play.into_iter().chain(holes).collect();
    if all.is_empty() {
        return Html::default();
    }
    facts("Turning", all)
}

/// `0.014°`.
pub(super) fn degrees(degrees: f64) -> String {
    format!("{}°", notchwright_core::units::write_number(degrees, 3))
}
