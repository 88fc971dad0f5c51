//! Which constants only some functions need, as the linker tells with `--emit-relocs`.
//!
//! The linker leaves a list of its symbols and of all places where it put an address
//! (WebAssembly tool conventions, Linking.md: `linking`, `reloc.CODE`, `reloc.DATA`), so nothing
//! is guessed from what a number looks like. The bindings generator keeps the memory as it is,
//! and the functions' names.

use crate::module::{I32_CONST, Reader, sections};
use rustc_demangle::demangle;
use std::collections::{BTreeMap, BTreeSet};
use std::ops::Range;

/// The segment that nothing writes to.
const CONSTANTS: &[u8] = b".rodata";

mod section {
    pub const IMPORT: u8 = 2;
    pub const CODE: u8 = 10;
    pub const DATA: u8 = 11;
}

/// A thing with an address: its segment and where it lies there.
#[derive(Clone, Debug)]
struct Symbol {
    segment: usize,
    place: Range<usize>,
}

/// The linker's program as far as its constants go.
#[derive(Default)]
struct Linked {
    names: BTreeMap<usize, String>,
    /// The number of the segment of constants.
    constants: Option<usize>,
    imports: usize,
    /// Where in its section each function lies, in order.
    functions: Vec<Range<usize>>,
    /// Where in its section each segment lies.
    segments: Vec<Range<usize>>,
    /// By their numbers; what is no data has none.
    symbols: Vec<Option<Symbol>>,
    /// Addresses: where in the section, and of which symbol.
    in_code: Vec<(usize, usize)>,
    in_data: Vec<(usize, usize)>,
}

/// The number of the segment of constants and the parts of it that no function needs but those
/// told by their names; `None` where the linker told too little.
pub fn only_of(linked: &[u8], goes: &dyn Fn(&str) -> bool) -> Option<(usize, Vec<Range<usize>>)> {
    let linked = Linked::read(linked)?;
    let constants = linked.constants?;
    let things = linked.things(constants);
    let needed = linked.needed(constants, &things, goes)?;
    let spare = things
        .into_iter()
        .enumerate()
        .filter(|(at, _)| !needed.contains(at));
    Some((constants, spare.map(|(_, place)| place).collect()))
}

impl Linked {
    fn read(bytes: &[u8]) -> Option<Self> {
        let mut linked = Self::default();
        for (id, section) in sections(bytes)? {
            let mut reader = Reader(section);
            match id {
                section::IMPORT => linked.imports = imports(reader)?,
                section::CODE => linked.functions = parts(section, &mut |_| Some(()))?,
                section::DATA => linked.segments = parts(section, &mut skip_offset)?,
                0 => match reader.bytes()? {
                    b"name" => linked.names(reader)?,
                    b"linking" => linked.symbols = symbols(reader)?,
                    b"reloc.CODE" => linked.in_code = addresses(reader)?,
                    b"reloc.DATA" => linked.in_data = addresses(reader)?,
                    _ => {}
                },
                _ => {}
            }
        }
        Some(linked)
    }

    fn names(&mut self, mut reader: Reader) -> Option<()> {
        while !reader.0.is_empty() {
            let part = reader.byte()?;
            let mut part_of = Reader(reader.bytes()?);
            if part != 1 && part != 9 {
                continue;
            }
            for _ in 0..part_of.number()? {
                let (at, name) = (part_of.number()?, part_of.bytes()?);
                if part == 1 {
                    let name = std::str::from_utf8(name).ok()?;
                    self.names.insert(at, demangle(name).to_string());
                } else if name == CONSTANTS {
                    self.constants = Some(at);
                }
            }
        }
        Some(())
    }

    /// Where the constants lie, in order; symbols that share a byte are one thing.
    fn things(&self, constants: usize) -> Vec<Range<usize>> {
        let symbols = self.symbols.iter().flatten();
        let of_constants = symbols.filter(|symbol| symbol.segment == constants);
        let mut places: Vec<Range<usize>> = of_constants.map(|s| s.place.clone()).collect();
        places.retain(|place| !place.is_empty());
        places.sort_by_key(|place| (place.start, place.end));
        let mut things: Vec<Range<usize>> = Vec::new();
        for place in places {
            match things.last_mut() {
                Some(thing) if place.start < thing.end => thing.end = thing.end.max(place.end),
                _ => things.push(place),
            }
        }
        things
    }

    /// The things that all other functions need, or memory that is written to, and what those
    /// need themselves.
    fn needed(
        &self,
        constants: usize,
        things: &[Range<usize>],
        goes: &dyn Fn(&str) -> bool,
    ) -> Option<BTreeSet<usize>> {
        let thing_of = |symbol: &usize| {
            let symbol = self.symbols.get(*symbol)?.as_ref()?;
            let is_constant = symbol.segment == constants;
            holder(things, symbol.place.start).filter(|_| is_constant)
        };
        let mut left = Vec::new();
        for (at, symbol) in &self.in_code {
            let function = self.imports + holder(&self.functions, *at)?;
            if !self.names.get(&function).is_some_and(|name| goes(name)) {
                left.extend(thing_of(symbol));
            }
        }
        let mut inside: BTreeMap<usize, Vec<usize>> = BTreeMap::new();
        for (at, symbol) in &self.in_data {
            let segment = holder(&self.segments, *at)?;
            let at = at - self.segments.get(segment)?.start;
            if segment != constants {
                left.extend(thing_of(symbol));
            } else {
                let inside = inside.entry(holder(things, at)?).or_default();
                inside.extend(thing_of(symbol));
            }
        }
        let mut needed = BTreeSet::new();
        while let Some(thing) = left.pop() {
            if needed.insert(thing) {
                left.extend(inside.get(&thing).into_iter().flatten());
            }
        }
        Some(needed)
    }
}

/// Which of these parts, in order, holds a place.
fn holder(parts: &[Range<usize>], at: usize) -> Option<usize> {
    let next = parts.partition_point(|part| part.start <= at);
    let before = next.checked_sub(1)?;
    parts.get(before)?.contains(&at).then_some(before)
}

/// Where the counted bytes of each part of a section lie in it, each after what `head` reads.
fn parts(
    section: &[u8],
    head: &mut dyn FnMut(&mut Reader) -> Option<()>,
) -> Option<Vec<Range<usize>>> {
    let mut reader = Reader(section);
    let mut found = Vec::new();
    for _ in 0..reader.number()? {
        head(&mut reader)?;
        let part = reader.bytes()?;
        let end = section.len() - reader.0.len();
        found.push(end - part.len()..end);
    }
    Some(found)
}

/// The head of an active segment of memory.
pub fn skip_offset(reader: &mut Reader) -> Option<()> {
    let plain = reader.byte()? == 0 && reader.byte()? == I32_CONST;
    plain.then_some(())?;
    reader.number()?;
    (reader.byte()? == 0x0b).then_some(())
}

/// How many functions are imported; nothing else is.
fn imports(mut reader: Reader) -> Option<usize> {
    reader.number()
}

fn symbols(mut reader: Reader) -> Option<Vec<Option<Symbol>>> {
    const VERSION: usize = 2;
    const SYMBOL_TABLE: u8 = 8;
    const DATA: u8 = 1;
    const SECTION: u8 = 3;
    const UNDEFINED: usize = 0x10;
    const NAMED: usize = 0x40;
    (reader.number()? == VERSION).then_some(())?;
    while !reader.0.is_empty() {
        let part = reader.byte()?;
        let mut table = Reader(reader.bytes()?);
        if part != SYMBOL_TABLE {
            continue;
        }
        let mut found = Vec::new();
        for _ in 0..table.number()? {
            let (kind, flags) = (table.byte()?, table.number()?);
            let defined = flags & UNDEFINED == 0;
            let mut symbol = None;
            match kind {
                DATA => {
                    table.bytes()?;
                    if defined {
                        let (segment, start) = (table.number()?, table.number()?);
                        let place = start..start + table.number()?;
                        symbol = Some(Symbol { segment, place });
                    }
                }
                SECTION => {
                    table.number()?;
                }
                _ => {
                    table.number()?;
                    if defined || flags & NAMED != 0 {
                        table.bytes()?;
                    }
                }
            }
            found.push(symbol);
        }
        return Some(found);
    }
    None
}

/// The places of a section where addresses of memory stand, with the symbol of each.
fn addresses(mut reader: Reader) -> Option<Vec<(usize, usize)>> {
    reader.number()?;
    let mut found = Vec::new();
    for _ in 0..reader.number()? {
        let (kind, at, symbol) = (reader.byte()?, reader.number()?, reader.number()?);
        match kind {
            // Of memory, with what is added.
            3..=5 => {
                found.push((at, symbol));
                while 0x80 <= reader.byte()? {}
            }
            // Of functions, types, globals and tables.
            0..=2 | 6 | 7 | 20 => {}
            _ => return None,
        }
    }
    Some(found)
}
