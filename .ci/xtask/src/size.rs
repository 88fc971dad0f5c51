//! Holds what a phone downloads against the written budget.

use crate::app;
use crate::shop::{Result, Shop};
use crate::tools::{self, Need};
use std::fs;
use std::process::Stdio;

struct File {
    name: String,
    raw: u64,
    gzip: u64,
    brotli: u64,
}

pub fn command(shop: &mut Shop) -> Result {
    tools::ensure(shop, &[Need::Wasm, Need::Bindgen, Need::Trunk, Need::Node])?;
    app::build(shop)?;
    let page =
        fs::read_to_string(shop.dist().join("index.html")).map_err(|error| error.to_string())?;
    let budget =
        fs::read_to_string(shop.root.join(".ci/budget.txt")).map_err(|error| error.to_string())?;
    let files = measure(shop)?;

    println!("\n{:>9}{:>9}{:>9}", "raw", "gzip -9", "brotli");
    for file in &files {
        let first = if in_first_load(&page, &file.name) {
            "  first load"
        } else {
            ""
        };
        println!(
            "{:>9}{:>9}{:>9}  {}{first}",
            file.raw, file.gzip, file.brotli, file.name
        );
    }
    let sum = |size: fn(&File) -> u64| files.iter().map(size).sum::<u64>();
    println!(
        "{:>9}{:>9}{:>9}  together\n",
        sum(|f| f.raw),
        sum(|f| f.gzip),
        sum(|f| f.brotli)
    );

    let over = hold(&budget, &files, &page)?;
    if over.is_empty() {
        Ok(())
    } else {
        Err(format!("over the budget: {}", over.join(", ")))
    }
}

fn measure(shop: &Shop) -> Result<Vec<File>> {
    let output = shop
        .command("node .ci/size.mjs target/dist")
        .stderr(Stdio::inherit())
        .output()
        .map_err(|error| format!("node does not start: {error}"))?;
    if !output.status.success() {
        return Err("the sizes could not be measured".to_owned());
    }
    let text = String::from_utf8_lossy(&output.stdout);
    text.lines()
        .map(|line| parse(line).ok_or_else(|| format!("not a size: {line:?}")))
        .collect()
}

fn parse(line: &str) -> Option<File> {
    let mut words = line.split('\t');
    let mut next = || words.next()?.parse().ok();
    let (raw, gzip, brotli) = (next()?, next()?, next()?);
    Some(File {
        name: words.next()?.to_owned(),
        raw,
        gzip,
        brotli,
    })
}

/// The page, all that it names, and the worker that it registers. Not icons: a browser takes
/// one of them, after everything else. The names are told by their contents' digest, so one
/// that stands in the page is meant, quoted or not.
fn in_first_load(page: &str, name: &str) -> bool {
    ["index.html", "sw.js"].contains(&name) || (page.contains(name) && !name.starts_with("icons/"))
}

/// Prints each line of the budget with what is used of it, and returns those that are over.
fn hold(budget: &str, files: &[File], page: &str) -> Result<Vec<String>> {
    let mut over = Vec::new();
    let lines = budget.lines().map(str::trim);
    for line in lines.filter(|line| !line.is_empty() && !line.starts_with('#')) {
        let (pattern, limit) = line
            .split_once(char::is_whitespace)
            .and_then(|(pattern, limit)| Some((pattern, limit.trim().parse::<u64>().ok()?)))
            .ok_or_else(|| format!("not a line of a budget: {line:?}"))?;
        let counted: Vec<&File> = files
            .iter()
            .filter(|file| match pattern {
                "first-load" => in_first_load(page, &file.name),
                _ => matches(pattern, &file.name),
            })
            .collect();
        if counted.is_empty() {
            return Err(format!("no file is counted by the budget's {pattern}"));
        }
        let used: u64 = counted.iter().map(|file| file.brotli).sum();
        println!("{pattern:<16}{used:>9} of {limit:>7} bytes brotli");
        if used > limit {
            over.push(pattern.to_owned());
        }
    }
    Ok(over)
}

/// One star stands for anything.
fn matches(pattern: &str, name: &str) -> bool {
    match pattern.split_once('*') {
        Some((start, end)) => {
            name.len() >= start.len() + end.len() && name.starts_with(start) && name.ends_with(end)
        }
        None => pattern == name,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const PAGE: &str = r#"<link href="./a.css"><script src="./b.js">"#;

    fn files() -> Vec<File> {
        [
            "1\t1\t10\tindex.html",
            "1\t1\t20\ta.css",
            "1\t1\t40\tb.js",
            "1\t1\t80\ticons/i.png",
        ]
        .map(|line| parse(line).unwrap())
        .into()
    }

    #[test]
    fn the_first_load_is_the_page_and_what_it_names() {
        assert_eq!(hold("first-load 70", &files(), PAGE), Ok(vec![]));
        assert_eq!(
            hold("first-load 69", &files(), PAGE),
            Ok(vec!["first-load".to_owned()])
        );
    }

    #[test]
    fn patterns_sum_their_files() {
        let budget = "# brotli\n\n*.css 20\n*.js  39\nicons/* 79\nindex.html 10\n";
        let over = vec!["*.js".to_owned(), "icons/*".to_owned()];
        assert_eq!(hold(budget, &files(), PAGE), Ok(over));
    }

    #[test]
    fn a_budget_that_counts_nothing_is_a_mistake() {
        assert!(hold("*.woff2 1", &files(), PAGE).is_err());
        assert!(hold("*.css many", &files(), PAGE).is_err());
        assert!(!matches("ab*ba", "aba"));
    }
}
