//! Typed text of a dial → exact deviation.

use expect_test::{Expect, expect};
use fenderbench::quantity::{Deviation, Entered, EnteredDeviation, SIZE_MAX};
use proptest::prelude::*;

use crate::generators::{any_unit, config, deviation};
use crate::make::{INCH, MM};

/// What is kept, how it is shown, and the exact deviation, in mm and in in.
fn check(text: &str, expect: &Expect) {
    let shown = |unit| match EnteredDeviation::parse(text, unit) {
        Ok(read) => format!("{} ({read}) = {}", read.text(), read.deviation().quanta()),
        Err(why) => why.to_string(),
    };
    let (mm, inch) = (shown(MM), shown(INCH));
    if mm == inch {
        expect.assert_eq(&mm);
    } else {
        expect.assert_eq(&format!("{mm} | {inch}"));
    }
}

// The quanta by hand: 1 µm is 10 000, 0.0001 in is 25 400.
#[test]
fn a_sign_is_kept_as_a_hyphen_and_a_plus_as_nothing() {
    let above = expect!["0.012 (+0.012 mm) = 120000 | 0.012 (+0.012 in) = 3048000"];
    for text in ["0.012", "+0.012", "0,012", "+0,012", " +0.012\n"] {
        check(text, &above);
    }
    let below = expect!["-0.012 (−0.012 mm) = -120000 | -0.012 (−0.012 in) = -3048000"];
    for text in ["-0.012", "−0.012", "-0,012", "\t−0.012 "] {
        check(text, &below);
    }
    check(
        "-3",
        &expect!["-3 (−3 mm) = -30000000 | -3 (−3 in) = -762000000"],
    );
    check(
        "-007.50",
        &expect!["-007.50 (−007.50 mm) = -75000000 | -007.50 (−007.50 in) = -1905000000"],
    );
}

#[test]
fn nothing_has_no_sign() {
    let none = expect!["0.000 (0.000 mm) = 0 | 0.000 (0.000 in) = 0"];
    for text in ["0.000", "+0.000", "-0.000", "−0,000"] {
        check(text, &none);
    }
    check("-0", &expect!["0 (0 mm) = 0 | 0 (0 in) = 0"]);
}

#[test]
fn what_is_no_deviation_is_refused_with_a_sentence() {
    let empty = expect!["Nothing was typed: type a number, as 49.98."];
    for text in ["", " ", "+", "-", "−", " - "] {
        check(text, &empty);
    }
    let many = expect!["More than one point or comma: type the number without thousands marks."];
    for text in ["-1.2.3", "+1,234.5", "-1.234,5", "-.."] {
        check(text, &many);
    }
    for (text, rest) in [
        ("+-0.012", "-0.012"),
        ("--0.012", "-0.012"),
        ("-−0.012", "−0.012"),
        ("0.012-", "0.012-"),
        ("±0.012", "±0.012"),
        ("-NaN", "NaN"),
        ("-inf", "inf"),
        ("-1e400", "1e400"),
        ("1e-3", "1e-3"),
        ("-0.o12", "0.o12"),
        ("-1 000.5", "1 000.5"),
        ("-1'000.5", "1'000.5"),
        ("-0.012 mm", "0.012 mm"),
        ("-.012", ".012"),
        ("-12.", "12."),
        ("-٢.٥", "٢.٥"),
    ] {
        let why = format!("“{rest}” is not a number: digits and one point only.");
        for unit in [MM, INCH] {
            let refused = EnteredDeviation::parse(text, unit).unwrap_err();
            assert_eq!(refused.to_string(), why);
        }
    }
    let fine = expect!["At most 6 decimals can be kept: leave off the rest."];
    check("-0.0000001", &fine);
    let large = expect!["That is larger than 10 m: is the point in its place?"];
    check("-10001", &large);
    check("+99999999999999999999999", &large);
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn no_text_makes_it_panic(text in any::<String>(), unit in any_unit()) {
        if let Ok(read) = EnteredDeviation::parse(&text, unit) {
            prop_assert!(read.deviation().quanta().abs() <= SIZE_MAX.quanta());
            prop_assert_eq!(EnteredDeviation::parse(read.text(), unit), Ok(read));
        }
    }

    #[test]
    fn a_sign_turns_a_deviation_round(read in deviation(), typed in "[+]?[0-9]{1,2}[.,][0-9]{1,6}") {
        let text = read.text().trim_start_matches('-');
        for text in [text, typed.trim_start_matches('+')] {
            let parse = |sign: &str| EnteredDeviation::parse(&format!("{sign}{text}"), read.unit());
            let size = Entered::parse(text, read.unit()).unwrap().size();
            let above = parse("+").unwrap();
            prop_assert_eq!(above.deviation(), Deviation::from_quanta(size.quanta()));
            prop_assert_eq!(&above, &parse("").unwrap());
            let below = parse("-").unwrap();
            prop_assert_eq!(below.deviation(), -above.deviation());
            prop_assert_eq!(&below, &parse("−").unwrap());
        }
    }
}
