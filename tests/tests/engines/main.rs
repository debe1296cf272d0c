//! The person's path through the built page, in each engine from the same source.
//!
//! An engine that a machine lacks is named, and its tests pass without having run, unless the environment
//! variable `NOTCHWRIGHT_ENGINES` is `all`: then it fails.

mod path;
mod single;

use std::time::Duration;

use anyhow::{Result, bail};
use notchwright_tests::browser::{Engine, Page, View};

/// The engine, if this machine has it.
fn engine(engine: Engine) -> Result<Option<Engine>> {
    let missing = engine.missing();
    if missing.is_empty() {
        return Ok(Some(engine));
    }
    let missing = missing.join(", ");
    if std::env::var("NOTCHWRIGHT_ENGINES").is_ok_and(|wanted| wanted == "all") {
        bail!("{engine:?} cannot be driven here: there is no {missing}");
    }
    eprintln!("NOT RUN: {engine:?} cannot be driven here, there is no {missing}");
    Ok(None)
}

async fn open(engine: Engine, url: &str) -> Result<Page> {
    let page = Page::open_in(engine, url, &View::phone()).await?;
    page.find("#joint-width").await?;
    Ok(page)
}

/// Loads the page again, as its own script would: a driver's own reload fails offline in some engines.
async fn reload(engine: Engine, page: &Page) -> Result<()> {
    if engine == Engine::WebKit {
        // It hands what is stored to another process, which gives a page that is loaded at once an older state.
        tokio::time::sleep(WEBKIT_STORES_WITHIN).await;
    }
    page.evaluate("void (window.isOld = true)").await?;
    page.evaluate("void location.reload()").await?;
    page.wait_until("!window.isOld && document.querySelector('#app main')")
        .await
}

const WEBKIT_STORES_WITHIN: Duration = Duration::from_secs(2);

async fn see(page: &Page, selector: &str, words: &str) -> Result<()> {
    let script = format!(
        "[...document.querySelectorAll({selector:?})].some((it) => it.textContent.replace(/\\s+/g, ' ').includes({words:?}))"
    );
    page.wait_until(&script).await
}

/// Nothing was asked of anybody but this page's own server.
async fn asks_nobody_else(page: &Page) -> Result<()> {
    page.wait_until(
        "performance.getEntriesByType('resource').every((it) => new URL(it.name).origin === location.origin || it.name.startsWith('data:'))",
    )
    .await
}
