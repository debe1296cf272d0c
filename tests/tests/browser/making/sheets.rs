//! Parts laid out on sheets: searched for beside the page, the same as natively, and ticked off while cutting.

use std::fs;

use anyhow::{Context, Result};
use notchwright_tests::browser::{Copy, Page, Site, View, serve_dist};
use notchwright_web::model::{Chunk, Model};
use notchwright_web::msg::{Look, Msg, Search};
use notchwright_web::state::{PartsTool, Place};
use notchwright_web::update::Found;
use serde_json::json;

use super::{choose_tool, open_parts};
use crate::access::assert_usable;
use crate::steps::see;

/// Numbers of what the layout takes, by what they are called.
const TAKEN: &str = "(() => {
    if (!document.querySelector('.search')?.textContent.includes('The search rests.')) return null;
    const facts = [...document.querySelectorAll('.facts div')];
    return facts.map((fact) => [fact.firstChild, fact.lastChild.firstChild].map((it) => it.textContent));
})()";

/// Whether another thread has been asked.
const BESIDE: &str = "performance.getEntriesByType('resource')
    .some((it) => it.name.endsWith('/searcher.js'))";

/// From the third slice on, whoever searches beside the page is asked only once `goOn()` has been called: until
/// then the search can be stopped, however slow a person is.
const HOLD: &str = "(() => {
    const held = [];
    let left = 2;
    window.Worker = class extends Worker {
        postMessage(asked) {
            if (left > 0) {
                left -= 1;
                super.postMessage(asked);
            } else {
                held.push(() => super.postMessage(asked));
            }
        }
    };
    window.goOn = () => {
        left = Infinity;
        held.splice(0).forEach((ask) => ask());
    };
})()";

/// How many rounds have been made.
const ROUNDS: &str = "Number(/[0-9]+/.exec(document.querySelector('.search .quiet').textContent))";

async fn open_sheets(site: &Site) -> Result<Page> {
    let page = open_parts(site).await?;
    choose_tool(&page, "Sheet").await?;
    Ok(page)
}

async fn has_searched(page: &Page) -> Result<()> {
    see(page, ".search", "The search rests.").await
}

/// The worked job laid out by the native program, after as many rounds as the page makes by itself.
fn natively() -> Result<Model> {
    let (mut model, _) = Model::start(Found::default());
    model.update(Msg::Go(Place::Parts));
    model.update(Msg::Came(Chunk::Parts));
    model.update(Msg::Look(Look::PartsTool(PartsTool::Sheet)));
    let steps = |model: &Model| {
        let making = model.answer.making.as_ref()?;
        Some(making.sheet.reached.as_ref()?.steps)
    };
    while steps(&model) < Some(model.searching.limit) {
        let before = steps(&model);
        model.update(Msg::Search(Search::Slice(None)));
        (steps(&model) > before).then_some(()).context("no slice")?;
    }
    Ok(model)
}

#[tokio::test]
async fn the_page_finds_what_the_native_program_finds() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    assert_eq!(page.evaluate(BESIDE).await?, false);
    choose_tool(&page, "Sheet").await?;
    has_searched(&page).await?;
    assert_eq!(page.evaluate(BESIDE).await?, true);
    let model = natively()?;
    let making = model.answer.making.as_ref().context("no answer")?;
    let found = making.sheet.layout.current().context("no layout")?;
    let facts = page.evaluate(TAKEN).await?;
    let fact = |name: &str| {
        let all = facts.as_array()?.iter();
        let [_, says] = all
            .filter_map(|it| it.as_array())
            .find(|it| it[0] == name)?
            .as_slice()
        else {
            return None;
        };
        says.as_str().map(str::to_owned)
    };
    let plan = &found.plan;
    for (name, says) in [
        ("Whole sheets", plan.whole_sheets.to_string()),
        ("Fence set", format!("{} ×", plan.settings)),
        (
            "Used",
            format!("{} %", (plan.share * 1000.0).round() / 10.0),
        ),
    ] {
        assert_eq!(fact(name), Some(says), "{name} of {facts}");
    }
    assert_usable(&page, "sheets").await?;
    page.assert_quiet().await
}

#[tokio::test]
async fn a_layout_that_is_being_cut_is_there_again_without_a_network() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sheets(&site).await?;
    see(&page, ".search", "Round").await?;
    has_searched(&page).await?;
    page.press("Cuts").await?;
    page.click(".cut-list li:nth-child(2) .cut").await?;
    see(&page, ".search", "Cutting has begun").await?;
    let drawings = "[...document.querySelectorAll('.laid svg')].map((it) => it.outerHTML)";
    let before = page.evaluate(drawings).await?;
    assert!(before.as_array().is_some_and(|it| !it.is_empty()));
    drop(site);

    page.reload().await?;
    see(&page, ".search", "Cutting has begun").await?;
    see(&page, ".laid summary", "1 of").await?;
    page.wait_for(drawings, &before).await
}

/// The missing file is an error on the console, of the browser's own.
#[tokio::test]
async fn the_page_searches_by_itself_where_nobody_does_beside_it() -> Result<()> {
    let copy = Copy::new("searcher", "")?;
    fs::remove_file(copy.page().join("searcher.js"))?;
    let site = Site::start(copy.top(), 0)?;
    let page = Page::open(&site.url(), &View::phone()).await?;
    page.press("Parts").await?;
    choose_tool(&page, "Sheet").await?;
    see(&page, ".facts", "Whole sheets").await?;
    page.wait_until(&format!("{ROUNDS} > 10")).await
}

#[tokio::test]
async fn what_stands_in_the_way_is_said_and_a_search_is_stopped_and_gone_on_with() -> Result<()> {
    let site = serve_dist()?;
    let page = open_parts(&site).await?;
    page.evaluate(HOLD).await?;
    choose_tool(&page, "Sheet").await?;
    page.press("Stop").await?;
    has_searched(&page).await?;
    page.wait_until(&format!("{ROUNDS} < 1000")).await?;
    page.press("Search on").await?;
    page.evaluate("goOn()").await?;
    has_searched(&page).await?;
    page.wait_until(&format!("{ROUNDS} >= 1000")).await?;
    // Shorter than the fronts, which are of this stock alone.
    page.replace_text("#sheet-2-length", "500").await?;
    see(&page, "main", "larger than every sheet of its stock").await?;
    page.replace_text("#sheet-2-length", "2500").await?;
    has_searched(&page).await?;
    let quantity = "#sheet-3-quantity";
    page.replace_text(quantity, "1").await?;
    see(&page, "main", "needed").await?;
    page.replace_text(quantity, "").await?;
    has_searched(&page).await?;
    assert_eq!(page.value(quantity).await?, "");
    page.wait_until(&format!("{TAKEN}?.length > 3")).await?;
    page.assert_quiet().await
}

/// Every cut of every sheet is on paper with a box to tick, those of sheets that are alike once.
#[tokio::test]
async fn the_cuts_are_printed_with_a_box_for_each_sheet() -> Result<()> {
    let site = serve_dist()?;
    let page = open_sheets(&site).await?;
    has_searched(&page).await?;
    page.devtools("Emulation.setEmulatedMedia", json!({ "media": "print" }))
        .await?;
    page.evaluate("void window.dispatchEvent(new Event('beforeprint'))")
        .await?;
    let model = natively()?;
    let making = model.answer.making.as_ref().context("no answer")?;
    let found = making.sheet.layout.current().context("no layout")?;
    let cuts: usize = found.plan.sheets.iter().map(|sheet| sheet.cuts.len()).sum();
    let shown = |what: &str| {
        format!(
            "[...document.querySelectorAll('{what}')].filter((it) => it.checkVisibility()).length"
        )
    };
    page.wait_for(&shown(".boxes .tick"), &cuts.into()).await?;
    page.wait_for(&shown("button, input, select, summary"), &0.into())
        .await?;
    see(&page, ".for-paper .caution", "Caution").await?;
    page.assert_quiet().await
}
