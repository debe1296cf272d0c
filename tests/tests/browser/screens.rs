//! Every screen of the page, one after another.

use anyhow::Result;
use notchwright_tests::browser::Page;

use crate::steps::{see, type_width};

/// Goes from a first visit through every screen, and has a look at each.
pub(crate) async fn walk(page: &Page, mut look: impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    look("joint").await?;
    fingers(page, &mut look).await?;
    folds(page, &mut look).await?;
    problems(page, &mut look).await?;
    shop(page, &mut look).await?;
    saw(page, &mut look).await
}

async fn fingers(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    for rule in [
        "by width",
        "one pass per socket",
        "by a pattern",
        "by number",
    ] {
        let list = page.find("#joint-layout").await?;
        list.select_by_label(rule).await?;
        see(page, ".verdict strong", "It fits").await?;
        look(&format!("fingers {rule}")).await?;
    }
    Ok(())
}

async fn folds(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Fit, zero and groove").await?;
    page.choose("groove", "check one").await?;
    page.choose("zero", "by a test kerf").await?;
    look("fit, zero and groove").await?;
    page.choose("zero", "touching").await?;
    page.press("Before you cut").await?;
    look("cautions").await
}

async fn problems(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    type_width(page, "wide").await?;
    page.replace_text("#joint-thickness-b", "0").await?;
    page.find(".plan.stale").await?;
    look("problems, stale").await?;
    page.replace_text("#joint-thickness-b", "18").await?;
    page.choose("units", "in").await?;
    type_width(page, "5 1/2").await?;
    see(page, ".verdict strong", "It fits").await?;
    look("typing inches").await
}

async fn shop(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("Shop").await?;
    look("shop").await?;
    for thing in ["Rip blade", "Bench saw", "Sled screw"] {
        page.press(&format!("Edit {thing}")).await?;
    }
    page.choose("grind-1", "alternately sloping").await?;
    look("shop unfolded").await?;
    page.choose("grind-1", "flat").await?;
    page.press("Edit Straight bit").await?;
    page.click("#cutter-3-name").await?;
    page.click(".thing:has(#cutter-3-name) .buttons .button:last-child")
        .await?;
    see(page, ".notice", "Straight bit was removed.").await?;
    look("notice").await?;
    page.press("Undo").await?;
    page.press("Joint").await
}

async fn saw(page: &Page, look: &mut impl AsyncFnMut(&str) -> Result<()>) -> Result<()> {
    page.press("At the saw").await?;
    look("set-up").await?;
    page.press("All is set").await?;
    look("first stop").await?;
    page.press("Cut, next").await?;
    look("second stop").await?;
    page.click(".jump summary").await?;
    look("jump").await?;
    page.click(".jump ol:last-of-type li:last-child button")
        .await?;
    page.press("Cut, next").await?;
    see(page, ".saw h1", "Both boards are cut").await?;
    look("done").await
}
