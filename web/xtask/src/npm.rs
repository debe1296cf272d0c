//! Packages from npm, for checks only.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::command::perform;
use crate::layout::Layout;

/// Installs what the tests use, and `tests/npm` pins, outside the source tree.
pub(crate) fn install(layout: &Layout) -> Result<()> {
    install_pinned(&layout.root.join("tests/npm"), &layout.npm())
}

/// Installs what measures the page, which few need: it is a hundred times as large. Returns its program.
pub(crate) fn install_lighthouse(layout: &Layout) -> Result<PathBuf> {
    let folder = layout.target.join("npm-lighthouse");
    install_pinned(&layout.root.join("tests/npm/lighthouse"), &folder)?;
    Ok(folder.join("node_modules/lighthouse/cli/index.js"))
}

fn install_pinned(pins: &Path, folder: &Path) -> Result<()> {
    fs::create_dir_all(folder)?;
    let mut fresh = folder.join("node_modules").is_dir();
    for name in ["package.json", "package-lock.json"] {
        let pinned = pins.join(name);
        let wanted = fs::read(&pinned).with_context(|| format!("no {}", pinned.display()))?;
        fresh &= fs::read(folder.join(name)).is_ok_and(|there| there == wanted);
        fs::write(folder.join(name), wanted)?;
    }
    if fresh {
        return Ok(());
    }
    perform(
        Command::new("npm")
            .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"])
            .current_dir(folder),
    )
}
