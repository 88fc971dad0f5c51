//! Everything a plan rests on, decided once: what is proved of each part for
//! each piece of work.

use super::{Bearings, Choice, Job, Part, Reason, Row};
use crate::quantity::Exact;
use crate::verdict::Decision;

/// What is asked of a part.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Ask {
    /// Whether it is sound: a crack test, or a specialist, tells.
    Soundness,
    /// Whether its size and shape are within its own limits.
    Form,
    /// How deep its scores are.
    Surface,
    /// Whether its clearance is as wanted: of a cylinder to the piston, of a
    /// housing to the journal.
    Clearance,
    /// Whether a size cleans it up.
    CleanUp,
}

/// An open question, which one further reading may answer.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Question {
    /// The part to look at.
    pub part: Part,
    /// What to find out.
    pub ask: Ask,
    /// Why it is open.
    pub reason: Reason,
}

impl Question {
    /// Whether it is about something that is missing, which a plan may take
    /// to be good for the time being.
    pub(super) const fn is_missing(&self) -> bool {
        matches!(
            (self.ask, self.reason),
            (Ask::Form | Ask::Clearance, Reason::Unknown) | (_, Reason::NoReference)
        )
    }

    /// Whether its answer changes a decision: an open one, or one that was
    /// taken to be good.
    pub(super) fn decides(&self, about: (Part, Ask), decision: Decision, job: &Job) -> bool {
        let is_taken = job.measured_later && self.is_missing() && decision == Decision::In;
        (self.part, self.ask) == about && (decision == Decision::Open || is_taken)
    }
}

/// What is decided of a part as it is, and after honing or machining.
pub(super) type Pair = [Decision; 2];

/// One of a pair.
pub(super) const fn of([first, second]: Pair, is_second: bool) -> Decision {
    if is_second { second } else { first }
}

#[derive(Debug)]
pub(super) struct CylinderFacts {
    pub sound: Decision,
    pub form: Decision,
    /// Whether its surface may stay, glazed or not; whether it may be glazed;
    /// whether a light hone takes the scores out.
    pub surface: [Decision; 3],
    /// The clearance with its own piston, as it is and honed.
    pub own: Pair,
    /// The same with each piston of the stock.
    pub new: Vec<Pair>,
    /// Whether boring to each size of the stock cleans it up.
    pub cleans: Vec<Decision>,
    pub piston_sound: Decision,
    pub piston_form: Decision,
}

#[derive(Debug)]
pub(super) struct JournalFacts {
    pub sound: Decision,
    pub form: Decision,
    /// Whether its surface may stay, and whether polishing is enough.
    pub surface: Pair,
    /// Whether grinding to each undersize cleans it up.
    pub cleans: Vec<Decision>,
}

#[derive(Debug)]
pub(super) struct PlaceFacts {
    pub sound: Decision,
    pub form: Decision,
    /// Whether the shells that ran here may run again.
    pub shells_form: Decision,
    /// The clearance with them.
    pub own: Decision,
    /// The clearance with each size of shell, the housing as it is and
    /// machined.
    pub new: Vec<Pair>,
    /// The same with the shells chosen place by place.
    pub chosen: Pair,
}

#[derive(Debug)]
pub(super) struct RowFacts {
    pub journals: Vec<JournalFacts>,
    pub places: Vec<PlaceFacts>,
    /// Whether neighbours are told apart with one size all along, and with
    /// the shells chosen place by place.
    pub apart: Pair,
    pub chosen_apart: Pair,
    /// Shells place by place, the housings as they are and machined.
    pub chosen: [Option<Choice>; 2],
    /// Sizes of shell, nearest to the target first.
    pub sizes: Vec<usize>,
    /// Undersizes, the smallest first.
    pub undersizes: Vec<usize>,
}

#[derive(Debug)]
pub(super) struct Facts {
    pub block: Decision,
    pub alignment: Decision,
    pub crank: Decision,
    pub straightness: Decision,
    pub cylinders: Vec<CylinderFacts>,
    /// The stock, the smallest first.
    pub stock: Vec<usize>,
    pub rows: [RowFacts; 2],
    /// What is open, each question once.
    pub open: Vec<Question>,
}

impl Facts {
    pub(super) const fn row(&self, row: Row) -> &RowFacts {
        let [mains, rods] = &self.rows;
        match row {
            Row::Mains => mains,
            Row::Rods => rods,
        }
    }
}

/// The walls of two halves.
pub(super) fn walls(bearings: &Bearings, [upper, lower]: [usize; 2]) -> Option<Exact> {
    let [upper, lower] = [upper, lower].map(|size| bearings.shells.get(size));
    Some(upper?.wall + lower?.wall)
}
