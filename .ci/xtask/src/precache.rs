//! The build's hook: makes the built files fewer and smaller, and writes their names and
//! digests into the service worker.

use crate::bridge;
use crate::digest::{base64, hex, sha256};
use crate::drawings;
use crate::shop::Result;
use crate::split;
use crate::styles;
use std::fs;
use std::path::{Path, PathBuf};

const BUILD: &str = "@build@";
const FILES: &str = "/*@files@*/ []";
const REST: &str = "@rest@";

/// What a start does not need: the worker keeps it once the page is at rest. Their list is a
/// file of its own, so that the first load has no digest for each of them.
const LATER: [&str; 2] = ["drawings.svg", "samples/"];
const LIST: &str = "rest.json";

/// In a development build nothing may be served from a former copy.
const RETIRED: &str = "\
// Development builds have no offline copy: this worker removes itself.
addEventListener(\"install\", () => skipWaiting());
addEventListener(\"activate\", (event) => event.waitUntil(registration.unregister()));
";

pub struct Entry {
    url: String,
    digest: [u8; 32],
}

pub fn command() -> Result {
    let staging = std::env::var_os("TRUNK_STAGING_DIR")
        .ok_or("precache is run by the build, which names its folder in TRUNK_STAGING_DIR")?;
    let staging = Path::new(&staging);
    drawings::join(staging)?;
    if std::env::var("TRUNK_PROFILE").as_deref() == Ok("release") {
        bridge::shorten(staging)?;
        split::split(staging, &linked()?)?;
        fill(staging)
    } else {
        retire(staging)
    }
}

/// The program as the compiler leaves it, before the bindings are made.
fn linked() -> Result<PathBuf> {
    let source =
        std::env::var_os("TRUNK_SOURCE_DIR").ok_or("the build does not name its source")?;
    let target = std::env::var_os("CARGO_TARGET_DIR").map(PathBuf::from);
    let target = target.unwrap_or_else(|| Path::new(&source).join("../target"));
    Ok(target.join("wasm32-unknown-unknown/app/fenderbench.wasm"))
}

fn fill(staging: &Path) -> Result {
    let worker = staging.join("sw.js");
    strip(staging)?;
    styles::join(staging)?;
    let mut entries = Vec::new();
    walk(staging, "", &mut entries)?;
    // The order in which a disk lists files must not make a new version.
    entries.sort_by(|a, b| a.url.cmp(&b.url));
    let is_later = |entry: &Entry| LATER.iter().any(|folder| entry.url.starts_with(folder));
    let (rest, first): (Vec<_>, Vec<_>) = entries.into_iter().partition(is_later);
    let rest = list(&rest);
    write(&staging.join(LIST), &rest)?;
    write(&worker, &inject(&read(&worker)?, &first, &rest)?)
}

/// Takes the comment lines out of the scripts: they are for readers of the source, and a phone
/// would pay for them.
fn strip(staging: &Path) -> Result {
    let failed = |error| format!("{}: {error}", staging.display());
    for item in fs::read_dir(staging).map_err(failed)? {
        let path = item.map_err(failed)?.path();
        if path.extension().is_some_and(|ending| ending == "js") {
            write(&path, &without_comment_lines(&read(&path)?))?;
        }
    }
    Ok(())
}

fn without_comment_lines(script: &str) -> String {
    let lines = script.lines().map(str::trim_start);
    let lines = lines.filter(|line| !line.is_empty() && !line.starts_with("//"));
    lines.map(|line| format!("{line}\n")).collect()
}

fn retire(staging: &Path) -> Result {
    write(&staging.join("sw.js"), RETIRED)?;
    let page = staging.join("index.html");
    write(&page, &without_policy(&read(&page)?)?)
}

/// Live reload needs what the content security policy forbids.
fn without_policy(page: &str) -> Result<String> {
    let start = page
        .find("<meta http-equiv=\"Content-Security-Policy\"")
        .ok_or("index.html has no content security policy")?;
    let length = page[start..]
        .find('>')
        .ok_or("the policy's tag in index.html has no end")?;
    Ok(format!("{}{}", &page[..start], &page[start + length + 1..]))
}

fn walk(directory: &Path, prefix: &str, entries: &mut Vec<Entry>) -> Result {
    let failed = |error| format!("{}: {error}", directory.display());
    for item in fs::read_dir(directory).map_err(failed)? {
        let item = item.map_err(failed)?;
        let name = format!("{prefix}{}", item.file_name().to_string_lossy());
        if item.path().is_dir() {
            walk(&item.path(), &format!("{name}/"), entries)?;
        } else if name != "sw.js" {
            let bytes = fs::read(item.path()).map_err(failed)?;
            entries.push(Entry {
                url: address(name)?,
                digest: sha256(&bytes),
            });
        }
    }
    Ok(())
}

/// The page is kept under the address it is opened by.
fn address(name: String) -> Result<String> {
    let plain = |c: char| c.is_ascii_alphanumeric() || "._-/".contains(c);
    if name == "index.html" {
        Ok("./".to_owned())
    } else if name.chars().all(plain) {
        Ok(name)
    } else {
        Err(format!(
            "{name}: name it with letters, digits, dots and dashes, so that it is its own address"
        ))
    }
}

/// Addresses with their digests, as JSON.
fn list(entries: &[Entry]) -> String {
    let one = |entry: &Entry| format!("[\"{}\", \"{}\"]", entry.url, integrity(&entry.digest));
    let lines: Vec<String> = entries.iter().map(one).collect();
    format!("[\n  {}\n]", lines.join(",\n  "))
}

fn integrity(digest: &[u8; 32]) -> String {
    format!("sha256-{}", base64(digest))
}

fn inject(template: &str, first: &[Entry], rest: &str) -> Result<String> {
    let filled = replace_once(template, FILES, &list(first))?;
    let filled = replace_once(&filled, REST, &integrity(&sha256(rest.as_bytes())))?;
    // The worker's own text counts too: a version that differs in nothing else is a new one.
    let build = hex(&sha256(filled.as_bytes()));
    replace_once(&filled, BUILD, &build[..16])
}

fn replace_once(text: &str, mark: &str, value: &str) -> Result<String> {
    match text.matches(mark).count() {
        1 => Ok(text.replacen(mark, value, 1)),
        found => Err(format!(
            "sw.js must have the mark {mark} once, and has it {found} times"
        )),
    }
}

fn read(file: &Path) -> Result<String> {
    fs::read_to_string(file).map_err(|error| format!("{}: {error}", file.display()))
}

fn write(file: &Path, text: &str) -> Result {
    fs::write(file, text).map_err(|error| format!("{}: {error}", file.display()))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn comment_lines_go_and_code_stays() {
        let script = "// why\nconst a = 1; // said here\n\n  // more\n  f(\"//x\");\n";
        let code = "const a = 1; // said here\nf(\"//x\");\n";
        assert_eq!(without_comment_lines(script), code);
    }
    use std::path::PathBuf;

    const WORKER: &str = include_str!("../../../public/sw.js");
    const PAGE: &str = include_str!("../../../public/index.html");

    fn staged(name: &str) -> PathBuf {
        let folder = std::env::temp_dir().join(format!("xtask-{}-{name}", std::process::id()));
        fs::create_dir_all(folder.join("icons")).unwrap();
        fs::create_dir_all(folder.join("samples")).unwrap();
        fs::write(folder.join("samples/a.json"), "abc").unwrap();
        fs::write(folder.join("sw.js"), WORKER).unwrap();
        let style = "<link rel=stylesheet href=./a.css>";
        let page = PAGE.replace("</head>", &format!("{style}</head>"));
        fs::write(folder.join("index.html"), page).unwrap();
        fs::write(folder.join("a.css"), "").unwrap();
        fs::write(folder.join("icons/a.png"), "abc").unwrap();
        folder
    }

    fn build_of(worker: &str) -> &str {
        worker
            .split("const BUILD = \"")
            .nth(1)
            .unwrap()
            .split('"')
            .next()
            .unwrap()
    }

    #[test]
    fn every_staged_file_but_the_worker_is_listed_with_its_digest() {
        let folder = staged("fill");
        fill(&folder).unwrap();
        let worker = read(&folder.join("sw.js")).unwrap();
        let rest = read(&folder.join("rest.json")).unwrap();
        fs::remove_dir_all(&folder).unwrap();
        // The digest of "abc", as base64 of the published value.
        assert!(
            worker.contains(
                r#"["icons/a.png", "sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0="]"#
            )
        );
        assert!(worker.contains(r#"["./", "sha256-"#));
        // What a start does not need stands in the list, and the worker knows that list only.
        assert_eq!(
            rest,
            "[\n  [\"samples/a.json\", \"sha256-ungWv48Bz+pBQUDeXa4iI7ADYaOWF3qctBD/YfIAFa0=\"]\n]"
        );
        assert!(!worker.contains("samples/"));
        let digest = integrity(&sha256(rest.as_bytes()));
        assert!(worker.contains(&format!(r#"["rest.json", "{digest}"]"#)));
        assert!(!worker.contains("index.html"));
        assert!(!worker.contains(r#""sw.js""#));
        assert!(
            [BUILD, FILES, REST]
                .iter()
                .all(|mark| !worker.contains(mark))
        );
        assert_eq!(build_of(&worker).len(), 16);
    }

    #[test]
    fn any_changed_byte_makes_another_build() {
        let entries = |digest| {
            [Entry {
                url: "a".into(),
                digest,
            }]
        };
        let one = inject(WORKER, &entries([1; 32]), "[]").unwrap();
        let same = inject(WORKER, &entries([1; 32]), "[]").unwrap();
        let other = inject(WORKER, &entries([2; 32]), "[]").unwrap();
        let rest = inject(WORKER, &entries([1; 32]), "[ ]").unwrap();
        let worker = inject(&format!("{WORKER}//"), &entries([1; 32]), "[]").unwrap();
        assert_eq!(one, same);
        assert_ne!(build_of(&one), build_of(&other));
        assert_ne!(build_of(&one), build_of(&rest));
        assert_ne!(build_of(&one), build_of(&worker));
    }

    #[test]
    fn a_missing_or_doubled_mark_fails() {
        for mark in [BUILD, FILES, REST] {
            assert!(inject(&WORKER.replace(mark, ""), &[], "[]").is_err());
            assert!(inject(&format!("{WORKER}{mark}"), &[], "[]").is_err());
        }
    }

    #[test]
    fn names_that_are_not_their_own_address_fail() {
        assert_eq!(address("index.html".into()).unwrap(), "./");
        assert!(address("a b.js".into()).is_err());
        assert!(address("a\".js".into()).is_err());
    }

    #[test]
    fn a_development_build_keeps_nothing_and_allows_live_reload() {
        let folder = staged("retire");
        retire(&folder).unwrap();
        let worker = read(&folder.join("sw.js")).unwrap();
        let page = read(&folder.join("index.html")).unwrap();
        fs::remove_dir_all(&folder).unwrap();
        assert!(worker.contains("unregister") && !worker.contains("addAll"));
        assert!(!page.contains("Content-Security-Policy"));
        assert!(page.contains("<meta name=\"viewport\""));
    }
}
