//! Builds the app people load, when anything it is made of has changed.

use crate::digest::{hex, sha256};
use crate::shop::{Result, Shop};
use std::fs;
use std::path::Path;

const INPUTS: [&str; 8] = [
    "src",
    "style",
    "public",
    "Cargo.toml",
    "Cargo.lock",
    "Trunk.toml",
    ".cargo",
    ".ci/xtask",
];

/// The standard library is built along with the app, for size, and a panic is a trap without
/// words: a tenth off the first load. The pages' own rescue script notices the trap. These are
/// options that the stable compiler has but calls unstable, hence the first one; without all
/// of them the app is the same, only larger. But for the last two, for splitting the program
/// (`split.rs`): functions that happen to be alike stay two, so that their names are their own,
/// and the linker tells who needs which constant.
const SMALLER: [(&str, &str); 4] = [
    ("RUSTC_BOOTSTRAP", "1"),
    ("CARGO_UNSTABLE_BUILD_STD", "std,panic_abort"),
    ("CARGO_UNSTABLE_BUILD_STD_FEATURES", "optimize_for_size"),
    (
        "CARGO_TARGET_WASM32_UNKNOWN_UNKNOWN_RUSTFLAGS",
        "-Zunstable-options -Cpanic=immediate-abort -Zlocation-detail=none -Zfmt-debug=none -Zmerge-functions=disabled -Clink-arg=--emit-relocs",
    ),
];

pub fn build(shop: &Shop) -> Result {
    let stamp = shop.root.join("target/dist.stamp");
    // Taken before the build: what is edited during it belongs to the next one.
    let fingerprint = fingerprint(shop)?;
    let current = || Some(format!("{fingerprint} {}", built(shop)?));
    if current().is_some_and(|current| fs::read_to_string(&stamp).is_ok_and(|old| old == current)) {
        println!("The app in target/dist is up to date.");
        return Ok(());
    }
    // Trunk builds without a network, so whatever is missing must come first. What the
    // standard library is made of comes only for its target, and only with these options.
    shop.run("cargo fetch --locked")?;
    let library = "cargo fetch --locked --target wasm32-unknown-unknown";
    crate::shop::run(shop.command(library).envs(SMALLER))?;
    let mut trunk = shop.command("trunk build --release");
    trunk.envs(SMALLER);
    // Trunk wants "true" where the convention is any value.
    if std::env::var_os("NO_COLOR").is_some() {
        trunk.env("NO_COLOR", "true");
    }
    crate::shop::run(&mut trunk)?;
    let current = current().ok_or("the build left no worker in target/dist")?;
    fs::write(&stamp, current).map_err(|error| format!("{}: {error}", stamp.display()))
}

/// Which build lies in target/dist: a development build by Trunk alone replaces it too. The
/// worker holds the digests of all other files.
fn built(shop: &Shop) -> Option<String> {
    let worker = fs::read(shop.dist().join("sw.js")).ok()?;
    Some(hex(&sha256(&worker)))
}

/// Contents rather than times: a checkout that changes nothing needs no build, and one that
/// brings an older file back does.
fn fingerprint(shop: &Shop) -> Result<String> {
    let compiler = shop.ask("rustc -vV").ok_or("rustc does not answer")?;
    let mut lines = vec![compiler];
    for input in INPUTS {
        collect(&shop.root, Path::new(input), &mut lines)?;
    }
    lines.sort();
    Ok(hex(&sha256(lines.join("\n").as_bytes())))
}

fn collect(root: &Path, input: &Path, lines: &mut Vec<String>) -> Result {
    let path = root.join(input);
    let failed = |error| format!("{}: {error}", path.display());
    if path.is_dir() {
        for item in fs::read_dir(&path).map_err(failed)? {
            let name = item.map_err(failed)?.file_name();
            collect(root, &input.join(name), lines)?;
        }
    } else {
        let digest = sha256(&fs::read(&path).map_err(failed)?);
        lines.push(format!("{} {}", input.display(), hex(&digest)));
    }
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn contents_and_names_count_and_order_does_not() {
        let root = std::env::temp_dir().join(format!("xtask-{}-app", std::process::id()));
        let lines = |files: &[(&str, &str)]| {
            fs::create_dir_all(root.join("src")).unwrap();
            for (name, text) in files {
                fs::write(root.join("src").join(name), text).unwrap();
            }
            let mut lines = Vec::new();
            collect(&root, Path::new("src"), &mut lines).unwrap();
            lines.sort();
            fs::remove_dir_all(&root).unwrap();
            lines
        };
        let first = lines(&[("a", "1"), ("b", "2")]);
        assert_eq!(first.len(), 2);
        assert_eq!(first, lines(&[("b", "2"), ("a", "1")]));
        assert_ne!(first, lines(&[("a", "1"), ("b", "3")]));
        assert_ne!(first, lines(&[("a", "1"), ("c", "2")]));
    }
}
