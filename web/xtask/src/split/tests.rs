//! A small module, divided and run.

mod run;

use walrus::Module;

use super::division::{Division, Home, functions};
use super::{Chunk, comes_later, divide_into, without_names};

const WHOLE: &str = include_str!("tests/whole.wat");

const CHUNKS: &[Chunk] = &[
    Chunk {
        name: "later",
        paths: &["app::later::"],
        gates: &["app::later::view"],
    },
    Chunk {
        name: "other",
        paths: &["app::other::"],
        gates: &["app::other::view"],
    },
];

fn module(text: &str) -> Vec<u8> {
    wat::parse_str(text).unwrap()
}

/// The parts of the module by name.
fn parts() -> Vec<(&'static str, Vec<u8>)> {
    parts_of(WHOLE)
}

fn parts_of(text: &str) -> Vec<(&'static str, Vec<u8>)> {
    let parts = divide_into(&module(text), CHUNKS).unwrap();
    let parts = parts.into_iter();
    parts.map(|part| (part.name, part.bytes)).collect()
}

fn read(bytes: &[u8]) -> Module {
    Module::from_buffer(bytes).unwrap()
}

/// Why a module with another text in it cannot be divided.
fn refused(text: &str, other: &str) -> String {
    let changed = WHOLE.replacen(text, other, 1);
    assert_ne!(changed, WHOLE);
    let refused = divide_into(&module(&changed), CHUNKS).err().unwrap();
    refused.to_string()
}

fn exports(module: &Module) -> Vec<&str> {
    let exports = module.exports.iter();
    exports.map(|export| export.name.as_str()).collect()
}

fn imports(module: &Module) -> Vec<(&str, &str)> {
    let imports = module.imports.iter();
    imports
        .map(|import| (import.module.as_str(), import.name.as_str()))
        .collect()
}

#[test]
fn every_function_has_the_home_that_its_name_and_its_callers_give_it() {
    let module = read(&module(WHOLE));
    let division = Division::new(&module, CHUNKS).unwrap();
    let (later, other) = (Home::Chunk(0), Home::Chunk(1));
    for (name, home) in [
        ("app::start::h0123456789abcdef", Home::Page),
        ("app::page::open", Home::Page),
        ("app::page::own", Home::Page),
        ("app::page::closure", Home::Page),
        ("app::later::view::h0123456789abcdef", later),
        ("app::later::inside", later),
        // The page may have the same closure, and the compiler makes one of them.
        ("<app::later::Thing as core::ops::Neg>::neg", Home::Page),
        // A closure of the chunk's, and what only the chunk calls.
        ("core::ops::FnOnce::call_once", later),
        ("lib::helper", later),
        ("app::other::view", other),
        // Either chunk may need it first.
        ("lib::both", Home::Page),
        // Only the page is given what the browser's side defines.
        ("glue::note", Home::Page),
        ("glue::warn", Home::Page),
        ("app::script::plan", Home::Scripts),
        ("lib::for_scripts", Home::Scripts),
    ] {
        let function = module.funcs.by_name(name).unwrap();
        let place = functions(&module).iter().position(|it| *it == function);
        assert_eq!(division.home(place.unwrap()), home, "{name}");
    }
}

#[test]
fn the_page_has_no_exports_for_scripts() {
    let parts = parts();
    let [(name, page), chunks @ ..] = parts.as_slice() else {
        panic!("there are no parts")
    };
    assert_eq!(*name, "page");
    let page = read(page);
    let names = exports(&page);
    assert!(!names.contains(&"plan"), "{names:?}");
    for kept in ["startPage", "memory", "table", "page__open", "page__own"] {
        assert!(names.contains(&kept), "{kept}");
    }
    for (name, chunk) in chunks {
        assert_eq!(exports(&read(chunk)), Vec::<&str>::new(), "{name}");
    }
}

#[test]
fn only_the_page_imports_from_outside() {
    let parts = parts();
    let page = read(&parts[0].1);
    assert_eq!(imports(&page), [("glue", "note"), ("glue", "warn")]);
    let names = exports(&page);
    assert_eq!(parts.len(), 3);
    for (name, chunk) in &parts[1..] {
        let chunk = read(chunk);
        assert!(!imports(&chunk).is_empty());
        for (from, what) in imports(&chunk) {
            assert_eq!(from, "page", "{name}");
            assert!(names.contains(&what), "{name} imports {what}");
        }
    }
}

#[test]
fn no_part_holds_what_belongs_elsewhere() {
    let sizes: Vec<_> = parts()
        .iter()
        .map(|(name, bytes)| (*name, read(bytes).funcs.iter_local().count()))
        .collect();
    // The page has the two gates' calls through the table in place of the gates.
    assert_eq!(sizes, [("page", 11), ("later", 4), ("other", 1)]);
}

#[test]
fn a_call_past_the_gates_is_refused() {
    let gate = "(call $\"app::later::view::h0123456789abcdef\"";
    let inside = "(call $\"app::later::inside\"";
    assert_eq!(
        refused(gate, inside),
        "app::page::open calls app::later::inside, which may not have come yet"
    );
}

#[test]
fn a_name_that_only_begins_like_a_gates_is_none() {
    for name in ["app::later::viewer", "app::later::view::inner"] {
        let changed = WHOLE.replace("app::later::view::h0123456789abcdef", name);
        assert_ne!(changed, WHOLE);
        let refused = divide_into(&module(&changed), CHUNKS).err().unwrap();
        let says = format!("app::page::open calls {name}, which may not have come yet");
        assert_eq!(refused.to_string(), says);
    }
}

#[test]
fn a_function_that_the_page_calls_by_name_is_no_wrapper() {
    let exported = "$\"core::ops::FnOnce::call_once\" (param";
    let by_name = "$\"core::ops::FnOnce::call_once\" (export \"page__closure\") (param";
    assert_eq!(
        refused(exported, by_name),
        "core::ops::FnOnce::call_once calls app::later::inside, which may not have come yet"
    );
}

/// It would be taken for a wrapper, and the page could not start.
#[test]
fn what_comes_first_is_no_wrapper() {
    for first in [
        "<notchwright_web::app::App as yew::Component>::update",
        "notchwright_web::update::<impl notchwright_web::model::Model>::update",
    ] {
        let changed = WHOLE.replace("core::ops::FnOnce::call_once", first);
        assert_ne!(changed, WHOLE);
        let refused = divide_into(&module(&changed), CHUNKS).err().unwrap();
        let says = format!("{first} calls app::later::inside, which may not have come yet");
        assert_eq!(refused.to_string(), says);
    }
}

#[test]
fn a_table_that_is_not_understood_is_refused() {
    let says = refused("(elem (i32.const 1)", "(elem funcref) (elem func");
    assert!(
        says.starts_with("a table is filled in an unexpected way"),
        "{says}"
    );
    let bare = "(module (func (export \"startPage\")))";
    let refused = divide_into(&module(bare), CHUNKS).err().unwrap();
    assert_eq!(refused.to_string(), "the module has no table of functions");
}

#[test]
fn names_are_dropped_from_what_is_shipped() {
    let whole = module(WHOLE);
    let has_name = |bytes: &[u8]| bytes.windows(11).any(|it| it == b"lib::helper");
    assert!(has_name(&whole));
    let nameless = without_names(&whole).unwrap();
    assert!(!has_name(&nameless));
    assert_eq!(exports(&read(&nameless)), exports(&read(&whole)));
    for (name, bytes) in parts() {
        assert!(!has_name(&bytes), "{name}");
    }
}

#[test]
fn only_chunks_come_later() {
    assert!(comes_later("pkg/sled.wasm"));
    for first in ["pkg/page.wasm", "sled.wasm", "pkg/sled.js", "pkg/.wasm"] {
        assert!(!comes_later(first), "{first}");
    }
}
