//! Where the built page is, and where what the tests make goes.

use std::fs;
use std::path::{Path, PathBuf};
use std::sync::atomic::{AtomicU32, Ordering};

use anyhow::{Context, Result, ensure};
use notchwright_site::Site;

/// The folder that is shipped.
#[must_use]
pub fn dist() -> PathBuf {
    root().join("dist")
}

/// Serves the built page on any free port.
///
/// # Errors
///
/// When the page has not been built.
pub fn serve_dist() -> Result<Site> {
    ensure!(
        dist().is_dir(),
        "there is no dist/: run `cargo xtask build` first"
    );
    Site::start(&dist(), 0).context("could not serve dist/")
}

/// A copy of `dist/` somewhere else, to be changed, or moved into a folder of a larger site.
///
/// It is deleted when it is dropped.
#[derive(Debug)]
pub struct Copy {
    top: PathBuf,
    page: PathBuf,
}

impl Copy {
    /// Copies the built page to `below` (such as `shop/tools`, or nothing) of a new, empty folder.
    ///
    /// # Errors
    ///
    /// When the page has not been built, or the copy cannot be written.
    pub fn new(name: &str, below: &str) -> Result<Self> {
        let top = new_folder("copies", name);
        let page = top.join(below);
        copy(&dist(), &page).context("could not copy dist/: has it been built?")?;
        Ok(Self { top, page })
    }

    /// The folder to serve.
    #[must_use]
    pub fn top(&self) -> &Path {
        &self.top
    }

    /// The copied page itself.
    #[must_use]
    pub fn page(&self) -> &Path {
        &self.page
    }
}

impl Drop for Copy {
    fn drop(&mut self) {
        // What is left behind is in Cargo's own folder, and does no harm.
        let _ = fs::remove_dir_all(&self.top);
    }
}

/// A folder for a browser's profile, for a second browser to find what the first one stored.
///
/// The browser makes it, and it is deleted when it is dropped.
#[derive(Debug)]
pub struct Profile {
    folder: PathBuf,
}

impl Profile {
    /// An empty profile.
    #[must_use]
    pub fn new(name: &str) -> Self {
        let folder = new_folder("profiles", name);
        Self { folder }
    }

    /// Where it is.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }
}

impl Drop for Profile {
    fn drop(&mut self) {
        // As for a copy: Cargo's own folder takes no harm.
        let _ = fs::remove_dir_all(&self.folder);
    }
}

/// A folder for what a page saves as files.
///
/// The browser makes it, and it is deleted when it is dropped.
#[derive(Debug)]
pub struct Downloads {
    folder: PathBuf,
}

impl Downloads {
    /// An empty folder.
    #[must_use]
    pub fn new(name: &str) -> Self {
        let folder = new_folder("downloads", name);
        Self { folder }
    }

    /// Where it is.
    #[must_use]
    pub fn folder(&self) -> &Path {
        &self.folder
    }

    /// The text of a file in it; nothing until it has been saved. The browser keeps its place with an empty
    /// file, and then puts the whole one there.
    #[must_use]
    pub fn text(&self, name: &str) -> Option<String> {
        let text = fs::read_to_string(self.folder.join(name)).ok();
        text.filter(|text| !text.is_empty())
    }
}

impl Drop for Downloads {
    fn drop(&mut self) {
        // As for a copy: Cargo's own folder takes no harm.
        let _ = fs::remove_dir_all(&self.folder);
    }
}

/// Another one each time: tests of one name may run at once.
fn new_folder(kind: &str, name: &str) -> PathBuf {
    static COUNT: AtomicU32 = AtomicU32::new(0);
    let (process, count) = (std::process::id(), COUNT.fetch_add(1, Ordering::Relaxed));
    target()
        .join(kind)
        .join(format!("{name}-{process}-{count}"))
}

fn copy(from: &Path, to: &Path) -> std::io::Result<()> {
    fs::create_dir_all(to)?;
    for entry in fs::read_dir(from)? {
        let entry = entry?;
        let name = to.join(entry.file_name());
        if entry.file_type()?.is_dir() {
            copy(&entry.path(), &name)?;
        } else {
            fs::copy(entry.path(), name)?;
        }
    }
    Ok(())
}

/// Cargo's folder: the test command says where it is.
pub(super) fn target() -> PathBuf {
    std::env::var_os("NOTCHWRIGHT_TARGET").map_or_else(|| root().join("target"), PathBuf::from)
}

fn root() -> PathBuf {
    let tests = Path::new(env!("CARGO_MANIFEST_DIR"));
    tests.parent().unwrap_or(tests).to_path_buf()
}
