//! In which order the stations come.

use expect_test::{Expect, expect};
use fenderbench::assess::assess;
use fenderbench::present::{
    Draft, Fender, Key, Purpose, last_read, next_open, progress, route, view,
};
use fenderbench::session::{Field, RouteChoice, Session, Station};
use proptest::prelude::*;
use proptest::sample::select;

use crate::generators::{any_station, config};
use crate::make::{document, limit, measured, read, station};

/// The stations that are asked for once.
pub fn stops(session: &Session) -> Vec<Station> {
    asked(session, 1)
}

pub fn asked(session: &Session, times: usize) -> Vec<Station> {
    let stops = route(session, &assess(session));
    let asked = stops.iter().filter(|stop| stop.asked == times);
    asked.map(|stop| stop.station).collect()
}

fn check(session: &Session, expect: &Expect) {
    let lines: Vec<_> = stops(session).iter().map(ToString::to_string).collect();
    expect.assert_eq(&lines.join("\n"));
}

/// One cylinder, two main journals: the shortest of engines.
pub fn single(route: RouteChoice) -> Vec<Field> {
    vec![Field::Cylinders(1), Field::Mains(2), Field::Route(route)]
}

#[test]
fn the_standard_route_staggers_journals() {
    check(
        &measured(single(RouteChoice::Standard), &[]),
        &expect![[r#"
        bore/1/whole/top/0
        bore/1/whole/top/90
        bore/1/whole/bottom/0
        bore/1/whole/bottom/90
        piston/1/skirt/gauge_point/0
        main_journal/1/whole/first/0
        main_journal/1/whole/first/90
        main_journal/1/whole/last/45
        main_journal/1/whole/last/135
        main_journal/2/whole/first/0
        main_journal/2/whole/first/90
        main_journal/2/whole/last/45
        main_journal/2/whole/last/135
        rod_journal/1/whole/first/0
        rod_journal/1/whole/first/90
        rod_journal/1/whole/last/45
        rod_journal/1/whole/last/135"#]],
    );
}

#[test]
fn the_plain_route_keeps_two_directions() {
    check(
        &measured(single(RouteChoice::Plain), &[]),
        &expect![[r#"
        bore/1/whole/top/0
        bore/1/whole/top/90
        bore/1/whole/bottom/0
        bore/1/whole/bottom/90
        piston/1/skirt/gauge_point/0
        main_journal/1/whole/first/0
        main_journal/1/whole/first/90
        main_journal/1/whole/last/0
        main_journal/1/whole/last/90
        main_journal/2/whole/first/0
        main_journal/2/whole/first/90
        main_journal/2/whole/last/0
        main_journal/2/whole/last/90
        rod_journal/1/whole/first/0
        rod_journal/1/whole/first/90
        rod_journal/1/whole/last/0
        rod_journal/1/whole/last/90"#]],
    );
}

#[test]
fn routes_have_their_usual_length() {
    // Four stations a bore, one a piston, four a journal.
    let four = stops(&measured(vec![], &[]));
    assert_eq!(four.len(), 4 * 4 + 4 + 5 * 4 + 4 * 4);
    let six = vec![Field::Cylinders(6), Field::Mains(7)];
    assert_eq!(stops(&measured(six, &[])).len(), 6 * 4 + 6 + 7 * 4 + 6 * 4);
}

/// Two bores, read at the four stations each; the second is the larger.
pub const BORES: [(&str, &str); 8] = [
    ("bore/1/whole/top/0", "82.010 mm"),
    ("bore/1/whole/top/90", "82.010 mm"),
    ("bore/1/whole/bottom/0", "82.010 mm"),
    ("bore/1/whole/bottom/90", "82.010 mm"),
    ("bore/2/whole/top/0", "82.020 mm"),
    ("bore/2/whole/top/90", "82.010 mm"),
    ("bore/2/whole/bottom/0", "82.010 mm"),
    ("bore/2/whole/bottom/90", "82.010 mm"),
];

fn extra_bores(route: RouteChoice, readings: &[(&str, &str)]) -> Vec<String> {
    let fields = vec![Field::Cylinders(2), Field::Route(route)];
    let all = stops(&measured(fields, readings));
    let bores = all.iter().map(ToString::to_string);
    let bores = bores.filter(|text| text.starts_with("bore"));
    bores.skip(8).collect()
}

#[test]
fn the_worst_get_more_once_all_of_their_kind_are_read() {
    let standard = RouteChoice::Standard;
    for n in 0..BORES.len() {
        assert_eq!(extra_bores(standard, &BORES[..n]), [""; 0], "after {n}");
    }
    assert_eq!(
        extra_bores(standard, &BORES),
        [
            "bore/2/whole/middle/0",
            "bore/2/whole/middle/90",
            "bore/2/whole/reference/0",
            "bore/2/whole/reference/90",
            "bore/1/whole/reference/0",
            "bore/1/whole/reference/90",
        ]
    );
    assert_eq!(extra_bores(RouteChoice::Plain, &BORES), [""; 0]);
    // A reading struck opens its kind again.
    let mut document = document(vec![Field::Cylinders(2)]);
    read(&mut document, &BORES);
    let asked = stops(document.session()).len();
    document.undo().unwrap().unwrap();
    assert_eq!(stops(document.session()).len(), asked - 6);
}

#[test]
fn the_smallest_journal_gets_its_centre() {
    let mut fields = single(RouteChoice::Standard);
    fields.push(Field::Mains(1));
    let mains = |rod: &str| {
        let mut readings = Vec::new();
        for at in ["first/0", "first/90", "last/45", "last/135"] {
            readings.push((format!("rod_journal/1/whole/{at}"), "45.000 mm".to_owned()));
        }
        readings[3].1 = rod.to_owned();
        let readings: Vec<_> = readings
            .iter()
            .map(|(a, b)| (a.as_str(), b.as_str()))
            .collect();
        stops(&measured(fields.clone(), &readings))
    };
    let all = mains("44.990 mm");
    let centre = [
        "rod_journal/1/whole/centre/0",
        "rod_journal/1/whole/centre/90",
    ]
    .map(station);
    assert_eq!(all[all.len() - 2..], centre);
}

#[test]
fn what_was_read_besides_is_on_the_route() {
    let fields = single(RouteChoice::Plain);
    let readings = [
        ("bore/1/whole/middle/45", "82.010 mm"),
        ("bore/9/whole/top/0", "82.010 mm"),
    ];
    let all = stops(&measured(fields, &readings));
    assert_eq!(all[4], station("bore/1/whole/middle/45"));
    assert!(!all.contains(&station("bore/9/whole/top/0")));
}

#[test]
fn the_next_open_station_comes_round() {
    let session = measured(vec![Field::Cylinders(2)], &BORES[..2]);
    let stops = route(&session, &assess(&session));
    let next = |from: &str| next_open(&stops, Some(station(from))).map(|s| s.to_string());
    assert_eq!(
        next_open(&stops, None),
        Some(station("bore/1/whole/bottom/0"))
    );
    assert_eq!(
        next("bore/1/whole/top/0").as_deref(),
        Some("bore/1/whole/bottom/0")
    );
    assert_eq!(
        next("bore/1/whole/bottom/0").as_deref(),
        Some("bore/1/whole/bottom/90")
    );
    // After the last station comes the first that is open.
    let last = "rod_journal/2/whole/last/135";
    assert_eq!(next(last).as_deref(), Some("bore/1/whole/bottom/0"));
    // From a station that is not on the route it starts at the beginning.
    assert_eq!(
        next("bore/9/whole/top/0").as_deref(),
        Some("bore/1/whole/bottom/0")
    );
    let at = progress(&stops);
    assert_eq!((at.read, at.of), (2, stops.len()));
    let read: Vec<_> = stops
        .iter()
        .filter(|stop| stop.is_read())
        .cloned()
        .collect();
    assert_eq!(next_open(&read, None), None);
    assert_eq!(next_open(&read, Some(station("bore/1/whole/top/0"))), None);
    assert_eq!(next_open(&[], None), None);
}

fn check_view(readings: &[(&str, &str)], at: &str, purpose: Purpose, expect: &Expect) {
    let session = measured(single(RouteChoice::Standard), readings);
    let stops = route(&session, &assess(&session));
    let draft = Draft {
        station: station(at),
        purpose,
        whole: false,
        typed: String::new(),
    };
    let fender = Fender::start(&session, &stops, Some(&draft));
    let view = view(&session, &stops, &fender);
    let lines = [
        format!("{} — {}", view.feature, view.place),
        view.where_exactly.to_owned(),
        view.gauge,
        view.purpose,
        format!("{} of {}", view.progress.read, view.progress.of),
        view.next.unwrap_or_default(),
    ];
    expect.assert_eq(&lines.join("\n"));
}

#[test]
fn the_fender_screen_says_where_to_measure() {
    check_view(
        &[],
        "main_journal/2/whole/last/135",
        Purpose::Add,
        &expect![[r#"
            Main journal 2 — last end, 45° anticlockwise of throw 1
            About 6 mm (1/4 in) from the fillet on the last end's side.
            Now: outside micrometer

            0 of 19
            Rod journal 1, first end, in line with the throw"#]],
    );
    let twice = [
        ("bore/1/whole/top/0", "82.010 mm"),
        ("bore/1/whole/top/0", "82.012 mm"),
    ];
    check_view(
        &twice,
        "bore/1/whole/top/0",
        Purpose::Add,
        &expect![[r#"
            Bore 1 — top, thrust
            Just below the highest point the top ring reaches, not on the ridge.

            A repeat: read it afresh
            1 of 19
            Bore 1, top, along the crank"#]],
    );
    check_view(
        &twice,
        "bore/1/whole/top/0",
        Purpose::Replace,
        &expect![[r#"
            Bore 1 — top, thrust
            Just below the highest point the top ring reaches, not on the ridge.

            In place of 82.010 mm, 82.012 mm
            1 of 19
            Bore 1, top, along the crank"#]],
    );
}

#[test]
fn the_last_reading_is_told_with_what_it_reads() {
    let fields = vec![
        limit("bore/size/new_high", "82.020 mm"),
        limit("bore/size/service", "82.100 mm"),
    ];
    let check = |text: &str, expect: &Expect| {
        let session = measured(fields.clone(), &[("bore/1/whole/top/0", text)]);
        let last = last_read(&session).unwrap();
        expect.assert_eq(&format!(
            "{}, {}: {} {}",
            last.feature, last.place, last.value, last.words
        ));
    };
    check(
        "82.020 mm",
        &expect![["Bore 1, top, thrust: 82.020 mm reads inside new limits"]],
    );
    check(
        "82.021 mm",
        &expect![["Bore 1, top, thrust: 82.021 mm reads inside service limit"]],
    );
    check(
        "82.103 mm",
        &expect![["Bore 1, top, thrust: 82.103 mm reads beyond limit by 0.003 mm (too large)"]],
    );
    assert_eq!(last_read(&measured(vec![], &[])), None);
}

proptest! {
    #![proptest_config(config(256))]

    #[test]
    fn a_draft_comes_back_as_it_was(
        station in any_station(),
        purpose in select(&[Purpose::Add, Purpose::Replace][..]),
        whole in any::<bool>(),
        typed in "[0-9]{0,3}(\\.[0-9]{0,4})?",
    ) {
        let draft = Draft { station, purpose, whole, typed };
        prop_assert_eq!(Draft::from_text(&draft.to_text()), Some(draft));
    }

    #[test]
    fn other_texts_are_no_draft(text in any::<String>()) {
        prop_assert_eq!(Draft::from_text(&text), None);
    }
}

#[test]
fn whoever_points_at_a_station_goes_there_unless_a_number_is_under_way() {
    let read = [
        ("bore/1/whole/top/0", "82.010 mm"),
        ("bore/1/whole/bottom/0", "82.010 mm"),
        ("piston/1/skirt/gauge_point/0", "81.960 mm"),
        ("main_journal/1/whole/first/0", "60.010 mm"),
    ];
    let session = measured(single(RouteChoice::Standard), &read);
    let stops = route(&session, &assess(&session));
    let mut fender = Fender::start(&session, &stops, None);
    let point = |fender: &mut Fender, at: &str| {
        fender.jump(&session, &stops, station(at));
        (fender.station().unwrap().to_string(), fender.purpose())
    };
    let at = |at: &str, purpose| (at.to_owned(), purpose);
    let place = "bore/1/whole/bottom/90";
    assert_eq!(point(&mut fender, place), at(place, Purpose::Add));
    // Where all is read, it is to correct it; where more is asked for, to add.
    let again = stops.iter().filter(|stop| stop.asked == 2);
    let again: Vec<_> = again.map(|stop| stop.station.to_string()).collect();
    for (place, _) in read {
        let purpose = if again.contains(&place.to_owned()) {
            Purpose::Add
        } else {
            Purpose::Replace
        };
        assert_eq!(point(&mut fender, place), at(place, purpose));
    }
    let place = "rod_journal/1/whole/last/45";
    assert_eq!(point(&mut fender, place), at(place, Purpose::Add));

    assert!(fender.press(&session, Key::Digit(4)));
    let typed = fender.face();
    assert_eq!(
        point(&mut fender, "bore/1/whole/top/0"),
        at(place, Purpose::Add)
    );
    assert_eq!(fender.face(), typed, "nothing of it is lost");
    assert!(fender.is_refused());
    let why = "A number is under way: ENTER it or take it back first, then go.";
    assert_eq!(fender.said(), Some(why));
    // To where one is already, there is no way.
    fender.press(&session, Key::Digit(5));
    assert_eq!(point(&mut fender, place), at(place, Purpose::Add));
    assert_eq!(fender.said(), None);
    for _ in 0..2 {
        fender.press(&session, Key::Back);
    }
    let place = "bore/1/whole/top/90";
    assert_eq!(point(&mut fender, place), at(place, Purpose::Add));
}
