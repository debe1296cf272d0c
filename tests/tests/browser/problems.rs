//! What cannot be cut is said beside its field, and nothing old is shown as if it were current.

use anyhow::Result;
use notchwright_tests::browser::{Page, serve_dist};

use crate::answer::worked;
use crate::steps::{holds, open, see, see_nothing, shows, type_width};

/// The field is marked and says so, and the results are those of before.
async fn is_refused(page: &Page, field: &str, words: &str) -> Result<()> {
    see(page, &format!("#{field}-problem"), words).await?;
    let describes = format!("#{field}[aria-invalid=true][aria-describedby~={field}-problem]");
    page.find(&describes).await?;
    page.find(".plan.stale").await?;
    see(page, ".outcome .state", "From the last good numbers.").await?;
    // Nobody goes to the saw with numbers that are not what the fields say.
    see_nothing(page, ".go").await
}

#[tokio::test]
async fn what_is_no_length_is_refused_until_it_is_mended() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    for (text, words) in [
        ("wide", "A length begins with a number"),
        ("14O", "«O» is not a unit used here"),
        ("140,5 x", "«x»"),
        ("0", "from 2 mm to 3000 mm"),
        ("-140", "from 2 mm to 3000 mm"),
        ("", "This is needed"),
    ] {
        type_width(&page, text).await?;
        is_refused(&page, "joint-width", words).await?;
        holds(&page, "#joint-width", text).await?;

        type_width(&page, "140").await?;
        shows(&page, &worked(140.0)).await?;
        see_nothing(&page, "#joint-width[aria-invalid]").await?;
        page.wait_for(
            "document.querySelector('#joint-width-problem').textContent",
            &"".into(),
        )
        .await?;
        page.find(".go").await?;
    }
    page.assert_quiet().await
}

#[tokio::test]
async fn all_problems_are_said_at_once() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    type_width(&page, "wide").await?;
    page.replace_text("#joint-thickness-a", "thick").await?;
    page.replace_text("#joint-thickness-b", "0").await?;
    for (field, words) in [
        ("width", "begins with a number"),
        ("thickness-a", "begins with a number"),
        ("thickness-b", "0 mm was given"),
    ] {
        is_refused(&page, &format!("joint-{field}"), words).await?;
    }
    page.assert_quiet().await
}

#[tokio::test]
async fn a_cutter_wider_than_its_sockets_is_refused() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.choose("cutter", "Grooving stack").await?;
    see(&page, ".verdict strong", "It fits.").await?;
    page.replace_text("#joint-count", "21").await?;
    is_refused(&page, "joint-count", "9.53").await?;

    page.choose("cutter", "Rip blade").await?;
    page.replace_text("#joint-count", "9").await?;
    shows(&page, &worked(140.0)).await?;
    page.assert_quiet().await
}
