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
}

/// A session as it is listed on the bench.
#[must_use]
pub fn bench_row(session: &Session) -> BenchRow {
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
    }
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
