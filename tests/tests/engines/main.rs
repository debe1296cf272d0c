//! The person's path through the built page, in each engine from the same source.
//!
//! An engine that a machine lacks is named, and its tests pass without having run, unless the environment
//! variable `NOTCHWRIGHT_ENGINES` is `all`: then it fails.

/// A test for each engine: a machine that lacks one still tells of the others.
macro_rules! in_every_engine {
    ($path:ident) => {
        #[tokio::test]
        async fn in_chromium() -> anyhow::Result<()> {
            $path(notchwright_tests::browser::Engine::Chromium).await
        }

        #[tokio::test]
        async fn in_firefox() -> anyhow::Result<()> {
            $path(notchwright_tests::browser::Engine::Firefox).await
        }

        #[tokio::test]
        async fn in_webkit() -> anyhow::Result<()> {
            $path(notchwright_tests::browser::Engine::WebKit).await
        }
    };
}

use in_every_engine;

mod noticed;
mod path;
mod single;

use std::io::Write;

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
    say(&format!(
        "{engine:?} cannot be driven here, there is no {missing}"
    ))?;
    Ok(None)
}

/// Past the harness, which shows nothing of a test that passes.
fn say(why: &str) -> Result<()> {
    Ok(writeln!(std::io::stderr(), "NOT RUN: {why}")?)
}

async fn open(engine: Engine, url: &str) -> Result<Page> {
    let page = Page::open_in(engine, url, &View::phone()).await?;
    page.find("#joint-width").await?;
    Ok(page)
}

async fn see(page: &Page, selector: &str, words: &str) -> Result<()> {
    let script = format!(
        "[...document.querySelectorAll({selector:?})].some((it) => it.textContent.replace(/\\s+/g, ' ').includes({words:?}))"
    );
    page.wait_until(&script).await
}
