//! The page as one file, opened from the disk: it is the whole page, and asks nobody for anything.

use anyhow::{Context, Result};
use notchwright_core::joint::box_joint::BoxJointRequest;
use notchwright_tests::browser::{Downloads, Page, View, dist, serve_dist};
use url::Url;

use crate::answer::{cutter, worked};
use crate::steps::{holds, open, see, shows, type_width};

const FILE: &str = "notchwright.html";

fn address() -> Result<String> {
    let file = Url::from_file_path(dist().join(FILE)).ok();
    Ok(file.context("no address")?.into())
}

/// Nothing but the file itself, and what it holds.
async fn asked_for_nothing(page: &Page) -> Result<()> {
    let own = address()?;
    let requests = page.requests().await?;
    assert!(requests.contains(&own), "{requests:?}");
    let within = |it: &&String| it.starts_with("data:") || it.starts_with("blob:");
    let asked: Vec<_> = requests
        .iter()
        .filter(|it| !within(it) && it.split('#').next() != Some(&own))
        .collect();
    assert!(asked.is_empty(), "{asked:?}");
    page.assert_quiet().await
}

#[tokio::test]
async fn it_answers_as_the_served_page_does() -> Result<()> {
    let page = Page::open(&address()?, &View::phone()).await?;
    shows(&page, &worked(140.0)).await?;
    type_width(&page, "151.3").await?;
    shows(&page, &worked(151.3)).await?;
    asked_for_nothing(&page).await
}

#[tokio::test]
async fn every_part_of_the_program_is_in_it() -> Result<()> {
    let page = Page::open(&address()?, &View::phone()).await?;
    page.press("Sled").await?;
    see(&page, "main.sled", "Table").await?;
    page.press("Jobs").await?;
    see(&page, ".leaf.open", "Drawers, side to front").await?;
    page.wait_until("!document.querySelector('.served-only').checkVisibility()")
        .await?;
    page.press("Shop").await?;
    // Derived: five kerfs 2.5 mm apart are one kerf and 10 mm wide.
    for (field, text) in [("kerfs", "5"), ("step", "2.5"), ("width", "12.62")] {
        page.replace_text(&format!("#slot-{field}"), text).await?;
    }
    page.press("Take it for Rip blade").await?;
    page.press("Joint").await?;
    let thinner = BoxJointRequest {
        cutter: cutter(2.62),
        ..worked(140.0)
    };
    shows(&page, &thinner).await?;
    page.choose("joint-kind", "Dovetails").await?;
    page.find("#dovetail-tails").await?;
    see(&page, ".verdict", "It fits").await?;
    page.press("At the saw").await?;
    page.press("All is set").await?;
    asked_for_nothing(&page).await
}

#[tokio::test]
async fn it_keeps_what_was_typed() -> Result<()> {
    let page = Page::open(&address()?, &View::phone()).await?;
    type_width(&page, "151.3").await?;
    shows(&page, &worked(151.3)).await?;
    page.reload().await?;
    holds(&page, "#joint-width", "151.3").await?;
    // The address carries the job: without it, what is stored is all there is.
    page.go_to("about:blank").await?;
    page.go_to(&address()?).await?;
    shows(&page, &worked(151.3)).await?;
    page.assert_quiet().await
}

/// On another thread, which no file beside it is needed for.
#[tokio::test]
async fn parts_are_laid_out_on_sheets_in_it() -> Result<()> {
    let page = Page::open(&address()?, &View::phone()).await?;
    let source = "window.threads = [];
        window.Worker = class extends Worker {
            constructor(address, options) {
                super(address, options);
                this.addEventListener('message', ({ data }) => window.threads.push(data && address));
            }
        };";
    page.devtools(
        "Page.addScriptToEvaluateOnNewDocument",
        serde_json::json!({ "source": source }),
    )
    .await?;
    page.reload().await?;
    page.press("Parts").await?;
    page.choose("parts-tool", "Sheet").await?;
    see(&page, ".search", "The search rests.").await?;
    let beside =
        "window.threads.length > 1 && window.threads.every((it) => it?.startsWith('blob:'))";
    assert_eq!(page.evaluate(beside).await?, true);
    asked_for_nothing(&page).await
}

#[tokio::test]
async fn it_says_where_nothing_is_stored() -> Result<()> {
    let page = Page::open(&address()?, &View::phone()).await?;
    let source = "Object.defineProperty(window, 'localStorage', {
        get() { throw new DOMException('no', 'SecurityError'); },
    });";
    page.devtools(
        "Page.addScriptToEvaluateOnNewDocument",
        serde_json::json!({ "source": source }),
    )
    .await?;
    page.reload().await?;
    type_width(&page, "151.3").await?;
    shows(&page, &worked(151.3)).await?;
    see(&page, ".notice", "stores nothing").await?;
    asked_for_nothing(&page).await
}

#[tokio::test]
async fn the_served_page_hands_it_out() -> Result<()> {
    let site = serve_dist()?;
    let page = open(&site).await?;
    page.press("Jobs").await?;
    let downloads = Downloads::new("single");
    let link = format!("a[download='{FILE}']");
    let saved = page.saved(&downloads, FILE, page.click(&link)).await?;
    assert!(saved == std::fs::read_to_string(dist().join(FILE))?);
    page.assert_quiet().await
}
