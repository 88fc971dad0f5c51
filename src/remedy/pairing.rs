//! Which piston goes into which bore.

use super::{Prover, Trouble};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::Decision;

/// A bore, or a piston.
#[derive(Clone, Debug, PartialEq)]
pub struct Mate {
    /// Its diameter where the two meet.
    pub size: Measured,
    /// Only a bore and a piston of one group go together: one bank, one hand,
    /// one kind of crown.
    pub group: u32,
}

/// Pistons in their bores.
#[derive(Clone, Debug, PartialEq)]
pub struct Paired {
    /// The piston of each bore, by its index; `None` in a group without as
    /// many pistons as bores.
    pub pistons: Vec<Option<usize>>,
    /// The clearance of each bore.
    pub clearances: Vec<Option<Measured>>,
    /// The largest clearance less the smallest; `None` without any.
    pub spread: Option<Measured>,
    /// The same with every piston in the bore of its own number.
    pub as_given: Option<Measured>,
    /// Whether pairing gains anything: in where the spread is surely smaller
    /// than as given. A gain below its doubt is none.
    pub gain: Decision,
    /// Why this is only a part of an answer.
    pub trouble: Option<Trouble>,
}

/// Pairs the smallest piston with the smallest bore and so on, within each
/// group: no other pairing has a smaller spread, or a smaller sum of squares
/// (rearrangement). Pistons that `stay` keep the bore of their own number, as
/// used ones should.
#[must_use]
pub fn pair(bores: &[Mate], pistons: &[Mate], stay: &[usize], prover: &Prover) -> Paired {
    let stays = |part: &usize| stay.contains(part) && *part < bores.len().min(pistons.len());
    let sorted = |mates: &[Mate]| {
        let mut all: Vec<(u32, Exact, usize)> = Vec::new();
        let moved = mates.iter().enumerate().filter(|(part, _)| !stays(part));
        for (part, mate) in moved {
            let one = (mate.group, mate.size.value(), part);
            let at = all.partition_point(|other| *other < one);
            all.insert(at, one);
        }
        all
    };
    let (free, movable) = (sorted(bores), sorted(pistons));
    let count = |all: &[(u32, Exact, usize)], group| {
        let all = all.iter().filter(|(of, ..)| *of == group);
        all.count()
    };
    let is_even =
        |(group, ..): &&(u32, Exact, usize)| count(&free, *group) == count(&movable, *group);
    let is_whole = free.iter().chain(&movable).all(|one| is_even(&one));

    let home = (0..bores.len()).map(|bore| stays(&bore).then_some(bore));
    let mut paired: Vec<_> = home.collect();
    // Both lists are in the order of groups, then of sizes.
    let into = movable.iter().filter(is_even);
    for ((.., bore), (.., piston)) in free.iter().filter(is_even).zip(into) {
        if let Some(paired) = paired.get_mut(*bore) {
            *paired = Some(*piston);
        }
    }
    let clearance =
        |(bore, piston): (&Mate, Option<usize>)| Some(&bore.size - &pistons.get(piston?)?.size);
    let clearances: Vec<_> = bores
        .iter()
        .zip(paired.iter().copied())
        .map(clearance)
        .collect();
    let as_given: Vec<_> = bores.iter().zip((0..).map(Some)).map(clearance).collect();
    let [spread, as_given] = [&clearances, &as_given].map(|all| spread(all));
    let gain = match (&as_given, &spread) {
        (Some(before), Some(after)) => {
            let gain = before - after;
            if gain.value() <= Exact::ZERO {
                Decision::Out
            } else {
                prover.at_least(&gain, Exact::ZERO, 1)
            }
        }
        _ => Decision::Open,
    };
    let trouble = if bores.is_empty() {
        Some(Trouble::NoParts)
    } else {
        (!is_whole).then_some(Trouble::Uneven)
    };
    Paired {
        trouble,
        pistons: paired,
        clearances,
        spread,
        as_given,
        gain,
    }
}

/// The largest less the smallest, and the errors in that.
fn spread(clearances: &[Option<Measured>]) -> Option<Measured> {
    let all = || clearances.iter().flatten();
    let largest = all().max_by_key(|clearance| clearance.value())?;
    let smallest = all().min_by_key(|clearance| clearance.value())?;
    Some(largest - smallest)
}
