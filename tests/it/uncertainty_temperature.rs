//! What temperature does, and what is taken where nobody measured.
#![allow(
    clippy::float_arithmetic,
    reason = "uncertainties and what they are held against, no lengths"
)]

use fenderbench::quantity::{Deviation, Exact, SIZE_MAX, Size, Unit};
use fenderbench::uncertainty::{
    Climate, DOF_MIN, Distribution, Draw, Expansion, Instrument, Material, Measured, Source,
    Spread, U_MAX, chord_error, correction, permissible_error, quanta, repeatability, rounded,
    thermal_sources, thermal_terms, tilt_error, transfer,
};

use crate::golden::golden;
use crate::published::{Published, hanging_on, own, shared, square};

const MM: f64 = 1e7;

fn mm(thousandths: i64) -> Size {
    Size::from_quanta(thousandths * 10_000)
}

const fn expansion(nano_per_degree: i64) -> Expansion {
    Expansion {
        nano_per_degree,
        half_width: 0,
    }
}

const NONE: Expansion = expansion(0);

#[test]
fn the_correction_to_20_degrees() {
    let mut published = Published::of(&["NPL "]);
    let warm = Climate::Degrees(23_700);
    let at_20 = mm(500_035) + correction(mm(500_035), expansion(11_700), NONE, warm);
    published.hold("NPL correction", quanta(at_20.into()) / MM);
    published.hold("NPL correction exact", quanta(at_20.into()) / MM);
    published.all_held();
}

#[test]
fn an_expansion_measured_by_lengths_and_temperatures() {
    let mut published = Published::of(&["E13 "]);
    let (l0, l1, t0, t1) = (1.4999, 1.5021, 288.15, 373.10);
    let sources = [0.0001, 0.0002, 0.02, 0.05].map(Source::normal);
    let alpha = (l1 - l0) / (l0 * (t1 - t0));
    published.hold("E13 expansion", alpha);
    let over = 1.0 / (l0 * (t1 - t0));
    let slopes = [-l1 / l0 * over, over, alpha / (t1 - t0), -alpha / (t1 - t0)];
    published.hold("E13 u", hanging_on(&slopes).combined(&sources).u());
    published.all_held();
}

/// An aluminium piston in an iron bore, both cold: what was measured as
/// clearance is too much, by (22 − 10.5) · 10⁻⁶ · 101.6 mm for each degree.
#[test]
fn a_cold_clearance_of_unlike_materials_is_too_large() {
    for (climate, thousandths_of_mm) in [(10_000, 11.684), (5_000, 17.526)] {
        let climate = Climate::Degrees(climate);
        let of = |part| correction(mm(101_600), expansion(part), expansion(11_500), climate);
        let change = of(10_500).quanta() - of(22_000).quanta();
        assert!(
            (change as f64 / 1e4 + thousandths_of_mm).abs() < 1e-4,
            "{change}"
        );
    }
}

fn four(difference: usize, part: usize) -> [Draw; 4] {
    [shared(0), own(1, difference), own(2, part), shared(3)]
}

#[test]
fn parts_of_one_kind_in_one_shop_share_what_temperature_does() {
    let (iron, steel) = (Material::GreyIron.expansion(), Material::Steel.expansion());
    for climate in [
        Climate::Cold,
        Climate::Mild,
        Climate::Hot,
        Climate::Degrees(-80_000),
    ] {
        let sources = thermal_sources(iron, steel, climate);
        let bore = |difference| {
            let terms = thermal_terms(mm(82_000), iron, steel, climate, four(difference, 0));
            Measured::new(mm(82_000).into(), &terms)
        };
        assert!(0.0 < bore(0).combined(&sources).u());
        // Equally warm: nothing is left of it.
        assert_eq!((&bore(0) - &bore(0)).combined(&sources).u(), 0.0);
        // Differently warm: the difference of each from the gauge is left.
        let apart = (&bore(1) - &bore(2)).combined(&sources).u();
        let one = 82.0 * MM * 11e-6 * sources[1].u();
        assert!(
            (apart / (2.0_f64.sqrt() * one) - 1.0).abs() < 1e-12,
            "{climate:?}"
        );
    }
}

/// First order: size · (α part − α gauge) · departure and size · α part ·
/// difference. Second: u(α) acts through the doubt of the temperature too.
#[test]
fn the_terms_of_temperature_are_those_of_the_formula() {
    let part = Expansion {
        nano_per_degree: 20_000,
        half_width: 1_500,
    };
    let gauge = Expansion {
        nano_per_degree: 11_500,
        half_width: 1_000,
    };
    let size = 100.0 * MM;
    let root = 3.0_f64.sqrt();
    for (climate, away, within, apart) in [
        (Climate::Cold, -12.0, 6.0, 2.0),
        (Climate::default(), 0.0, 6.0, 2.0),
        (Climate::Hot, 12.0, 6.0, 2.0),
        (Climate::Degrees(23_500), 3.5, 1.0, 1.0),
    ] {
        let sources = thermal_sources(part, gauge, climate);
        let u = sources.map(|source| source.u() * root);
        for (u, expected) in u.iter().zip([within, apart, 1.5e-6, 1.0e-6]) {
            assert!((u / expected - 1.0_f64).abs() < 1e-12, "{climate:?} {u}");
        }
        let terms = thermal_terms(mm(100_000), part, gauge, climate, four(0, 0));
        let (within, apart): (f64, f64) = (within / root, apart / root);
        let by_part = (away * away + within * within + apart * apart).sqrt();
        let by_gauge = (away * away + within * within).sqrt();
        let sign = if away < 0.0 { -1.0 } else { 1.0 };
        let expected = [-8.5e-6, -20e-6, -sign * by_part, sign * by_gauge];
        for ((_, c), expected) in terms.iter().zip(expected) {
            assert!(
                (c / (size * expected) - 1.0).abs() < 1e-12,
                "{climate:?} {c}"
            );
        }
    }
}

#[test]
fn materials_hold_the_published_values() {
    let rows = golden!("expansion.csv");
    for material in Material::ALL {
        let name = format!("{material:?}");
        let of = material.expansion();
        let mut held = 0;
        for row in rows.iter().filter(|row| row.get("material") == name) {
            let off = row.whole("nano_per_degree") - i128::from(of.nano_per_degree);
            assert!(off.abs() <= of.half_width.into(), "{name}, {}", row.place());
            held += 1;
        }
        assert!(1 < held, "{name}");
    }
}

#[test]
fn permissible_errors_of_micrometers() {
    for row in golden!("micrometer_limits.csv") {
        let limit = row.whole("limit_um") as f64 * 1e4 / 3.0_f64.sqrt();
        let (from, to) = (row.whole("from_mm"), row.whole("to_mm"));
        let inside = [
            from * 10_000_000 + 1,
            (from + to) * 5_000_000,
            to * 10_000_000,
        ];
        for quanta in inside {
            let size = Size::from_quanta(quanta.try_into().unwrap());
            let u = permissible_error(size).u();
            assert!(
                (u / limit - 1.0).abs() < 1e-12,
                "{size:?} {u}, {}",
                row.place()
            );
        }
    }
    let odd = [i64::MIN, 0, i64::MAX].map(|q| permissible_error(Size::from_quanta(q)).u());
    assert!(odd.iter().all(|u| 0.0 < *u && *u < U_MAX), "{odd:?}");
}

#[test]
fn repeatability_is_common_practice_until_there_are_own_repeats() {
    let rows = golden!("repeatability.csv");
    let names: Vec<_> = rows
        .iter()
        .map(|row| row.get("instrument").to_owned())
        .collect();
    assert_eq!(
        names,
        Instrument::ALL.map(|instrument| format!("{instrument:?}"))
    );
    for (instrument, row) in Instrument::ALL.into_iter().zip(&rows) {
        let tenths = row.whole("tenths") * i128::from(Unit::Inch.quanta()) / 10_000;
        let source = repeatability(None, instrument);
        let u = tenths as f64 / 1.959_964;
        assert!((source.u() / u - 1.0).abs() < 1e-6, "{}", row.place());
        assert_eq!(source.dof(), 8.0);
        let few = Some(Spread { s: 1.0, dof: 3.0 });
        assert_eq!(repeatability(few, instrument), source);
        let enough = Spread { s: 1.0, dof: 4.0 };
        let own = repeatability(Some(enough), instrument);
        assert_eq!((own.u(), own.dof()), (1.0, 4.0));
        assert_eq!(own.distribution(), Distribution::StudentT);
    }
}

const INCH: i64 = 254_000_000;

/// Half of a last place, in quanta, of a figure in 0.00001 in.
const PLACE: f64 = 2_540.0 / 2.0 * 1.01;

/// Worked by hand from the two formulas, to 0.00001 in.
#[test]
fn a_gauge_aslant_reads_long_and_on_a_chord_short() {
    let one_degree = 0.017_455_064_93;
    for (thousandths, long) in [(2_000, 30), (3_500, 53), (4_000, 61)] {
        let size = Size::from_quanta(INCH * thousandths / 1_000);
        let off = tilt_error(size, one_degree) - f64::from(long) * 2_540.0;
        assert!(off.abs() <= PLACE, "{thousandths}: {off}");
    }
    let four = Size::from_quanta(4 * INCH);
    for (off_axis, short) in [(20, -20), (50, -125)] {
        let off = chord_error(four, f64::from(off_axis) * 254_000.0) - f64::from(short) * 2_540.0;
        assert!(off.abs() <= PLACE, "{off_axis}: {off}");
    }
    assert_eq!(chord_error(four, 1e30), -4.0 * INCH as f64);
    // As wide as the larger of what half a degree and 0.020 in do on 4 in.
    let half_width = transfer(four).u() * 3.0_f64.sqrt();
    assert!((half_width / 2_540.0 - 20.0).abs() < 0.5, "{half_width}");
    assert_eq!(transfer(four).distribution(), Distribution::Rectangular);
}

/// Repeats at one place share the draw: they do not make it smaller.
#[test]
fn repeats_do_not_average_the_transfer_away() {
    let size = mm(82_000);
    let sources = [transfer(size), Source::normal(10_000.0)];
    let reading = |n| Measured::new(size.into(), &[(shared(0), 1.0), (own(1, n), 1.0)]);
    let repeats: Vec<_> = (1..=100).map(reading).collect();
    let parts: Vec<_> = repeats.iter().map(|reading| (1, reading)).collect();
    let mean = Measured::sum(&parts, 100);
    let expected = (square(sources[0].u()) + square(1_000.0)).sqrt();
    assert!((mean.combined(&sources).u() / expected - 1.0).abs() < 1e-12);
    assert_eq!(mean.value(), Exact::from(size));
}

#[test]
fn odd_input_has_an_answer() {
    assert_eq!(Source::resolution(Size::from_quanta(0)), Source::UNKNOWN);
    assert_eq!(Source::resolution(Size::from_quanta(-5)), Source::UNKNOWN);
    assert_eq!(Source::normal(f64::NAN).u(), U_MAX);
    assert_eq!(Source::normal(-1.0).u(), U_MAX);
    assert_eq!(Source::normal(f64::INFINITY).u(), U_MAX);
    assert_eq!(Source::from_expanded(1.0, 0.0).u(), U_MAX);
    assert_eq!(Source::from_expanded(0.0, -1.0).u(), U_MAX);
    assert_eq!(Source::normal(1.0).with_dof(0.0).dof(), DOF_MIN);
    assert_eq!(Source::normal(1.0).with_dof(f64::NAN).dof(), DOF_MIN);
    assert_eq!(rounded(f64::NAN), Exact::from(SIZE_MAX));
    assert_eq!(rounded(f64::NEG_INFINITY), -Exact::from(SIZE_MAX));
    assert_eq!(
        [-0.4, 1.5, 2.6].map(rounded),
        [0, 2, 3].map(|n| Exact::new(n, 1))
    );
    // Colder than any shop, and sizes that cannot be entered.
    let steel = Material::Steel.expansion();
    let arctic = correction(mm(82_000), steel, NONE, Climate::Degrees(-80_000));
    assert_eq!(arctic, Deviation::from_quanta(967_600));
    let most = Size::from_quanta(i64::MAX);
    let far = Expansion {
        nano_per_degree: i64::MAX,
        half_width: i64::MAX,
    };
    let most_of_all = correction(most, far, NONE, Climate::Degrees(i32::MAX));
    assert!(most_of_all.quanta() < 0, "{most_of_all:?}");
    for (_, c) in thermal_terms(most, far, NONE, Climate::Degrees(i32::MIN), four(0, 0)) {
        assert!(c.is_finite());
    }
}
