//! What axe-core finds wrong with a page.

use std::fmt;
use std::fs;

use anyhow::{Context, Result, bail};
use fantoccini::Client;
use serde::Deserialize;

use super::place::target;

/// Also the stricter contrast of 7:1 and the size of targets, which are off unless asked for.
const CHECK: &str = "
    const done = arguments[0];
    const rules = { 'color-contrast-enhanced': { enabled: true }, 'target-size': { enabled: true } };
    axe.run(document, { resultTypes: ['violations'], rules }).then(
        ({ violations }) => done(violations.map(({ id, impact, help, nodes }) => ({
            id, impact, help, targets: nodes.map((node) => node.target.join(' ')),
        }))),
        (error) => done(String(error)),
    );";

/// One broken rule.
#[derive(Debug, Clone, Deserialize)]
pub struct Violation {
    /// The rule's short name.
    pub id: String,
    /// `minor`, `moderate`, `serious` or `critical`.
    pub impact: Option<String>,
    /// The rule in a sentence.
    pub help: String,
    /// A selector for each element that breaks it.
    pub targets: Vec<String>,
}

impl Violation {
    /// Whether somebody is kept from using the page.
    #[must_use]
    pub fn is_serious(&self) -> bool {
        matches!(self.impact.as_deref(), Some("serious" | "critical"))
    }
}

impl fmt::Display for Violation {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let impact = self.impact.as_deref().unwrap_or("unrated");
        write!(
            f,
            "{} ({impact}): {}: {}",
            self.id,
            self.help,
            self.targets.join(", ")
        )
    }
}

/// Checks the page as it is now.
pub(super) async fn violations(client: &Client) -> Result<Vec<Violation>> {
    let path = target().join("npm/node_modules/axe-core/axe.min.js");
    let checker =
        fs::read_to_string(&path).with_context(|| format!("could not read {}", path.display()))?;
    client.execute(&checker, Vec::new()).await?;
    let found = client.execute_async(CHECK, Vec::new()).await?;
    if let Some(error) = found.as_str() {
        bail!("axe-core failed: {error}");
    }
    serde_json::from_value(found).context("axe-core answered something else")
}
