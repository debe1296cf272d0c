//! What holds for every joint's plan.

use anyhow::{Context, ensure};
use notchwright_core::given;
use notchwright_core::joint::box_joint::{self, BoxJointPlan, Choices};
use notchwright_core::joint::dovetail::{self, DovetailChoices, DovetailPlan};
use notchwright_core::joint::sliding::SlidingDovetailPlan;
use notchwright_core::plain::Plain;
use notchwright_core::stop::Set;
use notchwright_core::units::Mm;

use super::Held;
use super::plans::{NOISE, is_near};
use super::replies::{number, text, with};

/// Stops can be set one after another on this wheel, and add up to what they say.
fn stops(request: &Plain, sets: &[Set]) -> Held {
    let lead = lead(request)?;
    let backlash = number(request, "screw.backlash").unwrap_or(0.0);
    ensure!(!sets.is_empty(), "no set-up");
    for set in sets {
        let first = set.stops.first().context("a set-up without a stop")?;
        let run_up = first.dial.reading - set.run_up.reading;
        ensure!(
            run_up.mm() > backlash,
            "a run-up of {run_up} under a backlash of {backlash}"
        );
        let (mut before, mut sum) = (set.run_up.reading, Mm::ZERO);
        for (place, stop) in set.stops.iter().enumerate() {
            ensure!(
                stop.number == place + 1 && (1..=stop.passes).contains(&stop.pass),
                "{stop:?}"
            );
            ensure!(
                stop.dial.reading > before,
                "{stop:?} is not beyond {before}"
            );
            let divisions = f64::from(set.divisions);
            ensure!((0.0..divisions).contains(&stop.dial.division), "{stop:?}");
            let shown = lead * (stop.dial.turns as f64 + stop.dial.division / divisions);
            ensure!(
                is_near(stop.dial.reading, shown),
                "the wheel shows {shown} at {stop:?}"
            );
            sum += stop.travel;
            ensure!(
                is_near(stop.dial.reading, sum.mm()),
                "moves come to {sum} at {stop:?}"
            );
            before = stop.dial.reading;
        }
        travel(request, set)?;
    }
    Ok(())
}

fn travel(request: &Plain, set: &Set) -> Held {
    let Some(travel) = number(request, "screw.travel") else {
        return Ok(());
    };
    let ends = set.stops.first().zip(set.stops.last());
    let (first, last) = ends.context("a set-up without a stop")?;
    let span = last.dial.reading - first.dial.reading;
    ensure!(span.mm() <= travel + NOISE, "{span} is beyond the travel");
    Ok(())
}

/// A box joint: its boards divide whole, and its dry fit is within one step of the gap asked.
pub(super) fn box_joint(request: &Plain, plan: &BoxJointPlan) -> Held {
    stops(request, &plan.sets)?;
    ensure!(
        plan.boundaries.len() == plan.count + 1,
        "{} spaces",
        plan.count
    );
    ensure!(plan.boundaries.first() == Some(&Mm::ZERO), "the first edge");
    ensure!(
        plan.boundaries
            .last()
            .is_some_and(|edge| is_near(*edge, plan.width.mm())),
        "the last edge"
    );
    let mut pairs = plan.boundaries.iter().zip(plan.boundaries.iter().skip(1));
    ensure!(pairs.all(|(one, next)| next > one), "boundaries rise");
    ensure!(plan.dry_fit.flanks.len() + 1 == plan.count, "flanks");
    let step = step(request)?;
    for flank in &plan.dry_fit.flanks {
        let off = (flank.gap_at_outer - plan.glue_gap).abs().mm();
        ensure!(
            off <= step * (1.0 + 4e-6) + NOISE,
            "{flank:?} is off by {off}, a step is {step}"
        );
    }
    Ok(())
}

fn lead(request: &Plain) -> anyhow::Result<f64> {
    let threads = || Some(25.4 / number(request, "screw.threadsPerInch")?);
    let lead = number(request, "screw.lead").or_else(threads);
    lead.context("a screw without a lead")
}

fn step(request: &Plain) -> anyhow::Result<f64> {
    let divisions = number(request, "screw.divisions").context("a wheel without divisions")?;
    let division = lead(request)? / divisions;
    Ok(match text(request, "screw.rounding").as_deref() {
        Some("none") => NOISE,
        Some("half") => division / 2.0,
        _ => division,
    })
}

/// What is offered can be planned: the first and the last on the list stand for all.
pub(super) fn box_joint_choices(request: &Plain, plan: &Choices) -> Held {
    let ends = plan.choices.first().into_iter().chain(plan.choices.last());
    for choice in ends {
        let layout = Plain::Object(vec![
            ("kind".into(), Plain::Text("count".into())),
            ("count".into(), Plain::Number(choice.count.into())),
        ]);
        let planned = given::answer(&with(request, "layout", layout), box_joint::box_joint);
        // How far the carriage goes is asked when the joint is planned.
        if number(request, "screw.travel").is_none() {
            let planned = planned
                .map_err(|problems| anyhow::anyhow!("{choice:?} is refused: {problems:?}"))?;
            let passes: usize = planned.plan.sets.iter().map(|set| set.stops.len()).sum();
            ensure!(
                passes == choice.total_passes,
                "{choice:?} takes {passes} passes"
            );
        }
    }
    Ok(())
}

/// A dovetail: tails that follow one another within the board.
pub(super) fn dovetail(request: &Plain, plan: &DovetailPlan) -> Held {
    stops(request, &plan.sets)?;
    ensure!(plan.tails.len() == plan.count, "{} tails", plan.count);
    let mut edge = Mm::ZERO;
    for tail in &plan.tails {
        ensure!(
            tail.from_tip > edge - Mm::constant(NOISE),
            "{tail:?} begins before {edge}"
        );
        ensure!(
            tail.from_base < tail.to_base && tail.from_tip < tail.to_tip,
            "{tail:?}"
        );
        edge = tail.to_tip;
    }
    ensure!(
        edge.mm() <= plan.width.mm() + NOISE,
        "tails run over the edge"
    );
    let fit = &plan.dry_fit;
    let areas = [
        fit.gap_area_a,
        fit.gap_area_b,
        fit.clash_area_a,
        fit.clash_area_b,
    ];
    ensure!(areas.iter().all(|area| *area >= 0.0), "{areas:?}");
    Ok(())
}

/// What is offered can be planned.
pub(super) fn dovetail_choices(request: &Plain, plan: &DovetailChoices) -> Held {
    ensure!(!plan.choices.is_empty(), "nothing to choose");
    let ends = plan.choices.first().into_iter().chain(plan.choices.last());
    for choice in ends {
        let tails = Plain::Number(choice.count.into());
        let planned = given::answer(&with(request, "tails", tails), dovetail::dovetail);
        if number(request, "screw.travel").is_none() {
            let planned = planned
                .map_err(|problems| anyhow::anyhow!("{choice:?} is refused: {problems:?}"))?;
            ensure!(
                is_near(planned.plan.tail_tip, choice.tail_tip.mm()),
                "{choice:?}"
            );
        }
    }
    Ok(())
}

/// A sliding dovetail: the tongue goes into the socket and does not come out of its mouth.
pub(super) fn sliding_dovetail(_: &Plain, plan: &SlidingDovetailPlan) -> Held {
    ensure!(
        plan.mouth > Mm::ZERO && plan.mouth < plan.floor,
        "the socket"
    );
    ensure!(
        plan.tongue_tip <= plan.floor && plan.tongue_mouth <= plan.mouth,
        "the tongue"
    );
    ensure!(
        plan.tongue_mouth > Mm::ZERO && plan.tongue_cut_per_side >= Mm::ZERO,
        "the tongue"
    );
    Ok(())
}
