//! What the linker knew: which data and which functions each function and each piece of data points at.
//!
//! A call names its function. An address is only a number, in code as in data; of what it was the address, the
//! linker notes when asked (`--emit-relocs`; WebAssembly tool conventions, "Object File Linking").

use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

use anyhow::{Context, Result, ensure};

use super::linked::{At, Linked};

/// A piece of data, by its place among all in the order of their addresses.
pub(super) type Datum = usize;

/// What something points at.
#[derive(Debug, Default)]
pub(super) struct Targets {
    pub(super) data: BTreeSet<Datum>,
    /// By name.
    pub(super) functions: BTreeSet<String>,
}

/// What points at what.
#[derive(Debug, Default)]
pub(crate) struct Links {
    /// Where each piece of data is in memory, in order. None overlaps another.
    pub(super) data: Vec<Range<u64>>,
    pub(super) by_data: Vec<Targets>,
    /// By name: functions of one name are taken together.
    pub(super) by_function: BTreeMap<String, Targets>,
}

impl Links {
    /// Reads a module that was linked with `--emit-relocs`, and has names.
    pub(crate) fn read(linked: &[u8]) -> Result<Self> {
        let linked = Linked::read(linked)?;
        let pointers = linked.pointers()?;
        ensure!(
            !pointers.is_empty(),
            "the module was linked without --emit-relocs"
        );
        let data = joined(linked.data());
        let mut links = Self {
            by_data: data.iter().map(|_| Targets::default()).collect(),
            by_function: linked
                .names()
                .map(|name| (name.to_owned(), Targets::default()))
                .collect(),
            data,
        };
        for (from, to) in pointers {
            links.note(&from, to)?;
        }
        Ok(links)
    }

    fn note(&mut self, from: &At, to: At) -> Result<()> {
        let datum = match to {
            At::Data(address) => self.at(address),
            At::Function(_) => None,
        };
        let targets = match from {
            At::Function(name) => self.by_function.get_mut(name),
            At::Data(address) => self.at(*address).and_then(|it| self.by_data.get_mut(it)),
        };
        let targets = targets.with_context(|| format!("a pointer in nothing known: {from:?}"))?;
        targets.data.extend(datum);
        if let At::Function(name) = to {
            targets.functions.insert(name);
        }
        Ok(())
    }

    /// What a function points at: nothing known where the linker did not write it.
    pub(super) fn of_function(&self, name: &str) -> Option<&Targets> {
        self.by_function.get(name)
    }

    /// What a piece of data points at.
    pub(super) fn of_datum(&self, datum: Datum) -> Option<&Targets> {
        self.by_data.get(datum)
    }

    /// Whether a number may be the address of data.
    pub(super) fn may_point(&self, number: u64) -> bool {
        let ends = self.data.first().zip(self.data.last());
        ends.is_some_and(|(first, last)| (first.start..last.end).contains(&number))
    }

    /// The piece of data that holds this address.
    fn at(&self, address: u64) -> Option<Datum> {
        let next = self.data.partition_point(|range| range.start <= address);
        let datum = next.checked_sub(1)?;
        let range = self.data.get(datum)?;
        range.contains(&address).then_some(datum)
    }
}

/// In order of their addresses, with what overlaps as one: the linker stores alike data once.
fn joined(mut ranges: Vec<Range<u64>>) -> Vec<Range<u64>> {
    ranges.sort_by_key(|range| (range.start, range.end));
    let mut joined: Vec<Range<u64>> = Vec::new();
    for range in ranges {
        match joined.last_mut() {
            Some(last) if range.start < last.end => last.end = last.end.max(range.end),
            _ => joined.push(range),
        }
    }
    joined
}
