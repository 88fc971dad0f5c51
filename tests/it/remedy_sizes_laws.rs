//! Oversizes and undersizes against trying every size on every part.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Boring, Cylinder, Grinding, Journal, Sizes, Stock, Trouble, WornBore, WornJournal, oversizes,
    undersizes,
};
use fenderbench::verdict::Decision;
use proptest::prelude::*;

use crate::generators::config;
use crate::remedy_make::{Doubts, Reading, Sum, TENTH, about, doubts, steps, tenths};

/// A worn part in quanta: what it read worst, the unworn size where known,
/// the depth of a score, and what the machine's axis adds.
#[derive(Clone, Debug)]
struct Part {
    worst: i64,
    unworn: Option<i64>,
    score: Option<i64>,
    axis: Option<i64>,
}

fn part(unworn_is_known: bool) -> impl Strategy<Value = Part> {
    let unworn = if unworn_is_known {
        Just(Some(0)).boxed()
    } else {
        prop_oneof![1 => Just(None), 6 => about(-10, 10).prop_map(Some)].boxed()
    };
    let axis = prop_oneof![Just(None), about(0, 15).prop_map(Some)];
    let score = prop_oneof![2 => Just(None), 1 => about(0, 60).prop_map(Some)];
    (about(-5, 150), unworn, score, axis).prop_map(|(wear, unworn, score, axis)| Part {
        worst: unworn.unwrap_or(0) + wear,
        unworn,
        score,
        axis,
    })
}

/// The readings of a part, numbered.
fn readings(number: usize, part: &Part) -> [Option<Reading>; 4] {
    let all = [Some(part.worst), part.unworn, part.score, part.axis];
    let mut next = 4 * number;
    all.map(|value| {
        next += 1;
        let value = value?;
        Some(Reading {
            number: next,
            value,
        })
    })
}

/// What boring to so much over the standard does to one cylinder, written without regard to speed: 0 surely,
/// 1 if even, 2 not told, 3 never, and 1 for what lacks a reference.
fn naive(doubts: &Doubts, all: [Option<Reading>; 4], several: usize, cut: i64) -> u8 {
    let [worst, unworn, score, offset] = all;
    let worst = worst.unwrap();
    let mut even = Sum::default().and(1, worst);
    if let Some(score) = score {
        even = even.and(2, score);
    }
    let mut one_sided = even.clone();
    if unworn.map_or(0, |unworn| unworn.value) <= worst.value {
        one_sided = one_sided.and(1, worst);
        if let Some(unworn) = unworn {
            one_sided = one_sided.and(-1, unworn);
        }
    }
    if let Some(offset) = offset {
        one_sided = one_sided.and(2, offset);
    }
    let even_surely = even.value() + doubts.guard(&even, 0.95) <= cut;
    let one_surely = one_sided.value() + doubts.guard(&one_sided, 0.95) <= cut;
    if even_surely && one_surely {
        u8::from(unworn.is_none())
    } else if even_surely {
        1
    } else {
        match doubts.decide(&even, i64::MIN / 4, cut, several) {
            Decision::Out => 3,
            _ => 2,
        }
    }
}

/// The smallest size that surely does and the smallest before it that may.
fn naive_choice(tried: &[(i64, u8)]) -> (Option<i64>, Option<i64>) {
    let plan = tried.iter().filter(|(_, worst)| *worst == 0);
    let plan = plan.map(|(step, _)| *step).min();
    let sweep = tried
        .iter()
        .filter(|(step, worst)| (1..=2).contains(worst) && plan.is_none_or(|plan| *step < plan));
    (plan, sweep.map(|(step, _)| *step).min())
}

fn chosen(sizes: &Sizes, index: Option<usize>) -> Option<i64> {
    index.map(|index| i64::try_from(sizes.candidates[index].step.numerator()).unwrap())
}

const STANDARD: i64 = 40_000 * TENTH;

proptest! {
    #![proptest_config(config(2_000))]

    #[test]
    fn the_smallest_oversize_is_that_of_trying_them_all(
        doubts in doubts(),
        parts in prop::collection::vec(part(false), 1..=6),
        steps in steps(5),
        pistons in prop::collection::vec(prop::option::of(about(-5, 5)), 5),
        greatest in prop::option::of(about(200, 500)),
        (honing, clearance) in (about(0, 40), about(0, 120)),
        sleeved in prop::collection::vec(0..6_usize, 0..2),
    ) {
        let exact = |quanta: i64| Exact::new(quanta.into(), 1);
        let stock: Vec<_> = steps.iter().zip(&pistons).map(|(&over, piston)| Stock {
            over: exact(over),
            // A piston a little off its name.
            piston: piston.map(|off| exact(STANDARD + over - clearance + off)),
        }).collect();
        let boring = Boring {
            standard: exact(STANDARD),
            stock: &stock,
            honing: exact(honing),
            clearance: exact(clearance),
            greatest: greatest.map(exact),
        };
        let at_standard = |reading: Reading| Reading {
            value: STANDARD + reading.value,
            ..reading
        };
        let cylinders: Vec<_> = parts.iter().enumerate().map(|(number, part)| {
            let [largest, reference, score, offset] = readings(number, part);
            Cylinder {
                worn: WornBore {
                    largest: at_standard(largest.unwrap()).measured(),
                    reference: reference.map(|r| at_standard(r).measured()),
                    score: score.map(Reading::measured),
                    offset: offset.map(Reading::measured),
                },
                form: None,
                bore: None,
                clearance: None,
            }
        }).collect();
        let sizes = oversizes(&cylinders, &sleeved, &boring, &doubts.prover());

        let left: Vec<_> = (0..parts.len()).filter(|n| !sleeved.contains(n)).collect();
        let try_one = |part: usize, several: usize, over: i64, piston: &Option<i64>| {
            let cut = over + piston.unwrap_or(0) - honing;
            naive(&doubts, readings(part, &parts[part]), several, cut)
        };
        let own = |over: i64| {
            if greatest.is_some_and(|most| most < over) { 3 } else { u8::from(over <= clearance) }
        };
        let offered = || steps.iter().zip(&pistons).filter(|(over, _)| 0 < **over);
        let tried: Vec<_> = offered().map(|(&over, piston)| {
            let each = left.iter().map(|part| try_one(*part, left.len(), over, piston));
            (over, each.chain([own(over)]).max().unwrap())
        }).collect();
        prop_assert_eq!(sizes.candidates.len(), tried.len());
        for size in &sizes.candidates {
            let matches = tried.iter().any(|(over, worst)| {
                let decision = [Decision::In, Decision::Open, Decision::Open, Decision::Out];
                exact(*over) == size.step && decision[usize::from(*worst)] == size.proof.decision
            });
            prop_assert!(matches, "{:?} of {:?}", size, tried);
        }
        let (plan, sweep) = naive_choice(&tried);
        prop_assert_eq!(chosen(&sizes, sizes.plan), plan);
        prop_assert_eq!(chosen(&sizes, sizes.sweep), sweep);
        let trouble = if left.is_empty() {
            Some(Trouble::NoParts)
        } else if tried.is_empty() {
            Some(Trouble::NoSizes)
        } else if plan.or(sweep).is_none() {
            Some(Trouble::OutOfReach)
        } else if steps.iter().zip(&pistons).any(|(_, piston)| piston.is_none()) {
            Some(Trouble::NoPistons)
        } else {
            None
        };
        prop_assert_eq!(sizes.trouble, trouble);
    }

    #[test]
    fn the_smallest_undersize_is_that_of_trying_them_all(
        doubts in doubts(),
        parts in prop::collection::vec(part(true), 0..=6),
        steps in steps(4),
        greatest in prop::option::of(about(200, 500)),
        recentred in any::<bool>(),
    ) {
        let exact = |quanta: i64| Exact::new(quanta.into(), 1);
        let inwards = |reading: Reading| Reading {
            value: STANDARD - reading.value,
            ..reading
        };
        let journals: Vec<_> = parts.iter().enumerate().map(|(number, part)| {
            let [smallest, _, score, runout] = readings(number, part);
            Journal {
                worn: WornJournal {
                    smallest: inwards(smallest.unwrap()).measured(),
                    score: score.map(Reading::measured),
                    runout: runout.map(Reading::measured),
                },
                form: None,
            }
        }).collect();
        let stocked: Vec<_> = steps.iter().copied().map(exact).collect();
        let grinding = Grinding {
            standard: exact(STANDARD),
            as_made: exact(STANDARD),
            undersizes: &stocked,
            recentred,
            greatest: greatest.map(exact),
        };
        let sizes = undersizes(&journals, &grinding, &doubts.prover());

        let tried: Vec<_> = steps.iter().filter(|under| 0 < **under).map(|&under| {
            let each = parts.iter().enumerate().map(|(number, part)| {
                let [smallest, _, score, runout] = readings(number, part);
                naive_journal(&doubts, (smallest.unwrap(), score, runout), recentred, parts.len(), under)
            });
            let own = if greatest.is_some_and(|most| most < under) { 3 } else { 0 };
            (under, each.chain([own]).max().unwrap())
        }).collect();
        let (plan, sweep) = naive_choice(&tried);
        prop_assert_eq!(chosen(&sizes, sizes.plan), plan);
        prop_assert_eq!(chosen(&sizes, sizes.sweep), sweep);
    }

    #[test]
    fn more_wear_or_a_deeper_score_never_asks_for_less(
        doubts in doubts(),
        parts in prop::collection::vec(part(true), 1..=6),
        steps in steps(4),
        which in any::<prop::sample::Index>(),
        (wear, score) in (about(0, 40), about(0, 40)),
    ) {
        let exact = |quanta: i64| Exact::new(quanta.into(), 1);
        let stock = steps.iter().map(|&over| Stock { over: exact(over), piston: None });
        let stock: Vec<_> = stock.collect();
        let boring = Boring {
            standard: exact(STANDARD),
            stock: &stock,
            honing: tenths(30),
            clearance: tenths(20),
            greatest: None,
        };
        let plan = |parts: &[Part]| {
            let cylinders: Vec<_> = parts.iter().enumerate().map(|(number, part)| {
                let [largest, reference, score, offset] = readings(number, part);
                let up = |r: Reading| Reading { value: STANDARD + r.value, ..r }.measured();
                Cylinder {
                    worn: WornBore {
                        largest: up(largest.unwrap()),
                        reference: reference.map(up),
                        score: score.map(Reading::measured),
                        offset: offset.map(Reading::measured),
                    },
                    form: None,
                    bore: None,
                    clearance: None,
                }
            }).collect();
            let sizes = oversizes(&cylinders, &[], &boring, &doubts.prover());
            let decisions = sizes.candidates.iter().map(|size| match size.proof.decision {
                Decision::In => 0,
                Decision::Open => 1,
                Decision::Out => 2,
            });
            decisions.collect::<Vec<u8>>()
        };
        let before = plan(&parts);
        let mut worse = parts.clone();
        let part = which.index(parts.len());
        worse[part].worst += wear;
        worse[part].score = Some(worse[part].score.unwrap_or(0) + score);
        let after = plan(&worse);
        prop_assert!(before.iter().zip(&after).all(|(a, b)| a <= b), "{:?} {:?}", before, after);
    }
}

/// As [`naive`], for a journal that reads so much under the standard.
fn naive_journal(
    doubts: &Doubts,
    (smallest, score, runout): (Reading, Option<Reading>, Option<Reading>),
    recentred: bool,
    several: usize,
    under: i64,
) -> u8 {
    let journal = Reading {
        value: -smallest.value,
        ..smallest
    };
    let mut even = Sum::default().and(1, journal);
    if let Some(score) = score {
        even = even.and(-2, score);
    }
    let mut one_sided = even.clone();
    if journal.value <= 0 {
        one_sided = one_sided.and(1, journal);
    }
    if let Some(runout) = runout {
        one_sided = one_sided.and(-1, runout);
    }
    let even_surely = -under <= even.value() - doubts.guard(&even, 0.95);
    let one_surely = -under <= one_sided.value() - doubts.guard(&one_sided, 0.95);
    if even_surely && (one_surely || recentred) {
        0
    } else if even_surely {
        1
    } else {
        match doubts.decide(&even, -under, i64::MAX / 4, several) {
            Decision::Out => 3,
            _ => 2,
        }
    }
}
