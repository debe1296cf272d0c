//! On paper: every setting, and nothing that needs a screen.

use anyhow::{Context, Result};
use notchwright_core::units::Unit;
use notchwright_tests::browser::serve_dist;
use serde_json::json;

use crate::answer::{plan, tables, worked};
use crate::steps::open;

const PRINTED: &str = "[...document.querySelectorAll('.stops table')].map((table) =>
    [...table.querySelectorAll('tbody tr:not(.socket)')].filter((row) => row.checkVisibility()).map((row) =>
        [...row.cells].slice(0, 4).map((cell) => cell.textContent)))";

#[tokio::test]
async fn every_setting_is_printed_and_no_button() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }))
        .await?;
    page.evaluate("void window.dispatchEvent(new Event('beforeprint'))")
        .await?;
    let wanted = tables(&plan(&worked(140.0))?, Unit::Mm);
    page.wait_for(PRINTED, &wanted).await?;
    let left = "[...document.querySelectorAll('button, input, select, summary')].filter((it) => it.checkVisibility()).length";
    page.wait_for(left, &0.into()).await?;
    page.wait_until(
        "document.querySelector('.for-paper').innerText.includes('Drawers, side to front')",
    )
    .await?;

    let printed = page.devtools("Page.printToPDF", json!({})).await?;
    let data = printed.pointer("/data").and_then(|data| data.as_str());
    let data = data.context("nothing was printed")?;
    // "%PDF" in base64, and more than an empty sheet takes.
    assert!(
        data.starts_with("JVBER") && data.len() > 20_000,
        "{} letters",
        data.len()
    );
    page.assert_quiet().await
}
