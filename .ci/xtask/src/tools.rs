//! Brings what is missing, and leaves alone what the person has.
//!
//! Trunk and the wasm-bindgen tools are installed into a cache outside the clone, so that
//! fresh clones need not compile them again.

use crate::shop::{Result, Shop, run};
use std::path::{Path, PathBuf};

#[derive(Clone, Copy, PartialEq, Eq)]
pub enum Need {
    /// rustfmt and clippy.
    Lints,
    /// Compiling for the browser.
    Wasm,
    /// The wasm-bindgen command line and its test runner.
    Bindgen,
    Trunk,
    /// Chromium and its driver.
    Browser,
    Node,
    /// Python with all it takes to make an environment of its own.
    Python,
}

struct Tool {
    package: &'static str,
    /// The cache folder is named after it.
    folder: &'static str,
    version: &'static str,
    programs: &'static [&'static str],
}

const TRUNK: Tool = Tool {
    package: "trunk",
    folder: "trunk",
    version: "0.21.14",
    programs: &["trunk"],
};

/// Must equal the library's version in Cargo.toml; a test holds them together.
const BINDGEN: Tool = Tool {
    package: "wasm-bindgen-cli",
    folder: "wasm-bindgen",
    version: "0.2.129",
    programs: &["wasm-bindgen", "wasm-bindgen-test-runner"],
};

const OLDEST_NODE: u32 = 20;

pub fn ensure(shop: &mut Shop, needs: &[Need]) -> Result {
    let needed = |need| needs.contains(&need);
    if needed(Need::Lints) {
        lints(shop)?;
    }
    if needed(Need::Wasm) {
        wasm_target(shop)?;
    }
    if needed(Need::Bindgen) {
        cargo_tool(shop, &BINDGEN)?;
    }
    if needed(Need::Trunk) {
        cargo_tool(shop, &TRUNK)?;
        library_source(shop)?;
    }
    let mut programs = Vec::new();
    if needed(Need::Browser) {
        programs.extend([
            ("chromium", "chromium"),
            ("chromedriver", "chromium-driver"),
        ]);
    }
    if needed(Need::Node) {
        programs.extend([("node", "nodejs"), ("npm", "npm")]);
    }
    if needed(Need::Python) {
        programs.extend([
            ("python3", "python3"),
            ("python3 -m ensurepip --version", "python3-venv"),
        ]);
    }
    debian_packages(shop, &programs)?;
    if needed(Need::Node) {
        node_is_recent(shop)
    } else {
        Ok(())
    }
}

fn lints(shop: &Shop) -> Result {
    for (program, component) in [("cargo fmt", "rustfmt"), ("cargo clippy", "clippy")] {
        if shop.ask(&format!("{program} --version")).is_none() {
            shop.run(&format!("rustup component add {component}"))?;
        }
    }
    Ok(())
}

fn wasm_target(shop: &Shop) -> Result {
    if Path::new(&sysroot(shop)?)
        .join("lib/rustlib/wasm32-unknown-unknown")
        .is_dir()
    {
        return Ok(());
    }
    shop.run("rustup target add wasm32-unknown-unknown").map_err(|error| {
        format!("{error}\nThe compiler needs its wasm32-unknown-unknown target: install Rust with rustup, or add the target the way your system does")
    })
}

/// The source of the standard library, which the app is built with.
fn library_source(shop: &Shop) -> Result {
    let source = Path::new(&sysroot(shop)?).join("lib/rustlib/src/rust/library/Cargo.lock");
    if source.is_file() {
        return Ok(());
    }
    shop.run("rustup component add rust-src")
}

fn sysroot(shop: &Shop) -> Result<String> {
    shop.ask("rustc --print sysroot")
        .ok_or_else(|| "rustc does not answer".to_owned())
}

#[derive(Debug, PartialEq, Eq)]
enum Choice {
    OnPath,
    Cached,
    Install,
}

fn choose(wanted: &str, on_path: Option<&str>, cached: Option<&str>) -> Choice {
    if on_path == Some(wanted) {
        Choice::OnPath
    } else if cached == Some(wanted) {
        Choice::Cached
    } else {
        Choice::Install
    }
}

fn cargo_tool(shop: &mut Shop, tool: &Tool) -> Result {
    let home = cache()?.join(format!("{}-{}", tool.folder, tool.version));
    let bin = home.join("bin");
    // Joined to nothing, a program's name is looked up on the PATH.
    let on_path = version(shop, tool, Path::new(""));
    let cached = version(shop, tool, &bin);
    match choose(tool.version, on_path.as_deref(), cached.as_deref()) {
        Choice::OnPath => return Ok(()),
        Choice::Cached => {}
        Choice::Install => {
            let Tool {
                package, version, ..
            } = tool;
            println!(
                "{package} {version} is compiled once, into {}. This takes minutes.",
                home.display()
            );
            if let Some(other) = on_path {
                println!("The version {other} that you have stays as it is.");
            }
            let mut install = shop.command(&format!(
                "cargo install --locked --force --version {version} {package} --root"
            ));
            // Settings meant for this repository's build would spoil the tool's.
            install
                .arg(&home)
                .env_remove("CARGO_TARGET_DIR")
                .env_remove("RUSTFLAGS");
            run(&mut install)?;
        }
    }
    shop.prefer(&bin);
    Ok(())
}

/// The version that all programs of a tool agree on.
fn version(shop: &Shop, tool: &Tool, directory: &Path) -> Option<String> {
    let mut versions = tool.programs.iter().map(|program| {
        let said = shop.ask_program(&directory.join(program), "--version")?;
        said.split_whitespace().nth(1).map(str::to_owned)
    });
    let first = versions.next()??;
    versions
        .all(|other| other.as_ref() == Some(&first))
        .then_some(first)
}

pub fn cache() -> Result<PathBuf> {
    let set = |name| {
        std::env::var_os(name)
            .filter(|value| !value.is_empty())
            .map(PathBuf::from)
    };
    set("XDG_CACHE_HOME")
        .or_else(|| set("HOME").map(|home| home.join(".cache")))
        .map(|cache| cache.join("fenderbench"))
        .ok_or_else(|| "set HOME or XDG_CACHE_HOME, so that tools have a place".to_owned())
}

/// Installs the packages of the programs that are not there, or of the commands that fail.
fn debian_packages(shop: &Shop, programs: &[(&str, &str)]) -> Result {
    let works = |program: &str| match program.contains(' ') {
        true => shop.ask(program).is_some(),
        false => shop.find(program).is_some(),
    };
    let missing = || {
        let gone = programs.iter().filter(|(program, _)| !works(program));
        gone.map(|(_, package)| *package)
            .collect::<Vec<_>>()
            .join(" ")
    };
    let packages = missing();
    if packages.is_empty() {
        return Ok(());
    }
    let by_hand = format!(
        "missing are the Debian packages {packages}, or their like on other systems. Install them:\n  sudo apt-get update && sudo apt-get install {packages}"
    );
    if shop.ask("id -u").as_deref() != Some("0") || shop.find("apt-get").is_none() {
        return Err(by_hand);
    }
    shop.run("apt-get update")?;
    run(shop
        .command(&format!(
            "apt-get install --yes --no-install-recommends {packages}"
        ))
        .env("DEBIAN_FRONTEND", "noninteractive"))?;
    if missing().is_empty() {
        Ok(())
    } else {
        Err(by_hand)
    }
}

fn node_is_recent(shop: &Shop) -> Result {
    let said = shop.ask("node --version").unwrap_or_default();
    match major(&said) {
        Some(found) if found >= OLDEST_NODE => Ok(()),
        _ => Err(format!(
            "Node {OLDEST_NODE} or later is needed, and this is {said:?}"
        )),
    }
}

fn major(version: &str) -> Option<u32> {
    version.strip_prefix('v')?.split('.').next()?.parse().ok()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_right_version_on_the_path_wins_and_a_wrong_one_is_passed_by() {
        assert_eq!(choose("2", Some("2"), None), Choice::OnPath);
        assert_eq!(choose("2", Some("2"), Some("2")), Choice::OnPath);
        assert_eq!(choose("2", Some("3"), Some("2")), Choice::Cached);
        assert_eq!(choose("2", None, Some("2")), Choice::Cached);
        assert_eq!(choose("2", Some("3"), None), Choice::Install);
        assert_eq!(choose("2", Some("3"), Some("1")), Choice::Install);
        assert_eq!(choose("2", None, None), Choice::Install);
    }

    #[test]
    fn the_versions_here_are_the_ones_the_build_files_pin() {
        let cargo = include_str!("../../../Cargo.toml");
        let trunk = include_str!("../../../Trunk.toml");
        let bindgen = BINDGEN.version;
        assert!(cargo.contains(&format!("wasm-bindgen = {{ version = \"={bindgen}\"")));
        assert!(trunk.contains(&format!("wasm_bindgen = \"{bindgen}\"")));
        assert!(trunk.contains(&format!("trunk-version = \"={}\"", TRUNK.version)));
    }

    #[test]
    fn node_versions_are_read() {
        assert_eq!(major("v20.20.2"), Some(20));
        assert_eq!(major("20.20.2"), None);
        assert_eq!(major(""), None);
    }
}
