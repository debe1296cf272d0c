//! The compiled module and its bindings.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::command::{cargo, perform};
use crate::layout::Layout;
use crate::tools;

/// Tells Node and TypeScript what the files beside it are; the page does not fetch it.
const PACKAGE: &str = r#"{
  "name": "notchwright",
  "type": "module",
  "main": "notchwright.js",
  "types": "notchwright.d.ts"
}
"#;

/// Compiles the page for the browser and writes module, glue and types into `folder`.
pub(crate) fn write(layout: &Layout, folder: &Path) -> Result<()> {
    tools::ensure_wasm_target()?;
    perform(cargo().current_dir(&layout.root).args([
        "build",
        "--package=notchwright-web",
        "--target=wasm32-unknown-unknown",
        "--profile=wasm",
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
        .remove_name_section(true)
        .remove_producers_section(true);
    bundler.generate(folder)?;
    fs::write(folder.join("package.json"), PACKAGE).context("could not write package.json")
}
