//! A small module, divided and run.

mod linker;
mod run;

use walrus::Module;

use super::division::{Division, Home, functions};
use super::links::{Links, Targets};
use super::{Chunk, Part, comes_later, divide_into, without_names};

const WHOLE: &str = include_str!("tests/whole.wat");

/// The gate of `later`, as the compiler names it.
const LATER: &str = "_ZN3app5later4view17h0123456789abcdefE";

const CHUNKS: &[Chunk] = &[
    Chunk {
        name: "later",
        gates: &["app::later::view"],
    },
    Chunk {
        name: "other",
        gates: &["app::other::view"],
    },
];

fn module(text: &str) -> Vec<u8> {
    wat::parse_str(text).unwrap()
}

/// What points at what in [`WHOLE`]: functions at data and functions.
const POINTERS: &[(&str, &[usize], &[&str])] = &[
    ("app::page::open", &[], &["app::page::closure"]),
    (
        "app::page::call",
        &[],
        &["<app::later::Thing as core::ops::Neg>::neg"],
    ),
    ("app::page::own", &[0], &[]),
    (LATER, &[3], &["<app::later::Thing as core::ops::Neg>::neg"]),
    ("lib::helper", &[1], &[]),
    ("lib::inside_both", &[2], &[]),
];

/// What the linker would have noted of [`WHOLE`], or of what was made of it.
fn links(whole: &[u8]) -> Links {
    let names = read(whole)
        .funcs
        .iter()
        .filter_map(|it| it.name.clone())
        .collect::<Vec<_>>();
    let mut links = Links {
        data: vec![8..12, 16..20, 20..24, 24..28],
        by_data: (0..4).map(|_| Targets::default()).collect(),
        by_function: names
            .into_iter()
            .map(|it| (it, Targets::default()))
            .collect(),
    };
    // The closure is known only to a piece of data of the chunk's.
    links.by_data[3]
        .functions
        .insert("core::ops::FnOnce::call_once".to_owned());
    for (name, data, functions) in POINTERS {
        if let Some(targets) = links.by_function.get_mut(*name) {
            targets.data.extend(*data);
            targets
                .functions
                .extend(functions.iter().map(|&it| it.to_owned()));
        }
    }
    links
}

fn divided(text: &str) -> anyhow::Result<Vec<Part>> {
    let whole = module(text);
    divide_into(&whole, &links(&whole), CHUNKS)
}

/// The parts of a module by name.
fn parts_of(text: &str) -> Vec<(&'static str, Vec<u8>)> {
    let parts = divided(text).unwrap().into_iter();
    parts.map(|part| (part.name, part.bytes)).collect()
}

fn parts() -> Vec<(&'static str, Vec<u8>)> {
    parts_of(WHOLE)
}

fn read(bytes: &[u8]) -> Module {
    Module::from_buffer(bytes).unwrap()
}

/// The module's text with another in the place of one.
fn changed(text: &str, other: &str) -> String {
    let changed = WHOLE.replace(text, other);
    assert_ne!(changed, WHOLE);
    changed
}

/// Why a module with another text in it cannot be divided.
fn refused(text: &str, other: &str) -> String {
    divided(&changed(text, other)).err().unwrap().to_string()
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
fn everything_has_the_home_that_those_who_need_it_give_it() {
    let whole = module(WHOLE);
    let module = read(&whole);
    let division = Division::new(&module, &links(&whole), CHUNKS).unwrap();
    let (later, other) = (Home::Chunk(0), Home::Chunk(1));
    for (name, home) in [
        ("_ZN3app5start17h0123456789abcdefE", Home::Page),
        ("app::page::open", Home::Page),
        ("app::page::own", Home::Page),
        ("app::page::closure", Home::Page),
        // The page has the same closure, and the compiler makes one of them.
        ("<app::later::Thing as core::ops::Neg>::neg", Home::Page),
        // Only the page is given what the browser's side defines.
        ("glue::note", Home::Page),
        ("glue::warn", Home::Page),
        (LATER, later),
        // Known to data that only the chunk has, and what it calls.
        ("core::ops::FnOnce::call_once", later),
        ("app::later::inside", later),
        ("lib::helper", later),
        ("app::other::view", other),
        // Either chunk may need it first.
        ("lib::both", Home::Common),
        ("lib::inside_both", Home::Common),
        ("lib::unneeded", Home::Nowhere),
    ] {
        let function = module.funcs.by_name(name).unwrap();
        let place = functions(&module).iter().position(|it| *it == function);
        assert_eq!(division.home(place.unwrap()), home, "{name}");
    }
    let homes = [0, 1, 2, 3].map(|datum| division.home_of_datum(datum));
    assert_eq!(homes, [Home::Page, later, Home::Common, later]);
}

#[test]
fn only_the_page_imports_from_outside() {
    let parts = parts();
    let names: Vec<_> = parts.iter().map(|part| part.0).collect();
    assert_eq!(names, ["page", "common", "later", "other"]);
    let page = read(&parts[0].1);
    assert_eq!(imports(&page), [("glue", "note"), ("glue", "warn")]);
    let common = read(&parts[1].1);
    for (name, part) in &parts[1..] {
        let part = read(part);
        assert!(!imports(&part).is_empty());
        for (from, what) in imports(&part) {
            let giver = match from {
                "page" => &page,
                "common" => &common,
                _ => panic!("{name} imports from {from}"),
            };
            assert!(exports(giver).contains(&what), "{name} imports {what}");
        }
    }
    assert_eq!(exports(&common).len(), 1);
    for (name, chunk) in &parts[2..] {
        assert_eq!(exports(&read(chunk)), Vec::<&str>::new(), "{name}");
    }
}

#[test]
fn no_part_holds_what_belongs_elsewhere() {
    let sizes: Vec<_> = parts()
        .iter()
        .map(|(name, bytes)| (*name, read(bytes).funcs.iter_local().count()))
        .collect();
    // The page has the two gates' calls through the table in place of the gates.
    let expected = [("page", 10), ("common", 2), ("later", 4), ("other", 1)];
    assert_eq!(sizes, expected);
    let data: Vec<_> = parts()
        .iter()
        .map(|(_, bytes)| {
            let data = read(bytes).data;
            data.iter().map(|it| it.value.clone()).collect::<Vec<_>>()
        })
        .collect();
    // The byte without a name stays the page's.
    let page = [
        vec![7, 0, 0, 0, 5, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0, 0],
        vec![0; 4],
    ];
    assert_eq!(data[0], page);
    assert_eq!(data[1], [[19, 0, 0, 0]]);
    assert_eq!(data[2], [[17, 0, 0, 0], [2, 0, 0, 0]]);
    assert_eq!(data[3], [[0; 0]; 0]);
}

/// Else it would be fetched twice, and be there before the chunk.
#[test]
fn what_the_page_calls_past_a_gate_is_the_pages() {
    let text = changed(
        &format!("(call ${LATER:?} (local.get 0)))"),
        "(call $\"app::later::inside\" (local.get 0)))",
    );
    let whole = module(&text);
    let division = Division::new(&read(&whole), &links(&whole), CHUNKS).unwrap();
    let module = read(&whole);
    let inside = module.funcs.by_name("app::later::inside").unwrap();
    let place = functions(&module).iter().position(|it| *it == inside);
    assert_eq!(division.home(place.unwrap()), Home::Page);
}

#[test]
fn a_gate_that_is_not_there_is_refused() {
    for name in ["app::later::viewer", "app::later::view::inner"] {
        assert_eq!(
            refused(LATER, name),
            "there is no function app::later::view"
        );
    }
}

/// What it points at cannot be known.
#[test]
fn a_function_that_the_linker_did_not_write_may_not_point_at_data() {
    for body in ["(i32.const 9)", "(i32.load offset=9 (i32.const 0))"] {
        let text = changed("(i32.add (local.get 0) (i32.const 5))", body);
        let whole = module(&text);
        let mut links = links(&whole);
        links.by_function.remove("lib::unneeded");
        let refused = divide_into(&whole, &links, CHUNKS).err().unwrap();
        let says = "lib::unneeded is not the linker's, and may point at data";
        assert_eq!(refused.to_string(), says);
    }
}

#[test]
fn a_module_that_is_not_understood_is_refused() {
    for (text, other, says) in [
        (
            "(elem (i32.const 1)",
            "(elem funcref) (elem func",
            "a table is filled in an unexpected way",
        ),
        (
            "(data (i32.const 24)",
            "(data",
            "memory is filled in an unexpected way",
        ),
    ] {
        let refused = refused(text, other);
        assert!(refused.starts_with(says), "{refused}");
    }
    let bare = module("(module (func (export \"startPage\")))");
    let refused = divide_into(&bare, &Links::default(), &[]).err().unwrap();
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
fn only_chunks_and_what_they_share_come_later() {
    for later in ["pkg/sled.wasm", "pkg/common.wasm"] {
        assert!(comes_later(later), "{later}");
    }
    for first in ["pkg/page.wasm", "sled.wasm", "pkg/sled.js", "pkg/.wasm"] {
        assert!(!comes_later(first), "{first}");
    }
}
