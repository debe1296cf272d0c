//! Once visited, the page needs no network, and changes only when the person agrees.

use anyhow::Result;
use notchwright_tests::browser::{Copy, Page, Site, View, serve_dist};

use crate::answer::{plan, worked};
use crate::steps::{go_to_first_stop, is_at, next, open, see, shows, type_width};

const MODULE_CAME: &str = "performance.getEntriesByType('resource')
    .some((it) => it.name.endsWith('.wasm') && it.responseStatus === 200)";

#[tokio::test]
async fn it_works_with_the_server_gone() -> Result<()> {
    let site = serve_dist()?;
    let url = site.url();
    let page = Page::open(&url, &View::phone()).await?;
    page.wait_until_kept().await?;
    drop(site);

    for address in [
        url.clone(),
        format!("{url}?job=1"),
        format!("{url}index.html"),
        format!("{url}bookmark#job"),
    ] {
        page.go_to(&address).await?;
        page.wait_until(MODULE_CAME).await?;
        see(&page, ".verdict strong", "It fits.").await?;
    }
    page.reload().await?;
    page.wait_until(MODULE_CAME).await?;
    see(&page, ".verdict strong", "It fits.").await
}

#[tokio::test]
async fn a_stop_outlives_the_network() -> Result<()> {
    let site = serve_dist()?;
    let url = site.url();
    let page = open(&site).await?;
    let plan = plan(&worked(140.0))?;
    go_to_first_stop(&page).await?;
    next(&page).await?;
    is_at(&page, &plan, 1, 2).await?;
    drop(site);

    page.reload().await?;
    is_at(&page, &plan, 1, 2).await?;
    next(&page).await?;
    page.go_on_in_a_new_tab(&url).await?;
    is_at(&page, &plan, 1, 3).await?;
    page.press("Leave").await?;
    type_width(&page, "150").await?;
    shows(&page, &worked(150.0)).await
}

const WAITS: &str = "A newer version is ready.";
const VERSION: &str = "getComputedStyle(document.body).getPropertyValue('--version').trim()";

/// Puts another version on the host, and waits until the page has a copy of it.
async fn publish_next(copy: &Copy, page: &Page) -> Result<()> {
    let worker = copy.page().join("sw.js");
    let text = std::fs::read_to_string(&worker)?;
    std::fs::write(
        &worker,
        text.replace("const CACHE = PREFIX + '", "const CACHE = PREFIX + 'next-"),
    )?;
    std::fs::write(copy.page().join("style.css"), "body { --version: next }")?;
    page.evaluate("navigator.serviceWorker.ready.then((it) => void it.update())")
        .await?;
    see(page, ".notices", WAITS).await
}

/// Parts of a newer program must not be put into a former one: it gives way when it needs one.
#[tokio::test]
async fn a_tab_of_the_former_version_loads_the_new_one_with_its_next_part() -> Result<()> {
    let copy = Copy::new("former", "")?;
    let site = Site::start(copy.top(), 0)?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    page.wait_until_kept().await?;
    publish_next(&copy, &page).await?;
    page.evaluate("void (window.isFormer = true)").await?;
    // As another tab does, whose person agreed.
    page.evaluate(
        "navigator.serviceWorker.ready.then((it) => it.waiting.postMessage({ kind: 'use-update' }))",
    )
    .await?;
    page.wait_until("caches.keys().then((names) => names.length === 1)")
        .await?;
    type_width(&page, "150").await?;
    assert_eq!(page.evaluate("window.isFormer").await?, true);
    page.press("Shop").await?;
    page.wait_until(&format!("!window.isFormer && {VERSION} === 'next'"))
        .await?;
    page.wait_until("document.querySelector('main.shop input')")
        .await?;
    page.press("Joint").await?;
    assert_eq!(page.value("#joint-width").await?, "150");
    page.assert_quiet().await
}

#[tokio::test]
async fn a_new_version_waits_for_consent() -> Result<()> {
    let copy = Copy::new("update", "")?;
    let site = Site::start(copy.top(), 0)?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    page.wait_until_kept().await?;
    page.evaluate("caches.open('of-another-page')").await?;

    publish_next(&copy, &page).await?;
    page.reload().await?;
    see(&page, ".notices", WAITS).await?;
    assert_eq!(page.evaluate(VERSION).await?, "", "nobody agreed yet");

    page.press("Use it now").await?;
    page.wait_until(&format!("{VERSION} === 'next'")).await?;

    let names = page.evaluate("caches.keys()").await?;
    let names: Vec<String> = serde_json::from_value(names)?;
    assert_eq!(names.len(), 2, "{names:?}");
    assert!(
        names.iter().any(|name| name == "of-another-page"),
        "{names:?}"
    );
    assert!(
        names
            .iter()
            .any(|name| name.starts_with("notchwright-next-")),
        "{names:?}"
    );
    page.assert_quiet().await
}
