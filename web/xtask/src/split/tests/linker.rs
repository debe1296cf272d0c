//! What the real linker notes, and that it is enough.

use std::process::Command;

use super::run::Running;
use super::{CHUNKS, Links, divide_into};
use crate::tools;

const SOURCE: &str = concat!(env!("CARGO_MANIFEST_DIR"), "/src/split/tests/linked.rs");

/// The small program, compiled and linked.
fn linked(flags: &[&str]) -> Vec<u8> {
    tools::ensure_wasm_target().unwrap();
    let folder = tempfile::tempdir().unwrap();
    let file = folder.path().join("app.wasm");
    let mut compile = Command::new("rustc");
    compile
        .args(["--crate-name=app", "--crate-type=cdylib", "--edition=2024"])
        .args([
            "--target=wasm32-unknown-unknown",
            "-Copt-level=1",
            "-Cpanic=abort",
        ])
        .args(flags)
        .arg("-o")
        .arg(&file)
        .arg(SOURCE);
    let made = compile.output().unwrap();
    assert!(
        made.status.success(),
        "{}",
        String::from_utf8_lossy(&made.stderr)
    );
    std::fs::read(file).unwrap()
}

/// Its parts by name.
fn parts(whole: &[u8]) -> Vec<(&'static str, Vec<u8>)> {
    let links = Links::read(whole).unwrap();
    let parts = divide_into(whole, &links, CHUNKS).unwrap().into_iter();
    parts.map(|part| (part.name, part.bytes)).collect()
}

#[test]
fn a_linked_program_divided_does_what_the_whole_does() {
    let whole = linked(&["-Clink-arg=--emit-relocs"]);
    let mut page = Running::of_parts(&parts(&whole));
    let mut undivided = Running::start(&whole);
    for given in 0..12 {
        let expected = undivided.call("own", given).unwrap();
        assert_eq!(page.call("own", given).unwrap(), expected);
        assert!(page.call("open", given).is_err());
    }
    page.fetch("other");
    page.fetch("later");
    for given in 0..12 {
        for name in ["own", "open", "open_other"] {
            let expected = undivided.call(name, given).unwrap();
            assert_eq!(page.call(name, given).unwrap(), expected, "{name} {given}");
        }
    }
}

/// Each number of the program is in the one part that needs it.
#[test]
fn data_are_found_by_what_the_linker_noted() {
    let whole = linked(&["-Clink-arg=--emit-relocs"]);
    let parts = parts(&whole);
    for (numbers, home) in [
        ([3_i32, 5, 7], "page"),
        ([1009, 1013, 1019], "common"),
        ([31, 37, 41], "later"),
    ] {
        let bytes: Vec<u8> = numbers.iter().flat_map(|it| it.to_le_bytes()).collect();
        let holds = |part: &[u8]| part.windows(bytes.len()).any(|it| it == bytes);
        let homes = parts.iter().filter(|part| holds(&part.1));
        let homes: Vec<_> = homes.map(|part| part.0).collect();
        assert_eq!(homes, [home]);
    }
}

#[test]
fn a_program_linked_without_notes_is_refused() {
    let refused = Links::read(&linked(&[])).err().unwrap();
    let says = "the module was linked without --emit-relocs";
    assert_eq!(refused.to_string(), says);
}
