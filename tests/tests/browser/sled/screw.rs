//! The screw against a rule, and what it changes in every joint.

use anyhow::{Context, Result, bail};
use notchwright_core::dial::ScrewRequest;
use notchwright_core::given::Given;
use notchwright_core::joint::box_joint::BoxJointRequest;
use notchwright_core::screw_check::{PointRequest, ScrewCheckPlan, ScrewCheckRequest, screw_check};
use notchwright_core::units::{Unit, write_number};
use notchwright_tests::browser::{Key, Page, View, serve_dist};
use serde_json::json;

use super::{choose_tool, go_to_sled, is_in, open_sled, reads, says, type_on};
use crate::answer::{length, worked};
use crate::steps::{holds, open_on, see, see_nothing, shows};

/// Where the carriage was set to from below, and what was measured there.
const UPWARDS: [(f64, f64); 7] = [
    (0.0, 0.01),
    (25.0, 25.06),
    (50.0, 50.1),
    (75.0, 75.17),
    (100.0, 100.21),
    (125.0, 125.26),
    (150.0, 150.3),
];

/// The same from above.
const DOWNWARDS: [(f64, f64); 2] = [(175.0, 175.47), (200.0, 200.51)];

fn plan(points: &[(f64, f64, &str)]) -> Result<ScrewCheckPlan> {
    let points = points.iter().map(|(commanded, measured, approach)| {
        let approach = if approach.is_empty() {
            Given::Missing
        } else {
            (*approach).into()
        };
        Given::from(PointRequest {
            commanded: (*commanded).into(),
            measured: (*measured).into(),
            approach,
        })
    });
    let request = ScrewCheckRequest {
        screw: ScrewRequest {
            threads_per_inch: 16.0.into(),
            divisions: 80.0.into(),
            ..ScrewRequest::default()
        }
        .into(),
        points: points.collect::<Vec<_>>().into(),
    };
    match screw_check(&request) {
        Ok(planned) => Ok(planned.plan),
        Err(problems) => bail!("nothing follows from these points: {problems:?}"),
    }
}

/// Which way positions were reached is not asked while all were reached the same way.
fn of(points: &[(f64, f64)]) -> Result<ScrewCheckPlan> {
    let points = points.iter().map(|(at, measured)| (*at, *measured, ""));
    plan(&points.collect::<Vec<_>>())
}

fn one_way() -> Result<ScrewCheckPlan> {
    of(&UPWARDS)
}

fn both_ways() -> Result<ScrewCheckPlan> {
    let up = UPWARDS.iter().map(|(at, measured)| (*at, *measured, "up"));
    let down = DOWNWARDS
        .iter()
        .map(|(at, measured)| (*at, *measured, "down"));
    plan(&up.chain(down).collect::<Vec<_>>())
}

/// Waits until the figures are those of a plan.
async fn shows_check(page: &Page, plan: &ScrewCheckPlan) -> Result<()> {
    let length = |mm| length(mm, Unit::Mm);
    reads(
        page,
        &[
            ("True lead", write_number(plan.lead.mm(), 5)),
            ("Offset at zero", length(plan.offset)),
            ("Left unexplained", length(plan.residual)),
        ],
    )
    .await?;
    let off = format!("off by {} ‰", write_number(plan.scale_per_mille, 3));
    says(page, "True lead", &off).await
}

/// Fills an empty table; each Enter goes on to the next position, which the page finds from the third on.
async fn type_table(page: &Page) -> Result<()> {
    page.press("Clear the table").await?;
    see(page, ".notice", "The table was removed.").await?;
    see_nothing(page, ".points").await?;
    page.press("Add a position").await?;
    for (row, (commanded, measured)) in (1..).zip(UPWARDS) {
        if row <= 2 {
            is_in(page, &format!("point-{row}-commanded")).await?;
            type_on(page, &commanded.to_string()).await?;
            page.key(Key::Tab).await?;
        }
        is_in(page, &format!("point-{row}-measured")).await?;
        holds(
            page,
            &format!("#point-{row}-commanded"),
            &commanded.to_string(),
        )
        .await?;
        type_on(page, &measured.to_string()).await?;
        if row < UPWARDS.len() {
            page.key(Key::Enter).await?;
        }
    }
    Ok(())
}

/// Two more positions, reached from above.
async fn type_the_way_back(page: &Page) -> Result<()> {
    for (row, (commanded, measured)) in (UPWARDS.len() + 1..).zip(DOWNWARDS) {
        page.press("Add a position").await?;
        is_in(page, &format!("point-{row}-measured")).await?;
        holds(
            page,
            &format!("#point-{row}-commanded"),
            &commanded.to_string(),
        )
        .await?;
        type_on(page, &measured.to_string()).await?;
        // The second follows the first.
        if row == UPWARDS.len() + 1 {
            page.click(&format!("[aria-label^='Position {row} was reached']"))
                .await?;
        }
        page.find(&format!(
            "[aria-label^='Position {row} was reached from above']"
        ))
        .await?;
    }
    Ok(())
}

/// The worked joint with another lead, as it was written into the shop.
fn with_lead(text: &str) -> Result<BoxJointRequest> {
    let screw = ScrewRequest {
        lead: text.parse::<f64>().context("a lead")?.into(),
        divisions: 80.0.into(),
        travel: 320.0.into(),
        ..ScrewRequest::default()
    };
    Ok(BoxJointRequest {
        screw: screw.into(),
        ..worked(140.0)
    })
}

#[tokio::test]
async fn a_table_is_typed_down_its_columns() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Screw").await?;
    type_table(&page).await?;
    let plan = one_way()?;
    shows_check(&page, &plan).await?;
    for over in &plan.over_board {
        let words = format!(
            "over a board of {}{}",
            length(over.length, Unit::Mm),
            length(over.error, Unit::Mm)
        );
        see(&page, ".kept", &words).await?;
    }
    let figures = page.attributes(".found .figure svg", "viewBox").await?;
    assert_eq!(figures.len(), 2, "{figures:?}");

    page.click("[aria-label='Remove position 7']").await?;
    shows_check(&page, &of(&UPWARDS[..6])?).await?;
    page.press("Undo").await?;
    shows_check(&page, &plan).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn the_true_lead_is_taken_and_given_back() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Screw").await?;
    type_table(&page).await?;
    shows_check(&page, &one_way()?).await?;
    page.press("Take the lead for Sled screw").await?;
    page.press("Shop").await?;
    page.press("Edit Sled screw").await?;
    // To a tenth of a micrometre.
    let lead = write_number(one_way()?.lead.mm(), 4);
    holds(&page, "#screw-1-lead", &lead).await?;
    page.press("Joint").await?;
    shows(&page, &with_lead(&lead)?).await?;
    assert_ne!(
        crate::answer::tables(&crate::answer::plan(&with_lead(&lead)?)?, Unit::Mm),
        crate::answer::tables(&crate::answer::plan(&worked(140.0))?, Unit::Mm),
        "another lead has other settings"
    );
    page.click("button[aria-label=Undo]").await?;
    shows(&page, &worked(140.0)).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn both_directions_give_the_backlash() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Screw").await?;
    type_table(&page).await?;
    shows_check(&page, &one_way()?).await?;
    let take = "[...document.querySelectorAll('.found .button')].map((it) => it.textContent)";
    page.wait_for(take, &json!(["Take the lead for Sled screw"]))
        .await?;

    type_the_way_back(&page).await?;
    let plan = both_ways()?;
    shows_check(&page, &plan).await?;
    let backlash = plan.backlash.context("both directions were measured")?;
    reads(&page, &[("Backlash", length(backlash, Unit::Mm))]).await?;
    page.press("Take the backlash for Sled screw").await?;
    page.press("Shop").await?;
    page.press("Edit Sled screw").await?;
    holds(&page, "#screw-1-backlash", &write_number(backlash.mm(), 4)).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_cannot_be_read_or_is_too_little_is_said() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    choose_tool(&page, "Screw").await?;
    page.find(".found:not(.stale)").await?;
    page.replace_text("#point-3-measured", "wide").await?;
    see(&page, "#point-3-measured-problem", "begins with a number").await?;
    page.find("#point-3-measured[aria-invalid=true]").await?;
    page.find(".found.stale").await?;
    page.replace_text("#point-3-measured", "40.05").await?;
    see_nothing(&page, ".found.stale").await?;

    page.press("Clear the table").await?;
    see(
        &page,
        ".outcome .state",
        "From 3 to 500 points are needed; these are 0.",
    )
    .await?;
    page.press("Undo").await?;
    see_nothing(&page, ".found.stale").await?;
    page.assert_quiet().await
}

/// Positions with a figure that is wider than its field.
const CUT_OFF: &str = "[...document.querySelectorAll('.points input')]
    .filter((it) => it.scrollWidth > it.clientWidth).map((it) => it.value)";

#[tokio::test]
async fn no_position_is_cut_off_on_any_screen() -> Result<()> {
    let site = serve_dist()?;
    for view in [View::phone(), View::narrow(), View::phone().large_type()] {
        let page = open_on(&site.url(), &view).await?;
        go_to_sled(&page).await?;
        choose_tool(&page, "Screw").await?;
        page.find(".points").await?;
        assert_eq!(page.evaluate(CUT_OFF).await?, json!([]), "{view:?}");
        page.assert_quiet().await?;
    }
    Ok(())
}
