//! What a page has said on its console and asked of the network.

use anyhow::Result;
use fantoccini::Client;
use serde_json::Value;

use super::devtools::take_log;
use super::driver::Driver;

/// Where the driver keeps no log the page itself is listened to, from when it has loaded.
pub(super) const LISTEN: &str = "
    if (window.heard) return;
    const heard = window.heard = [];
    const hear = (name, say) => window.addEventListener(name, (event) => heard.push(String(say(event))), true);
    hear('error', ({ message, target }) => message ?? `${target.src ?? target.href} did not load`);
    hear('unhandledrejection', ({ reason }) => reason);
    hear('securitypolicyviolation', ({ blockedURI }) => `Content Security Policy: ${blockedURI}`);
    const { error } = console;
    console.error = (...words) => { heard.push(words.join(' ')); error(...words); };";

const TAKE: &str = "
    const fetched = performance.getEntriesByType('resource').map(({ name }) => name);
    return [(window.heard ?? []).splice(0), [location.href, ...fetched]];";

/// Everything noted so far; the browser forgets an entry once it has been read.
#[derive(Debug, Default)]
pub(super) struct Journal {
    /// Errors on the console: exceptions, refused content, files that were not found.
    pub(super) errors: Vec<String>,
    /// The address of each request.
    pub(super) requests: Vec<String>,
}

impl Journal {
    /// Adds what is new in the log that Chromium's driver keeps.
    pub(super) async fn read(&mut self, client: &Client) -> Result<()> {
        let console = take_log(client, "browser").await?;
        self.errors.extend(console.iter().filter_map(error_of));
        let network = take_log(client, "performance").await?;
        self.requests.extend(network.iter().filter_map(request_of));
        Ok(())
    }

    /// Adds what is new on the page that is shown, and what an engine's driver has said.
    pub(super) async fn read_page(&mut self, client: &Client, driver: &Driver) -> Result<()> {
        let taken = client.execute(TAKE, Vec::new()).await?;
        let (errors, requests): (Vec<String>, Vec<String>) = serde_json::from_value(taken)?;
        self.errors.extend(errors);
        self.requests.extend(requests);
        let said = driver.said();
        self.errors.extend(said.filter(|line| is_of_page(line)));
        Ok(())
    }

    /// The requests that went anywhere but to `origin`.
    pub(super) fn elsewhere<'a>(&'a self, origin: &'a str) -> impl Iterator<Item = &'a String> {
        let local = ["data:", "blob:", "about:", "chrome:"];
        self.requests.iter().filter(move |url| {
            !url.starts_with(origin) && !local.iter().any(|scheme| url.starts_with(scheme))
        })
    }
}

/// Whether a line is an exception of the page's. What the console is told it does not tell from what the
/// browser tells its own.
fn is_of_page(line: &str) -> bool {
    let schemes = ["http:", "https:", "file:", "blob:"];
    let thrown = line.strip_prefix("JavaScript error: ");
    thrown.is_some_and(|at| schemes.iter().any(|scheme| at.starts_with(scheme)))
}

fn error_of(entry: &Value) -> Option<String> {
    let is_error = entry.get("level")?.as_str()? == "SEVERE";
    is_error
        .then(|| entry.get("message").map(Value::to_string))
        .flatten()
}

/// The log wraps each devtools event as a text in itself.
fn request_of(entry: &Value) -> Option<String> {
    let event: Value = serde_json::from_str(entry.get("message")?.as_str()?).ok()?;
    let message = event.get("message")?;
    if message.get("method")?.as_str()? != "Network.requestWillBeSent" {
        return None;
    }
    let url = message.pointer("/params/request/url")?.as_str()?;
    Some(url.to_owned())
}

#[cfg(test)]
mod tests {
    use serde_json::json;

    use super::*;

    #[test]
    fn only_requests_that_leave_the_origin_are_elsewhere() {
        let sent = |url: &str| {
            let event = json!({ "message": {
                "method": "Network.requestWillBeSent",
                "params": { "request": { "url": url } },
            }});
            json!({ "message": event.to_string() })
        };
        let urls = [
            "http://127.0.0.1:1/a.css",
            "data:,x",
            "http://example.org/x",
        ];
        let journal = Journal {
            requests: urls
                .iter()
                .filter_map(|url| request_of(&sent(url)))
                .collect(),
            ..Journal::default()
        };
        let elsewhere: Vec<_> = journal.elsewhere("http://127.0.0.1:1/").collect();
        assert_eq!(elsewhere, ["http://example.org/x"]);
    }

    #[test]
    fn only_the_page_s_own_scripts_are_listened_to() {
        for (line, expected) in [
            (
                "JavaScript error: http://127.0.0.1:1/, line 2: Error: thrown",
                true,
            ),
            (
                "JavaScript error: resource://gre/a.mjs, line 50: TypeError: x",
                false,
            ),
            ("console.error: \"said by anybody\"", false),
        ] {
            assert_eq!(is_of_page(line), expected, "{line}");
        }
    }

    #[test]
    fn warnings_are_no_errors() {
        let entry = |level: &str| json!({ "level": level, "message": "it said so" });
        assert_eq!(error_of(&entry("WARNING")), None);
        assert_eq!(
            error_of(&entry("SEVERE")).as_deref(),
            Some("\"it said so\"")
        );
    }
}
