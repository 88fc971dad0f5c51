//! What is done with the built app in a browser, from tests/e2e.

use crate::app;
use crate::shop::{Result, Shop, run};
use crate::tools::Need;
use std::fs;
use std::process::Command;

pub const NEEDS: [Need; 5] = [
    Need::Wasm,
    Need::Bindgen,
    Need::Trunk,
    Need::Browser,
    Need::Node,
];

/// Runs a command line in tests/e2e, with the app built and the packages installed.
pub fn perform(shop: &Shop, line: &str) -> Result {
    app::build(shop)?;
    packages(shop)?;
    run(&mut command(shop, line))
}

/// The lock as it was when the packages were installed: npm ci always starts anew.
fn packages(shop: &Shop) -> Result {
    let home = shop.root.join("tests/e2e");
    let installed = home.join("node_modules/.installed-lock");
    let lock = fs::read(home.join("package-lock.json"))
        .map_err(|error| format!("package-lock.json: {error}"))?;
    if !fs::read(&installed).is_ok_and(|old| old == lock) {
        run(&mut command(shop, "npm ci --no-audit --no-fund"))?;
        fs::write(&installed, lock).map_err(|error| format!("{}: {error}", installed.display()))?;
    }
    Ok(())
}

fn command(shop: &Shop, line: &str) -> Command {
    let mut command = shop.command(line);
    if let Some(chromium) = shop.find("chromium") {
        command.env("CHROMIUM", chromium);
    }
    command.current_dir(shop.root.join("tests/e2e"));
    command
}
