//! Whatever the browser's store holds, the page works, says so, and loses nothing of it.

use anyhow::Result;
use notchwright_tests::browser::{Page, serve_dist};
use serde_json::json;

use crate::answer::worked;
use crate::steps::{holds, open, see, shows, stored, type_width};

const STATE: &str = "notchwright.state";
const MARKUP: &str = "<img src=x onerror=window.hacked=1><script>window.hacked=1</script>";

/// Loads the page afresh with a text in place of the state, and no job in the address.
async fn come_back_to(page: &Page, url: &str, text: &str) -> Result<()> {
    page.evaluate("void localStorage.clear()").await?;
    page.evaluate(&format!("localStorage.setItem('{STATE}', {})", json!(text)))
        .await?;
    page.go_to("about:blank").await?;
    page.go_to(url).await
}

#[tokio::test]
async fn a_store_that_nothing_can_be_read_of_is_kept_aside() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    let huge = format!(
        "{{\"version\":1,\"state\":{{\"place\":\"{}\"}}}}",
        "x".repeat(4_300_000)
    );
    for text in [
        "}{ \u{0} garbage",
        "",
        "[]",
        "{\"version\":1}",
        "{\"version\":99,\"state\":{}}",
        &huge,
    ] {
        come_back_to(&page, &site.url(), text).await?;
        let shown: String = text.chars().take(40).collect();
        see(
            &page,
            ".notice[role=alert]",
            "could not be read. It is kept aside",
        )
        .await?;
        shows(&page, &worked(140.0)).await?;
        type_width(&page, "145").await?;
        shows(&page, &worked(145.0)).await?;
        assert_eq!(stored(&page, "notchwright.aside.1").await?, text, "{shown}");
    }
    page.press("OK").await?;
    page.press("Shop").await?;
    see(&page, "#asides + ul", "Stored work that could not be read.").await?;
    page.assert_accessible().await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_can_be_read_of_a_store_is_opened() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "145").await?;
    shows(&page, &worked(145.0)).await?;
    let good = stored(&page, STATE).await?;
    let good = good.as_str().unwrap_or_default();
    for (whole, part) in [
        ("\"state\":{", "\"state\":{\"atSaw\":7,"),
        ("\"mirrored\":true", "\"mirrored\":\"yes\""),
        ("\"name\":\"Chart chest\"", "\"name\":[null]"),
    ] {
        let bad = good.replace(whole, part);
        assert!(bad != good, "{good} has no {whole}");
        come_back_to(&page, &site.url(), &bad).await?;
        see(
            &page,
            ".notice[role=alert]",
            "Parts of what was stored could not be read",
        )
        .await?;
        shows(&page, &worked(145.0)).await?;
        assert_eq!(stored(&page, "notchwright.aside.1").await?, bad);
    }
    page.assert_quiet().await
}

/// Another tab runs a newer program: what it stored is kept aside before this one stores over it.
#[tokio::test]
async fn what_a_newer_program_stored_is_not_overwritten_in_silence() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "145").await?;
    shows(&page, &worked(145.0)).await?;
    let newer = "{\"version\":99,\"state\":{\"work\":{\"joint\":{\"width\":\"155\"}}}}";
    page.evaluate(&format!(
        "(() => {{
            localStorage.setItem('{STATE}', {newer});
            localStorage.setItem('notchwright.turn', 'other.1');
            const told = {{ key: '{STATE}', newValue: {newer} }};
            window.dispatchEvent(new StorageEvent('storage', told));
        }})()",
        newer = json!(newer)
    ))
    .await?;
    assert_eq!(stored(&page, STATE).await?, newer);
    type_width(&page, "150").await?;
    shows(&page, &worked(150.0)).await?;
    see(&page, ".notice[role=alert]", "It is kept aside in the shop").await?;
    assert_eq!(stored(&page, "notchwright.aside.1").await?, newer);
    page.assert_quiet().await
}

#[tokio::test]
async fn markup_in_names_is_only_text() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "145").await?;
    shows(&page, &worked(145.0)).await?;
    let good = stored(&page, STATE).await?;
    let hostile = good
        .as_str()
        .unwrap_or_default()
        .replace("Chart chest", MARKUP)
        .replace("Rip blade", MARKUP);
    come_back_to(&page, &site.url(), &hostile).await?;
    shows(&page, &worked(145.0)).await?;
    holds(&page, "#job-name", MARKUP).await?;
    see(&page, ".chip.on", MARKUP).await?;
    page.press("Shop").await?;
    see(&page, ".thing.chosen", MARKUP).await?;
    for trace in [
        "document.querySelector('#app :is(img, script)')",
        "window.hacked",
    ] {
        assert!(page.evaluate(trace).await?.is_null(), "{trace}");
    }
    page.assert_quiet().await
}
