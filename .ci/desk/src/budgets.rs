//! Uncertainty budgets by chance, for somebody else to compute again.
//!
//! Each line is a JSON object that says what was put in and what came out:
//!
//! - `sources`: `[u, dof]`, with null for infinite degrees of freedom;
//! - `readings`: `value` in quanta and `terms`, each `[source, draw, sensitivity]`;
//! - `a`, `b`: `weights` over the readings, `over` one denominator;
//! - `how`: the result is a + b, a − b, or a · b / `scale`;
//! - `value` (`[numerator, denominator]`), `u`, `nu` (null if infinite) and `k`, the factor for 95 %.
//!
//! The last line has the number of `budgets` and the `seconds` they took.

use std::fmt::Write;
use std::time::Duration;

use fenderbench::quantity::Exact;
use fenderbench::uncertainty::{Draw, Measured, Source, SourceId, quanta, t_quantile};

use crate::bench::now;

/// Enough for every way of combining to come up many times.
const COUNT: usize = 120;

/// Any number; the same budgets at every run.
const SEED: u64 = 0x00fe_0d0e_4be0_c417;

/// What a product of two sizes is divided by: 10 mm, so that it is a size.
const SCALE: i128 = 100_000_000;

/// The two-sided factor for 95 %.
const P: f64 = 0.975;

/// Chance that is the same everywhere: a Weyl sequence, mixed
/// (Steele, Lea and Flood 2014).
struct Chance(u64);

impl Chance {
    fn next(&mut self) -> u64 {
        self.0 = self.0.wrapping_add(0x9e37_79b9_7f4a_7c15);
        let mut mixed = self.0;
        mixed = (mixed ^ (mixed >> 30)).wrapping_mul(0xbf58_476d_1ce4_e5b9);
        mixed = (mixed ^ (mixed >> 27)).wrapping_mul(0x94d0_49bb_1331_11eb);
        mixed ^ (mixed >> 31)
    }

    /// A whole number from `low` to `high`.
    fn whole(&mut self, low: i64, high: i64) -> i64 {
        low + i64::try_from(self.next() % high.abs_diff(low).saturating_add(1)).unwrap_or(0)
    }

    /// How many, from `low` to `high`.
    fn count(&mut self, low: i64, high: i64) -> usize {
        usize::try_from(self.whole(low, high)).unwrap_or(0)
    }

    /// A number from `low` to below `high`.
    fn real(&mut self, low: f64, high: f64) -> f64 {
        let unit = (self.next() >> 11) as f64 / (1_u64 << 53) as f64;
        low + (high - low) * unit
    }

    fn heads(&mut self) -> bool {
        self.next().is_multiple_of(2)
    }
}

/// How two weighted sums become one result.
#[derive(Clone, Copy)]
enum How {
    Sum,
    Difference,
    Product,
}

/// Weights over the readings and their denominator.
struct Weighted {
    weights: Vec<i64>,
    over: i64,
}

struct Case {
    sources: Vec<Source>,
    readings: Vec<Measured>,
    a: Weighted,
    b: Weighted,
    how: How,
}

/// The JSON lines.
pub fn text() -> String {
    let mut chance = Chance(SEED);
    let mut text = String::new();
    let mut spent = Duration::ZERO;
    for _ in 0..COUNT {
        let case = case(&mut chance);
        let start = now();
        let result = case.result();
        let combined = result.combined(&case.sources);
        let k = t_quantile(P, combined.nu());
        spent += start.elapsed();
        let value = result.value();
        // Writing to a string cannot fail.
        let _ = writeln!(
            text,
            "{{{},\"value\":[{},{}],\"u\":{:e},\"nu\":{},\"k\":{k:e}}}",
            case.json(),
            value.numerator(),
            value.denominator(),
            combined.u(),
            finite(combined.nu()),
        );
    }
    let seconds = spent.as_secs_f64();
    let _ = writeln!(text, "{{\"budgets\":{COUNT},\"seconds\":{seconds:e}}}");
    text
}

fn case(chance: &mut Chance) -> Case {
    let sources: Vec<_> = (0..chance.count(2, 6)).map(|_| source(chance)).collect();
    let readings: Vec<_> = (1..=chance.count(2, 7))
        .map(|number| reading(chance, number, sources.len()))
        .collect();
    let mut weighted = || Weighted {
        weights: readings.iter().map(|_| weight(chance)).collect(),
        over: chance.whole(1, 9),
    };
    let (a, b) = (weighted(), weighted());
    let how = match chance.whole(0, 2) {
        0 => How::Sum,
        1 => How::Difference,
        _ => How::Product,
    };
    Case {
        sources,
        readings,
        a,
        b,
        how,
    }
}

fn source(chance: &mut Chance) -> Source {
    let source = Source::normal(chance.real(1.0, 1e5));
    if chance.heads() {
        return source;
    }
    source.with_dof(chance.real(1.0, 30.0))
}

/// Holds every source but some, shared with the others or as a draw of its
/// own. A sensitivity is a product, as that of an expansion is.
fn reading(chance: &mut Chance, number: usize, sources: usize) -> Measured {
    let mut terms = Vec::new();
    for source in 0..sources {
        let shared = Draw {
            number: 0,
            source: SourceId(source),
        };
        let draw = match chance.whole(0, 3) {
            0 => continue,
            1 => shared,
            _ => Draw { number, ..shared },
        };
        let sign = if chance.heads() { 1.0 } else { -1.0 };
        terms.push((draw, sign * chance.real(0.1, 3.0) * chance.real(0.1, 3.0)));
    }
    let quanta = chance.whole(100_000_000, 1_500_000_000);
    Measured::new(Exact::new(quanta.into(), 1), &terms)
}

/// Not zero, or there could be nothing left.
fn weight(chance: &mut Chance) -> i64 {
    let weight = chance.whole(1, 5);
    if chance.heads() { weight } else { -weight }
}

impl Case {
    fn sum(&self, of: &Weighted) -> Measured {
        let parts: Vec<_> = of.weights.iter().copied().zip(&self.readings).collect();
        Measured::sum(&parts, of.over)
    }

    fn result(&self) -> Measured {
        let (a, b) = (self.sum(&self.a), self.sum(&self.b));
        match self.how {
            How::Sum => &a + &b,
            How::Difference => &a - &b,
            How::Product => {
                let (x, y) = (a.value(), b.value());
                let over = x.denominator() * y.denominator() * SCALE;
                let value = Exact::new(x.numerator() * y.numerator(), over);
                let per = |size| quanta(size) / SCALE as f64;
                Measured::linearised(value, &[(per(y), &a), (per(x), &b)])
            }
        }
    }

    fn json(&self) -> String {
        let sources = self.sources.iter();
        let sources = list(sources.map(|s| format!("[{:e},{}]", s.u(), finite(s.dof()))));
        let readings = list(self.readings.iter().map(|reading| {
            let terms = reading.terms().iter().map(|(draw, c)| {
                let (source, number) = (draw.source.0, draw.number);
                format!("[{source},{number},{c:e}]")
            });
            let value = reading.value().numerator();
            format!("{{\"value\":{value},\"terms\":{}}}", list(terms))
        }));
        let weighted = |of: &Weighted| {
            let weights = list(of.weights.iter().map(i64::to_string));
            format!("{{\"weights\":{weights},\"over\":{}}}", of.over)
        };
        let how = match self.how {
            How::Sum => "sum",
            How::Difference => "difference",
            How::Product => "product",
        };
        let (a, b) = (weighted(&self.a), weighted(&self.b));
        format!(
            "\"sources\":{sources},\"readings\":{readings},\"a\":{a},\"b\":{b},\
             \"how\":\"{how}\",\"scale\":{SCALE}"
        )
    }
}

fn list(items: impl Iterator<Item = String>) -> String {
    format!("[{}]", items.collect::<Vec<_>>().join(","))
}

/// JSON has no infinity.
fn finite(number: f64) -> String {
    if number.is_finite() {
        format!("{number:e}")
    } else {
        "null".to_owned()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_budgets_are_the_same_at_every_run_but_for_the_time() {
        let (first, second) = (text(), text());
        let budgets = |text: &str| {
            let mut lines: Vec<_> = text.lines().map(str::to_owned).collect();
            let last = lines.pop().unwrap();
            assert!(
                last.starts_with(&format!("{{\"budgets\":{COUNT},")),
                "{last}"
            );
            lines
        };
        assert_eq!(budgets(&first), budgets(&second));
        assert_eq!(budgets(&first).len(), COUNT);
    }

    #[test]
    fn every_way_of_combining_comes_up_and_every_number_is_one() {
        let text = text();
        for how in ["sum", "difference", "product"] {
            let how = format!("\"how\":\"{how}\"");
            assert!(10 < text.matches(&how).count(), "{how}");
        }
        // Known and estimated uncertainties.
        assert!(
            text.contains(",null]") && text.contains("\"nu\":null"),
            "{text}"
        );
        assert!(!text.contains("NaN") && !text.contains("inf"), "{text}");
    }
}
