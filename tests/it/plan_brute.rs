//! The plan against trying every combination.

use fenderbench::remedy::{Ask, Basis, BoreWork, Item, Part, Plan, Way, plan};
use fenderbench::verdict::Decision;

use crate::plan_chance::{Size, set};
use crate::plan_make::Raw;
use crate::plan_naive::{Bill, Cost, Naive, weight};

const USUAL: Size = Size {
    cylinders: 6,
    places: 3,
    sizes: 3,
    bad: 9,
};

fn bill(way: &Way) -> Bill {
    let mut bill = Bill::default();
    for (item, count) in &way.items {
        bill[*item as usize] = u32::try_from(*count).unwrap();
    }
    bill
}

pub fn cost(raw: &Raw, way: &Way, by_price: bool) -> Cost {
    let answers = [way.top.is_some(), way.mains.is_some(), way.rods.is_some()];
    let unanswered = answers.iter().filter(|answered| !**answered).count();
    let price = if by_price {
        i64::try_from(way.total.unwrap()).unwrap()
    } else {
        0
    };
    let over = way.top.map_or(0, |top| raw.steps_over(top.pistons));
    let rows = [&way.mains, &way.rods].into_iter().zip(&raw.rows);
    let under = rows.filter_map(|(way, row)| Some(row.steps_under(way.as_ref()?.journals)));
    let steps = over + under.sum::<usize>();
    let unanswered = u32::try_from(unanswered).unwrap();
    (unanswered, price, weight(&bill(way)), steps)
}

fn naive(raw: &Raw, open_is_enough: bool) -> Naive<'_> {
    Naive {
        raw,
        open_is_enough,
        answer: None,
        without: Vec::new(),
        may_sleeve_all: true,
    }
}

fn planned(raw: &Raw) -> Plan {
    plan(&raw.job(), &raw.doubts.prover())
}

/// The cost of the best, from trying every combination.
fn tried(naive: &Naive, by_price: bool) -> Option<Cost> {
    naive.best(by_price).map(|(cost, _)| cost)
}

#[test]
fn the_plan_is_the_best_of_all_combinations() {
    let mut hopes = 0;
    let mut runners_up = 0;
    for seed in 0..2_000 {
        let raw = set(seed, USUAL);
        let plan = planned(&raw);
        assert_eq!(plan.basis, Basis::Price, "{seed}");
        let best = naive(&raw, false).best(true).unwrap();
        assert_eq!(
            cost(&raw, &plan.way, true),
            best.0,
            "{seed}: {:?}",
            plan.way
        );
        let hoped = tried(&naive(&raw, true), true).unwrap();
        let hope = plan.hope.as_ref().map(|way| cost(&raw, way, true));
        assert_eq!(hope, (hoped < best.0).then_some(hoped), "{seed}");
        hopes += usize::from(plan.hope.is_some());
        let needed = bill(&plan.way);
        let others = Item::ALL.into_iter();
        let others = others.filter(|item| 0 < needed[*item as usize]);
        let top = plan.way.top;
        let all_sleeved = top.is_some_and(|top| top.bores == BoreWork::Sleeves);
        let spared = [Item::Crank, Item::Block].into_iter();
        let spared = spared.filter(|item| needed[*item as usize] == 0);
        let spared: Vec<_> = spared.collect();
        let others = others.filter_map(|item| {
            let mut naive = naive(&raw, false);
            naive.without = [spared.as_slice(), &[item]].concat();
            naive.may_sleeve_all = all_sleeved;
            tried(&naive, true).filter(|cost| cost.0 <= best.0.0)
        });
        let runner_up = plan.runner_up.as_ref().map(|way| cost(&raw, way, true));
        assert_eq!(runner_up, others.min(), "{seed}");
        runners_up += usize::from(runner_up.is_some());
    }
    // The sets are no idle ones.
    assert!(500 < hopes && 1_000 < runners_up, "{hopes}, {runners_up}");
}

#[test]
fn without_prices_it_is_the_lightest() {
    for seed in 10_000..12_000 {
        let mut raw = set(seed, USUAL);
        raw.prices.clear();
        let plan = planned(&raw);
        let best = tried(&naive(&raw, false), false).unwrap();
        assert_eq!(cost(&raw, &plan.way, false), best, "{seed}");
        // Only a way that is not paid for at all is priced.
        let is_free = plan.way.items.is_empty();
        let basis = if is_free && plan.hope.is_none() {
            Basis::Price
        } else {
            Basis::Weight
        };
        assert_eq!(plan.basis, basis, "{seed}");
        assert_eq!(plan.way.total.is_some(), is_free, "{seed}");
        assert!(
            plan.way
                .items
                .iter()
                .all(|(item, _)| plan.blanks.contains(item))
        );
    }
}

#[test]
fn with_some_prices_the_lightest_decides_whether_price_does() {
    let mut by_price = 0;
    for seed in 20_000..20_500 {
        let mut raw = set(seed, USUAL);
        raw.prices.rotate_left(usize::try_from(seed).unwrap() % 20);
        raw.prices.truncate(18);
        let plan = planned(&raw);
        let [sure, hoped] = [false, true].map(|open| naive(&raw, open));
        let is_priced = [&sure, &hoped].iter().all(|naive| {
            let (_, bill) = naive.best(false).unwrap();
            let has = |item: Item| raw.prices.iter().any(|(of, _)| *of == item);
            Item::ALL
                .into_iter()
                .all(|item| bill[item as usize] == 0 || has(item))
        });
        let basis = if is_priced {
            Basis::Price
        } else {
            Basis::Weight
        };
        assert_eq!(plan.basis, basis, "{seed}");
        let best = tried(&sure, is_priced).unwrap();
        assert_eq!(cost(&raw, &plan.way, is_priced), best, "{seed}");
        by_price += usize::from(is_priced);
    }
    assert!(50 < by_price && by_price < 450, "{by_price}");
}

/// Every question there may be about a set.
fn questions(raw: &Raw) -> Vec<(Part, Ask)> {
    let mut parts = vec![Part::Block, Part::Crank];
    let looks = raw.job().looks;
    parts.extend(looks.iter().map(|(part, _)| *part));
    let asks = [
        Ask::Soundness,
        Ask::Form,
        Ask::Surface,
        Ask::Clearance,
        Ask::CleanUp,
    ];
    let each = |part: Part| asks.map(|ask| (part, ask));
    parts.into_iter().flat_map(each).collect()
}

fn difference(less: &Option<Cost>, more: &Option<Cost>) -> (u32, i64) {
    match (less, more) {
        (Some(less), Some(more)) if less < more => {
            (more.0.saturating_sub(less.0), (more.1 - less.1).max(0))
        }
        _ => (0, 0),
    }
}

#[test]
fn the_further_reading_changes_the_plan_most() {
    let small = Size {
        cylinders: 3,
        places: 2,
        sizes: 2,
        bad: 6,
    };
    let mut told = 0;
    for seed in 30_000..30_400 {
        let raw = set(seed, small);
        let plan = planned(&raw);
        let [sure, hoped] = [false, true].map(|open| tried(&naive(&raw, open), true));
        let swing = |(part, ask): (Part, Ask)| {
            let answered = |open_is_enough, answer| {
                let mut naive = naive(&raw, open_is_enough);
                naive.answer = Some((part, ask, answer));
                tried(&naive, true)
            };
            let gain = difference(&answered(false, Decision::In), &sure);
            gain.max(difference(&hoped, &answered(true, Decision::Out)))
        };
        let most = questions(&raw).into_iter().map(swing).max().unwrap();
        match &plan.next {
            Some(next) => {
                assert_eq!(
                    swing((next.question.part, next.question.ask)),
                    most,
                    "{seed}"
                );
                told += 1;
            }
            None => assert_eq!(most, (0, 0), "{seed}"),
        }
    }
    assert!(100 < told, "{told}");
}

#[test]
fn a_hope_rests_on_what_would_undo_it() {
    let mut rests = 0;
    for seed in 40_000..40_600 {
        let raw = set(seed, USUAL);
        let plan = planned(&raw);
        assert!(plan.way.rests_on.is_empty(), "{seed}");
        if let Some(hope) = &plan.hope {
            assert!(!hope.rests_on.is_empty(), "{seed}: {hope:?}");
            rests += hope.rests_on.len();
        }
    }
    assert!(300 < rests, "{rests}");
}
