//! The engines that the page must work in, and how each is driven.

use std::path::PathBuf;
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

/// Any of these will do.
const FIREFOXES: [&str; 2] = ["firefox-esr", "firefox"];

impl Engine {
    /// All of them.
    pub const ALL: [Self; 3] = [Self::Chromium, Self::Firefox, Self::WebKit];

    /// What this machine lacks for it.
    #[must_use]
    pub fn missing(self) -> Vec<&'static str> {
        // WebKit's driver knows where its browser is.
        let needed: &[&[&str]] = match self {
            Self::Chromium => &[&["chromium"], &["chromedriver"]],
            Self::Firefox => &[&FIREFOXES, &["geckodriver"]],
            Self::WebKit => &[&["WebKitWebDriver"], &["Xvfb"]],
        };
        let is_missing = |any: &&&[&str]| any.iter().all(|program| found(program).is_none());
        let missing = needed.iter().filter(is_missing);
        missing.filter_map(|any| any.first().copied()).collect()
    }

    /// Whether it hangs where there is no screen.
    pub(super) fn needs_screen(self) -> bool {
        self == Self::WebKit
    }

    /// Whether its driver finds itself a port, and says which: one chosen for it may be taken before it comes.
    pub(super) fn picks_port(self) -> bool {
        self != Self::WebKit
    }

    /// The port, if this is the line in which its driver says it.
    pub(super) fn port(self, line: &str) -> Option<u16> {
        let (_, port) = match self {
            Self::Chromium => line.split_once("started successfully on port ")?,
            Self::Firefox => line.split_once("Listening on 127.0.0.1:")?,
            Self::WebKit => return None,
        };
        port.trim_end_matches('.').parse().ok()
    }

    /// What starts its driver on this port, or on any for 0.
    pub(super) fn driver(self, port: u16) -> Command {
        let mut command = match self {
            Self::Chromium => program("chromedriver"),
            Self::Firefox => {
                let mut command = program("geckodriver");
                // A port for another protocol, which would be the same for all.
                command.arg("--websocket-port=0");
                command
            }
            Self::WebKit => program("WebKitWebDriver"),
        };
        command.arg(format!("--port={port}"));
        command
    }

    /// What a new session asks the driver for; Chromium's depend on the view.
    pub(super) fn capabilities(self) -> Map<String, Value> {
        let mut capabilities = Map::new();
        if self == Self::Firefox {
            let options = json!({
                "binary": FIREFOXES.iter().find_map(|name| found(name)),
                "args": ["-headless"],
                "prefs": {
                    // As it comes, which the driver would relax: a file may not read the one beside it.
                    "security.fileuri.strict_origin_policy": true,
                    // What a page throws goes to the driver's output.
                    "browser.dom.window.dump.enabled": true,
                },
            });
            capabilities.insert("moz:firefoxOptions".to_owned(), options);
        }
        capabilities
    }
}

/// A command that need not be found yet: starting it says what is wrong.
pub(super) fn program(name: &str) -> Command {
    Command::new(found(name).unwrap_or_else(|| name.into()))
}

/// Where a program is: where the test command installs what it needs, or where the shell finds it.
fn found(name: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    let folders = std::env::split_paths(&path);
    let mut folders = [target().join("tools/bin")].into_iter().chain(folders);
    folders.find_map(|folder| Some(folder.join(name)).filter(|file| file.is_file()))
}
