//! The lines that drawings are made of, and some drawings line by line.

use expect_test::{Expect, expect};
use fenderbench::present::drawing;
use fenderbench::session::{Feature, Kind};

use crate::drawn::{engine, plates, stops};
use crate::make::station;

#[test]
fn the_lines_of_the_plates_are_well_formed() {
    let plates = plates();
    for line in plates.lines() {
        let (code, rest) = line.split_once(' ').unwrap();
        let is_whole = |word: &str| word.parse::<u8>().is_ok_and(|n| n <= 120);
        let mut words = rest.split(' ');
        match code {
            "=" => assert!(words.all(|kind| Kind::from_key(kind).is_some()), "{line}"),
            "p" | "t" | "a" | "c" | "f" => {
                let known = |c: char| c.is_ascii_digit() || "MLHVACSQTZmlhvacsqtz .-".contains(c);
                assert!(rest.starts_with('M') && rest.chars().all(known), "{line}");
            }
            "v" => assert!(!rest.is_empty()),
            "w" => assert!(
                words.by_ref().take(2).all(is_whole) && words.next().is_some(),
                "{line}"
            ),
            "V" | "H" => assert!(words.clone().count() == 2 && words.all(is_whole), "{line}"),
            "E" => assert!(words.clone().count() == 3 && words.all(is_whole), "{line}"),
            "L" => assert!(words.nth(1).is_some_and(is_whole), "{line}"),
            "s" => assert!(words.skip(2).take(2).all(is_whole), "{line}"),
            _ => panic!("{line}"),
        }
    }
}

fn check(at: &str, expect: &Expect) {
    let now = station(at);
    let drawn = drawing(&engine(), &stops(Feature::of(now)), now);
    let spots = drawn
        .spots
        .iter()
        .map(|s| format!("{} {:?} {:?}\n", s.station, s.at, s.on_end));
    let lines = drawn.markup.replace("><", ">\n<");
    expect.assert_eq(&format!("{}{lines}\n", spots.collect::<String>()));
}

#[test]
fn a_small_end_as_drawn() {
    check(
        "small_end/1/whole/last/90",
        &expect![[r#"
        small_end/1/whole/first/0 [910, 242] None
        small_end/1/whole/first/90 [910, 340] None
        small_end/1/whole/last/0 [1030, 242] Some([360, 130])
        small_end/1/whole/last/90 [1030, 340] Some([570, 340])
        <svg viewBox="0 0 120 120" role="img" aria-label="Small end 1 from the first end and from the side: last end, across the rod now; 1 of 4 places read">
        <path class="part" d="M9 34a27 27 0 1 0 54 0a27 27 0 1 0-54 0Z"/>
        <path class="part" d="M19 34a17 17 0 1 0 34 0a17 17 0 1 0-34 0ZM28 60V116M44 60V116"/>
        <path class="thin" d="M15 34a21 21 0 1 0 42 0a21 21 0 1 0-42 0Z"/>
        <path class="thin" d="M28 116q4 3 8 0t8 0"/>
        <path class="axis" d="M36 2V120M4 34H70"/>
        <path class="cut" d="M86 7H108V13H86ZM86 55H108V61H86ZM90 61H104V116H90Z"/>
        <path class="full" d="M86 13H108V17H86ZM86 51H108V55H86Z"/>
        <path class="part" d="M86 7H108V61H86ZM90 61V116M104 61V116"/>
        <path class="axis" d="M76 34H116"/>
        <path class="full" d="M74 29l9 5-9 5Z"/>
        <text x="73" y="49">first</text>
        <text x="36" y="112">rod</text>
        <path class="level" d="M 91.0 17.0L 91.0 51.0"/>
        <path class="level" d="M 91.0 17.0L 91.0 51.0"/>
        <path class="level now" d="M 103.0 17.0L 103.0 51.0"/>
        <path class="level" d="M 36.0 51.0L 36.0 17.0"/>
        <path class="level now" d="M 103.0 17.0L 103.0 51.0"/>
        <path class="level" d="M 19.0 34.0L 53.0 34.0"/>
        <path class="mark read" d="M 88.0 24.2a 3.0 3.0 0 1 0  6.0 0.0a 3.0 3.0 0 1 0  -6.0 0.0"/>
        <path class="mark open" d="M 88.0 34.0a 3.0 3.0 0 1 0  6.0 0.0a 3.0 3.0 0 1 0  -6.0 0.0"/>
        <path class="mark open" d="M 100.0 24.2a 3.0 3.0 0 1 0  6.0 0.0a 3.0 3.0 0 1 0  -6.0 0.0"/>
        <path class="mark open" d="M 33.0 13.0a 3.0 3.0 0 1 0  6.0 0.0a 3.0 3.0 0 1 0  -6.0 0.0"/>
        <path class="mark open now" d="M 98.8 34.0a 4.2 4.2 0 1 0  8.4 0.0a 4.2 4.2 0 1 0  -8.4 0.0"/>
        <path class="gauge" d="M 36.0 34.0L 25.5 34.0M 36.0 34.0L 46.5 34.0"/>
        <path class="head" d="M 101.0 34.0a 2.0 2.0 0 1 0  4.0 0.0a 2.0 2.0 0 1 0  -4.0 0.0M 19.0 34.0L 25.5 31.0L 25.5 37.0M 53.0 34.0L 46.5 37.0L 46.5 31.0"/>
        </svg>
    "#]],
    );
}

#[test]
fn a_ring_in_its_groove_as_drawn() {
    check(
        "top_ring_side/1/whole/centre/0",
        &expect![[r#"
        top_ring_side/1/whole/centre/0 [1040, 390] None
        <svg viewBox="0 0 120 120" role="img" aria-label="Top ring side clearance 1 cut through the grooves: in the groove now; 1 of 1 places read">
        <path class="cut" d="M10 8H78V26H50V42H78V58H50V74H78V90H50V108H78V116H10Q4 98 10 80T10 44 10 8Z"/>
        <path class="part" d="M10 8H78V26H50V42H78V58H50V74H78V90H50V108H78V116"/>
        <path class="thin" d="M10 8Q4 26 10 44T10 80 10 116"/>
        <text x="30" y="18">crown</text>
        <path class="part" d="M54 27H86V36H54Z"/>
        <path class="cut" d="M54 27H86V36H54Z"/>
        <path class="mark read now" d="M 99.8 39.0a 4.2 4.2 0 1 0  8.4 0.0a 4.2 4.2 0 1 0  -8.4 0.0"/>
        <path class="gauge" d="M 63.0 39.0L 58.5 39.0M118 39H60"/>
        <path class="head" d="M 52.0 39.0L 58.5 36.0L 58.5 42.0"/>
        </svg>
    "#]],
    );
}

#[test]
fn a_piston_as_drawn() {
    check(
        "piston/1/skirt/gauge_point/0",
        &expect![[r#"
        piston/1/skirt/gauge_point/0 [160, 820] Some([770, 320])
        <svg viewBox="0 0 120 120" role="img" aria-label="Piston 1 from the side and from above: skirt, square to the pin now; 1 of 1 places read">
        <path class="part" d="M12 8H52V16H50V19H52V25H50V28H52V34H50V38H52V104H42C42 92 39 86 32 86S22 92 22 104H12V38H14V34H12V28H14V25H12V19H14V16H12Z"/>
        <path class="thin" d="M12 16H52M12 19H52M12 25H52M12 28H52M12 34H52M12 38H52"/>
        <path class="part" d="M23 58a9 9 0 1 0 18 0a9 9 0 1 0-18 0Z"/>
        <path class="axis" d="M32 2V112M19 58H45"/>
        <path class="part" d="M73 32a17 17 0 1 0 34 0a17 17 0 1 0-34 0Z"/>
        <path class="thin" d="M84 17V47M96 17V47"/>
        <path class="axis" d="M90 8V58M70 32H110"/>
        <path class="full" d="M90 60l5 9h-10Z"/>
        <text x="90" y="77">first end</text>
        <text x="90" y="57">pin</text>
        <text x="32" y="116">skirt</text>
        <path class="level now" d="M 12.0 82.0L 52.0 82.0"/>
        <path class="level" d="M 107.0 32.0L 73.0 32.0"/>
        <path class="mark unasked" d="M 23.2 82.0a 0.8 0.8 0 1 0  1.6 0.0a 0.8 0.8 0 1 0  -1.6 0.0"/>
        <path class="mark unasked" d="M 31.2 82.0a 0.8 0.8 0 1 0  1.6 0.0a 0.8 0.8 0 1 0  -1.6 0.0"/>
        <path class="mark unasked" d="M 39.2 82.0a 0.8 0.8 0 1 0  1.6 0.0a 0.8 0.8 0 1 0  -1.6 0.0"/>
        <path class="mark read now" d="M 11.8 82.0a 4.2 4.2 0 1 0  8.4 0.0a 4.2 4.2 0 1 0  -8.4 0.0"/>
        <path class="gauge" d="M 1.0 82.0L 5.5 82.0M 63.0 82.0L 58.5 82.0M 118.0 32.0L 113.5 32.0M 62.0 32.0L 66.5 32.0"/>
        <path class="head" d="M 12.0 82.0L 5.5 85.0L 5.5 79.0M 52.0 82.0L 58.5 79.0L 58.5 85.0M 107.0 32.0L 113.5 29.0L 113.5 35.0M 73.0 32.0L 66.5 35.0L 66.5 29.0"/>
        </svg>
    "#]],
    );
}
