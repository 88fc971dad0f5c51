//! Studies by chance: how well a part of the app does what it is held to.
//! Generators are committed before the figures they judge.

mod chance;
mod coverage;
mod journals;
mod keys;
mod slips;

use crate::Answer;

/// A study, of the seeds it is judged by or of those the app was built with.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Study {
    /// Which; all of them without one.
    pub part: Option<Part>,
    /// Whether with the seeds for building.
    pub building: bool,
}

/// All studies, with the seeds they are judged by.
pub const ALL: Study = Study {
    part: None,
    building: false,
};

/// What can be studied.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Part {
    /// Whether the decision rule keeps its bounds.
    Journals,
    /// Whether stated intervals hold the truth.
    Coverage,
    /// How well slips are caught.
    Slips,
    /// How often a wrong number stands, and how many touches a reading takes.
    Keys,
}

const PARTS: [(&str, Part); 4] = [
    ("journals", Part::Journals),
    ("coverage", Part::Coverage),
    ("slips", Part::Slips),
    ("keys", Part::Keys),
];

/// The study of this name; `-building` behind it for the other seeds.
pub fn named(name: &str) -> Option<Study> {
    let (part, building) = match name.strip_suffix("-building") {
        Some(part) => (part, true),
        None => (name, false),
    };
    let (_, part) = PARTS.into_iter().find(|(known, _)| *known == part)?;
    Some(Study {
        part: Some(part),
        building,
    })
}

/// What a study came to, and whether its bounds are kept.
pub fn command(study: Study) -> Result<Answer, String> {
    let mut text = String::new();
    let mut holds = true;
    let wanted = |part: Part| study.part.is_none_or(|one| one == part);
    for (_, part) in PARTS.into_iter().filter(|(_, part)| wanted(*part)) {
        let answer = match part {
            Part::Journals => journals::command(study.building),
            Part::Coverage => coverage::command(study.building),
            Part::Slips => slips::command(study.building),
            Part::Keys => keys::command(study.building),
        }?;
        text.push_str(&answer.text);
        text.push('\n');
        holds &= answer.holds;
    }
    Ok(Answer { text, holds })
}
