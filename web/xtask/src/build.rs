//! `cargo xtask build`: everything that is shipped, in `dist/`, for any folder of any static host.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use crate::bundle;
use crate::layout::Layout;
use crate::single;
use crate::styles;
use crate::worker;

/// Shipped files by their path from `dist/`, with forward slashes, in sorted order.
pub(crate) type Files = BTreeMap<String, Vec<u8>>;

/// Builds into a folder of its own first, so that `dist/` is never half done for long.
pub(crate) fn run(layout: &Layout) -> Result<()> {
    let pkg = layout.target.join("pkg");
    empty(&pkg)?;
    bundle::write(layout, &pkg)?;

    let mut files = Files::new();
    read_below(&layout.root.join("www"), "", &mut files)?;
    read_below(&pkg, "pkg/", &mut files)?;
    styles::join(&mut files)?;
    single::add(&mut files)?;
    let version = worker::finish(&mut files)?;

    let dist = layout.dist();
    empty(&dist)?;
    write_below(&dist, &files)?;
    println!("Built version {version} in {}", dist.display());
    Ok(())
}

/// Reads every file below a folder.
pub(crate) fn read_below(folder: &Path, prefix: &str, files: &mut Files) -> Result<()> {
    let entries =
        fs::read_dir(folder).with_context(|| format!("could not read {}", folder.display()))?;
    for entry in entries {
        let entry = entry?;
        let name = format!("{prefix}{}", entry.file_name().to_string_lossy());
        if entry.file_type()?.is_dir() {
            read_below(&entry.path(), &format!("{name}/"), files)?;
        } else {
            files.insert(name, fs::read(entry.path())?);
        }
    }
    Ok(())
}

/// Writes every file to its place below a folder.
pub(crate) fn write_below(folder: &Path, files: &Files) -> Result<()> {
    for (name, bytes) in files {
        let path = folder.join(name);
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent)?;
        }
        fs::write(&path, bytes).with_context(|| format!("could not write {}", path.display()))?;
    }
    Ok(())
}

/// Makes an empty folder, whatever was there.
pub(crate) fn empty(folder: &Path) -> Result<()> {
    if folder.exists() {
        fs::remove_dir_all(folder)
            .with_context(|| format!("could not clear {}", folder.display()))?;
    }
    fs::create_dir_all(folder).with_context(|| format!("could not make {}", folder.display()))
}
