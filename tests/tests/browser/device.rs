//! What only some devices can do, played by a stand-in: the share sheet, the promise to keep what is stored, a
//! store that is full, a screen that stays awake.

use anyhow::Result;
use notchwright_tests::browser::{Page, Site, View, serve_dist};
use serde_json::json;

use crate::answer::worked;
use crate::steps::{see, see_nothing, shows, stored, type_width};

/// The page in a browser in which this has been run first.
async fn open_with(site: &Site, stand_in: &str) -> Result<Page> {
    let page = Page::open(&site.url(), &View::phone()).await?;
    let parameters = json!({ "source": stand_in });
    page.devtools("Page.addScriptToEvaluateOnNewDocument", parameters)
        .await?;
    page.wait_until_kept().await?;
    page.reload().await?;
    page.find(".verdict strong").await?;
    Ok(page)
}

/// A share sheet that takes what `takes` says, and notes it.
fn share_sheet(takes: &str) -> String {
    format!(
        "navigator.canShare = (what) => {takes};
        navigator.share = async (what) => {{
            const text = await what.files?.[0].text();
            window.shared = {{ name: what.files?.[0].name ?? what.title, text, url: what.url }};
        }};"
    )
}

#[tokio::test]
async fn a_job_is_shared_as_a_file_where_the_device_takes_one() -> Result<()> {
    let site = serve_dist()?;
    let page = open_with(&site, &share_sheet("what.files.length === 1")).await?;
    type_width(&page, "151.3").await?;
    page.press("Jobs").await?;
    page.press("Share it").await?;
    page.wait_until("window.shared.name.endsWith('.json')")
        .await?;
    page.wait_until("JSON.parse(window.shared.text).job && window.shared.text.includes('151.3')")
        .await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_job_is_shared_as_a_link_where_the_device_takes_no_file() -> Result<()> {
    let site = serve_dist()?;
    let page = open_with(&site, &share_sheet("false")).await?;
    type_width(&page, "151.3").await?;
    page.press("Jobs").await?;
    page.press("Share it").await?;
    page.wait_until("window.shared.url.includes('#')").await?;
    let url = page.evaluate("window.shared.url").await?;
    // Whoever is sent it finds the job, where it was left.
    let other = Page::open(url.as_str().unwrap_or_default(), &View::phone()).await?;
    other.press("Joint").await?;
    shows(&other, &worked(151.3)).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn nothing_is_shared_where_there_is_no_share_sheet_and_closing_it_is_no_trouble() -> Result<()>
{
    let site = serve_dist()?;
    let page = open_with(&site, "delete Navigator.prototype.share;").await?;
    page.press("Jobs").await?;
    see(&page, "main", "Save this job as a file").await?;
    let has_button =
        "[...document.querySelectorAll('button')].some((it) => it.textContent === 'Share it')";
    assert_eq!(page.evaluate(has_button).await?, false);

    let closed = "navigator.canShare = () => true;
        navigator.share = () => { window.opened = true; return Promise.reject(new DOMException('', 'AbortError')); };";
    let page = open_with(&site, closed).await?;
    page.press("Jobs").await?;
    page.press("Share it").await?;
    page.wait_until("window.opened").await?;
    see_nothing(&page, ".notice[role=alert]").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_the_browser_promises_of_its_store_is_said() -> Result<()> {
    let site = serve_dist()?;
    for (answer, says) in [
        ("async () => true", "promised to keep"),
        ("async () => false", "did not promise"),
        ("undefined", "did not promise"),
    ] {
        let page = open_with(&site, &format!("navigator.storage.persist = {answer};")).await?;
        page.press("Jobs").await?;
        page.press("Ask the browser to keep it").await?;
        see(&page, ".notices", says).await?;
        page.assert_quiet().await?;
    }
    Ok(())
}

#[tokio::test]
async fn a_store_that_is_full_is_said_once_and_loses_nothing() -> Result<()> {
    let site = serve_dist()?;
    let full = "window.fill = () => {
        Storage.prototype.setItem = () => { throw new DOMException('full', 'QuotaExceededError'); };
    };";
    let page = open_with(&site, full).await?;
    type_width(&page, "151.3").await?;
    shows(&page, &worked(151.3)).await?;
    let before = stored(&page, "notchwright.state").await?;
    page.evaluate("fill()").await?;
    type_width(&page, "140").await?;
    see(&page, ".notices", "store is full").await?;
    shows(&page, &worked(140.0)).await?;
    page.press("OK").await?;
    type_width(&page, "150").await?;
    shows(&page, &worked(150.0)).await?;
    see_nothing(&page, ".notice[role=alert]").await?;
    // What was stored before is whole.
    assert_eq!(stored(&page, "notchwright.state").await?, before);
    page.assert_quiet().await
}

/// Notes how many locks are held.
const LOCKS: &str = "window.held = 0;
    Object.defineProperty(navigator, 'wakeLock', { value: { request: async () => {
        window.held += 1;
        return { release: async () => { window.held -= 1; } };
    } } });";

#[tokio::test]
async fn the_screen_stays_awake_while_one_cuts_and_no_longer() -> Result<()> {
    let site = serve_dist()?;
    let page = open_with(&site, LOCKS).await?;
    assert_eq!(page.evaluate("window.held").await?, 0);
    page.press("At the saw").await?;
    page.wait_until("window.held === 1").await?;
    page.press("All is set").await?;
    page.press("It is clamped").await?;
    page.click("[aria-label=Pause]").await?;
    page.wait_until("window.held === 0").await?;
    page.press("Go on").await?;
    page.wait_until("window.held === 1").await?;
    page.press("Leave").await?;
    page.wait_until("window.held === 0").await?;
    page.assert_quiet().await
}

/// It must not push off the screen what is pressed next.
#[tokio::test]
async fn a_screen_that_may_sleep_is_said_until_one_goes_on() -> Result<()> {
    let site = serve_dist()?;
    for lock in [
        "undefined",
        "{ request: () => Promise.reject(new DOMException('', 'NotAllowedError')) }",
    ] {
        let without = format!("Object.defineProperty(navigator, 'wakeLock', {{ value: {lock} }});");
        let page = open_with(&site, &without).await?;
        page.press("At the saw").await?;
        see(&page, ".notices", "cannot keep the screen awake").await?;
        page.press("All is set").await?;
        see_nothing(&page, ".notice").await?;
        page.assert_quiet().await?;
    }
    Ok(())
}
