//! The page, and what a person does with it.

use std::fs;
use std::time::Duration;

use anyhow::{Context, Result, bail};
use fantoccini::elements::Element;
use fantoccini::{Client, Locator};
use serde_json::{Value, json};
use tokio::sync::{Mutex, MutexGuard};
use tokio::time::{Instant, sleep};
use url::Url;

use super::devtools;
use super::driver::Driver;
use super::engine::Engine;
use super::journal::{Journal, LISTEN};
use super::place::{Downloads, target};
use super::start::start;
use super::view::View;

/// How long the page may take over anything, even on a busy machine.
pub(super) const PATIENCE: Duration = Duration::from_secs(60);
pub(super) const PAUSE: Duration = Duration::from_millis(25);

/// Enough to see where one is.
const SHOWN: &str = "[location.href.slice(0, 100), document.body.innerText.slice(0, 600)]";

const IS_ANOTHER: &str = "!window.isOld && document.readyState === 'complete'";

/// A page in a browser of its own.
#[derive(Debug)]
pub struct Page {
    client: Client,
    journal: Mutex<Journal>,
    pub(super) origin: String,
    view: View,
    engine: Engine,
    // Last, so that the browser is closed after everything that talks to it.
    driver: Driver,
}

impl Page {
    /// Opens an address in a new browser and waits until it has loaded.
    ///
    /// # Errors
    ///
    /// When the browser does not start, or the address does not answer.
    pub async fn open(url: &str, view: &View) -> Result<Self> {
        Self::open_in(Engine::Chromium, url, view).await
    }

    /// The same in any engine. Only Chromium takes on the whole view; others have a window of its size, or as near
    /// to it as they go.
    ///
    /// # Errors
    ///
    /// When the browser does not start, or the address does not answer.
    pub async fn open_in(engine: Engine, url: &str, view: &View) -> Result<Self> {
        let (client, driver) = start(engine, view).await?;
        let page = Self {
            client,
            journal: Mutex::default(),
            origin: Url::parse(url)?.join("/")?.into(),
            view: view.clone(),
            engine,
            driver,
        };
        page.make_view().await?;
        page.go_to(url).await?;
        Ok(page)
    }

    async fn make_view(&self) -> Result<()> {
        if self.engine != Engine::Chromium {
            let (width, height) = self.view.size();
            self.client.set_window_rect(0, 0, width, height).await?;
            return Ok(());
        }
        for (command, parameters) in self.view.commands() {
            self.devtools(command, parameters).await?;
        }
        Ok(())
    }

    /// `WebDriver` itself, for what is not offered here.
    #[must_use]
    pub fn client(&self) -> &Client {
        &self.client
    }

    /// Goes to an address, as typed or taken from a bookmark.
    ///
    /// # Errors
    ///
    /// When the address does not answer.
    pub async fn go_to(&self, url: &str) -> Result<()> {
        self.leave().await?;
        self.client
            .goto(url)
            .await
            .with_context(|| format!("could not go to {url}"))?;
        self.listen().await
    }

    /// Loads the page again.
    ///
    /// # Errors
    ///
    /// When the address does not answer.
    pub async fn reload(&self) -> Result<()> {
        if self.engine == Engine::Chromium {
            return self.client.refresh().await.context("could not reload");
        }
        // Firefox's driver fails without a network; the page itself does not.
        self.leave().await?;
        // It is answered before the page goes.
        self.evaluate("void (window.isOld = true, setTimeout(() => location.reload()))")
            .await?;
        self.wait_for_another().await?;
        self.listen().await
    }

    async fn wait_for_another(&self) -> Result<()> {
        let end = Instant::now() + PATIENCE;
        while Instant::now() < end {
            // Between two pages there is nobody to answer.
            let is_here = self.evaluate(IS_ANOTHER).await;
            if is_here.is_ok_and(|it| it == true) {
                return Ok(());
            }
            sleep(PAUSE).await;
        }
        bail!("waited in vain for the page to load again")
    }

    /// Takes along what the page would take with it, where the driver does not.
    async fn leave(&self) -> Result<()> {
        if self.engine != Engine::Chromium {
            drop(self.read_journal().await?);
        }
        Ok(())
    }

    /// Listens to what the page says, where the driver does not.
    async fn listen(&self) -> Result<()> {
        if self.engine != Engine::Chromium {
            self.client.execute(LISTEN, Vec::new()).await?;
        }
        Ok(())
    }

    /// What the page has said and asked for until now.
    pub(super) async fn read_journal(&self) -> Result<MutexGuard<'_, Journal>> {
        let mut journal = self.journal.lock().await;
        match self.engine {
            Engine::Chromium => journal.read(&self.client).await?,
            Engine::Firefox | Engine::WebKit => {
                journal.read_page(&self.client, &self.driver).await?;
            }
        }
        Ok(journal)
    }

    /// Opens an address in a new tab of the same browser, and closes the tab that was open.
    ///
    /// # Errors
    ///
    /// When the address does not answer.
    pub async fn go_on_in_a_new_tab(&self, url: &str) -> Result<()> {
        let tab = self.client.new_window(true).await?.handle;
        self.client.close_window().await?;
        self.client.switch_to_window(tab).await?;
        self.make_view().await?;
        self.go_to(url).await
    }

    /// The first element that matches a CSS selector, as soon as there is one.
    ///
    /// # Errors
    ///
    /// When none has appeared after a while.
    pub async fn find(&self, selector: &str) -> Result<Element> {
        self.client
            .wait()
            .at_most(PATIENCE)
            .every(PAUSE)
            .for_element(Locator::Css(selector))
            .await
            .with_context(|| format!("nothing matches {selector}"))
    }

    /// The text that the first matching element shows.
    ///
    /// # Errors
    ///
    /// When there is none.
    pub async fn text(&self, selector: &str) -> Result<String> {
        Ok(self.find(selector).await?.text().await?)
    }

    /// What the first matching field holds.
    ///
    /// # Errors
    ///
    /// When there is none.
    pub async fn value(&self, selector: &str) -> Result<String> {
        let value = self.find(selector).await?.prop("value").await?;
        value.with_context(|| format!("{selector} holds no value"))
    }

    /// An attribute of every matching element, in the order of the page.
    ///
    /// # Errors
    ///
    /// When the browser does not answer.
    pub async fn attributes(&self, selector: &str, name: &str) -> Result<Vec<String>> {
        let script = "return [...document.querySelectorAll(arguments[0])].map((e) => e.getAttribute(arguments[1]) ?? '')";
        let found = self
            .client
            .execute(script, vec![selector.into(), name.into()])
            .await?;
        Ok(serde_json::from_value(found)?)
    }

    /// The value of a JavaScript expression.
    ///
    /// # Errors
    ///
    /// When it throws.
    pub async fn evaluate(&self, expression: &str) -> Result<Value> {
        let script = format!("return ({expression})");
        self.client
            .execute(&script, Vec::new())
            .await
            .with_context(|| format!("could not evaluate {expression}"))
    }

    /// Waits until a JavaScript expression is true; a promise counts by what it resolves to.
    ///
    /// # Errors
    ///
    /// When it is still not true after a while.
    pub async fn wait_until(&self, expression: &str) -> Result<()> {
        let truth = format!("Promise.resolve({expression}).then(Boolean)");
        self.wait_for(&truth, &Value::Bool(true)).await
    }

    /// Waits until a JavaScript expression has a value. While it throws, or the page is being loaded, it has none.
    ///
    /// # Errors
    ///
    /// With what it was last, when it still has another value after a while.
    pub async fn wait_for(&self, expression: &str, wanted: &Value) -> Result<()> {
        let end = Instant::now() + PATIENCE;
        let mut last = self.evaluate(expression).await;
        while Instant::now() < end {
            if last.as_ref().is_ok_and(|it| it == wanted) {
                return Ok(());
            }
            sleep(PAUSE).await;
            last = self.evaluate(expression).await;
        }
        let last = last.map_or_else(|error| format!("{error:#}"), |it| it.to_string());
        let shown = self.evaluate(SHOWN).await;
        let shown = shown.map_or_else(|error| format!("{error:#}"), |it| it.to_string());
        let errors = self.read_journal().await?.errors.join("\n");
        bail!(
            "waited in vain for {expression}\nto be {wanted}\nit is  {last}\nthe page shows {shown}\nerrors on the console:\n{errors}"
        )
    }

    /// Waits until the copy for working offline is complete and answers for the page.
    ///
    /// # Errors
    ///
    /// When it is not complete after a while.
    pub async fn wait_until_kept(&self) -> Result<()> {
        self.wait_until("navigator.serviceWorker.controller?.state === 'activated'")
            .await
    }

    /// Saves what is on the screen as `target/screenshots/NAME.png`.
    ///
    /// # Errors
    ///
    /// When it cannot be taken or written.
    pub async fn screenshot(&self, name: &str) -> Result<()> {
        let picture = self.client.screenshot().await?;
        let folder = target().join("screenshots");
        fs::create_dir_all(&folder)?;
        fs::write(folder.join(format!("{name}.png")), picture)
            .with_context(|| format!("could not write {name}.png"))
    }

    /// Saves the whole page, however long, as `target/screenshots/NAME.png`.
    ///
    /// # Errors
    ///
    /// When it cannot be taken or written.
    pub async fn screenshot_whole(&self, name: &str) -> Result<()> {
        let height = self
            .evaluate("document.documentElement.scrollHeight")
            .await?;
        self.make_height(&height).await?;
        self.screenshot(name).await?;
        self.make_height(&self.view.height.into()).await
    }

    async fn make_height(&self, height: &Value) -> Result<()> {
        let metrics = self.view.metrics(height);
        self.devtools("Emulation.setDeviceMetricsOverride", metrics)
            .await?;
        Ok(())
    }

    /// Sends a command of Chromium's devtools protocol.
    ///
    /// # Errors
    ///
    /// When the browser refuses it.
    pub async fn devtools(&self, command: &str, parameters: Value) -> Result<Value> {
        devtools::send(&self.client, command, parameters).await
    }

    /// Lets the page save files, and waits until a text of this name is saved by `ask`.
    ///
    /// # Errors
    ///
    /// When `ask` fails, or no such file has been saved after a while.
    pub async fn saved(
        &self,
        downloads: &Downloads,
        name: &str,
        ask: impl Future<Output = Result<()>>,
    ) -> Result<String> {
        let allowed = json!({ "behavior": "allow", "downloadPath": downloads.folder() });
        self.devtools("Browser.setDownloadBehavior", allowed)
            .await?;
        ask.await?;
        let end = Instant::now() + PATIENCE;
        while Instant::now() < end {
            if let Some(text) = downloads.text(name) {
                return Ok(text);
            }
            sleep(PAUSE).await;
        }
        bail!("waited in vain for {name} to be saved")
    }

    /// Slows the page's processor down; 1 is its own speed.
    ///
    /// # Errors
    ///
    /// When the browser refuses it.
    pub async fn slow_down(&self, times: f64) -> Result<()> {
        self.devtools("Emulation.setCPUThrottlingRate", json!({ "rate": times }))
            .await?;
        Ok(())
    }
}
