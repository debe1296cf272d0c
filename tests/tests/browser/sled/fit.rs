//! Where the runner goes, and how far.

use anyhow::{Context, Result};
use notchwright_core::units::{Mm, Unit};
use notchwright_tests::browser::serve_dist;

use super::asked::Asked;
use super::{open_sled, reads_mm, says, shows_fit, shows_fit_in};
use crate::answer::sentence;
use crate::steps::{holds, see, see_nothing};

#[tokio::test]
async fn each_keystroke_moves_the_runner() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let mut asked = Asked::worked();
    shows_fit(&page, &asked.plan()?).await?;
    says(&page, "Move the runner", "away from you").await?;

    page.press("The saw's table").await?;
    page.replace_text("#saw-1-to-slot", "12").await?;
    for (key, to_slot) in [("", 12.0), ("0", 120.0), (".", 120.0), ("5", 120.5)] {
        page.find("#saw-1-to-slot").await?.send_keys(key).await?;
        asked.saw.blade_to_slot = to_slot.into();
        shows_fit(&page, &asked.plan()?).await?;
    }
    page.replace_text("#saw-1-front", "410").await?;
    asked.saw.front_to_arbor = 410.0.into();
    shows_fit(&page, &asked.plan()?).await?;
    says(&page, "Move the runner", "towards you").await?;
    page.replace_text("#saw-1-rear", "500").await?;
    asked.saw.arbor_to_rear = 500.0.into();
    shows_fit(&page, &asked.plan()?).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn how_the_slot_was_measured_counts() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let mut asked = Asked::worked();
    page.press("The saw's table").await?;
    page.choose("measured-from", "middle").await?;
    asked.saw.measured_from = "centre".into();
    shows_fit(&page, &asked.plan()?).await?;
    // From the middle of the blade there is no kerf to count in.
    reads_mm(
        &page,
        "Runner's middle",
        Mm::new(118.5).context("a length")?,
    )
    .await?;
    says(&page, "Runner's middle", "left of the blade line").await?;

    page.choose("slot-side", "right of it").await?;
    asked.saw.slot_side = "right".into();
    shows_fit(&page, &asked.plan()?).await?;
    says(&page, "Runner's middle", "right of the blade line").await?;

    see(&page, ".found .notes", "Plain slot").await?;
    page.choose("section", "T-shaped").await?;
    see(
        &page,
        ".found .notes",
        "adjusters must not sit in its wide part",
    )
    .await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn it_is_read_and_typed_in_inches() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    let mut asked = Asked::worked();
    page.choose("units", "in").await?;
    shows_fit_in(&page, &asked.plan()?, Unit::Inch).await?;

    page.press("The saw's table").await?;
    page.replace_text("#saw-1-to-slot", "4 3/4").await?;
    // Derived: an inch is 25.4 mm by definition.
    asked.saw.blade_to_slot = 120.65.into();
    shows_fit_in(&page, &asked.plan()?, Unit::Inch).await?;
    page.choose("units", "mm").await?;
    holds(&page, "#saw-1-to-slot", "120.65").await?;
    shows_fit(&page, &asked.plan()?).await?;
    page.assert_quiet().await
}

/// Derived from a circle's chord at a height: the blade stands 15 + 18.5 = 33.5 high, half its chord on the
/// base is √(127² − (127 − 33.5 + 15)²) = 66.006, so that the smallest travel is 66.006 + 12 + 5 + 2 and
/// the smallest window 2 · 66.006 + 12 + 5.
#[tokio::test]
async fn the_smallest_travel_and_window_follow_from_the_cut() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("The sled").await?;
    page.replace_text("#sled-1-base", "15").await?;
    page.press("Blade and cut").await?;
    for (field, text) in [
        ("#cutter-1-diameter", "254"),
        ("#cut-depth", "18.5"),
        ("#cut-thickness", "12"),
        ("#cut-clearance", "5"),
        ("#cut-over", "2"),
    ] {
        page.replace_text(field, text).await?;
    }
    for (figure, mm) in [
        ("Blade above the table", 33.5),
        ("Half chord of the blade", 66.006),
        ("Smallest travel for this board", 85.006),
        ("Smallest window for this cut", 149.011),
    ] {
        reads_mm(&page, figure, Mm::new(mm).context("a length")?).await?;
    }
    // Half the chord at the table: √(127² − 93.5²).
    says(&page, "Half chord of the blade", "85.95 mm at the table").await?;
    page.assert_quiet().await
}

/// Common practice, no source: 20 and 100 left over, so 40 forward.
#[tokio::test]
async fn measured_left_overs_say_how_far_to_move_the_runner() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("Measured on the saw").await?;
    page.replace_text("#cut-near", "20").await?;
    // One of them alone is nothing to compare, and nothing wrong.
    shows_fit(&page, &Asked::worked().plan()?).await?;
    page.replace_text("#cut-far", "100").await?;
    reads_mm(
        &page,
        "As measured, move it",
        Mm::new(40.0).context("a length")?,
    )
    .await?;
    says(&page, "As measured, move it", "away from you").await?;
    says(&page, "As measured, move it", "60 mm left at both ends").await?;
    see_nothing(&page, ".found .notes .warning").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn measured_and_computed_are_compared() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sled(&site).await?;
    page.press("Measured on the saw").await?;
    page.replace_text("#cut-near", "20").await?;
    // Half of what the far end differs by is what the runner's move differs by: a little below 2 mm, and above.
    let computed = Asked::worked().plan()?.runner;
    let far = computed.far_left.mm().round();
    for (far, differs) in [(far + 3.0, false), (far + 6.0, true)] {
        page.replace_text("#cut-far", &far.to_string()).await?;
        let answer = Asked::worked().measured(20.0, far).answer()?;
        let measured = answer.plan.from_measured.context("it was measured")?;
        reads_mm(&page, "As measured, move it", measured.forward).await?;
        let mut notes = answer.notes.iter();
        let warning = notes.find(|note| note.code == "measured-otherwise");
        assert_eq!(warning.is_some(), differs, "{far}");
        match warning {
            Some(warning) => {
                see(&page, ".found .notes .warning", &sentence(&warning.message)).await?;
            }
            None => see_nothing(&page, ".found .notes .warning").await?,
        }
    }
    page.assert_quiet().await
}
