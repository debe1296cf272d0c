//! What a person's hands do with a page: tap, type, press keys.

use anyhow::{Context, Error, Result, ensure};
use fantoccini::actions::{InputSource, KeyAction, KeyActions};
use fantoccini::elements::{Element, ElementRef};
use fantoccini::error::{CmdError, ErrorStatus};
use fantoccini::key::Key;
use serde_json::{Value, json};
use tokio::time::{Instant, sleep};

use super::page::{PATIENCE, PAUSE, Page};

/// `WebDriver`'s key codes: Home, hold Shift, End. Every engine knows these, and lets go at the end.
const SELECT_ALL: &str = "\u{e011}\u{e008}\u{e010}";
const BACKSPACE: &str = "\u{e003}";

/// Where a bar is fixed to an edge of the screen, a person scrolls until what is wanted is clear of it.
const INTO_SIGHT: &str = "arguments[0].scrollIntoView({ block: 'center', inline: 'nearest' })";

/// The first button, or whatever else folds out or is chosen, that can be seen and begins with a text.
const BY_TEXT: &str = "
    const [tags, text] = arguments;
    const words = (element) => element.textContent.replace(/\\s+/g, ' ').trim();
    return [...document.querySelectorAll(tags)]
        .find((element) => element.checkVisibility() && words(element).startsWith(text));";

impl Page {
    /// Clicks, or on a phone taps, the first element that matches.
    ///
    /// # Errors
    ///
    /// When there is none, or it stays covered by another.
    pub async fn click(&self, selector: &str) -> Result<()> {
        insist(async || self.tap(&self.find(selector).await?).await)
            .await
            .with_context(|| format!("could not click {selector}"))
    }

    /// Clicks or taps the first visible button or fold whose words begin with `text`.
    ///
    /// # Errors
    ///
    /// When none has appeared after a while, or it stays covered by another.
    pub async fn press(&self, text: &str) -> Result<()> {
        self.tap_by_text("button, summary", text).await
    }

    /// Chooses, among the radio buttons of one name, the one whose label begins with `text`.
    ///
    /// # Errors
    ///
    /// When there is none, it stays covered by another, or it is not chosen however often it is tapped.
    pub async fn choose(&self, name: &str, text: &str) -> Result<()> {
        let labels = format!("label:has(input[type=radio][name='{name}'])");
        let end = Instant::now() + PATIENCE;
        loop {
            self.tap_by_text(&labels, text).await?;
            // WebKit's driver may miss what moves meanwhile, and says nothing of it.
            if self.is_chosen(&labels, text).await? {
                return Ok(());
            }
            ensure!(Instant::now() < end, "\"{text}\" cannot be chosen");
            sleep(PAUSE).await;
        }
    }

    /// Whether a choice has been made, and what was chosen from may have gone with it.
    async fn is_chosen(&self, labels: &str, text: &str) -> Result<bool> {
        let found = format!(
            "(function () {{ {BY_TEXT} }})(...{})",
            json!([labels, text])
        );
        let chosen = format!("{found}?.querySelector('input').checked ?? true");
        Ok(self.evaluate(&chosen).await? == true)
    }

    /// Selects all that a field holds and types over it, key by key, or clears it.
    ///
    /// # Errors
    ///
    /// When there is no such field.
    pub async fn replace_text(&self, selector: &str, text: &str) -> Result<()> {
        let typed = if text.is_empty() { BACKSPACE } else { text };
        insist(async || {
            let field = self.find(selector).await?;
            // In one go, some engines would hold Shift for all of it.
            field.send_keys(SELECT_ALL).await?;
            Ok(field.send_keys(typed).await?)
        })
        .await
        .with_context(|| format!("could not type into {selector}"))
    }

    /// Presses one key, wherever the focus is.
    ///
    /// # Errors
    ///
    /// When the browser refuses it.
    pub async fn key(&self, key: Key) -> Result<()> {
        let value = char::from(key);
        let stroke = KeyActions::new("keyboard".to_owned())
            .then(KeyAction::Down { value })
            .then(KeyAction::Up { value });
        self.client().perform_actions(stroke).await?;
        Ok(())
    }

    async fn tap_by_text(&self, tags: &str, text: &str) -> Result<()> {
        let arguments = json!([tags, text]).to_string();
        self.wait_until(&format!("(function () {{ {BY_TEXT} }})(...{arguments})"))
            .await
            .with_context(|| format!("nothing to press begins with \"{text}\""))?;
        insist(async || self.tap_found(tags, text).await)
            .await
            .with_context(|| format!("could not press \"{text}\""))
    }

    async fn tap_found(&self, tags: &str, text: &str) -> Result<()> {
        let arguments = vec![tags.into(), text.into()];
        let found = self.client().execute(BY_TEXT, arguments).await?;
        let element = self.element(&found)?;
        self.tap(&element).await
    }

    /// The element that a script returned.
    fn element(&self, found: &Value) -> Result<Element> {
        let mut ids = found.as_object().into_iter().flat_map(|it| it.values());
        let id = ids.next().and_then(Value::as_str);
        let id = id.context("it has gone again")?.to_owned();
        Ok(Element::from_element_id(
            self.client().clone(),
            ElementRef::from(id),
        ))
    }

    async fn tap(&self, element: &Element) -> Result<()> {
        let arguments = vec![serde_json::to_value(element)?];
        self.client().execute(INTO_SIGHT, arguments).await?;
        element.click().await?;
        Ok(())
    }
}

/// Tries again while an element cannot be reached: it may just be shown anew, or move.
async fn insist(reach: impl AsyncFn() -> Result<()>) -> Result<()> {
    let end = Instant::now() + PATIENCE;
    loop {
        match reach().await {
            Err(error) if is_out_of_reach(&error) && Instant::now() < end => sleep(PAUSE).await,
            outcome => return outcome,
        }
    }
}

/// Whether nothing has been done yet.
fn is_out_of_reach(error: &Error) -> bool {
    match error.downcast_ref() {
        Some(CmdError::Standard(refusal)) => matches!(
            refusal.error,
            ErrorStatus::StaleElementReference
                | ErrorStatus::NoSuchElement
                | ErrorStatus::ElementClickIntercepted
                | ErrorStatus::ElementNotInteractable
        ),
        Some(_) => false,
        None => true,
    }
}
