//! The engines that the page must work in, and how each is driven.

use std::path::Path;
use std::process::Command;

use serde_json::{Map, Value, json};

use super::place::target;

/// A browser engine.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Engine {
    /// Chromium, driven by chromedriver.
    Chromium,
    /// Firefox, driven by geckodriver.
    Firefox,
    /// `WebKitGTK`'s small browser, driven by `WebKitWebDriver` on a screen of its own.
    WebKit,
}

const FIREFOX: &str = "/usr/bin/firefox-esr";
const WEBKIT: &str = "/usr/lib/x86_64-linux-gnu/webkit2gtk-4.1/MiniBrowser";
const WEBKIT_DRIVER: &str = "/usr/bin/WebKitWebDriver";

impl Engine {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Chromium, Self::Firefox, Self::WebKit];

    /// What this machine lacks for it.
    #[must_use]
    pub fn missing(self) -> Vec<String> {
        let needed: &[&str] = match self {
            Self::Chromium => &["chromium", "chromedriver"],
            Self::Firefox => &[FIREFOX, "geckodriver"],
            Self::WebKit => &[WEBKIT, WEBKIT_DRIVER, "xvfb-run"],
        };
        let is_there = |program: &&&str| found(program).is_none();
        needed
            .iter()
            .filter(is_there)
            .map(|program| (*program).to_owned())
            .collect()
    }

    /// What starts its driver on this port.
    pub(super) fn driver(self, port: u16) -> Command {
        let port = format!("--port={port}");
        match self {
            Self::Chromium => with("chromedriver", &[&port]),
            Self::Firefox => with("geckodriver", &[&port, "--host=127.0.0.1"]),
            // Without a screen it hangs.
            Self::WebKit => with(
                "xvfb-run",
                &["-a", WEBKIT_DRIVER, &port, "--host=127.0.0.1"],
            ),
        }
    }

    /// What a new session asks the driver for; Chromium's depend on the view.
    pub(super) fn capabilities(self) -> Map<String, Value> {
        let (name, options) = match self {
            Self::Chromium => return Map::new(),
            Self::Firefox => (
                "moz:firefoxOptions",
                json!({
                    "binary": FIREFOX,
                    "args": ["-headless"],
                    // As it comes, which the driver would relax: a file may not read the one beside it.
                    "prefs": { "security.fileuri.strict_origin_policy": true },
                }),
            ),
            Self::WebKit => (
                "webkitgtk:browserOptions",
                json!({ "binary": WEBKIT, "args": ["--automation"] }),
            ),
        };
        Map::from_iter([(name.to_owned(), options)])
    }
}

fn with(program: &str, arguments: &[&str]) -> Command {
    let mut command = Command::new(found(program).unwrap_or_else(|| program.into()));
    command.args(arguments);
    command
}

/// Where a program is: by its path, where the test command installs what it needs, or where the shell finds it.
fn found(program: &str) -> Option<std::path::PathBuf> {
    let named = Path::new(program);
    if named.is_absolute() {
        return named.is_file().then(|| named.to_path_buf());
    }
    let path = std::env::var_os("PATH")?;
    let folders = std::env::split_paths(&path);
    let mut folders = [target().join("tools/bin")].into_iter().chain(folders);
    folders.find_map(|folder| Some(folder.join(program)).filter(|file| file.is_file()))
}
