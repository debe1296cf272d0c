//! A sliding dovetail on the router table.

use anyhow::{Result, bail};
use notchwright_core::joint::box_joint::BoardRequest;
use notchwright_core::joint::sliding::{
    BitRequest, SlidingDovetailPlan, SlidingDovetailRequest, TaperRequest, sliding_dovetail,
};
use notchwright_core::units::Unit;
use notchwright_tests::browser::{Page, serve_dist};

use super::reads;
use crate::answer::length;
use crate::steps::{open, see, see_nothing};

/// The one that the page opens on.
fn worked() -> SlidingDovetailRequest {
    SlidingDovetailRequest {
        bit: BitRequest {
            tip_diameter: 12.7.into(),
            flank_degrees: 14.0.into(),
            ..BitRequest::default()
        }
        .into(),
        depth: 9.5.into(),
        board: BoardRequest {
            thickness: 18.0.into(),
        }
        .into(),
        ..SlidingDovetailRequest::default()
    }
}

fn plan(request: &SlidingDovetailRequest) -> Result<SlidingDovetailPlan> {
    match sliding_dovetail(request) {
        Ok(planned) => Ok(planned.plan),
        Err(problems) => bail!("this cannot be routed: {problems:?}"),
    }
}

async fn shows(page: &Page, plan: &SlidingDovetailPlan) -> Result<()> {
    for (name, value) in [
        ("Socket mouth", plan.mouth),
        ("Tongue at its tip", plan.tongue_tip),
        ("Cut from each side", plan.tongue_cut_per_side),
    ] {
        reads(page, name, &length(value, Unit::Mm)).await?;
    }
    see_nothing(page, ".found.stale").await
}

#[tokio::test]
async fn the_handbooks_example_is_typed_and_read_off() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.choose("joint-kind", "Sliding").await?;
    for (field, other, text) in [
        ("#sliding-tip", "19", "12.7"),
        ("#sliding-flank", "7", "14"),
        ("#sliding-depth", "6", "9.5"),
    ] {
        page.replace_text(field, other).await?;
        page.replace_text(field, text).await?;
    }
    let planned = plan(&worked())?;
    // Derived: 12.7 − 2 · 9.5 · tan 14°; the page shows two decimals of it.
    assert!((planned.mouth.mm() - 7.963).abs() < 5e-4);
    reads(&page, "Socket mouth", "7.96 mm").await?;
    shows(&page, &planned).await?;
    see_nothing(&page, ".go").await?;

    for (field, text) in [
        ("#sliding-floor", "16"),
        ("#sliding-taper", "0.8"),
        ("#sliding-length", "300"),
    ] {
        page.replace_text(field, text).await?;
    }
    let wide = SlidingDovetailRequest {
        socket_floor: 16.0.into(),
        taper: TaperRequest {
            by: 0.8.into(),
            length: 300.0.into(),
        }
        .into(),
        ..worked()
    };
    shows(&page, &plan(&wide)?).await?;
    // Derived: half of 0.8 for each flank.
    reads(&page, "Shim for the taper", "0.4 mm").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn what_cannot_be_routed_is_refused() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.choose("joint-kind", "Sliding").await?;
    shows(&page, &plan(&worked())?).await?;
    for (field, text, good, words) in [
        ("sliding-flank", "50", "14", "45"),
        // Derived: the tongue's neck, a glue gap narrower on both flanks, is gone at
        // (12.7 - 2 · 0.05) / (2 · tan 14°) = 25.27.
        ("sliding-depth", "26", "9.5", "25.27 mm"),
        ("sliding-floor", "12", "", "12.7 mm"),
        ("sliding-tip", "wide", "12.7", "begins with a number"),
    ] {
        let id = format!("#{field}");
        page.replace_text(&id, text).await?;
        see(&page, &format!("{id}-problem"), words).await?;
        page.find(&format!("{id}[aria-invalid=true]")).await?;
        page.find(".found.stale").await?;
        page.replace_text(&id, good).await?;
        shows(&page, &plan(&worked())?).await?;
    }
    page.assert_quiet().await
}
