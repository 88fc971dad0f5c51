//! Takes what a start does not need out of the program, into a module of its own.
//!
//! The second module has no copy of anything: it calls the first one's functions, works in its
//! memory and writes its own functions into its table. The first one calls it at one place, the
//! gate, by the table; the page loads the second module before it lets anybody through there.
//!
//! What is reached without going through the gate stays. Functions that are called by the table
//! alone cannot be followed: of those, the ones go that belong to a place named in [`LATER`]. So
//! the compiler must not make one of two functions that happen to be alike, or the one that is
//! left may bear the wrong name.

use crate::constants;
use crate::module::{
    CALL, CALL_INDIRECT, I32_CONST, REF_FUNC, Reader, module, number, put, rewrite, sections,
};
use crate::shop::Result;
use std::collections::{BTreeMap, BTreeSet};
use std::fs;
use std::ops::Range;
use std::path::Path;

/// The one function of the second module that the first one calls, as the compiler names it.
const GATE: &str = "::ui::screens::later::part";

/// Modules of the source whose functions nobody calls before the gate, as the compiler names
/// them.
const LATER: [&str; 51] = [
    "::ui::screens::route::drawing::",
    "::present::drawing::",
    "::ui::screens::stations::",
    "::ui::screens::plan::",
    "::ui::screens::looks::",
    "::ui::screens::look_at::",
    "::ui::screens::findings::",
    "::ui::screens::first::",
    "::ui::screens::below::",
    "::ui::screens::open_file::",
    "::ui::screens::preview::",
    "::ui::screens::safety::",
    "::ui::screens::feature_findings::",
    "::ui::parts::chart::",
    "::ui::parts::phone::this_phone",
    "::ui::parts::phone::one",
    "::ui::state::State>::delete::",
    "::ui::screens::how_sure::",
    "::ui::screens::gauges::",
    "::ui::screens::instrument::",
    "::ui::screens::kinds::",
    "::ui::screens::limits::",
    "::ui::screens::set_up::",
    "::ui::screens::set_up_given::",
    "::ui::screens::set_up_more::",
    "::present::chart::",
    // Charts alone write a float: the opacity of their colours.
    "plotters",
    "<f64 as ",
    "::present::finding_row::",
    "::present::findings::",
    "::present::first::",
    "::present::preview::",
    "::present::looks::",
    "::present::gauges::",
    "::present::instrument::",
    "::present::kinds::",
    "::present::given_form::",
    "::present::limits_form::",
    "::present::what_to_do::",
    "::present::plan_words::",
    "::present::shop_words::",
    "::assess::job::",
    "::assess::facts::",
    "::remedy::plan::",
    "::remedy::planner::",
    "::remedy::search::",
    "::remedy::way::",
    "::remedy::book::",
    "::remedy::shells::",
    "::remedy::evidence::",
    "::remedy::judged::",
];

mod section {
    pub const TYPE: u8 = 1;
    pub const IMPORT: u8 = 2;
    pub const FUNCTION: u8 = 3;
    pub const TABLE: u8 = 4;
    pub const GLOBAL: u8 = 6;
    pub const EXPORT: u8 = 7;
    pub const START: u8 = 8;
    pub const ELEMENT: u8 = 9;
    pub const CODE: u8 = 10;
    pub const DATA: u8 = 11;
}

const FUNCTION: u8 = 0;
const TABLE: u8 = 1;
const MEMORY: u8 = 2;
const GLOBAL: u8 = 3;

/// Splits the program of a build; the second module stands beside it.
///
/// `linked` is the program as the linker left it, which knows what each function needs.
pub fn split(staging: &Path, linked: &Path) -> Result {
    let told = |path: &Path, error| format!("{}: {error}", path.display());
    let files = fs::read_dir(staging).map_err(|error| told(staging, error))?;
    let mut paths = files.flatten().map(|file| file.path());
    let program = paths
        .find(|path| path.to_string_lossy().ends_with("_bg.wasm"))
        .ok_or("the build has no program")?;
    let bytes = fs::read(&program).map_err(|error| told(&program, error))?;
    let whole = Program::read(&bytes).ok_or("the program cannot be read")?;
    let linked = fs::read(linked).map_err(|error| told(linked, error))?;
    let [first, second] = whole.split(GATE, &LATER, &linked)?;
    fs::write(&program, first).map_err(|error| told(&program, error))?;
    let later = program.to_string_lossy().replace("_bg.wasm", "_later.wasm");
    fs::write(&later, second).map_err(|error| told(Path::new(&later), error))
}

/// A program as far as splitting it goes.
struct Program<'a> {
    sections: Vec<(u8, &'a [u8])>,
    /// What is imported, each as it stands, with its type.
    imports: Vec<(&'a [u8], usize)>,
    /// The types of its own functions and their bodies.
    functions: Vec<(usize, &'a [u8])>,
    exports: Vec<(&'a [u8], u8, usize)>,
    start: Option<usize>,
    /// Where the functions in the table start, and which they are.
    table: (usize, Vec<usize>),
    names: BTreeMap<usize, &'a str>,
    globals: usize,
    /// What each table holds, as its type says.
    tables: Vec<u8>,
}

impl<'a> Program<'a> {
    fn read(bytes: &'a [u8]) -> Option<Self> {
        let mut program = Program {
            sections: sections(bytes)?,
            imports: Vec::new(),
            functions: Vec::new(),
            exports: Vec::new(),
            start: None,
            table: (0, Vec::new()),
            names: BTreeMap::new(),
            globals: 0,
            tables: Vec::new(),
        };
        let mut types = Vec::new();
        for (id, section) in program.sections.clone() {
            let mut reader = Reader(section);
            match id {
                0 if reader.bytes()? == b"name" => program.names = names(reader)?,
                section::IMPORT => {
                    for _ in 0..reader.number()? {
                        let start = reader.0;
                        reader.bytes()?;
                        reader.bytes()?;
                        // Functions are all that the bindings import.
                        (reader.byte()? == FUNCTION).then_some(())?;
                        let of_type = reader.number()?;
                        let import = &start[..start.len() - reader.0.len()];
                        program.imports.push((import, of_type));
                    }
                }
                section::FUNCTION => {
                    for _ in 0..reader.number()? {
                        types.push(reader.number()?);
                    }
                }
                section::TABLE => program.tables = tables(reader)?,
                section::GLOBAL => program.globals = reader.number()?,
                section::EXPORT => {
                    for _ in 0..reader.number()? {
                        let name = reader.bytes()?;
                        let export = (name, reader.byte()?, reader.number()?);
                        program.exports.push(export);
                    }
                }
                section::START => program.start = Some(reader.number()?),
                section::ELEMENT => program.table = elements(reader)?,
                section::CODE => {
                    reader.number()?;
                    for of_type in &types {
                        program.functions.push((*of_type, reader.bytes()?));
                    }
                }
                _ => {}
            }
        }
        Some(program)
    }

    fn type_of(&self, function: usize) -> Option<usize> {
        let own = function.checked_sub(self.imports.len());
        match own {
            None => self.imports.get(function).map(|import| import.1),
            Some(own) => self.functions.get(own).map(|own| own.0),
        }
    }

    /// The functions that a function names.
    fn called_by(&self, function: usize) -> Option<Vec<usize>> {
        let mut called = Vec::new();
        let own = function.checked_sub(self.imports.len());
        if let Some(own) = own {
            let (_, body) = self.functions.get(own)?;
            rewrite(body, &mut |_, _, function| called.push(function))?;
        }
        Some(called)
    }

    /// Everything that is reached from some functions, but not beyond the gate.
    fn reached(&self, roots: Vec<usize>, gate: Option<usize>) -> Option<BTreeSet<usize>> {
        let mut reached = BTreeSet::new();
        let mut left = roots;
        while let Some(function) = left.pop() {
            if Some(function) != gate && reached.insert(function) {
                left.extend(self.called_by(function)?);
            }
        }
        Some(reached)
    }

    /// The first module and the second.
    fn split(&self, gate: &str, later: &[&str], linked: &[u8]) -> Result<[Vec<u8>; 2]> {
        let is_gate = |name: &str| name.ends_with(gate);
        let gates: Vec<_> = self
            .names
            .iter()
            .filter(|(_, name)| is_gate(name))
            .collect();
        let [(gate, _)] = gates.as_slice() else {
            return Err(format!(
                "{} functions are called {gate}, not one",
                gates.len()
            ));
        };
        let gate = **gate;
        let name = |function: &usize| self.names.get(function).copied().unwrap_or_default();
        let is_later = |function: &usize| later.iter().any(|part| name(function).contains(part));
        let (in_table, in_table_later): (Vec<usize>, Vec<usize>) =
            self.table.1.iter().copied().partition(|f| !is_later(f));
        let exported = self.exports.iter().filter(|(_, kind, _)| *kind == FUNCTION);
        let roots = exported.map(|(.., function)| *function);
        let roots = roots.chain(self.start).chain(in_table).collect();
        let unknown = || "the program has an instruction that is not known here".to_owned();
        let mut first = self.reached(roots, Some(gate)).ok_or_else(unknown)?;
        // What is imported comes from the page, which knows the first module only.
        first.extend(0..self.imports.len());
        let mut roots = in_table_later;
        roots.push(gate);
        let all = self.reached(roots, None).ok_or_else(unknown)?;
        let second: Vec<usize> = all.difference(&first).copied().collect();
        let stays: BTreeSet<&str> = first.iter().map(name).collect();
        let goes: BTreeSet<&str> = second.iter().map(name).collect();
        let goes = |wanted: &str| goes.contains(wanted) && !stays.contains(wanted);
        let constants = constants::only_of(linked, &goes)
            .ok_or("the linker did not tell which constants are whose")?;
        let cut = Cut::new(self, gate, &first, second, constants).ok_or_else(unknown)?;
        let first = cut.first(self).ok_or_else(unknown)?;
        Ok([first, cut.second(self).ok_or_else(unknown)?])
    }
}

/// Which function goes where.
struct Cut {
    gate: usize,
    /// The place of the gate in the table.
    slot: usize,
    /// The functions that stay, with their new numbers.
    stay: BTreeMap<usize, usize>,
    /// Those that go, in the order they have there.
    go: Vec<usize>,
    /// Those that stay and are called from there, with the names they are exported by.
    shared: Vec<(usize, String)>,
    /// A segment of the memory, and which of its parts go.
    constants: (usize, Vec<Range<usize>>),
}

impl Cut {
    fn new(
        program: &Program,
        gate: usize,
        first: &BTreeSet<usize>,
        go: Vec<usize>,
        constants: (usize, Vec<Range<usize>>),
    ) -> Option<Self> {
        let mut shared = BTreeSet::new();
        for function in &go {
            let called = program.called_by(*function)?;
            shared.extend(called.into_iter().filter(|called| first.contains(called)));
        }
        // Imports are not renumbered, so all of them stay.
        let imports = 0..program.imports.len();
        let own = first
            .iter()
            .copied()
            .filter(|f| program.imports.len() <= *f);
        let stay = imports.chain(own).enumerate().map(|(new, old)| (old, new));
        let shared = shared.into_iter().enumerate();
        Some(Self {
            gate,
            slot: program.table.0 + program.table.1.len(),
            stay: stay.collect(),
            go,
            shared: shared.map(|(at, function)| (function, short(at))).collect(),
            constants,
        })
    }

    fn first(&self, program: &Program) -> Option<Vec<u8>> {
        let gate_type = program.type_of(self.gate)?;
        let mut lost = false;
        let mut put_function = |new: &mut Vec<u8>, instruction, function| {
            if let Some(stays) = self.stay.get(&function) {
                new.push(instruction);
                new.extend(number(*stays));
            } else {
                lost |= function != self.gate || instruction != CALL;
                new.push(I32_CONST);
                new.extend(signed(self.slot));
                new.push(CALL_INDIRECT);
                new.extend(number(gate_type));
                new.push(0);
            }
        };
        let (mut types, mut bodies) = (Vec::new(), Vec::new());
        let own: Vec<_> = self
            .stay
            .keys()
            .filter(|f| program.imports.len() <= **f)
            .collect();
        for function in &own {
            let (of_type, body) = program.functions.get(**function - program.imports.len())?;
            types.extend(number(*of_type));
            put(&mut bodies, &rewrite(body, &mut put_function)?);
        }
        (!lost).then_some(())?;
        let counted = |items: Vec<u8>| [number(own.len()), items].concat();
        let (types, bodies) = (counted(types), counted(bodies));
        let sections = program.sections.iter().map(|(id, section)| {
            let new = match *id {
                section::FUNCTION => types.clone(),
                section::CODE => bodies.clone(),
                section::TABLE => larger(section)?,
                section::EXPORT => self.exports(program)?,
                section::START => number(*self.stay.get(&program.start?)?),
                section::ELEMENT => self.kept_elements(program),
                section::DATA => self.kept_memory(section)?,
                // Nobody reads what is told about the program any more.
                0 => Vec::new(),
                _ => section.to_vec(),
            };
            Some((*id, new))
        });
        Some(module(&sections.collect::<Option<Vec<_>>>()?))
    }

    fn exports(&self, program: &Program) -> Option<Vec<u8>> {
        let mut all = Vec::new();
        let mut export = |name: &[u8], kind, index| {
            put(&mut all, name);
            all.push(kind);
            all.extend(number(index));
        };
        for (name, kind, index) in &program.exports {
            let index = if *kind == FUNCTION {
                *self.stay.get(index)?
            } else {
                *index
            };
            export(name, *kind, index);
        }
        for (function, name) in &self.shared {
            export(name.as_bytes(), FUNCTION, *self.stay.get(function)?);
        }
        for table in 0..program.tables.len() {
            export(table_name(table).as_bytes(), TABLE, table);
        }
        for global in 0..program.globals {
            export(format!("g{global}").as_bytes(), GLOBAL, global);
        }
        let count =
            program.exports.len() + self.shared.len() + program.tables.len() + program.globals;
        Some([number(count), all].concat())
    }

    /// The table as it was; in the places of those that go stands one that stays, until they
    /// come.
    fn kept_elements(&self, program: &Program) -> Vec<u8> {
        let (start, functions) = &program.table;
        let stays = |function: &usize| self.stay.get(function).copied().unwrap_or(0);
        let functions: Vec<usize> = functions.iter().map(stays).collect();
        [number(1), segment(*start, &functions)].concat()
    }

    fn second(&self, program: &Program) -> Option<Vec<u8>> {
        let of = |wanted: u8| program.sections.iter().find(|(id, _)| *id == wanted);
        let mut imports = Vec::new();
        let mut import = |name: &str, kind: u8, what: &[u8]| {
            put(&mut imports, b"a");
            put(&mut imports, name.as_bytes());
            imports.push(kind);
            imports.extend_from_slice(what);
        };
        for (function, name) in &self.shared {
            import(name, FUNCTION, &number(program.type_of(*function)?));
        }
        // Any size will do: the first module has made them.
        import("memory", MEMORY, &[0, 0]);
        for (at, of_type) in program.tables.iter().enumerate() {
            import(&table_name(at), TABLE, &[*of_type, 0, 0]);
        }
        let globals = globals(of(section::GLOBAL)?.1)?;
        for (at, of_type) in globals.iter().enumerate() {
            import(&format!("g{at}"), GLOBAL, of_type);
        }
        let count = self.shared.len() + 1 + program.tables.len() + globals.len();

        let called = self.shared.iter().map(|(function, _)| *function);
        let here: BTreeMap<usize, usize> = called
            .chain(self.go.iter().copied())
            .enumerate()
            .map(|(new, old)| (old, new))
            .collect();
        let mut lost = false;
        let mut put_function = |new: &mut Vec<u8>, instruction, function| {
            lost |= !here.contains_key(&function);
            new.push(instruction);
            new.extend(number(here.get(&function).copied().unwrap_or(0)));
        };
        let (mut types, mut bodies) = (number(self.go.len()), number(self.go.len()));
        let mut referred = false;
        for function in &self.go {
            let (of_type, body) = program.functions.get(*function - program.imports.len())?;
            types.extend(number(*of_type));
            let body = rewrite(body, &mut |new: &mut Vec<u8>, instruction, function| {
                referred |= instruction == REF_FUNC;
                put_function(new, instruction, function);
            })?;
            put(&mut bodies, &body);
        }
        (!lost && !referred).then_some(())?;
        Some(module(&[
            (section::TYPE, of(section::TYPE)?.1.to_vec()),
            (section::IMPORT, [number(count), imports].concat()),
            (section::FUNCTION, types),
            (section::ELEMENT, self.brought_elements(program, &here)),
            (section::CODE, bodies),
            (section::DATA, self.brought_memory(of(section::DATA)?.1)?),
        ]))
    }

    /// The memory with nothing in the places of the constants that go.
    fn kept_memory(&self, section: &[u8]) -> Option<Vec<u8>> {
        let (segment, parts) = &self.constants;
        let (_, place) = memory(section)?.into_iter().nth(*segment)?;
        let mut kept = section.to_vec();
        let bytes = kept.get_mut(place)?;
        for part in parts {
            bytes.get_mut(part.clone())?.fill(0);
        }
        Some(kept)
    }

    /// The constants that go, each to where it lies.
    fn brought_memory(&self, section: &[u8]) -> Option<Vec<u8>> {
        let (segment, parts) = &self.constants;
        let (start, place) = memory(section)?.into_iter().nth(*segment)?;
        let bytes = section.get(place)?;
        let mut segments = Vec::new();
        let joined = joined(parts);
        for part in &joined {
            segments.extend([0, I32_CONST]);
            segments.extend(signed(start + part.start));
            segments.push(0x0b);
            put(&mut segments, bytes.get(part.clone())?);
        }
        Some([number(joined.len()), segments].concat())
    }

    /// The functions that come into the table, run by run, and the gate behind all.
    fn brought_elements(&self, program: &Program, here: &BTreeMap<usize, usize>) -> Vec<u8> {
        let (start, functions) = &program.table;
        let goes: BTreeSet<usize> = self.go.iter().copied().collect();
        let all = functions.iter().chain([&self.gate]).enumerate();
        let mut runs: Vec<(usize, Vec<usize>)> = Vec::new();
        for (at, function) in all.filter(|(_, function)| goes.contains(function)) {
            let new = here.get(function).copied().unwrap_or(0);
            match runs.last_mut() {
                Some((from, run)) if *from + run.len() == start + at => run.push(new),
                _ => runs.push((start + at, vec![new])),
            }
        }
        let segments = runs.iter().flat_map(|(from, run)| segment(*from, run));
        let mut section = number(runs.len());
        section.extend(segments);
        section
    }
}

/// Parts with little between them are one: nobody writes there, so a few bytes may come twice.
fn joined(parts: &[Range<usize>]) -> Vec<Range<usize>> {
    const LITTLE: usize = 8;
    let mut joined: Vec<Range<usize>> = Vec::new();
    for part in parts {
        match joined.last_mut() {
            Some(last) if part.start <= last.end + LITTLE => last.end = part.end,
            _ => joined.push(part.clone()),
        }
    }
    joined
}

/// The segments of the memory: where each starts there, and where its bytes lie in the section.
fn memory(section: &[u8]) -> Option<Vec<(usize, Range<usize>)>> {
    let mut reader = Reader(section);
    let mut found = Vec::new();
    for _ in 0..reader.number()? {
        ((reader.byte()?, reader.byte()?) == (0, I32_CONST)).then_some(())?;
        let start = reader.number()?;
        (reader.byte()? == 0x0b).then_some(())?;
        let bytes = reader.bytes()?;
        let end = section.len() - reader.0.len();
        found.push((start, end - bytes.len()..end));
    }
    Some(found)
}

/// An active segment of the first table.
fn segment(start: usize, functions: &[usize]) -> Vec<u8> {
    let mut segment = vec![0, I32_CONST];
    segment.extend(signed(start));
    segment.push(0x0b);
    segment.extend(number(functions.len()));
    segment.extend(functions.iter().flat_map(|function| number(*function)));
    segment
}

/// The one active segment that the compiler writes.
fn elements(mut reader: Reader) -> Option<(usize, Vec<usize>)> {
    ((reader.number()?, reader.number()?, reader.byte()?) == (1, 0, I32_CONST)).then_some(())?;
    let start = reader.number()?;
    (reader.byte()? == 0x0b).then_some(())?;
    let functions: Option<Vec<usize>> = (0..reader.number()?).map(|_| reader.number()).collect();
    Some((start, functions?))
}

/// The first table with a place more; a second one holds the page's objects.
fn larger(section: &[u8]) -> Option<Vec<u8>> {
    let mut reader = Reader(section);
    let (count, kind, has_most) = (reader.number()?, reader.byte()?, reader.byte()?);
    let mut new = number(count);
    new.extend([kind, has_most]);
    for _ in 0..=has_most {
        new.extend(number(reader.number()? + 1));
    }
    new.extend_from_slice(reader.0);
    Some(new)
}

/// What each table holds.
fn tables(mut reader: Reader) -> Option<Vec<u8>> {
    let mut found = Vec::new();
    for _ in 0..reader.number()? {
        found.push(reader.byte()?);
        for _ in 0..=reader.byte()? {
            reader.number()?;
        }
    }
    Some(found)
}

/// By this name the second module gets a table: the first one, of functions, tells the page that
/// there is a second module.
fn table_name(table: usize) -> String {
    match table {
        0 => "table".to_owned(),
        more => format!("table{more}"),
    }
}

/// The types of the globals, all of plain numbers with a constant to start with.
fn globals(section: &[u8]) -> Option<Vec<[u8; 2]>> {
    let mut reader = Reader(section);
    let mut found = Vec::new();
    for _ in 0..reader.number()? {
        found.push([reader.byte()?, reader.byte()?]);
        (reader.byte()? == I32_CONST).then_some(())?;
        reader.number()?;
        (reader.byte()? == 0x0b).then_some(())?;
    }
    Some(found)
}

/// The functions' part of the names.
fn names<'a>(mut reader: Reader<'a>) -> Option<BTreeMap<usize, &'a str>> {
    let mut names = BTreeMap::new();
    while !reader.0.is_empty() {
        let part = reader.byte()?;
        let mut part_of = Reader(reader.bytes()?);
        if part == 1 {
            for _ in 0..part_of.number()? {
                let function = part_of.number()?;
                names.insert(function, std::str::from_utf8(part_of.bytes()?).ok()?);
            }
        }
    }
    Some(names)
}

/// A number that is not below zero, as signed LEB128.
fn signed(value: usize) -> Vec<u8> {
    let mut bytes = number(value);
    if let Some(last) = bytes.last_mut()
        && *last & 0x40 != 0
    {
        *last |= 0x80;
        bytes.push(0);
    }
    bytes
}

/// A short name for a number, in letters and digits, none of which begins with `g` or is a word.
fn short(mut number: usize) -> String {
    let mut name = String::new();
    loop {
        name.push(char::from(b"0123456789abcdef"[number % 16]));
        number /= 16;
        if number == 0 {
            return name;
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Functions by what they call: an import, `main` (exported, calls the gate), the gate
    /// (calls `shared` and `own`), those two, `start` (calls `shared`), and two that are called
    /// by the table alone, one of them of a later place. Of its constants `main` needs the first,
    /// `own` the second, which needs the third; `own` and `shared` need the fourth. So the linker
    /// tells, who leaves the code the same.
    fn program() -> Vec<u8> {
        let call = |functions: &[u8]| {
            let calls = functions.iter().flat_map(|function| [CALL, *function]);
            [vec![0], calls.collect(), vec![0x0b]].concat()
        };
        let bodies = [
            call(&[2]),
            call(&[3, 4]),
            call(&[0]),
            call(&[]),
            call(&[3]),
            call(&[]),
            call(&[4]),
        ];
        let names = [
            "",
            "main",
            "a::gate",
            "shared",
            "own",
            "start",
            "early",
            "a::later::x",
        ];
        let mut code = number(bodies.len());
        bodies.iter().for_each(|body| put(&mut code, body));
        let mut told = number(names.len());
        for (function, name) in names.iter().enumerate() {
            told.extend(number(function));
            put(&mut told, name.as_bytes());
        }
        let mut custom = Vec::new();
        put(&mut custom, b"name");
        custom.push(1);
        put(&mut custom, &told);
        custom.extend([9, 10, 1, 0, 7]);
        custom.extend(b".rodata");
        // Bodies lie behind their count, each behind its length.
        let body = |function: usize| {
            let before = bodies.iter().take(function - 1).map(|body| 1 + body.len());
            2 + u8::try_from(before.sum::<usize>()).unwrap()
        };
        let data = vec![1, 0, I32_CONST, 16, 0x0b, 8, 1, 1, 2, 2, 3, 3, 4, 4];
        let symbols = [0, 2, 4, 6].map(|start| [1, 0, 1, b'c', 0, start, 2]);
        let linking = [&[2, 8, 29, 4][..], &symbols.concat()].concat();
        let needs = [(1, 0), (4, 1), (4, 3), (3, 3)];
        let needs = needs.map(|(function, symbol)| [4, body(function), symbol, 0]);
        let in_code = [&[9, 4][..], &needs.concat()].concat();
        let in_data = vec![10, 1, 5, 6 + 2, 2, 0];
        let linker = |name: &str, told: &[u8]| {
            let mut custom = Vec::new();
            put(&mut custom, name.as_bytes());
            [&custom, told].concat()
        };
        let mut import = vec![1];
        put(&mut import, b"page");
        put(&mut import, b"f");
        import.extend([FUNCTION, 0]);
        let mut export = vec![1];
        put(&mut export, b"main");
        export.extend([FUNCTION, 1]);
        module(&[
            (section::TYPE, vec![1, 0x60, 0, 0]),
            (section::IMPORT, import),
            (section::FUNCTION, vec![7, 0, 0, 0, 0, 0, 0, 0]),
            (section::TABLE, vec![2, 0x70, 1, 3, 3, 0x6f, 0, 8]),
            (5, vec![1, 0, 1]),
            (
                section::GLOBAL,
                vec![1, 0x7f, 1, I32_CONST, 0x80, 0x80, 0x01, 0x0b],
            ),
            (section::EXPORT, export),
            (section::START, vec![5]),
            (section::ELEMENT, vec![1, 0, I32_CONST, 1, 0x0b, 2, 6, 7]),
            (section::CODE, code),
            (section::DATA, data),
            (0, linker("linking", &linking)),
            (0, linker("reloc.CODE", &in_code)),
            (0, linker("reloc.DATA", &in_data)),
            (0, custom),
        ])
    }

    fn cut(later: &str) -> Result<[Vec<u8>; 2]> {
        let program = program();
        Program::read(&program)
            .unwrap()
            .split("a::gate", &[later], &program)
    }

    #[test]
    fn what_only_the_gate_reaches_goes() {
        let [first, second] = cut("::later::").unwrap();
        let first = Program::read(&first).unwrap();
        assert!(first.names.is_empty(), "nobody reads them any more");
        assert_eq!(first.functions.len(), 4, "main, shared, start, early");
        let main = [&[0, I32_CONST, 3, CALL_INDIRECT, 0, 0, 0x0b][..]];
        assert_eq!(
            first.functions[0].1, main[0],
            "the gate stands behind the table's end"
        );
        assert_eq!(first.start, Some(3));
        assert_eq!(
            first.table,
            (1, vec![4, 0]),
            "the later one's place is taken by any"
        );
        let exports: Vec<_> = first.exports.iter().map(|(name, ..)| *name).collect();
        assert_eq!(exports, [&b"main"[..], b"0", b"table", b"table1", b"g0"]);

        let sections = sections(&second).unwrap();
        let of = |wanted| sections.iter().find(|(id, _)| *id == wanted).unwrap().1;
        assert_eq!(
            Reader(of(section::IMPORT)).number(),
            Some(5),
            "shared, memory, tables, global"
        );
        // Shared is 0, the gate 1, own 2, the later one 3: into places 2 and 3.
        assert_eq!(of(section::ELEMENT), [1, 0, I32_CONST, 2, 0x0b, 2, 3, 1]);
        assert_eq!(of(section::CODE)[..2], [3, 6]);
        assert_eq!(of(section::CODE)[2..8], [0, CALL, 0, CALL, 2, 0x0b]);
    }

    #[test]
    fn constants_go_with_those_who_need_them() {
        let [first, second] = cut("::later::").unwrap();
        let data = |module: &[u8]| {
            let of_data =
                |(id, section): (u8, &[u8])| (id == section::DATA).then(|| section.to_vec());
            sections(module)
                .unwrap()
                .into_iter()
                .find_map(of_data)
                .unwrap()
        };
        assert_eq!(data(&first)[6..], [1, 1, 0, 0, 0, 0, 4, 4]);
        assert_eq!(data(&second), [1, 0, I32_CONST, 18, 0x0b, 4, 2, 2, 3, 3]);
    }

    #[test]
    fn parts_close_together_are_one() {
        assert_eq!(joined(&[0..2, 10..12, 21..22]), [0..12, 21..22]);
    }

    #[test]
    fn what_the_table_may_call_early_stays() {
        let [first, second] = cut("::none::").unwrap();
        let first = Program::read(&first).unwrap();
        assert_eq!(first.functions.len(), 6, "and what it calls");
        let sections = sections(&second).unwrap();
        let code = sections
            .iter()
            .find(|(id, _)| *id == section::CODE)
            .unwrap();
        assert_eq!(Reader(code.1).number(), Some(1), "the gate alone");
    }

    #[test]
    fn without_one_gate_nothing_is_cut() {
        let program = program();
        let cut = |gate| Program::read(&program).unwrap().split(gate, &[], &program);
        assert!(cut("a::gate").is_ok());
        assert!(cut("nowhere").is_err());
        assert!(Program::read(b"plain text").is_none());
    }

    #[test]
    fn small_numbers_are_signed_rightly() {
        assert_eq!(signed(63), [63]);
        assert_eq!(signed(64), [0xc0, 0]);
        assert_eq!(signed(812), [0xac, 6]);
    }
}
