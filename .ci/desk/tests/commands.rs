//! The desk as it is run: what it prints where, and its exit codes.

use std::ffi::{OsStr, OsString};
use std::fs;
use std::path::{Path, PathBuf};
use std::process::{Command, Output};

type Result<T = ()> = std::result::Result<T, Box<dyn std::error::Error>>;

/// A file of the repository.
fn ours(file: &str) -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR"))
        .join("../..")
        .join(file)
}

fn desk<S: AsRef<OsStr>>(args: &[S]) -> Result<Output> {
    let mut command = Command::new(env!("CARGO_BIN_EXE_desk"));
    Ok(command.args(args).output()?)
}

fn assess(file: &Path) -> Result<Output> {
    desk(&[OsStr::new("assess"), file.as_os_str()])
}

/// A file of our own for one test, gone at its end.
struct Scratch(PathBuf);

impl Scratch {
    fn new(name: &str, contents: &[u8]) -> Result<Self> {
        let file = format!("desk-{}-{name}", std::process::id());
        let file = std::env::temp_dir().join(file);
        fs::write(&file, contents)?;
        Ok(Self(file))
    }
}

impl Drop for Scratch {
    fn drop(&mut self) {
        // A file left behind in the temporary folder does no harm.
        let _ = fs::remove_file(&self.0);
    }
}

/// Exit code 2, nothing on stdout, and one line on stderr with these words.
fn assert_refused(output: &Output, words: &[&str]) {
    let told = String::from_utf8_lossy(&output.stderr);
    assert_eq!(output.status.code(), Some(2), "{told}");
    assert!(output.stdout.is_empty(), "{told}");
    assert_eq!(told.lines().count(), 1, "{told}");
    for word in words {
        assert!(told.contains(word), "{told}");
    }
}

#[test]
fn every_session_of_the_tests_is_assessed() -> Result {
    let mut files = 0;
    for file in fs::read_dir(ours("tests/sessions/v1"))? {
        let file = file?.path();
        let output = assess(&file)?;
        assert_eq!(output.status.code(), Some(0), "{}", file.display());
        assert!(output.stderr.is_empty(), "{}", file.display());
        let text = String::from_utf8(output.stdout)?;
        assert!(text.starts_with("{\n  \"format\": \"fenderbench-assessment\",\n"));
        assert!(text.ends_with("\n}\n"), "one line break at the end");
        files += 1;
    }
    assert!(files > 0, "there are sessions to assess");
    Ok(())
}

#[test]
fn a_missing_file_is_named() -> Result {
    let output = assess(Path::new("no-such-session.json"))?;
    assert_refused(&output, &["no-such-session.json", "cannot be read"]);
    Ok(())
}

#[test]
fn a_folder_is_no_session() -> Result {
    assert_refused(&assess(&ours("tests"))?, &["cannot be read"]);
    Ok(())
}

#[test]
fn bytes_that_are_no_text_are_refused() -> Result {
    let file = Scratch::new("bytes.json", &[0x7b, 0xff, 0xfe, 0x7d])?;
    assert_refused(&assess(&file.0)?, &["bytes.json", "is not UTF-8 text"]);
    Ok(())
}

#[test]
fn what_the_app_would_not_take_in_is_refused_with_its_reason() -> Result {
    let sample = fs::read_to_string(ours("public/samples/hill-climb-six.json"))?;
    let half = sample.get(..sample.len() / 2).unwrap_or_default();
    for (name, text, reason) in [
        ("empty.json", "", "cut off"),
        ("half.json", half, "cut off"),
        ("photo.json", "\u{1}PNG", "not JSON"),
        ("other.json", "{}", "not a Fenderbench session"),
        (
            "later.json",
            &sample.replace("\"version\":1", "\"version\":2"),
            "up to 1",
        ),
        (
            "gauge.json",
            &sample.replace(
                "\"gauge\":\"58@5a3b1e01\",\"setting\"",
                "\"gauge\":\"7@1\",\"setting\"",
            ),
            "the gauge 7@1 is not in the file",
        ),
    ] {
        let file = Scratch::new(name, text.as_bytes())?;
        assert_refused(&assess(&file.0)?, &[name, reason]);
    }
    Ok(())
}

#[test]
fn a_strangers_file_sends_nothing_but_text_to_the_terminal() -> Result {
    let minimal = fs::read_to_string(ours("tests/sessions/v1/minimal.json"))?;
    let text = minimal.replace("}}", ",\"gauges\":{\"\\u001b[31m\\n\":{}}}}");
    assert_ne!(text, minimal);
    let file = Scratch::new("terminal.json", text.as_bytes())?;
    let output = assess(&file.0)?;
    assert_refused(&output, &["is not an id"]);
    assert!(!output.stderr.contains(&0x1b));
    Ok(())
}

#[test]
fn a_session_changed_by_hand_is_assessed_with_a_warning() -> Result {
    let sample = fs::read_to_string(ours("public/samples/hill-climb-six.json"))?;
    let changed = sample.replace("\"0.129\"", "\"0.029\"");
    assert_ne!(changed, sample);
    let file = Scratch::new("changed.json", changed.as_bytes())?;
    let output = assess(&file.0)?;
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stdout.starts_with(b"{"));
    let told = String::from_utf8(output.stderr)?;
    assert!(told.contains("was changed after it was written"), "{told}");
    Ok(())
}

#[test]
fn words_that_are_no_command_show_the_commands_and_fail() -> Result {
    for args in [
        &[][..],
        &["asses"],
        &["assess"],
        &["assess", "a", "b"],
        &["bench", "x"],
        &["generated", "x"],
        &["sample", "a", "b"],
    ] {
        let output = desk(args)?;
        assert_eq!(output.status.code(), Some(2), "{args:?}");
        assert!(output.stdout.is_empty(), "{args:?}");
        let told = String::from_utf8(output.stderr)?;
        assert!(told.contains("desk assess FILE"), "{told}");
    }
    Ok(())
}

#[test]
fn help_goes_where_an_answer_goes() -> Result {
    let output = desk(&["--help"])?;
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stdout.starts_with(b"desk assess FILE"));
    assert!(output.stderr.is_empty());
    Ok(())
}

#[test]
fn the_samples_of_the_app_are_what_the_desk_makes() -> Result {
    let names = String::from_utf8(desk(&["sample"])?.stdout)?;
    let named = names.lines().map(|name| format!("{name}.json").into());
    let mut named: Vec<OsString> = named.collect();
    named.sort_unstable();
    let kept = fs::read_dir(ours("public/samples"))?;
    let kept: std::io::Result<Vec<_>> = kept.map(|file| Ok(file?.file_name())).collect();
    let mut kept = kept?;
    kept.sort_unstable();
    assert_eq!(kept, named, "the names are those of the files");
    for name in names.lines() {
        let output = desk(&["sample", name])?;
        assert_eq!(output.status.code(), Some(0), "{name}");
        let kept = fs::read(ours(&format!("public/samples/{name}.json")))?;
        // Not assert_eq: nobody wants to read both files as numbers.
        assert!(
            output.stdout == kept,
            "write it anew: desk sample {name} > public/samples/{name}.json"
        );
    }
    Ok(())
}

#[test]
fn a_sample_that_is_none_is_refused() -> Result {
    let none = desk(&["sample", "hill-climb-six.json"])?;
    assert_refused(&none, &["hill-climb-six.json", "desk sample lists them"]);
    Ok(())
}

#[test]
fn the_fits_are_the_same_at_every_run() -> Result {
    let output = desk(&["fits"])?;
    assert_eq!(output.status.code(), Some(0));
    assert!(output.stderr.is_empty());
    let text = String::from_utf8(output.stdout)?;
    let fitted = text
        .lines()
        .filter(|line| !line.ends_with(",\"fit\":null}"));
    assert_eq!(fitted.count(), 200);
    assert!(text.lines().all(|line| line.starts_with("{\"places\":[")));
    assert_eq!(desk(&["fits"])?.stdout, text.into_bytes());
    Ok(())
}

#[test]
fn a_generated_session_is_one_the_app_takes_in() -> Result {
    for readings in ["0", "200", "10000"] {
        let output = desk(&["generated", readings])?;
        assert_eq!(output.status.code(), Some(0), "{readings}");
        let file = Scratch::new(&format!("generated-{readings}.json"), &output.stdout)?;
        let output = assess(&file.0)?;
        assert_eq!(output.status.code(), Some(0), "{readings}");
        assert!(output.stderr.is_empty(), "{readings}");
    }
    assert_refused(&desk(&["generated", "10001"])?, &["at most 10000"]);
    Ok(())
}

/// Whether the budgets are met is for the machine of `cargo xtask bench` to
/// say: here other tests run beside it. What is printed and the exit code
/// must tell the same.
#[test]
fn the_bench_prints_its_table_and_ends_as_it_says() -> Result {
    let output = desk(&["bench"])?;
    let text = String::from_utf8(output.stdout)?;
    let works = [
        ("assess", 3),
        ("merge", 2),
        ("write", 2),
        ("read ", 2),
        ("plan", 1),
    ];
    for (work, rows) in works {
        let found = text.lines().filter(|line| line.starts_with(work));
        assert_eq!(found.count(), rows, "{text}");
    }
    assert_eq!(text.matches("times the work").count(), 5, "{text}");
    assert_eq!(text.matches("Budget of").count(), 3, "{text}");
    let missed = text.contains("NOT met");
    assert_eq!(output.status.code(), Some(i32::from(missed)), "{text}");
    Ok(())
}
