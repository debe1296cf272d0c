//! The sled's part of the program: fetched when it is needed, kept for when there is no network.

use std::fs;

use anyhow::Result;
use notchwright_tests::browser::{Copy, Page, Site, View, serve_dist};
use serde_json::json;

use super::asked::Asked;
use super::{choose_tool, go_to_sled, shows_fit};
use crate::access::assert_usable;
use crate::steps::{open, see, see_nothing};

/// How often the page has asked for it.
const ASKED_FOR: &str = "performance.getEntriesByType('resource')
    .filter((it) => it.name.endsWith('/pkg/sled.wasm')).length";

#[tokio::test]
async fn it_is_fetched_once_when_it_is_first_opened() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 0, "nobody needs it yet");
    go_to_sled(&page).await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 1);

    page.press("Joint").await?;
    see(&page, ".verdict strong", "It fits.").await?;
    go_to_sled(&page).await?;
    for tool in ["Base", "Square", "Screw", "Groove", "Fit"] {
        choose_tool(&page, tool).await?;
    }
    shows_fit(&page, &Asked::worked().plan()?).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 1);
    page.assert_quiet().await
}

/// The server is gone, so there is nothing to be asked of any host, and no console to be kept quiet.
#[tokio::test]
async fn it_opens_without_a_network_although_it_never_was_before() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 0);
    drop(site);
    go_to_sled(&page).await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;
    page.reload().await?;
    shows_fit(&page, &Asked::worked().plan()?).await
}

/// The missing file is an error on the console, of the browser's own.
#[tokio::test]
async fn a_part_that_cannot_be_had_is_said_and_asked_for_again() -> Result<()> {
    let copy = Copy::new("part", "")?;
    let part = copy.page().join("pkg/sled.wasm");
    let kept = fs::read(&part)?;
    // Without it there is no copy for working offline either: that is all or nothing.
    fs::remove_file(&part)?;
    let site = Site::start(copy.top(), 0)?;
    for view in [View::narrow(), View::phone().dark()] {
        let page = Page::open(&site.url(), &view).await?;
        page.press("Sled").await?;
        see(&page, "[role=alert]", "could not be fetched").await?;
        assert_usable(&page, "no part").await?;

        page.press("Try again").await?;
        page.wait_for(ASKED_FOR, &json!(2)).await?;
        see(&page, "[role=alert]", "could not be fetched").await?;
        // The rest of the page goes on.
        page.press("Joint").await?;
        see(&page, ".verdict strong", "It fits.").await?;

        page.press("Sled").await?;
        fs::write(&part, &kept)?;
        page.press("Try again").await?;
        shows_fit(&page, &Asked::worked().plan()?).await?;
        see_nothing(&page, "[role=alert]").await?;
        fs::remove_file(&part)?;
    }
    Ok(())
}
