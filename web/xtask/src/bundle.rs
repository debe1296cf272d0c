//! The compiled module and its bindings.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};
use wasm_bindgen_cli_support::Bindgen;

use crate::command::{cargo, perform};
use crate::fence;
use crate::layout::Layout;
use crate::split::{self, Links};
use crate::tools;

/// Tells Node and TypeScript what the files beside it are; the page does not fetch it.
const PACKAGE: &str = r#"{
  "name": "notchwright",
  "type": "module",
  "main": "notchwright.js",
  "types": "notchwright.d.ts"
}
"#;

/// The linker notes what points at what: the module is divided by that.
const POINTERS: &str = "-Clink-arg=--emit-relocs";

/// A panic names its source file. Where this machine keeps its crates is nobody's business, and the
/// module is the same wherever it is built.
fn flags() -> String {
    let home = std::env::var_os("CARGO_HOME").map(PathBuf::from);
    let home = home.or_else(|| Some(std::env::home_dir()?.join(".cargo")));
    let crates = home.unwrap_or_default().join("registry/src");
    let flag = format!("--remap-path-prefix={}/=", crates.display());
    format!("target.wasm32-unknown-unknown.rustflags=[{flag:?}, {POINTERS:?}]")
}

/// The page's module, undivided: it is part of the page as a single file, and is not shipped by itself.
const UNDIVIDED: &str = "page_bg.wasm";

/// Compiles for the browser, and writes into `folder`: the module for scripts with its glue and types, the
/// page's glue, and the page's module, whole and divided.
pub(crate) fn write(layout: &Layout, folder: &Path) -> Result<()> {
    tools::ensure_wasm_target()?;
    let linked = compile(layout, &["--no-default-features"], "page", folder)?;
    for unused in ["page.d.ts", "page_bg.wasm.d.ts"] {
        fs::remove_file(folder.join(unused)).with_context(|| format!("no {unused}"))?;
    }
    write_parts(&Links::read(&linked)?, folder)?;
    compile(layout, &[], "notchwright", folder)?;
    let module = folder.join("notchwright_bg.wasm");
    let named = fs::read(&module).context("could not read the bundled module")?;
    fs::write(module, split::without_names(&named)?)?;
    fs::write(folder.join("package.json"), PACKAGE).context("could not write package.json")
}

fn compile(layout: &Layout, features: &[&str], name: &str, folder: &Path) -> Result<Vec<u8>> {
    let build = [
        "build",
        "--package=notchwright-web",
        "--target=wasm32-unknown-unknown",
        "--profile=wasm",
        "--config",
        &flags(),
    ];
    perform(cargo().current_dir(&layout.root).args(build).args(features))?;
    let compiled = layout
        .target
        .join("wasm32-unknown-unknown/wasm/notchwright_web.wasm");
    let linked = fs::read(&compiled).context("could not read the compiled module")?;
    let mut bundler = Bindgen::new();
    bundler
        .input_path(compiled)
        .web(true)?
        .typescript(true)
        .omit_default_module_path(false)
        .out_name(name)
        // Names say how the module is divided, just as the linker wrote them; what is shipped has none.
        .demangle(false)
        .remove_name_section(false)
        .remove_producers_section(true);
    bundler.generate(folder)?;
    let glue = folder.join(format!("{name}.js"));
    fs::write(&glue, fence::around(&fs::read_to_string(&glue)?)?)?;
    Ok(linked)
}

/// The page's module without names, and beside it the same divided.
fn write_parts(links: &Links, folder: &Path) -> Result<()> {
    let path = folder.join(UNDIVIDED);
    let whole = fs::read(&path).context("could not read the bundled module")?;
    for part in split::divide(&whole, links)? {
        fs::write(folder.join(format!("{}.wasm", part.name)), part.bytes)?;
    }
    fs::write(path, split::without_names(&whole)?).context("could not write the module")
}
