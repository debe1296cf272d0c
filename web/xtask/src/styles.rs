//! Two style sheets out of many: each import is replaced by what it names, without what only its writer needs.

use anyhow::{Context, Result, bail, ensure};

use crate::build::Files;

/// What a first answer needs.
pub(crate) const FIRST: &str = "style.css";
/// What comes with the parts of the program that come later.
pub(crate) const LATER: &str = "later.css";
const FOLDER: &str = "css/";

/// Puts the sheets below `css/` into the two that import them, each in the order of its imports.
///
/// # Errors
///
/// When a sheet is imported that is not there, or is there and not imported.
pub(crate) fn join(files: &mut Files) -> Result<()> {
    for name in [FIRST, LATER] {
        let joined = joined(name, files)?;
        files.insert(name.to_owned(), joined.into_bytes());
    }
    match files.keys().find(|name| name.starts_with(FOLDER)) {
        Some(name) => bail!("nothing imports {name}"),
        None => Ok(()),
    }
}

fn joined(name: &str, files: &mut Files) -> Result<String> {
    let order = files.remove(name);
    let order = order.with_context(|| format!("www/ has no {name}"))?;
    let mut joined = String::new();
    for line in std::str::from_utf8(&order)?.lines() {
        let Some(sheet) = imported(line) else {
            ensure!(
                !line.starts_with('@'),
                "{name} only imports, but has {line:?}"
            );
            continue;
        };
        let text = files.remove(sheet);
        let text = text.with_context(|| format!("{name} imports {sheet}, once too often"))?;
        joined += &bare(std::str::from_utf8(&text)?)
            .with_context(|| format!("{sheet} has a comment without an end"))?;
    }
    Ok(joined)
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
            ("css/z.css", "z{}\n"),
            (FIRST, order),
            (LATER, "@import \"./css/z.css\";\n"),
        ]
        .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
        .into()
    }

    #[test]
    fn sheets_are_joined_in_the_order_of_their_imports() {
        let mut files = files("/* why */\n@import \"./css/b.css\";\n@import \"./css/a.css\";\n");
        join(&mut files).unwrap();
        assert_eq!(files.keys().collect::<Vec<_>>(), [LATER, FIRST]);
        assert_eq!(files[FIRST], b"b{}\na{}\n");
        assert_eq!(files[LATER], b"z{}\n");
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
