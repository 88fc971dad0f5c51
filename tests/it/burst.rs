//! A gauge that types, told from a person, and what its number becomes.

use fenderbench::assess::assess;
use fenderbench::present::{Burst, Fender, Key, Typist, gauge_typed, route};
use fenderbench::session::{Edit, Field, Indication, Kind, Sense, Session};
use proptest::prelude::*;

use crate::gauges::dialled;
use crate::make::{document, measured, station};

const BORE: &str = "bore/1/whole/top/0";
const TAKEN: &str = "2026-05-04T09:08:07.006Z";

/// The text typed with the same pause before each character and before the
/// key that ends it: what was known at each character, and at the end.
fn typed(text: &str, pause_ms: u64) -> (Vec<Typist>, Option<String>) {
    let mut burst = Burst::default();
    let mut now_ms = 1_000;
    let mut at_each = Vec::new();
    for c in text.chars() {
        at_each.push(burst.typed(c, now_ms));
        now_ms += pause_ms;
    }
    (at_each, burst.ended(now_ms))
}

#[test]
fn a_gauge_is_known_at_its_fourth_character() {
    let (at_each, end) = typed("82.003", 2);
    let expected = [
        Typist::Person,
        Typist::Unknown,
        Typist::Unknown,
        Typist::Gauge,
        Typist::Gauge,
        Typist::Gauge,
    ];
    assert_eq!(at_each, expected);
    assert_eq!(end.as_deref(), Some("82.003"));
}

#[test]
fn pauses_up_to_35_ms_are_a_gauges() {
    assert_eq!(typed("1.9672", 35).1.as_deref(), Some("1.9672"));
    let (at_each, end) = typed("1.9672", 36);
    assert_eq!(at_each, vec![Typist::Person; 6]);
    assert_eq!(end, None);
}

#[test]
fn three_characters_are_no_gauge() {
    assert_eq!(typed("672", 2).1, None);
    assert_eq!(typed("1.96", 2).1.as_deref(), Some("1.96"));
}

#[test]
fn a_late_enter_is_a_persons() {
    let mut burst = Burst::default();
    for (n, c) in "1.9672".chars().enumerate() {
        burst.typed(c, 2 * n as u64);
    }
    assert_eq!(burst.ended(500), None);
}

#[test]
fn one_burst_leaves_nothing_to_the_next() {
    let mut burst = Burst::default();
    let mut now_ms = 0;
    for text in ["82.003", "82.011", "+0082.017"] {
        for c in text.chars() {
            burst.typed(c, now_ms);
            now_ms += 2;
        }
        assert_eq!(burst.ended(now_ms).as_deref(), Some(text));
        now_ms += 2;
    }
}

#[test]
fn a_key_left_by_a_person_is_no_part_of_a_burst() {
    let mut burst = Burst::default();
    assert_eq!(burst.typed('6', 0), Typist::Person);
    for (n, c) in "82.003".chars().enumerate() {
        burst.typed(c, 400 + 2 * n as u64);
    }
    assert_eq!(burst.ended(414).as_deref(), Some("82.003"));
}

proptest! {
    /// No person is taken for a gauge, however the keys fall.
    #[test]
    fn slow_typing_is_never_a_gauges(
        pauses in prop::collection::vec(36_u64..2_000, 1..40),
        keys in "[0-9.,+-]{40}",
    ) {
        let mut burst = Burst::default();
        let mut now_ms = 0;
        for (c, pause) in keys.chars().zip(pauses) {
            prop_assert_eq!(burst.typed(c, now_ms), Typist::Person);
            now_ms += pause;
        }
        prop_assert_eq!(burst.ended(now_ms), None);
    }

    /// Every number typed with pauses of a gauge comes out whole, after
    /// anything a person had begun.
    #[test]
    fn fast_typing_is_taken_whole(
        text in "[+-]?[0-9]{1,4}[.,][0-9]{2,5}( ?(mm|in))?",
        begun in "[0-9]{0,3}",
        pauses in prop::collection::vec(0_u64..=35, 20),
    ) {
        let mut burst = Burst::default();
        for c in begun.chars() {
            burst.typed(c, 0);
        }
        let mut now_ms = 1_000;
        for (c, pause) in text.chars().zip(pauses) {
            burst.typed(c, now_ms);
            now_ms += pause;
        }
        prop_assert_eq!(burst.ended(now_ms), Some(text));
    }
}

/// The fender screen of this session at its first station, with these keys
/// typed by a person already.
fn fender(session: &Session, keys: &[Key]) -> Fender {
    let stops = route(session, &assess(session));
    let mut fender = Fender::start(session, &stops, None);
    fender.arrive(session, station(BORE));
    for key in keys {
        fender.press(session, *key);
    }
    fender
}

/// What a gauge's text comes to at ENTER: the indication, or what is said.
fn comes_to(session: &Session, text: &str) -> Result<Indication, String> {
    let mut fender = fender(session, &[Key::Digit(4), Key::Digit(4), Key::Digit(4)]);
    let told = |fender: &Fender| {
        let said = fender.asked().or(fender.said()).unwrap_or_default();
        Err(said.to_owned())
    };
    if !gauge_typed(&mut fender, session, text, true) {
        assert!(fender.is_refused(), "{text}");
        // Nothing of it stays to be entered.
        assert_eq!(fender.draft().unwrap().typed, "", "{text}");
        return told(&fender);
    }
    match fender.enter(session, TAKEN) {
        Some(Edit::Add(reading)) => Ok(reading.entered),
        Some(Edit::Batch(edits)) => match edits.last() {
            Some(Edit::Add(reading)) => Ok(reading.entered.clone()),
            other => panic!("{other:?}"),
        },
        Some(other) => panic!("{other:?}"),
        None => told(&fender),
    }
}

fn shown(session: &Session, text: &str) -> String {
    match comes_to(session, text) {
        Ok(entered) => entered.to_string(),
        Err(why) => format!("! {why}"),
    }
}

#[test]
fn a_size_counts_as_it_stands_and_is_not_completed() {
    // Another bore was read, so that a person types three digits.
    let session = measured(vec![], &[("bore/2/whole/top/0", "82.003 mm")]);
    for (text, expected) in [
        ("82.011", "82.011 mm"),
        ("82,011", "82.011 mm"),
        ("+82.011", "82.011 mm"),
        ("+0082.011", "82.011 mm"),
        ("82.011mm", "82.011 mm"),
        ("82.011 MM", "82.011 mm"),
        ("082,000", "82.000 mm"),
    ] {
        assert_eq!(shown(&session, text), expected, "{text}");
    }
}

#[test]
fn what_no_person_may_type_no_gauge_may() {
    let session = measured(vec![], &[("bore/2/whole/top/0", "82.003 mm")]);
    for (text, expected) in [
        ("82.0111", "! This gauge reads 3 decimals."),
        (
            "82.01",
            "! This gauge reads 3 decimals: type all of them, zeros too.",
        ),
        ("-82.011", "! A size has no sign."),
        (
            "820.011",
            "! 820.011 mm is no bore. Is the point in its place?",
        ),
        ("8200.11", "! Now the decimal point."),
        (
            "82.511",
            "! Looks like one turn of the thimble off: without that, 82.011 mm.",
        ),
        (
            "82.011 in",
            "! The gauge typed “82.011 in”, but is set up in another unit.",
        ),
        (
            "82011",
            "! The gauge typed “82011”, which is no number with a point.",
        ),
        (
            "8.2.011",
            "! The gauge typed “8.2.011”, which is no number with a point.",
        ),
        (
            "82.0+1",
            "! The gauge typed “82.0+1”, which is no number with a point.",
        ),
        (
            "82.",
            "! The gauge typed “82.”, which is no number with a point.",
        ),
        (
            ".0112",
            "! The gauge typed “.0112”, which is no number with a point.",
        ),
        (
            "82.011mmmm",
            "! The gauge typed “82.011mmmm”, but is set up in another unit.",
        ),
        ("", "! The gauge typed “”, which is no number with a point."),
    ] {
        assert_eq!(shown(&session, text), expected, "{text}");
    }
}

#[test]
fn a_dial_types_its_deviation() {
    let (document, _) = dialled(Sense::PlusLarger);
    let session = document.session();
    for (text, expected) in [
        ("+0.012", "+0.012 mm"),
        ("-0.005", "−0.005 mm"),
        ("0,003", "+0.003 mm"),
        ("-00.0050", "−0.005 mm"),
        ("0.000", "0.000 mm"),
        ("-0.005mm", "−0.005 mm"),
    ] {
        assert_eq!(shown(session, text), expected, "{text}");
    }
    for (text, expected) in [
        (
            "0.0005",
            "! The gauge typed “0.0005”, which lies between two graduations.",
        ),
        (
            "-0.012 in",
            "! The gauge typed “-0.012 in”, but is set up in another unit.",
        ),
        ("90.000", "! At most 4 digits of graduations."),
    ] {
        assert_eq!(shown(session, text), expected, "{text}");
    }
}

#[test]
fn what_has_come_so_far_says_nothing_yet() {
    let session = document(vec![]).session().clone();
    let mut fender = fender(&session, &[]);
    for text in ["+008", "+0082", "+0082."] {
        assert!(!gauge_typed(&mut fender, &session, text, false), "{text}");
        assert_eq!(fender.said(), None, "{text}");
    }
    assert!(gauge_typed(&mut fender, &session, "+0082.0", false));
    assert_eq!(fender.face().unwrap().typed, "82.0");
    assert!(gauge_typed(&mut fender, &session, "+0082.003", true));
    assert!(fender.enter(&session, TAKEN).is_some());
}

#[test]
fn a_gauge_finds_a_question_as_a_person_does() {
    let session = measured(
        vec![Field::Measure(Kind::RunOut, true)],
        &[("run_out/2/whole/centre/0", "0.03 mm")],
    );
    let stops = route(&session, &assess(&session));
    let mut fender = Fender::start(&session, &stops, None);
    fender.arrive(&session, station("run_out/2/whole/centre/0"));
    fender.after(&session, &stops);
    assert!(fender.asks_hour());
    assert!(!gauge_typed(&mut fender, &session, "0.040", true));
    assert!(fender.said().unwrap().starts_with("First the hour"));
}
