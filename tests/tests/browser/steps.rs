//! What a person does and sees, in the words of the tests.

use anyhow::{Context, Result};
use notchwright_core::joint::box_joint::{BoxJointPlan, BoxJointRequest};
use notchwright_core::stop::Set;
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Page, Site, View};
use serde_json::{Value, json};

use crate::answer;

/// The tables of stops, cell by cell up to where it is cut; long ones are asked for whole first.
const TABLES: &str = "(() => {
    document.querySelectorAll('.stops > .button').forEach((it) => it.click());
    return [...document.querySelectorAll('.stops table')].map((table) =>
        [...table.querySelectorAll('tbody tr:not(.socket)')].map((row) =>
            [...row.cells].slice(0, 4).map((cell) => cell.textContent)));
})()";

/// The first visit, on a phone: it ends when the page has said that it is ready, and that was read.
pub(crate) async fn open(site: &Site) -> Result<Page> {
    open_on(&site.url(), &View::phone()).await
}

/// The first visit on any screen and at any address.
pub(crate) async fn open_on(url: &str, view: &View) -> Result<Page> {
    let page = Page::open(url, view).await?;
    page.wait_until_kept().await?;
    see(&page, ".notices", "Ready to work without a network.").await?;
    page.click(".notice:not([role=alert]) .button").await?;
    see_nothing(&page, ".notice:not([role=alert])").await?;
    Ok(page)
}

/// Types the width of the boards.
pub(crate) async fn type_width(page: &Page, text: &str) -> Result<()> {
    page.replace_text("#joint-width", text).await
}

/// Waits until the tables show what the core answers, as current and in millimetres.
pub(crate) async fn shows(page: &Page, request: &BoxJointRequest) -> Result<()> {
    shows_in(page, request, Unit::Mm).await
}

/// Waits until the tables show what the core answers, as current and in a unit.
pub(crate) async fn shows_in(page: &Page, request: &BoxJointRequest, unit: Unit) -> Result<()> {
    shows_sets(page, &answer::plan(request)?.sets, unit).await
}

/// Waits until the tables show these sets, as current.
pub(crate) async fn shows_sets(page: &Page, sets: &[Set], unit: Unit) -> Result<()> {
    page.wait_for(TABLES, &answer::tables_of(sets, unit))
        .await?;
    see_nothing(page, ".stale").await
}

/// Waits until the first element that matches says something.
pub(crate) async fn see(page: &Page, selector: &str, words: &str) -> Result<()> {
    let text = format!("document.querySelector({})?.textContent", json!(selector));
    page.wait_until(&format!("{text}?.includes({})", json!(words)))
        .await?;
    Ok(())
}

/// Waits until nothing matches.
pub(crate) async fn see_nothing(page: &Page, selector: &str) -> Result<()> {
    page.wait_until(&format!("!document.querySelector({})", json!(selector)))
        .await
}

/// Waits until a field holds a text.
pub(crate) async fn holds(page: &Page, field: &str, text: &str) -> Result<()> {
    let value = format!("document.querySelector({})?.value", json!(field));
    page.wait_for(&value, &text.into()).await
}

/// Takes the pieces from the worked joint: one end of one board of each kind is cut.
pub(crate) async fn cut_one_board_of_each(page: &Page) -> Result<()> {
    page.press("Jobs").await?;
    for field in ["what", "count", "names-a", "names-b"] {
        page.replace_text(&format!("#pieces-{field}"), "").await?;
    }
    page.choose("ends-b", "one").await?;
    see(
        page,
        "[aria-labelledby=pieces]",
        "1 end of one board and 1 end of the other",
    )
    .await?;
    page.press("Joint").await
}

/// From the joint to the first stop of board A, with one board of each kind.
pub(crate) async fn go_to_first_stop(page: &Page) -> Result<()> {
    cut_one_board_of_each(page).await?;
    page.press("At the saw").await?;
    page.press("All is set").await
}

/// Cuts, and turns to the next stop.
pub(crate) async fn next(page: &Page) -> Result<()> {
    page.press("Cut, next").await
}

/// Waits until the screen shows a stop of a set, both counted from 1: its setting and its place.
pub(crate) async fn is_at(page: &Page, plan: &BoxJointPlan, set: usize, stop: usize) -> Result<()> {
    is_at_stop(page, answer::set(plan, set)?, stop).await
}

/// The same of a set that is given.
pub(crate) async fn is_at_stop(page: &Page, set: &Set, stop: usize) -> Result<()> {
    let stopped = set.stops.get(stop.wrapping_sub(1));
    let stopped = stopped.with_context(|| format!("{} has no stop {stop}", set.name))?;
    let setting = answer::setting(stopped.dial);
    let place = format!("pass {stop} of {}", set.stops.len());
    page.wait_for(AT_STOP, &json!([set.name, place, setting]))
        .await
}

const AT_STOP: &str = "document.querySelector('.saw.stop') && [
    document.querySelector('.saw h1').textContent,
    document.querySelector('.jump summary span').textContent,
    [...document.querySelectorAll('.setting strong')].map((figure) => figure.textContent),
]";

/// The address as a bookmark would keep it.
pub(crate) async fn bookmark(page: &Page) -> Result<String> {
    // The page writes its address a second after a change, and when it is hidden.
    page.evaluate("void document.dispatchEvent(new Event('visibilitychange'))")
        .await?;
    let address = page.evaluate("location.href").await?;
    Ok(address.as_str().unwrap_or_default().to_owned())
}

/// What is stored under a key.
pub(crate) async fn stored(page: &Page, key: &str) -> Result<Value> {
    page.evaluate(&format!("localStorage.getItem({})", json!(key)))
        .await
}
