//! Who may import whom, and what each room must not know.

use std::fs;
use std::path::Path;

use crate::repository::{Source, has_word, names_behind, nothing, places, rust};

/// Every room and the rooms it may import, in the order of `src/lib.rs`.
const ROOMS: [(&str, &[&str]); 14] = [
    ("quantity", &[]),
    ("form", &["quantity"]),
    ("uncertainty", &["quantity"]),
    ("verdict", &["quantity", "uncertainty"]),
    ("remedy", &["quantity", "form", "uncertainty", "verdict"]),
    // Of uncertainty the words for climate and material, of remedy those for
    // what can be seen; sessions see no float.
    ("session", &["quantity", "uncertainty", "verdict", "remedy"]),
    ("slip", &["quantity", "session"]),
    (
        "assess",
        &[
            "quantity",
            "form",
            "uncertainty",
            "verdict",
            "remedy",
            "session",
        ],
    ),
    (
        "archive",
        &["quantity", "uncertainty", "verdict", "remedy", "session"],
    ),
    // The report names the version of the app, which the archive holds.
    (
        "report",
        &[
            "quantity",
            "form",
            "uncertainty",
            "verdict",
            "remedy",
            "session",
            "slip",
            "assess",
            "archive",
        ],
    ),
    // The preview of a file shows what the archive took out of it.
    (
        "present",
        &[
            "quantity",
            "form",
            "uncertainty",
            "verdict",
            "remedy",
            "session",
            "slip",
            "assess",
            "archive",
            "report",
        ],
    ),
    ("device", &["quantity", "session", "archive"]),
    ("store", &["quantity", "session", "archive", "device"]),
    (
        "ui",
        &[
            "quantity",
            "form",
            "uncertainty",
            "verdict",
            "remedy",
            "session",
            "slip",
            "assess",
            "archive",
            "report",
            "present",
            "device",
            "store",
        ],
    ),
];

/// Rooms that compute: no browser, no clock, no chance.
const PURE: [&str; 11] = [
    "quantity",
    "form",
    "uncertainty",
    "verdict",
    "remedy",
    "session",
    "slip",
    "assess",
    "archive",
    "report",
    "present",
];

/// Rooms through which lengths pass: no floats. `uncertainty` has them, and
/// `verdict` where it asks how far a doubt reaches.
const EXACT: [&str; 6] = ["quantity", "form", "remedy", "session", "slip", "assess"];

/// The rooms a file imports.
fn imports(source: &Source) -> Vec<String> {
    let code: String = source.code().map(|(_, line)| format!("{line}\n")).collect();
    let mut names = names_behind(&code, "crate::");
    // From the file's own module up to the crate, and one more from a module
    // inside the file.
    let mut depth = source.path.split('/').count() - 1;
    if source.path.ends_with("/mod.rs") {
        depth -= 1;
    }
    for supers in [depth, depth + 1] {
        names.extend(names_behind(&code, &"super::".repeat(supers)));
    }
    let room = source.room();
    names.retain(|name| *name != room && ROOMS.iter().any(|(known, _)| known == name));
    names.sort_unstable();
    names.dedup();
    names.into_iter().map(str::to_owned).collect()
}

#[test]
fn rooms_import_only_what_the_map_allows() {
    let mut found = Vec::new();
    for source in rust("src") {
        let Some((room, allowed)) = ROOMS.iter().find(|(room, _)| *room == source.room()) else {
            let is_root = ["src/lib.rs", "src/main.rs"].contains(&source.path.as_str());
            assert!(is_root, "{} is in no room of the map", source.path);
            continue;
        };
        for name in imports(&source) {
            if !allowed.contains(&name.as_str()) {
                found.push(format!("{}: {room} imports {name}", source.path));
            }
        }
    }
    nothing("against the map", &found);
}

#[test]
fn the_map_is_read_rightly() {
    let check = |path: &str, text: &str, expected: &[&str]| {
        let (path, text) = (path.to_owned(), text.to_owned());
        assert_eq!(imports(&Source { path, text }), expected);
    };
    check(
        "src/form/mod.rs",
        "use crate::quantity::Weights;",
        &["quantity"],
    );
    check(
        "src/form/mod.rs",
        "use crate::{form::A, ui::{session, B}, store};",
        &["store", "ui"],
    );
    check(
        "src/form/mod.rs",
        "//! [`crate::ui`]\nuse super::assess::A;",
        &["assess"],
    );
    check(
        "src/form/a.rs",
        "use super::assess::A; super::super::ui::f();",
        &["ui"],
    );
    check(
        "src/archive/v1/read.rs",
        "use super::super::super::ui::A;",
        &["ui"],
    );
    check("src/archive/v1/read.rs", "use super::super::ui::A;", &[]);
    check(
        "src/form/mod.rs",
        "my_crate::ui::f(); crate::form::f();",
        &[],
    );
}

#[test]
fn the_map_is_in_reading_order() {
    let lib = fs::read_to_string(Path::new(env!("CARGO_MANIFEST_DIR")).join("src/lib.rs")).unwrap();
    let rooms = lib
        .lines()
        .filter_map(|line| line.strip_prefix("pub mod ")?.strip_suffix(';'));
    assert_eq!(rooms.collect::<Vec<_>>(), ROOMS.map(|(room, _)| room));
    for (n, (room, allowed)) in ROOMS.iter().enumerate() {
        let before = &ROOMS[..n];
        let known = |name: &&str| before.iter().any(|(room, _)| room == name);
        assert!(
            allowed.iter().all(known),
            "{room} imports what stands after it"
        );
    }
}

#[test]
fn each_room_keeps_out_what_it_must_not_know() {
    let found = places(&rust("src"), |source, line| {
        let room = source.room();
        let has = |words: &[&str]| words.iter().any(|word| has_word(line, word));
        let pure = PURE.contains(&room);
        let lengths = EXACT.contains(&room);
        let browser = [
            "web_sys",
            "js_sys",
            "wasm_bindgen",
            "leptos",
            "gloo_storage",
        ];
        let chance = ["Instant", "SystemTime", "rand", "getrandom"];
        lengths && has(&["f32", "f64"])
            || pure && (has(&browser) || has(&chance))
            || !["archive", "report"].contains(&room) && has(&["serde", "serde_json"])
            || room == "store" && has(&["leptos"])
            || room == "ui" && has(&["gloo_storage", "local_storage", "indexed_db"])
    });
    nothing("in the wrong room", &found);
}

#[test]
fn screens_hold_no_storage_words_even_in_comments() {
    for source in rust("src/ui") {
        for word in ["serde", "gloo_storage", "local_storage", "indexed_db"] {
            assert!(!source.text.contains(word), "{}: {word}", source.path);
        }
    }
}
