//! The word for every part, and the clearances a plan leads to.

use super::plan_words as words;
use super::wording;
use crate::assess::Advice;
use crate::quantity::{Unit, show};
use crate::remedy::{Gate, Judged, Part, Predicted, Word};

/// The word for parts that have the same one for the same reason.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct PartRow {
    /// Which.
    pub parts: String,
    /// What to do.
    pub word: &'static str,
    /// Why.
    pub why: &'static str,
    /// The word by which styles know it.
    pub key: &'static str,
}

/// Three words of a table.
pub type Row3 = [String; 3];

pub(super) fn clearances(advice: &Advice, unit: Unit) -> Vec<Row3> {
    let told = advice.plan.way.clearances.iter();
    let row = |one: &Predicted| {
        let shown = show(one.clearance, unit, unit.decimals());
        let value = format!("{} {}", wording::number(&shown), unit.sign());
        let how = match one.guard {
            Some(guard) => {
                let guard = show(guard, unit, unit.decimals());
                format!("measured, ± {} {}", guard.text, unit.sign())
            }
            None => "made so by the shop".to_owned(),
        };
        let part = match words::feature_of(one.part) {
            Some(feature) => match one.part {
                Part::Cylinder(_) => format!("Piston-to-wall {}", feature.position),
                _ => format!("Oil clearance, {}", wording::feature(feature)),
            },
            None => words::part(one.part),
        };
        [part, value, how]
    };
    told.map(row).collect()
}

/// Parts with the same word for the same reason, in one row.
pub(super) fn parts(advice: &Advice) -> Vec<PartRow> {
    let mut groups: Vec<(Vec<Part>, Judged)> = Vec::new();
    let kind = |part| words::feature_of(part).map(|feature| feature.kind);
    for judged in &advice.plan.parts {
        let alike = groups.iter_mut().find(|(_, first)| {
            let same = (first.word, first.gate) == (judged.word, judged.gate);
            same && kind(first.part).is_some() && kind(first.part) == kind(judged.part)
        });
        match alike {
            Some((parts, _)) => parts.push(judged.part),
            None => groups.push((vec![judged.part], *judged)),
        }
    }
    let row = |(parts, judged): (Vec<Part>, Judged)| {
        let unseen = parts.iter().all(|part| advice.plan.unseen.contains(part));
        PartRow {
            parts: words::parts(&parts),
            word: words::word(judged.word),
            why: match (judged.gate, judged.part) {
                (Some(Gate::Set), Part::Crank) => "as the journals need",
                (Some(Gate::Set), Part::Block) => "as the bores and housings need",
                (Some(gate), _) => words::gate(gate),
                (None, _) if unseen => "by its numbers; nobody looked for cracks and scores",
                (None, _) => "",
            },
            key: key(judged.word),
        }
    };
    groups.into_iter().map(row).collect()
}

const fn key(word: Word) -> &'static str {
    match word {
        Word::UseAgain => "again",
        Word::HandWork => "hand",
        Word::Shop => "shop",
        Word::Replace => "replace",
        Word::MeasureAgain => "measure",
        Word::AskSpecialist => "ask",
    }
}
