//! What goes where.

use std::collections::{BTreeMap, BTreeSet};

use anyhow::{Context, Result, bail};
use walrus::ir::Value;
use walrus::{
    ConstExpr, Element, ElementItems, ElementKind, ExportItem, FunctionId, ImportKind, Module,
    TableId,
};

use super::Chunk;
use super::graph::{Graph, Node};
use super::links::{Datum, Links};

/// A function by its place in the module: ids do not outlive one reading of it.
pub(super) type Place = usize;

/// Where a function or a piece of data is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Home {
    /// What the page fetches first.
    Page,
    /// What comes before any chunk: several need it.
    Common,
    /// The chunk of this index.
    Chunk(usize),
    /// Nobody needs it.
    Nowhere,
}

/// Where everything goes, and what crosses between.
#[derive(Debug)]
pub(super) struct Division {
    homes: Vec<Home>,
    functions: usize,
    /// Functions that others than their own part call by name.
    pub(super) shared: BTreeSet<Place>,
    /// Gates that others than their own chunk call, with the slot of the table for each.
    pub(super) slots: BTreeMap<Place, u64>,
    /// Slots there were before.
    pub(super) table_size: u64,
}

impl Division {
    pub(super) fn new(module: &Module, links: &Links, chunks: &[Chunk]) -> Result<Self> {
        let graph = Graph::new(module, links, chunks)?;
        let page = graph.reached(page_roots(module), |node| graph.gate_of(node).is_some());
        let chunks: Vec<BTreeSet<Node>> = (0..chunks.len())
            .map(|chunk| {
                graph.reached(graph.gates(chunk), |node| {
                    page.contains(&node) || graph.gate_of(node).is_some_and(|it| it != chunk)
                })
            })
            .collect();
        let home = |node: Node| {
            let mut own = (0..)
                .zip(&chunks)
                .filter(|(_, chunk)| chunk.contains(&node));
            match (own.next(), own.next()) {
                _ if page.contains(&node) => Home::Page,
                (_, Some(_)) => Home::Common,
                (Some((chunk, _)), None) => Home::Chunk(chunk),
                (None, None) => Home::Nowhere,
            }
        };
        let homes = (0..graph.len()).map(home).collect();
        Self::crossings(module, &graph, homes)
    }

    fn crossings(module: &Module, graph: &Graph, homes: Vec<Home>) -> Result<Self> {
        let table_size = module.tables.get(function_table(module)?).initial;
        let mut division = Self {
            homes,
            functions: graph.functions(),
            shared: BTreeSet::new(),
            slots: BTreeMap::new(),
            table_size,
        };
        for caller in 0..graph.functions() {
            for &callee in graph.callees(caller) {
                let (from, to) = (division.home(caller), division.home(callee));
                match to {
                    _ if from == to || from == Home::Nowhere => {}
                    Home::Chunk(_) if graph.gate_of(callee).is_some() => {
                        let slot = table_size + u64::try_from(division.slots.len())?;
                        division.slots.entry(callee).or_insert(slot);
                    }
                    Home::Page | Home::Common => {
                        division.shared.insert(callee);
                    }
                    Home::Chunk(_) | Home::Nowhere => bail!(
                        "{} calls {}, which may not have come yet",
                        graph.name(caller),
                        graph.name(callee)
                    ),
                }
            }
        }
        Ok(division)
    }

    pub(super) fn home(&self, place: Place) -> Home {
        self.homes.get(place).copied().unwrap_or(Home::Nowhere)
    }

    pub(super) fn home_of_datum(&self, datum: Datum) -> Home {
        self.home(self.functions + datum)
    }
}

/// What the glue calls, and what the browser defines: only the page is given that.
fn page_roots(module: &Module) -> Vec<Place> {
    let places = places(module);
    let exports = module
        .exports
        .iter()
        .filter_map(|export| match export.item {
            ExportItem::Function(function) => Some(function),
            _ => None,
        });
    let imports = module
        .imports
        .iter()
        .filter_map(|import| match import.kind {
            ImportKind::Function(function) => Some(function),
            _ => None,
        });
    let all = module.start.into_iter().chain(exports).chain(imports);
    all.filter_map(|function| places.get(&function).copied())
        .collect()
}

/// Every function, in the order of the file.
pub(super) fn functions(module: &Module) -> Vec<FunctionId> {
    module.funcs.iter().map(walrus::Function::id).collect()
}

/// Every function's place.
pub(super) fn places(module: &Module) -> BTreeMap<FunctionId, Place> {
    functions(module).into_iter().zip(0..).collect()
}

/// The table through which functions are called.
pub(super) fn function_table(module: &Module) -> Result<TableId> {
    module
        .tables
        .main_function_table()?
        .context("the module has no table of functions")
}

/// Where the table is filled with what.
pub(super) fn filled(element: &Element) -> Result<(u64, &[FunctionId])> {
    match (&element.kind, &element.items) {
        (
            ElementKind::Active {
                offset: ConstExpr::Value(Value::I32(offset)),
                ..
            },
            ElementItems::Functions(functions),
        ) => Ok((u64::try_from(*offset)?, functions)),
        other => bail!("a table is filled in an unexpected way: {other:?}"),
    }
}
