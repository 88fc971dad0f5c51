//! Probabilities and guard bands against the examples of JCGM 106. What the
//! examples do besides, whole productions of parts, is integrated here with
//! the distributions of the room.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::quantity::Exact;
use fenderbench::uncertainty::{Combined, Probability, normal_cdf, normal_quantile, quanta};

use crate::published::Published;

fn known(u: f64) -> Combined {
    Combined::new(u, f64::INFINITY)
}

fn at(value: i128) -> Exact {
    Exact::new(value, 1)
}

#[test]
fn probabilities_of_conformity_7() {
    let mut published = Published::of(&["7.2 ", "7.3 ", "7.4 "]);
    let zener = known(5.0).within(at(-547), None, Some(at(-540)));
    published.hold("7.2 zener", zener.value());
    let burst = known(86.0).within(at(5_097), Some(at(4_900)), None);
    published.hold("7.3 burst", burst.value());
    let oil = known(18.0).within(at(136), Some(at(125)), Some(at(163)));
    published.hold("7.4 oil", oil.value());
    published.all_held();
}

#[test]
fn guard_bands_8_3() {
    let mut published = Published::of(&["8.3."]);
    // At the acceptance limit: two u inside the limit.
    let (u, limit) = (50.0, 1_000);
    let p = known(u).within(at(limit - 100), None, Some(at(limit)));
    published.hold("8.3.2 p", p.value());
    // And the way back: the band that this probability asks for.
    let band = quanta(known(u).guard_band(p));
    assert!((100.0..=101.0).contains(&band), "{band}");
    // u grows with the speed v, so v − z 0.02 v = 100 km/h.
    let z = normal_quantile(0.999);
    published.hold("8.3.3 limit", 100.0 / (1.0 - 0.02 * z));
    published.all_held();
}

/// The integral of `f` from a to b by Simpson's rule.
fn integral(a: f64, b: f64, f: impl Fn(f64) -> f64) -> f64 {
    const STEPS: u32 = 4_000;
    let h = (b - a) / f64::from(STEPS);
    let inner = (1..STEPS).map(|k| {
        let weight = if k % 2 == 0 { 2.0 } else { 4.0 };
        weight * f(a + f64::from(k) * h)
    });
    (f(a) + f(b) + inner.sum::<f64>()) * h / 3.0
}

#[test]
fn ball_bearings_9_5_4() {
    let mut published = Published::of(&["9.5.4 "]);
    // Run-out in µm: gamma of shape and rate 4; limit 2; measured with u 0.25.
    let density = |y: f64| 256.0 / 6.0 * y * y * y * libm::exp(-4.0 * y);
    let (limit, u) = (2.0, 0.25);
    let bad = integral(limit, 12.0, density);
    let accepted_below = |accept: f64| {
        let accepted = |y: f64| normal_cdf((accept - y) / u);
        integral(limit, 12.0, |y| density(y) * accepted(y))
    };
    published.hold("9.5.4 bad", bad);
    published.hold("9.5.4 consumer", accepted_below(limit));
    // Halving the interval of acceptance limits until it is one.
    let (mut low, mut high) = (1.0, limit);
    for _ in 0..50 {
        let middle = (low + high) / 2.0;
        if accepted_below(middle) < 0.001 {
            low = middle;
        } else {
            high = middle;
        }
    }
    published.hold("9.5.4 guarded limit", low);
    published.all_held();
}

#[test]
fn precision_resistors_9_5() {
    let mut published = Published::of(&["9.5 resistor"]);
    // About 1500 Ω: spread 0.12, limits ± 0.2, accepted within ± 0.18, u 0.04.
    let (spread, limit, accept, u) = (0.12, 0.2, 0.18, 0.04);
    let density =
        |y: f64| libm::exp(-y * y / (2.0 * spread * spread)) / (spread * 2.506_628_274_631);
    let accepted = |y: f64| normal_cdf((accept - y) / u) - normal_cdf((-accept - y) / u);
    let one_side = integral(limit, 1.2, |y| density(y) * accepted(y));
    published.hold("9.5 resistor consumer", 2.0 * one_side);
    let rejected = |y: f64| density(y) * (1.0 - accepted(y));
    published.hold("9.5 resistor producer", integral(-limit, limit, rejected));
    published.all_held();
}

#[test]
fn without_uncertainty_the_comparison_is_the_exact_one() {
    let sure = known(0.0);
    let third = Exact::new(1, 3);
    assert_eq!(sure.within(third, None, Some(third)), Probability::new(1.0));
    assert_eq!(sure.within(third, Some(third), None), Probability::new(1.0));
    let less = Exact::new(333_333, 1_000_000);
    assert_eq!(sure.within(third, None, Some(less)), Probability::new(0.0));
    assert_eq!(sure.guard_band(Probability::per_mille(950)), Exact::ZERO);
}

/// Proved means at least so probable, whichever of the two is computed.
#[test]
fn guard_band_and_probability_decide_alike() {
    let p95 = Probability::per_mille(950);
    for nu in [1.0, 4.0, 7.3, 18.9987, 1e9, f64::INFINITY] {
        let sureness = Combined::new(12_345.6, nu);
        let band = sureness.guard_band(p95);
        let limit = at(5_000_000);
        let inside = sureness.within(limit - band, None, Some(limit));
        assert!(p95 <= inside, "{nu}: {inside:?}");
        let less = sureness.within(limit - band + at(1), None, Some(limit));
        assert!(less < p95, "{nu}: {less:?}");
        // The same beyond a limit, and below one.
        let outside = sureness.within(limit + band, None, Some(limit));
        assert!(
            outside.value() <= 1.0 - p95.value() + 1e-12,
            "{nu}: {outside:?}"
        );
        assert_eq!(sureness.within(limit + band, Some(limit), None), inside);
    }
}

#[test]
fn an_open_band_is_certain_and_no_knowledge_is_half() {
    let sureness = Combined::new(1_000.0, 4.0);
    assert_eq!(sureness.within(at(7), None, None), Probability::new(1.0));
    let unknown = Combined::new(f64::NAN, f64::NAN);
    let p = unknown.within(at(0), None, Some(at(1_000_000)));
    assert!((p.value() - 0.5).abs() < 1e-3, "{p:?}");
    assert_eq!(Probability::new(f64::NAN), Probability::HALF);
}
