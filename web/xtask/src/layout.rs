//! Where things are.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, Result};

use crate::command::{cargo, output};

/// The folders that the commands work in.
#[derive(Debug)]
pub(crate) struct Layout {
    /// The root of the workspace.
    pub(crate) root: PathBuf,
    /// Cargo's own folder for what it builds, wherever it was told to put it.
    pub(crate) target: PathBuf,
}

impl Layout {
    /// Asks Cargo.
    pub(crate) fn find() -> Result<Self> {
        let manifest = Path::new(env!("CARGO_MANIFEST_DIR")).join("Cargo.toml");
        let mut question: Command = cargo();
        question
            .args([
                "metadata",
                "--no-deps",
                "--format-version=1",
                "--manifest-path",
            ])
            .arg(manifest);
        let answer: serde_json::Value = serde_json::from_str(&output(&mut question)?)?;
        let folder = |name: &str| {
            answer
                .get(name)
                .and_then(|path| path.as_str())
                .map(PathBuf::from)
                .with_context(|| format!("cargo metadata did not name the {name}"))
        };
        Ok(Self {
            root: folder("workspace_root")?,
            target: folder("target_directory")?,
        })
    }

    /// What is shipped.
    pub(crate) fn dist(&self) -> PathBuf {
        self.root.join("dist")
    }

    /// The packages from npm that the tests use.
    pub(crate) fn npm(&self) -> PathBuf {
        self.target.join("npm")
    }
}
