//! Published figures by name, and the series of readings they were made from.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use std::collections::BTreeSet;

use fenderbench::quantity::{Exact, Size};
use fenderbench::uncertainty::{Draw, Measured, Sample, Source, SourceId, quanta};

use crate::golden::{Row, golden};

/// Readings as whole numbers of their last decimal.
pub struct Series {
    pub values: Vec<i64>,
    /// How many of the last decimal are in one.
    pub per_unit: i64,
}

/// The series of this name.
pub fn series(name: &str) -> Series {
    let rows = golden!("uncertainty_series.csv");
    let row = rows.iter().find(|row| row.get("series") == name);
    let row = row.unwrap_or_else(|| panic!("no series {name}"));
    let texts: Vec<_> = row.get("values").split(' ').collect();
    let decimals = |text: &str| text.split_once('.').map_or(0, |(_, d)| d.len());
    let most = texts.iter().map(|text| decimals(text)).max().unwrap();
    let value = |text: &&str| {
        let digits = text.replace('.', "") + &"0".repeat(most - decimals(text));
        digits.parse().unwrap()
    };
    Series {
        values: texts.iter().map(value).collect(),
        per_unit: 10_i64.pow(most.try_into().unwrap()),
    }
}

/// The names of the series that begin like this.
pub fn series_of(start: &str) -> Vec<String> {
    let rows = golden!("uncertainty_series.csv");
    let names = rows.iter().map(|row| row.get("series").to_owned());
    names.filter(|name| name.starts_with(start)).collect()
}

impl Series {
    pub fn sample(&self) -> Sample {
        self.values.iter().copied().map(Size::from_quanta).collect()
    }

    /// A figure in the unit of the last decimal in the unit of the series.
    pub fn units(&self, figure: f64) -> f64 {
        figure / self.per_unit as f64
    }

    pub fn mean(&self) -> f64 {
        self.units(quanta(self.sample().mean().unwrap()))
    }

    pub fn s(&self) -> f64 {
        self.units(self.sample().spread().unwrap().s)
    }
}

/// Published figures, each to be held exactly once.
pub struct Published {
    rows: Vec<Row>,
    held: BTreeSet<String>,
}

impl Published {
    /// Those whose names begin with one of these.
    pub fn of(starts: &[&str]) -> Self {
        let mut rows = golden!("uncertainty_figures.csv");
        let is_one = |id: &str| starts.iter().any(|start| id.starts_with(start));
        rows.retain(|row| is_one(row.get("id")));
        Self {
            rows,
            held: BTreeSet::new(),
        }
    }

    fn row(&self, id: &str) -> &Row {
        let row = self.rows.iter().find(|row| row.get("id") == id);
        row.unwrap_or_else(|| panic!("no figure {id}"))
    }

    /// The figure as published.
    pub fn figure(&self, id: &str) -> f64 {
        self.row(id).get("published").parse().unwrap()
    }

    /// Fails unless `is` rounds to the published figure, or lies as near to
    /// it as the table says.
    #[track_caller]
    pub fn hold(&mut self, id: &str, is: f64) {
        let row = self.row(id);
        let (text, figure) = (row.get("published"), self.figure(id));
        let within = match row.get("within") {
            "" => half_a_last_place(text),
            within => match within.strip_suffix(" digits") {
                Some(digits) => figure.abs() * libm::pow(10.0, -digits.parse::<f64>().unwrap()),
                None => within.parse().unwrap(),
            },
        };
        let off = (is - figure).abs();
        assert!(off <= within, "{id}: {is} is not {text}, {}", row.place());
        assert!(self.held.insert(id.to_owned()), "{id} is held twice");
    }

    /// Fails unless every figure was held.
    pub fn all_held(self) {
        let ids = self.rows.iter().map(|row| row.get("id").to_owned());
        let open: Vec<_> = ids.filter(|id| !self.held.contains(id)).collect();
        assert!(!self.rows.is_empty() && open.is_empty(), "open: {open:?}");
    }
}

/// Half of the last place of a number as printed.
fn half_a_last_place(text: &str) -> f64 {
    let (digits, power) = text.split_once('e').unwrap_or((text, "0"));
    let decimals = digits.split_once('.').map_or(0, |(_, d)| d.len());
    let last: f64 = format!("1e{}", power.parse::<i32>().unwrap() - decimals as i32)
        .parse()
        .unwrap();
    // A little more, for what a float cannot say.
    last * 0.500_000_1
}

#[test]
fn the_last_place_is_found() {
    for (text, half) in [("32", 0.5), ("0.58e-6", 0.5e-8), ("100.145", 0.000_5)] {
        let found = half_a_last_place(text);
        assert!((found / half - 1.0).abs() < 1e-6, "{text}: {found}");
    }
}

/// A draw of a source that everybody shares.
pub const fn shared(source: usize) -> Draw {
    own(source, 0)
}

/// A draw of its own for each number.
pub const fn own(source: usize, number: usize) -> Draw {
    let source = SourceId(source);
    Draw { number, source }
}

/// A value of nothing that hangs on shared draws with these sensitivities.
pub fn hanging_on(sensitivities: &[f64]) -> Measured {
    let terms: Vec<_> = (0..)
        .map(shared)
        .zip(sensitivities.iter().copied())
        .collect();
    Measured::new(Exact::ZERO, &terms)
}

pub fn square(x: f64) -> f64 {
    x * x
}

/// The covariance of two values, out of the uncertainties of both and of
/// their sum.
pub fn covariance(a: &Measured, b: &Measured, sources: &[Source]) -> f64 {
    let variance = |of: &Measured| square(of.combined(sources).u());
    (variance(&(a + b)) - variance(a) - variance(b)) / 2.0
}

/// The correlation of two values.
pub fn correlation(a: &Measured, b: &Measured, sources: &[Source]) -> f64 {
    let u = |of: &Measured| of.combined(sources).u();
    covariance(a, b, sources) / (u(a) * u(b))
}
