//! At the saw: five set-ups, each before its stops, and never lost.

use anyhow::{Context, Result};
use notchwright_core::joint::dovetail::DovetailRequest;
use notchwright_core::stop::Set;
use notchwright_core::units::write_number;
use notchwright_tests::browser::{Page, serve_dist};

use super::{FOLD, open_dovetails, plan, shows, worked};
use crate::steps::{cut_one_board_of_each, is_at_stop, next, see, see_nothing};

/// What each set-up says of blade, board and edge, in order.
const SAYS: [&[&str]; 5] = [
    &[
        "Lean it 7.125° towards the reference edge",
        "outer face to the carriage, reference edge against the stop",
    ],
    &[
        "Leave its lean and its height as they are",
        "inner face to the carriage, the other edge against the stop",
    ],
    &[
        "Upright: check it with a square",
        "outer face to the carriage, reference edge against the stop",
    ],
    &[
        "Upright",
        "outer face to the carriage",
        "turned 7.125° clockwise",
    ],
    &[
        "Upright",
        "outer face to the carriage",
        "turned 7.125° anticlockwise",
    ],
];

async fn is_set_up(page: &Page, set: &Set, says: &[&str]) -> Result<()> {
    let mut name = set.name.clone();
    name.replace_range(..1, &name[..1].to_lowercase());
    see(page, ".saw.set-up h1", &format!("Set up for {name}")).await?;
    see(page, ".saw .height", &write_number(set.height.mm(), 2)).await?;
    for words in says {
        see(page, ".saw .steps", words).await?;
    }
    // No stop is shown before it has been said that all is set.
    see_nothing(page, ".saw .setting").await
}

async fn pass_all(page: &Page, set: &Set) -> Result<()> {
    page.press("All is set").await?;
    for stop in 1..=set.stops.len() {
        is_at_stop(page, set, stop).await?;
        next(page).await?;
    }
    Ok(())
}

#[tokio::test]
async fn every_set_is_set_up_and_passed_to_the_end() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    let sets = plan(&worked())?.sets;
    assert_eq!(sets.len(), SAYS.len());
    cut_one_board_of_each(&page).await?;
    page.press("At the saw").await?;
    for (set, says) in sets.iter().zip(SAYS) {
        is_set_up(&page, set, says).await?;
        pass_all(&page, set).await?;
    }
    see(&page, ".saw.done h1", "Both boards are cut").await?;
    page.press("To the joint").await?;
    see_nothing(&page, ".saw").await?;
    shows(&page, &worked()).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_stop_of_the_third_set_outlives_a_reload() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    let sets = plan(&worked())?.sets;
    let third = sets.get(2).context("there is no third set")?;
    cut_one_board_of_each(&page).await?;
    page.press("At the saw").await?;
    is_set_up(&page, &sets[0], SAYS[0]).await?;
    page.click(".jump summary").await?;
    page.click(".jump nav > ol:first-of-type li:nth-child(3) button")
        .await?;
    is_set_up(&page, third, SAYS[2]).await?;
    page.press("All is set").await?;
    next(&page).await?;
    is_at_stop(&page, third, 2).await?;
    page.reload().await?;
    is_at_stop(&page, third, 2).await?;
    next(&page).await?;
    is_at_stop(&page, third, 3).await?;
    page.go_on_in_a_new_tab(&site.url()).await?;
    is_at_stop(&page, third, 3).await?;
    page.press("Back").await?;
    is_at_stop(&page, third, 2).await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_half_blind_joint_is_only_sawn_on_its_tail_board() -> Result<()> {
    let site = serve_dist()?;
    let page = open_dovetails(&site).await?;
    page.press(FOLD).await?;
    page.replace_text("#dovetail-lap", "6").await?;
    let request = DovetailRequest {
        lap: 6.0.into(),
        ..worked()
    };
    shows(&page, &request).await?;
    let sets = plan(&request)?.sets;
    assert!(sets.iter().all(|set| set.yaw_degrees == 0.0));
    cut_one_board_of_each(&page).await?;
    page.press("At the saw").await?;
    for (set, says) in sets.iter().zip(SAYS) {
        is_set_up(&page, set, says).await?;
        pass_all(&page, set).await?;
    }
    see(&page, ".saw.done h1", "The tail board is cut").await?;
    page.assert_quiet().await
}
