//! Pistons to bores: worked by hand, and against every permutation.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{Mate, Trouble, pair};
use fenderbench::verdict::Decision;
use proptest::prelude::*;

use crate::generators::config;
use crate::golden::golden;
use crate::make::exact;
use crate::remedy_make::{Doubts, Reading, Sum, about, doubts, known, tenths};

fn mates(sizes: &[Exact]) -> Vec<Mate> {
    let mate = |size: &Exact| Mate {
        size: known(*size),
        group: 0,
    };
    sizes.iter().map(mate).collect()
}

#[test]
fn pairs_as_worked_by_hand() {
    let doubts = Doubts::new(0, 0);
    for row in golden!("pairings.csv") {
        let sizes = |column| -> Vec<Exact> {
            let sizes = row.get(column).split(' ');
            sizes.map(|size| exact(&format!("{size} in"))).collect()
        };
        let [bores, pistons] = ["bores", "pistons"].map(|column| mates(&sizes(column)));
        let paired = pair(&bores, &pistons, &[], &doubts.prover());
        let names: Vec<_> = paired
            .pistons
            .iter()
            .map(|piston| {
                let piston = piston.unwrap() + 1;
                piston.to_string()
            })
            .collect();
        assert_eq!(names.join(" "), row.get("paired"), "{}", row.place());
        let clearances = paired
            .clearances
            .iter()
            .map(|c| c.as_ref().unwrap().value());
        let clearances: Vec<_> = clearances.collect();
        assert_eq!(clearances, sizes("clearances"), "{}", row.place());
        let spread =
            |sizes: Vec<Exact>| *sizes.iter().max().unwrap() - *sizes.iter().min().unwrap();
        let as_given = paired.as_given.unwrap().value();
        assert_eq!(as_given, spread(sizes("as_given")), "{}", row.place());
        assert_eq!(paired.gain, Decision::In, "{}", row.place());
    }
}

#[test]
fn a_gain_below_its_doubt_is_none() {
    let sizes = |numbers: [i64; 2], from: usize| -> Vec<Mate> {
        let numbers = (from..).zip(numbers);
        let mate = |(number, tenth): (usize, i64)| Mate {
            size: Reading {
                number,
                value: 25_400 * tenth,
            }
            .measured(),
            group: 0,
        };
        numbers.map(mate).collect()
    };
    let (bores, pistons) = (sizes([40_000, 40_004], 0), sizes([39_984, 39_980], 2));
    let gain = |u| {
        let doubts = Doubts::new(100_000, u);
        pair(&bores, &pistons, &[], &doubts.prover()).gain
    };
    assert_eq!(gain(1_000), Decision::In);
    assert_eq!(gain(60_000), Decision::Open);
    let sorted = pair(
        &bores,
        &sizes([39_980, 39_984], 2),
        &[],
        &Doubts::new(0, 0).prover(),
    );
    assert_eq!(sorted.gain, Decision::Out);
}

#[test]
fn a_group_without_as_many_pistons_is_left_and_named() {
    let doubts = Doubts::new(0, 0);
    let mut bores = mates(&[40_002, 40_000, 40_001].map(tenths));
    bores[1].group = 7;
    let pistons = mates(&[39_980, 39_979].map(tenths));
    let paired = pair(&bores, &pistons, &[], &doubts.prover());
    assert_eq!(paired.pistons, [Some(0), None, Some(1)]);
    assert_eq!(paired.trouble, Some(Trouble::Uneven));
    let paired = pair(&[], &[], &[3], &doubts.prover());
    assert_eq!(paired.trouble, Some(Trouble::NoParts));
    assert_eq!((paired.spread, paired.gain), (None, Decision::Open));
}

/// Every order of so many.
fn orders(count: usize) -> Vec<Vec<usize>> {
    let mut all = vec![Vec::new()];
    for number in 0..count {
        let mut longer = Vec::new();
        for order in &all {
            for at in 0..=order.len() {
                let mut order: Vec<usize> = order.clone();
                order.insert(at, number);
                longer.push(order);
            }
        }
        all = longer;
    }
    all
}

/// The largest less the smallest, the last and the first of equals.
fn spread(bores: &[Reading], pistons: &[Reading], order: &[usize]) -> Sum {
    let clearance = |bore: usize| bores[bore].value - pistons[order[bore]].value;
    let (mut largest, mut smallest) = (0, 0);
    for bore in 0..bores.len() {
        if clearance(largest) <= clearance(bore) {
            largest = bore;
        }
        if clearance(bore) < clearance(smallest) {
            smallest = bore;
        }
    }
    let sum = Sum::default()
        .and(1, bores[largest])
        .and(-1, pistons[order[largest]]);
    sum.and(-1, bores[smallest])
        .and(1, pistons[order[smallest]])
}

proptest! {
    #![proptest_config(config(2_000))]

    #[test]
    fn no_permutation_is_better(
        doubts in doubts(),
        sizes in prop::collection::vec((about(40_000, 40_010), about(39_975, 39_985), 0..2_u32), 1..=6),
        stay in prop::collection::vec(0..8_usize, 0..3),
    ) {
        let count = sizes.len();
        let readings = |from: usize, values: Vec<i64>| -> Vec<Reading> {
            let numbered = (from..).zip(values);
            numbered.map(|(number, value)| Reading { number, value }).collect()
        };
        let bores = readings(0, sizes.iter().map(|(bore, ..)| *bore).collect());
        let pistons = readings(count, sizes.iter().map(|(_, piston, _)| *piston).collect());
        let mates = |readings: &[Reading]| -> Vec<Mate> {
            let grouped = readings.iter().zip(&sizes);
            let mate = |(reading, (.., group)): (&Reading, &(_, _, u32))| Mate {
                size: reading.measured(),
                group: *group,
            };
            grouped.map(mate).collect()
        };
        let paired = pair(&mates(&bores), &mates(&pistons), &stay, &doubts.prover());
        prop_assert_eq!(paired.trouble, None);
        let order: Vec<usize> = paired.pistons.iter().map(|piston| piston.unwrap()).collect();

        let allowed = |order: &Vec<usize>| (0..count).all(|bore| {
            let same_group = sizes[bore].2 == sizes[order[bore]].2;
            same_group && (order[bore] == bore || !stay.contains(&bore) && !stay.contains(&order[bore]))
        });
        let all: Vec<_> = orders(count).into_iter().filter(allowed).collect();
        prop_assert!(all.contains(&order), "{:?}", order);
        let spread_of = |order: &Vec<usize>| spread(&bores, &pistons, order).value();
        let squares = |order: &Vec<usize>| -> i128 {
            let clearances = (0..count).map(|bore| bores[bore].value - pistons[order[bore]].value);
            clearances.map(|c| i128::from(c) * i128::from(c)).sum()
        };
        prop_assert_eq!(Some(spread_of(&order)), all.iter().map(spread_of).min());
        prop_assert_eq!(Some(squares(&order)), all.iter().map(squares).min());

        let given: Vec<usize> = (0..count).collect();
        let [before, after] = [&given, &order].map(|order| spread(&bores, &pistons, order));
        let exact = |quanta: i64| Exact::new(quanta.into(), 1);
        let found = [&paired.as_given, &paired.spread].map(|m| m.as_ref().unwrap());
        prop_assert_eq!(found.map(|m| m.value()), [&before, &after].map(|s| exact(s.value())));
        let decision = if before.value() <= after.value() {
            Decision::Out
        } else {
            doubts.decide(&before.minus(after), 0, i64::MAX / 4, 1)
        };
        prop_assert_eq!(paired.gain, decision);
    }
}
