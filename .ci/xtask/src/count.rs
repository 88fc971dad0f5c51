//! Reads how many tests ran out of what the test runners say.

use std::ops::AddAssign;

#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Count {
    pub passed: u64,
    pub failed: u64,
}

impl AddAssign for Count {
    fn add_assign(&mut self, other: Self) {
        self.passed += other.passed;
        self.failed += other.failed;
    }
}

/// The sum of all lines such as `test result: ok. 5 passed; 0 failed; 0 ignored; …`, which
/// both cargo's and wasm-bindgen's runners print once for every test binary.
pub fn cargo(output: &str) -> Count {
    let mut sum = Count::default();
    for line in output.lines() {
        if let Some((_, numbers)) = line.split_once("test result: ") {
            sum += Count {
                passed: number_before(numbers, " passed"),
                failed: number_before(numbers, " failed"),
            };
        }
    }
    sum
}

/// The `stats` at the end of Playwright's JSON report. A flaky test passed only when run
/// again, and that is a failure here.
pub fn playwright(report: &str) -> Count {
    let stats = report
        .rfind("\"stats\"")
        .map_or("", |start| &report[start..]);
    Count {
        passed: number_after(stats, "\"expected\":"),
        failed: number_after(stats, "\"unexpected\":") + number_after(stats, "\"flaky\":"),
    }
}

/// The last line that is `N passed, N failed` and nothing else.
pub fn plain(output: &str) -> Count {
    let counted = |line: &str| {
        let (passed, failed) = line.trim().split_once(" passed, ")?;
        Some(Count {
            passed: passed.parse().ok()?,
            failed: failed.strip_suffix(" failed")?.parse().ok()?,
        })
    };
    output.lines().rev().find_map(counted).unwrap_or_default()
}

/// What a run counts for. A run that broke off without naming a failure, or that ran nothing,
/// is itself one failure.
pub fn judged(count: Count, succeeded: bool) -> Count {
    let nothing_ran = count.passed + count.failed == 0;
    let failed = match count.failed {
        0 if nothing_ran || !succeeded => 1,
        failed => failed,
    };
    Count { failed, ..count }
}

fn number_before(text: &str, label: &str) -> u64 {
    let before = text.split_once(label).map_or("", |(before, _)| before);
    let start = before
        .rfind(|c: char| !c.is_ascii_digit())
        .map_or(0, |at| at + 1);
    before[start..].parse().unwrap_or(0)
}

fn number_after(text: &str, label: &str) -> u64 {
    let after = text
        .split_once(label)
        .map_or("", |(_, after)| after.trim_start());
    let end = after
        .find(|c: char| !c.is_ascii_digit())
        .unwrap_or(after.len());
    after[..end].parse().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn count(passed: u64, failed: u64) -> Count {
        Count { passed, failed }
    }

    #[test]
    fn test_binaries_add_up() {
        let output = "\
running 12 tests
test a ... ok
test result: ok. 12 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.01s
   Doc-tests fenderbench
test result: FAILED. 3 passed; 2 failed; 1 ignored; 0 measured; 0 filtered out
test result: \u{1b}[32mok\u{1b}[0m. 1 passed; 0 failed; 0 ignored
";
        assert_eq!(cargo(output), count(16, 2));
        assert_eq!(cargo("error: could not compile"), count(0, 0));
    }

    #[test]
    fn the_browser_report_is_read_from_its_stats() {
        let report = r#"{ "suites": [{ "title": "\"stats\": { \"expected\": 9 }" }],
  "stats": { "startTime": "2026", "duration": 4.5, "expected": 7, "skipped": 1, "unexpected": 2, "flaky": 1 } }"#;
        assert_eq!(playwright(report), count(7, 3));
        assert_eq!(playwright(""), count(0, 0));
    }

    #[test]
    fn a_plain_count_is_a_line_of_its_own() {
        assert_eq!(
            plain("1 passed, 1 failed\nmeans ok\n6 passed, 2 failed\n"),
            count(6, 2)
        );
        assert_eq!(plain("  6 passed, 0 failed\r\nbye\n"), count(6, 0));
        for other in [
            "",
            "x 6 passed, 0 failed",
            "6 passed",
            "6 passed, 0 failed.",
            "-1 passed, 0 failed",
        ] {
            assert_eq!(plain(other), count(0, 0), "{other}");
        }
    }

    #[test]
    fn silence_and_breakdown_are_failures() {
        assert_eq!(judged(count(5, 0), true), count(5, 0));
        assert_eq!(judged(count(5, 2), false), count(5, 2));
        assert_eq!(judged(count(5, 0), false), count(5, 1));
        assert_eq!(judged(count(0, 0), true), count(0, 1));
    }
}
