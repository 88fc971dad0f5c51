//! Numbers typed in full or completed from their last digits.

use expect_test::{Expect, expect};
use fenderbench::present::{Key, Keypad, Pressed, Reads};
use fenderbench::quantity::{Entered, Exact, Size, Unit};
use fenderbench::session::{Indication, Kind};
use proptest::prelude::*;
use proptest::sample::select;

use crate::golden::golden;
use crate::make::{INCH, MM, size, unit};

pub const TENTHS: Reads = reads(INCH, 4);
pub const THOUS: Reads = reads(INCH, 3);
pub const MICROMETRES: Reads = reads(MM, 3);
pub const HUNDREDTHS: Reads = reads(MM, 2);

const fn reads(unit: Unit, decimals: u8) -> Reads {
    Reads {
        kind: Kind::Bore,
        unit,
        decimals,
        dial: None,
    }
}

/// Presses keys: digits, a point, `<` for back, `w` for whole. What was not
/// taken is told.
pub fn press(keypad: &mut Keypad, keys: &str) -> Vec<String> {
    let mut refusals = Vec::new();
    for c in keys.chars() {
        let key = match c {
            '.' => Key::Point,
            '<' => Key::Back,
            's' => Key::Sign,
            'w' => Key::Whole,
            _ => Key::Digit(u8::try_from(c.to_digit(10).unwrap()).unwrap()),
        };
        let before = keypad.clone();
        if let Pressed::Refused(why) = keypad.press(key) {
            assert_eq!(*keypad, before);
            refusals.push(why);
        }
    }
    refusals
}

#[test]
fn completes_to_the_nearest() {
    for row in golden!("keypad.csv") {
        let unit = unit(row.get("unit"));
        let graduation = Entered::parse(row.get("graduation"), unit).unwrap();
        let near = Entered::parse(row.get("near"), unit).unwrap().size();
        let mut keypad = Keypad::new(reads(unit, graduation.decimals()), Some(near));
        assert_eq!(press(&mut keypad, row.get("digits")), [""; 0]);
        let entered = entered(&keypad).unwrap();
        assert_eq!(entered.text(), row.get("entered"), "{}", row.place());
        assert_eq!(entered.unit(), unit);
    }
}

/// The size a keypad gives that has no dial.
fn entered(keypad: &Keypad) -> Result<Entered, String> {
    keypad.enter().map(|indication| match indication {
        Indication::Size(entered) => entered,
        Indication::Deviation(by) => panic!("a deviation: {by}"),
    })
}

fn check(reads: Reads, near: Option<&str>, keys: &str, expect: &Expect) {
    let mut keypad = Keypad::new(reads, near.map(size));
    let mut said = press(&mut keypad, keys);
    said.push(match keypad.enter() {
        Ok(entered) => format!("→ {entered}"),
        Err(why) => format!("✗ {why}"),
    });
    expect.assert_eq(&said.join("\n"));
}

#[test]
fn the_first_number_is_typed_in_full() {
    check(TENTHS, None, "1.9672", &expect![["→ 1.9672 in"]]);
    check(MICROMETRES, None, "49.990", &expect![["→ 49.990 mm"]]);
    check(HUNDREDTHS, None, "49.99", &expect![["→ 49.99 mm"]]);
    check(TENTHS, None, ".9672", &expect![["→ 0.9672 in"]]);
    check(TENTHS, None, "1.9677<2", &expect![["→ 1.9672 in"]]);
    check(
        TENTHS,
        None,
        "w1.9672",
        &expect![[r#"
            Typed in full until two numbers agree: from then on, three digits do.
            → 1.9672 in"#]],
    );
    check(
        TENTHS,
        None,
        "",
        &expect!["✗ Nothing is typed yet: type the reading first."],
    );
    check(
        TENTHS,
        None,
        "<<<",
        &expect!["✗ Nothing is typed yet: type the reading first."],
    );
    check(
        TENTHS,
        None,
        ".",
        &expect![["✗ This gauge reads 4 decimals: type all of them, zeros too."]],
    );
}

#[test]
fn a_number_in_full_has_all_decimals_of_the_gauge() {
    let short = expect![["✗ This gauge reads 4 decimals: type all of them, zeros too."]];
    for keys in ["1", "1.", "1.9", "1.967"] {
        check(TENTHS, None, keys, &short);
    }
    check(
        MICROMETRES,
        None,
        "49.99",
        &expect![["✗ This gauge reads 3 decimals: type all of them, zeros too."]],
    );
    check(
        THOUS,
        None,
        "1.9672",
        &expect![[r#"
            This gauge reads 3 decimals: ENTER, or take one back.
            → 1.967 in"#]],
    );
    check(
        MICROMETRES,
        None,
        "1000",
        &expect![[r#"
            Three digits stand before the point at most: now the point.
            ✗ This gauge reads 3 decimals: type all of them, zeros too."#]],
    );
    check(
        MICROMETRES,
        None,
        "49.9.90",
        &expect![[r#"
            The point is there already: type the decimals.
            → 49.990 mm"#]],
    );
}

#[test]
fn no_part_of_an_engine_has_this_size() {
    check(
        TENTHS,
        None,
        "0.1967",
        &expect!["✗ 0.1967 in is no bore: 0.2 to 23.6 in can be. Is the point in its place?"],
    );
    check(
        MICROMETRES,
        None,
        "4.999",
        &expect!["✗ 4.999 mm is no bore: 5 to 600 mm can be. Is the point in its place?"],
    );
    check(MICROMETRES, None, "5.000", &expect![["→ 5.000 mm"]]);
    check(MICROMETRES, None, "600.000", &expect![["→ 600.000 mm"]]);
    check(
        MICROMETRES,
        None,
        "600.001",
        &expect!["✗ 600.001 mm is no bore: 5 to 600 mm can be. Is the point in its place?"],
    );
    check(
        TENTHS,
        None,
        "49.9900",
        &expect!["✗ 49.9900 in is no bore: 0.2 to 23.6 in can be. Is the point in its place?"],
    );
    check(
        MICROMETRES,
        None,
        "000.000",
        &expect!["✗ 000.000 mm is no bore: 5 to 600 mm can be. Is the point in its place?"],
    );
}

#[test]
fn after_that_the_last_digits_are_enough() {
    let near = Some("1.9670 in");
    check(TENTHS, near, "672", &expect![["→ 1.9672 in"]]);
    check(
        TENTHS,
        near,
        "",
        &expect![["✗ Type the last 3 digits: 0 so far."]],
    );
    check(
        TENTHS,
        near,
        "67",
        &expect![["✗ Type the last 3 digits: 2 so far."]],
    );
    check(
        TENTHS,
        near,
        "6721",
        &expect![["3 digits are typed: ENTER, or take one back.\n→ 1.9672 in"]],
    );
    check(
        TENTHS,
        near,
        "6.72",
        &expect![["The point is set for you: type the digits.\n→ 1.9672 in"]],
    );
    check(TENTHS, near, "671<2", &expect![["→ 1.9672 in"]]);
    check(TENTHS, near, "67w2.0000", &expect![["→ 2.0000 in"]]);
    check(TENTHS, near, "w2.0w672", &expect![["→ 1.9672 in"]]);
}

#[test]
fn three_digits_are_enough_wherever_anything_is_plausible() {
    // Near the smallest sizes the nearest value above zero counts.
    check(HUNDREDTHS, Some("5.00 mm"), "000", &expect![["→ 10.00 mm"]]);
    check(THOUS, Some("0.197 in"), "800", &expect![["→ 0.800 in"]]);
    check(
        HUNDREDTHS,
        Some("5.00 mm"),
        "001",
        &expect!["✗ 0.01 mm is no bore: 5 to 600 mm can be. Is the point in its place?"],
    );
}

fn any_reads() -> impl Strategy<Value = Reads> {
    select(vec![TENTHS, THOUS, MICROMETRES, HUNDREDTHS])
}

/// What is plausible need not be a whole number of graduations: the gauge
/// may have been described anew.
fn near() -> impl Strategy<Value = Size> {
    let quanta = prop_oneof![
        127_000_000_i64..6_000_000_000,
        (50_i64..3000).prop_map(|n| n * 1_000_000),
        (5_000_i64..200_000).prop_map(|n| n * 25_400),
    ];
    quanta.prop_map(Size::from_quanta)
}

proptest! {
    #![proptest_config(crate::generators::config(2048))]

    #[test]
    fn a_completed_number_is_the_nearest_that_ends_so(
        reads in any_reads(),
        near in near(),
        digits in "[0-9]{3}",
    ) {
        let span = Exact::new(
            i128::from(reads.unit.quanta()) * 1000,
            10_i128.pow(reads.decimals.into()),
        );
        let mut keypad = Keypad::new(reads.clone(), Some(near));
        prop_assert!(press(&mut keypad, &digits).is_empty());
        let face = keypad.face();
        prop_assert_eq!(face.open, 0);
        let shown = format!("{}{}", face.lead, face.typed);
        match entered(&keypad) {
            Ok(entered) => {
                let away = (Exact::from(entered.size()) - near.into()).abs();
                // No other number above zero with this ending is nearer.
                let least = Exact::from(entered.size()) <= span;
                prop_assert!(away + away <= span || least, "{} near {:?}", entered, near);
                let plain = entered.text().replace('.', "");
                prop_assert!(plain.ends_with(&digits));
                prop_assert_eq!(entered.decimals(), reads.decimals);
                prop_assert_eq!(entered.unit(), reads.unit);
                prop_assert_eq!(shown, entered.text());
            }
            // Refused only for the size it comes to.
            Err(why) => prop_assert!(why.starts_with(&shown) && why.contains("is no bore"), "{}", why),
        }
    }

    #[test]
    fn typed_keys_survive_a_reload(
        reads in any_reads(),
        near in prop::option::of(near()),
        keys in "[0-9.<w]{0,10}",
    ) {
        let mut keypad = Keypad::new(reads.clone(), near);
        for at in 0..=keys.len() {
            let again = Keypad::resumed(reads.clone(), near, keypad.is_whole(), keypad.typed());
            prop_assert_eq!(&again, &keypad);
            prop_assert_eq!(again.face(), keypad.face());
            press(&mut keypad, keys.get(at..=at).unwrap_or_default());
        }
    }

    #[test]
    fn what_is_entered_is_what_was_typed(reads in any_reads(), keys in "[0-9]{0,2}\\.[0-9]{0,5}") {
        let mut keypad = Keypad::new(reads.clone(), None);
        let refused = press(&mut keypad, &keys).len();
        if let Ok(entered) = entered(&keypad) {
            let kept = &keys[..keys.len() - refused];
            let zero = if kept.starts_with('.') { "0" } else { "" };
            prop_assert_eq!(entered.text(), format!("{zero}{kept}"));
            prop_assert_eq!(entered.decimals(), reads.decimals);
        }
    }

    #[test]
    fn any_stored_text_can_be_resumed(
        reads in any_reads(),
        near in prop::option::of(near()),
        whole in any::<bool>(),
        typed in any::<String>(),
    ) {
        let keypad = Keypad::resumed(reads, near, whole, &typed);
        let _ = keypad.enter();
        prop_assert!(keypad.typed().len() <= 10);
        prop_assert_eq!(keypad.face().can_complete, near.is_some());
    }
}
