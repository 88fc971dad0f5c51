//! The fender screen: which touches count, what is announced, and where
//! undoing leads.

use fenderbench::assess::assess;
use fenderbench::present::{
    Draft, Fender, Purpose, RouteView, Touches, entry, last_read, route, view,
};
use fenderbench::quantity::Entered;
use fenderbench::session::{
    Document, Edit, Field, Gauge, GaugeKind, Kind, RouteChoice, Session, Station,
};
use proptest::prelude::*;

use crate::generators::config;
use crate::make::{MM, document, edited, length, limit, measured, read, session, station};
use crate::route::single;

const TAKEN: &str = "2026-03-14T09:00:00Z";

/// Which of these contacts count: keys with milliseconds.
fn counted(contacts: &[(char, u64)]) -> String {
    let mut touches = Touches::default();
    let contacts = contacts.iter();
    let counted = contacts.filter(|(key, at_ms)| touches.counts(*key, *at_ms));
    counted.map(|(key, _)| *key).collect()
}

#[test]
fn a_second_contact_and_a_bounce_are_no_touch() {
    assert_eq!(counted(&[('6', 0), ('7', 49)]), "6");
    assert_eq!(counted(&[('6', 0), ('7', 50)]), "67");
    assert_eq!(counted(&[('6', 1_000), ('6', 1_079)]), "6");
    assert_eq!(counted(&[('6', 1_000), ('6', 1_080)]), "66");
    // What goes on bouncing is one touch, however long.
    assert_eq!(counted(&[('6', 0), ('6', 60), ('6', 120), ('6', 180)]), "6");
    // The side of the hand after the finger does not stop the next digit.
    assert_eq!(
        counted(&[('6', 0), ('3', 20), ('6', 150), ('7', 300)]),
        "667"
    );
    // A clock that goes back is no finger.
    assert_eq!(counted(&[('6', 500), ('7', 400)]), "6");
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn no_two_touches_that_count_lie_closer_than_a_finger_can(
        gaps in prop::collection::vec((0_u64..200, 0_u8..3), 1..40),
    ) {
        let mut touches = Touches::default();
        let mut at_ms = 0;
        let mut last: Option<(u64, u8)> = None;
        for (gap, key) in gaps {
            at_ms += gap;
            if touches.counts(key, at_ms) {
                if let Some((before, other)) = last {
                    let least = if other == key { 80 } else { 50 };
                    prop_assert!(least <= at_ms - before);
                }
                last = Some((at_ms, key));
            } else {
                prop_assert!(gap < 80);
            }
        }
    }
}

fn shown(session: &Session, at: &str) -> RouteView {
    let stops = route(session, &assess(session));
    let draft = Draft::to_read(station(at), Purpose::Add);
    view(
        session,
        &stops,
        &Fender::start(session, &stops, Some(&draft)),
    )
}

#[test]
fn the_next_gauge_is_told_at_the_last_place_before_it() {
    let bores = [
        ("bore/1/whole/top/0", "82.010 mm"),
        ("bore/1/whole/top/90", "82.010 mm"),
        ("bore/1/whole/bottom/0", "82.010 mm"),
    ];
    let last = "bore/1/whole/bottom/90";
    let gauge = |route: RouteChoice, readings: &[(&str, &str)], at: &str| {
        shown(&measured(single(route), readings), at).gauge
    };
    let plain = RouteChoice::Plain;
    assert_eq!(gauge(plain, &bores, last), "Next: outside micrometer");
    assert_eq!(gauge(plain, &bores[..2], "bore/1/whole/bottom/0"), "");
    // More of the worst bore is on the way, with the gauge in the hand.
    assert_eq!(gauge(RouteChoice::Standard, &bores, last), "");
    let mut all = bores.to_vec();
    all.push((last, "82.010 mm"));
    for at in ["middle/0", "middle/90", "reference/0"] {
        assert_eq!(
            gauge(RouteChoice::Standard, &all, &format!("bore/1/whole/{at}")),
            ""
        );
        all.push(match at {
            "middle/0" => ("bore/1/whole/middle/0", "82.010 mm"),
            "middle/90" => ("bore/1/whole/middle/90", "82.010 mm"),
            _ => ("bore/1/whole/reference/0", "82.010 mm"),
        });
    }
    let at = "bore/1/whole/reference/90";
    assert_eq!(
        gauge(RouteChoice::Standard, &all, at),
        "Next: outside micrometer"
    );
    all.push((at, "82.010 mm"));
    let at = "piston/1/skirt/gauge_point/0";
    assert_eq!(
        gauge(RouteChoice::Standard, &all, at),
        "Now: outside micrometer"
    );
}

#[test]
fn a_gauge_with_a_range_is_told_with_it_and_once() {
    let size = |text| Entered::parse(text, MM).unwrap();
    let mut document = document(single(RouteChoice::Plain));
    let gauge = Gauge {
        range: Some((size("25"), size("75"))),
        ..Gauge::usual(GaugeKind::OutsideMicrometer, MM).unwrap()
    };
    document.dispatch(&Edit::AddGauge(gauge)).unwrap();
    let (id, _) = document.session().gauges.last().unwrap();
    let id = *id;
    for kind in [Kind::MainJournal, Kind::RodJournal] {
        document
            .dispatch(&Edit::Set(Field::GaugeOf(kind, Some(id))))
            .unwrap();
    }
    let first = "main_journal/1/whole/first/0";
    assert_eq!(
        shown(document.session(), first).gauge,
        "Now: 25 to 75 mm outside micrometer"
    );
    // The same one goes on to the rod journals: nothing to take up.
    read(
        &mut document,
        &[("main_journal/2/whole/last/0", "59.990 mm")],
    );
    assert_eq!(
        shown(document.session(), "main_journal/2/whole/last/90").gauge,
        ""
    );
    assert_eq!(
        shown(document.session(), "rod_journal/1/whole/first/0").gauge,
        ""
    );
}

fn with_run_out() -> (Document, Station) {
    let mut document = document(vec![Field::Mains(3)]);
    let edit = document.session().ask_for(Kind::RunOut, true);
    document.dispatch(&edit).unwrap();
    let at = station("run_out/2/whole/centre/0");
    let reading = entry(
        document.session(),
        at,
        Purpose::Add,
        &length("0.03 mm").into(),
        TAKEN,
    );
    document.dispatch(&reading.unwrap()).unwrap();
    (document, at)
}

#[test]
fn an_hour_taken_back_is_asked_for_again_and_done_again_is_shown() {
    let (mut document, at) = with_run_out();
    document
        .dispatch(&Edit::Set(Field::HighSpot(2, Some(5))))
        .unwrap();
    let mut fender = Fender::start(
        document.session(),
        &route(document.session(), &assess(document.session())),
        None,
    );
    assert_ne!(fender.station(), Some(at));
    let changed = document.undo().unwrap().unwrap();
    fender.back_to(document.session(), &changed);
    assert_eq!(fender.station(), Some(at));
    assert!(fender.asks_hour());
    let changed = document.redo().unwrap().unwrap();
    fender.back_to(document.session(), &changed);
    assert!(!fender.asks_hour() && fender.purpose() == Purpose::Replace);
    // Another field leads nowhere.
    document
        .dispatch(&Edit::Set(Field::Name("A six".to_owned())))
        .unwrap();
    let before = fender.clone();
    let changed = document.undo().unwrap().unwrap();
    fender.back_to(document.session(), &changed);
    assert_eq!(fender, before);
}

#[test]
fn what_was_entered_and_what_comes_is_spoken_and_no_digit() {
    let mut document = document(single(RouteChoice::Plain));
    document
        .dispatch(&Edit::Set(limit("bore/size/new_high", "82.020 mm")))
        .unwrap();
    let stops = |document: &Document| route(document.session(), &assess(document.session()));
    let mut fender = Fender::start(document.session(), &stops(&document), None);
    let spoken = |document: &Document, fender: &Fender| {
        view(document.session(), &stops(document), fender).announced
    };
    let before = spoken(&document, &fender);
    assert_eq!(
        before.trim(),
        "Bore 1, top, thrust. Now: telescoping gauge and micrometer"
    );
    let edit = entry(
        document.session(),
        station("bore/1/whole/top/0"),
        Purpose::Add,
        &length("82.010 mm").into(),
        TAKEN,
    );
    document.dispatch(&edit.unwrap()).unwrap();
    fender.after(document.session(), &stops(&document));
    let after = "Bore 1, top, thrust: 82.010 mm, reads inside new limits. \
                 Next: Bore 1, top, along the crank.";
    assert_eq!(spoken(&document, &fender).trim(), after);
    fender.press(document.session(), fenderbench::present::Key::Digit(1));
    assert_eq!(spoken(&document, &fender).trim(), after);
    // Elsewhere by hand: where one is, and nothing of before.
    fender.arrive(document.session(), station("bore/1/whole/bottom/0"));
    assert_eq!(spoken(&document, &fender).trim(), "Bore 1, bottom, thrust.");
}

#[test]
fn a_sentence_falls_into_the_word_that_matters_and_the_rest() {
    let fields = vec![Field::Cylinders(1)];
    let parts = |limits: &[(&str, &str)]| {
        let edits = limits.iter().map(|(key, text)| Edit::Set(limit(key, text)));
        let read = measured(fields.clone(), &[("bore/1/whole/top/0", "82.010 mm")]);
        let last = last_read(&edited(read, edits.collect())).unwrap();
        let (reads, word, by) = last.parts();
        format!("{reads}|{word}|{by}")
    };
    assert_eq!(parts(&[]), "|no limit given|");
    assert_eq!(
        parts(&[("bore/size/new_high", "82.020 mm")]),
        "reads |inside new limits|"
    );
    assert_eq!(
        parts(&[("bore/size/service", "82.005 mm")]),
        "reads |beyond limit| by 0.005 mm (too large)"
    );
    let long = session(vec![Field::Cylinders(4)]);
    let shown = shown(&long, "main_journal/1/whole/last/135");
    assert_eq!(
        shown.place_of(),
        ("last end, 45° anticlockwise", " of throw 1")
    );
}
