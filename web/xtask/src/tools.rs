//! Programs that the commands need, installed where that is possible.

use std::fs;
use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Result, bail};

use crate::command::{cargo, line, output, perform};
use crate::layout::Layout;

/// A program, and the Debian package that brings it.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Tool {
    program: &'static str,
    package: &'static str,
}

/// What drives a page: a browser and its driver.
pub(crate) const BROWSER: [Tool; 2] = [
    Tool {
        program: "chromium",
        package: "chromium",
    },
    Tool {
        program: "chromedriver",
        package: "chromium-driver",
    },
];

/// The other engines and what drives them, and a screen for the one that hangs without; Firefox's driver comes from
/// Cargo.
pub(crate) const ENGINES: [Tool; 3] = [
    Tool {
        program: "firefox-esr",
        package: "firefox-esr",
    },
    Tool {
        program: "WebKitWebDriver",
        package: "webkit2gtk-driver",
    },
    Tool {
        program: "Xvfb",
        package: "xvfb",
    },
];

/// A program that Cargo builds, in the one version that the commands are tried with.
#[derive(Debug, Clone, Copy)]
pub(crate) struct Crate {
    name: &'static str,
    version: &'static str,
}

/// What drives Firefox; Debian has no package of it.
pub(crate) const GECKODRIVER: Crate = Crate {
    name: "geckodriver",
    version: "0.37.1",
};

/// What checks licences, sources, duplicates and advisories.
pub(crate) const CARGO_DENY: Crate = Crate {
    name: "cargo-deny",
    version: "0.20.2",
};

/// What runs a script and fetches npm's packages.
pub(crate) const NODE: [Tool; 2] = [
    Tool {
        program: "node",
        package: "nodejs",
    },
    Tool {
        program: "npm",
        package: "npm",
    },
];

const WASM_TARGET: &str = "wasm32-unknown-unknown";

/// Makes sure that Rust compiles for the browser.
///
/// # Errors
///
/// With the command to type, where `rustup` is not there to do it.
pub(crate) fn ensure_wasm_target() -> Result<()> {
    let sysroot = output(Command::new("rustc").args(["--print", "sysroot"]))?;
    let library = PathBuf::from(sysroot.trim())
        .join("lib/rustlib")
        .join(WASM_TARGET);
    if library.is_dir() {
        return Ok(());
    }
    let mut install = Command::new("rustup");
    install.args(["target", "add", WASM_TARGET]);
    if find("rustup").is_none() {
        bail!(
            "Rust cannot compile for the browser here: install its target as `{}` would",
            line(&install)
        );
    }
    perform(&mut install)
}

/// Makes sure that the programs are there.
///
/// # Errors
///
/// With the command to type, where they cannot be installed from here.
pub(crate) fn ensure(tools: &[Tool]) -> Result<()> {
    let missing: Vec<Tool> = tools
        .iter()
        .copied()
        .filter(|tool| find(tool.program).is_none())
        .collect();
    if missing.is_empty() {
        return Ok(());
    }
    let mut install = Command::new("apt-get");
    install
        .args(["install", "--yes", "--no-install-recommends"])
        .args(missing.iter().map(|tool| tool.package))
        .env("DEBIAN_FRONTEND", "noninteractive");
    if find("apt-get").is_none() || !is_root() {
        let names: Vec<_> = missing.iter().map(|tool| tool.program).collect();
        bail!(
            "{} not found; on Debian: `sudo {}`",
            names.join(" and "),
            line(&install)
        );
    }
    perform(Command::new("apt-get").args(["update", "--quiet"]))?;
    perform(&mut install)
}

/// Makes sure that a program of Cargo's registry is in `target/tools`, and returns where. It is built once, in
/// minutes.
///
/// # Errors
///
/// When it is not there and cannot be built.
pub(crate) fn ensure_crate(layout: &Layout, wanted: Crate) -> Result<PathBuf> {
    let Crate { name, version } = wanted;
    let folder = layout.target.join("tools");
    let program = folder.join("bin").join(name);
    if !program.is_file() || !is_installed(&folder, wanted) {
        println!("building {name} {version}");
        let mut install = cargo();
        install
            .args(["install", "--locked", "--quiet", "--no-default-features"])
            .arg(format!("{name}@{version}"))
            .arg("--root")
            .arg(&folder)
            .current_dir(&layout.root);
        perform(&mut install)?;
    }
    Ok(program)
}

/// Whether Cargo's own note beside what it has installed names this version.
fn is_installed(folder: &Path, wanted: Crate) -> bool {
    let note = format!("\"{} {} ", wanted.name, wanted.version);
    fs::read_to_string(folder.join(".crates.toml")).is_ok_and(|notes| notes.contains(&note))
}

/// Where a program is, if the shell would find it.
pub(crate) fn find(program: &str) -> Option<PathBuf> {
    let path = std::env::var_os("PATH")?;
    std::env::split_paths(&path)
        .map(|folder| folder.join(program))
        .find(|file| file.is_file())
}

fn is_root() -> bool {
    output(Command::new("id").arg("-u")).is_ok_and(|id| id.trim() == "0")
}
