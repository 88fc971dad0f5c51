//! What the keypad shows at each key.

use expect_test::{Expect, expect};
use fenderbench::present::{Keypad, Reads};

use crate::keypad::{HUNDREDTHS, MICROMETRES, TENTHS, THOUS, press};
use crate::make::size;

/// The face after each key: completed digits in brackets, a line for each
/// digit that is still open.
fn check(reads: Reads, near: Option<&str>, keys: &str, expect: &Expect) {
    let mut keypad = Keypad::new(reads.clone(), near.map(size));
    let face = |keypad: &Keypad| {
        let face = keypad.face();
        assert_eq!(face.unit, reads.unit.sign());
        assert_eq!(face.can_complete, near.is_some());
        let lead = match face.lead.as_str() {
            "" => String::new(),
            lead => format!("[{lead}]"),
        };
        format!("{lead}{}{}", face.typed, "_".repeat(face.open))
    };
    let mut faces = vec![face(&keypad)];
    for n in 0..keys.len() {
        press(&mut keypad, &keys[n..=n]);
        faces.push(face(&keypad));
    }
    expect.assert_eq(&faces.join("  "));
}

#[test]
fn completed_digits_stand_before_those_typed() {
    check(
        TENTHS,
        Some("1.9670 in"),
        "672",
        &expect![["[1.9]___  [1.9]6__  [1.9]67_  [1.9]672"]],
    );
    check(
        MICROMETRES,
        Some("49.990 mm"),
        "003",
        &expect![["[49.]___  [50.]0__  [50.]00_  [50.]003"]],
    );
    check(
        HUNDREDTHS,
        Some("49.99 mm"),
        "003",
        &expect![["[4]___  [5]0.__  [5]0.0_  [5]0.03"]],
    );
    check(
        THOUS,
        Some("1.967 in"),
        "972",
        &expect![["[1.]___  [1.]9__  [1.]97_  [1.]972"]],
    );
    check(
        MICROMETRES,
        Some("5.200 mm"),
        "199",
        &expect![["[5.]___  [5.]1__  [5.]19_  [5.]199"]],
    );
}

#[test]
fn back_opens_digits_again() {
    check(
        TENTHS,
        Some("1.9670 in"),
        "672<<3",
        &expect![["[1.9]___  [1.9]6__  [1.9]67_  [1.9]672  [1.9]67_  [1.9]6__  [1.9]63_"]],
    );
}

#[test]
fn a_number_in_full_shows_what_was_typed() {
    check(
        TENTHS,
        None,
        "1.9672",
        &expect![["  1  1.____  1.9___  1.96__  1.967_  1.9672"]],
    );
    check(TENTHS, None, ".96", &expect![["  0.____  0.9___  0.96__"]]);
    check(
        MICROMETRES,
        Some("49.990 mm"),
        "0w50.00",
        &expect![["[49.]___  [50.]0__    5  50  50.___  50.0__  50.00_"]],
    );
}

#[test]
fn near_the_turn_the_leading_digits_follow_what_can_still_come() {
    // 1.9170 to 2.0169 can come: 2.01__ is likelier after a 1, and 1.917_ after 17.
    check(
        TENTHS,
        Some("1.9670 in"),
        "175",
        &expect![["[1.9]___  [2.0]1__  [1.9]17_  [1.9]175"]],
    );
}
