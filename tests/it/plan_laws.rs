//! Laws of the plan: worse parts never make it cheaper or lighter.

use fenderbench::remedy::{Finish, Harm, Word, plan};
use fenderbench::verdict::Decision;

use crate::plan_brute::cost;
use crate::plan_chance::{Chance, Size, set};
use crate::plan_make::{Raw, RawRow, Seen};
use crate::plan_naive::Cost;
use crate::remedy_make::{Reading, TENTH};

const USUAL: Size = Size {
    cylinders: 6,
    places: 4,
    sizes: 3,
    bad: 9,
};

/// What the plan and its hope come to: what they leave without an answer, the
/// price, and the weight.
fn costs(raw: &Raw, by_price: bool) -> [Cost; 2] {
    let plan = plan(&raw.job(), &raw.doubts.prover());
    let hope = plan.hope.as_ref().unwrap_or(&plan.way);
    [&plan.way, hope].map(|way| cost(raw, way, by_price))
}

fn worse(decision: &mut Option<Decision>) {
    *decision = match decision {
        Some(Decision::In) => Some(Decision::Open),
        None | Some(Decision::Open | Decision::Out) => Some(Decision::Out),
    };
}

fn deeper(score: &mut Option<Reading>, number: usize, by: i64, seen: &Seen) {
    match score {
        Some(score) => score.value += by,
        // A score that was seen and not measured may be as deep as it likes;
        // to measure it is no wear.
        None if seen.surface != Some(Finish::Scored) => {
            *score = Some(Reading { number, value: by });
        }
        None => {}
    }
}

fn uglier(seen: &mut Seen, is_harm: bool) {
    if is_harm {
        seen.harm = match seen.harm {
            None | Some(Harm::None) => Some(Harm::MayBeCracked),
            _ => Some(Harm::Cracked),
        };
    } else {
        seen.surface = match seen.surface {
            None | Some(Finish::Good) => Some(Finish::Dull),
            _ => seen.surface,
        };
    }
}

/// Whether a journal at all its places already has more than the middle of
/// every clearance it could get.
fn is_loose(row: &RawRow, index: usize) -> bool {
    let thickest = row.walls.iter().max().copied().unwrap_or(0);
    let middle = row.wanted.iter().sum::<i64>() / 2;
    let here = row.places.iter().filter(|place| place.journal == index);
    here.into_iter().all(|place| {
        let housings = [place.housing.map(|housing| housing.value), Some(row.made)];
        let mut housings = housings.into_iter().flatten();
        housings.all(|housing| middle <= housing - place.size.value - 2 * thickest)
    })
}

/// One thing about a set gets worse.
fn worsen(raw: &mut Raw, chance: &mut Chance) {
    let by = chance.within(0, 12) * TENTH;
    let number = 1_000_000;
    let one_row = chance.index(2);
    if chance.once_in(2) && !raw.cylinders.is_empty() {
        let largest = raw.stock.iter().filter_map(|(_, piston)| *piston).max();
        let middle = |[low, high]: [i64; 2]| (low + high) / 2;
        let [own, new] = [raw.allowed, raw.wanted].map(middle);
        let index = chance.index(raw.cylinders.len());
        let cylinder = &mut raw.cylinders[index];
        match chance.within(0, 6) {
            0 => deeper(&mut cylinder.score, number, by, &cylinder.seen),
            1 => worse(&mut cylinder.form),
            2 => worse(&mut cylinder.piston_form),
            3 => uglier(&mut cylinder.seen, chance.once_in(2)),
            4 => uglier(&mut cylinder.piston_seen, chance.once_in(2)),
            _ => {
                cylinder.worst.value += by;
                let pistons = [cylinder.piston.map(|piston| piston.value), largest];
                let least = |bore: i64| {
                    let [piston, largest] = pistons;
                    piston.is_none_or(|piston| own <= bore - piston)
                        && largest.is_none_or(|piston| new <= bore - piston)
                };
                if let Some(bore) = cylinder.bore.as_mut().filter(|bore| least(bore.value)) {
                    bore.value += by;
                }
            }
        }
        return;
    }
    let row = &mut raw.rows[one_row];
    if row.places.is_empty() || chance.once_in(8) {
        let decision = chance.one(&[true, false]);
        worse(if decision {
            &mut raw.alignment
        } else {
            &mut raw.straightness
        });
        return;
    }
    let index = chance.index(row.journals.len());
    let is_loose = is_loose(row, index);
    let journal = &mut row.journals[index];
    match chance.within(0, 8) {
        0 => deeper(&mut journal.score, number, by, &journal.seen),
        1 => worse(&mut journal.form),
        2 => match &mut journal.runout {
            Some(runout) => runout.value += by,
            None => journal.runout = Some(Reading { number, value: by }),
        },
        3 => uglier(&mut journal.seen, chance.once_in(2)),
        4 => worse(&mut row.places[index].form),
        5 => uglier(&mut row.places[index].seen, true),
        6 => {
            let middle = row.allowed.iter().sum::<i64>() / 2;
            let clearance = row.places[index].clearance.as_mut();
            if let Some(clearance) = clearance.filter(|clearance| middle <= clearance.value) {
                clearance.value += by;
            }
        }
        _ => {
            journal.smallest.value -= by;
            if is_loose && row.neighbours.is_none() {
                for place in row.places.iter_mut().filter(|place| place.journal == index) {
                    place.size.value -= by;
                }
            }
        }
    }
}

#[test]
fn worse_parts_never_make_the_plan_cheaper() {
    let mut dearer = 0;
    for seed in 100_000..110_000 {
        let mut raw = set(seed, USUAL);
        let before = costs(&raw, true);
        worsen(&mut raw, &mut Chance::new(seed));
        let after = costs(&raw, true);
        for (before, after) in before.iter().zip(&after) {
            assert!(before <= after, "{seed}: {before:?} {after:?}");
        }
        dearer += usize::from(before != after);
    }
    // Many of them count for nothing, as one part decides for all.
    assert!(500 < dearer, "{dearer}");
}

#[test]
fn worse_parts_never_make_the_plan_lighter() {
    let mut heavier = 0;
    for seed in 200_000..210_000 {
        let mut raw = set(seed, USUAL);
        raw.prices.clear();
        let before = costs(&raw, false);
        worsen(&mut raw, &mut Chance::new(seed));
        let after = costs(&raw, false);
        for (before, after) in before.iter().zip(&after) {
            assert!(before <= after, "{seed}: {before:?} {after:?}");
        }
        heavier += usize::from(before != after);
    }
    assert!(500 < heavier, "{heavier}");
}

#[test]
fn a_cracked_part_is_never_used_again() {
    let mut cracked = 0;
    for seed in 300_000..301_500 {
        let raw = set(seed, USUAL);
        let job = raw.job();
        let plan = plan(&job, &raw.doubts.prover());
        for judged in &plan.parts {
            if job.looks(judged.part).harm == Some(Harm::Cracked) {
                cracked += 1;
                let word = judged.word;
                assert!(
                    [Word::Replace, Word::Shop].contains(&word),
                    "{seed}: {judged:?}"
                );
            }
        }
    }
    assert!(100 < cracked, "{cracked}");
}
