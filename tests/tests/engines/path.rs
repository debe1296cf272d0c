//! From the first look to the last stop, a bookmark, and no network.

use anyhow::Result;
use notchwright_tests::browser::{Engine, Page, Site, serve_dist};

use super::{open, say, see};

async fn path(engine: Engine) -> Result<()> {
    let Some(engine) = super::engine(engine)? else {
        return Ok(());
    };
    let site = serve_dist()?;
    let page = open(engine, &site.url()).await?;
    answers_every_keystroke(&page).await?;
    switches_units(&page).await?;
    says_what_is_wrong(&page).await?;
    keeps_the_last_keystroke(&page).await?;
    picture(engine, &page, "joint").await?;
    cuts_and_comes_back(&page).await?;
    picture(engine, &page, "saw").await?;
    page.press("Leave").await?;
    opens_every_place(engine, &page).await?;
    let address = bookmarked(&page).await?;
    page.assert_quiet().await?;
    works_offline(engine, &page, site).await?;
    drop(page);
    opens_elsewhere(engine, &address).await
}

async fn picture(engine: Engine, page: &Page, place: &str) -> Result<()> {
    let engine = format!("{engine:?}").to_lowercase();
    page.screenshot(&format!("{engine}-{place}")).await
}

async fn answers_every_keystroke(page: &Page) -> Result<()> {
    see(page, ".verdict", "It fits").await?;
    page.replace_text("#joint-width", "217,3").await?;
    see(page, "[aria-label^='Both boards as cut']", "217.3").await?;
    see(page, ".stops caption", "Board A").await
}

async fn switches_units(page: &Page) -> Result<()> {
    page.choose("units", "in").await?;
    page.wait_for(
        "document.querySelector('#joint-width').value",
        &"8.5551".into(),
    )
    .await?;
    page.choose("units", "mm").await?;
    page.wait_for(
        "document.querySelector('#joint-width').value",
        &"217,3".into(),
    )
    .await
}

async fn says_what_is_wrong(page: &Page) -> Result<()> {
    page.replace_text("#joint-width", "wide").await?;
    page.wait_until("document.querySelector('#joint-width-problem').textContent.length > 20")
        .await?;
    page.find(".plan.stale").await?;
    page.replace_text("#joint-width", "150").await?;
    page.wait_until("!document.querySelector('.plan.stale')")
        .await
}

/// The address follows within a second: until then it carries what was there before, and is the page's own.
async fn keeps_the_last_keystroke(page: &Page) -> Result<()> {
    page.wait_until("location.hash.startsWith('#j=3.')").await?;
    page.replace_text("#joint-width", "151").await?;
    page.reload().await?;
    page.wait_for(
        "document.querySelector('#joint-width')?.value",
        &"151".into(),
    )
    .await?;
    page.wait_until("!document.querySelector('.notices').textContent.includes('added')")
        .await
}

async fn cuts_and_comes_back(page: &Page) -> Result<()> {
    page.press("At the saw").await?;
    page.press("All is set").await?;
    see(page, ".end-name", "Drawer 1, left side").await?;
    page.press("It is clamped").await?;
    see(page, ".jump summary", "pass 1 of").await?;
    needs_no_scrolling(page).await?;
    page.press("Cut, next").await?;
    see(page, ".jump summary", "pass 2 of").await?;
    let setting = page.text(".setting").await?;
    page.reload().await?;
    see(page, ".jump summary", "pass 2 of").await?;
    see(page, ".on-carriage", "Drawer 1, left side").await?;
    assert_eq!(page.text(".setting").await?, setting);
    Ok(())
}

/// The button that is pressed most lies on the screen, whatever had been said before.
async fn needs_no_scrolling(page: &Page) -> Result<()> {
    page.wait_until(
        "document.querySelector('.saw .signal').getBoundingClientRect().bottom <= innerHeight + 0.5",
    )
    .await
}

async fn opens_every_place(engine: Engine, page: &Page) -> Result<()> {
    page.press("Sled").await?;
    see(page, "main.sled", "Table").await?;
    page.press("Parts").await?;
    page.choose("parts-tool", "Sheet").await?;
    see(page, ".facts", "Whole sheets").await?;
    picture(engine, page, "sheets").await?;
    page.press("Jobs").await?;
    see(page, ".leaf.open", "Drawers, side to front").await?;
    see(page, ".leaf.open", "32 ends").await?;
    page.press("Shop").await?;
    see(page, ".thing.chosen", "Rip blade").await?;
    picture(engine, page, "shop").await?;
    page.press("Joint").await?;
    page.choose("joint-kind", "Dovetails").await?;
    page.find("#dovetail-tails").await?;
    see(page, ".verdict", "It fits").await?;
    page.choose("joint-kind", "Box joint").await
}

/// The address follows within a second, and when the page is hidden.
async fn bookmarked(page: &Page) -> Result<String> {
    page.replace_text("#joint-width", "163").await?;
    page.evaluate("void document.dispatchEvent(new Event('visibilitychange'))")
        .await?;
    let address = page.evaluate("location.href").await?;
    Ok(address.as_str().unwrap_or_default().to_owned())
}

/// Where the browser has service workers under its driver, the page outlives its server.
async fn works_offline(engine: Engine, page: &Page, site: Site) -> Result<()> {
    let has_workers = page.evaluate("'serviceWorker' in navigator").await?;
    if has_workers != true {
        return say(&format!(
            "{engine:?} has no service workers under its driver"
        ));
    }
    page.wait_until_kept().await?;
    drop(site);
    page.reload().await?;
    page.wait_for(
        "document.querySelector('#joint-width')?.value",
        &"163".into(),
    )
    .await?;
    page.press("Sled").await?;
    see(page, "main.sled", "Table").await
}

/// In a browser that has never been here, the address alone brings the job.
async fn opens_elsewhere(engine: Engine, address: &str) -> Result<()> {
    let site = serve_dist()?;
    let (_, job) = address.split_once('#').unwrap_or_default();
    let page = open(engine, &format!("{}#{job}", site.url())).await?;
    page.wait_for(
        "document.querySelector('#joint-width').value",
        &"163".into(),
    )
    .await?;
    page.wait_for(
        "document.querySelector('#job-name').value",
        &"Chart chest".into(),
    )
    .await?;
    page.assert_quiet().await
}

super::in_every_engine!(path);
