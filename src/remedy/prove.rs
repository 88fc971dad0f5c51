//! What is proved of a piece of work, and why not.

use crate::quantity::Exact;
use crate::uncertainty::{Factors, Measured, Probability, Source};
use crate::verdict::{Band, Decision, DecisionRule};

/// Decides on measured values under one rule.
#[derive(Clone, Copy, Debug)]
pub struct Prover<'a> {
    /// The sources that the values draw on.
    pub sources: &'a [Source],
    /// Factors already looked up.
    pub factors: &'a Factors,
    /// How sure a statement must be.
    pub rule: DecisionRule,
}

impl Prover<'_> {
    /// How far inside a limit the value must lie to be proved within it.
    #[must_use]
    pub fn guard(&self, measured: &Measured) -> Exact {
        self.guard_of(measured, self.rule.millionths)
    }

    /// How far outside a limit the value must lie to be proved beyond it,
    /// where it is one of `several` of which the worst counts.
    #[must_use]
    pub fn guard_out(&self, measured: &Measured, several: usize) -> Exact {
        let several = u32::try_from(several).unwrap_or(u32::MAX);
        self.guard_of(measured, self.rule.to_convict_by_one_of(several))
    }

    fn guard_of(&self, measured: &Measured, millionths: u32) -> Exact {
        let combined = measured.combined(self.sources);
        let sure = Probability::per_million(millionths);
        self.factors.guard_band(&combined, sure)
    }

    /// Where values with the doubt of this one, one of `several` of which the
    /// worst counts, are proved in a band and where outside; `None` without
    /// limits.
    #[must_use]
    pub fn acceptance(
        &self,
        measured: &Measured,
        band: &Band,
        several: usize,
    ) -> Option<Acceptance> {
        (!band.is_open()).then(|| Acceptance {
            sure: band.acceptance(self.guard(measured)),
            possible: band.acceptance(-self.guard_out(measured, several)),
        })
    }

    /// Decides on a value which is one of `several` of which the worst
    /// counts; `None` without limits.
    #[must_use]
    pub fn decide(&self, measured: &Measured, band: &Band, several: usize) -> Option<Decision> {
        let acceptance = self.acceptance(measured, band, several)?;
        Some(acceptance.decide(measured.value()))
    }

    /// Whether a value is surely at most this: out where it is surely more.
    #[must_use]
    pub fn at_most(&self, measured: &Measured, most: Exact, several: usize) -> Decision {
        let band = Band::new(None, Some(most));
        self.decide(measured, &band, several)
            .unwrap_or(Decision::Open)
    }

    /// Whether a value is surely at least this: out where it is surely less.
    #[must_use]
    pub fn at_least(&self, measured: &Measured, least: Exact, several: usize) -> Decision {
        let band = Band::new(Some(least), None);
        self.decide(measured, &band, several)
            .unwrap_or(Decision::Open)
    }
}

/// The ends of what is proved, for deciding on many values of one doubt.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Acceptance {
    sure: Band,
    possible: Band,
}

impl Acceptance {
    /// As [`Band::decide_worst`] decides on one value.
    #[must_use]
    pub fn decide(&self, value: Exact) -> Decision {
        if self.sure.excess(value).is_none() {
            Decision::In
        } else if self.possible.excess(value).is_none() {
            Decision::Open
        } else {
            Decision::Out
        }
    }
}

/// Why a piece of work is proved right, open or ruled out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Reason {
    /// It is proved.
    Proved,
    /// It hangs on how the part wore and on which axis is machined: only the
    /// machine shop can tell, by sweeping or rough-boring that part first.
    Axis,
    /// The readings are too close to call.
    Readings,
    /// No unworn place was read, so that the wear is not known.
    NoReference,
    /// Something was not measured, or has no limit to hold it against.
    Unknown,
    /// This size does not clean up the part.
    Wear,
    /// More than the wall, or the hard layer, allows.
    TooMuch,
    /// The clearance is larger than the oversize, so that one of the two
    /// sizes was likely entered wrongly.
    Mistyped,
    /// Size or shape.
    Form,
    /// A score.
    Score,
    /// The clearance.
    Clearance,
    /// The clearances of two neighbours differ.
    Neighbours,
}

/// What is proved of one way to go, and what that rests on.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Proof {
    /// In: proved right. Open: rests on something. Out: ruled out.
    pub decision: Decision,
    /// Why.
    pub reason: Reason,
    /// The part that decides, by its index: of a size that is proved, the
    /// worst. `None` where none does.
    pub rests_on: Option<usize>,
}

impl Proof {
    /// Proved, whatever the parts.
    pub const PROVED: Self = Self {
        decision: Decision::In,
        reason: Reason::Proved,
        rests_on: None,
    };

    /// From what was decided on one part; `reason` where that is not in, and
    /// nothing decided is [`Reason::Unknown`].
    #[must_use]
    pub const fn of(decision: Option<Decision>, reason: Reason, part: usize) -> Self {
        let (decision, reason) = match decision {
            Some(Decision::In) => return Self::PROVED,
            Some(decision) => (decision, reason),
            None => (Decision::Open, Reason::Unknown),
        };
        Self {
            decision,
            reason,
            rests_on: Some(part),
        }
    }

    /// Of two that must both hold, the one that decides; the first of equals.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        match (self.decision, other.decision) {
            (Decision::In, Decision::In) if self.rests_on.is_none() => other,
            (Decision::Out, _) | (_, Decision::In) => self,
            (_, Decision::Out) | (Decision::In, _) => other,
            _ => self,
        }
    }
}

/// Why an answer is only a part of one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Trouble {
    /// There are no parts to decide on.
    NoParts,
    /// No sizes are stocked, or none larger than nothing.
    NoSizes,
    /// Every size there is was ruled out.
    OutOfReach,
    /// There are not as many parts of one group as of the other.
    Uneven,
}
