//! Divides the compiled module, so that a first visit fetches only what the first answer needs.
//!
//! The page is compiled once. It loads `page.wasm`, and a chunk when a place is opened that needs it; scripts have
//! a module of their own. A chunk shares memory, table and functions with the page: it is more of the same
//! module, come later. The page calls into it through slots of the table which stay empty until then, so
//! `www/chunks.js` lets nobody call before it has come.
//!
//! A splitter that works on annotated sources (one exists for this compiler) would put a promise into every place
//! that calls across. Here a table names the gates, and what is behind them follows from calls and pointers.

mod data;
mod division;
mod graph;
mod linked;
mod links;
mod parts;
#[cfg(test)]
mod tests;

use anyhow::Result;
use walrus::{Module, ModuleConfig};

use division::{Division, Home};
pub(crate) use links::Links;

/// What comes later: a few functions, and all that only they need.
struct Chunk {
    name: &'static str,
    /// The functions. Nobody outside calls any before the chunk has come.
    gates: &'static [&'static str],
}

/// What several chunks need, and the page does not: it comes before the first of them.
const COMMON: &str = "common";

/// What the page fetches when a place needs it.
const CHUNKS: &[Chunk] = &[
    Chunk {
        name: "sled",
        gates: &[
            "notchwright_web::view::sled::view",
            "notchwright_web::answer::sled::answer",
            "notchwright_web::answer::sled::parts",
        ],
    },
    Chunk {
        name: "shop",
        gates: &[
            "notchwright_web::view::shop::view",
            "notchwright_web::answer::bench::answer",
        ],
    },
    Chunk {
        name: "parts",
        gates: &[
            "notchwright_web::view::making::view",
            "notchwright_web::answer::making::answer",
            "notchwright_web::answer::making::sheet::search_beside",
            "notchwright_web::edge::searcher::ask",
            "notchwright_web::update::making::apply",
            "notchwright_web::update::making::table",
            "notchwright_web::update::making::drawer::hand_over",
            "notchwright_web::update::making::sheet::act",
            "notchwright_web::update::making::sheet::goes_on",
            "notchwright_web::update::making::sled::add",
        ],
    },
    Chunk {
        name: "jobs",
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

/// Divides a module whose functions still have their names into the page and what comes later.
pub(crate) fn divide(whole: &[u8], links: &Links) -> Result<Vec<Part>> {
    divide_into(whole, links, CHUNKS)
}

fn divide_into(whole: &[u8], links: &Links, chunks: &[Chunk]) -> Result<Vec<Part>> {
    let division = Division::new(&parse(whole)?, links, chunks)?;
    let later = |name, home| {
        let bytes = parts::later(parse(whole)?, links, &division, home)?;
        anyhow::Ok(Part { name, bytes })
    };
    let bytes = parts::page(parse(whole)?, links, &division)?;
    let mut parts = vec![
        Part {
            name: "page",
            bytes,
        },
        later(COMMON, Home::Common)?,
    ];
    for (index, chunk) in chunks.iter().enumerate() {
        parts.push(later(chunk.name, Home::Chunk(index))?);
    }
    Ok(parts)
}

/// Whether the page fetches this shipped file only after its first answer.
pub(crate) fn comes_later(file: &str) -> bool {
    let name = file
        .strip_prefix("pkg/")
        .and_then(|name| name.strip_suffix(".wasm"));
    name.is_some_and(|name| name == COMMON || names().contains(&name))
}

/// The module without the names of its functions.
pub(crate) fn without_names(whole: &[u8]) -> Result<Vec<u8>> {
    Ok(parse(whole)?.emit_wasm())
}

/// Reads a module that will be written without names, and without what the linker noted in it.
fn parse(bytes: &[u8]) -> Result<Module> {
    let mut module = ModuleConfig::new()
        .generate_name_section(false)
        .generate_producers_section(false)
        .parse(bytes)?;
    let notes: Vec<_> = module.customs.iter().map(|(id, _)| id).collect();
    for id in notes {
        module.customs.delete(id);
    }
    Ok(module)
}
