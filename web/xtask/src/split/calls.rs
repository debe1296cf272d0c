//! Who calls whom, and what the functions' names say of where they belong.

use std::collections::{BTreeMap, BTreeSet};

use anyhow::{Result, ensure};
use walrus::ir::{Visitor, dfs_in_order};
use walrus::{FunctionId, FunctionKind, Module};

use super::Chunk;
use super::division::{Home, Place};

/// What a function's name says of its home: nothing for most.
fn marked(name: &str, chunks: &[Chunk]) -> Option<Home> {
    // `<path::Type as Trait>::method` belongs to its type.
    let name = name.trim_start_matches(['<', '&']);
    let begins = |paths: &[&str]| paths.iter().any(|path| name.starts_with(path));
    let chunk = chunks.iter().position(|chunk| begins(chunk.paths))?;
    Some(Home::Chunk(chunk))
}

/// Whatever is called before any chunk has come is called by one of these, though only through a pointer.
const PAGE: [&str; 3] = [
    "notchwright_web::app::",
    "notchwright_web::update::<impl notchwright_web::model::Model>::",
    "notchwright_web::view::view::",
];

/// Whether a function is called before any chunk has come.
fn comes_first(name: &str) -> bool {
    let name = name.trim_start_matches(['<', '&']);
    PAGE.iter().any(|path| name.starts_with(path))
}

/// Whether a function has this path; the compiler puts a hash behind it.
fn is_named(name: &str, path: &str) -> bool {
    let rest = name.strip_prefix(path);
    rest.is_some_and(|rest| rest.is_empty() || rest.starts_with("::h"))
}

struct Callees<'a> {
    places: &'a BTreeMap<FunctionId, Place>,
    found: Vec<Place>,
}

impl<'instr> Visitor<'instr> for Callees<'_> {
    fn visit_function_id(&mut self, function: &FunctionId) {
        self.found.extend(self.places.get(function));
    }
}

/// Who calls whom.
pub(super) struct Calls<'a> {
    chunks: &'a [Chunk],
    callees: Vec<Vec<Place>>,
    names: Vec<String>,
    marks: Vec<Option<Home>>,
}

impl<'a> Calls<'a> {
    pub(super) fn new(
        module: &Module,
        places: &BTreeMap<FunctionId, Place>,
        chunks: &'a [Chunk],
    ) -> Self {
        let mut callees = Vec::new();
        let mut names = Vec::new();
        let mut marks = Vec::new();
        for function in module.funcs.iter() {
            let found = Vec::new();
            let mut visitor = Callees { places, found };
            if let FunctionKind::Local(local) = &function.kind {
                dfs_in_order(&mut visitor, local, local.entry_block());
            }
            callees.push(visitor.found);
            let name = function.name.clone().unwrap_or_default();
            marks.push(marked(&name, chunks));
            names.push(name);
        }
        Self {
            chunks,
            callees,
            names,
            marks,
        }
    }

    /// How many functions there are.
    pub(super) fn len(&self) -> usize {
        self.names.len()
    }

    /// What is called through a pointer says nothing by its name: the compiler makes one of functions that are
    /// alike, under the name of any of them, and the page may call it too.
    pub(super) fn forget_names(&mut self, in_table: &[Place]) {
        for place in in_table {
            if let Some(mark) = self.marks.get_mut(*place) {
                *mark = None;
            }
        }
    }

    /// What is only ever called through a pointer, and calls into a chunk past its gates, belongs there
    /// too: it is a closure of the chunk's, wrapped in something of a general name.
    pub(super) fn mark_wrappers(&mut self, exported: Vec<Place>) -> Result<()> {
        let named = self.reached(exported, |place| self.mark(place).is_some());
        loop {
            let others = (0..self.len()).filter(|place| !named.contains(place));
            let wrapper = others
                .filter(|place| self.mark(*place).is_none())
                .find_map(|place| Some((place, self.wraps(place)?)));
            let Some((place, (home, callee))) = wrapper else {
                return Ok(());
            };
            if comes_first(self.name(place)) {
                self.ensure_gate(place, callee)?;
            }
            if let Some(mark) = self.marks.get_mut(place) {
                *mark = Some(home);
            }
        }
    }

    /// The chunk that a function calls into past its gates, and what it calls there.
    fn wraps(&self, place: Place) -> Option<(Home, Place)> {
        let inside = self.callees(place).iter();
        inside
            .filter(|callee| !self.is_gate(**callee))
            .find_map(|callee| Some((self.mark(*callee)?, *callee)))
    }

    /// Whether others may call it.
    pub(super) fn is_gate(&self, place: Place) -> bool {
        let mut gates = self.chunks.iter().flat_map(|chunk| chunk.gates);
        gates.any(|gate| is_named(self.name(place), gate))
    }

    fn name(&self, place: Place) -> &str {
        self.names.get(place).map_or("?", String::as_str)
    }

    /// A call into a chunk that has not come would stop the page: only its gates wait for it.
    pub(super) fn ensure_gate(&self, caller: Place, callee: Place) -> Result<()> {
        ensure!(
            self.is_gate(callee),
            "{} calls {}, which may not have come yet",
            self.name(caller),
            self.name(callee)
        );
        Ok(())
    }

    /// Where a function's name, or what it wraps, says that it belongs: nowhere for most.
    pub(super) fn mark(&self, place: Place) -> Option<Home> {
        self.marks.get(place).copied().flatten()
    }

    /// The functions that one calls by name.
    pub(super) fn callees(&self, place: Place) -> &[Place] {
        self.callees.get(place).map_or(&[], Vec::as_slice)
    }

    /// All that `roots` reach, themselves included, without what `is_closed`.
    pub(super) fn reached(
        &self,
        roots: impl IntoIterator<Item = Place>,
        is_closed: impl Fn(Place) -> bool,
    ) -> BTreeSet<Place> {
        let mut reached = BTreeSet::new();
        let mut open: Vec<Place> = roots.into_iter().collect();
        while let Some(place) = open.pop() {
            if !is_closed(place) && reached.insert(place) {
                open.extend(self.callees(place));
            }
        }
        reached
    }
}
