//! What is read again, which way the route walks, and how long it takes.

use fenderbench::assess::assess;
use fenderbench::present::{Fender, other_places, progress, route, view};
use fenderbench::session::{Arrangement, Counting, Edit, Feature, Field, Kind, RouteChoice};

use crate::make::{PHONE, add, measured, station};
use crate::route::{BORES, asked, single, stops};

#[test]
fn a_tenth_is_read_again_and_the_worst_among_it() {
    let repeats = |readings: &[(&str, &str)]| {
        let session = measured(vec![Field::Cylinders(2), Field::Mains(2)], readings);
        let repeats = asked(&session, 2);
        repeats.iter().map(ToString::to_string).collect::<Vec<_>>()
    };
    // The sixth of 26 stations, the sixteenth and the last.
    let spread = [
        "bore/2/whole/top/90",
        "main_journal/2/whole/first/90",
        "rod_journal/2/whole/last/135",
    ];
    assert_eq!(repeats(&[]), spread);
    assert_eq!(repeats(&BORES[..7]), spread);
    // Six stations more, and the worst place once the middle is read too.
    let spread = [
        "bore/2/whole/top/90",
        "piston/2/skirt/gauge_point/0",
        "rod_journal/1/whole/first/90",
    ];
    assert_eq!(repeats(&BORES), spread);
    let mut all = BORES.to_vec();
    all.push(("bore/2/whole/middle/0", "82.013 mm"));
    all.push(("bore/2/whole/middle/90", "82.013 mm"));
    let worst = [&["bore/2/whole/top/0"][..], &spread].concat();
    assert_eq!(repeats(&all), worst);
    // A repeat does not change what is asked for.
    all.push(("bore/2/whole/top/0", "81.900 mm"));
    assert_eq!(repeats(&all), worst);
    let plain = measured(single(RouteChoice::Plain), &[]);
    assert!(asked(&plain, 2).is_empty());
}

#[test]
fn a_repeat_is_open_until_it_is_read_twice() {
    let read_at = |times: usize| {
        let readings = vec![("main_journal/1/whole/first/0", "60.000 mm"); times];
        let session = measured(single(RouteChoice::Standard), &readings);
        let stops = route(&session, &assess(&session));
        let repeat = stops.iter().find(|stop| stop.asked == 2).unwrap();
        assert_eq!(repeat.station, station("main_journal/1/whole/first/0"));
        (repeat.is_read(), progress(&stops).read)
    };
    assert_eq!([0, 1, 2].map(read_at), [(false, 0), (false, 1), (true, 2)]);
}

#[test]
fn the_walk_goes_down_one_bank_and_back_up_the_other() {
    let walk = |counting: Counting, arrangement: Arrangement| {
        let session = measured(
            vec![
                Field::Cylinders(6),
                Field::Arrangement(arrangement),
                Field::Counting(counting),
            ],
            &[],
        );
        let bores = session.walk(Kind::Bore);
        bores.iter().map(|f| f.position).collect::<Vec<_>>()
    };
    assert_eq!(walk(Counting::Across, Arrangement::Vee), [1, 3, 5, 6, 4, 2]);
    assert_eq!(
        walk(Counting::AlongBanks, Arrangement::Flat),
        [1, 2, 3, 6, 5, 4]
    );
    assert_eq!(
        walk(Counting::Across, Arrangement::InLine),
        [1, 2, 3, 4, 5, 6]
    );
}

#[test]
fn the_fuller_route_asks_for_every_reference_and_the_45_pairs() {
    let fuller = stops(&measured(single(RouteChoice::Fuller), &[]));
    let has = |text: &str| fuller.contains(&station(text));
    assert!(has("bore/1/whole/middle/90") && has("bore/1/whole/reference/0"));
    assert!(has("bore/1/whole/top/45") && has("bore/1/whole/top/135"));
    assert!(has("rod_journal/1/whole/centre/45") && has("rod_journal/1/whole/last/90"));
    assert_eq!(fuller.len(), 10 + 1 + 2 * 6 + 6);
}

#[test]
fn more_can_be_read_anywhere() {
    let session = measured(single(RouteChoice::Standard), &[]);
    let stops = route(&session, &assess(&session));
    let other = |kind| other_places(Feature { kind, position: 1 }, &stops);
    assert_eq!(other(Kind::Bore).len(), 4 * 4 - 4);
    assert_eq!(other(Kind::RodJournal).len(), 3 * 4 - 4);
    let none_twice = other(Kind::Bore)
        .iter()
        .all(|s| stops.iter().all(|stop| stop.station != *s));
    assert!(none_twice);
}

#[test]
fn the_time_left_follows_the_pace_of_the_person() {
    let left = |seconds: u32, readings: u32| {
        let mut session = measured(vec![], &[]);
        for n in 0..readings {
            let clock = 23 * 3600 + 59 * 60 + n * seconds;
            let (h, m, s) = (clock / 3600 % 24, clock / 60 % 60, clock % 60);
            let mut edit = add(&session, "bore/1/whole/top/0", "82.010 mm");
            if let Edit::Add(reading) = &mut edit {
                reading.taken = format!("2026-05-09T{h:02}:{m:02}:{s:02}.000Z");
            }
            session.apply(&edit, PHONE).unwrap();
        }
        let stops = route(&session, &assess(&session));
        let fender = Fender::start(&session, &stops, None);
        view(&session, &stops, &fender).time_left
    };
    // 62 stations, 54 seconds each while nothing is known.
    assert_eq!(left(30, 0), "≈ 56 min");
    assert_eq!(left(30, 5), "≈ 55 min");
    // 61 stations at half a minute and at two, over midnight.
    assert_eq!(left(30, 6), "≈ 31 min");
    assert_eq!(left(120, 30), "≈ 2 h 2 min");
    // Pauses make no pace.
    assert_eq!(left(301, 30), "≈ 55 min");
}
