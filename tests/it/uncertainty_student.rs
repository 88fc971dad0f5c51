//! The normal distribution and Student's t against tables and closed forms.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::uncertainty::{normal_cdf, normal_quantile, t_cdf, t_quantile};

use crate::golden::golden;
use crate::published::Published;

/// The whole of Table B.1, to its last digits. Two of its entries are not
/// what the distribution says; the table beside names them.
#[test]
fn the_table_of_t_factors_is_reproduced() {
    let (mut printed, mut deviating) = (0, 0);
    for row in golden!("student_t.csv") {
        let nu: f64 = row.get("nu").parse().unwrap();
        let percent: f64 = row.get("percent").parse().unwrap();
        let t = t_quantile(0.5 + percent / 200.0, nu);
        let rounded = |to: &str| {
            let decimals = to.split_once('.').unwrap().1.len();
            format!("{t:.decimals$}")
        };
        match row.get("is") {
            "" => {
                assert_eq!(
                    rounded(row.get("printed")),
                    row.get("printed"),
                    "{}",
                    row.place()
                );
                printed += 1;
            }
            is => {
                assert_ne!(
                    rounded(row.get("printed")),
                    row.get("printed"),
                    "{}",
                    row.place()
                );
                assert_eq!(rounded(is), is, "{}", row.place());
                deviating += 1;
            }
        }
    }
    assert_eq!((printed, deviating), (166, 2));
}

/// One of the two: 99.73 % is three standard deviations rounded. With the
/// fraction itself the printed entry is right.
#[test]
fn a_rounded_fraction_explains_one_entry() {
    let three = normal_cdf(3.0);
    assert_eq!(format!("{:.2}", t_quantile(three, 1.0)), "235.80");
}

#[test]
fn divisors_of_the_normal_distribution() {
    let mut published = Published::of(&["TN 4.3", "z "]);
    published.hold("TN 4.3 divisor 95", normal_quantile(0.975));
    published.hold("TN 4.3 divisor 99", normal_quantile(0.995));
    for per_mille in [800, 900, 950, 990, 999] {
        let z = normal_quantile(f64::from(per_mille) / 1_000.0);
        published.hold(&format!("z {per_mille}"), z);
    }
    published.all_held();
}

/// With 1, 2 and 4 degrees of freedom the distribution has a closed form.
#[test]
fn closed_forms_agree_to_the_last_digits_in_the_middle_and_in_the_tail() {
    // 1 − F, written so that the tail keeps its digits.
    let one = |t: f64| libm::atan2(1.0, t) / core::f64::consts::PI;
    let two = |t: f64| {
        let root = (2.0 + t * t).sqrt();
        1.0 / (root * (root + t))
    };
    let four = |t: f64| {
        let s = t / (4.0 + t * t).sqrt();
        let rest = 4.0 / ((4.0 + t * t) * (1.0 + s));
        // ½ − ¾ s + ¼ s³ = (1 − s)² (2 + s) / 4
        rest * rest * (2.0 + s) / 4.0
    };
    for step in 0..=400 {
        let t = f64::from(step) / 10.0;
        for (nu, tail) in [(1.0, one(t)), (2.0, two(t)), (4.0, four(t))] {
            let ours = t_cdf(-t, nu);
            assert!((ours / tail - 1.0).abs() < 1e-9, "{nu} {t}: {ours} {tail}");
            assert!((ours - tail).abs() < 1e-13, "{nu} {t}: {ours} {tail}");
            assert!((t_cdf(t, nu) - (1.0 - tail)).abs() < 1e-13, "{nu} {t}");
        }
    }
}

/// Between whole degrees of freedom the integral of the density has no
/// closed form; Simpson's rule has.
#[test]
fn the_integral_of_the_density_is_the_distribution() {
    for nu in [0.5, 1.7, 3.0, 16.74, 18.9987, 29.5, 59.9, 60.1, 250.5] {
        let gammas = libm::lgamma(nu / 2.0 + 0.5) - libm::lgamma(nu / 2.0);
        let scale = libm::exp(gammas) / (core::f64::consts::PI * nu).sqrt();
        let density = |t: f64| scale * libm::exp(-(nu + 1.0) / 2.0 * libm::log1p(t * t / nu));
        for end in [0.3, 1.0, 2.1, 4.0] {
            const STEPS: u32 = 2_000;
            let h = end / f64::from(STEPS);
            let inner = (1..STEPS).map(|k| {
                let weight = if k % 2 == 0 { 2.0 } else { 4.0 };
                weight * density(f64::from(k) * h)
            });
            let sum = density(0.0) + density(end) + inner.sum::<f64>();
            let integral = 0.5 + sum * h / 3.0;
            let ours = t_cdf(end, nu);
            assert!(
                (ours - integral).abs() < 1e-11,
                "{nu} {end}: {ours} {integral}"
            );
        }
    }
}

#[test]
fn quantile_and_distribution_are_inverse_and_grow() {
    let degrees = [
        0.5,
        1.0,
        1.5,
        2.0,
        5.0,
        16.74,
        59.0,
        61.0,
        1e3,
        1e7,
        f64::INFINITY,
    ];
    for nu in degrees {
        let mut before = f64::NEG_INFINITY;
        for step in 1..1_000 {
            let p = f64::from(step) / 1_000.0;
            let t = t_quantile(p, nu);
            assert!(before < t, "{nu} {p}: {before} {t}");
            assert!((t_cdf(t, nu) - p).abs() < 1e-13, "{nu} {p}: {t}");
            before = t;
        }
        for p in [1e-3, 1e-6, 1e-9, 1e-12, 1e-15] {
            let back = t_cdf(t_quantile(p, nu), nu);
            assert!((back / p - 1.0).abs() < 1e-6, "{nu} {p}: {back}");
        }
    }
}

/// More degrees of freedom, a smaller factor, and no step where the way of
/// computing changes.
#[test]
fn factors_fall_with_the_degrees_of_freedom() {
    let mut before = f64::INFINITY;
    for step in 5..=1_500 {
        let nu = f64::from(step) / 10.0;
        let t = t_quantile(0.95, nu);
        assert!(t < before, "{nu}: {before} {t}");
        before = t;
    }
    assert!(normal_quantile(0.95) < before);
    let (below, above) = (t_quantile(0.95, 60.0 - 1e-9), t_quantile(0.95, 60.0 + 1e-9));
    assert!(below - above < 1e-10, "{below} {above}");
}

#[test]
fn what_makes_no_sense_has_an_answer() {
    for odd in [
        f64::NAN,
        f64::INFINITY,
        f64::NEG_INFINITY,
        -1.0,
        0.0,
        1e-320,
        1e308,
    ] {
        for nu in [1.0, odd] {
            let p = t_cdf(odd, nu);
            assert!((0.0..=1.0).contains(&p), "{odd} {nu}: {p}");
            let t = t_quantile(odd, nu);
            assert!(t.is_finite(), "{odd} {nu}: {t}");
            assert!(t_quantile(0.3, odd).is_finite(), "{odd}");
        }
    }
    assert_eq!(normal_cdf(f64::INFINITY), 1.0);
    assert_eq!(normal_cdf(f64::NEG_INFINITY), 0.0);
    assert_eq!(normal_quantile(0.5), 0.0);
}
