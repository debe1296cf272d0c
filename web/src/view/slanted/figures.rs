//! What follows for dovetails: pictures, verdict, figures, notes, stops.

use std::rc::Rc;

use notchwright_core::drawing::{
    Drawing, Paper, dovetail_boards, dovetail_mated, marking_template,
};
use notchwright_core::joint::dovetail::DovetailPlan;
use notchwright_core::problem::Planned;
use notchwright_core::stop::Set;
use notchwright_core::units::Mm;
use yew::{Html, classes, html};

use super::tails::Tails;
use crate::answer::tools::Outcome;
use crate::msg::{Look, Msg};
use crate::state::PaperSize;
use crate::view::context::Context;
use crate::view::icon::Icon;
use crate::view::joint::{self, Fit, Source};
use crate::view::segment::Segment;
use crate::view::{drawing, outcome, show};

/// The outcome: of the fields as they stand, or greyed and labelled the last good one.
pub(super) fn view(context: Context<'_>) -> Html {
    let Some(answer) = &context.model.answer.slanted else {
        return Html::default();
    };
    let found = answer.dovetail.plan.as_ref();
    html! {
        <div class="outcome">
            { outcome::state(&answer.dovetail, context) }
            { for found.map(|planned| plan(planned, &answer.dovetail, context)) }
        </div>
    }
}

fn plan(
    planned: &Rc<Planned<DovetailPlan>>,
    outcome: &Outcome<DovetailPlan>,
    context: Context<'_>,
) -> Html {
    let stale = (!outcome.is_current).then_some("stale");
    let plan = &planned.plan;
    html! {
        <div class={classes!("plan", stale)}>
            <Tails planned={Rc::clone(planned)} unit={context.unit()} />
            <div class="beside">
                { verdict(plan, context) }
                if outcome.is_current {
                    { joint::to_the_saw(&plan.sets, Fit::of(&plan.dry_fit), context) }
                }
                { facts(plan, context) }
            </div>
            { closed(plan, context) }
            <div class="good-to-know section">
                { chisel(plan, context) }
                { template(plan, context) }
                { joint::notes_view(&planned.notes, context) }
            </div>
            { joint::tables(&Source::Dovetail(Rc::clone(planned)), plan.sets.len(), context) }
        </div>
    }
}

/// Half-blind sockets are not sawn, so that there is nothing to fit dry.
fn verdict(plan: &DovetailPlan, context: Context<'_>) -> Html {
    if plan.lap.is_same(Mm::ZERO) {
        return joint::verdict_view(&plan.dry_fit, plan.glue_gap, context);
    }
    html! {
        <div class="verdict" role="status">
            { Icon::Chisel.sign("chisel") }
            <strong>{ "Half-blind: tails sawn, sockets by hand." }</strong>
            <span>{ "Only the tail board's stops are given. Mark the pin board from its tails or with the template, and rout or \
                     chop the sockets: there is no dry fit of what a hand will cut." }</span>
        </div>
    }
}

fn picture(
    picture: &Drawing,
    class: &'static str,
    label: impl Into<yew::AttrValue>,
    context: Context<'_>,
) -> Html {
    drawing::view(picture, class, label, &|length| {
        show::bare(length, context.unit())
    })
}

fn closed(plan: &DovetailPlan, context: Context<'_>) -> Html {
    if plan.lap > Mm::ZERO {
        return Html::default();
    }
    let label = "The closed joint on the tail board's face, with its gaps enlarged";
    html! {
        <figure class="card figure closed">
            { picture(&dovetail_mated(plan), "mated", label, context) }
            <figcaption class="quiet">{ "Dry fit on the tails' face, gaps enlarged" }</figcaption>
        </figure>
    }
}

fn facts(plan: &DovetailPlan, context: Context<'_>) -> Html {
    let length = |length| context.length(length);
    let slope = format!(
        "1:{}, {}°",
        notchwright_core::units::write_number(1.0 / plan.slope, 2),
        notchwright_core::units::write_number(plan.angle_degrees, 3)
    );
    let both = |tip, base| format!("{} to {}", show::bare(tip, context.unit()), length(base));
    html! {
        <dl class="facts">
            { joint::fact("Tails", both(plan.tail_tip, plan.tail_base), Some("tip to baseline".into())) }
            { joint::fact("Pins", both(plan.pin_outer, plan.pin_inner), Some("outer to inner face".into())) }
            { joint::fact("Half-pins", both(plan.half_pin_outer, plan.half_pin_inner), Some("outer to inner face".into())) }
            { joint::fact("Slope", slope, None) }
            { joint::fact("Narrowest pin", length(plan.narrowest_pin), Some("for this blade leaning".into())) }
            { for plan.sets.iter().filter(|set| set.tilt_degrees != 0.0 && !set.flipped).map(|set| height(set, context)) }
        </dl>
    }
}

fn height(set: &Set, context: Context<'_>) -> Html {
    let says = show::fraction(set.height, context.unit());
    joint::fact("Blade height, tail board", context.length(set.height), says)
}

/// What is marked out by hand at full size; it is printed after the shop card.
fn template(plan: &DovetailPlan, context: Context<'_>) -> Html {
    let state = &context.model.state;
    let is_wanted = state.templates;
    let paper = match state.sled.paper {
        PaperSize::A4 => Paper::A4,
        PaperSize::Letter => Paper::Letter,
    };
    let tiles = if is_wanted {
        marking_template(plan, paper)
    } else {
        Vec::new()
    };
    let says = match (is_wanted, tiles.len()) {
        (false, _) => "Both boards' lines at full size, to mark out by hand.".to_owned(),
        (true, 0) => "The boards are too thick for a sheet of paper.".to_owned(),
        (true, sheets) => format!(
            "{} with the lines. Print without scaling, and check the bar with a rule.",
            show::count(sheets, "sheet", "sheets")
        ),
    };
    let words = if is_wanted {
        "Leave the template off the print"
    } else {
        "Put a template on the print"
    };
    html! {
        <section class="section tiles">
            <h2>{ "Template" }</h2>
            <p class="quiet">{ says }</p>
            <div class="buttons">
                <button type="button" class="button" onclick={context.send(Msg::Look(Look::Templates(!is_wanted)))}>{ words }</button>
                if is_wanted {
                    <button type="button" class="button" onclick={context.send(Msg::Print)}>{ "Print" }</button>
                }
            </div>
            if is_wanted {
                { papers(context) }
            }
        </section>
    }
}

/// The boards as cut, and where there is one the closed joint.
pub(super) fn pictures(plan: &DovetailPlan) -> Vec<(&'static str, Drawing)> {
    let mut pictures = vec![("Boards", dovetail_boards(plan))];
    if plan.lap.is_same(Mm::ZERO) {
        pictures.push(("Closed joint", dovetail_mated(plan)));
    }
    pictures
}

fn papers(context: Context<'_>) -> Html {
    let paper = Segment {
        name: "paper",
        legend: "On paper",
        is_plain: false,
        options: &[(PaperSize::A4, "A4"), (PaperSize::Letter, "Letter")],
        chosen: context.model.state.sled.paper,
    };
    paper.view(|paper| Msg::Look(Look::Paper(paper)), context)
}

/// What no pass reaches, socket by socket.
fn chisel(plan: &DovetailPlan, context: Context<'_>) -> Html {
    let uncut = &plan.dry_fit.uncut;
    if uncut.is_empty() {
        return Html::default();
    }
    let area: f64 = uncut.iter().map(|uncut| uncut.area).sum();
    let highest = uncut
        .iter()
        .map(|uncut| uncut.height)
        .max()
        .unwrap_or_default();
    html! {
        <section class="section">
            <h2>{ Icon::Chisel.view() }{ " For the chisel" }</h2>
            <p>{ format!(
                "{}, up to {} high, {} mm² in all; dark in the drawing. Corner left at each flank under the leaning blade: {}.",
                show::count(uncut.len(), "place", "places"),
                context.length(highest),
                notchwright_core::units::write_number(area, 1),
                context.length(plan.corner_left)
            ) }</p>
        </section>
    }
}
