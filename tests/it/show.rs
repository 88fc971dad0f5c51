//! Exact length → text.

use expect_test::{Expect, expect};
use fenderbench::quantity::{Exact, show, show_signed};
use proptest::prelude::*;

use crate::make::{INCH, MM, exact};

fn check(value: Exact, expect: &Expect) {
    let shown = [(MM, 3), (INCH, 4)].map(|(unit, decimals)| {
        let shown = show_signed(value, unit, decimals);
        let about = if shown.exact { "" } else { "about " };
        format!("{about}{} {}", shown.text, unit.sign())
    });
    expect.assert_eq(&shown.join(" = "));
}

#[test]
fn more_decimals_only_where_they_tell_more() {
    check(exact("50 mm"), &expect![["+50.000 mm = about +1.9685 in"]]);
    check(exact("1.9685 in"), &expect![["+49.9999 mm = +1.9685 in"]]);
    check(exact("2.2683 in"), &expect![["+57.61482 mm = +2.2683 in"]]);
    check(
        exact("0.0005 mm"),
        &expect![["+0.0005 mm = about +0.00002 in"]],
    );
    check(exact("-0.0005 in"), &expect![["-0.0127 mm = -0.0005 in"]]);
    check(
        Exact::new(10_000, 3),
        &expect![["about +0.0003 mm = about +0.00001 in"]],
    );
    check(
        Exact::new(-100_000_000, 3),
        &expect![["about -3.333 mm = about -0.1312 in"]],
    );
    check(Exact::ZERO, &expect![["0.000 mm = 0.0000 in"]]);
}

#[test]
fn half_rounds_to_even() {
    // Sevenths of a quantum never end, so none of these can be shown exactly.
    let check = |numerator, expected: &str| {
        assert_eq!(show(Exact::new(numerator, 7), MM, 3).text, expected);
    };
    check(7 * 10_005_000 - 1, "1.000");
    check(7 * 10_005_000 + 1, "1.001");
    // A tie is exact one decimal later, so it is shown whole.
    check(7 * 10_005_000, "1.0005");
    // Seven decimals would be needed; six can be used, and three are shown.
    assert_eq!(show(Exact::new(10_000_015, 1), MM, 3).text, "1.000");
}

#[test]
fn without_decimals_there_is_no_point() {
    assert_eq!(show(exact("7 mm"), MM, 0).text, "7");
    assert_eq!(show(exact("7.5 mm"), MM, 0).text, "7.5");
}

/// Anything a mean or a difference of readings can come to.
fn value() -> impl Strategy<Value = Exact> {
    let numerator = prop_oneof![-2000_i128..2000, -100_000_000_000_i128..100_000_000_000];
    (numerator, 1_i128..40).prop_map(|(numerator, denominator)| Exact::new(numerator, denominator))
}

proptest! {
    #![proptest_config(crate::generators::config(1024))]

    #[test]
    fn something_is_never_shown_as_nothing(value in value(), inch in any::<bool>()) {
        let (unit, decimals) = if inch { (INCH, 4) } else { (MM, 3) };
        let shown = show(value, unit, decimals);
        let nothing = shown.text.chars().all(|c| matches!(c, '0' | '.' | '-'));
        prop_assert_eq!(nothing, value == Exact::ZERO, "{}", shown.text);
    }

    #[test]
    fn what_is_shown_is_near_and_exact_where_it_says_so(value in value(), inch in any::<bool>()) {
        let (unit, decimals) = if inch { (INCH, 4) } else { (MM, 3) };
        let shown = show(value, unit, decimals);
        let (whole, rest) = shown.text.split_once('.').unwrap();
        let digits: i128 = format!("{whole}{rest}").parse().unwrap();
        let scale = 10_i128.pow(rest.len().try_into().unwrap());
        let back = Exact::new(digits * i128::from(unit.quanta()), scale);
        let away = (back - value).abs();
        prop_assert_eq!(shown.exact, away == Exact::ZERO);
        prop_assert!(away <= Exact::new(unit.quanta().into(), 2 * 10_i128.pow(decimals.into())));
        prop_assert!(!shown.text.starts_with("-0.") || back.is_negative());
    }

    #[test]
    fn a_sign_stands_before_all_but_nothing(value in value(), inch in any::<bool>()) {
        let unit = if inch { INCH } else { MM };
        let text = show_signed(value, unit, unit.decimals()).text;
        let sign = text.chars().next();
        prop_assert_eq!(sign == Some('-'), value.is_negative());
        prop_assert_eq!(sign == Some('+'), Exact::ZERO < value);
    }
}
