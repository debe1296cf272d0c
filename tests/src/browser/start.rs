//! A browser, started.

use std::io::Write;
use std::time::Duration;

use anyhow::{Context, Error, Result};
use fantoccini::{Client, ClientBuilder};
use hyper_util::client::legacy::connect::HttpConnector;
use serde_json::json;
use tokio::time::timeout;

use super::driver::Driver;
use super::engine::Engine;
use super::page::PATIENCE;
use super::view::View;

const TRIES: usize = 5;
/// Not every driver gives up on a browser that does not come up.
const START: Duration = Duration::from_secs(90);

/// Starts a browser. One that does not come up tells nothing about the page: it is named, and another is started.
pub(super) async fn start(engine: Engine, view: &View) -> Result<(Client, Driver)> {
    let mut outcome = start_once(engine, view).await;
    for _ in 1..TRIES {
        let Err(why) = &outcome else { break };
        // Past the harness, which shows nothing of a test that passes.
        writeln!(std::io::stderr(), "STARTED AGAIN: {why:#}")?;
        outcome = start_once(engine, view).await;
    }
    outcome
}

async fn start_once(engine: Engine, view: &View) -> Result<(Client, Driver)> {
    let mut driver = Driver::start(engine)?;
    let mut capabilities = match engine {
        Engine::Chromium => view.capabilities(),
        Engine::Firefox | Engine::WebKit => engine.capabilities(),
    };
    let timeouts = json!({ "script": PATIENCE.as_millis() });
    capabilities.insert("timeouts".to_owned(), timeouts);
    let url = driver.url();
    let mut builder = ClientBuilder::new(HttpConnector::new());
    let connecting = builder.capabilities(capabilities).connect(&url);
    let connected = async { Ok::<_, Error>(timeout(START, connecting).await??) };
    let client = connected.await.with_context(|| {
        let said: Vec<_> = driver.said().collect();
        format!("{engine:?} did not start; its driver said: {said:#?}")
    })?;
    driver.serve(client.session_id().await?);
    Ok((client, driver))
}
