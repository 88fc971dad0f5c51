//! Typed text → exact length.

use expect_test::{Expect, expect};
use fenderbench::quantity::{Entered, SIZE_MAX, Unit, show};
use proptest::prelude::*;

use crate::golden::golden;
use crate::make::{INCH, MM, exact, unit};

#[test]
fn units_are_whole_in_quanta() {
    for row in golden!("lengths.csv") {
        let entered = Entered::parse(row.get("text"), unit(row.get("unit"))).unwrap();
        let quanta = i128::from(entered.size().quanta());
        assert_eq!(quanta, row.whole("quanta"), "{}", row.place());
    }
}

#[test]
fn micrometer_lines_add_up() {
    for row in golden!("micrometers.csv") {
        let of = unit(row.get("unit"));
        let parts = row.get("parts").split('+');
        let sum: i64 = parts
            .map(|part| Entered::parse(part, of).unwrap().size().quanta())
            .sum();
        let total = Entered::parse(row.get("total"), of).unwrap();
        assert_eq!(sum, total.size().quanta(), "{}", row.place());
        let other = unit(row.get("other_unit"));
        let rounded = Entered::parse(row.get("other_rounded"), other).unwrap();
        let step = other.quanta() / 10_i64.pow(rounded.decimals().into());
        let away = (rounded.size() - total.size()).abs().quanta();
        assert!(2 * away <= step, "{}: {away} of {step}", row.place());
    }
}

fn check(text: &str, expect: &Expect) {
    let shown = |unit| match Entered::parse(text, unit) {
        Ok(entered) => format!("{entered} = {} quanta", entered.size().quanta()),
        Err(why) => why.to_string(),
    };
    let (mm, inch) = (shown(MM), shown(INCH));
    if mm == inch {
        expect.assert_eq(&mm);
    } else {
        expect.assert_eq(&format!("{mm} | {inch}"));
    }
}

#[test]
fn comma_and_point_are_the_same() {
    check(
        "50.003",
        &expect![["50.003 mm = 500030000 quanta | 50.003 in = 12700762000 quanta"]],
    );
    check(
        "50,003",
        &expect![["50.003 mm = 500030000 quanta | 50.003 in = 12700762000 quanta"]],
    );
    check(
        " 2.0 \n",
        &expect![["2.0 mm = 20000000 quanta | 2.0 in = 508000000 quanta"]],
    );
    check(
        "007",
        &expect![["007 mm = 70000000 quanta | 007 in = 1778000000 quanta"]],
    );
    check("0", &expect![["0 mm = 0 quanta | 0 in = 0 quanta"]]);
    assert_ne!(Entered::parse("2.0", MM), Entered::parse("2.00", MM));
    assert_eq!(Entered::parse("2,0", MM), Entered::parse("2.0", MM));
}

#[test]
fn what_is_no_length_is_refused_with_a_sentence() {
    let empty = expect![["Nothing was typed: type a number, as 49.98."]];
    for text in ["", " ", "\t\n", "\u{a0}"] {
        check(text, &empty);
    }
    check(
        "2.o",
        &expect![["“2.o” is not a number: digits and one point only."]],
    );
    check(
        "NaN",
        &expect![["“NaN” is not a number: digits and one point only."]],
    );
    check(
        "inf",
        &expect![["“inf” is not a number: digits and one point only."]],
    );
    check(
        "1e400",
        &expect![["“1e400” is not a number: digits and one point only."]],
    );
    check(
        "0x10",
        &expect![["“0x10” is not a number: digits and one point only."]],
    );
    check(
        "+2.0",
        &expect![["“+2.0” is not a number: digits and one point only."]],
    );
    check(
        "-2.0",
        &expect![["“-2.0” is not a number: digits and one point only."]],
    );
    check(
        "−2.0",
        &expect![["“−2.0” is not a number: digits and one point only."]],
    );
    check(
        "1 000.5",
        &expect![["“1 000.5” is not a number: digits and one point only."]],
    );
    check(
        "1'000.5",
        &expect![["“1'000.5” is not a number: digits and one point only."]],
    );
    check(
        "2 1/4",
        &expect![["“2 1/4” is not a number: digits and one point only."]],
    );
    check(
        "٢.٥",
        &expect![["“٢.٥” is not a number: digits and one point only."]],
    );
    check(
        "２.５",
        &expect![["“２.５” is not a number: digits and one point only."]],
    );
    check(
        "2.5 mm",
        &expect![["“2.5 mm” is not a number: digits and one point only."]],
    );
    check(
        ".",
        &expect![["“.” is not a number: digits and one point only."]],
    );
    check(
        ".5",
        &expect![["“.5” is not a number: digits and one point only."]],
    );
    check(
        "5.",
        &expect![["“5.” is not a number: digits and one point only."]],
    );
}

#[test]
fn thousands_marks_are_refused() {
    let many = expect![["More than one point or comma: type the number without thousands marks."]];
    for text in ["1.2.3", "1,234.5", "1.234,5", "1,234,567", "..", "1..2"] {
        check(text, &many);
    }
}

#[test]
fn what_is_too_fine_or_too_large_is_refused() {
    let fine = expect![["At most 6 decimals can be kept: leave off the rest."]];
    check("1.1234567", &fine);
    check("0.0078125", &fine);
    check("1.00000000000000000000", &fine);
    let large = expect![["That is larger than 10 m: is the point in its place?"]];
    check("10001", &large);
    check("99999999999999999999999999999999999999999999", &large);
    assert_eq!(Entered::parse("10000", MM).unwrap().size(), SIZE_MAX);
    assert!(Entered::parse("10000.000001", MM).is_err());
    assert!(Entered::parse("393.700787", INCH).is_ok());
    assert!(Entered::parse("393.700788", INCH).is_err());
}

/// A decimal text without needless zeros before it, and its decimals.
fn decimal() -> impl Strategy<Value = (String, u8)> {
    (0_u32..390, "[0-9]{0,6}").prop_map(|(whole, decimals)| {
        let places = u8::try_from(decimals.len()).unwrap();
        let text = match places {
            0 => whole.to_string(),
            _ => format!("{whole}.{decimals}"),
        };
        (text, places)
    })
}

fn any_unit() -> impl Strategy<Value = Unit> {
    prop_oneof![Just(MM), Just(INCH)]
}

proptest! {
    #![proptest_config(crate::generators::config(512))]

    #[test]
    fn what_is_typed_is_shown_again((text, places) in decimal(), unit in any_unit()) {
        let entered = Entered::parse(&text, unit).unwrap();
        prop_assert_eq!(entered.text(), &text);
        prop_assert_eq!(entered.decimals(), places);
        let shown = show(entered.size().into(), unit, places);
        prop_assert!(shown.exact);
        prop_assert_eq!(shown.text, text);
    }

    #[test]
    fn inch_and_millimetre_entries_agree(tenths in 0_i64..3_900_000) {
        let inch = format!("{}.{:04} in", tenths / 10_000, tenths % 10_000);
        // 0.0001 in is 0.00254 mm.
        let count = tenths * 254;
        let mm = format!("{}.{:05} mm", count / 100_000, count % 100_000);
        prop_assert_eq!(exact(&inch), exact(&mm));
        prop_assert_eq!(show(exact(&mm), INCH, 4).text + " in", inch);
    }

    #[test]
    fn no_text_makes_it_panic(text in any::<String>(), unit in any_unit()) {
        if let Ok(entered) = Entered::parse(&text, unit) {
            prop_assert!(entered.size() <= SIZE_MAX);
            prop_assert_eq!(Entered::parse(entered.text(), unit), Ok(entered));
        }
    }

    #[test]
    fn a_longer_number_is_no_other_number(digits in "[0-9.,]{0,24}", unit in any_unit()) {
        if let Ok(entered) = Entered::parse(&digits, unit) {
            let points = digits.matches(['.', ',']).count();
            prop_assert!(points <= 1);
            prop_assert_eq!(entered.text(), digits.replace(',', "."));
        }
    }
}
