//! A groove on the router table.

use anyhow::{Result, bail};
use notchwright_core::groove::{GrooveSetupPlan, GrooveSetupRequest, StoppedRequest, groove_setup};
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Page, serve_dist};
use serde_json::{Value, json};

use super::{choose_tool, is_greyed, open_sled, reads};
use crate::answer::{length, sentence};
use crate::steps::{see, see_nothing};

/// The worked groove: a sheet of 5.8 with room of 0.2.
fn worked() -> GrooveSetupRequest {
    GrooveSetupRequest {
        from_edge: 12.0.into(),
        width: (5.8 + 0.2).into(),
        bit: 5.0.into(),
        depth: 6.0.into(),
        pass_depth: 3.0.into(),
        ..GrooveSetupRequest::default()
    }
}

fn plan(request: &GrooveSetupRequest) -> Result<GrooveSetupPlan> {
    match groove_setup(request) {
        Ok(planned) => Ok(planned.plan),
        Err(problems) => bail!("this cannot be routed: {problems:?}"),
    }
}

/// Waits until the fence's settings and the depths are those of a plan.
async fn shows(page: &Page, plan: &GrooveSetupPlan) -> Result<()> {
    let settings = plan
        .passes
        .iter()
        .map(|pass| length(pass.fence_to_bit, Unit::Mm));
    let settings: Value = settings.map(Value::from).collect();
    let shown = "[...document.querySelectorAll('.settings li b')].map((it) => it.textContent)";
    page.wait_for(shown, &settings).await?;
    let depths: Vec<_> = plan
        .depths
        .iter()
        .map(|depth| length(*depth, Unit::Mm))
        .collect();
    if !depths.is_empty() {
        let words = format!("raise the bit to {}.", depths.join(", then "));
        see(page, ".found", &words).await?;
    }
    see_nothing(page, ".found.stale").await
}

#[tokio::test]
async fn a_groove_follows_from_the_sheet() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Groove").await?;
    shows(&page, &plan(&worked())?).await?;
    page.replace_text("#rout-sheet", "11.7").await?;
    let mut request = GrooveSetupRequest {
        width: (11.7 + 0.2).into(),
        ..worked()
    };
    shows(&page, &plan(&request)?).await?;
    page.replace_text("#rout-depth", "7").await?;
    request.depth = 7.0.into();
    shows(&page, &plan(&request)?).await?;

    page.choose("width-by", "known").await?;
    is_greyed(&page, "Still needed: Groove width.").await?;
    page.replace_text("#rout-width", "8").await?;
    request.width = 8.0.into();
    shows(&page, &plan(&request)?).await?;
    page.choose("width-by", "what the sheet needs").await?;
    request.width = (11.7 + 0.2).into();
    shows(&page, &plan(&request)?).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_stopped_groove_has_its_marks() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Groove").await?;
    see_nothing(&page, ".outcome .facts").await?;
    page.press("Stopped groove").await?;
    page.replace_text("#rout-from", "40").await?;
    is_greyed(&page, "Still needed: Ends at.").await?;
    page.replace_text("#rout-to", "100").await?;
    let stopped = StoppedRequest {
        from: 40.0.into(),
        to: 100.0.into(),
    };
    let plan = plan(&GrooveSetupRequest {
        stopped: stopped.into(),
        ..worked()
    })?;
    shows(&page, &plan).await?;
    let Some(marks) = plan.marks else {
        bail!("a stopped groove has marks");
    };
    let length = |mm| length(mm, Unit::Mm);
    reads(
        &page,
        &[
            (
                "Start, past the far mark",
                length(marks.start_past_far_mark),
            ),
            (
                "Stop, past the near mark",
                length(marks.stop_past_near_mark),
            ),
            ("Feed between them", length(marks.feed)),
            ("Round ends, radius", length(plan.end_radius)),
        ],
    )
    .await?;
    see(&page, ".found .notes", "ends are round").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_cannot_be_routed_is_refused_until_it_is_mended() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Groove").await?;
    let wrong: [(&str, &str, &str, GrooveSetupRequest); 2] = [
        (
            "rout-bit",
            "6.35",
            "5",
            GrooveSetupRequest {
                bit: 6.35.into(),
                ..worked()
            },
        ),
        (
            "rout-from-edge",
            "2",
            "12",
            GrooveSetupRequest {
                from_edge: 2.0.into(),
                ..worked()
            },
        ),
    ];
    for (field, bad, good, request) in wrong {
        page.replace_text(&format!("#{field}"), bad).await?;
        let Err(problems) = groove_setup(&request) else {
            bail!("{field} can be {bad}");
        };
        let says: Vec<_> = problems
            .iter()
            .map(|problem| sentence(&problem.message))
            .collect();
        see(&page, &format!("#{field}-problem"), &says.join(" ")).await?;
        is_greyed(&page, "The marked fields say what would work.").await?;
        page.replace_text(&format!("#{field}"), good).await?;
        shows(&page, &plan(&worked())?).await?;
        page.wait_for(
            &format!("document.querySelector('#{field}-problem').textContent"),
            &json!(""),
        )
        .await?;
    }
    page.assert_quiet().await
}
