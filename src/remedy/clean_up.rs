//! What size cleans up a worn bore or journal.

use super::{Proof, Prover, Reason, Trouble};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::Decision;

/// What wear did to a bore. All are diameters but the score and the offset.
#[derive(Clone, Debug, PartialEq)]
pub struct WornBore {
    /// The largest diameter.
    pub largest: Measured,
    /// The diameter where it did not wear; `None` where nobody read it.
    pub reference: Option<Measured>,
    /// How deep the deepest score or pit goes beyond the worn surface,
    /// radially; `None` without one.
    pub score: Option<Measured>,
    /// How far the axis of the boring bar may lie off the bore's own, that
    /// of its unworn metal; `None` where the bar is centred on that.
    pub offset: Option<Measured>,
}

/// What wear did to a journal.
#[derive(Clone, Debug, PartialEq)]
pub struct WornJournal {
    /// The smallest diameter.
    pub smallest: Measured,
    /// How deep the deepest score goes beyond the worn surface, radially;
    /// `None` without one.
    pub score: Option<Measured>,
    /// The full indicator reading of its run-out about the grinding axis;
    /// `None` where that is its own.
    pub runout: Option<Measured>,
}

/// The diameter that cleans up a worn part, between the best case and the
/// worst. Both hold the errors of what they were computed from.
#[derive(Clone, Debug, PartialEq)]
pub struct Bracket {
    /// If the wear is the same all round.
    pub even: Measured,
    /// If it is all on one side, and the machine is centred on the axis as
    /// made.
    pub one_sided: Measured,
}

/// One size that may be machined, for all parts of a kind.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Candidate {
    /// Over or under the standard size.
    pub step: Exact,
    /// The diameter that is bored, before honing, or ground.
    pub cut: Exact,
    /// In: it surely cleans up every part.
    pub proof: Proof,
}

/// What may be machined, the smallest step first.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Sizes {
    /// Every size that was asked about.
    pub candidates: Vec<Candidate>,
    /// The smallest that surely cleans up all: what to reckon with.
    pub plan: Option<usize>,
    /// The smallest of all, smaller than that one, that may: the worst part to
    /// be swept or rough-bored first, before anything is bought.
    pub sweep: Option<usize>,
    /// The worst part.
    pub worst: Option<usize>,
    /// Why this is only a part of an answer.
    pub trouble: Option<Trouble>,
}

impl WornBore {
    /// The bore that cleans this one up. Evenly worn it is the largest
    /// diameter and twice the score; worn on one side the bar takes as much
    /// off the other side, too: r + 2 w + 2 h + 2 e, with r the unworn
    /// diameter, w what it grew by, h the score and e the offset (geometry).
    /// Without a reading of the unworn diameter `nominal` stands for it.
    #[must_use]
    pub fn bracket(&self, nominal: Exact) -> Bracket {
        let nominal = Measured::new(nominal, &[]);
        let reference = self.reference.as_ref().unwrap_or(&nominal);
        bracket(
            1,
            &self.largest,
            reference,
            self.score.as_ref(),
            (2, self.offset.as_ref()),
        )
    }
}

impl WornJournal {
    /// The journal that cleans this one up, which was `as_made` at most:
    /// evenly worn the smallest diameter less twice the score, worn on one
    /// side as made − 2 w − 2 h − TIR, with w what it lost (geometry).
    #[must_use]
    pub fn bracket(&self, as_made: Exact) -> Bracket {
        let as_made = Measured::new(as_made, &[]);
        bracket(
            -1,
            &self.smallest,
            &as_made,
            self.score.as_ref(),
            (1, self.runout.as_ref()),
        )
    }
}

/// `way` is 1 where metal is missing outwards, −1 where inwards. What reads
/// less than nothing (a bore smaller than where it did not wear, a score of
/// less than no depth) adds nothing.
fn bracket(
    way: i64,
    worst: &Measured,
    unworn: &Measured,
    score: Option<&Measured>,
    one_sided: (i64, Option<&Measured>),
) -> Bracket {
    let nothing = Measured::new(Exact::ZERO, &[]);
    let outwards = |times: i64, part: Option<&Measured>| {
        let part = part.filter(|part| !part.value().is_negative());
        part.map_or_else(|| nothing.clone(), |part| part.scaled(way * times, 1))
    };
    let wear = (worst - unworn).scaled(way, 1);
    let (times, further) = one_sided;
    let even = worst + &outwards(2, score);
    let other_side = &outwards(1, Some(&wear)) + &outwards(times, further);
    Bracket {
        one_sided: &even + &other_side,
        even,
    }
}

/// How much must come off one part, on diameter and away from the standard
/// size, with the doubt of the readings.
#[derive(Clone, Copy)]
pub(super) struct Need {
    pub part: usize,
    /// From here on it surely cleans up.
    surely: Exact,
    /// From here on it does if the wear is even.
    if_even: Exact,
    /// Below this it does not.
    never: Exact,
    /// Whether the unworn size was read.
    is_known: bool,
}

impl Need {
    pub(super) fn new(
        part: usize,
        way: i64,
        bracket: &Bracket,
        is_known: bool,
        several: usize,
        prover: &Prover,
    ) -> Self {
        let outwards = |measured: &Measured| {
            let value = measured.value();
            if way < 0 { -value } else { value }
        };
        let Bracket { even, one_sided } = bracket;
        let if_even = outwards(even) + prover.guard(even);
        Self {
            part,
            surely: if_even.max(outwards(one_sided) + prover.guard(one_sided)),
            if_even,
            never: outwards(even) - prover.guard_out(even, several),
            is_known,
        }
    }

    /// What is proved of cutting to a size, counted outwards.
    pub(super) fn proof(&self, cut: Exact) -> Proof {
        let (decision, reason) = if self.surely <= cut {
            match self.is_known {
                true => (Decision::In, Reason::Proved),
                false => (Decision::Open, Reason::NoReference),
            }
        } else if self.if_even <= cut {
            (Decision::Open, Reason::Axis)
        } else if self.never <= cut {
            (Decision::Open, Reason::Readings)
        } else {
            (Decision::Out, Reason::Wear)
        };
        Proof {
            decision,
            reason,
            rests_on: Some(self.part),
        }
    }
}

/// A size as it stands in a list: the step from standard, the diameter it is
/// cut to, and what speaks against it whatever the parts.
pub(super) type Offer = (Exact, Exact, Proof);

/// Holds what is offered against what the parts need; `way` as in a bracket.
pub(super) fn sizes(way: i64, parts: impl Iterator<Item = Need>, offers: &[Offer]) -> Sizes {
    // The worst first, so that of equals the worst decides.
    let mut needs = Vec::new();
    for need in parts {
        let at = needs.partition_point(|other: &Need| need.surely <= other.surely);
        needs.insert(at, need);
    }
    let mut candidates = Vec::new();
    for &(step, cut, against) in offers.iter().filter(|(step, ..)| Exact::ZERO < *step) {
        let outwards = if way < 0 { -cut } else { cut };
        let each = needs.iter().map(|need| need.proof(outwards));
        let proof = each.fold(against, Proof::and);
        let at = candidates.partition_point(|other: &Candidate| other.step <= step);
        candidates.insert(at, Candidate { step, cut, proof });
    }
    let plan = candidates
        .iter()
        .position(|size| size.proof.decision == Decision::In);
    // The same oversize may be offered twice, with pistons of two sizes.
    let largest = plan.and_then(|plan| Some(candidates.get(plan)?.step));
    let sweep = candidates.iter().position(|size| {
        size.proof.decision == Decision::Open && largest.is_none_or(|largest| size.step < largest)
    });
    let trouble = if needs.is_empty() {
        Some(Trouble::NoParts)
    } else if candidates.is_empty() {
        Some(Trouble::NoSizes)
    } else {
        plan.or(sweep).is_none().then_some(Trouble::OutOfReach)
    };
    Sizes {
        worst: needs.first().map(|need| need.part),
        candidates,
        plan,
        sweep,
        trouble,
    }
}
