//! Where reading a micrometer goes wrong, in words.

use expect_test::{Expect, expect};
use fenderbench::quantity::{Entered, Unit};

use crate::instrument::micrometer;
use crate::make::{INCH, MM};

#[test]
fn it_is_said_where_reading_goes_wrong() {
    let check = |of: Unit, grain: i64, start: &str, at: i64, expect: &Expect| {
        let set = micrometer(of, grain, start).set_at(at);
        expect.assert_eq(&[vec![set.text()], set.warnings()].concat().join("\n"));
    };
    check(
        INCH,
        1,
        "2",
        2_683,
        &expect![[r#"
        2.2683
        The numbers of thimble and vernier grow upwards. Else 2.2687 would be read."#]],
    );
    check(
        INCH,
        1,
        "1",
        9_740,
        &expect![[r#"
        1.9740
        A line of the sleeve counts once the thimble has passed 0. Else 1.9990 would be read."#]],
    );
    check(
        INCH,
        1,
        "0",
        261,
        &expect![[r#"
        0.0261
        A line of the sleeve that is out counts, right at the thimble's edge too. Else 0.0011 would be read.
        Of the thimble the line just passed counts, not the nearest. Else 0.0251 would be read.
        The numbers of thimble and vernier grow upwards. Else 0.0269 would be read."#]],
    );
    check(
        MM,
        1,
        "25",
        24_968,
        &expect![[r#"
        49.968
        A line of the sleeve counts once the thimble has passed 0. Else 50.468 would be read.
        Of the thimble the line just passed counts, not the nearest. Else 49.978 would be read.
        The numbers of thimble and vernier grow upwards. Else 49.962 would be read."#]],
    );
    check(
        MM,
        10,
        "0",
        520,
        &expect![[r#"
        0.52
        A line of the sleeve that is out counts, right at the thimble's edge too. Else 0.02 would be read.
        The numbers of thimble and vernier grow upwards. Else 0.48 would be read."#]],
    );
    check(MM, 10, "0", 0, &expect!["0.00"]);
}

#[test]
fn a_wrong_reading_is_told_by_what_it_looks_like() {
    let check = |of: Unit, grain: i64, start: &str, at: i64, read: &str, expect: &Expect| {
        let set = micrometer(of, grain, start).set_at(at);
        let one = if of == INCH { 25_400 } else { 10_000 };
        let read = Entered::parse(read, of).unwrap().size().quanta() / one;
        expect.assert_eq(&format!("{}: {}", set.text(), set.mistake(read)));
    };
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2933",
        &expect![
            "2.2683: One turn of the thimble too much, 0.025 in. A line of the sleeve counts once the thimble has passed 0."
        ],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2433",
        &expect![
            "2.2683: One turn of the thimble too little, 0.025 in. A line of the sleeve that is out counts, right at the thimble's edge too."
        ],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.1683",
        &expect![
            "2.2683: One number of the sleeve too little, 0.1 in. Take the last number that is out, then the lines after it."
        ],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.3183",
        &expect![
            "2.2683: Two lines of the sleeve too much, 0.05 in. Take the last number that is out, then the lines after it."
        ],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "3.2683",
        &expect!["2.2683: One range too much, 1 in."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "0.2683",
        &expect!["2.2683: The start of the range was left out."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2693",
        &expect![
            "2.2683: One line of the thimble too much, 0.001 in. Of the thimble the line just passed counts, not the nearest."
        ],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2687",
        &expect!["2.2683: The numbers of thimble and vernier grow upwards."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2623",
        &expect!["2.2683: The numbers of thimble and vernier grow upwards."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2723",
        &expect!["2.2683: The numbers of thimble and vernier grow upwards."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2685",
        &expect!["2.2683: The vernier line that counts goes on straight as a thimble line."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.2863",
        &expect!["2.2683: Two digits changed places."],
    );
    check(
        INCH,
        1,
        "2",
        2_683,
        "2.7777",
        &expect!["2.2683: Go through it step by step."],
    );
    check(
        MM,
        1,
        "50",
        5_783,
        "55.283",
        &expect![
            "55.783: One turn of the thimble too little, 0.5 mm. A line of the sleeve that is out counts, right at the thimble's edge too."
        ],
    );
    check(
        MM,
        1,
        "50",
        5_783,
        "54.783",
        &expect![
            "55.783: One millimetre too little, 1 mm. Take the last number that is out, then the lines after it."
        ],
    );
    check(
        MM,
        1,
        "50",
        5_783,
        "60.783",
        &expect![
            "55.783: One number of the sleeve too much, 5 mm. Take the last number that is out, then the lines after it."
        ],
    );
    check(
        MM,
        10,
        "50",
        5_780,
        "55.79",
        &expect![
            "55.78: One line of the thimble too much, 0.01 mm. Of the thimble the line just passed counts, not the nearest."
        ],
    );
    check(
        MM,
        10,
        "50",
        5_780,
        "55.87",
        &expect!["55.78: Two digits changed places."],
    );
}
