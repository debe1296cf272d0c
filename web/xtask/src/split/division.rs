//! Which function goes where.

use std::collections::{BTreeMap, BTreeSet};

use anyhow::{Context, Result, bail};
use walrus::ir::Value;
use walrus::{
    ConstExpr, Element, ElementItems, ElementKind, ExportItem, FunctionId, ImportKind, Module,
    TableId,
};

use super::calls::Calls;
use super::{Chunk, START};

/// A function by its place in the module: ids do not outlive one reading of it.
pub(super) type Place = usize;

/// Where a function is defined.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Home {
    /// What the page fetches first.
    Page,
    /// The chunk of this index.
    Chunk(usize),
    /// Nowhere: only scripts call it.
    Scripts,
}

/// Where every function goes, and what crosses between.
#[derive(Debug)]
pub(super) struct Division {
    pub(super) homes: Vec<Home>,
    /// The page's functions that chunks call.
    pub(super) shared: BTreeSet<Place>,
    /// Chunks' functions that the page or other chunks call, with the slot of the table for each.
    pub(super) slots: BTreeMap<Place, u64>,
    /// Slots there were before.
    pub(super) table_size: u64,
}

impl Division {
    pub(super) fn new(module: &Module, chunks: &[Chunk]) -> Result<Self> {
        let places = places(module);
        let mut calls = Calls::new(module, &places, chunks);
        calls.forget_names(&in_table(module, &places)?);
        calls.mark_wrappers(exported(module, &places, |_| true))?;
        let for_page = exported(module, &places, is_for_page);
        // Only the page is given what the browser's side defines.
        let imports = module
            .imports
            .iter()
            .filter_map(|import| match import.kind {
                ImportKind::Function(function) => places.get(&function).copied(),
                _ => None,
            });
        let roots = for_page.into_iter().chain(in_table(module, &places)?);
        let roots = roots.chain(imports);
        let mut page = calls.reached(roots, |place| calls.mark(place).is_some());
        let chunks: Vec<BTreeSet<Place>> = (0..chunks.len())
            .map(|chunk| {
                let own = Some(Home::Chunk(chunk));
                let roots = (0..calls.len()).filter(|place| calls.mark(*place) == own);
                calls.reached(roots, |place| {
                    page.contains(&place)
                        || calls.mark(place).is_some_and(|_| calls.mark(place) != own)
                })
            })
            .collect();
        // What two chunks need, either may need first.
        for (index, chunk) in chunks.iter().enumerate() {
            let later = chunks.iter().skip(index + 1);
            page.extend(later.flat_map(|other| chunk.intersection(other)));
        }
        let home = |place: Place| match chunks.iter().position(|chunk| chunk.contains(&place)) {
            _ if page.contains(&place) => Home::Page,
            Some(chunk) => Home::Chunk(chunk),
            None => Home::Scripts,
        };
        let homes = (0..calls.len()).map(home).collect();
        Self::crossings(module, &calls, homes)
    }

    fn crossings(module: &Module, calls: &Calls<'_>, homes: Vec<Home>) -> Result<Self> {
        let table_size = module.tables.get(function_table(module)?).initial;
        let mut shared = BTreeSet::new();
        let mut entries = BTreeSet::new();
        for (caller, &from) in homes.iter().enumerate() {
            for &callee in calls.callees(caller) {
                match (from, homes.get(callee).copied()) {
                    (Home::Chunk(_), Some(Home::Page)) => {
                        shared.insert(callee);
                    }
                    (Home::Page, Some(Home::Chunk(_))) => {
                        calls.ensure_gate(caller, callee)?;
                        entries.insert(callee);
                    }
                    // What is no gate is small, and alike in both: the compiler made one of two. Each has it.
                    (Home::Chunk(_), Some(to @ Home::Chunk(_)))
                        if from != to && calls.is_gate(callee) =>
                    {
                        entries.insert(callee);
                    }
                    _ => {}
                }
            }
        }
        let slots = entries.into_iter().zip(table_size..).collect();
        Ok(Self {
            homes,
            shared,
            slots,
            table_size,
        })
    }

    pub(super) fn home(&self, place: Place) -> Home {
        self.homes.get(place).copied().unwrap_or(Home::Scripts)
    }
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

/// The page's own start, and what the glue itself calls: its names have two underscores in a row.
fn is_for_page(export: &str) -> bool {
    export == START || export.contains("__")
}

/// What is called from outside: the start, and those exports that are `wanted`.
fn exported(
    module: &Module,
    places: &BTreeMap<FunctionId, Place>,
    wanted: fn(&str) -> bool,
) -> Vec<Place> {
    let exports = module
        .exports
        .iter()
        .filter_map(|export| match export.item {
            ExportItem::Function(function) if wanted(&export.name) => Some(function),
            _ => None,
        });
    let all = module.start.into_iter().chain(exports);
    all.filter_map(|function| places.get(&function).copied())
        .collect()
}

/// What may be called through a pointer.
fn in_table(module: &Module, places: &BTreeMap<FunctionId, Place>) -> Result<Vec<Place>> {
    let mut found = Vec::new();
    for element in module.elements.iter() {
        let functions = filled(element)?.1.iter();
        found.extend(functions.filter_map(|function| places.get(function)));
    }
    Ok(found)
}
