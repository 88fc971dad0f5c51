//! Studies by chance: how well a part of the app does what it is held to.
//! Generators are committed before the figures they judge.

mod chance;
mod coverage;
mod journals;

use crate::Answer;

/// What can be studied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// All of it.
    All,
    /// Whether the decision rule keeps its bounds.
    Journals,
    /// The same on the journals it was built with.
    JournalsBuilding,
    /// Whether stated intervals hold the truth.
    Coverage,
    /// The same on the features it was built with.
    CoverageBuilding,
}

/// The part of this name; all without one.
pub fn part(name: Option<&str>) -> Option<Part> {
    match name {
        None => Some(Part::All),
        Some("journals") => Some(Part::Journals),
        Some("journals-building") => Some(Part::JournalsBuilding),
        Some("coverage") => Some(Part::Coverage),
        Some("coverage-building") => Some(Part::CoverageBuilding),
        Some(_) => None,
    }
}

/// What a study came to, and whether its bounds are kept.
pub fn command(part: Part) -> Result<Answer, String> {
    match part {
        Part::All => {
            let parts = [journals::command(false)?, coverage::command(false)?];
            let text = parts.iter().map(|part| part.text.as_str());
            Ok(Answer {
                text: text.collect::<Vec<_>>().join("\n"),
                holds: parts.iter().all(|part| part.holds),
            })
        }
        Part::Journals => journals::command(false),
        Part::JournalsBuilding => journals::command(true),
        Part::Coverage => coverage::command(false),
        Part::CoverageBuilding => coverage::command(true),
    }
}
