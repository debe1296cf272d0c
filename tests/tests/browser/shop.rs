//! The shop: what is entered once, and used by the joint.

use anyhow::Result;
use notchwright_core::joint::box_joint::BoxJointRequest;
use notchwright_tests::browser::{Page, serve_dist};

use crate::answer::{cutter, worked};
use crate::steps::{open, see, see_nothing, shows};

fn cut_with(kerf: f64) -> BoxJointRequest {
    BoxJointRequest {
        cutter: cutter(kerf),
        ..worked(140.0)
    }
}

/// The joint as it is cut with what is chosen in the shop; then back to the shop.
async fn joint_is(page: &Page, request: &BoxJointRequest) -> Result<()> {
    page.press("Joint").await?;
    shows(page, request).await?;
    page.press("Shop").await
}

#[tokio::test]
async fn a_cutter_is_added_measured_and_used() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.press("Shop").await?;
    page.press("Add a cutter").await?;
    page.wait_until("document.activeElement.id.endsWith('-name')")
        .await?;
    let name = page.evaluate("document.activeElement.id").await?;
    let name = format!("#{}", name.as_str().unwrap_or_default());
    page.replace_text(&name, "Thin blade").await?;
    page.choose("chosen-cutter", "Thin blade").await?;

    // Derived: five kerfs 2.5 mm apart are one kerf and 10 mm wide.
    page.replace_text("#slot-kerfs", "5").await?;
    page.replace_text("#slot-step", "2.5").await?;
    page.replace_text("#slot-width", "12.62").await?;
    see(&page, "#slot ~ [aria-live]", "The kerf is 2.62 mm.").await?;
    page.press("Take it for Thin blade").await?;
    see(&page, ".thing.chosen", "cuts 2.62 mm").await?;
    joint_is(&page, &cut_with(2.62)).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_stack_is_built_used_removed_and_brought_back() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.press("Shop").await?;
    // Derived: 3.2 + 3.2 + 2.4 = 8.8.
    page.replace_text("#stack-want", "8.8").await?;
    page.press("Add it as a cutter of 8.8 mm").await?;
    page.choose("chosen-cutter", "Stack").await?;
    joint_is(&page, &cut_with(8.8)).await?;

    page.press("Edit Stack").await?;
    page.press("Remove").await?;
    see(&page, ".notice", "Stack was removed.").await?;
    see_nothing(&page, ".thing.chosen [value=Stack]").await?;
    page.press("Undo").await?;
    see(&page, ".thing.chosen", "Stack").await?;
    joint_is(&page, &cut_with(8.8)).await?;
    page.assert_quiet().await
}
