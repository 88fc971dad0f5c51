//! Where commands run: the repository's root, with the right tools first on the PATH.

use std::ffi::OsString;
use std::io::{BufRead, BufReader, Write};
use std::path::{Path, PathBuf};
use std::process::{Command, ExitCode, Stdio};

/// Errors are sentences for the person at the keyboard.
pub type Result<T = ()> = std::result::Result<T, String>;

pub struct Shop {
    pub root: PathBuf,
    path: OsString,
}

impl Shop {
    pub fn new() -> Self {
        // The helper is always run by cargo from a clone, so the place it was built from is it.
        let own = Path::new(env!("CARGO_MANIFEST_DIR"));
        Self {
            root: own.ancestors().nth(2).unwrap_or(own).to_path_buf(),
            path: std::env::var_os("PATH").unwrap_or_default(),
        }
    }

    pub fn dist(&self) -> PathBuf {
        self.root.join("target/dist")
    }

    /// Puts a directory in front of whatever the person has installed.
    pub fn prefer(&mut self, directory: &Path) {
        let rest = std::env::split_paths(&self.path).collect::<Vec<_>>();
        let all = std::iter::once(directory.to_path_buf()).chain(rest);
        // Fails only for a directory that no PATH can name.
        if let Ok(path) = std::env::join_paths(all) {
            self.path = path;
        }
    }

    pub fn find(&self, program: &str) -> Option<PathBuf> {
        std::env::split_paths(&self.path)
            .map(|directory| directory.join(program))
            .find(|file| file.is_file())
    }

    /// A command line, split at spaces.
    pub fn command(&self, line: &str) -> Command {
        let mut words = line.split_whitespace();
        let mut command = self.program(Path::new(words.next().unwrap_or_default()));
        command.args(words);
        command
    }

    /// A program whose path may have spaces.
    pub fn program(&self, program: &Path) -> Command {
        let mut command = Command::new(program);
        command.env("PATH", &self.path).current_dir(&self.root);
        command
    }

    pub fn run(&self, line: &str) -> Result {
        run(&mut self.command(line))
    }

    /// What a command prints, or nothing when it is missing or fails.
    pub fn ask(&self, line: &str) -> Option<String> {
        answer(&mut self.command(line))
    }

    /// The same for a program whose path may have spaces.
    pub fn ask_program(&self, program: &Path, argument: &str) -> Option<String> {
        answer(self.program(program).arg(argument))
    }

    /// Runs the desk with everything passed through, from where the person stands, so that
    /// relative file names mean what they should.
    pub fn desk(&self, args: &[&str]) -> Result<ExitCode> {
        let status = Command::new("cargo")
            .args(["run", "--release", "--quiet", "--package", "desk"])
            .arg("--manifest-path")
            .arg(self.root.join("Cargo.toml"))
            .arg("--")
            .args(args)
            .status()
            .map_err(|error| format!("cargo does not start: {error}"))?;
        let code = status.code().and_then(|code| u8::try_from(code).ok());
        Ok(code.map_or(ExitCode::FAILURE, ExitCode::from))
    }
}

pub fn run(command: &mut Command) -> Result {
    announce(command);
    let status = command.status().map_err(|error| missing(command, &error))?;
    if status.success() {
        Ok(())
    } else {
        Err(format!("{} failed ({status})", shown(command)))
    }
}

/// Runs a command whose standard output is shown as it comes and also returned. The error
/// carries it too: a failing test run says how many failed.
pub fn run_listening(command: &mut Command) -> (String, Result) {
    announce(command);
    let mut child = match command.stdout(Stdio::piped()).spawn() {
        Ok(child) => child,
        Err(error) => return (String::new(), Err(missing(command, &error))),
    };
    let mut heard = String::new();
    let mut line = Vec::new();
    if let Some(stdout) = child.stdout.take() {
        let mut stdout = BufReader::new(stdout);
        while stdout
            .read_until(b'\n', &mut line)
            .is_ok_and(|read| read > 0)
        {
            // A closed terminal must not end the tests.
            let _ = std::io::stdout().write_all(&line);
            heard.push_str(&String::from_utf8_lossy(&line));
            line.clear();
        }
    }
    let result = match child.wait() {
        Ok(status) if status.success() => Ok(()),
        Ok(status) => Err(format!("{} failed ({status})", shown(command))),
        Err(error) => Err(format!("{} was lost: {error}", shown(command))),
    };
    (heard, result)
}

fn answer(command: &mut Command) -> Option<String> {
    let output = command.stderr(Stdio::null()).output().ok()?;
    let said = String::from_utf8_lossy(&output.stdout);
    output.status.success().then(|| said.trim().to_owned())
}

fn announce(command: &Command) {
    println!("\n$ {}", shown(command));
    let _ = std::io::stdout().flush();
}

fn missing(command: &Command, error: &std::io::Error) -> String {
    format!("{} does not start: {error}", shown(command))
}

fn shown(command: &Command) -> String {
    let words: Vec<_> = std::iter::once(command.get_program())
        .chain(command.get_args())
        .map(|word| word.to_string_lossy())
        .collect();
    words.join(" ")
}
