//! The sled on this saw: measured once, asked about by five tools.

mod asked;
mod base;
mod fit;
mod groove;
mod joint;
mod kept;
mod part;
mod problems;
mod screw;
mod several;
mod square;
mod stroke;

use anyhow::{Context, Result};
use notchwright_core::problem::{Code, Problem};
use notchwright_core::sled::SledFitPlan;
use notchwright_core::units::{Mm, Unit};
use notchwright_tests::browser::{Page, Site};
use serde_json::{Value, json};

use crate::answer::{bare, length};
use crate::steps::{open, see, see_nothing};

/// The figures of these names, each without the line below it.
const FIGURES: &str = "((names) => names.map((name) =>
    [...document.querySelectorAll('.outcome .facts > div')]
        .find((it) => it.querySelector('dt').textContent === name)
        ?.querySelector('dd').firstChild.textContent ?? null))";

/// The first visit to the sled, which was worked out before.
async fn open_sled(site: &Site) -> Result<Page> {
    let page = open(site).await?;
    go_to_sled(&page).await?;
    Ok(page)
}

/// Waits until its part of the program has come, too.
async fn go_to_sled(page: &Page) -> Result<()> {
    page.press("Sled").await?;
    page.find(".main.sled").await?;
    Ok(())
}

async fn choose_tool(page: &Page, name: &str) -> Result<()> {
    page.choose("tool", name).await
}

/// Waits until the figures say this, and are current.
async fn reads(page: &Page, figures: &[(&str, String)]) -> Result<()> {
    let (names, values): (Vec<_>, Vec<_>) = figures.iter().cloned().unzip();
    let names = json!(names);
    page.wait_for(&format!("{FIGURES}({names})"), &json!(values))
        .await?;
    see_nothing(page, ".found.stale").await
}

/// Waits until one figure says this in millimetres.
async fn reads_mm(page: &Page, name: &str, mm: Mm) -> Result<()> {
    reads(page, &[(name, length(mm, Unit::Mm))]).await
}

/// Waits until the line below a figure says something.
async fn says(page: &Page, name: &str, words: &str) -> Result<()> {
    let line = format!(
        "[...document.querySelectorAll('.outcome .facts > div')]
            .find((it) => it.querySelector('dt').textContent === {})?.querySelector('small')?.textContent",
        json!(name)
    );
    page.wait_until(&format!("{line}?.includes({})", json!(words)))
        .await
}

/// Waits until the fit is that of a plan, as current and in millimetres.
async fn shows_fit(page: &Page, plan: &SledFitPlan) -> Result<()> {
    shows_fit_in(page, plan, Unit::Mm).await
}

/// Waits until the fit is that of a plan, as current and in a unit.
async fn shows_fit_in(page: &Page, plan: &SledFitPlan, unit: Unit) -> Result<()> {
    let length = |mm| length(mm, unit);
    let runner = &plan.runner;
    let figures = [
        ("Runner's middle", length(runner.from_blade)),
        ("From the base's left edge", length(runner.from_base_left)),
        ("Move the runner", length(runner.forward.abs())),
        ("Then left at both ends", length(runner.left_after)),
        ("Longest span that stays on", length(runner.longest_span)),
        ("Blade above the table", length(plan.height)),
        ("Travel", length(plan.travel.length)),
        (
            "Smallest travel for this board",
            length(plan.smallest_travel),
        ),
        ("Smallest window for this cut", length(plan.smallest_window)),
        ("Half chord of the blade", length(plan.half_chord_base)),
        (
            "Slot through the base, on top",
            format!(
                "{} to {}",
                bare(plan.slot.top_near, unit),
                length(plan.slot.top_far)
            ),
        ),
    ];
    reads(page, &figures).await?;
    let left = format!(
        "near end {}, far end {}",
        length(runner.near_left),
        length(runner.far_left)
    );
    says(page, "Move the runner", &left).await
}

/// Waits until the outcome is greyed, as the last good one, for a reason.
async fn is_greyed(page: &Page, reason: &str) -> Result<()> {
    page.find(".found.stale").await?;
    see(page, ".outcome .state", "From the last good numbers.").await?;
    see(page, ".outcome .state", reason).await
}

/// Moves on as a person does who types into a table: the focus is wherever the page put it.
async fn type_on(page: &Page, text: &str) -> Result<()> {
    let field = page.client().active_element().await?;
    Ok(field.send_keys(text).await?)
}

/// Waits until the focus is in a field.
async fn is_in(page: &Page, field: &str) -> Result<()> {
    page.wait_for("document.activeElement.id", &Value::from(field))
        .await
}

/// What a refusal proposes, to hundredths on the side of the bound that is allowed.
fn proposed(problem: &Problem) -> Result<String> {
    let hundredths = problem.limit.context("nothing is proposed")? * 100.0;
    let allowed = match problem.code {
        Code::TooSmall => hundredths.ceil(),
        _ => hundredths.floor(),
    };
    Ok((allowed / 100.0).to_string())
}
