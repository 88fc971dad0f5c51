//! Measured values by chance and by hand for the room that says what to do,
//! and what a guard band is, written out once more.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use std::collections::BTreeMap;

use fenderbench::quantity::Exact;
use fenderbench::remedy::Prover;
use fenderbench::uncertainty::{
    Draw, Factors, Measured, Source, SourceId, normal_quantile, quanta,
};
use fenderbench::verdict::{Decision, DecisionRule};
use proptest::prelude::*;

/// A ten-thousandth of an inch, in quanta.
pub const TENTH: i64 = 25_400;

pub fn tenths(number: i64) -> Exact {
    Exact::new((number * TENTH).into(), 1)
}

/// What all readings share, and what each has of its own.
const SHARED: SourceId = SourceId(0);
const OWN: SourceId = SourceId(1);

/// How sure the readings of a set are.
#[derive(Debug)]
pub struct Doubts {
    sources: [Source; 2],
    u: [f64; 2],
    factors: Factors,
}

impl Doubts {
    /// Standard uncertainties in quanta: of the setting, and of a reading.
    pub fn new(shared: i64, own: i64) -> Self {
        let u = [shared, own].map(|u| u as f64);
        Self {
            sources: u.map(Source::normal),
            u,
            factors: Factors::default(),
        }
    }

    pub fn prover(&self) -> Prover<'_> {
        Prover {
            sources: &self.sources,
            factors: &self.factors,
            rule: DecisionRule::ONE_SIDED_95,
        }
    }

    /// The guard band of a sum of readings, each times a number, at this
    /// probability: whole quanta, rounded up.
    pub fn guard(&self, sum: &Sum, probability: f64) -> i64 {
        let shared: i64 = sum.terms.iter().map(|(_, (times, _))| times).sum();
        let own: i64 = sum.terms.iter().map(|(_, (times, _))| times * times).sum();
        let [setting, reading] = self.u;
        let variance =
            (shared * shared) as f64 * setting * setting + own as f64 * reading * reading;
        (normal_quantile(probability) * variance.sqrt()).ceil() as i64
    }

    /// The guard band to convict by one of several.
    pub fn guard_out(&self, sum: &Sum, several: usize) -> i64 {
        self.guard(sum, 1.0 - share(several))
    }

    /// In, open or out of a band whose ends are both inside it.
    pub fn decide(&self, sum: &Sum, low: i64, high: i64, several: usize) -> Decision {
        let value = sum.value();
        let pass = self.guard(sum, 0.95);
        let out = self.guard_out(sum, several);
        if low + pass <= value && value <= high - pass {
            Decision::In
        } else if value < low - out || high + out < value {
            Decision::Out
        } else {
            Decision::Open
        }
    }
}

/// The error permitted to each of several, in whole millionths.
fn share(several: usize) -> f64 {
    (50_000 / several.max(1)) as f64 / 1e6
}

/// Readings by their number, each times a number.
#[derive(Clone, Debug, Default)]
pub struct Sum {
    terms: BTreeMap<usize, (i64, i64)>,
    fixed: i64,
}

impl Sum {
    pub fn and(mut self, times: i64, reading: Reading) -> Self {
        let term = self.terms.entry(reading.number).or_insert((0, 0));
        *term = (term.0 + times, reading.value);
        self
    }

    pub fn minus(mut self, other: Self) -> Self {
        for (number, (times, value)) in other.terms {
            self = self.and(-times, Reading { number, value });
        }
        self.less(other.fixed)
    }

    pub fn less(mut self, quanta: i64) -> Self {
        self.fixed -= quanta;
        self
    }

    pub fn value(&self) -> i64 {
        let terms = self.terms.values().map(|(times, value)| times * value);
        terms.sum::<i64>() + self.fixed
    }
}

/// A reading in quanta, and which it is.
#[derive(Clone, Copy, Debug)]
pub struct Reading {
    pub number: usize,
    pub value: i64,
}

impl Reading {
    pub fn measured(self) -> Measured {
        let shared = Draw {
            source: SHARED,
            number: 0,
        };
        let own = Draw {
            source: OWN,
            number: self.number,
        };
        let value = Exact::new(self.value.into(), 1);
        Measured::new(value, &[(shared, 1.0), (own, 1.0)])
    }
}

/// A length without any doubt.
pub fn known(value: Exact) -> Measured {
    Measured::new(value, &[])
}

/// Doubts of up to two tenths, none now and then.
pub fn doubts() -> impl Strategy<Value = Doubts> {
    let u = || prop_oneof![1 => Just(0), 3 => 0..2 * TENTH];
    (u(), u()).prop_map(|(shared, own)| Doubts::new(shared, own))
}

/// A length in tenths of a thou, often a whole number of them.
pub fn about(low: i64, high: i64) -> impl Strategy<Value = i64> {
    prop_oneof![
        3 => (low..=high).prop_map(|n| n * TENTH),
        1 => low * TENTH..=high * TENTH,
    ]
}

/// Steps in thous, in any order.
pub fn steps(most: usize) -> impl Strategy<Value = Vec<i64>> {
    prop::collection::vec(-1_i64..60, 0..=most)
        .prop_map(|steps| steps.into_iter().map(|thou| thou * 10 * TENTH).collect())
}

#[test]
fn the_guard_written_here_is_the_guard_of_the_room() {
    let doubts = Doubts::new(7_000, 11_000);
    let readings = [(0, 500), (1, 300)].map(|(number, value)| Reading { number, value });
    let [a, b] = readings;
    let sum = Sum::default().and(2, a).and(-1, b);
    let measured = &a.measured().scaled(2, 1) - &b.measured();
    assert_eq!(measured.value(), Exact::new(sum.value().into(), 1));
    let guard = doubts.prover().guard(&measured);
    assert_eq!(guard, Exact::new(doubts.guard(&sum, 0.95).into(), 1));
    // 1.645 sqrt(7000² + 5 × 11000²), by hand.
    assert!((42_064.5 - quanta(guard)).abs() <= 1.0, "{}", quanta(guard));
}
