//! `cargo xtask bench`: times of the core by itself, of the module in Node, and of the page in a browser.

use std::process::Command;

use anyhow::Result;

use crate::build;
use crate::command::{cargo, perform};
use crate::layout::Layout;
use crate::tools;

/// Measures and prints; nothing is asserted, since machines differ.
pub(crate) fn run(layout: &Layout) -> Result<()> {
    perform(
        cargo()
            .args(["bench", "--package=notchwright-core", "--bench=*"])
            .current_dir(&layout.root),
    )?;
    build::run(layout)?;
    tools::ensure(&tools::NODE)?;
    perform(
        Command::new("node")
            .arg("tests/node/bench.mjs")
            .current_dir(&layout.root),
    )?;
    tools::ensure(&tools::BROWSER)?;
    perform(
        cargo()
            .args(["run", "--quiet", "--package=notchwright-tests"])
            .args(["--features=browser", "--bin=measure"])
            .env("NOTCHWRIGHT_TARGET", &layout.target)
            .current_dir(&layout.root),
    )
}
