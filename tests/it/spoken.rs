//! What is said aloud.

use fenderbench::assess::assess;
use fenderbench::present::{Fender, Key, RouteView, aloud, last_read, route, spoken, view};
use fenderbench::quantity::Unit;
use fenderbench::session::{Field, Session};

use crate::make::{limit, measured, station};

#[test]
fn numbers_are_said_digit_by_digit() {
    for (text, expected) in [
        ("1.9672 in", "one point nine six seven two inch"),
        (
            "50.003\u{a0}mm",
            "five zero point zero zero three millimetres",
        ),
        ("−0.0005 in", "minus zero point zero zero zero five inch"),
        ("+0.012 mm", "plus zero point zero one two millimetres"),
        (
            "without that, 82.011 mm.",
            "without that, eight two point zero one one millimetres.",
        ),
        (
            "by 0.0003 in (too small)",
            "by zero point zero zero zero three inch (too small)",
        ),
        ("The size is 1.5.", "The size is one point five."),
        ("0.5 inside", "zero point five inside"),
        ("“82.01”, which", "“eight two point zero one”, which"),
    ] {
        assert_eq!(aloud(text), expected);
    }
}

#[test]
fn all_else_is_said_as_it_stands() {
    for text in [
        "",
        "Bore 12, top, 45° clockwise of thrust.",
        "in line with throw 1",
        "This gauge reads 3 decimals.",
        "Stop. Go on.",
        "82 mm",
    ] {
        assert_eq!(aloud(text), text);
    }
}

/// What is said at the station that comes next.
fn after(session: &Session, keys: &[Key]) -> String {
    let stops = route(session, &assess(session));
    let mut fender = Fender::start(session, &stops, None);
    for key in keys {
        fender.press(session, *key);
    }
    if !keys.is_empty() {
        assert!(fender.enter(session, "2026-05-04T09:08:07.006Z").is_none());
    }
    spoken(&view(session, &stops, &fender), last_read(session).as_ref())
}

fn inches(readings: &[(&str, &str)]) -> Session {
    let fields = vec![
        Field::DisplayUnit(Unit::Inch),
        limit("main_journal/size/new_low", "1.9670 in"),
        limit("main_journal/size/new_high", "1.9680 in"),
    ];
    measured(fields, readings)
}

const MAIN: &str = "main_journal/1/whole/first/0";

#[test]
fn after_a_reading_it_and_the_next_place_are_said() {
    let mut said = Vec::new();
    for value in ["1.9672 in", "1.9665 in"] {
        let session = inches(&[(MAIN, value)]);
        let stops = route(&session, &assess(&session));
        let mut fender = Fender::start(&session, &stops, None);
        fender.arrive(&session, station(MAIN));
        fender.go_on(&session, &stops);
        said.push(spoken(
            &view(&session, &stops, &fender),
            last_read(&session).as_ref(),
        ));
    }
    assert_eq!(
        said[0],
        "Main journal 1, first end, in line with throw 1: one point nine six seven two inch, \
         reads inside new limits. Next: Main journal 1, first end, across throw 1."
    );
    assert_eq!(
        said[1],
        "Main journal 1, first end, in line with throw 1: one point nine six six five inch, \
         reads outside new limits by zero point zero zero zero five inch (too small). \
         Next: Main journal 1, first end, across throw 1."
    );
}

/// Enough for leading digits to be completed.
const READ: [(&str, &str); 2] = [
    ("bore/1/whole/top/0", "82.003 mm"),
    ("bore/1/whole/top/90", "82.004 mm"),
];

#[test]
fn of_a_refusal_only_the_reason_is_said() {
    let session = measured(vec![], &READ);
    assert_eq!(
        after(&session, &[Key::Digit(1), Key::Digit(2)]),
        "Type the last 3 digits: 2 so far."
    );
}

#[test]
fn a_question_is_said_with_its_digits() {
    let session = measured(vec![], &READ);
    assert_eq!(
        after(&session, &[Key::Digit(2), Key::Digit(3), Key::Digit(0)]),
        "Looks like the key beside the right one: without that, eight two point zero three zero \
         millimetres."
    );
}

#[test]
fn at_the_start_the_place_is_said() {
    let session = measured(vec![], &[]);
    assert_eq!(after(&session, &[]), "Next: Bore 1, top, thrust.");
}

#[test]
fn the_hour_is_asked_for_and_the_end_is_told() {
    let asks = RouteView {
        asks_hour: true,
        ..RouteView::default()
    };
    assert_eq!(spoken(&asks, None), "At what hour was the most?");
    let end = RouteView {
        said: "Everything on the route is read.".to_owned(),
        ..RouteView::default()
    };
    assert_eq!(spoken(&end, None), end.said);
}
