//! Who needs what: functions and data, by calls and by pointers.

use std::collections::{BTreeMap, BTreeSet};

use anyhow::{Result, ensure};
use rustc_demangle::demangle;
use walrus::ir::{Const, Load, LoadSimd, Store, Value, Visitor, dfs_in_order};
use walrus::{FunctionId, FunctionKind, Module};

use super::Chunk;
use super::division::{Place, places};
use super::links::{Links, Targets};

/// A function by its place in the module, or a piece of data: these come after all functions.
pub(super) type Node = usize;

/// Who needs what.
pub(super) struct Graph {
    names: Vec<String>,
    callees: Vec<Vec<Place>>,
    /// What each node points at.
    pointees: Vec<Vec<Node>>,
    /// The chunk that a gate belongs to.
    gates: BTreeMap<Place, usize>,
}

impl Graph {
    pub(super) fn new(module: &Module, links: &Links, chunks: &[Chunk]) -> Result<Self> {
        let places = places(module);
        let bodies: Vec<Body<'_>> = module.funcs.iter().map(|it| body(it, &places)).collect();
        let names = module.funcs.iter().map(|it| it.name.clone());
        let names: Vec<String> = names.map(Option::unwrap_or_default).collect();
        for (name, body) in names.iter().zip(&bodies) {
            let is_known = links.of_function(name).is_some();
            let may_point = body.numbers.iter().any(|it| links.may_point(*it));
            ensure!(
                is_known || !may_point,
                "{name} is not the linker's, and may point at data"
            );
        }
        let pointees = pointees(&names, links);
        let gates = gates(&names, chunks)?;
        Ok(Self {
            callees: bodies.into_iter().map(|body| body.callees).collect(),
            names,
            pointees,
            gates,
        })
    }

    /// How many functions there are.
    pub(super) fn functions(&self) -> usize {
        self.names.len()
    }

    /// How many nodes there are.
    pub(super) fn len(&self) -> usize {
        self.pointees.len()
    }

    /// The functions that one calls by name.
    pub(super) fn callees(&self, place: Place) -> &[Place] {
        self.callees.get(place).map_or(&[], Vec::as_slice)
    }

    /// The chunk that this function is the gate of.
    pub(super) fn gate_of(&self, place: Place) -> Option<usize> {
        self.gates.get(&place).copied()
    }

    /// The gates of one chunk.
    pub(super) fn gates(&self, chunk: usize) -> impl Iterator<Item = Place> {
        let gates = self.gates.iter();
        gates.filter_map(move |(place, of)| (*of == chunk).then_some(*place))
    }

    pub(super) fn name(&self, place: Place) -> String {
        self.names
            .get(place)
            .map_or_else(String::new, |name| path(name))
    }

    /// All that `roots` need, themselves included, without what `is_closed`.
    pub(super) fn reached(
        &self,
        roots: impl IntoIterator<Item = Node>,
        is_closed: impl Fn(Node) -> bool,
    ) -> BTreeSet<Node> {
        let mut reached = BTreeSet::new();
        let mut open: Vec<Node> = roots.into_iter().collect();
        while let Some(node) = open.pop() {
            if !is_closed(node) && reached.insert(node) {
                open.extend(self.callees(node));
                open.extend(self.pointees.get(node).into_iter().flatten());
            }
        }
        reached
    }
}

/// A function's path in the sources, without the compiler's hash.
fn path(name: &str) -> String {
    format!("{:#}", demangle(name))
}

fn gates(names: &[String], chunks: &[Chunk]) -> Result<BTreeMap<Place, usize>> {
    let paths: Vec<String> = names.iter().map(|name| path(name)).collect();
    let mut gates = BTreeMap::new();
    for (index, chunk) in chunks.iter().enumerate() {
        for gate in chunk.gates {
            let named = paths.iter().position(|path| path == gate);
            ensure!(named.is_some(), "there is no function {gate}");
            gates.extend(named.map(|place| (place, index)));
        }
    }
    Ok(gates)
}

fn pointees(names: &[String], links: &Links) -> Vec<Vec<Node>> {
    let mut by_name: BTreeMap<&str, Vec<Place>> = BTreeMap::new();
    for (place, name) in names.iter().enumerate() {
        by_name.entry(name).or_default().push(place);
    }
    let nodes = |targets: &Targets| {
        let data = targets.data.iter().map(|datum| names.len() + datum);
        let functions = targets.functions.iter();
        let functions = functions.filter_map(|name| by_name.get(name.as_str()));
        data.chain(functions.flatten().copied()).collect()
    };
    let of_functions = names.iter().map(|name| links.of_function(name));
    let of_data = (0..links.data.len()).map(|datum| links.of_datum(datum));
    let all = of_functions.chain(of_data);
    all.map(|targets| targets.map(nodes).unwrap_or_default())
        .collect()
}

/// What is in a function.
struct Body<'a> {
    places: &'a BTreeMap<FunctionId, Place>,
    callees: Vec<Place>,
    /// What may be addresses.
    numbers: Vec<u64>,
}

fn body<'a>(function: &walrus::Function, places: &'a BTreeMap<FunctionId, Place>) -> Body<'a> {
    let mut body = Body {
        places,
        callees: Vec::new(),
        numbers: Vec::new(),
    };
    if let FunctionKind::Local(local) = &function.kind {
        dfs_in_order(&mut body, local, local.entry_block());
    }
    body
}

impl<'instr> Visitor<'instr> for Body<'_> {
    fn visit_function_id(&mut self, function: &FunctionId) {
        self.callees.extend(self.places.get(function));
    }

    fn visit_const(&mut self, constant: &Const) {
        if let Value::I32(number) = constant.value {
            self.numbers.push(u64::from(number.cast_unsigned()));
        }
    }

    fn visit_load(&mut self, load: &Load) {
        self.numbers.push(load.arg.offset);
    }

    fn visit_load_simd(&mut self, load: &LoadSimd) {
        self.numbers.push(load.arg.offset);
    }

    fn visit_store(&mut self, store: &Store) {
        self.numbers.push(store.arg.offset);
    }
}
