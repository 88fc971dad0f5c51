//! Volumes, as worked by hand.

use fenderbench::form::{Volume, compression_ratio};
use fenderbench::quantity::{Exact, SIZE_MAX};
use proptest::prelude::*;

use crate::generators::config;
use crate::golden::{Row, golden};
use crate::make::exact;

/// A decimal without its point.
fn digits(row: &Row, column: &str) -> Option<i128> {
    row.get(column).replace('.', "").parse().ok()
}

#[test]
fn what_pistons_displace() {
    for row in golden!("displacements.csv") {
        let length = |column| exact(&format!("{} {}", row.get(column), row.get("unit")));
        let one = Volume::cylinder(length("bore"), length("stroke"));
        let all = one.times(row.get("cylinders").parse().unwrap());
        let inches = all.per(Volume::CUBIC_INCH, 2);
        assert_eq!(inches, digits(&row, "cubic_inches"), "{}", row.place());
        assert_eq!(
            all.per(Volume::LITRE, 4),
            digits(&row, "litres"),
            "{}",
            row.place()
        );
    }
}

#[test]
fn a_larger_bore_displaces_more_by_the_square() {
    // (4.030 / 4.000)² is 1.01506 and (3.520 / 3.500)² is 1.01146, by hand.
    for (before, after, stroke, change) in [
        ("4.000 in", "4.030 in", "3.500 in", 1_506),
        ("3.500 in", "3.520 in", "3.000 in", 1_146),
    ] {
        let swept = |bore| Volume::cylinder(exact(bore), exact(stroke));
        let more = swept(after) - swept(before);
        assert_eq!(more.per(swept(before), 5), Some(change));
    }
}

#[test]
fn how_far_the_charge_is_compressed() {
    for row in golden!("compression.csv") {
        let inches = |column| exact(&format!("{} in", row.get(column)));
        let centimetres = |column| Volume::CUBIC_CENTIMETRE.times(row.get(column).parse().unwrap());
        let bore = inches("bore");
        let clearance = centimetres("chamber_cm3")
            + Volume::cylinder(inches("gasket_bore"), inches("gasket"))
            + Volume::cylinder(bore, inches("deck"))
            + centimetres("dish_cm3");
        let ratio = compression_ratio(Volume::cylinder(bore, inches("stroke")), clearance);
        assert_eq!(ratio, digits(&row, "ratio"), "{}", row.place());
    }
}

#[test]
fn what_makes_no_sense_is_no_ratio() {
    let swept = Volume::CUBIC_INCH;
    assert_eq!(compression_ratio(swept, Volume::ZERO), None);
    assert_eq!(compression_ratio(swept, Volume::ZERO - swept), None);
    let largest = Volume::cylinder(SIZE_MAX.into(), SIZE_MAX.into()).times(u8::MAX);
    assert_eq!(largest.per(Volume::LITRE, 30), None);
    assert_eq!(largest.per(Volume::LITRE, 40), None);
    // π/4 × 10 m × 10 m × 10 m × 255, in litres.
    assert_eq!(largest.per(Volume::LITRE, 0), Some(200_276_532));
    let beyond = Exact::new(i128::MAX, 3);
    assert_eq!(Volume::cylinder(beyond, beyond).times(u8::MAX), largest);
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn a_cut_of_the_deck_goes_up_with_it(
        bore in 1_000_000_i64..3_000_000_000,
        (a, b) in (-50_000_000_i64..50_000_000, -50_000_000_i64..50_000_000),
    ) {
        let deck = |height: i64| Volume::cylinder(Exact::whole(bore), Exact::whole(height));
        prop_assert_eq!(deck(a) + deck(b), deck(a + b));
        prop_assert_eq!(deck(a) < deck(b), a < b);
        let two = Volume::cylinder(Exact::whole(2 * bore), Exact::whole(50_000_000));
        prop_assert_eq!(two.per(deck(50_000_000), 6), Some(4_000_000));
    }
}
