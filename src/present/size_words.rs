//! Which size cleans up which parts, in words.

use super::plan_words as words;
use super::wording;
use crate::assess::{Advice, BAR_OFFSET, HONING_ALLOWANCE};
use crate::quantity::{Exact, Unit, show};
use crate::remedy::{
    BoreWork, Bracket, Candidate, Finish, JournalWork, Part, Reason, Row, Sizes, Way,
};
use crate::session::{Dimension, Session};
use crate::verdict::Decision;

/// The sizes that parts of one kind could be machined to.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SizesView {
    /// Of which parts.
    pub title: &'static str,
    /// Between which sizes the worst of them cleans up.
    pub worst: Option<String>,
    /// Every size, and whether it cleans up all.
    pub rows: Vec<[String; 2]>,
    /// What was taken where nobody gave it, and who says so.
    pub taken: Vec<String>,
}

/// The sizes of what is machined, or would be if all comes out well.
pub(super) fn sizes(session: &Session, advice: &Advice, unit: Unit) -> Vec<SizesView> {
    let plan = &advice.plan;
    let ways = || core::iter::once(&plan.way).chain(&plan.hope);
    let is_bored = |way: &Way| {
        way.top
            .is_some_and(|top| matches!(top.bores, BoreWork::Oversize(_) | BoreWork::Sleeves))
    };
    let mut told = Vec::new();
    if ways().any(is_bored) {
        told.push(bores(session, advice, unit));
    }
    for (row, sizes) in [Row::Mains, Row::Rods].into_iter().zip(&plan.undersizes) {
        let is_ground = |way: &Way| {
            let row = way.row(row);
            row.is_some_and(|row| matches!(row.journals, JournalWork::Grind(_)))
        };
        if ways().any(is_ground) {
            told.push(journals(advice, row, sizes, unit));
        }
    }
    told
}

fn bores(session: &Session, advice: &Advice, unit: Unit) -> SizesView {
    let job = &advice.job;
    let sizes = &advice.plan.oversizes;
    let hidden = job.cylinders.iter().map(|c| c.worn.score.is_some());
    let worst = sizes.worst.and_then(|part| {
        let cylinder = job.cylinders.get(part)?;
        let bracket = cylinder.worn.bracket(job.standard);
        Some(between(Part::Cylinder(part), &bracket, unit))
    });
    let taken = |name, length, told: &str| {
        let is_given = session.length(name).is_some();
        (!is_given).then(|| format!("{} {told}", size(length, unit)))
    };
    SizesView {
        title: "Bores",
        worst,
        rows: rows(
            advice,
            sizes,
            Part::Cylinder,
            hidden,
            ("over, bar to", unit),
        ),
        taken: [
            taken(
                Dimension::BarOffset,
                BAR_OFFSET,
                "for a bar off the axis: our own choice",
            ),
            taken(
                Dimension::HoningAllowance,
                HONING_ALLOWANCE,
                "left for the hone: a trade guide for machine shops",
            ),
        ]
        .into_iter()
        .flatten()
        .collect(),
    }
}

fn journals(advice: &Advice, row: Row, sizes: &Sizes, unit: Unit) -> SizesView {
    let bearings = advice.job.row(row);
    let hidden = bearings.journals.iter().map(|j| j.worn.score.is_some());
    let part = |index| Part::Journal(row, index);
    let worst = sizes.worst.and_then(|index| {
        let journal = bearings.journals.get(index)?;
        let bracket = journal.worn.bracket(bearings.as_made);
        Some(between(part(index), &bracket, unit))
    });
    SizesView {
        title: match row {
            Row::Mains => "Main journals",
            Row::Rods => "Rod journals",
        },
        worst,
        rows: rows(advice, sizes, part, hidden, ("under, ground to", unit)),
        taken: Vec::new(),
    }
}

/// Between which sizes a part cleans up.
fn between(part: Part, bracket: &Bracket, unit: Unit) -> String {
    format!(
        "{} decides: it cleans up at {} if evenly worn, at {} if worn on one side.",
        words::part(part),
        size(bracket.even.value(), unit),
        size(bracket.one_sided.value(), unit)
    )
}

fn rows(
    advice: &Advice,
    sizes: &Sizes,
    part: impl Fn(usize) -> Part,
    is_score_read: impl Iterator<Item = bool>,
    (to, unit): (&str, Unit),
) -> Vec<[String; 2]> {
    // Of a score that was seen and not measured nobody knows how deep it is.
    let mut unread = (0..).zip(is_score_read);
    let is_hidden = |(index, is_read): &(usize, bool)| {
        !is_read && advice.job.looks(part(*index)).surface == Some(Finish::Scored)
    };
    let hidden = unread.find(is_hidden).map(|(index, _)| part(index));
    let row = |candidate: &Candidate| {
        let step = words::step(candidate.step, unit);
        let cut = size(candidate.cut, unit);
        let word = word(candidate, &part, hidden);
        [format!("{step} {to} {cut}"), word]
    };
    sizes.candidates.iter().map(row).collect()
}

fn word(candidate: &Candidate, part: &impl Fn(usize) -> Part, hidden: Option<Part>) -> String {
    let proof = candidate.proof;
    let one = proof.rests_on.map(part);
    let name = one.map_or_else(|| "the worst".to_owned(), words::part);
    match (proof.decision, proof.reason, hidden) {
        (Decision::Out, Reason::TooMuch, _) => "no: more than is allowed".to_owned(),
        (Decision::Out, ..) => format!("no: {name}"),
        (_, _, Some(part)) => {
            format!(
                "not known: measure how deep {} is scored",
                words::part(part)
            )
        }
        (Decision::In, ..) => "cleans up all".to_owned(),
        (_, Reason::Axis, _) => format!("only if evenly worn: have {name} swept first"),
        (_, Reason::NoReference, _) => {
            format!("if it wore from standard: read the unworn reference of {name}")
        }
        (_, Reason::Mistyped, _) => "the clearance is larger than the step".to_owned(),
        _ => format!("too close to call: read {name} again"),
    }
}

fn size(size: Exact, unit: Unit) -> String {
    let shown = show(size, unit, unit.decimals());
    format!("{} {}", wording::number(&shown), unit.sign())
}
