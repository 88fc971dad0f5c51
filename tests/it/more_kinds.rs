//! What can be measured besides bores, pistons and journals: choosing it,
//! typing it, and the hour of a high spot.

use expect_test::{Expect, expect};
use fenderbench::assess::assess;
use fenderbench::present::{
    Draft, Fender, Key, Keypad, Purpose, Reads, asked, entry, feature, findings, gauges, keypad,
    kinds, length_of, other_places, route, view,
};
use fenderbench::quantity::Unit;
use fenderbench::session::{
    Arrangement, Document, Feature, Field, GaugeKind, Kind, RouteChoice, Session, Station,
};

use crate::keypad::press;
use crate::make::{INCH, MM, document, length, station};

const TAKEN: &str = "2026-03-14T09:00:00Z";

/// A session that asks for these kinds alone, with the usual gauges for them.
fn asking(asked: &[Kind]) -> Document {
    let mut document = document(vec![Field::Cylinders(2), Field::Mains(3)]);
    for kind in Kind::ALL {
        let edit = document.session().ask_for(kind, asked.contains(&kind));
        document.dispatch(&edit).unwrap();
    }
    document
}

fn enter(document: &mut Document, at: &str, text: &str) {
    let (session, at) = (document.session(), station(at));
    let edit = entry(session, at, Purpose::Add, &length(text).into(), TAKEN).unwrap();
    document.dispatch(&edit).unwrap();
}

fn start(session: &Session) -> Fender {
    Fender::start(session, &route(session, &assess(session)), None)
}

/// Types keys and ENTER, and goes on as the screen does.
fn read(document: &mut Document, fender: &mut Fender, keys: &str) {
    for c in keys.chars() {
        let digit = c.to_digit(10).map(|d| Key::Digit(u8::try_from(d).unwrap()));
        fender.press(document.session(), digit.unwrap_or(Key::Point));
    }
    let edit = fender.enter(document.session(), TAKEN).unwrap();
    document.dispatch(&edit).unwrap();
    after(document, fender);
}

fn after(document: &Document, fender: &mut Fender) {
    let session = document.session();
    fender.after(session, &route(session, &assess(session)));
}

#[test]
fn every_kind_can_be_asked_for_and_says_why() {
    let groups = kinds(asking(&[]).session());
    let mut all: Vec<_> = groups.iter().flat_map(|g| &g.rows).collect();
    assert!(all.iter().all(|row| row.why.ends_with('.')));
    all.sort_by_key(|row| row.kind);
    let mut every = Kind::ALL;
    every.sort();
    assert_eq!(all.iter().map(|row| row.kind).collect::<Vec<_>>(), every);
    let titles: Vec<_> = groups.iter().map(|group| group.title).collect();
    expect![
        "Before it comes apart, Bores and pistons, Crankshaft, Bearings, Pins, Rings, Flat faces, Scores and pits"
    ]
    .assert_eq(&titles.join(", "));
}

#[test]
fn what_is_asked_for_brings_its_stations_and_its_gauge() {
    let one = asking(&[Kind::EndPlay]);
    let told = |session: &Session| length_of(session, &assess(session));
    assert_eq!(told(one.session()), "1 station, ≈ 1 min left");
    assert_eq!(asked(one.session()), "Crank end play.");
    assert_eq!(asked(asking(&Kind::ALL).session()), "27 of 27 kinds.");
    let nothing = asking(&[]);
    assert_eq!(told(nothing.session()), "Nothing is asked for.");
    assert_eq!(asked(nothing.session()), "Nothing is asked for.");
    // Each kind can be read at once, with what the trade reads it with.
    for kind in Kind::ALL {
        let document = asking(&[kind]);
        let view = gauges(document.session(), &assess(document.session()));
        let [used] = view.uses.as_slice() else {
            panic!("{kind:?}")
        };
        let (id, _) = used.options[used.chosen];
        let gauge = view.gauges.iter().find(|row| row.id == id).unwrap();
        assert_eq!(gauge.gauge.kind, GaugeKind::usual_for(kind), "{kind:?}");
        let fender = start(document.session());
        assert_eq!(fender.station().map(|s| s.kind), Some(kind));
        assert!(fender.face().is_some() && fender.said().is_none());
    }
    // What was read stays when it is turned off, and is counted.
    let mut read = asking(&[Kind::EndPlay]);
    enter(&mut read, "end_play/1/whole/centre/0", "0.12 mm");
    let off = read.session().ask_for(Kind::EndPlay, false);
    read.dispatch(&off).unwrap();
    assert_eq!(
        findings(read.session(), &assess(read.session()))
            .kinds
            .len(),
        1
    );
    assert_eq!(kinds(read.session())[0].rows[0].read, 1);
}

#[test]
fn without_its_gauge_the_way_to_one_is_said() {
    let fields = vec![Field::Measure(Kind::EndPlay, true)];
    let document = document(fields);
    let fender = start(document.session());
    assert!(fender.face().is_none() && fender.is_refused());
    expect!["No gauge for this is at hand: take one into use in Set-up, Gauges."]
        .assert_eq(fender.said().unwrap());
}

fn check(kind: Kind, unit: Unit, decimals: u8, keys: &str, expect: &Expect) {
    let reads = Reads {
        kind,
        unit,
        decimals,
        dial: None,
    };
    let mut keypad = Keypad::new(reads, None);
    let mut said = press(&mut keypad, keys);
    said.push(match keypad.enter() {
        Ok(entered) => format!("→ {entered}"),
        Err(why) => format!("✗ {why}"),
    });
    expect.assert_eq(&said.join("\n"));
}

#[test]
fn an_amount_may_be_nothing_and_is_typed_in_full() {
    check(Kind::Deck, MM, 2, ".00", &expect!["→ 0.00 mm"]);
    check(Kind::RunOut, MM, 2, "0.03", &expect!["→ 0.03 mm"]);
    check(Kind::MainStrip, INCH, 4, ".0020", &expect!["→ 0.0020 in"]);
    check(Kind::EndPlay, MM, 2, "15.00", &expect!["→ 15.00 mm"]);
    check(
        Kind::EndPlay,
        MM,
        2,
        "w15.01",
        &expect![[r#"
            This is typed in full each time: all digits and the point.
            ✗ 15.01 mm is no crank end play: 0 to 15 mm can be. Is the point in its place?"#]],
    );
    check(
        Kind::TopRingGap,
        MM,
        2,
        "35.00",
        &expect!["✗ 35.00 mm is no top ring gap: 0 to 15 mm can be. Is the point in its place?"],
    );
    check(
        Kind::Head,
        INCH,
        4,
        "0.6000",
        &expect![
            "✗ 0.6000 in is no gap under a straight edge: 0 to 0.59 in can be. Is the point in its place?"
        ],
    );
    check(
        Kind::BoreScore,
        MM,
        2,
        "16.00",
        &expect![
            "✗ 16.00 mm is no depth of a score: 0 to 15 mm can be. Is the point in its place?"
        ],
    );
    check(Kind::MainShell, MM, 3, "0.500", &expect!["→ 0.500 mm"]);
    check(
        Kind::MainShell,
        MM,
        3,
        "0.499",
        &expect![
            "✗ 0.499 mm is no wall of a shell: 0.5 to 15 mm can be. Is the point in its place?"
        ],
    );
    check(
        Kind::RodShell,
        MM,
        3,
        "15.001",
        &expect![
            "✗ 15.001 mm is no wall of a shell: 0.5 to 15 mm can be. Is the point in its place?"
        ],
    );
    check(
        Kind::MainHousing,
        MM,
        3,
        "640.002",
        &expect![
            "✗ 640.002 mm is no main housing bore: 5 to 600 mm can be. Is the point in its place?"
        ],
    );
    check(
        Kind::RodFitted,
        MM,
        3,
        "0.049",
        &expect![
            "✗ 0.049 mm is no bore of fitted shells: 5 to 600 mm can be. Is the point in its place?"
        ],
    );
    check(
        Kind::PinBore,
        MM,
        3,
        "4.999",
        &expect!["✗ 4.999 mm is no pin bore: 5 to 600 mm can be. Is the point in its place?"],
    );
}

#[test]
fn only_sizes_are_completed_from_their_last_digits() {
    let mut document = asking(&[Kind::MainShell, Kind::TopRingGap]);
    enter(&mut document, "main_shell/1/upper/first/0", "2.006 mm");
    enter(&mut document, "top_ring_gap/1/whole/bottom/0", "0.35 mm");
    enter(&mut document, "main_shell/1/lower/first/0", "2.005 mm");
    let near = |at: &str| {
        let keypad = keypad(document.session(), station(at), false, "").unwrap();
        keypad.face().can_complete
    };
    assert!(near("main_shell/2/upper/first/0"));
    assert!(!near("top_ring_gap/2/whole/bottom/0"));
}

#[test]
fn the_gauge_is_told_as_the_route_comes_to_another_kind() {
    let mut document = asking(&[Kind::EndPlay, Kind::RodSide]);
    let told = |document: &Document, fender: &Fender| {
        let session = document.session();
        view(session, &route(session, &assess(session)), fender).gauge
    };
    let mut fender = start(document.session());
    assert_eq!(told(&document, &fender), "Now: dial indicator");
    read(&mut document, &mut fender, ".12");
    assert_eq!(told(&document, &fender), "Now: feeler gauges");
    read(&mut document, &mut fender, ".25");
    assert_eq!(told(&document, &fender), "");
}

#[test]
fn a_run_out_asks_for_the_hour_of_its_high_spot() {
    let mut document = asking(&[Kind::RunOut]);
    let mut fender = start(document.session());
    read(&mut document, &mut fender, ".03");
    let first = station("run_out/1/whole/centre/0");
    assert!(fender.asks_hour());
    assert_eq!(fender.station(), Some(first));
    let session = document.session().clone();
    let stops = route(&session, &assess(&session));
    let shown = view(&session, &stops, &fender);
    assert!(shown.asks_hour);
    expect![
        "0.03 mm: at what hour was the most? 12 is in line with throw 1, seen from the first end."
    ]
    .assert_eq(&shown.purpose);

    // Neither a digit nor ENTER passes it over unseen.
    assert!(!fender.press(&session, Key::Digit(4)) && fender.is_refused());
    assert_eq!(fender.enter(&session, TAKEN), None);
    expect!["First the hour of the high spot, or Skip to leave it out."]
        .assert_eq(fender.said().unwrap());
    // A reload comes back to it.
    let draft = Draft::from_text(&fender.draft().unwrap().to_text());
    let again = Fender::start(&session, &stops, draft.as_ref());
    assert!(again.asks_hour() && again.station() == Some(first));

    let edit = again.hour(5).unwrap();
    document.dispatch(&edit).unwrap();
    let mut fender = again;
    after(&document, &mut fender);
    assert_eq!(document.session().high_spot(1), Some(5));
    assert_eq!(fender.station(), Some(station("run_out/2/whole/centre/0")));
    assert!(!fender.asks_hour() && fender.hour(5).is_none());

    // In place of a reading comes one without its hour, in one step.
    let again = station("run_out/1/whole/centre/0");
    let instead = length("0.04 mm").into();
    let edit = entry(document.session(), again, Purpose::Replace, &instead, TAKEN).unwrap();
    document.dispatch(&edit).unwrap();
    assert_eq!(document.session().high_spot(1), None);
    document.undo().unwrap().unwrap();
    assert_eq!(document.session().high_spot(1), Some(5));

    // It can be left out, and nothing has no high spot.
    read(&mut document, &mut fender, ".02");
    assert!(fender.asks_hour());
    let session = document.session();
    fender.go_on(session, &route(session, &assess(session)));
    assert_eq!(fender.station(), Some(station("run_out/3/whole/centre/0")));
    read(&mut document, &mut fender, ".00");
    assert!(!fender.asks_hour());
    let spots = [1, 2, 3].map(|main| document.session().high_spot(main));
    assert_eq!(spots, [Some(5), None, None]);

    // It stands beside the reading, in the list and in the findings.
    let session = document.session();
    let stops = route(session, &assess(session));
    assert_eq!(stops[0].values, ["0.03 mm at 5 o’clock"]);
    assert_eq!(stops[1].values, ["0.02 mm"]);
    let shown = findings(session, &assess(session));
    let sense = |n: usize| {
        shown.kinds[0].features.iter().find_map(|f| {
            let is_it = f.title.ends_with(&n.to_string());
            is_it.then(|| f.rows[0].sense.clone())
        })
    };
    assert_eq!(sense(1), Some(Some("most at 5 o’clock".to_owned())));
    assert_eq!(sense(2), Some(None));
}

#[test]
fn the_route_follows_the_work_and_repeats_sizes_alone() {
    let all = asking(&Kind::ALL);
    let session = all.session();
    let stops = route(session, &assess(session));
    let mut order: Vec<Kind> = Vec::new();
    let once = stops.iter().filter(|stop| stop.asked == 1);
    for stop in once {
        if order.last() != Some(&stop.station.kind) {
            order.push(stop.station.kind);
        }
    }
    assert_eq!(order, Kind::ALL);
    let again: Vec<_> = stops.iter().filter(|stop| stop.asked == 2).collect();
    let sizes = stops
        .iter()
        .filter(|s| s.asked == 1 && !s.station.kind.is_amount());
    assert_eq!(again.len(), (sizes.count() + 4) / 10);
    assert!(again.iter().all(|stop| !stop.station.kind.is_amount()));
}

#[test]
fn what_there_is_one_of_has_no_number() {
    let name = |kind, position| feature(Feature { kind, position });
    assert_eq!(name(Kind::EndPlay, 1), "Crank end play");
    assert_eq!(name(Kind::Deck, 2), "Deck 2");
    // Where it is measured in but one place, there is no other.
    let one = Feature {
        kind: Kind::EndPlay,
        position: 1,
    };
    let document = asking(&[Kind::EndPlay]);
    let stops = route(document.session(), &assess(document.session()));
    assert_eq!(other_places(one, &stops), [] as [Station; 0]);
}

#[test]
fn rods_and_banks_are_named_where_numbers_leave_that_open() {
    let fields = vec![
        Field::Cylinders(2),
        Field::Arrangement(Arrangement::Vee),
        Field::RodsPerThrow(2),
        Field::Route(RouteChoice::Plain),
    ];
    let mut document = document(fields);
    for kind in [Kind::RodSide, Kind::SmallEnd, Kind::MainStrip] {
        let edit = document.session().ask_for(kind, true);
        document.dispatch(&edit).unwrap();
    }
    let session = document.session();
    let stops = route(session, &assess(session));
    let shown = |at: &str| {
        let draft = Draft::to_read(station(at), Purpose::Add);
        let fender = Fender::start(session, &stops, Some(&draft));
        view(session, &stops, &fender).feature
    };
    assert_eq!(
        shown("rod_side/1/whole/centre/0"),
        "Rod side clearance 1, rods 1 and 2"
    );
    assert_eq!(shown("small_end/2/whole/first/0"), "Small end 2, bank 2");
    assert_eq!(shown("main_strip/2/whole/centre/0"), "Main strip 2");
}
