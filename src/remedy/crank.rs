//! What is known of the journals of one kind, all mains or all rod journals,
//! and which undersizes clean them up.

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

impl Grinding<'_> {
    /// What speaks against an undersize, whatever the journals.
    pub(super) fn against(&self, under: Exact) -> Proof {
        if self.greatest.is_some_and(|most| most < under) {
            return Proof {
                decision: Decision::Out,
                reason: Reason::TooMuch,
                rests_on: None,
            };
        }
        Proof::PROVED
    }

    pub(super) fn need(
        &self,
        part: usize,
        worn: &WornJournal,
        several: usize,
        prover: &Prover,
    ) -> Need {
        let mut bracket = worn.bracket(self.as_made);
        if self.recentred {
            bracket.one_sided = bracket.even.clone();
        }
        Need::new(part, -1, &bracket, true, several, prover)
    }
}

/// Which undersizes clean up every journal of the kind. All get the same.
#[must_use]
pub fn undersizes(journals: &[Journal], grinding: &Grinding, prover: &Prover) -> Sizes {
    let needs = journals.iter().enumerate();
    let needs =
        needs.map(|(part, journal)| grinding.need(part, &journal.worn, journals.len(), prover));
    let offers = grinding.undersizes.iter();
    let offers = offers.map(|&under| (under, grinding.standard - under, grinding.against(under)));
    let offers = offers.collect::<Vec<_>>();
    sizes(-1, needs, &offers)
}

/// The journal to order for a housing as it is, with these walls: housing −
/// both walls − clearance (geometry), a cross-check on the undersize.
#[must_use]
pub fn target(housing: &Measured, walls: [Exact; 2], clearance: Exact) -> Measured {
    let [upper, lower] = walls;
    housing - &Measured::new(upper + lower + clearance, &[])
}
