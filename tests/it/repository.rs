//! The repository's own files, to be read by tests.

use std::fs;
use std::path::Path;

pub struct Source {
    /// Path from the top level, with slashes.
    pub path: String,
    pub text: String,
}

impl Source {
    /// The room a file of `src` is in.
    pub fn room(&self) -> &str {
        self.path.split('/').nth(1).unwrap_or_default()
    }

    /// Lines with their numbers, without comments.
    pub fn code(&self) -> impl Iterator<Item = (usize, &str)> {
        (1..).zip(self.text.lines()).map(|(number, line)| {
            let code = line.split_once("//").map_or(line, |(code, _)| code);
            (number, code)
        })
    }

    pub fn has_ending(&self, endings: &[&str]) -> bool {
        let ending = Path::new(&self.path).extension();
        ending.is_some_and(|ending| endings.iter().any(|e| ending == *e))
    }
}

/// The text files below a path of the repository, without what tools made.
pub fn sources(below: &str) -> Vec<Source> {
    let top = Path::new(env!("CARGO_MANIFEST_DIR"));
    let mut found = Vec::new();
    let mut open = vec![top.join(below)];
    while let Some(path) = open.pop() {
        let name = path.file_name().unwrap_or_default().to_string_lossy();
        if path.is_dir() {
            let made = [
                "target",
                "node_modules",
                ".git",
                "test-results",
                "playwright-report",
            ];
            if !made.contains(&name.as_ref()) {
                let entries = fs::read_dir(&path).unwrap();
                open.extend(entries.map(|entry| entry.unwrap().path()));
            }
        } else if let Ok(text) = fs::read_to_string(&path) {
            let path = path.strip_prefix(top).unwrap().to_string_lossy();
            let path = path.replace('\\', "/");
            found.push(Source { path, text });
        }
    }
    found.sort_by(|a, b| a.path.cmp(&b.path));
    assert!(!found.is_empty(), "nothing in {below}");
    found
}

pub fn rust(below: &str) -> Vec<Source> {
    let mut found = sources(below);
    found.retain(|source| source.has_ending(&["rs"]));
    found
}

pub fn nothing(what: &str, found: &[String]) {
    assert!(found.is_empty(), "{what}:\n{}", found.join("\n"));
}

/// Places of code lines in which `is_wrong`.
pub fn places(sources: &[Source], is_wrong: impl Fn(&Source, &str) -> bool) -> Vec<String> {
    let mut found = Vec::new();
    for source in sources {
        for (number, line) in source.code() {
            if is_wrong(source, line) {
                found.push(format!("{}:{number}: {}", source.path, line.trim()));
            }
        }
    }
    found
}

pub fn is_word(c: char) -> bool {
    c.is_alphanumeric() || c == '_'
}

pub fn has_word(line: &str, word: &str) -> bool {
    line.split(|c| !is_word(c)).any(|w| w == word)
}

/// The names that stand behind `prefix` in a text, also in a braced list.
pub fn names_behind<'a>(text: &'a str, prefix: &str) -> Vec<&'a str> {
    let mut names = Vec::new();
    for (at, _) in text.match_indices(prefix) {
        if text[..at].ends_with(is_word) || text[..at].ends_with("::") {
            continue;
        }
        let rest = &text[at + prefix.len()..];
        match rest.strip_prefix('{') {
            None => names.extend(rest.split(|c| !is_word(c)).next()),
            Some(list) => {
                let mut depth = 1;
                let mut fresh = true;
                for (at, c) in list.char_indices() {
                    match c {
                        '{' => depth += 1,
                        '}' => depth -= 1,
                        ',' if depth == 1 => fresh = true,
                        _ if depth == 1 && fresh && is_word(c) => {
                            names.extend(list[at..].split(|c| !is_word(c)).next());
                            fresh = false;
                        }
                        _ => {}
                    }
                    if depth == 0 {
                        break;
                    }
                }
            }
        }
    }
    names
}
