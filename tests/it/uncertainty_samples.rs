//! Means, standard deviations and pooling against certified values, and the
//! published gauge studies.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::quantity::{Exact, Size};
use fenderbench::uncertainty::{Budget, Probability, Sample, Source, Spread, pooled, quanta};

use crate::golden::golden;
use crate::published::{Published, Series, hanging_on, series, series_of};

/// Lag-1 autocorrelation, in whole numbers until the last division.
fn lag_one(values: &[i64]) -> f64 {
    let n = values.len() as i128;
    let sum: i128 = values.iter().map(|v| i128::from(*v)).sum();
    let off: Vec<_> = values.iter().map(|v| n * i128::from(*v) - sum).collect();
    let both: i128 = off.windows(2).map(|pair| pair[0] * pair[1]).sum();
    let all: i128 = off.iter().map(|o| o * o).sum();
    both as f64 / all as f64
}

/// Whole numbers lose nothing: NumAcc4 in doubles has a standard deviation
/// of 0.10000000056.
#[test]
fn numerical_accuracy_is_exact() {
    let mut published = Published::of(&["NumAcc"]);
    for row in golden!("means.csv") {
        let whole = |column| i64::try_from(row.whole(column)).unwrap();
        let mut values = vec![whole("first")];
        for _ in 0..whole("pairs") {
            values.extend([whole("then"), whole("and")]);
        }
        let scale = row.whole("scale");
        let sample: Sample = values.iter().copied().map(Size::from_quanta).collect();
        assert_eq!(sample.mean(), Some(Exact::new(row.whole("mean"), 1)));
        assert_eq!(sample.variance(), Some(Exact::new(1, 1)), "{}", row.place());
        let name = row.get("dataset");
        published.hold(
            &format!("{name} sd"),
            sample.spread().unwrap().s / scale as f64,
        );
        published.hold(&format!("{name} r1"), lag_one(&values));
    }
    published.all_held();
}

#[test]
fn univariate_reference_data() {
    let names = ["Michelso", "Mavro", "Lottery", "Lew"];
    let mut published = Published::of(&names);
    for name in names {
        let data = series(name);
        published.hold(&format!("{name} mean"), data.mean());
        published.hold(&format!("{name} sd"), data.s());
        published.hold(&format!("{name} r1"), lag_one(&data.values));
    }
    published.all_held();
}

#[test]
fn pooled_repeatability() {
    let mut published = Published::of(&["2.4.4."]);
    let squares = [0.48115_f64, 0.69209, 0.48483, 1.21752, 0.30076];
    let level_1 = pooled(squares.map(|ss| Spread {
        s: (ss / 60.0).sqrt(),
        dof: 60.0,
    }))
    .unwrap();
    published.hold("2.4.4.4 s", level_1.s);
    published.hold("2.4.4.4 dof", level_1.dof);
    let runs = [0.0223, 0.0027, 0.0289, 0.0133, 0.0205];
    let level_3 = pooled(runs.map(|s| Spread { s, dof: 1.0 })).unwrap();
    published.hold("2.4.4.3 s", level_3.s);
    published.all_held();
}

fn spreads(of: &[Series]) -> Spread {
    let spreads = of.iter().map(|series| Spread {
        s: series.s(),
        dof: series.sample().spread().unwrap().dof,
    });
    pooled(spreads).unwrap()
}

#[test]
fn a_gauge_study_from_raw_readings_to_the_budget() {
    let mut published = Published::of(&["2.6.3 "]);
    let names = series_of("wafer ");
    let runs: Vec<_> = names.iter().map(|name| series(name)).collect();
    let days = spreads(&runs);
    published.hold("2.6.3 s2", days.s);
    assert_eq!(days.dof, 50.0);
    // Run against run: the means of the two runs of each wafer.
    let of_wafer = |wafer: &str| {
        let start = format!("wafer {wafer} ");
        let runs = names.iter().filter(|name| name.starts_with(&start));
        let means = runs.map(|name| series(name).mean()).collect::<Vec<_>>();
        let [a, b] = means[..] else { panic!("{start}") };
        Spread {
            s: (a - b).abs() / 2.0_f64.sqrt(),
            dof: 1.0,
        }
    };
    let between = pooled(["138", "139", "140", "141", "142"].map(of_wafer)).unwrap();
    published.hold("2.6.3 s3", between.s);

    // The budget from the printed deviations; variances add in these parts.
    let printed = [(0.0362, 50.0), (0.0197, 5.0), (0.0161, 9.0)];
    let sources = printed.map(|(s, dof)| Source::estimated(Spread { s, dof }));
    let parts = [0.8333_f64, 1.0, 0.1].map(f64::sqrt);
    let combined = hanging_on(&parts).combined(&sources);
    published.hold("2.6.3 u", combined.u());
    published.hold("2.6.3 nu", combined.nu());
    // From 41.97, which is printed as 42.0.
    assert_eq!(combined.nu_of_table(), 42.0);
    published.hold("2.6.3 U", combined.expanded(Probability::per_mille(950)));
    published.all_held();
}

/// Micrometres in a millimetre.
const UM: f64 = 1_000.0;

#[test]
fn a_gauge_on_one_reference() {
    let mut published = Published::of(&["reference "]);
    let readings = series("reference");
    published.hold("reference mean", readings.mean());
    let bias = (readings.mean() - 6.002).abs() * UM;
    let calibration = Source::from_expanded(2.0, 2.0);
    let resolution = Source::resolution(Size::from_quanta(10_000));
    let resolution = Source::normal(resolution.u() / 10_000.0);
    let bias = Source::rectangular(bias);
    let repeats = Source::normal(readings.s() * UM);
    published.hold("reference u(resolution)", resolution.u());
    published.hold("reference u(bias)", bias.u());
    published.hold("reference u(repeats)", repeats.u());
    // That rule takes the larger of resolution and repeats.
    assert!(resolution.u() < repeats.u());
    let u = hanging_on(&[1.0; 3])
        .combined(&[calibration, bias, repeats])
        .u();
    published.hold("reference u", u);
    published.all_held();
}

#[test]
fn a_bore_gauge_at_three_places_of_three_parts_and_again_on_ten() {
    let mut published = Published::of(&["bore u"]);
    let again = series_of("bore again ");
    assert_eq!(again.len(), 30);
    let again: Vec<_> = again.iter().map(|name| series(name)).collect();
    published.hold("bore u(parts)", spreads(&again).s * UM);

    let names = series_of("bore ");
    let studied: Vec<_> = names
        .iter()
        .filter(|name| !name.contains("again"))
        .collect();
    assert_eq!(studied.len(), 9);
    let readings: Vec<_> = studied.iter().map(|name| series(name)).collect();
    let repeats = Source::estimated(Spread {
        s: spreads(&readings).s * UM,
        dof: 81.0,
    });
    published.hold("bore u(repeats)", repeats.u());
    let bias = studied.iter().zip(&readings).map(|(name, readings)| {
        let reference: f64 = name.rsplit(' ').next().unwrap().parse().unwrap();
        (readings.mean() - reference).abs() * UM
    });
    let bias = Source::rectangular(bias.fold(0.0, f64::max));
    published.hold("bore u(bias)", bias.u());
    // The calibration at k = 2, and what the study leaves as the rest.
    let sources = [
        Source::from_expanded(1.8, 2.0),
        bias,
        repeats,
        Source::normal(0.462),
    ];
    let system = hanging_on(&[1.0; 4]).combined(&sources);
    published.hold("bore u", system.u());
    let parts = [system.u(), 0.121, 1.07, 0.218, 1.26, 1.27].map(Source::normal);
    let budget = Budget::of(&hanging_on(&[1.0; 6]), &parts);
    published.hold("bore u with parts", budget.combined.u());
    assert_eq!(budget.rows[0].source.0, 0);
    published.all_held();
}

#[test]
fn few_or_equal_repeats_have_an_answer() {
    let of = |values: &[i64]| -> Sample { values.iter().copied().map(Size::from_quanta).collect() };
    let none = of(&[]);
    assert_eq!(
        (none.mean(), none.variance(), none.spread()),
        (None, None, None)
    );
    let one = of(&[5]);
    assert_eq!(one.mean(), Some(Exact::new(5, 1)));
    assert_eq!(
        (one.variance(), one.spread(), one.s_of_mean()),
        (None, None, None)
    );
    let equal = of(&[5; 5]);
    assert_eq!(equal.spread(), Some(Spread { s: 0.0, dof: 4.0 }));
    // What the scale cannot show remains.
    let sources = [
        Source::estimated(equal.spread().unwrap()),
        Source::resolution(Size::from_quanta(10_000)),
    ];
    let combined = hanging_on(&[1.0, 1.0]).combined(&sources);
    assert_eq!(combined.u(), sources[1].u());
    assert_eq!(combined.nu(), f64::INFINITY);
    // The largest readings there can be do not overflow.
    let far = of(&[i64::MIN, i64::MAX]);
    assert_eq!(far.mean(), Some(Exact::ZERO));
    assert!((quanta(far.variance().unwrap()) / 2e22 - 1.0).abs() < 1e-15);
}
