//! The worked examples of the GUM and of NIST TN 1297.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::quantity::Exact;
use fenderbench::uncertainty::{
    Budget, Combined, Measured, Probability, Source, Spread, dof_from_reliability, pooled, quanta,
    t_quantile,
};

use crate::published::{Published, correlation, hanging_on, series, shared, square};

const P95: u16 = 950;
const P99: u16 = 990;

/// Quanta in a nanometre.
const NM: f64 = 10.0;

/// The length of the end gauge of H.1, in nanometres.
const LENGTH: f64 = 50_000_623.0;

/// The sources of H.1 as they are given there, and how the length hangs on
/// each: nm for lengths, °C and per °C for the rest.
fn h1() -> ([Source; 8], [f64; 8]) {
    let repeats = Spread { s: 13.0, dof: 24.0 };
    let random = Source::from_expanded(10.0, t_quantile(0.975, 5.0)).with_dof(5.0);
    let systematic = dof_from_reliability(25.0);
    let (alpha, theta) = (11.5e-6, -0.1);
    let sources = [
        Source::from_expanded(75.0, 3.0).with_dof(18.0),
        Source::estimated(repeats),
        random,
        Source::from_expanded(20.0, 3.0).with_dof(systematic),
        // Difference of the expansions, and of the temperatures.
        Source::rectangular(1e-6).with_dof(dof_from_reliability(10.0)),
        Source::rectangular(0.05).with_dof(dof_from_reliability(50.0)),
        // Expansion and mean temperature: no part in the first order.
        Source::rectangular(2e-6),
        Source::normal(0.2),
    ];
    // The mean of five.
    let fifth = 0.2_f64.sqrt();
    let c = [
        1.0,
        fifth,
        1.0,
        1.0,
        -LENGTH * theta,
        -LENGTH * alpha,
        0.0,
        0.0,
    ];
    (sources, c)
}

#[test]
fn the_end_gauge_h1() {
    let mut published = Published::of(&["H.1 "]);
    let (sources, c) = h1();
    let gauge = hanging_on(&c);
    let rows = Budget::of(&gauge, &sources).rows;
    let contribution = |source: usize| {
        let row = rows.iter().find(|row| row.source.0 == source).unwrap();
        row.contribution
    };
    published.hold("H.1 u(standard)", contribution(0));
    published.hold("H.1 u(repeats)", contribution(1));
    published.hold("H.1 u(random)", contribution(2));
    published.hold("H.1 u(systematic)", contribution(3));
    published.hold("H.1 u(expansions)", sources[4].u());
    published.hold("H.1 u(temperatures)", sources[5].u());
    published.hold("H.1 u(expansion)", sources[6].u());
    published.hold("H.1 by expansions", contribution(4));
    published.hold("H.1 by temperatures", contribution(5));
    // The largest stands first, and the sources without a part nowhere.
    let order: Vec<_> = rows.iter().map(|row| row.source.0).collect();
    assert_eq!(order, [0, 5, 3, 1, 2, 4]);

    let swing = Source::arcsine(0.5);
    published.hold("H.1 u(swing)", swing.u());
    let temperature = hanging_on(&[1.0, 1.0]).combined(&[sources[7], swing]);
    published.hold("H.1 u(temperature)", temperature.u());

    let difference = hanging_on(&c[1..4]).combined(&sources[1..4]);
    published.hold("H.1 u(difference)", difference.u());
    published.hold("H.1 nu(difference)", difference.nu());

    let combined = gauge.combined(&sources);
    published.hold("H.1 variance", square(combined.u()));
    published.hold("H.1 u", combined.u());
    published.hold("H.1 nu", combined.nu());
    published.hold("H.1 nu of table", combined.nu_of_table());
    let p99 = Probability::per_mille(P99);
    published.hold("H.1 t99", combined.factor(p99));
    published.hold("H.1 U99 unrounded", combined.expanded(p99));
    let printed = Combined::new(published.figure("H.1 u"), combined.nu());
    published.hold("H.1 U99", printed.expanded(p99));

    // The estimate, exactly: the standard's length and the mean difference.
    let nm = |nm: i128| Measured::new(Exact::new(nm * 10, 1), &[]);
    let estimate = &nm(50_000_623) + &nm(215);
    published.hold("H.1 estimate", quanta(estimate.value()) / NM);

    // Second order: the doubt of one factor acting through that of the other.
    let (expansions, temperatures) = (sources[4].u(), sources[5].u());
    let second = [
        LENGTH * expansions * temperature.u(),
        LENGTH * sources[6].u() * temperatures,
    ];
    published.hold("H.1 second order a", second[0]);
    published.hold("H.1 second order b", second[1]);
    let with_second = hanging_on(&[1.0, second[0], second[1]]);
    let sources = [
        Source::normal(combined.u()),
        Source::normal(1.0),
        Source::normal(1.0),
    ];
    published.hold("H.1 u second order", with_second.combined(&sources).u());
    published.all_held();
}

#[test]
fn the_end_gauge_in_tn_1297() {
    let mut published = Published::of(&["D.1 "]);
    let parts = [25.0, 5.8, 3.9, 6.7, 1.7, 5.8, 10.2, 2.9, 16.6];
    let u = hanging_on(&[1.0; 9])
        .combined(&parts.map(Source::normal))
        .u();
    published.hold("D.1 u", u);
    published.hold("D.1 u to two places", u);
    published.all_held();
}

#[test]
fn repeats_and_bounds_4_3_and_4_4() {
    let mut published = Published::of(&["4.4.", "4.3.", "5.1.5"]);
    let temperatures = series("GUM 4.4.3 t");
    published.hold("4.4.3 mean", temperatures.mean());
    published.hold("4.4.3 s", temperatures.s());
    let sample = temperatures.sample();
    published.hold(
        "4.4.3 s of mean",
        temperatures.units(sample.s_of_mean().unwrap()),
    );
    assert_eq!(sample.spread().unwrap().dof, 19.0);

    published.hold("4.4.5 u", Source::rectangular(4.0).u());
    published.hold("4.4.6 u", Source::triangular(4.0).u());
    let machinist = Source::from_interval(0.04, 0.5).u();
    published.hold("4.3.5 u", machinist);
    published.hold("4.3.5 variance", machinist * machinist);
    published.hold("4.3.7 u", Source::rectangular(0.40e-6).u());
    published.hold(
        "4.3.8 u",
        Source::rectangular((16.92e-6 - 16.40e-6) / 2.0).u(),
    );
    let limit = Source::rectangular(15.0);
    published.hold("4.3.7 u of voltage", limit.u());
    let voltage = hanging_on(&[1.0, 1.0]).combined(&[Source::normal(12.0), limit]);
    published.hold("5.1.5 u", voltage.u());
    published.all_held();
}

#[test]
fn ten_resistors_share_one_standard_5_2_2() {
    let mut published = Published::of(&["5.2.2 "]);
    let ohm = [Source::normal(0.1)];
    let resistor = |number| {
        let draw = crate::published::own(0, number);
        Measured::new(Exact::ZERO, &[(draw, 1.0)])
    };
    let all = |number: fn(usize) -> usize| {
        let each: Vec<_> = (0..10).map(|n| resistor(number(n))).collect();
        let parts: Vec<_> = each.iter().map(|r| (1, r)).collect();
        Measured::sum(&parts, 1).combined(&ohm).u()
    };
    published.hold("5.2.2 u", all(|_| 0));
    published.hold("5.2.2 u if independent", all(|n| n));
    published.all_held();
}

#[test]
fn degrees_of_freedom_g_4_1() {
    let mut published = Published::of(&["G.4.1 "]);
    let of = |u, n: f64| Source::normal(u).with_dof(n - 1.0);
    let sources = [of(0.25, 10.0), of(0.57, 5.0), of(0.82, 15.0)];
    let combined = hanging_on(&[1.0; 3]).combined(&sources);
    published.hold("G.4.1 u", combined.u());
    published.hold("G.4.1 nu", combined.nu());
    published.hold("G.4.1 nu unrounded", combined.nu());
    // Cut off as they are, they would be 18.
    assert_eq!(combined.nu_of_table(), 19.0);
    let p95 = Probability::per_mille(P95);
    published.hold("G.4.1 t95", combined.factor(p95));
    published.hold("G.4.1 U95", combined.expanded(p95));
    published.all_held();
}

/// A shared error cancels in a difference: the reason to keep the terms.
#[test]
fn what_two_readings_share_cancels() {
    let mut published = Published::of(&["G22 "]);
    let sources = [Source::normal(2.0), Source::normal(1.0)];
    let reading = |setting, number| {
        let own = crate::published::own(1, number);
        let setting = crate::published::own(0, setting);
        Measured::new(Exact::ZERO, &[(setting, 1.0), (own, 1.0)])
    };
    let difference = |a: &Measured, b: &Measured| (a - b).combined(&sources).u();
    published.hold("G22 difference", difference(&reading(0, 1), &reading(0, 2)));
    published.hold(
        "G22 if independent",
        difference(&reading(1, 1), &reading(2, 2)),
    );
    published.all_held();
}

/// Three quantities read five times together. Each time is a source of its
/// own, shared by the three: what they do together is in that.
#[test]
fn an_impedance_h2() {
    let mut published = Published::of(&["H.2 "]);
    let read = ["V", "I", "theta"].map(|name| series(&format!("GUM H.2 {name}")));
    let n = read[0].values.len();
    let sources = vec![Source::normal(1.0); n];
    let inputs = read.each_ref().map(|series| {
        let mean = series.mean();
        let off =
            |value: &i64| (series.units(*value as f64) - mean) / ((n * (n - 1)) as f64).sqrt();
        let terms: Vec<_> = (0..)
            .map(shared)
            .zip(series.values.iter().map(off))
            .collect();
        Measured::new(Exact::ZERO, &terms)
    });
    for (series, input) in read.iter().zip(&inputs) {
        let s = series.units(series.sample().s_of_mean().unwrap());
        assert!((input.combined(&sources).u() / s - 1.0).abs() < 1e-12);
    }
    let [v, i, theta] = &inputs;
    published.hold("H.2 r(V;I)", correlation(v, i, &sources));
    published.hold("H.2 r(V;theta)", correlation(v, theta, &sources));
    published.hold("H.2 r(I;theta)", correlation(i, theta, &sources));

    // In volts, amperes and radians; the current was read in mA.
    let [volt, milliampere, angle] = read.each_ref().map(crate::published::Series::mean);
    let z = 1_000.0 * volt / milliampere;
    let (cos, sin) = (libm::cos(angle), libm::sin(angle));
    let slopes = |part: f64, by_angle: f64| [part / volt, -part / milliampere, by_angle];
    let output = |part: f64, by_angle: f64| {
        let [a, b, c] = slopes(part, by_angle);
        Measured::linearised(Exact::ZERO, &[(a, v), (b, i), (c, theta)])
    };
    let resistance = output(z * cos, -z * sin);
    let reactance = output(z * sin, z * cos);
    let impedance = output(z, 0.0);
    published.hold("H.2 R", z * cos);
    published.hold("H.2 X", z * sin);
    published.hold("H.2 Z", z);
    published.hold("H.2 u(R)", resistance.combined(&sources).u());
    published.hold("H.2 u(X)", reactance.combined(&sources).u());
    published.hold("H.2 u(Z)", impedance.combined(&sources).u());
    published.hold("H.2 r(R;X)", correlation(&resistance, &reactance, &sources));
    published.hold("H.2 r(R;Z)", correlation(&resistance, &impedance, &sources));
    published.hold("H.2 r(X;Z)", correlation(&reactance, &impedance, &sources));

    let alone = inputs
        .each_ref()
        .map(|input| Source::normal(input.combined(&sources).u()));
    let independent = hanging_on(&slopes(z * cos, -z * sin)).combined(&alone);
    published.hold("H.2 u(R) if independent", independent.u());
    published.all_held();
}

/// Ten readings under one pooled standard deviation know it no better than
/// it was estimated; ten estimates of their own know more.
#[test]
fn draws_of_one_source_are_one_estimate() {
    let spread = pooled([Spread { s: 3.0, dof: 4.0 }]).unwrap();
    let sum = |draw: fn(usize) -> fenderbench::uncertainty::Draw| {
        let terms: Vec<_> = (0..10).map(|n| (draw(n), 1.0)).collect();
        Measured::new(Exact::ZERO, &terms)
    };
    let sources = vec![Source::estimated(spread); 10];
    let of_one = sum(|n| crate::published::own(0, n)).combined(&sources);
    let of_ten = sum(shared).combined(&sources);
    assert!((of_one.nu() - 4.0).abs() < 1e-12, "{of_one:?}");
    assert!((of_ten.nu() - 40.0).abs() < 1e-12, "{of_ten:?}");
    assert!((of_one.u() - 90.0_f64.sqrt()).abs() < 1e-12, "{of_one:?}");
    assert!((of_ten.u() - of_one.u()).abs() < 1e-12);
}
