//! The page as one file that needs no server: style, scripts and module are in it.
//!
//! It opens from a phone's own storage or a stick, where a page may fetch nothing, not even the file beside
//! it, and where there are no service workers.

#[cfg(test)]
mod tests;

use anyhow::{Context, Result, ensure};
use base64::Engine;
use base64::engine::general_purpose::STANDARD;
use sha2::{Digest, Sha256};
use zopfli::{Format, Options};

use crate::build::Files;
use crate::worker::PAGE;
use crate::{split, styles};

/// The file.
pub(crate) const SINGLE: &str = "notchwright.html";

const GLUE: &str = "pkg/page.js";
const STOPPED: &str = "stopped.js";
const SEARCH: &str = "search.js";
const MODULE: &str = "pkg/page_bg.wasm";
const ICON: &str = "icons/icon.svg";
const START: &str = include_str!("start.js");
const CHUNKS_PLACE: &str = "['__CHUNKS__']";

/// Adds the file to those that are shipped, made of them.
///
/// # Errors
///
/// When something that it is made of is missing, or is not as this expects it.
pub(crate) fn add(files: &mut Files) -> Result<()> {
    let style = text(files, styles::FIRST)? + &text(files, styles::LATER)?;
    let beside = [text(files, STOPPED)?, text(files, SEARCH)?];
    let script = script(&text(files, GLUE)?, &beside)?;
    let module = files.remove(MODULE).context("no module")?;
    let module = packed(&module)?;
    let icon = STANDARD.encode(files.get(ICON).context("no icon")?);
    let page = page(&text(files, PAGE)?, &style, &script, &module, &icon)?;
    files.insert(SINGLE.to_owned(), page.into_bytes());
    Ok(())
}

fn text(files: &Files, name: &str) -> Result<String> {
    let bytes = files.get(name).with_context(|| format!("no {name}"))?;
    Ok(String::from_utf8(bytes.clone())?)
}

/// One script of several: none imports from another any more.
fn script(glue: &str, beside: &[String]) -> Result<String> {
    let names = serde_json::to_string(&split::names())?;
    let start = replaced(START, CHUNKS_PLACE, &names)?;
    let glue: Vec<_> = glue
        .lines()
        .filter(|line| !line.starts_with("export {"))
        .collect();
    let beside: String = beside.iter().map(|it| without_exports(it)).collect();
    let all = [without_exports(&glue.join("\n")), beside, start].concat();
    // The glue would find the module beside itself; here it is given it.
    let all = all.replace("import.meta.url", "document.baseURI");
    for word in ["import ", "import(", "export ", "</script"] {
        ensure!(
            !all.contains(&format!("\n{word}")),
            "the script still has {word:?}"
        );
    }
    Ok(all)
}

fn without_exports(script: &str) -> String {
    let lines = script
        .lines()
        .map(|line| line.strip_prefix("export ").unwrap_or(line));
    lines.map(|line| format!("{line}\n")).collect()
}

/// Compressed without a date, so that the same module is the same text.
fn packed(module: &[u8]) -> Result<String> {
    let mut packed = Vec::new();
    zopfli::compress(Options::default(), Format::Gzip, module, &mut packed)?;
    Ok(STANDARD.encode(packed))
}

fn page(index: &str, style: &str, script: &str, module: &str, icon: &str) -> Result<String> {
    let description = between(index, "<meta\n      name=\"description\"", "/>")?;
    let opening = between(index, "<div id=\"app\">", "</div>")?;
    let (style, script) = (format!("\n{style}"), format!("\n{script}"));
    let (style_hash, script_hash) = (hash(&style), hash(&script));
    Ok(format!(
        r#"<!doctype html>
<html lang="en" data-edition="single">
  <head>
    <meta charset="utf-8" />
    <meta http-equiv="Content-Security-Policy" content="default-src 'none'; script-src '{script_hash}' 'wasm-unsafe-eval'; worker-src blob:; style-src '{style_hash}'; img-src data:; object-src 'none'; base-uri 'none'; form-action 'none'" />
    <meta name="viewport" content="width=device-width, initial-scale=1, viewport-fit=cover" />
    <meta name="referrer" content="no-referrer" />
    <meta name="color-scheme" content="light dark" />
    {description}
    <title>Notchwright</title>
    <link rel="icon" href="data:image/svg+xml;base64,{icon}" />
    <style>{style}</style>
  </head>
  <body>
    {opening}
    <noscript><p>Notchwright works out its joints in this browser: please allow JavaScript for this page.</p></noscript>
    <script type="application/octet-stream" id="module">{module}</script>
    <script type="module">{script}</script>
  </body>
</html>
"#
    ))
}

/// What a content security policy knows an inline text by.
fn hash(text: &str) -> String {
    format!("sha256-{}", STANDARD.encode(Sha256::digest(text)))
}

fn between<'a>(text: &'a str, from: &str, to: &str) -> Result<&'a str> {
    let start = text
        .find(from)
        .with_context(|| format!("the page has no {from:?}"))?;
    let rest = text.get(start..).unwrap_or_default();
    let end = rest
        .find(to)
        .with_context(|| format!("{from:?} does not end"))?;
    Ok(rest.get(..end + to.len()).unwrap_or_default())
}

fn replaced(text: &str, place: &str, value: &str) -> Result<String> {
    ensure!(text.matches(place).count() == 1, "no place for {value}");
    Ok(text.replace(place, value))
}
