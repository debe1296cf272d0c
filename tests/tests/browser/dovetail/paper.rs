//! The template on paper, as large as the boards are.

use anyhow::Result;
use notchwright_core::drawing::{Paper, marking_template};
use notchwright_core::joint::dovetail::DovetailRequest;
use notchwright_core::units::write_number;
use notchwright_tests::browser::serve_dist;
use serde_json::{Value, json};

use super::{FOLD, open_dovetails, plan, shows, worked};
use crate::steps::see_nothing;

/// Width and height of each sheet as they are written, and its width as it is laid out, in millimetres.
const SHEETS: &str = "[...document.querySelectorAll('.tile svg')].map((it) => [
    it.getAttribute('width'), it.getAttribute('height'),
    (it.getBoundingClientRect().width / 96 * 25.4).toFixed(1),
])";

#[tokio::test]
async fn the_template_is_printed_at_full_size_when_it_is_wanted() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    page.press(FOLD).await?;
    page.replace_text("#dovetail-lap", "6").await?;
    let request = DovetailRequest {
        lap: 6.0.into(),
        ..worked()
    };
    shows(&page, &request).await?;
    see_nothing(&page, ".tile").await?;
    page.press("Put a template on the print").await?;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }))
        .await?;
    page.evaluate("void window.dispatchEvent(new Event('beforeprint'))")
        .await?;
    let tiles = marking_template(&plan(&request)?, Paper::A4);
    assert!(!tiles.is_empty());
    let sheets: Value = tiles
        .iter()
        .map(|tile| {
            let size =
                |length: notchwright_core::units::Mm| format!("{}mm", write_number(length.mm(), 3));
            json!([
                size(tile.width),
                size(tile.height),
                format!("{:.1}", tile.width.mm())
            ])
        })
        .collect();
    page.wait_for(SHEETS, &sheets).await?;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "screen" }))
        .await?;
    page.evaluate("void window.dispatchEvent(new Event('afterprint'))")
        .await?;
    page.press("Leave the template off the print").await?;
    see_nothing(&page, ".tile").await?;
    page.assert_quiet().await
}
