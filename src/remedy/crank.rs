//! What to do with the journals of one kind, all mains or all rod journals:
//! keep, polish, grind to the smallest undersize.

use super::clean_up::{Need, sizes};
use super::{Proof, Prover, Reason, Sizes, WornJournal};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::Decision;

/// A journal, measured.
#[derive(Clone, Debug, PartialEq)]
pub struct Journal {
    /// What wear did to it.
    pub worn: WornJournal,
    /// What is proved of its size, out-of-round and taper against their
    /// limits for use; `None` where nothing was measured or no limit is given.
    pub form: Option<Decision>,
}

/// What there is to grind to, and how.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Grinding<'a> {
    /// The standard diameter, from which undersizes count.
    pub standard: Exact,
    /// The largest they were when made, or ground the last time.
    pub as_made: Exact,
    /// The undersizes there are shells for, in any order.
    pub undersizes: &'a [Exact],
    /// Whether the grinder may centre on the worn journal, which changes the
    /// throw: for rod journals, where agreed. The even case then counts.
    pub recentred: bool,
    /// The greatest undersize that the hard layer allows, where known.
    pub greatest: Option<Exact>,
}

/// Which undersizes clean up every journal of the kind. All get the same.
#[must_use]
pub fn undersizes(journals: &[Journal], grinding: &Grinding, prover: &Prover) -> Sizes {
    let needs = journals.iter().enumerate().map(|(part, journal)| {
        let mut bracket = journal.worn.bracket(grinding.as_made);
        if grinding.recentred {
            bracket.one_sided = bracket.even.clone();
        }
        Need::new(part, -1, &bracket, true, journals.len(), prover)
    });
    let offers = grinding.undersizes.iter().map(|&under| {
        let too_much = grinding.greatest.is_some_and(|most| most < under);
        let against = Proof {
            decision: Decision::Out,
            reason: Reason::TooMuch,
            rests_on: None,
        };
        let against = if too_much { against } else { Proof::PROVED };
        (under, grinding.standard - under, against)
    });
    let offers = offers.collect::<Vec<_>>();
    sizes(-1, needs, &offers)
}

/// Whether the journals may be used as they are: form proved, no score.
#[must_use]
pub fn keep(journals: &[Journal], prover: &Prover) -> Proof {
    polish(journals, Exact::ZERO, prover)
}

/// Whether polishing will do: form proved, no score deeper than `most`,
/// radially. Polishing is no way to change a size, so none is changed here.
#[must_use]
pub fn polish(journals: &[Journal], most: Exact, prover: &Prover) -> Proof {
    let each = journals.iter().enumerate().map(|(part, journal)| {
        let score = journal.worn.score.as_ref();
        let score = score.filter(|score| !score.value().is_negative());
        let light = score.map_or(Decision::In, |score| {
            prover.at_most(score, most, journals.len())
        });
        Proof::of(journal.form, Reason::Form, part).and(Proof::of(Some(light), Reason::Score, part))
    });
    each.fold(Proof::PROVED, Proof::and)
}

/// The journal to order for a housing as it is, with these walls: housing −
/// both walls − clearance (geometry), a cross-check on the undersize.
#[must_use]
pub fn target(housing: &Measured, walls: [Exact; 2], clearance: Exact) -> Measured {
    let [upper, lower] = walls;
    housing - &Measured::new(upper + lower + clearance, &[])
}
