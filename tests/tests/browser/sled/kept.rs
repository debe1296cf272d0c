//! What was typed in the sled's place is there again, here and wherever a bookmark is opened.

use anyhow::Result;
use notchwright_tests::browser::{Page, View, serve_dist};

use super::asked::Asked;
use super::{choose_tool, go_to_sled, open_sled, shows_fit};
use crate::steps::{bookmark, holds, open_on, see};

/// Something in every tool, and in the saw and the sled themselves.
async fn make_changes(page: &Page) -> Result<Asked> {
    page.press("The saw's table").await?;
    page.replace_text("#saw-1-to-slot", "121,5").await?;
    page.press("The sled").await?;
    page.replace_text("#sled-1-contact-near", "35").await?;
    page.press("Blade and cut").await?;
    page.replace_text("#cut-depth", "22").await?;
    choose_tool(page, "Square").await?;
    page.replace_text("#square-pivot", "512").await?;
    choose_tool(page, "Screw").await?;
    page.replace_text("#point-2-measured", "20.02").await?;
    choose_tool(page, "Groove").await?;
    page.replace_text("#rout-sheet", "4.1").await?;
    choose_tool(page, "Fit").await?;
    let mut asked = Asked::worked();
    asked.saw.blade_to_slot = 121.5.into();
    asked.runner.contact_near = 35.0.into();
    asked.cut.depth = 22.0.into();
    shows_fit(page, &asked.plan()?).await?;
    Ok(asked)
}

async fn are_there(page: &Page, asked: &Asked) -> Result<()> {
    shows_fit(page, &asked.plan()?).await?;
    for (tool, fields) in [
        (
            "Fit",
            &[
                ("#saw-1-to-slot", "121,5"),
                ("#sled-1-contact-near", "35"),
                ("#cut-depth", "22"),
            ][..],
        ),
        ("Square", &[("#square-pivot", "512")][..]),
        ("Screw", &[("#point-2-measured", "20.02")][..]),
        ("Groove", &[("#rout-sheet", "4.1")][..]),
    ] {
        choose_tool(page, tool).await?;
        for (field, text) in fields {
            page.find(field).await?;
            holds(page, field, text).await?;
        }
    }
    Ok(())
}

#[tokio::test]
async fn what_was_typed_outlives_a_reload() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let asked = make_changes(&page).await?;
    page.reload().await?;
    are_there(&page, &asked).await?;
    // It comes back at the tool that was open.
    page.reload().await?;
    see(&page, ".main.sled h2", "Groove on the router table").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_bookmark_carries_it_to_another_device() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let asked = make_changes(&page).await?;
    let address = bookmark(&page).await?;
    page.assert_quiet().await?;
    drop(page);

    let page = open_on(&address, &View::phone()).await?;
    go_to_sled(&page).await?;
    are_there(&page, &asked).await?;
    page.assert_quiet().await
}
