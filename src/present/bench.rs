//! The bench: every session with its progress and its worst finding.

use super::findings;
use super::mark::Mark;
use super::route::{progress, route};
use super::wording::{feature, quantity};
use crate::assess::{Finding, assess};
use crate::session::{Session, SessionId};

/// A session on the bench.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct BenchRow {
    /// Which.
    pub id: SessionId,
    /// Its name.
    pub name: String,
    /// How far it has come, in words.
    pub progress: String,
    /// The shape of its worst verdict.
    pub mark: Mark,
    /// Its worst verdict in words.
    pub worst: String,
    /// Readings that no file holds, as far as this device knows.
    pub unfiled: usize,
    /// The same in words; empty without readings.
    pub filed: String,
}

/// What of a session went into a file, or came out of one.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Filed {
    /// How many readings, struck ones too.
    pub readings: usize,
    /// When, as [`crate::session::Reading::taken`] has it.
    pub at: String,
}

impl Filed {
    /// All of a session, at this time; what went into files before stays
    /// there, so it is never less.
    #[must_use]
    pub fn now(in_file: &Session, before: Option<Self>, at: String) -> Self {
        let readings = in_file.readings.len();
        let before = before.map_or(0, |filed| filed.readings);
        Self {
            readings: readings.max(before),
            at,
        }
    }

    /// As text for storage.
    #[must_use]
    pub fn to_text(&self) -> String {
        format!("{} {}", self.readings, self.at)
    }

    /// Reads a stored text; `None` if it is not one.
    #[must_use]
    pub fn from_text(text: &str) -> Option<Self> {
        let (readings, at) = text.split_once(' ')?;
        Some(Self {
            readings: readings.parse().ok()?,
            at: at.to_owned(),
        })
    }
}

/// A session as it is listed on the bench.
#[must_use]
pub fn bench_row(session: &Session, filed: Option<&Filed>) -> BenchRow {
    let unfiled = unfiled(session, filed);
    let assessment = assess(session);
    let progress = progress(&route(session, &assessment));
    let all: Vec<&Finding> = assessment.findings.iter().collect();
    let (mark, worst) = match findings::worst(&all) {
        None => (Mark::Unread, "nothing measured yet".to_owned()),
        Some(finding) => {
            let key = finding.key;
            let (mark, words) = findings::told(finding, session.display_unit());
            let name = quantity(key.feature.kind, key.quantity);
            let what = format!("{}: {name} {words}", feature(key.feature));
            (mark, what)
        }
    };
    BenchRow {
        id: session.id.clone(),
        name: session.name(),
        progress: format!("{} of {} stations read", progress.read, progress.of),
        mark,
        worst,
        unfiled,
        filed: match filed {
            _ if session.readings.is_empty() => String::new(),
            Some(filed) if unfiled == 0 => {
                let date = filed.at.split('T').next().unwrap_or_default();
                format!("all in a file of {date}")
            }
            _ => not_in_a_file(unfiled),
        },
    }
}

/// Readings of a session that no file holds, as far as this device knows.
#[must_use]
pub fn unfiled(session: &Session, filed: Option<&Filed>) -> usize {
    let filed = filed.map_or(0, |filed| filed.readings);
    session.readings.len().saturating_sub(filed)
}

/// How safe everything is, in one line: of each session the readings that no
/// file holds.
#[must_use]
pub fn kept_words(unfiled: &[usize]) -> String {
    match (unfiled, unfiled.iter().sum()) {
        ([], _) => "Where your data is: on this device only".to_owned(),
        (_, 0) => "Kept on this device, and in files".to_owned(),
        (_, unfiled) => format!("Kept on this device; {}", not_in_a_file(unfiled)),
    }
}

fn not_in_a_file(readings: usize) -> String {
    let plural = if readings == 1 { "" } else { "s" };
    format!("{readings} reading{plural} not in a file yet")
}
/// A file name for a session: its name in plain letters, `.json` at the end.
#[must_use]
pub fn file_name(session: &Session) -> String {
    let plain = |c: char| if c.is_ascii_alphanumeric() { c } else { '-' };
    let name: String = session.name().chars().take(60).map(plain).collect();
    let words: Vec<_> = name.split('-').filter(|word| !word.is_empty()).collect();
    match words.join("-").to_ascii_lowercase().as_str() {
        "" => format!("session-{}.json", session.id.as_str()),
        name => format!("{name}.json"),
    }
}
