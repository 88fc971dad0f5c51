//! The helper: one command each for what a developer or the CI does with this repository.
//!
//! No dependencies, so it is there seconds after a clone.

mod app;
mod bench;
mod bridge;
mod constants;
mod count;
mod digest;
mod drawings;
mod e2e;
mod module;
mod outside;
mod precache;
mod serve;
mod shop;
mod size;
mod split;
mod steps;
mod styles;
mod tools;

use shop::{Result, Shop};
use std::process::ExitCode;

const USAGE: &str = "\
cargo xtask serve [--port N]   build the app when needed and serve it (default port 8080)
cargo xtask check              quick: format, clippy, pure tests
cargo xtask test [STEP]        everything, or one of: format clippy pure outside study web journeys
cargo xtask size               build the app when needed and hold its size against the budget
cargo xtask assess FILE        what the app says about an exported session
cargo xtask study              whether rules keep their bounds, on engines by chance
cargo xtask bench              how fast the pure half and the built app are, against their budgets
cargo xtask precache           the build's own hook: fill the service worker's file list
";

fn main() -> ExitCode {
    let args: Vec<String> = std::env::args().skip(1).collect();
    let args: Vec<&str> = args.iter().map(String::as_str).collect();
    match dispatch(&args) {
        Ok(code) => code,
        Err(message) => {
            eprintln!("xtask: {message}");
            ExitCode::FAILURE
        }
    }
}

fn dispatch(args: &[&str]) -> Result<ExitCode> {
    let mut shop = Shop::new();
    let done = |()| ExitCode::SUCCESS;
    match args {
        ["serve", options @ ..] => serve::command(&mut shop, options).map(done),
        ["check"] => steps::check(&mut shop),
        ["test"] => steps::test(&mut shop, None),
        ["test", name] => steps::test(&mut shop, Some(name)),
        ["size"] => size::command(&mut shop).map(done),
        ["bench"] => bench::command(&mut shop),
        ["study"] => shop.run(steps::STUDY).map(|()| ExitCode::SUCCESS),
        // Writes to its own streams and ends with its own code.
        ["assess", ..] => shop.desk(args),
        ["precache"] => precache::command().map(done),
        ["help" | "--help" | "-h"] => {
            print!("{USAGE}");
            Ok(ExitCode::SUCCESS)
        }
        _ => Err(format!("this is not one of the commands:\n\n{USAGE}")),
    }
}
