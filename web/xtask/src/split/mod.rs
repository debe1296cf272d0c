//! Divides the compiled module, so that a first visit fetches only what the first answer needs.
//!
//! The page is compiled once. It loads `page.wasm`, and a chunk when a place is opened that needs it; scripts have
//! a module of their own. A chunk shares memory, table and functions with the page: it is more
//! of the same module, come later. The page calls into it through slots of the table which stay empty
//! until then, so `www/chunks.js` lets nobody call before it has come.
//!
//! A splitter that works on annotated sources (one exists for this compiler) would put a promise into
//! every place that calls across. Here one table of
//! paths says what goes where, and the call graph does the rest.

mod calls;
mod division;
mod parts;
#[cfg(test)]
mod tests;

use anyhow::Result;
use walrus::{Module, ModuleConfig};

use division::Division;

/// Functions that come later, by where they are in the sources.
struct Chunk {
    name: &'static str,
    paths: &'static [&'static str],
    /// The only ones that the page may call, and not before the chunk has come.
    gates: &'static [&'static str],
}

/// What the page fetches when a place needs it.
const CHUNKS: &[Chunk] = &[
    Chunk {
        name: "sled",
        paths: &[
            "notchwright_web::view::sled::",
            "notchwright_web::answer::sled::",
            "notchwright_core::sled::",
            "notchwright_core::parts::sled::",
            "notchwright_core::square::",
            "notchwright_core::screw_check::",
            "notchwright_core::groove::",
            "notchwright_core::drawing::sled::",
            "notchwright_core::drawing::tools::",
        ],
        gates: &[
            "notchwright_web::view::sled::view",
            "notchwright_web::answer::sled::answer",
            "notchwright_web::answer::sled::parts",
        ],
    },
    Chunk {
        name: "shop",
        paths: &[
            "notchwright_web::view::shop::",
            "notchwright_web::answer::bench::",
            "notchwright_core::cutter::stack::",
        ],
        gates: &[
            "notchwright_web::view::shop::view",
            "notchwright_web::answer::bench::answer",
        ],
    },
    Chunk {
        name: "parts",
        paths: &[
            "notchwright_web::view::making::",
            "notchwright_web::answer::making::",
            "notchwright_web::update::making::",
            "notchwright_core::drawer::",
            "notchwright_core::parts::",
            "notchwright_core::sheet::",
            "notchwright_core::wood::",
            "notchwright_core::drawing::drawer::",
        ],
        gates: &[
            "notchwright_web::view::making::view",
            "notchwright_web::answer::making::answer",
            "notchwright_web::update::making::apply",
            "notchwright_web::update::making::table",
            "notchwright_web::update::making::drawer::hand_over",
        ],
    },
    Chunk {
        name: "jobs",
        paths: &[
            "notchwright_web::view::jobs::",
            "notchwright_web::view::saw::",
            "notchwright_web::view::shop_card::",
            "notchwright_web::update::jobs::",
            "notchwright_web::update::cutting::",
            "notchwright_web::update::saw::",
            "notchwright_web::answer::course::",
            "notchwright_web::answer::spoken::",
            "notchwright_web::edge::gadgets::",
            "notchwright_web::keep::link::write",
            "notchwright_web::keep::link::pack",
            "notchwright_web::export::",
            "notchwright_core::drawing::dxf::",
            "notchwright_core::drawing::marking::",
            "notchwright_core::drawing::template::",
            "notchwright_core::stop::csv::",
            "notchwright_core::stop::find::",
            "qrcodegen::",
        ],
        gates: &[
            "notchwright_web::view::jobs::view",
            "notchwright_web::view::saw::view",
            "notchwright_web::view::shop_card::view",
            "notchwright_web::update::jobs::turn",
            "notchwright_web::update::cutting::act",
            "notchwright_web::update::cutting::follow_plan",
            "notchwright_web::export::file",
            "notchwright_web::keep::link::write",
            "notchwright_web::edge::gadgets::can",
            "notchwright_web::edge::gadgets::speak",
            "notchwright_web::edge::gadgets::hush",
            "notchwright_web::edge::gadgets::listen",
            "notchwright_web::edge::gadgets::share",
            "notchwright_web::edge::gadgets::persist",
        ],
    },
    Chunk {
        name: "dovetail",
        paths: &[
            "notchwright_web::view::slanted::",
            "notchwright_web::answer::slanted::",
            "notchwright_core::joint::dovetail::",
            "notchwright_core::joint::sliding::",
            "notchwright_core::dryfit::slanted::",
            "notchwright_core::drawing::dovetail::",
        ],
        gates: &[
            "notchwright_web::view::slanted::view",
            "notchwright_web::view::slanted::steps",
            "notchwright_web::view::slanted::progress",
            "notchwright_web::view::slanted::pictures",
            "notchwright_web::view::slanted::template",
            "notchwright_web::answer::slanted::answer",
        ],
    },
];

/// The only function that the page's own script calls by name. All other named exports are for
/// scripts, and what only they need is in no part.
const START: &str = "startPage";

/// The names of all chunks.
pub(crate) fn names() -> Vec<&'static str> {
    CHUNKS.iter().map(|chunk| chunk.name).collect()
}

/// One file of the divided module.
pub(crate) struct Part {
    /// Its name, without an ending.
    pub(crate) name: &'static str,
    /// The module.
    pub(crate) bytes: Vec<u8>,
}

/// Divides a module whose functions still have their names into the page and its chunks.
pub(crate) fn divide(whole: &[u8]) -> Result<Vec<Part>> {
    divide_into(whole, CHUNKS)
}

fn divide_into(whole: &[u8], chunks: &[Chunk]) -> Result<Vec<Part>> {
    let division = Division::new(&parse(whole)?, chunks)?;
    let mut parts = vec![Part {
        name: "page",
        bytes: parts::page(parse(whole)?, &division)?,
    }];
    for (chunk, Chunk { name, .. }) in chunks.iter().enumerate() {
        let bytes = parts::chunk(parse(whole)?, &division, chunk)?;
        parts.push(Part { name, bytes });
    }
    Ok(parts)
}

/// Whether the page fetches this shipped file only after its first answer.
pub(crate) fn comes_later(file: &str) -> bool {
    let name = file
        .strip_prefix("pkg/")
        .and_then(|name| name.strip_suffix(".wasm"));
    name.is_some_and(|name| CHUNKS.iter().any(|chunk| chunk.name == name))
}

/// The module without the names of its functions.
pub(crate) fn without_names(whole: &[u8]) -> Result<Vec<u8>> {
    Ok(parse(whole)?.emit_wasm())
}

/// Reads a module that will be written without names.
fn parse(bytes: &[u8]) -> Result<Module> {
    ModuleConfig::new()
        .generate_name_section(false)
        .generate_producers_section(false)
        .parse(bytes)
}
