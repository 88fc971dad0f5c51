//! Checks against independent libraries: Python scripts, and the packages they need.

use crate::count::{self, Count};
use crate::digest::sha256;
use crate::shop::{Result, Shop, run, run_listening};
use crate::tools::cache;
use std::fs;
use std::path::PathBuf;

const SCRIPTS: &str = "tests/outside";

/// Runs every script. Each ends with its own count and fails by its own exit code.
pub fn check(shop: &Shop) -> (Count, Result) {
    let mut total = Count::default();
    let mut result = Ok(());
    let (python, scripts) = match prepared(shop) {
        Ok(prepared) => prepared,
        Err(message) => return (count::judged(total, false), Err(message)),
    };
    for script in scripts {
        let mut command = shop.program(&python);
        command.args(["-B", "-u"]).arg(script);
        let (output, ended) = run_listening(&mut command);
        total += count::judged(count::plain(&output), ended.is_ok());
        // A failed script never hides the ones after it; the first is told.
        result = result.and(ended);
    }
    (total, result)
}

fn prepared(shop: &Shop) -> Result<(PathBuf, Vec<PathBuf>)> {
    let unreadable = |error| format!("{SCRIPTS}: {error}");
    let entries = fs::read_dir(shop.root.join(SCRIPTS)).map_err(unreadable)?;
    let files: std::io::Result<Vec<_>> = entries.map(|entry| Ok(entry?.path())).collect();
    let mut scripts = files.map_err(unreadable)?;
    scripts.retain(|file| file.extension().is_some_and(|ending| ending == "py"));
    scripts.sort_unstable();
    if scripts.is_empty() {
        return Err(format!("{SCRIPTS} has no scripts"));
    }
    Ok((environment(shop)?, scripts))
}

/// The Python of an environment with the packages that the scripts need. It lies beside the
/// other tools, named after what is in it, so that another list of packages, or another
/// Python, makes another one.
fn environment(shop: &Shop) -> Result<PathBuf> {
    let list = shop.root.join(SCRIPTS).join("requirements.txt");
    let list = fs::read_to_string(&list).map_err(|error| format!("{}: {error}", list.display()))?;
    let packages = packages(&list)?;
    let version = shop
        .ask("python3 --version")
        .ok_or_else(|| "python3 does not answer".to_owned())?;
    let home = cache()?.join(format!("python-{}", name(&version, &packages)));
    let python = home.join("bin/python");
    let complete = home.join("complete");
    if complete.is_file() && shop.ask_program(&python, "--version") == Some(version) {
        return Ok(python);
    }
    println!(
        "The packages of {SCRIPTS} are installed once, into {}.",
        home.display()
    );
    // With --clear what an interrupted run left behind is no hindrance.
    run(shop.command("python3 -m venv --clear").arg(&home))?;
    let mut install = shop.program(&python);
    install.args(["-m", "pip", "install", "--no-input"]);
    run(install.args(&packages))?;
    fs::write(&complete, "").map_err(|error| format!("{}: {error}", complete.display()))?;
    Ok(python)
}

/// The packages of a list, each `NAME==VERSION`: nothing else is handed to the installer.
fn packages(list: &str) -> Result<Vec<&str>> {
    let lines = list.lines().map(str::trim);
    let packages: Vec<_> = lines
        .filter(|line| !line.is_empty() && !line.starts_with('#'))
        .collect();
    let plain = |word: &str| {
        let known = |c: char| c.is_ascii_alphanumeric() || "._-".contains(c);
        word.starts_with(|c: char| c.is_ascii_alphanumeric()) && word.chars().all(known)
    };
    for package in &packages {
        if !package
            .split_once("==")
            .is_some_and(|(name, version)| plain(name) && plain(version))
        {
            return Err(format!(
                "{SCRIPTS}/requirements.txt: {package:?} is not NAME==VERSION"
            ));
        }
    }
    Ok(packages)
}

fn name(version: &str, packages: &[&str]) -> String {
    let digest = sha256(format!("{version}\n{}", packages.join("\n")).as_bytes());
    digest
        .iter()
        .take(4)
        .map(|byte| format!("{byte:02x}"))
        .collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn packages_are_names_and_versions_only() {
        let list = "# why\n\nnumpy==2.3.5\n  a_b-c.d==1.0rc1  \n";
        assert_eq!(packages(list), Ok(vec!["numpy==2.3.5", "a_b-c.d==1.0rc1"]));
        for wrong in [
            "numpy",
            "numpy>=2",
            "--index-url==x",
            "-r==1",
            "numpy==2 --pre",
            "numpy @ file",
            "numpy==2 # why",
            "../numpy==1",
            "==2",
        ] {
            assert!(packages(wrong).is_err(), "{wrong}");
        }
    }

    #[test]
    fn other_packages_and_other_pythons_have_other_names() {
        let numpy = name("Python 3.13.1", &["numpy==2.3.5"]);
        assert_eq!(numpy.len(), 8);
        assert_eq!(numpy, name("Python 3.13.1", &["numpy==2.3.5"]));
        assert_ne!(numpy, name("Python 3.14.0", &["numpy==2.3.5"]));
        assert_ne!(numpy, name("Python 3.13.1", &["numpy==2.3.4"]));
        assert_ne!(numpy, name("Python 3.13.1", &["numpy==2.3.5", "a==1"]));
    }

    #[test]
    fn the_list_of_this_repository_is_one() {
        let list = include_str!("../../../tests/outside/requirements.txt");
        assert!(packages(list).is_ok_and(|packages| !packages.is_empty()));
    }
}
