//! The service worker's version and list of files, both made from what is shipped.

use anyhow::{Context, Result, ensure};
use sha2::{Digest, Sha256};

use crate::build::Files;
use crate::single::SINGLE;

/// The service worker's own file.
pub(crate) const WORKER: &str = "sw.js";
/// The page. It is kept under the folder's address: some hosts redirect from its own name, and a
/// browser refuses a redirected answer for a page.
pub(crate) const PAGE: &str = "index.html";

const VERSION_PLACE: &str = "'__VERSION__'";
const FILES_PLACE: &str = "['__FILES__']";
/// Hexadecimal digits of the hash that are shown: enough to tell any two versions apart.
const DIGITS: usize = 16;

/// Writes version and list into the service worker, and returns the version.
pub(crate) fn finish(files: &mut Files) -> Result<String> {
    let version = version(files);
    let list: Vec<String> = fetched(files)
        .filter(|name| *name != WORKER)
        .map(|name| match name {
            PAGE => "./".to_owned(),
            _ => format!("./{name}"),
        })
        .collect();
    let worker = files
        .get_mut(WORKER)
        .context("www/ has no service worker")?;
    let text = String::from_utf8(std::mem::take(worker))?;
    let text = put(&text, VERSION_PLACE, &format!("'{version}'"))?;
    let text = put(&text, FILES_PLACE, &serde_json::to_string_pretty(&list)?)?;
    *worker = text.into_bytes();
    Ok(version)
}

/// The names of the files that the page fetches: all but those for scripts (the whole module, its
/// types and its description), the page as a single file, and the large icons, which a browser fetches only
/// when it puts the page on a home screen.
pub(crate) fn fetched(files: &Files) -> impl Iterator<Item = &str> {
    let for_scripts = |name: &str| {
        name.ends_with(".d.ts")
            || [
                "pkg/package.json",
                "pkg/notchwright.js",
                "pkg/notchwright_bg.wasm",
            ]
            .contains(&name)
    };
    let for_home_screens = |name: &str| name.ends_with("-512.png");
    files
        .keys()
        .map(String::as_str)
        .filter(move |name| !for_scripts(name) && !for_home_screens(name) && *name != SINGLE)
}

/// A hash over every shipped name and byte.
fn version(files: &Files) -> String {
    let mut hash = Sha256::new();
    for (name, bytes) in files {
        for part in [name.as_bytes(), bytes] {
            // Lengths go in too, so that no two sets of files run together into the same bytes.
            hash.update((part.len() as u64).to_le_bytes());
            hash.update(part);
        }
    }
    let digits = hash
        .finalize()
        .iter()
        .map(|byte| format!("{byte:02x}"))
        .collect::<String>();
    digits.chars().take(DIGITS).collect()
}

fn put(text: &str, place: &str, value: &str) -> Result<String> {
    let places = text.matches(place).count();
    ensure!(
        places == 1,
        "www/{WORKER} has {places} places {place}, not one"
    );
    Ok(text.replace(place, value))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn files(worker: &str, css: &str) -> Files {
        [
            ("icons/icon-512.png", "…"),
            ("index.html", "<p>"),
            ("notchwright.html", "<p>"),
            ("pkg/notchwright.d.ts", "export {}"),
            ("style.css", css),
            ("sw.js", worker),
        ]
        .map(|(name, text)| (name.to_owned(), text.as_bytes().to_vec()))
        .into()
    }

    const TEMPLATE: &str = "v('__VERSION__', ['__FILES__'])";

    #[test]
    fn the_worker_lists_what_a_browser_fetches() {
        let mut files = files(TEMPLATE, "p{}");
        let version = finish(&mut files).unwrap();
        let worker = String::from_utf8(files.remove(WORKER).unwrap()).unwrap();
        assert_eq!(
            worker,
            format!("v('{version}', [\n  \"./\",\n  \"./style.css\"\n])")
        );
    }

    #[test]
    fn any_changed_byte_is_another_version() {
        let first = finish(&mut files(TEMPLATE, "p{}")).unwrap();
        assert_eq!(first, finish(&mut files(TEMPLATE, "p{}")).unwrap());
        assert_ne!(first, finish(&mut files(TEMPLATE, "q{}")).unwrap());
    }

    #[test]
    fn a_worker_without_its_places_is_refused() {
        assert!(finish(&mut files("v('__VERSION__')", "p{}")).is_err());
    }
}
