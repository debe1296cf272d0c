//! Several saws and sleds, any of them with any other.

use anyhow::Result;
use notchwright_tests::browser::{Page, serve_dist};

use super::asked::Asked;
use super::{go_to_sled, open_sled, shows_fit};
use crate::steps::{holds, see};

async fn choose(page: &Page, list: &str, name: &str) -> Result<()> {
    let list = page.find(&format!("#choose-{list}")).await?;
    list.select_by_label(name).await?;
    Ok(())
}

async fn is_chosen(page: &Page, list: &str, name: &str) -> Result<()> {
    holds(page, &format!("#choose-{list}"), name).await
}

async fn type_all(page: &Page, fields: &[(&str, &str)]) -> Result<()> {
    for (field, text) in fields {
        page.replace_text(field, text).await?;
    }
    Ok(())
}

/// A second thing on a shelf, named and then looked at in the sled's place.
async fn add(page: &Page, thing: &str, name: &str) -> Result<()> {
    page.press("Shop").await?;
    page.press(&format!("Add a {thing}")).await?;
    page.wait_for(
        "document.activeElement.id",
        &format!("{thing}-2-name").into(),
    )
    .await?;
    page.replace_text(&format!("#{thing}-2-name"), name).await?;
    go_to_sled(page).await
}

#[tokio::test]
async fn a_second_sled_is_added_measured_and_kept() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    add(&page, "sled", "Long sled").await?;
    is_chosen(&page, "Sled", "Joint sled").await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;

    choose(&page, "Sled", "Long sled").await?;
    see(&page, ".outcome .state", "Still needed: ").await?;
    for needed in [
        "Base thickness",
        "Base width",
        "To carriage face",
        "Runner width",
        "To far contact",
    ] {
        see(&page, ".outcome .state", needed).await?;
    }
    page.reload().await?;
    is_chosen(&page, "Sled", "Long sled").await?;
    see(&page, ".outcome .state", "Still needed: ").await?;

    page.press("The sled").await?;
    type_all(
        &page,
        &[
            ("#sled-2-base", "12"),
            ("#sled-2-width", "600"),
            ("#sled-2-length", "620"),
            ("#sled-2-carriage-face", "180"),
            ("#sled-2-front-rail", "400"),
            ("#sled-2-runner-width", "19"),
            ("#sled-2-contact-near", "30"),
            ("#sled-2-contact-far", "430"),
        ],
    )
    .await?;
    let mut asked = Asked::worked();
    asked.base.thickness = 12.0.into();
    asked.base.width = 600.0.into();
    asked.base.length = 620.0.into();
    asked.base.margin = 0.0.into();
    asked.sled.carriage_face = 180.0.into();
    asked.sled.front_rail = 400.0.into();
    asked.runner.contact_near = 30.0.into();
    asked.runner.contact_far = 430.0.into();
    shows_fit(&page, &asked.plan()?).await?;

    choose(&page, "Sled", "Joint sled").await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;
    page.click("button[aria-label=Undo]").await?;
    is_chosen(&page, "Sled", "Long sled").await?;
    shows_fit(&page, &asked.plan()?).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_sled_goes_on_a_second_saw() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    add(&page, "saw", "Site saw").await?;
    choose(&page, "Saw", "Site saw").await?;
    see(&page, ".outcome .state", "Still needed: ").await?;
    page.press("The saw's table").await?;
    type_all(
        &page,
        &[
            ("#saw-2-to-slot", "130"),
            ("#saw-2-front", "280"),
            ("#saw-2-rear", "390"),
            ("#saw-2-greatest-height", "70"),
        ],
    )
    .await?;
    let mut asked = Asked::worked();
    asked.saw.blade_to_slot = 130.0.into();
    asked.saw.second_slot = notchwright_core::given::Given::Missing;
    asked.saw.front_to_arbor = 280.0.into();
    asked.saw.arbor_to_rear = 390.0.into();
    asked.saw.greatest_height = 70.0.into();
    shows_fit(&page, &asked.plan()?).await?;
    see(&page, ".found .notes", "With a single runner").await?;

    choose(&page, "Saw", "Bench saw").await?;
    shows_fit(&page, &Asked::worked().plan()?).await?;
    see(&page, ".found .notes", "reaches the other slot too").await?;
    page.assert_quiet().await
}
