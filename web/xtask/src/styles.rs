//! One style sheet out of many: each import is replaced by what it names, without what only its writer needs.

use std::collections::BTreeSet;

use anyhow::{Context, Result, bail, ensure};

use crate::build::Files;

const SHEET: &str = "style.css";
const FOLDER: &str = "css/";

/// Puts the sheets below `css/` into `style.css`, in the order in which it imports them.
///
/// # Errors
///
/// When a sheet is imported that is not there, or is there and not imported.
pub(crate) fn join(files: &mut Files) -> Result<()> {
    let order = files.remove(SHEET).context("www/ has no style.css")?;
    let mut left: BTreeSet<String> = files
        .keys()
        .filter(|name| name.starts_with(FOLDER))
        .cloned()
        .collect();
    let mut joined = String::new();
    for line in std::str::from_utf8(&order)?.lines() {
        let Some(name) = imported(line) else {
            ensure!(
                !line.starts_with('@'),
                "style.css only imports, but has {line:?}"
            );
            continue;
        };
        let sheet = files.remove(name);
        let sheet = sheet.with_context(|| format!("style.css imports {name}, once too often"))?;
        joined += &bare(std::str::from_utf8(&sheet)?)
            .with_context(|| format!("{name} has a comment without an end"))?;
        left.remove(name);
    }
    if let Some(name) = left.first() {
        bail!("style.css does not import {name}");
    }
    files.insert(SHEET.to_owned(), joined.into_bytes());
    Ok(())
}

/// Without comments and indentation. What would be left to gain, the host's compression gains anyway.
fn bare(sheet: &str) -> Option<String> {
    let mut parts = sheet.split("/*");
    let mut text = parts.next()?.to_owned();
    for part in parts {
        let (_, after) = part.split_once("*/")?;
        text += after;
    }
    let lines = text.lines().map(str::trim).filter(|line| !line.is_empty());
    Some(lines.map(|line| format!("{line}\n")).collect())
}

fn imported(line: &str) -> Option<&str> {
    line.strip_prefix("@import \"./")?.strip_suffix("\";")
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(order: &str) -> Files {
        [
            ("css/a.css", "a{}\n"),
            ("css/b.css", "b{}\n"),
            (SHEET, order),
        ]
        .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
        .into()
    }

    #[test]
    fn sheets_are_joined_in_the_order_of_their_imports() {
        let mut files = files("/* why */\n@import \"./css/b.css\";\n@import \"./css/a.css\";\n");
        join(&mut files).unwrap();
        assert_eq!(files.keys().collect::<Vec<_>>(), [SHEET]);
        assert_eq!(files[SHEET], b"b{}\na{}\n");
    }

    #[test]
    fn comments_and_indentation_stay_at_home() {
        let sheet = "/* why,\n   at length */\n\na {\n  margin: 0 /* here */ 1px;\n}\n";
        assert_eq!(bare(sheet).unwrap(), "a {\nmargin: 0  1px;\n}\n");
        assert_eq!(bare("a{} /* on and on"), None);
    }

    #[test]
    fn a_sheet_left_out_or_missing_is_named() {
        for (order, name) in [
            ("@import \"./css/b.css\";", "css/a.css"),
            ("@import \"./css/c.css\";", "css/c.css"),
            ("@import url(x.css);", "x.css"),
        ] {
            let error = join(&mut files(order)).unwrap_err().to_string();
            assert!(error.contains(name), "{error}");
        }
    }
}
