//! The memory's first contents: each part brings what only it needs.

use std::ops::Range;

use anyhow::{Context, Result, bail};
use walrus::ir::Value;
use walrus::{ConstExpr, DataKind, MemoryId, Module};

use super::division::{Division, Home};
use super::links::Links;

/// No alignment leaves this many bytes empty between two pieces of data.
const GAP: u64 = 16;

/// What the memory holds from an address on.
struct Segment {
    memory: MemoryId,
    start: u64,
    bytes: Vec<u8>,
}

/// Blanks what the page does not need. What has no name stays.
pub(super) fn keep_for_page(module: &mut Module, links: &Links, division: &Division) -> Result<()> {
    let others = ranges(links, |datum| division.home_of_datum(datum) != Home::Page);
    let segments: Vec<_> = module.data.iter().map(walrus::Data::id).collect();
    for id in segments {
        let data = module.data.get_mut(id);
        let (_, start) = placed(&data.kind)?;
        for range in &others {
            let place = within(range, start, data.value.len())?;
            let bytes = data.value.get_mut(place);
            bytes.context("no such bytes")?.fill(0);
        }
    }
    Ok(())
}

/// Leaves only what a later part needs and nobody else has.
pub(super) fn keep_for_later(
    module: &mut Module,
    links: &Links,
    division: &Division,
    own: Home,
) -> Result<()> {
    let own = ranges(links, |datum| division.home_of_datum(datum) == own);
    for Segment {
        memory,
        start,
        bytes,
    } in taken(module)?
    {
        for range in &own {
            let place = within(range, start, bytes.len())?;
            let first = start + u64::try_from(place.start)?;
            let value = bytes.get(place).context("no such bytes")?.to_vec();
            if !value.is_empty() {
                fill(module, memory, first, value)?;
            }
        }
    }
    Ok(())
}

fn fill(module: &mut Module, memory: MemoryId, start: u64, value: Vec<u8>) -> Result<()> {
    let offset = ConstExpr::Value(Value::I32(i32::try_from(start)?));
    let data = module.data.add(DataKind::Active { memory, offset }, value);
    module.memories.get_mut(memory).data_segments.insert(data);
    Ok(())
}

/// All segments, taken out of the module.
fn taken(module: &mut Module) -> Result<Vec<Segment>> {
    let ids: Vec<_> = module.data.iter().map(walrus::Data::id).collect();
    let mut segments = Vec::new();
    for id in ids {
        let data = module.data.get_mut(id);
        let (memory, start) = placed(&data.kind)?;
        let bytes = std::mem::take(&mut data.value);
        segments.push(Segment {
            memory,
            start,
            bytes,
        });
        module.data.delete(id);
        module.memories.get_mut(memory).data_segments.remove(&id);
    }
    Ok(segments)
}

/// Where the data that are wanted lie, neighbours as one.
fn ranges(links: &Links, is_wanted: impl Fn(usize) -> bool) -> Vec<Range<u64>> {
    let mut ranges: Vec<Range<u64>> = Vec::new();
    let mut was_wanted = false;
    for (datum, range) in links.data.iter().enumerate() {
        let is_wanted = is_wanted(datum);
        match ranges.last_mut() {
            Some(last) if is_wanted && was_wanted && range.start - last.end < GAP => {
                last.end = range.end;
            }
            _ if is_wanted => ranges.push(range.clone()),
            _ => {}
        }
        was_wanted = is_wanted;
    }
    ranges
}

/// As much of a range as is in a segment, by its place there.
fn within(range: &Range<u64>, start: u64, len: usize) -> Result<Range<usize>> {
    let end = start + u64::try_from(len)?;
    let place = |address: u64| usize::try_from(address.clamp(start, end) - start);
    Ok(place(range.start)?..place(range.end)?)
}

/// The memory that a segment fills, and from where on.
fn placed(kind: &DataKind) -> Result<(MemoryId, u64)> {
    match kind {
        DataKind::Active {
            memory,
            offset: ConstExpr::Value(Value::I32(offset)),
        } => Ok((*memory, u64::from(offset.cast_unsigned()))),
        other => bail!("memory is filled in an unexpected way: {other:?}"),
    }
}
