//! The chosen saw and sled set bounds to every joint.

use anyhow::{Context, Result, bail};
use notchwright_core::joint::box_joint::{BoardRequest, BoxJointRequest, SawRequest, box_joint};
use notchwright_tests::browser::{Page, serve_dist};

use super::{open_sled, proposed};
use crate::answer::{sentence, worked};
use crate::steps::{see, see_nothing, shows};

fn request(thickness: f64, saw: SawRequest) -> BoxJointRequest {
    BoxJointRequest {
        b: BoardRequest {
            thickness: thickness.into(),
        }
        .into(),
        saw: saw.into(),
        ..worked(140.0)
    }
}

/// A board of some thickness is refused in the core's words, and the one that is proposed is not.
async fn is_limited(page: &Page, thickness: f64, saw: SawRequest) -> Result<()> {
    page.press("Joint").await?;
    page.replace_text("#joint-thickness-b", &thickness.to_string())
        .await?;
    let Err(problems) = box_joint(&request(thickness, saw.clone())) else {
        bail!("a board of {thickness} mm is allowed");
    };
    let problem = problems.first().context("a problem")?;
    see(
        page,
        "#joint-thickness-b-problem",
        &sentence(&problem.message),
    )
    .await?;
    page.find(".plan.stale").await?;

    let proposed = proposed(problem)?;
    page.replace_text("#joint-thickness-b", &proposed).await?;
    shows(page, &request(proposed.parse()?, saw)).await?;
    see_nothing(page, "#joint-thickness-b[aria-invalid]").await
}

#[tokio::test]
async fn a_board_that_the_window_has_no_room_for_is_refused() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The sled").await?;
    page.replace_text("#sled-1-front-rail", "330").await?;
    // From the carriage's face at 170.
    let saw = SawRequest {
        greatest_height: 80.0.into(),
        base: 15.0.into(),
        window: 160.0.into(),
    };
    is_limited(&page, 25.0, saw).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_board_that_the_blade_is_too_low_for_is_refused() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The saw's table").await?;
    page.replace_text("#saw-1-greatest-height", "40").await?;
    let saw = SawRequest {
        greatest_height: 40.0.into(),
        base: 15.0.into(),
        window: 200.0.into(),
    };
    is_limited(&page, 27.0, saw).await?;
    page.assert_quiet().await
}
