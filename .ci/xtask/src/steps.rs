//! The checks and tests, one after the other, and the count at the end.

use crate::count::{self, Count};
use crate::e2e;
use crate::outside;
use crate::shop::{Result, Shop, run_listening};
use crate::tools::{self, Need};
use std::fs;
use std::process::ExitCode;
use std::time::{Duration, Instant};

struct Step {
    /// Steps of one group run by `cargo xtask test GROUP`.
    group: &'static str,
    title: &'static str,
    needs: &'static [Need],
    work: Work,
}

enum Work {
    /// A command that is right or wrong as a whole.
    Gate(&'static str),
    /// A command whose output says how many tests ran.
    Tests(&'static str),
    /// The pure half against independent libraries.
    Outside,
    /// The built app in a browser.
    Journeys,
}

const STEPS: [Step; 10] = [
    Step {
        group: "format",
        title: "format",
        needs: &[Need::Lints],
        work: Work::Gate("cargo fmt --all --check"),
    },
    Step {
        group: "clippy",
        title: "clippy, native",
        needs: &[Need::Lints],
        work: Work::Gate("cargo clippy --workspace --all-targets -- -D warnings"),
    },
    Step {
        group: "clippy",
        title: "clippy, pure half",
        needs: &[Need::Lints],
        work: Work::Gate("cargo clippy --no-default-features --all-targets -- -D warnings"),
    },
    Step {
        group: "clippy",
        title: "clippy, browser",
        needs: &[Need::Lints, Need::Wasm],
        work: Work::Gate(
            "cargo clippy --target wasm32-unknown-unknown --lib --bins --test web -- -D warnings",
        ),
    },
    Step {
        group: "pure",
        title: "tests, pure half",
        needs: &[],
        work: Work::Tests("cargo test --no-default-features --no-fail-fast"),
    },
    Step {
        group: "pure",
        title: "tests, desk and helper",
        needs: &[],
        work: Work::Tests("cargo test --package desk --package xtask --no-fail-fast"),
    },
    Step {
        group: "outside",
        title: "tests, outside checks",
        needs: &[Need::Python],
        work: Work::Outside,
    },
    Step {
        group: "study",
        title: "tests, study",
        needs: &[],
        work: Work::Gate(STUDY),
    },
    Step {
        group: "web",
        title: "tests, components",
        needs: &[Need::Wasm, Need::Bindgen, Need::Browser],
        work: Work::Tests("cargo test --target wasm32-unknown-unknown --test web"),
    },
    Step {
        group: "journeys",
        title: "tests, journeys",
        needs: &e2e::NEEDS,
        work: Work::Journeys,
    },
];

/// Rules on engines by chance, each held to its bounds.
pub const STUDY: &str = "cargo run --quiet --release --package desk -- study";

/// What is quick enough to run before every commit.
pub fn check(shop: &mut Shop) -> Result<ExitCode> {
    let quick = |step: &&Step| {
        ["format", "clippy", "pure"].contains(&step.group) && !step.needs.contains(&Need::Wasm)
    };
    perform(shop, STEPS.iter().filter(quick).collect())
}

pub fn test(shop: &mut Shop, group: Option<&str>) -> Result<ExitCode> {
    let wanted = |step: &&Step| group.is_none_or(|group| step.group == group);
    perform(shop, STEPS.iter().filter(wanted).collect())
}

fn perform(shop: &mut Shop, steps: Vec<&Step>) -> Result<ExitCode> {
    if steps.is_empty() {
        return Err("the steps are: format clippy pure outside study web journeys".to_owned());
    }
    let start = now();
    let needs: Vec<Need> = steps.iter().flat_map(|step| step.needs).copied().collect();
    tools::ensure(shop, &needs)?;
    let mut times = vec![("tools", start.elapsed(), "ok")];

    let mut total = Count::default();
    for step in steps {
        let start = now();
        let count = step.work.perform(shop);
        let word = if count.failed == 0 { "ok" } else { "FAILED" };
        times.push((step.title, start.elapsed(), word));
        total += count;
    }

    println!();
    for (title, time, word) in &times {
        println!("{title:<24}{:>8.1} s  {word}", time.as_secs_f64());
    }
    let sum: Duration = times.iter().map(|(_, time, _)| *time).sum();
    println!("{:<24}{:>8.1} s\n", "together", sum.as_secs_f64());
    println!("{} passed, {} failed", total.passed, total.failed);
    Ok(ExitCode::from(u8::from(total.failed > 0)))
}

impl Work {
    /// A failed step never hides the ones after it.
    fn perform(&self, shop: &Shop) -> Count {
        let (count, result) = match self {
            Self::Gate(line) => {
                let result = shop.run(line);
                let failed = u64::from(result.is_err());
                (Count { passed: 0, failed }, result)
            }
            Self::Tests(line) => {
                let (output, result) = run_listening(&mut shop.command(line));
                (count::judged(count::cargo(&output), result.is_ok()), result)
            }
            Self::Outside => outside::check(shop),
            Self::Journeys => {
                let report = shop.root.join("target/e2e/report.json");
                // What an earlier run left behind must not be counted.
                let _ = fs::remove_file(&report);
                let result = e2e::perform(shop, "npx playwright test");
                let report = fs::read_to_string(report).unwrap_or_default();
                (
                    count::judged(count::playwright(&report), result.is_ok()),
                    result,
                )
            }
        };
        if let Err(message) = result {
            eprintln!("xtask: {message}");
        }
        count
    }
}

#[expect(
    clippy::disallowed_methods,
    reason = "a helper on the desk, never in a browser"
)]
fn now() -> Instant {
    Instant::now()
}
