//! The dovetails' part of the program: fetched when it is needed, kept for when there is no network.

use anyhow::Result;
use notchwright_tests::browser::serve_dist;

use super::{choose_dovetails, shows, worked};
use crate::steps::{open, see};

/// How often the page has asked for it.
const ASKED_FOR: &str = "performance.getEntriesByType('resource')
    .filter((it) => it.name.endsWith('/pkg/dovetail.wasm')).length";

#[tokio::test]
async fn it_is_fetched_once_when_it_is_first_chosen() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 0, "nobody needs it yet");
    choose_dovetails(&page).await?;
    shows(&page, &worked()).await?;
    page.choose("joint-kind", "Sliding").await?;
    see(&page, ".facts", "Socket mouth").await?;
    page.choose("joint-kind", "Box joint").await?;
    see(&page, ".facts", "Finger width").await?;
    choose_dovetails(&page).await?;
    shows(&page, &worked()).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 1);
    page.assert_quiet().await
}

/// The server is gone, so there is nothing to be asked of any host, and no console to be kept quiet.
#[tokio::test]
async fn it_opens_without_a_network_although_it_never_was_before() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    assert_eq!(page.evaluate(ASKED_FOR).await?, 0);
    drop(site);
    choose_dovetails(&page).await?;
    shows(&page, &worked()).await?;
    page.reload().await?;
    shows(&page, &worked()).await
}
