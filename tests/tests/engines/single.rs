//! The page as one file, opened from the disk.

use anyhow::{Context, Result};
use notchwright_tests::browser::{Engine, dist};
use url::Url;

use super::{open, see};

async fn path(engine: Engine) -> Result<()> {
    let Some(engine) = super::engine(engine)? else {
        return Ok(());
    };
    let file = dist().join("notchwright.html");
    let address = Url::from_file_path(file).ok().context("no address")?;
    let page = open(engine, address.as_str()).await?;
    page.replace_text("#joint-width", "150").await?;
    see(&page, "[aria-label^='Both boards as cut']", "150").await?;
    // Every part of the program is in the file.
    page.press("Sled").await?;
    see(&page, "main.sled", "Table").await?;
    page.press("Parts").await?;
    page.choose("parts-tool", "Sheet").await?;
    see(&page, ".facts", "Whole sheets").await?;
    page.press("Jobs").await?;
    see(&page, ".leaf.open", "Drawers, side to front").await?;
    page.wait_until("!document.querySelector('.served-only')?.checkVisibility()")
        .await?;
    page.press("Shop").await?;
    see(&page, ".thing.chosen", "Rip blade").await?;
    page.press("Joint").await?;
    page.choose("joint-kind", "Dovetails").await?;
    page.find("#dovetail-tails").await?;
    page.reload().await?;
    page.wait_for(
        "document.querySelector('#joint-width')?.value",
        &"150".into(),
    )
    .await?;
    page.find("#dovetail-tails").await?;
    page.wait_until("performance.getEntriesByType('resource').every((it) => it.name.startsWith('data:') || it.name.startsWith('blob:'))")
        .await?;
    page.assert_quiet().await
}

super::in_every_engine!(path);
