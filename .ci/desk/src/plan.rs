//! An invented set as large as any and as worn as it takes: something of
//! everything is open, so that the next reading is searched for in earnest.

use fenderbench::quantity::Exact;
use fenderbench::remedy::{
    Bearings, Cylinder, Item, Job, Journal, LIGHT_HONE, Mixing, Part, Place, Plan, Price, Prover,
    Shell, Stock, WornBore, WornJournal, plan,
};
use fenderbench::uncertainty::{Draw, Factors, Measured, Source, SourceId};
use fenderbench::verdict::{Band, Decision, DecisionRule};

/// A ten-thousandth of an inch, in quanta.
const TENTH: i64 = 25_400;

/// As many sources as a usual reading has.
const SOURCES: u16 = 8;

/// A set and the doubts of its readings.
pub struct Set {
    job: Job,
    sources: Vec<Source>,
}

impl Set {
    pub fn plan(&self) -> Plan {
        let factors = Factors::default();
        let prover = Prover {
            sources: &self.sources,
            factors: &factors,
            rule: DecisionRule::ONE_SIDED_95,
        };
        plan(&self.job, &prover)
    }
}

fn tenths(number: usize) -> Exact {
    let number = i64::try_from(number).unwrap_or(i64::MAX / TENTH);
    Exact::whole(number * TENTH)
}

fn band(low: usize, high: usize) -> Band {
    Band::new(Some(tenths(low)), Some(tenths(high)))
}

/// A reading with an error of its own and seven that all share.
fn reading(number: usize, value: usize) -> Measured {
    let draw = |source: u16| Draw {
        source: SourceId(usize::from(source)),
        number: if source == 0 { number } else { 0 },
    };
    let terms: Vec<_> = (0..SOURCES).map(|source| (draw(source), 1.0)).collect();
    Measured::new(tenths(value), &terms)
}

/// Every third is too close to call.
fn decision(index: usize) -> Option<Decision> {
    Some(if index.is_multiple_of(3) {
        Decision::Open
    } else {
        Decision::In
    })
}

fn row(many: usize, from: usize) -> Bearings {
    let journal = |index: usize| Journal {
        worn: WornJournal {
            smallest: reading(from + index, 24_990 - index % 5),
            score: None,
            runout: Some(reading(from + 100 + index, 5)),
        },
        form: decision(index),
    };
    let place = |index: usize| {
        let journal = reading(from + index, 24_990 - index % 5);
        let housing = reading(from + 200 + index, 26_810 + index % 3);
        let made = Measured::new(tenths(26_812), &[]);
        Place {
            journal: index,
            form: decision(index + 1),
            gap: Some(&housing - &journal),
            gap_made: Some(&made - &journal),
            clearance: Some(reading(from + 300 + index, 30 + index % 6)),
            thrust: index == 2,
        }
    };
    let shell = |size: usize| Shell {
        wall: tenths(895 + 5 * size),
        used: false,
    };
    Bearings {
        journals: (0..many).map(journal).collect(),
        places: (0..many).map(place).collect(),
        standard: tenths(25_000),
        as_made: tenths(25_000),
        undersizes: [100, 200, 300, 400].map(tenths).to_vec(),
        shells: (0..6).map(shell).collect(),
        mixing: Mixing::Halves,
        allowed: band(10, 35),
        wanted: band(10, 30),
        target: tenths(20),
        neighbours: Some(tenths(5)),
        ..Bearings::default()
    }
}

/// A set of so many cylinders and one main more, with five oversizes, four
/// undersizes and six sizes of shell.
pub fn set(cylinders: usize) -> Set {
    let cylinder = |index: usize| {
        let bore = reading(10_000 + index, 40_004 + index % 4);
        let piston = reading(11_000 + index, 39_980);
        Cylinder {
            worn: WornBore {
                largest: reading(12_000 + index, 40_040 + index),
                reference: Some(reading(13_000 + index, 40_000)),
                score: (index == 5).then(|| reading(14_000, 2)),
                offset: None,
            },
            form: decision(index),
            clearance: Some(&bore - &piston),
            bore: Some(bore),
        }
    };
    let over = [0, 100, 200, 300, 400, 600];
    let stock = over.map(|over| Stock {
        over: tenths(over),
        piston: Some(tenths(39_980 + over)),
    });
    // Any prices will do, as long as they are not all alike.
    let prices = (1..).zip(Item::ALL).filter_map(|(number, item)| {
        let price = Price::new(number * 1_700 % 9_100).ok()?;
        Some((item, price))
    });
    let job = Job {
        cylinders: (0..cylinders).map(cylinder).collect(),
        pistons: (0..cylinders).map(decision).collect(),
        looks: core::iter::empty::<(Part, _)>().collect(),
        alignment: Some(Decision::In),
        straightness: Some(Decision::Open),
        measured_later: false,
        standard: tenths(40_000),
        stock: stock.to_vec(),
        honing: tenths(30),
        light_hone: LIGHT_HONE,
        greatest: None,
        allowed: band(14, 45),
        wanted: band(14, 32),
        target: tenths(20),
        mains: row(cylinders + 1, 0),
        rods: row(cylinders, 1_000),
        pins: Vec::new(),
        prices: prices.collect(),
    };
    let sources = (1..=SOURCES).map(|n| Source::normal(f64::from(n) * 800.0));
    Set {
        job,
        sources: sources.collect(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_set_has_a_hope_and_a_next_reading() {
        let plan = set(16).plan();
        assert!(plan.hope.is_some() && plan.next.is_some() && plan.runner_up.is_some());
        assert!(plan.way.top.is_some() && plan.way.mains.is_some() && plan.way.rods.is_some());
    }
}
