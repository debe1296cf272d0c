//! Packages from npm, for tests only.

use std::fs;
use std::process::Command;

use anyhow::{Context, Result};

use crate::command::perform;
use crate::layout::Layout;

/// Installs what `tests/npm` pins, outside the source tree.
pub(crate) fn install(layout: &Layout) -> Result<()> {
    let folder = layout.npm();
    fs::create_dir_all(&folder)?;
    let mut fresh = folder.join("node_modules").is_dir();
    for name in ["package.json", "package-lock.json"] {
        let wanted = fs::read(layout.root.join("tests/npm").join(name))
            .with_context(|| format!("no tests/npm/{name}"))?;
        fresh &= fs::read(folder.join(name)).is_ok_and(|there| there == wanted);
        fs::write(folder.join(name), wanted)?;
    }
    if fresh {
        return Ok(());
    }
    perform(
        Command::new("npm")
            .args(["ci", "--ignore-scripts", "--no-audit", "--no-fund"])
            .current_dir(&folder),
    )
}
