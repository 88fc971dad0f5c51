//! The desk: the app's pure half without a browser.

mod assess;
mod bench;
mod budgets;
mod fits;
mod plan;
mod sample;
mod study;

use std::ffi::{OsStr, OsString};
use std::io::Write;
use std::process::ExitCode;

const USAGE: &str = "\
desk assess FILE   what the app says about an exported session, as JSON
desk bench         how long the pure half takes, against its budgets
desk fits          fitted ovals of invented features, for an outside check
desk generated N   a session of N readings as the bench uses it
desk study         whether rules keep their bounds, on engines by chance
desk study PART    one of them: journals, coverage; PART-building with the seeds it was built with
desk sample        the names of the invented sessions that come with the app
desk sample NAME   one of them
desk budgets       uncertainty budgets by chance, as JSON lines to be computed again
desk study slips   how well slips are caught on engines by chance, against its bounds
desk study slips-building   the same on the engines the check is built with
";

/// What is asked for.
#[derive(Debug, PartialEq, Eq)]
enum Order<'a> {
    Assess(&'a OsStr),
    Bench,
    Fits,
    Generated(usize),
    Samples,
    Sample(&'a str),
    Budgets,
    Study(study::Study),
    Help,
}

/// What a command has to say, and whether what it held is true.
struct Answer {
    text: String,
    holds: bool,
}

/// The exit code where there is no answer. Not 1: that is a bench that was
/// done and misses a budget.
const UNUSABLE: u8 = 2;

fn main() -> ExitCode {
    // Not as text: a file may have any name.
    let args: Vec<OsString> = std::env::args_os().skip(1).collect();
    let answer = match order(&args) {
        Some(order) => follow(order),
        None => Err(format!("this is not one of the commands:\n\n{USAGE}")),
    };
    // `print!` would panic where the reader at the other end has gone.
    let written = answer.and_then(|answer| {
        let mut out = std::io::stdout().lock();
        let written = out.write_all(answer.text.as_bytes());
        let written = written.and_then(|()| out.flush());
        let failed = |error| format!("the answer cannot be written: {error}.");
        written.map(|()| answer.holds).map_err(failed)
    });
    match written {
        Ok(true) => ExitCode::SUCCESS,
        Ok(false) => ExitCode::FAILURE,
        Err(why) => {
            tell(&why);
            ExitCode::from(UNUSABLE)
        }
    }
}

fn order(args: &[OsString]) -> Option<Order<'_>> {
    let (command, rest) = args.split_first()?;
    match (command.to_str()?, rest) {
        ("assess", [file]) => Some(Order::Assess(file)),
        ("bench", []) => Some(Order::Bench),
        ("fits", []) => Some(Order::Fits),
        ("generated", [number]) => number.to_str()?.parse().ok().map(Order::Generated),
        ("sample", []) => Some(Order::Samples),
        ("sample", [name]) => Some(Order::Sample(name.to_str()?)),
        ("budgets", []) => Some(Order::Budgets),
        ("study", []) => Some(Order::Study(study::ALL)),
        ("study", [name]) => study::named(name.to_str()?).map(Order::Study),
        ("help" | "--help" | "-h", []) => Some(Order::Help),
        _ => None,
    }
}

fn follow(order: Order<'_>) -> Result<Answer, String> {
    let answer = |text| Answer { text, holds: true };
    match order {
        Order::Assess(file) => assess::command(file.as_ref()).map(answer),
        Order::Bench => bench::command(),
        Order::Fits => fits::text().map(answer),
        Order::Generated(readings) => bench::text(readings).map(answer),
        Order::Samples => Ok(answer(sample::names())),
        Order::Budgets => Ok(answer(budgets::text())),
        Order::Study(part) => study::command(part),
        // To the byte what the app would export, so that it can be compared.
        Order::Sample(name) => sample::text(name).map(answer),
        Order::Help => Ok(answer(USAGE.to_owned())),
    }
}

/// A sentence for the person, apart from the answer. Nothing can be done
/// where even this cannot be written.
fn tell(sentence: &str) {
    let _ = writeln!(std::io::stderr(), "desk: {sentence}");
}

#[cfg(test)]
mod tests {
    use super::*;

    fn ordered(args: &[&str]) -> Option<String> {
        let args: Vec<OsString> = args.iter().map(OsString::from).collect();
        order(&args).map(|order| format!("{order:?}"))
    }

    #[test]
    fn every_command_is_known_by_its_name() {
        assert_eq!(
            ordered(&["assess", "a.json"]).unwrap(),
            "Assess(\"a.json\")"
        );
        assert_eq!(ordered(&["bench"]).unwrap(), "Bench");
        assert_eq!(ordered(&["fits"]).unwrap(), "Fits");
        assert_eq!(ordered(&["generated", "9"]).unwrap(), "Generated(9)");
        assert_eq!(ordered(&["sample"]).unwrap(), "Samples");
        assert_eq!(ordered(&["sample", "x"]).unwrap(), "Sample(\"x\")");
        assert_eq!(ordered(&["budgets"]).unwrap(), "Budgets");
        for name in ["journals", "coverage", "slips", "keys", "keys-building"] {
            assert!(ordered(&["study", name]).is_some(), "{name}");
        }
        assert!(ordered(&["study"]).is_some());
        for help in ["help", "--help", "-h"] {
            assert_eq!(ordered(&[help]).unwrap(), "Help");
        }
    }

    #[test]
    fn a_file_may_be_called_like_a_command_or_an_option() {
        assert_eq!(ordered(&["assess", "bench"]).unwrap(), "Assess(\"bench\")");
        assert_eq!(ordered(&["assess", "-h"]).unwrap(), "Assess(\"-h\")");
    }

    #[test]
    fn too_few_or_too_many_words_are_no_command() {
        for args in [
            &[][..],
            &[""],
            &["assess"],
            &["assess", "a.json", "b.json"],
            &["bench", "fast"],
            &["fits", "200"],
            &["generated"],
            &["generated", "many"],
            &["generated", "-1"],
            &["sample", "a", "b"],
            &["budgets", "70"],
            &["study", "luck"],
            &["study", "slips", "fast"],
            &["Bench"],
        ] {
            assert_eq!(ordered(args), None, "{args:?}");
        }
    }
}
