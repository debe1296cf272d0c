//! A module as the linker wrote it, read as far as its pointers need.

use std::collections::BTreeMap;
use std::ops::Range;

use anyhow::{Context, Result, bail};
use wasmparser::{
    CustomSectionReader, Data, DataKind, DefinedDataSymbol, FunctionBody, KnownCustom, Linking,
    Name, Operator, Parser, Payload, RelocSectionReader, RelocationEntry, RelocationType,
    SymbolFlags, SymbolInfo, TypeRef,
};

/// Where something is whose address is known.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum At {
    /// A function, by its name.
    Function(String),
    /// Data, by their address in memory.
    Data(u64),
}

/// A section by its index, and where it begins in the file.
type Section = Option<(u32, usize)>;

#[derive(Default)]
pub(super) struct Linked<'a> {
    code: Section,
    data: Section,
    imported: u32,
    /// Where each function's body is in the file.
    bodies: Vec<Range<usize>>,
    /// Where each segment is in the file, and the address where it begins in memory.
    segments: Vec<(Range<usize>, u64)>,
    names: BTreeMap<u32, String>,
    symbols: Vec<SymbolInfo<'a>>,
    relocations: Vec<RelocSectionReader<'a>>,
}

impl<'a> Linked<'a> {
    pub(super) fn read(file: &'a [u8]) -> Result<Self> {
        let mut linked = Self::default();
        let mut index = 0;
        for payload in Parser::new(0).parse_all(file) {
            let payload = payload?;
            let is_section = payload.as_section().is_some();
            match payload {
                Payload::ImportSection(imports) => {
                    for import in imports.into_imports() {
                        let is_function = matches!(import?.ty, TypeRef::Func(_));
                        linked.imported += u32::from(is_function);
                    }
                }
                Payload::CodeSectionStart { range, .. } => linked.code = Some((index, range.start)),
                Payload::CodeSectionEntry(body) => linked.bodies.push(FunctionBody::range(&body)),
                Payload::DataSection(data) => {
                    linked.data = Some((index, data.range().start));
                    for segment in data {
                        linked.segments.push(placed(&segment?)?);
                    }
                }
                Payload::CustomSection(section) => linked.note(&section)?,
                _ => {}
            }
            index += u32::from(is_section);
        }
        Ok(linked)
    }

    fn note(&mut self, section: &CustomSectionReader<'a>) -> Result<()> {
        match section.as_known() {
            KnownCustom::Name(names) => {
                for part in names {
                    if let Name::Function(functions) = part? {
                        for named in functions {
                            let named = named?;
                            self.names.insert(named.index, named.name.to_owned());
                        }
                    }
                }
            }
            KnownCustom::Linking(linking) => {
                for part in linking.subsections() {
                    if let Linking::SymbolTable(symbols) = part? {
                        self.symbols = symbols.into_iter().collect::<Result<_, _>>()?;
                    }
                }
            }
            KnownCustom::Reloc(relocations) => self.relocations.push(relocations),
            _ => {}
        }
        Ok(())
    }

    /// The names of all functions.
    pub(super) fn names(&self) -> impl Iterator<Item = &str> {
        self.names.values().map(String::as_str)
    }

    /// Where each named piece of data is in memory, in any order.
    pub(super) fn data(&self) -> Vec<Range<u64>> {
        let symbols = self.symbols.iter().filter_map(defined);
        let ranges = symbols.filter_map(|symbol| {
            let start = self.address(symbol)?;
            (symbol.size > 0).then(|| start..start + u64::from(symbol.size))
        });
        ranges.collect()
    }

    /// All pointers that the linker wrote: who has one, and to what.
    pub(super) fn pointers(&self) -> Result<Vec<(At, At)>> {
        let mut pointers = Vec::new();
        for section in &self.relocations {
            for entry in section.entries() {
                let entry = entry?;
                if let Some(from) = self.holder(section.section_index(), &entry)? {
                    pointers.extend(self.target(&entry)?.map(|to| (from, to)));
                }
            }
        }
        Ok(pointers)
    }

    /// Who has this pointer: nobody where the section is none of the program's.
    fn holder(&self, section: u32, entry: &RelocationEntry) -> Result<Option<At>> {
        let offset = usize::try_from(entry.offset)?;
        let place = |it: Section| it.filter(|it| it.0 == section).map(|it| it.1 + offset);
        if let Some(place) = place(self.code) {
            let body = self.bodies.partition_point(|body| body.end <= place);
            let index = self.imported + u32::try_from(body)?;
            return Ok(Some(At::Function(self.name(index)?)));
        }
        let Some(place) = place(self.data) else {
            return Ok(None);
        };
        let mut segments = self.segments.iter();
        let (bytes, start) = segments
            .find(|(bytes, _)| bytes.contains(&place))
            .context("a pointer is in no segment")?;
        Ok(Some(At::Data(start + u64::try_from(place - bytes.start)?)))
    }

    /// What is pointed at: nothing that counts where it has no bytes in the file.
    fn target(&self, entry: &RelocationEntry) -> Result<Option<At>> {
        let symbol = self.symbols.get(usize::try_from(entry.index)?);
        match (entry.ty, symbol) {
            (
                RelocationType::MemoryAddrLeb
                | RelocationType::MemoryAddrSleb
                | RelocationType::MemoryAddrI32,
                Some(symbol),
            ) => Ok(defined(symbol)
                .and_then(|it| self.address(it))
                .map(At::Data)),
            (
                RelocationType::TableIndexSleb | RelocationType::TableIndexI32,
                Some(SymbolInfo::Func { index, .. }),
            ) => Ok(Some(At::Function(self.name(*index)?))),
            // Calls and types are told from the code itself.
            (
                RelocationType::FunctionIndexLeb
                | RelocationType::TypeIndexLeb
                | RelocationType::GlobalIndexLeb
                | RelocationType::TableNumberLeb,
                _,
            ) => Ok(None),
            (other, _) => bail!("the linker notes a pointer in an unexpected way: {other:?}"),
        }
    }

    fn name(&self, function: u32) -> Result<String> {
        let name = self.names.get(&function);
        name.cloned().context("a function has no name")
    }

    /// Nothing for what is only zeros: it comes after all segments of the file.
    fn address(&self, symbol: &DefinedDataSymbol) -> Option<u64> {
        let segment = self.segments.get(usize::try_from(symbol.index).ok()?);
        segment.map(|(_, start)| start + u64::from(symbol.offset))
    }
}

/// Where a data symbol is, if the linker has not made it up.
fn defined<'s>(symbol: &'s SymbolInfo<'_>) -> Option<&'s DefinedDataSymbol> {
    match symbol {
        SymbolInfo::Data { flags, symbol, .. } if !flags.contains(SymbolFlags::ABSOLUTE) => {
            symbol.as_ref()
        }
        _ => None,
    }
}

/// Where a segment's bytes are in the file, and the address of the first.
fn placed(segment: &Data<'_>) -> Result<(Range<usize>, u64)> {
    let DataKind::Active { offset_expr, .. } = &segment.kind else {
        bail!("a segment is placed in an unexpected way")
    };
    let Operator::I32Const { value } = offset_expr.get_operators_reader().read()? else {
        bail!("a segment begins at an unexpected place")
    };
    let end = segment.range.end;
    let start = end - segment.data.len();
    Ok((start..end, u64::from(value.cast_unsigned())))
}
