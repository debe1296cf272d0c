//! The address carries the whole job: a bookmark is a copy of it.

use anyhow::Result;
use notchwright_core::joint::box_joint::{BoxJointRequest, LayoutRequest};
use notchwright_tests::browser::{Page, Site, View, serve_dist};

use crate::answer::{cutter, worked};
use crate::steps::{bookmark, holds, open, open_on, see, see_nothing, shows, stored, type_width};

/// Another width, another cutter with a name of its own, another number of fingers.
async fn make_a_job(page: &Page) -> Result<BoxJointRequest> {
    page.replace_text("#job-name", "Tool chest").await?;
    type_width(page, "151,5").await?;
    page.replace_text("#joint-count", "11").await?;
    page.choose("cutter", "Straight bit").await?;
    page.press("Shop").await?;
    page.press("Edit Straight bit").await?;
    page.replace_text(".thing.chosen [id$=-name]", "Spiral bit")
        .await?;
    page.replace_text(".thing.chosen [id$=-kerf]", "6.31")
        .await?;
    page.press("Joint").await?;
    let request = BoxJointRequest {
        cutter: cutter(6.31),
        layout: LayoutRequest::count(11.0).into(),
        ..worked(151.5)
    };
    shows(page, &request).await?;
    Ok(request)
}

/// The address with one letter of its job changed.
fn broken(address: &str) -> String {
    let middle = address.len() - 40;
    let (before, rest) = address.split_at(middle);
    let other = if rest.starts_with('A') { "B" } else { "A" };
    format!("{before}{other}{}", &rest[1..])
}

async fn made(site: &Site) -> Result<(String, BoxJointRequest)> {
    let page = open(site).await?;
    let request = make_a_job(&page).await?;
    let address = bookmark(&page).await?;
    page.assert_quiet().await?;
    Ok((address, request))
}

#[tokio::test]
async fn a_bookmark_opens_the_same_job_on_another_device() -> Result<()> {
    let site = serve_dist()?;
    let (address, request) = made(&site).await?;

    let page = open_on(&address, &View::phone()).await?;
    shows(&page, &request).await?;
    holds(&page, "#job-name", "Tool chest").await?;
    holds(&page, "#joint-width", "151,5").await?;
    page.press("Shop").await?;
    see(&page, ".thing.chosen", "Spiral bit").await?;
    see(&page, ".thing.chosen", "cuts 6.31 mm").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_broken_link_says_so_and_changes_nothing() -> Result<()> {
    let site = serve_dist()?;
    let (address, _) = made(&site).await?;
    let broken = broken(&address);

    let page = open_on(&broken, &View::phone()).await?;
    see(
        &page,
        ".notice[role=alert]",
        "The link could not be opened.",
    )
    .await?;
    shows(&page, &worked(140.0)).await?;

    page.press("OK").await?;
    type_width(&page, "145").await?;
    assert_ne!(
        bookmark(&page).await?,
        broken,
        "the address is the page's own again"
    );
    page.go_to(&broken).await?;
    see(
        &page,
        ".notice[role=alert]",
        "The link could not be opened.",
    )
    .await?;
    shows(&page, &worked(145.0)).await?;
    // Whoever finds out what is wrong with it will want it.
    let aside = stored(&page, "notchwright.aside.1").await?;
    assert!(
        broken.ends_with(aside.as_str().unwrap_or("nothing")),
        "{aside}"
    );
    page.assert_quiet().await
}

#[tokio::test]
async fn a_link_is_opened_beside_other_work() -> Result<()> {
    let site = serve_dist()?;
    let (address, request) = made(&site).await?;

    let page = open(&site).await?;
    type_width(&page, "145").await?;
    page.go_to(&address).await?;
    shows(&page, &request).await?;
    see(&page, ".notice", "it was added to those that were here").await?;
    page.press("Jobs").await?;
    see(&page, "[aria-label=Jobs]", "Chart chest").await?;
    see(&page, "[aria-label=Jobs] .open", "Tool chest").await?;
    page.press("Joint").await?;
    page.press("Undo").await?;
    shows(&page, &worked(145.0)).await?;
    see_nothing(&page, ".notice").await?;
    page.assert_quiet().await
}
