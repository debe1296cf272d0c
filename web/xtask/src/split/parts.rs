//! The page and its chunks, each cut out of the whole module.

use anyhow::{Context, Result};
use walrus::ir::Value;
use walrus::{
    ConstExpr, ElementItems, ElementKind, ExportItem, FunctionBuilder, FunctionId, FunctionKind,
    GlobalKind, ImportKind, ImportedFunction, Module, TableId,
};

use super::data;
use super::division::{Division, Home, Place, filled, function_table, functions, places};
use super::links::Links;

/// The names under which what comes later imports what has come.
const PAGE: &str = "page";
const COMMON: &str = super::COMMON;

/// What the page fetches first: calls into chunks go through the table, and what chunks need is
/// exported.
pub(super) fn page(mut module: Module, links: &Links, division: &Division) -> Result<Vec<u8>> {
    let functions = functions(&module);
    let table = function_table(&module)?;
    refill(&mut module, division, table, Home::Page)?;
    grow(&mut module, division, table)?;
    for (&place, &slot) in &division.slots {
        let function = at(&functions, place)?;
        call_through(&mut module, function, table, slot)?;
    }
    data::keep_for_page(&mut module, links, division)?;
    for &place in &division.shared {
        if division.home(place) == Home::Page {
            let function = at(&functions, place)?;
            module.exports.add(&function_name(place), function);
        }
    }
    for (name, item) in shared_items(&module) {
        module.exports.add(&name, item);
    }
    walrus::passes::gc::run(&mut module);
    Ok(module.emit_wasm())
}

/// What comes later: all but its own functions is imported.
pub(super) fn later(
    mut module: Module,
    links: &Links,
    division: &Division,
    own: Home,
) -> Result<Vec<u8>> {
    let functions = functions(&module);
    let table = function_table(&module)?;
    refill(&mut module, division, table, own)?;
    grow(&mut module, division, table)?;
    for (&place, &slot) in &division.slots {
        let function = at(&functions, place)?;
        if division.home(place) == own {
            fill(&mut module, table, slot, vec![function])?;
        } else {
            call_through(&mut module, function, table, slot)?;
        }
    }
    data::keep_for_later(&mut module, links, division, own)?;
    for id in ids(module.exports.iter().map(walrus::Export::id)) {
        module.exports.delete(id);
    }
    module.start = None;
    import_shared_items(&mut module);
    for &place in &division.shared {
        let function = at(&functions, place)?;
        match division.home(place) {
            home if home == own => {
                module.exports.add(&function_name(place), function);
            }
            Home::Common => import_function(&mut module, function, COMMON, place),
            _ => import_function(&mut module, function, PAGE, place),
        }
    }
    walrus::passes::gc::run(&mut module);
    Ok(module.emit_wasm())
}

fn at(functions: &[FunctionId], place: Place) -> Result<FunctionId> {
    functions
        .get(place)
        .copied()
        .context("the module changed while it was divided")
}

fn ids<T>(ids: impl Iterator<Item = T>) -> Vec<T> {
    ids.collect()
}

/// A short name: a page has hundreds.
fn function_name(place: Place) -> String {
    format!("f{place}")
}

/// Memory, tables and globals, with the names that they have on both sides.
fn shared_items(module: &Module) -> Vec<(String, ExportItem)> {
    let tables = module.tables.iter().map(|it| ExportItem::Table(it.id()));
    let memories = module.memories.iter().map(|it| ExportItem::Memory(it.id()));
    let globals = module.globals.iter().map(|it| ExportItem::Global(it.id()));
    let all = tables.chain(memories).chain(globals);
    all.enumerate()
        .map(|(index, item)| (format!("s{index}"), item))
        .collect()
}

fn import_shared_items(module: &mut Module) {
    for (name, item) in shared_items(module) {
        match item {
            ExportItem::Table(id) => {
                let import = module.imports.add(PAGE, &name, ImportKind::Table(id));
                module.tables.get_mut(id).import = Some(import);
            }
            ExportItem::Memory(id) => {
                let import = module.imports.add(PAGE, &name, ImportKind::Memory(id));
                module.memories.get_mut(id).import = Some(import);
            }
            ExportItem::Global(id) => {
                let import = module.imports.add(PAGE, &name, ImportKind::Global(id));
                module.globals.get_mut(id).kind = GlobalKind::Import(import);
            }
            ExportItem::Function(_) | ExportItem::Tag(_) => {}
        }
    }
}

fn import_function(module: &mut Module, function: FunctionId, from: &str, place: Place) {
    let name = function_name(place);
    let ty = module.funcs.get(function).ty();
    if let FunctionKind::Import(earlier) = &module.funcs.get(function).kind {
        let earlier = earlier.import;
        module.imports.delete(earlier);
    }
    let import = module
        .imports
        .add(from, &name, ImportKind::Function(function));
    module.funcs.get_mut(function).kind = FunctionKind::Import(ImportedFunction { import, ty });
}

/// Makes `function` hand its arguments on to whatever is in the slot.
fn call_through(
    module: &mut Module,
    function: FunctionId,
    table: TableId,
    slot: u64,
) -> Result<()> {
    let ty = module.funcs.get(function).ty();
    let (params, results) = (
        module.types.params(ty).to_vec(),
        module.types.results(ty).to_vec(),
    );
    let args: Vec<_> = params.iter().map(|it| module.locals.add(*it)).collect();
    let mut builder = FunctionBuilder::new(&mut module.types, &params, &results);
    let mut body = builder.func_body();
    for arg in &args {
        body.local_get(*arg);
    }
    body.i32_const(i32::try_from(slot)?)
        .call_indirect(ty, table);
    module.funcs.get_mut(function).kind = FunctionKind::Local(builder.local_func(args));
    Ok(())
}

/// Makes room in the table for the slots that calls into chunks go through.
fn grow(module: &mut Module, division: &Division, table: TableId) -> Result<()> {
    let size = division.table_size + u64::try_from(division.slots.len())?;
    let table = module.tables.get_mut(table);
    table.initial = size;
    table.maximum = table.maximum.map(|maximum| maximum.max(size));
    Ok(())
}

/// Fills the table with the functions of `home` only, each in the slot it had.
fn refill(module: &mut Module, division: &Division, table: TableId, home: Home) -> Result<()> {
    let places = places(module);
    let mut runs: Vec<(u64, Vec<FunctionId>)> = Vec::new();
    for element in module.elements.iter() {
        let (offset, functions) = filled(element)?;
        let mut is_open = false;
        for (slot, function) in (offset..).zip(functions) {
            let is_own = places
                .get(function)
                .is_some_and(|place| division.home(*place) == home);
            match runs.last_mut() {
                Some((_, run)) if is_own && is_open => run.push(*function),
                _ if is_own => runs.push((slot, vec![*function])),
                _ => {}
            }
            is_open = is_own;
        }
    }
    for id in ids(module.elements.iter().map(walrus::Element::id)) {
        module.elements.delete(id);
    }
    module.tables.get_mut(table).elem_segments.clear();
    for (slot, run) in runs {
        fill(module, table, slot, run)?;
    }
    Ok(())
}

fn fill(module: &mut Module, table: TableId, slot: u64, functions: Vec<FunctionId>) -> Result<()> {
    let offset = ConstExpr::Value(Value::I32(i32::try_from(slot)?));
    let kind = ElementKind::Active { table, offset };
    let element = module
        .elements
        .add(kind, ElementItems::Functions(functions));
    module.tables.get_mut(table).elem_segments.insert(element);
    Ok(())
}
