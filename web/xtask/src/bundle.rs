//! The compiled module and its bindings.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::command::{cargo, perform};
use crate::fence;
use crate::layout::Layout;
use crate::split;
use crate::tools;

/// Tells Node and TypeScript what the files beside it are; the page does not fetch it.
const PACKAGE: &str = r#"{
  "name": "notchwright",
  "type": "module",
  "main": "notchwright.js",
  "types": "notchwright.d.ts"
}
"#;

/// A panic names its source file. Where this machine keeps its crates is nobody's business, and the
/// module is the same wherever it is built.
fn short_paths() -> String {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| Some(std::env::home_dir()?.join(".cargo")));
    let crates = home.unwrap_or_default().join("registry/src");
    let flag = format!("--remap-path-prefix={}/=", crates.display());
    format!("target.wasm32-unknown-unknown.rustflags=[{flag:?}]")
}

/// Compiles the page for the browser and writes module, glue and types into `folder`.
pub(crate) fn write(layout: &Layout, folder: &Path) -> Result<()> {
    tools::ensure_wasm_target()?;
    perform(cargo().current_dir(&layout.root).args([
        "build",
        "--package=notchwright-web",
        "--target=wasm32-unknown-unknown",
        "--profile=wasm",
        "--config",
        &short_paths(),
    ]))?;
    let compiled = layout
        .target
        .join("wasm32-unknown-unknown/wasm/notchwright_web.wasm");
    let mut bundler = Bindgen::new();
    bundler
        .input_path(compiled)
        .web(true)?
        .typescript(true)
        .omit_default_module_path(false)
        .out_name("notchwright")
        // The names say how the module is divided; what is written has none.
        .remove_name_section(false)
        .remove_producers_section(true);
    bundler.generate(folder)?;
    let glue = folder.join("notchwright.js");
    fs::write(&glue, fence::around(&fs::read_to_string(&glue)?)?)?;
    write_parts(folder)?;
    fs::write(folder.join("package.json"), PACKAGE).context("could not write package.json")
}

/// The whole module for scripts, and beside it the same divided for the page.
fn write_parts(folder: &Path) -> Result<()> {
    let path = folder.join("notchwright_bg.wasm");
    let whole = fs::read(&path).context("could not read the bundled module")?;
    for part in split::divide(&whole)? {
        fs::write(folder.join(format!("{}.wasm", part.name)), part.bytes)?;
    }
    fs::write(path, split::without_names(&whole)?).context("could not write the module")
}
