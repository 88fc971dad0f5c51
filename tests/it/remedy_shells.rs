//! Shells: worked by hand, and against every choice there is.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    HALVES_APART, Line, Mixing, NEIGHBOURS_APART, Position, Reason, Shell, best, clearance, target,
};
use fenderbench::verdict::{Band, Decision};
use proptest::prelude::*;

use crate::generators::config;
use crate::golden::golden;
use crate::make::exact;
use crate::remedy_make::{Doubts, Reading, Sum, about, doubts, known, tenths};

fn shell(wall: Exact) -> Shell {
    Shell { wall, used: false }
}

#[test]
fn clearances_as_worked_by_hand() {
    for row in golden!("shell_clearances.csv") {
        let length = |column| exact(&format!("{} in", row.get(column)));
        let [housing, journal] = ["housing", "journal"].map(length);
        let [upper, lower] = ["upper", "lower"].map(length);
        let place = Position {
            gap: &known(housing) - &known(journal),
            thrust: false,
        };
        let found = clearance(&place, &shell(upper), &shell(lower));
        assert_eq!(found.value(), length("clearance"), "{}", row.place());
        // The journal to order for that clearance is the one there is.
        let back = target(&known(housing), [upper, lower], length("clearance"));
        assert_eq!(back.value(), journal, "{}", row.place());
    }
}

#[test]
fn half_of_an_undersize_is_wall() {
    let under = |thou: i64| Shell::undersize(tenths(945), tenths(10 * thou)).wall;
    assert_eq!([under(1), under(10)], [tenths(950), tenths(995)]);
    assert_eq!(under(-1), tenths(940));
}

/// A line of which the gaps are given in tenths of a thou, and the walls.
fn plain<'a>(positions: &'a [Position], shells: &'a [Shell], mixing: Mixing) -> Line<'a> {
    Line {
        positions,
        shells,
        band: Band::new(Some(tenths(15)), Some(tenths(25))),
        target: tenths(20),
        neighbours: Some(NEIGHBOURS_APART),
        mixing,
    }
}

fn places(gaps: &[i64]) -> Vec<Position> {
    let place = |gap: &i64| Position {
        gap: known(tenths(*gap)),
        thrust: false,
    };
    gaps.iter().map(place).collect()
}

#[test]
fn one_size_for_all_goes_before_a_nearer_mixture() {
    let doubts = Doubts::new(0, 0);
    let shells = [900, 905].map(|wall| shell(tenths(wall)));
    // With 0.0900 in walls 0.0018, 0.0022 and 0.0025 in: all inside.
    let line = places(&[1_818, 1_822, 1_825]);
    let line = plain(&line, &shells, Mixing::Halves);
    let choice = best(&line, &doubts.prover()).unwrap();
    assert_eq!(choice.mixing, Mixing::Set);
    assert_eq!(choice.at, [[0, 0]; 3]);
    assert_eq!(choice.clearances, [18, 22, 25].map(tenths));
    assert_eq!(choice.proof.decision, Decision::In);
}

#[test]
fn other_places_where_one_size_does_not_do() {
    let doubts = Doubts::new(0, 0);
    let shells = [900, 905].map(|wall| shell(tenths(wall)));
    let line = places(&[1_820, 1_830, 1_827]);
    let at = |line: &[Position], mixing| {
        let line = plain(line, &shells, mixing);
        let choice = best(&line, &doubts.prover()).unwrap();
        (choice.mixing, choice.at, choice.proof.decision)
    };
    // The second takes the thick size, the third then lies at 0.0017 in.
    let mixed = (Mixing::Places, vec![[0, 0], [1, 1], [1, 1]], Decision::In);
    assert_eq!(at(&line, Mixing::Places), mixed);
    assert_eq!(at(&line, Mixing::Set).2, Decision::Out);
}

#[test]
fn halves_only_land_where_they_may_be_mixed() {
    let doubts = Doubts::new(0, 0);
    let choice = |walls: [i64; 2], used: bool, thrust: bool| {
        let [thin, thick] = walls.map(|wall| shell(tenths(wall)));
        let place = Position {
            // Halves leave 0.0022 in.
            gap: known(tenths(walls[0] + walls[1] + 22)),
            thrust,
        };
        let line = [place];
        let shells = [Shell { used, ..thin }, thick];
        let tight = Band::new(Some(tenths(21)), Some(tenths(23)));
        let line = Line {
            band: tight,
            ..plain(&line, &shells, Mixing::Halves)
        };
        let choice = best(&line, &doubts.prover()).unwrap();
        (choice.mixing, choice.proof.decision, choice.clearances)
    };
    // 0.0026 in with thin ones and 0.0018 in with thick ones are outside.
    let halves = (Mixing::Halves, Decision::In, vec![tenths(22)]);
    assert_eq!(choice([901, 905], false, false), halves);
    // Not where the thrust is taken, nor with one that has run, nor with
    // walls 0.0006 in apart.
    assert_eq!(choice([901, 905], false, true).1, Decision::Out);
    assert_eq!(choice([901, 905], true, false).1, Decision::Out);
    assert_eq!(choice([900, 905], false, false), halves);
    assert_eq!(choice([900, 906], false, false).1, Decision::Out);
}

#[test]
fn what_is_out_says_where_and_why() {
    let doubts = Doubts::new(0, 0);
    let shells = [shell(tenths(900))];
    let reason = |gaps: &[i64]| {
        let line = places(gaps);
        let choice = best(&plain(&line, &shells, Mixing::Set), &doubts.prover());
        let proof = choice.unwrap().proof;
        (proof.decision, proof.reason, proof.rests_on)
    };
    let out = |reason, part| (Decision::Out, reason, Some(part));
    assert_eq!(reason(&[1_820, 1_830]), out(Reason::Clearance, 1));
    assert_eq!(reason(&[1_816, 1_816, 1_824]), out(Reason::Neighbours, 2));
    let line = places(&[1_820]);
    assert!(best(&plain(&line, &[], Mixing::Halves), &doubts.prover()).is_none());
    assert!(best(&plain(&[], &shells, Mixing::Halves), &doubts.prover()).is_none());
}

/// What counts, the gravest first: out, open, how mixed, halves, off target.
type Cost = (usize, usize, Mixing, usize, i64);

struct Naive<'a> {
    doubts: &'a Doubts,
    gaps: &'a [(i64, i64, bool)],
    shells: &'a [(i64, bool)],
    band: (i64, i64),
    target: i64,
    neighbours: Option<i64>,
}

impl Naive<'_> {
    fn gap(&self, place: usize) -> [Reading; 2] {
        let (housing, journal, _) = self.gaps[place];
        let of = |at, value| Reading {
            number: 2 * place + at,
            value,
        };
        [of(0, housing), of(1, journal)]
    }

    fn walls(&self, [upper, lower]: [usize; 2]) -> i64 {
        self.shells[upper].0 + self.shells[lower].0
    }

    fn may(&self, place: usize, [upper, lower]: [usize; 2], mixing: Mixing) -> bool {
        let ((a, a_used), (b, b_used)) = (self.shells[upper], self.shells[lower]);
        upper == lower
            || mixing == Mixing::Halves
                && !self.gaps[place].2
                && !a_used
                && !b_used
                && a != b
                && Exact::new((a - b).abs().into(), 1) <= HALVES_APART
                && !self
                    .shells
                    .iter()
                    .any(|(c, _)| a.min(b) < *c && *c < a.max(b))
    }

    fn cost(&self, at: &[[usize; 2]]) -> Cost {
        let mut decisions = Vec::new();
        let mut off = 0;
        for (place, halves) in at.iter().enumerate() {
            let [housing, journal] = self.gap(place);
            let own = Sum::default()
                .and(1, housing)
                .and(-1, journal)
                .less(self.walls(*halves));
            off += (own.value() - self.target).abs();
            let (low, high) = self.band;
            decisions.push(self.doubts.decide(&own, low, high, at.len()));
            if let Some(most) = self.neighbours
                && 0 < place
            {
                let [other_housing, other_journal] = self.gap(place - 1);
                let apart = Sum::default()
                    .and(1, housing)
                    .and(-1, journal)
                    .and(-1, other_housing)
                    .and(1, other_journal)
                    .less(self.walls(*halves) - self.walls(at[place - 1]));
                decisions.push(self.doubts.decide(&apart, -most, most, at.len() - 1));
            }
        }
        let count = |what| decisions.iter().filter(|d| **d == what).count();
        let halves = at.iter().filter(|[upper, lower]| upper != lower).count();
        let mixing = if 0 < halves {
            Mixing::Halves
        } else if at.windows(2).any(|two| two[0] != two[1]) {
            Mixing::Places
        } else {
            Mixing::Set
        };
        (
            count(Decision::Out),
            count(Decision::Open),
            mixing,
            halves,
            off,
        )
    }

    /// Every choice there is.
    fn all(&self, mixing: Mixing) -> Vec<Vec<[usize; 2]>> {
        let mut all = vec![Vec::new()];
        for place in 0..self.gaps.len() {
            let mut longer = Vec::new();
            for way in &all {
                for upper in 0..self.shells.len() {
                    for lower in 0..self.shells.len() {
                        let halves = [upper, lower];
                        let same = way.last().is_none_or(|last| *last == halves);
                        if self.may(place, halves, mixing) && (mixing != Mixing::Set || same) {
                            longer.push([way.as_slice(), &[halves]].concat());
                        }
                    }
                }
            }
            all = longer;
        }
        all
    }
}

proptest! {
    #![proptest_config(config(2_000))]

    #[test]
    fn the_best_shells_are_those_of_trying_them_all(
        doubts in doubts(),
        gaps in prop::collection::vec((about(27_000, 27_016), about(25_000, 25_006), any::<bool>()), 1..=6),
        shells in prop::collection::vec((about(985, 1_000), prop::bool::weighted(0.2)), 1..=3),
        (low, wide) in (about(12, 18), about(4, 14)),
        neighbours in prop::option::of(about(2, 10)),
        mixing in prop::sample::select(vec![Mixing::Set, Mixing::Places, Mixing::Halves]),
    ) {
        // Halves make many choices, so that four places are enough then.
        let gaps = if mixing == Mixing::Halves { &gaps[..gaps.len().min(4)] } else { &gaps };
        let naive = Naive {
            doubts: &doubts,
            gaps,
            shells: &shells,
            band: (low, low + wide),
            target: low + wide / 2,
            neighbours,
        };
        let exact = |quanta: i64| Exact::new(quanta.into(), 1);
        let positions: Vec<_> = (0..gaps.len()).map(|place| {
            let [housing, journal] = naive.gap(place);
            Position {
                gap: &housing.measured() - &journal.measured(),
                thrust: gaps[place].2,
            }
        }).collect();
        let sizes = shells.iter().map(|&(wall, used)| Shell { wall: exact(wall), used });
        let sizes: Vec<_> = sizes.collect();
        let line = Line {
            positions: &positions,
            shells: &sizes,
            band: Band::new(Some(exact(low)), Some(exact(low + wide))),
            target: exact(naive.target),
            neighbours: neighbours.map(exact),
            mixing,
        };
        let choice = best(&line, &doubts.prover()).unwrap();
        let all = naive.all(mixing);
        prop_assert!(all.contains(&choice.at), "{:?}", choice.at);
        let found = naive.cost(&choice.at);
        let least = all.iter().map(|at| naive.cost(at)).min().unwrap();
        prop_assert_eq!(found, least);
        prop_assert_eq!(choice.mixing, found.2);
        let decision = match found {
            (0, 0, ..) => Decision::In,
            (0, ..) => Decision::Open,
            _ => Decision::Out,
        };
        prop_assert_eq!(choice.proof.decision, decision);
        for (place, at) in choice.at.iter().enumerate() {
            let (housing, journal, _) = gaps[place];
            let clearance = housing - journal - naive.walls(*at);
            prop_assert_eq!(choice.clearances[place], exact(clearance));
        }
    }
}

#[test]
fn rods_have_no_neighbours() {
    let doubts = Doubts::new(0, 0);
    let shells = [shell(tenths(900))];
    let line = places(&[1_816, 1_824]);
    let line = Line {
        neighbours: None,
        ..plain(&line, &shells, Mixing::Set)
    };
    let choice = best(&line, &doubts.prover()).unwrap();
    assert_eq!(choice.proof.decision, Decision::In);
}
