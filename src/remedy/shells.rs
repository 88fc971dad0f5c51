//! Which shells land every clearance of a line of bearings.

use super::{Acceptance, HALVES_APART, Proof, Prover, Reason};
use crate::quantity::Exact;
use crate::uncertainty::Measured;
use crate::verdict::{Band, Decision};

/// A size of shell that can be had.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Shell {
    /// Its wall at the crown.
    pub wall: Exact,
    /// Whether it has run: never mixed with another.
    pub used: bool,
}

impl Shell {
    /// A new one of a set that makes the clearance smaller by `under`, half of
    /// which is more wall; below nothing for one that makes it larger.
    #[must_use]
    pub fn undersize(standard_wall: Exact, under: Exact) -> Self {
        let half = Exact::new(under.numerator(), 2 * under.denominator());
        Self {
            wall: standard_wall + half,
            used: false,
        }
    }
}

/// A place on the line of mains, or one rod.
#[derive(Clone, Debug, PartialEq)]
pub struct Position {
    /// The housing, bolted up without shells, less the journal, both square
    /// to the joint; the errors of the two walls belong in here as well.
    pub gap: Measured,
    /// Whether the thrust is taken here: no halves are mixed.
    pub thrust: bool,
}

/// Everything the choice of shells depends on.
#[derive(Clone, Copy, Debug)]
pub struct Line<'a> {
    /// The places in their order along the line.
    pub positions: &'a [Position],
    /// The sizes of shell, in any order.
    pub shells: &'a [Shell],
    /// The clearances wanted.
    pub band: Band,
    /// The best clearance.
    pub target: Exact,
    /// By how much the clearances of neighbours may differ; `None` for rods.
    pub neighbours: Option<Exact>,
    /// How far sizes may be mixed.
    pub mixing: Mixing,
}

/// How far sizes of shells may be mixed along a line, the plainest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Mixing {
    /// One size for the whole line.
    Set,
    /// Another size from place to place.
    Places,
    /// Upper and lower half of two neighbouring sizes as well, their walls no
    /// more than [`HALVES_APART`] apart; never where the thrust is taken. The
    /// clearance is the same either way round, and shops differ on which half
    /// the thicker one belongs in.
    Halves,
}

/// A choice of shells for every place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Choice {
    /// Upper and lower half at each place, by their index in the sizes.
    pub at: Vec<[usize; 2]>,
    /// The clearance at each place.
    pub clearances: Vec<Exact>,
    /// How far sizes are mixed.
    pub mixing: Mixing,
    /// Whether every clearance is proved in its band, and neighbours alike;
    /// of neighbours it rests on the second.
    pub proof: Proof,
}

/// The clearance of a place with these halves: housing − both walls −
/// journal (geometry).
#[must_use]
pub fn clearance(position: &Position, upper: &Shell, lower: &Shell) -> Measured {
    &position.gap - &Measured::new(upper.wall + lower.wall, &[])
}

/// The shells that leave the least out and the least open, as little mixed
/// as that allows, and then nearest to the target by the sum of distances.
/// Exact: all choices there are, by dynamic programming along the line.
/// `None` without sizes or places.
#[must_use]
pub fn best(line: &Line, prover: &Prover) -> Option<Choice> {
    if line.positions.is_empty() {
        return None;
    }
    let places = Places::new(line, prover);
    let sets = 0..line.shells.len();
    let sets = sets.map(|size| vec![[size; 2]; line.positions.len()]);
    let mut best: Option<(Cost, Vec<Halves>, Mixing)> = None;
    let mut offer = |at: Vec<Halves>, mixing| {
        let cost = places.cost(&at);
        let is_better = best.as_ref().is_none_or(|(least, _, so_far)| {
            let doubt = |cost: &Cost| (cost.out, cost.open);
            doubt(&cost) < doubt(least) || *so_far == mixing && cost < *least
        });
        if is_better {
            best = Some((cost, at, mixing));
        }
    };
    sets.for_each(|set| offer(set, Mixing::Set));
    for mixing in [Mixing::Places, Mixing::Halves] {
        if mixing <= line.mixing
            && let Some(at) = places.along(mixing)
        {
            offer(at, mixing);
        }
    }
    let (_, at, mixing) = best?;
    Some(places.choice(at, mixing))
}

/// Upper and lower half, by their index.
type Halves = [usize; 2];

/// What speaks against a choice, the gravest first. Sums of it keep their
/// order, which is what makes the search along the line exact.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
struct Cost {
    out: usize,
    open: usize,
    halves: usize,
    off: Exact,
}

impl Cost {
    const NONE: Self = Self {
        out: 0,
        open: 0,
        halves: 0,
        off: Exact::ZERO,
    };

    /// And one more decision.
    fn decided(mut self, decision: Decision) -> Self {
        match decision {
            Decision::In => {}
            Decision::Open => self.open += 1,
            Decision::Out => self.out += 1,
        }
        self
    }

    fn and(self, other: Self) -> Self {
        Self {
            out: self.out + other.out,
            open: self.open + other.open,
            halves: self.halves + other.halves,
            off: self.off + other.off,
        }
    }
}

/// A place with its doubts worked out once for all sizes.
struct Place {
    gap: Exact,
    thrust: bool,
    band: Option<Acceptance>,
    /// For the difference from the place before; `None` for the first, or
    /// where that may be anything.
    before: Option<Acceptance>,
}

impl Place {
    /// What it costs to differ by so much from the place before.
    fn beside(&self, cost: Cost, apart: Exact) -> Cost {
        match &self.before {
            Some(before) => cost.decided(before.decide(apart)),
            None => cost,
        }
    }
}

struct Places<'a> {
    line: &'a Line<'a>,
    places: Vec<Place>,
}

impl<'a> Places<'a> {
    fn new(line: &'a Line<'a>, prover: &Prover) -> Self {
        let all = line.positions;
        let apart = Band::either_way(line.neighbours);
        let before = core::iter::once(None).chain(all.iter().map(Some));
        let places = all.iter().zip(before).map(|(position, before)| Place {
            gap: position.gap.value(),
            thrust: position.thrust,
            band: prover.acceptance(&position.gap, &line.band, all.len()),
            before: before.and_then(|before| {
                let difference = &position.gap - &before.gap;
                prover.acceptance(&difference, &apart, all.len() - 1)
            }),
        });
        let places = places.collect();
        Self { line, places }
    }

    /// Both walls; none for a size that is not there.
    fn walls(&self, halves: Halves) -> Exact {
        let wall = |size: usize| self.line.shells.get(size).map_or(Exact::ZERO, |s| s.wall);
        let [upper, lower] = halves.map(wall);
        upper + lower
    }

    fn clearance(&self, place: &Place, halves: Halves) -> Exact {
        place.gap - self.walls(halves)
    }

    /// What may lie at a place.
    fn options(&self, place: &Place, mixing: Mixing) -> Vec<Halves> {
        let sizes = 0..self.line.shells.len();
        let mut options: Vec<_> = sizes.clone().map(|size| [size; 2]).collect();
        if mixing == Mixing::Halves && !place.thrust {
            let pairs = sizes
                .clone()
                .flat_map(|a| sizes.clone().map(move |b| [a, b]));
            options.extend(pairs.filter(|pair| self.may_mix(*pair)));
        }
        options
    }

    /// Whether two halves are of neighbouring sizes, new and nearly alike.
    fn may_mix(&self, pair: Halves) -> bool {
        let [Some(a), Some(b)] = pair.map(|size| self.line.shells.get(size)) else {
            return false;
        };
        let (thin, thick) = (a.wall.min(b.wall), a.wall.max(b.wall));
        let between = |shell: &Shell| thin < shell.wall && shell.wall < thick;
        thin < thick
            && thick - thin <= HALVES_APART
            && !a.used
            && !b.used
            && !self.line.shells.iter().any(between)
    }

    fn own(&self, place: &Place, halves: Halves) -> Cost {
        let clearance = self.clearance(place, halves);
        let [upper, lower] = halves;
        let decision = place.band.map(|band| band.decide(clearance));
        let cost = Cost {
            halves: (upper != lower).into(),
            off: (clearance - self.line.target).abs(),
            ..Cost::NONE
        };
        cost.decided(decision.unwrap_or(Decision::Open))
    }

    fn cost(&self, at: &[Halves]) -> Cost {
        let mut cost = Cost::NONE;
        let mut before = Exact::ZERO;
        for (place, &halves) in self.places.iter().zip(at) {
            let clearance = self.clearance(place, halves);
            cost = place.beside(cost, clearance - before);
            cost = cost.and(self.own(place, halves));
            before = clearance;
        }
        cost
    }

    /// The best choice along the line.
    fn along(&self, mixing: Mixing) -> Option<Vec<Halves>> {
        // For every option at the place, the best way to it and what it costs.
        let mut ways: Vec<(Cost, Exact, Vec<Halves>)> = Vec::new();
        for (number, place) in self.places.iter().enumerate() {
            let to = |halves: Halves| {
                let clearance = self.clearance(place, halves);
                let mut best: Option<(Cost, &[Halves])> =
                    (number == 0).then_some((Cost::NONE, &[]));
                for (cost, before, way) in &ways {
                    let cost = place.beside(*cost, clearance - *before);
                    if best.is_none_or(|(least, _)| cost < least) {
                        best = Some((cost, way));
                    }
                }
                let (cost, way) = best?;
                let cost = cost.and(self.own(place, halves));
                Some((cost, clearance, [way, &[halves]].concat()))
            };
            let options = self.options(place, mixing);
            ways = options.into_iter().filter_map(to).collect();
        }
        let mut best: Option<(Cost, Vec<Halves>)> = None;
        for (cost, _, way) in ways {
            if best.as_ref().is_none_or(|(least, _)| cost < *least) {
                best = Some((cost, way));
            }
        }
        best.map(|(_, way)| way)
    }

    fn choice(&self, at: Vec<Halves>, mixing: Mixing) -> Choice {
        let mut proof = Proof::PROVED;
        let mut clearances: Vec<Exact> = Vec::new();
        for (part, (place, &halves)) in self.places.iter().zip(&at).enumerate() {
            let clearance = self.clearance(place, halves);
            let decision = place.band.map(|band| band.decide(clearance));
            proof = proof.and(Proof::of(decision, Reason::Clearance, part));
            if let Some((apart, before)) = place.before.zip(clearances.last()) {
                let decision = Some(apart.decide(clearance - *before));
                proof = proof.and(Proof::of(decision, Reason::Neighbours, part));
            }
            clearances.push(clearance);
        }
        Choice {
            at,
            clearances,
            mixing,
            proof,
        }
    }
}
