//! Chromium's own commands, beside those of `WebDriver`.

use fantoccini::Client;
use fantoccini::wd::WebDriverCompatibleCommand;
use serde_json::{Value, json};
use url::{ParseError, Url};

use anyhow::{Context, Result};

/// A command below the session's address, with a body.
#[derive(Debug)]
struct Posted {
    path: &'static str,
    body: Value,
}

impl WebDriverCompatibleCommand for Posted {
    fn endpoint(&self, base: &Url, session: Option<&str>) -> Result<Url, ParseError> {
        base.join(&format!(
            "session/{}/{}",
            session.unwrap_or_default(),
            self.path
        ))
    }

    fn method_and_body(&self, _: &Url) -> (http::Method, Option<String>) {
        (http::Method::POST, Some(self.body.to_string()))
    }
}

/// Sends a command of the devtools protocol and returns its answer.
pub(super) async fn send(client: &Client, command: &str, parameters: Value) -> Result<Value> {
    let posted = Posted {
        path: "goog/cdp/execute",
        body: json!({ "cmd": command, "params": parameters }),
    };
    client
        .issue_cmd(posted)
        .await
        .with_context(|| format!("the browser refused {command}"))
}

/// Takes what has been written to a log (`browser` or `performance`) since it was last asked.
pub(super) async fn take_log(client: &Client, name: &str) -> Result<Vec<Value>> {
    let posted = Posted {
        path: "se/log",
        body: json!({ "type": name }),
    };
    match client.issue_cmd(posted).await? {
        Value::Array(entries) => Ok(entries),
        other => anyhow::bail!("the {name} log is no list: {other}"),
    }
}
