//! Short names between the app and its glue script.
//!
//! What the two call each other is named by the bindings generator with a
//! digest for each name, which no compression can take out; nobody but the
//! two files reads the names.

use crate::module::{Reader, number, put};
use crate::shop::Result;
use std::collections::HashMap;
use std::fs;
use std::path::Path;

const IMPORTS: u8 = 2;
const EXPORTS: u8 = 7;
/// Shorter names stay as they are: among them those that the bindings fix.
const LONG: usize = 20;

/// Gives both files of a build short names for each other's functions.
pub fn shorten(staging: &Path) -> Result {
    let failed = |error| format!("{}: {error}", staging.display());
    let files = fs::read_dir(staging).map_err(failed)?;
    let paths: std::io::Result<Vec<_>> = files.map(|file| Ok(file?.path())).collect();
    let paths = paths.map_err(failed)?;
    let module = paths
        .iter()
        .find(|path| path.extension().is_some_and(|ending| ending == "wasm"))
        .ok_or("the build has no module")?;
    let stem = module.file_stem().and_then(|stem| stem.to_str());
    let stem = stem.and_then(|stem| stem.strip_suffix("_bg"));
    let script = staging.join(format!("{}.js", stem.ok_or("the module has no script")?));
    let told = |path: &Path, error| format!("{}: {error}", path.display());
    let glue = fs::read_to_string(&script).map_err(|error| told(&script, error))?;
    let bytes = fs::read(module).map_err(|error| told(module, error))?;
    let mut names = Names::default();
    let bytes = renamed(&bytes, &mut names).ok_or("the module cannot be read")?;
    fs::write(module, bytes).map_err(|error| told(module, error))?;
    fs::write(&script, names.put_into(&glue)).map_err(|error| told(&script, error))
}

/// The short name of each long one.
#[derive(Default)]
struct Names(HashMap<String, String>);

impl Names {
    fn short(&mut self, long: &str) -> String {
        if long.len() < LONG {
            return long.to_owned();
        }
        let next = format!("_{}", self.0.len());
        self.0.entry(long.to_owned()).or_insert(next).clone()
    }

    /// A script with the short names in place of the long ones.
    fn put_into(&self, script: &str) -> String {
        let is_word = |c: char| c.is_ascii_alphanumeric() || c == '_' || c == '$';
        let mut text = String::with_capacity(script.len());
        let mut rest = script;
        while !rest.is_empty() {
            let end = rest.find(|c| !is_word(c)).unwrap_or(rest.len());
            let (word, after) = rest.split_at(end);
            text.push_str(self.0.get(word).map_or(word, String::as_str));
            let next = after.find(is_word).unwrap_or(after.len());
            let (between, after) = after.split_at(next);
            text.push_str(between);
            rest = after;
        }
        text
    }
}

/// A module with short names of what it imports and exports; `None` unless it
/// is a module (WebAssembly core specification 2.0, 5.5).
fn renamed(module: &[u8], names: &mut Names) -> Option<Vec<u8>> {
    let mut new = module
        .get(..8)
        .filter(|head| head.starts_with(b"\0asm"))?
        .to_vec();
    let mut reader = Reader(module.get(8..)?);
    while !reader.0.is_empty() {
        let id = reader.byte()?;
        let section = reader.bytes()?;
        let section = match id {
            IMPORTS => imports(section, names)?,
            EXPORTS => exports(section, names)?,
            _ => section.to_vec(),
        };
        new.push(id);
        put(&mut new, &section);
    }
    Some(new)
}

fn imports(section: &[u8], names: &mut Names) -> Option<Vec<u8>> {
    let mut reader = Reader(section);
    let count = reader.number()?;
    let mut new = number(count);
    for _ in 0..count {
        put(&mut new, reader.bytes()?);
        let name = std::str::from_utf8(reader.bytes()?).ok()?;
        put(&mut new, names.short(name).as_bytes());
        let kind = reader.byte()?;
        new.push(kind);
        // Functions are all that the bindings import.
        let type_index = (kind == 0).then(|| reader.number())??;
        new.extend(number(type_index));
    }
    reader.0.is_empty().then_some(new)
}

fn exports(section: &[u8], names: &mut Names) -> Option<Vec<u8>> {
    let mut reader = Reader(section);
    let count = reader.number()?;
    let mut new = number(count);
    for _ in 0..count {
        let name = std::str::from_utf8(reader.bytes()?).ok()?;
        put(&mut new, names.short(name).as_bytes());
        new.push(reader.byte()?);
        new.extend(number(reader.number()?));
    }
    reader.0.is_empty().then_some(new)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn both_sides_get_the_same_short_names() {
        let long = "__wbg_addEventListener_3acb0aad4483804c";
        let mut module = b"\0asm\x01\0\0\0".to_vec();
        let mut section = number(1);
        put(&mut section, b"./bg.js");
        put(&mut section, long.as_bytes());
        section.extend([0, 5]);
        module.push(IMPORTS);
        put(&mut module, &section);
        let mut section = number(2);
        put(&mut section, b"memory");
        section.extend([2, 0]);
        put(
            &mut section,
            b"wasm_bindgen__closure__destroy__h0123456789abcdef",
        );
        section.extend([0, 9]);
        module.push(EXPORTS);
        put(&mut module, &section);
        module.extend([10, 2, 7, 7]);

        let mut names = Names::default();
        let new = renamed(&module, &mut names).unwrap();
        let mut again = Names::default();
        assert_eq!(
            renamed(&new, &mut again).unwrap(),
            new,
            "nothing long is left"
        );
        assert!(new.ends_with(&[10, 2, 7, 7]) && new.windows(6).any(|w| w == b"memory"));
        let glue = format!("x.{long}=f;wasm.memory;{long}2;'{long}'");
        assert_eq!(
            names.put_into(&glue),
            format!("x._0=f;wasm.memory;{long}2;'_0'")
        );
    }

    #[test]
    fn what_is_no_module_is_left_alone() {
        for bytes in [
            &b""[..],
            b"\0asm",
            b"\0asm\x01\0\0\0\x02\x05\x01",
            b"plain text",
        ] {
            assert_eq!(renamed(bytes, &mut Names::default()), None);
        }
    }
}
