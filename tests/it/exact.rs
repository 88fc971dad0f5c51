//! Quotients of quanta, and the one rounding of the project.

use core::cmp::Ordering;

use fenderbench::quantity::{Exact, round_half_even};
use proptest::prelude::*;

use crate::golden::golden;
use crate::make::{INCH, MM, size};

#[test]
fn rounds_as_published() {
    for row in golden!("rounding.csv") {
        let unit = 10_i128.pow(row.get("dropped").parse().unwrap());
        let rounded = round_half_even(row.whole("digits"), unit);
        assert_eq!(rounded, row.whole("rounded"), "{}", row.place());
    }
}

#[test]
fn rounds_inches_to_whole_millimetres_as_published() {
    let rows = golden!("inch_to_mm.csv");
    assert_eq!(rows.len(), 29);
    for row in rows {
        let size = size(&format!("{} in", row.get("dressed_in")));
        let mm = round_half_even(size.quanta().into(), MM.quanta().into());
        assert_eq!(mm, row.whole("published_mm"), "{}", row.place());
    }
}

#[test]
fn steps_that_are_not_whole_stay_exact() {
    // 1/128 in is 198 437.5 nm (identity).
    assert_eq!(
        Exact::new(INCH.quanta().into(), 128),
        Exact::new(1_984_375, 1)
    );
    assert_eq!(
        Exact::new(INCH.quanta().into(), 3) + Exact::new(INCH.quanta().into(), 6),
        Exact::from(size("12.7 mm"))
    );
}

#[test]
fn signs_and_zero_have_one_form() {
    assert_eq!(Exact::new(1, -2), Exact::new(-1, 2));
    assert_eq!(Exact::new(0, -7), Exact::ZERO);
    assert_eq!(Exact::new(0, 7), Exact::ZERO);
    assert_eq!(Exact::new(-6, -4), Exact::new(3, 2));
    assert_eq!(Exact::new(-6, 4).abs(), Exact::new(3, 2));
    assert!(Exact::new(-1, 3).is_negative());
    assert!(!Exact::ZERO.is_negative());
    assert_eq!(-Exact::ZERO, Exact::ZERO);
}

fn small() -> impl Strategy<Value = Exact> {
    (-1_000_000_000_000_i128..1_000_000_000_000, 1_i128..1000)
        .prop_map(|(numerator, denominator)| Exact::new(numerator, denominator))
}

proptest! {
    #![proptest_config(crate::generators::config(512))]

    #[test]
    fn adds_and_orders_as_numbers_do(a in small(), b in small(), c in small()) {
        prop_assert_eq!(a + b, b + a);
        prop_assert_eq!((a + b) + c, a + (b + c));
        prop_assert_eq!(a - a, Exact::ZERO);
        prop_assert_eq!((a - b) + b, a);
        prop_assert_eq!(a.cmp(&b), (a + c).cmp(&(b + c)));
        prop_assert_eq!(a.cmp(&b), (a - b).numerator().cmp(&0));
        prop_assert_eq!(a == b, a.cmp(&b) == Ordering::Equal);
        prop_assert!(1 <= a.denominator());
    }

    #[test]
    fn rounds_to_the_nearest_and_ties_to_even(n in -1_000_000_i128..1_000_000, d in 1_i128..5000) {
        let rounded = round_half_even(n, d);
        let twice_away = 2 * (n - rounded * d).abs();
        prop_assert!(twice_away <= d);
        prop_assert!(twice_away < d || rounded % 2 == 0);
        prop_assert_eq!(round_half_even(-n, d), -rounded);
    }
}
