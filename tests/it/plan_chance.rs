//! Sets by chance, as many as there are seeds.

use fenderbench::remedy::{Finish, Harm, Item};
use fenderbench::verdict::Decision;

use crate::plan_make::{Raw, RawCylinder, RawJournal, RawPlace, RawRow, Seen};
use crate::remedy_make::{Doubts, Reading, TENTH};

/// Numbers by chance, the same for one seed on every machine: a counter, mixed
/// (the constants of SplitMix64, from memory).
pub struct Chance(u64);

impl Chance {
    pub fn new(seed: u64) -> Self {
        Self(seed)
    }

    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mixed = (self.0 ^ (self.0 >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        let mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// From `low` to `high`, both ends too.
    pub fn within(&mut self, low: i64, high: i64) -> i64 {
        let many = u64::try_from(high - low + 1).unwrap();
        low + i64::try_from(self.next() % many).unwrap()
    }

    /// Once in so many.
    pub fn once_in(&mut self, many: i64) -> bool {
        self.within(1, many) == 1
    }

    pub fn index(&mut self, len: usize) -> usize {
        usize::try_from(self.within(0, i64::try_from(len).unwrap() - 1)).unwrap()
    }

    pub fn one<T: Copy>(&mut self, all: &[T]) -> T {
        all[self.index(all.len())]
    }
}

/// How large a set is at most, and how often something about it is bad: once
/// in so many.
#[derive(Clone, Copy, Debug)]
pub struct Size {
    pub cylinders: i64,
    pub places: i64,
    pub sizes: i64,
    pub bad: i64,
}

struct Maker {
    chance: Chance,
    size: Size,
    readings: usize,
}

impl Maker {
    fn reading(&mut self, value: i64) -> Reading {
        self.readings += 1;
        Reading {
            number: self.readings,
            value,
        }
    }

    /// In tenths of a thou.
    fn about(&mut self, low: i64, high: i64) -> Reading {
        let value = self.chance.within(low, high) * TENTH;
        self.reading(value)
    }

    fn decision(&mut self) -> Option<Decision> {
        if !self.chance.once_in(self.size.bad) {
            return Some(Decision::In);
        }
        let all = [None, Some(Decision::Open), Some(Decision::Out)];
        self.chance.one(&all)
    }

    fn seen(&mut self) -> Seen {
        let mut seen = Seen::default();
        if self.chance.once_in(3 * self.size.bad) {
            use Harm::{Broken, Cracked, HeatBlue, MayBeCracked, None, Spun, Welded};
            let all = [None, MayBeCracked, Welded, Cracked, HeatBlue, Broken, Spun];
            seen.harm = Some(self.chance.one(&all));
        }
        if self.chance.once_in(self.size.bad) {
            let all = [Finish::Good, Finish::Dull, Finish::Scored];
            seen.surface = Some(self.chance.one(&all));
        }
        seen.contradictory = self.chance.once_in(6 * self.size.bad);
        seen
    }

    fn score(&mut self, deepest: i64) -> Option<Reading> {
        let is_scored = self.chance.once_in(self.size.bad);
        is_scored.then(|| self.about(-1, deepest))
    }

    fn cylinder(&mut self, standard: i64, wear: i64) -> RawCylinder {
        let over = self.chance.within(-2, wear);
        let bore = self.chance.within(over / 2 - 1, over.max(0));
        let [is_read, unworn_is_read] = [8, 10].map(|many| !self.chance.once_in(many));
        RawCylinder {
            seen: self.seen(),
            worst: self.reading(standard + over * TENTH),
            unworn: unworn_is_read.then(|| self.reading(standard)),
            score: self.score(12),
            bore: is_read.then(|| self.reading(standard + bore * TENTH)),
            piston: is_read.then(|| {
                let under = self.chance.within(18, 26);
                self.reading(standard - under * TENTH)
            }),
            form: self.decision(),
            piston_form: self.decision(),
            piston_seen: self.seen(),
        }
    }

    fn steps(&mut self, step: i64) -> Vec<i64> {
        let many = self.chance.within(0, self.size.sizes);
        (0..many)
            .map(|_| self.chance.within(1, 4) * step * TENTH)
            .collect()
    }

    fn row(&mut self, standard: i64, share: bool) -> RawRow {
        let wear = self.chance.one(&[4, 12, 60]);
        let many = self.chance.within(0, self.size.places);
        let journals: Vec<RawJournal> = (0..many)
            .map(|_| {
                let under = self.chance.within(-1, wear);
                RawJournal {
                    seen: self.seen(),
                    smallest: self.reading(standard - under * TENTH),
                    score: self.score(15),
                    runout: self.chance.once_in(3).then(|| self.about(0, 12)),
                    form: self.decision(),
                }
            })
            .collect();
        let wall = 900 * TENTH;
        let made = standard + 2 * wall + 20 * TENTH;
        let places = (0..many)
            .map(|index| {
                let journal = if share { index / 2 } else { index };
                let journal = usize::try_from(journal).unwrap();
                let size = journals[journal].smallest.value;
                let more = self.chance.within(0, 2);
                let size = self.reading(size + more * TENTH);
                let off = self.chance.within(-3, 4);
                let off = self.reading(made + off * TENTH);
                RawPlace {
                    seen: self.seen(),
                    shells_seen: self.seen(),
                    journal,
                    form: self.decision(),
                    housing: (!self.chance.once_in(10)).then_some(off),
                    size,
                    clearance: (!self.chance.once_in(6)).then(|| self.about(10, 45)),
                }
            })
            .collect();
        let many = self.chance.within(0, self.size.sizes);
        let walls = (0..many).map(|_| wall + self.chance.within(-1, 4) * 5 * TENTH);
        let walls = walls.collect();
        let places_may_differ = self.chance.once_in(2);
        let neighbours = (!places_may_differ && self.chance.once_in(3)).then_some(5 * TENTH);
        let ground_before = self.chance.one(&[0, 0, 0, 100 * TENTH]);
        RawRow {
            journals,
            places,
            standard,
            as_made: standard - ground_before,
            undersizes: self.steps(100),
            greatest: self.chance.once_in(6).then_some(200 * TENTH),
            recentred: self.chance.once_in(3),
            walls,
            places_may_differ,
            allowed: [10, 40].map(|n| n * TENTH),
            wanted: [12, 30].map(|n| n * TENTH),
            target: 20 * TENTH,
            neighbours,
            can_be_machined: !self.chance.once_in(4),
            made,
        }
    }
}

/// A set by chance.
pub fn set(seed: u64, size: Size) -> Raw {
    let mut chance = Chance::new(seed);
    let u = |chance: &mut Chance| chance.one(&[0, TENTH / 4, TENTH / 2, TENTH]);
    let doubts = Doubts::new(u(&mut chance), u(&mut chance));
    let mut maker = Maker {
        chance,
        size,
        readings: 0,
    };
    let standard = 40_000 * TENTH;
    let wear = maker.chance.one(&[10, 30, 120]);
    let many = maker.chance.within(0, size.cylinders);
    let cylinders = (0..many).map(|_| maker.cylinder(standard, wear));
    let cylinders = cylinders.collect();
    let many = maker.chance.within(0, size.sizes);
    let stock = (0..many).map(|_| {
        let over = maker.chance.one(&[0, 0, 10, 100, 200, 300]) * TENTH;
        let piston = standard + over - 20 * TENTH;
        (over, (!maker.chance.once_in(6)).then_some(piston))
    });
    let stock = stock.collect();
    let rows = [
        maker.row(25_000 * TENTH, false),
        maker.row(21_000 * TENTH, true),
    ];
    let prices = Item::ALL.map(|item| (item, maker.chance.within(0, 300)));
    Raw {
        doubts,
        cylinders,
        standard,
        stock,
        honing: 30 * TENTH,
        light_hone: 10 * TENTH,
        greatest: maker.chance.once_in(6).then_some(250 * TENTH),
        allowed: [14, 45].map(|n| n * TENTH),
        wanted: [14, 32].map(|n| n * TENTH),
        target: 20 * TENTH,
        rows,
        block: maker.seen(),
        crank: maker.seen(),
        alignment: maker.decision(),
        straightness: maker.decision(),
        prices: prices.to_vec(),
    }
}
