//! The house: how long a file may be, where colours live, what no file may
//! hold. These tests read the repository's own files.

use std::fs;
use std::path::Path;

use crate::repository::{is_word, names_behind, nothing, places, rust, sources};

/// Everything the top level may hold besides entries that start with a dot.
const TOP_LEVEL: [&str; 10] = [
    "Cargo.toml",
    "Cargo.lock",
    "README.md",
    "DEVELOPERS.md",
    "LICENSE",
    "Trunk.toml",
    "src",
    "style",
    "public",
    "tests",
];

#[test]
fn files_are_short() {
    let mut all = rust("src");
    all.extend(sources("style"));
    all.extend(
        sources("tests")
            .into_iter()
            .filter(|s| s.has_ending(&["rs", "mjs"])),
    );
    let mut found = Vec::new();
    for source in &all {
        let most = if source.path.starts_with("src/ui/") {
            200
        } else {
            400
        };
        let lines = source.text.lines().count();
        if most < lines {
            found.push(format!("{}: {lines} lines, at most {most}", source.path));
        }
    }
    nothing("too long", &found);
}

#[test]
fn the_top_level_is_short() {
    let entries = fs::read_dir(env!("CARGO_MANIFEST_DIR")).unwrap();
    let names = entries.map(|entry| entry.unwrap().file_name().to_string_lossy().into_owned());
    let mut names: Vec<_> = names
        .filter(|name| !name.starts_with('.') && name != "target")
        .collect();
    names.sort_unstable();
    let mut expected = TOP_LEVEL.map(str::to_owned);
    expected.sort_unstable();
    assert_eq!(names, expected);
}

fn has_colour(line: &str) -> bool {
    let functions = [
        "rgb(", "rgba(", "hsl(", "hsla(", "hwb(", "lab(", "lch(", "oklab(", "oklch(",
    ];
    let hex = line.match_indices('#').any(|(at, _)| {
        let digits = line[at + 1..].chars().take_while(|c| is_word(*c));
        let digits: String = digits.collect();
        let is_hex = digits.chars().all(|c| c.is_ascii_hexdigit());
        is_hex && [3, 4, 6, 8].contains(&digits.len())
    });
    hex || functions.iter().any(|function| line.contains(function))
}

#[test]
fn colours_live_in_the_tokens() {
    let mut all = rust("src");
    all.extend(sources("style"));
    all.extend(
        sources("public")
            .into_iter()
            .filter(|s| s.has_ending(&["js"])),
    );
    all.retain(|source| source.path != "style/tokens.css");
    nothing("a colour", &places(&all, |_, line| has_colour(line)));
    for colour in ["#fff", "color: #A1b2C3;", "rgb(1 2 3)", "#00000080"] {
        assert!(has_colour(colour), "{colour}");
    }
    for other in ["#[test]", "#main", "#12345", "url(#a-shape)", "#feed_me"] {
        assert!(!has_colour(other), "{other}");
    }
}

#[test]
fn every_style_is_linked() {
    let top = Path::new(env!("CARGO_MANIFEST_DIR"));
    let index = fs::read_to_string(top.join("public/index.html")).unwrap();
    for source in sources("style") {
        let link = format!("href=\"../{}\"", source.path);
        assert!(index.contains(&link), "{} is not linked", source.path);
    }
}

#[test]
fn screens_have_no_style_attributes() {
    // Refused by the content security policy; `style:width` and classes are not.
    let found = places(&rust("src/ui"), |_, line| {
        !names_behind(line, "style=").is_empty()
    });
    nothing("a style attribute", &found);
}

/// Words put together here, so that this file does not hold them.
fn joined<const N: usize>(pieces: [[&str; 2]; N]) -> [String; N] {
    pieces.map(|pieces| pieces.concat())
}

#[test]
fn nothing_is_skipped_or_left_open() {
    let words = joined([
        ["to", "do!"],
        ["unimple", "mented!"],
        ["#[ig", "nore"],
        ["#[should_", "panic"],
        ["test.sk", "ip"],
        ["describe.sk", "ip"],
        ["test.fix", "me"],
        ["test.on", "ly"],
        ["describe.on", "ly"],
    ]);
    let mut all = sources("src");
    all.extend(sources("tests"));
    all.extend(sources(".ci"));
    all.retain(|source| source.has_ending(&["rs", "mjs", "js"]));
    let found = places(&all, |_, line| words.iter().any(|word| line.contains(word)));
    nothing("skipped or open", &found);
}

#[test]
fn no_file_names_a_machine() {
    let words = joined([
        ["/wo", "rk/"],
        ["../sha", "red"],
        ["/ho", "me/"],
        ["/ro", "ot/"],
        ["/Us", "ers/"],
        ["/t", "mp/"],
        ["C:", "\\"],
    ]);
    let mut found = Vec::new();
    for source in sources(".") {
        for (number, line) in (1..).zip(source.text.lines()) {
            if words.iter().any(|word| line.contains(word)) {
                found.push(format!("{}:{number}: {line}", source.path));
            }
        }
    }
    nothing("a machine's path", &found);
}

#[test]
fn every_table_is_used() {
    let tests: String = rust("tests/it")
        .into_iter()
        .map(|source| source.text)
        .collect();
    for table in sources("tests/golden") {
        let name = table.path.rsplit('/').next().unwrap();
        assert!(
            tests.contains(&format!("\"{name}\"")),
            "{name} is in no test"
        );
    }
}
