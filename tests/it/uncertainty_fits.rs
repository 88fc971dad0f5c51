//! Least squares as weights over readings, against certified coefficients
//! and the calibration line of the GUM. The weights are whole numbers, so a
//! coefficient is exact, and its uncertainty is that of a weighted sum.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::quantity::Exact;
use fenderbench::uncertainty::{Measured, Source, Spread, pooled, quanta};

use crate::published::{Published, correlation, own, series, square};

/// Coefficients of a fit and what it leaves, in the unit of the readings.
struct Fit {
    b: Vec<Measured>,
    rss: f64,
    residual: Spread,
}

fn determinant(m: &[Vec<i128>]) -> i128 {
    let [first, rest @ ..] = m else { return 1 };
    let expanded = first.iter().enumerate().map(|(column, cell)| {
        let mut minor = rest.to_vec();
        for row in &mut minor {
            row.remove(column);
        }
        let sign = if column % 2 == 0 { 1 } else { -1 };
        sign * cell * determinant(&minor)
    });
    expanded.sum()
}

/// Fits `y` on the columns of `design`, which has a row for each reading.
/// Each reading has its own draw of source 0.
fn fit(design: &[Vec<i64>], y: &[i64]) -> Fit {
    let p = design[0].len();
    let product = |i: usize, j: usize| -> i128 {
        let rows = design.iter();
        rows.map(|row| i128::from(row[i]) * i128::from(row[j]))
            .sum()
    };
    let normal: Vec<Vec<_>> = (0..p)
        .map(|i| (0..p).map(|j| product(i, j)).collect())
        .collect();
    // Cramer's rule with a row of the design as right side gives the weight
    // of that reading in a coefficient.
    let weight = |j: usize, row: &Vec<i64>| {
        let mut replaced = normal.clone();
        for (line, x) in replaced.iter_mut().zip(row) {
            line[j] = i128::from(*x);
        }
        i64::try_from(determinant(&replaced)).unwrap()
    };
    let over = i64::try_from(determinant(&normal)).unwrap();
    let reading =
        |(k, y): (usize, &i64)| Measured::new(Exact::new(i128::from(*y), 1), &[(own(0, k), 1.0)]);
    let readings: Vec<_> = y.iter().enumerate().map(reading).collect();
    let coefficient = |j| {
        let weights = design.iter().map(|row| weight(j, row));
        let parts: Vec<_> = weights.zip(&readings).collect();
        Measured::sum(&parts, over)
    };
    let b: Vec<_> = (0..p).map(coefficient).collect();
    let off = |(row, reading): (&Vec<i64>, &Measured)| {
        let mut parts: Vec<_> = row.iter().map(|x| -x).zip(&b).collect();
        parts.push((1, reading));
        quanta(Measured::sum(&parts, 1).value())
    };
    let rss: f64 = design
        .iter()
        .zip(&readings)
        .map(|pair| square(off(pair)))
        .sum();
    let dof = (y.len() - p) as f64;
    let residual = Spread {
        s: (rss / dof).sqrt(),
        dof,
    };
    Fit { b, rss, residual }
}

impl Fit {
    fn sources(&self) -> [Source; 1] {
        [Source::estimated(self.residual)]
    }

    /// A coefficient and its uncertainty. The degrees of freedom are those
    /// of the fit, however many readings share them.
    fn coefficient(&self, j: usize) -> (f64, f64) {
        let combined = self.b[j].combined(&self.sources());
        assert!((combined.nu() / self.residual.dof - 1.0).abs() < 1e-12);
        (quanta(self.b[j].value()), combined.u())
    }
}

/// A dataset in whole numbers; `powers` of x, each x over `common`.
fn fitted(dataset: &str, powers: &[u32], common: i64) -> (Fit, f64, f64) {
    let x = series(&format!("{dataset} x"));
    let y = series(&format!("{dataset} y"));
    let row = |x: &i64| {
        assert_eq!(x % common, 0);
        powers
            .iter()
            .map(|power| (x / common).pow(*power))
            .collect()
    };
    let design: Vec<Vec<i64>> = x.values.iter().map(row).collect();
    let unit_x = common as f64 / x.per_unit as f64;
    (fit(&design, &y.values), unit_x, y.units(1.0))
}

fn hold(dataset: &str, powers: &[u32], common: i64) -> (Published, Fit, f64) {
    let (fit, unit_x, unit_y) = fitted(dataset, powers, common);
    let mut published = Published::of(&[
        &format!("{dataset} b"),
        &format!("{dataset} u("),
        &format!("{dataset} s"),
        &format!("{dataset} RSS"),
    ]);
    for (j, power) in powers.iter().enumerate() {
        let (b, u) = fit.coefficient(j);
        let unit = unit_y / libm::pow(unit_x, f64::from(*power));
        published.hold(&format!("{dataset} b{power}"), b * unit);
        published.hold(&format!("{dataset} u(b{power})"), u * unit);
    }
    published.hold(&format!("{dataset} s"), fit.residual.s * unit_y);
    (published, fit, unit_y)
}

#[test]
fn certified_lines() {
    for (dataset, powers) in [("Norris", &[0, 1][..]), ("NoInt1", &[1]), ("NoInt2", &[1])] {
        let (published, ..) = hold(dataset, powers, 1);
        published.all_held();
    }
}

#[test]
fn a_certified_parabola() {
    let (mut published, fit, unit) = hold("Pontius", &[0, 1, 2], 150_000);
    published.hold("Pontius RSS", fit.rss * unit * unit);
    published.all_held();
}

/// A line with nearly all of the variance in it still hides a curve; repeats
/// show it.
#[test]
fn a_curve_that_a_line_hides_is_seen_against_the_repeats() {
    let mut published = Published::of(&["Pontius line", "Pontius lack"]);
    let (line, unit_x, unit_y) = fitted("Pontius", &[0, 1], 150_000);
    for (j, unit) in [(0, unit_y), (1, unit_y / unit_x)] {
        let (b, u) = line.coefficient(j);
        published.hold(&format!("Pontius line b{j}"), b * unit);
        published.hold(&format!("Pontius line u(b{j})"), u * unit);
    }
    published.hold("Pontius line s", line.residual.s * unit_y);
    // Each load was put on twice, in the same order.
    let y = series("Pontius y").values;
    let (up, again) = y.split_at(y.len() / 2);
    let repeats = up.iter().zip(again).map(|(a, b)| Spread {
        s: (a - b).abs() as f64 / 2.0_f64.sqrt(),
        dof: 1.0,
    });
    let repeats = pooled(repeats).unwrap();
    let lack_of_fit = |fit: &Fit| {
        let pure = repeats.s * repeats.s * repeats.dof;
        let mean_square = (fit.rss - pure) / (fit.residual.dof - repeats.dof);
        mean_square / (repeats.s * repeats.s)
    };
    published.hold("Pontius line lack of fit", lack_of_fit(&line));
    let (curve, ..) = fitted("Pontius", &[0, 1, 2], 150_000);
    published.hold("Pontius lack of fit", lack_of_fit(&curve));
    published.all_held();
}

#[test]
fn a_thermometer_h3() {
    let mut published = Published::of(&["H.3 "]);
    let (t, b) = (series("GUM H.3 t"), series("GUM H.3 b"));
    assert_eq!((t.per_unit, b.per_unit), (1_000, 1_000));
    // Departures from 20 °C in thousandths.
    let design: Vec<_> = t.values.iter().map(|t| vec![1, t - 20_000]).collect();
    let line = fit(&design, &b.values);
    let ((y1, u1), (y2, u2)) = (line.coefficient(0), line.coefficient(1));
    published.hold("H.3 y1", b.units(y1));
    published.hold("H.3 u(y1)", b.units(u1));
    published.hold("H.3 y2", y2);
    published.hold("H.3 u(y2)", u2);
    published.hold("H.3 s", b.units(line.residual.s));
    let sources = line.sources();
    published.hold("H.3 r", correlation(&line.b[0], &line.b[1], &sources));
    // At 30 °C: what the two coefficients share is kept by itself.
    let at_30 = Measured::sum(&[(1, &line.b[0]), (10_000, &line.b[1])], 1);
    let combined = at_30.combined(&sources);
    published.hold("H.3 b(30)", b.units(quanta(at_30.value())));
    published.hold("H.3 u(b(30))", b.units(combined.u()));
    published.hold("H.3 nu", combined.nu());

    // About the mean the two are independent.
    let n = i64::try_from(t.values.len()).unwrap();
    let sum: i64 = t.values.iter().sum();
    let design: Vec<_> = t.values.iter().map(|t| vec![1, n * t - sum]).collect();
    let centred = fit(&design, &b.values);
    let (y1, u1) = centred.coefficient(0);
    published.hold("H.3 y1 centred", b.units(y1));
    published.hold("H.3 u(y1) centred", b.units(u1));
    assert!(correlation(&centred.b[0], &centred.b[1], &sources).abs() < 1e-9);
    published.all_held();
}

/// Solves a system in doubles, its right sides the last cell of each row, by
/// elimination with the largest pivot.
fn solved(mut m: Vec<Vec<f64>>) -> Vec<f64> {
    for column in 0..m.len() {
        let size = |row: &usize| m[*row][column].abs();
        let larger = |a: &usize, b: &usize| size(a).total_cmp(&size(b));
        let pivot = (column..m.len()).max_by(larger).unwrap();
        m.swap(column, pivot);
        let by = m[column].clone();
        for (at, row) in m.iter_mut().enumerate() {
            let factor = if at == column {
                1.0 - 1.0 / by[column]
            } else {
                row[column] / by[column]
            };
            for (cell, by) in row.iter_mut().zip(&by) {
                *cell -= factor * by;
            }
        }
    }
    m.iter().map(|row| row[row.len() - 1]).collect()
}

/// The harmonics of ENSO and their slopes by the nine coefficients at `x`.
fn harmonics(b: &[f64], x: f64) -> (f64, Vec<f64>) {
    let full = 2.0 * core::f64::consts::PI * x;
    let wave = |period: f64| (libm::cos(full / period), libm::sin(full / period));
    let ((c1, s1), (c2, s2), (c3, s3)) = (wave(12.0), wave(b[3]), wave(b[6]));
    let value = b[0] + b[1] * c1 + b[2] * s1 + b[4] * c2 + b[5] * s2 + b[7] * c3 + b[8] * s3;
    let by_4 = (b[4] * s2 - b[5] * c2) * full / (b[3] * b[3]);
    let by_7 = (b[7] * s3 - b[8] * c3) * full / (b[6] * b[6]);
    (value, vec![1.0, c1, s1, by_4, c2, s2, by_7, c3, s3])
}

/// Two of the periods are to be found, so this is not linear: each step of
/// the fit is one with the slopes where it stands, and the uncertainties are
/// those of the last.
#[test]
fn certified_harmonics() {
    let mut published = Published::of(&["ENSO "]);
    let (x, y) = (series("ENSO x"), series("ENSO y"));
    let certified = (1..=9).map(|j| published.figure(&format!("ENSO b{j}")));
    // To three digits, so that the fit has to find the rest.
    let mut b: Vec<f64> = certified
        .map(|b| format!("{b:.2e}").parse().unwrap())
        .collect();
    let mut last = None;
    // Each step leaves about half of the way; eighty leave nothing of it.
    for _ in 0..80 {
        let rows: Vec<_> = x.values.iter().map(|x| harmonics(&b, *x as f64)).collect();
        let off = rows
            .iter()
            .zip(&y.values)
            .map(|((value, _), tenths)| y.units(*tenths as f64) - value);
        let off: Vec<f64> = off.collect();
        let product = |i: usize, j: usize| rows.iter().map(|(_, row)| row[i] * row[j]).sum();
        let normal: Vec<Vec<f64>> = (0..9)
            .map(|i| (0..9).map(|j| product(i, j)).collect())
            .collect();
        // The weight of each reading in each coefficient.
        let weights: Vec<Vec<f64>> = (0..9)
            .map(|j| {
                let mut system = normal.clone();
                for (i, row) in system.iter_mut().enumerate() {
                    row.push(if i == j { 1.0 } else { 0.0 });
                }
                let line = solved(system);
                let weight = |row: &[f64]| line.iter().zip(row).map(|(a, b)| a * b).sum();
                rows.iter().map(|(_, row)| weight(row)).collect()
            })
            .collect();
        for (b, weights) in b.iter_mut().zip(&weights) {
            *b += weights
                .iter()
                .zip(&off)
                .map(|(w, off)| w * off)
                .sum::<f64>();
        }
        last = Some((off, weights));
    }
    let (off, weights) = last.unwrap();
    let rss: f64 = off.iter().map(|off| off * off).sum();
    let dof = (off.len() - b.len()) as f64;
    let residual = Spread {
        s: (rss / dof).sqrt(),
        dof,
    };
    published.hold("ENSO RSS", rss);
    published.hold("ENSO s", residual.s);
    for (j, (b, weights)) in (1..).zip(b.iter().zip(&weights)) {
        let terms: Vec<_> = (0..)
            .map(|k| own(0, k))
            .zip(weights.iter().copied())
            .collect();
        let coefficient = Measured::new(Exact::ZERO, &terms);
        let combined = coefficient.combined(&[Source::estimated(residual)]);
        published.hold(&format!("ENSO b{j}"), *b);
        published.hold(&format!("ENSO u(b{j})"), combined.u());
    }
    published.all_held();
}
