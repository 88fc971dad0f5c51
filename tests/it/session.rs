//! Facts, layout, and what hangs on neither order nor layout.

use fenderbench::archive;
use fenderbench::assess::assess;
use fenderbench::present::route;
use fenderbench::session::{
    CYLINDERS_MAX, Document, Edit, Field, READINGS_MAX, Refused, Stamp, Station,
};
use proptest::prelude::*;

use crate::generators::{any_station, config, entered};
use crate::make::{MM, PHONE, add, document, feature, measured, read, reading, said, session};

proptest! {
    #![proptest_config(config(128))]

    #[test]
    fn findings_do_not_hang_on_the_order_of_entry(
        readings in prop::collection::vec((any_station(), entered()), 0..30)
            .prop_flat_map(|all| (Just(all.clone()), Just(all).prop_shuffle())),
    ) {
        let [first, second] = [readings.0, readings.1].map(|readings| {
            let mut session = session(vec![Field::Cylinders(5)]);
            for (station, entered) in readings {
                let reading = reading(&session, station, entered);
                session.apply(&Edit::Add(reading), PHONE).unwrap();
            }
            said(&session)
        });
        prop_assert_eq!(first, second);
    }

    #[test]
    fn a_smaller_layout_loses_no_reading(
        readings in prop::collection::vec((any_station(), entered()), 0..30),
        cylinders in 1..=CYLINDERS_MAX,
    ) {
        let mut session = session(vec![Field::Cylinders(6), Field::Mains(6)]);
        for (station, entered) in &readings {
            let reading = reading(&session, *station, entered.clone());
            session.apply(&Edit::Add(reading), PHONE).unwrap();
        }
        let before = session.clone();
        session.apply(&Edit::Set(Field::Cylinders(cylinders)), PHONE).unwrap();
        prop_assert_eq!(&session.readings, &before.readings);
        // Every standing reading is on the route or listed as outside.
        let assessment = assess(&session);
        let stops = route(&session, &assessment);
        for (id, reading) in session.standing() {
            let at = reading.station;
            let inside = session.has(feature(at.kind, at.position));
            prop_assert_eq!(!inside, assessment.outside_layout.contains(&id));
            let shown = stops.iter().any(|stop| {
                stop.station == at && stop.values.contains(&reading.entered.to_string())
            });
            prop_assert_eq!(inside, shown, "{}", at);
        }
        session.apply(&Edit::Set(Field::Cylinders(6)), PHONE).unwrap();
        prop_assert_eq!(assess(&session), assess(&before));
    }

    #[test]
    fn stations_read_back_as_themselves(station in any_station()) {
        let text = station.to_string();
        prop_assert_eq!(Station::parse(&text), Some(station));
        prop_assert_eq!(Station::parse(&format!("{text}/")), None);
        prop_assert_eq!(Station::parse(&format!(" {text}")), None);
        prop_assert_eq!(Station::parse(&text.replacen('/', "/0", 1)), None);
    }

    #[test]
    fn stamps_read_back_as_themselves(counter in 0..=1_u64 << 52, replica in any::<u64>()) {
        let text = format!("{counter}@{replica:x}");
        prop_assert_eq!(Stamp::parse(&text).map(|s| s.to_string()), Some(text.clone()));
        prop_assert_eq!(Stamp::parse(&text.to_uppercase()).is_some(), text == text.to_uppercase());
    }
}

#[test]
fn places_that_do_not_exist_are_no_stations() {
    for text in [
        "",
        "bore/0/whole/top/0",
        "bore/256/whole/top/0",
        "bore/1/skirt/top/0",
        "bore/1/whole/first/0",
        "bore/1/whole/top/30",
        "bore/1/whole/top",
        "piston/1/whole/gauge_point/0",
        "main_journal/1/whole/top/0",
        "Bore/1/whole/top/0",
    ] {
        assert_eq!(Station::parse(text), None, "{text}");
    }
}

#[test]
fn a_layout_has_its_features() {
    let check = |fields: Vec<Field>, counts: [u8; 4]| {
        let session = session(fields);
        assert_eq!(crate::make::USUAL.map(|kind| session.count(kind)), counts);
        let total: usize = counts.iter().map(|n| usize::from(*n)).sum();
        assert_eq!(session.features().count(), total);
    };
    check(vec![], [4, 4, 5, 4]);
    let vee = |cylinders| {
        vec![
            Field::Cylinders(cylinders),
            Field::RodsPerThrow(2),
            Field::Mains(3),
        ]
    };
    check(vee(8), [8, 8, 3, 4]);
    check(vee(3), [3, 3, 3, 2]);
    check(vec![Field::Cylinders(1), Field::Mains(2)], [1, 1, 2, 1]);
}

#[test]
fn everything_can_be_measured_at_once() {
    for unit in [MM, crate::make::INCH] {
        let session = session(vec![Field::DisplayUnit(unit)]);
        assert_eq!(session.gauges.len(), 2);
        for kind in crate::make::USUAL {
            let (_, gauge, _) = session.gauge_for(kind).unwrap();
            assert_eq!(gauge.unit(), unit);
        }
    }
}

#[test]
fn a_replaced_gauge_setting_is_not_needed_to_read() {
    let mut session = session(vec![]);
    let before = session.clone();
    session.add_missing_gauges(PHONE);
    assert_eq!(session, before);
}

#[test]
fn a_full_session_says_so() {
    let mut session = measured(vec![], &[("bore/1/whole/top/0", "82.01 mm")]);
    let one = session.readings.values().next().unwrap().clone();
    for counter in 100..100 + u64::try_from(READINGS_MAX).unwrap() - 1 {
        let id = Stamp {
            counter,
            replica: PHONE,
        };
        session.readings.insert(id, one.clone());
    }
    let edit = Edit::Add(one);
    assert_eq!(session.apply(&edit, PHONE), Err(Refused::Full));
    let why = Refused::Full.to_string();
    assert_eq!(why, "A session holds 10000 readings; start another.");
}

#[test]
fn limits_that_contradict_after_a_meeting_do_not_stop_the_work() {
    let low = || Edit::Set(crate::make::limit("bore/size/new_low", "82.05 mm"));
    let high = || Edit::Set(crate::make::limit("bore/size/new_high", "82.02 mm"));
    let mut phone = document(vec![]);
    let mut tablet = Document::open(
        phone.session().clone(),
        crate::make::TABLET,
        &[crate::make::TABLET],
    );
    phone.dispatch(&low()).unwrap();
    tablet.dispatch(&high()).unwrap();
    phone.merge(tablet.session());
    assert!(phone.session().check_limits().is_err());
    read(&mut phone, &[("bore/1/whole/top/0", "82.04 mm")]);
    // Contradicting limits judge nothing.
    let comparisons = assess(phone.session()).findings;
    let inside = comparisons.iter().filter_map(|f| f.comparison());
    for comparison in inside {
        assert_eq!(comparison, fenderbench::verdict::Comparison::NoLimit);
    }
    // Mending them can be done, and then they are checked again.
    let mended = Edit::Set(crate::make::limit("bore/size/new_high", "82.06 mm"));
    phone.dispatch(&mended).unwrap();
    assert_eq!(phone.session().check_limits(), Ok(()));
    assert!(phone.dispatch(&high()).is_err());
}

/// A session from elsewhere whose first reading has this counter.
fn counted(counter: u64) -> String {
    let mut session = session(vec![]);
    let at = crate::make::station("bore/1/whole/top/0");
    let reading = reading(&session, at, crate::make::length("82.01 mm"));
    let replica = crate::make::TABLET;
    session.readings.insert(Stamp { counter, replica }, reading);
    archive::write(&session, replica)
}

#[test]
fn after_any_file_there_is_room_for_later_facts() {
    for bits in 0..64 {
        let Ok(incoming) = archive::import(&counted(1 << bits)) else {
            // Half of what a stamp can hold is enough for every real session.
            assert!(50 < bits, "2^{bits} was refused");
            continue;
        };
        let mut session = incoming.session;
        for n in 0..50 {
            let edit = add(&session, "bore/1/whole/top/90", &format!("82.{n:03} mm"));
            session.apply(&edit, PHONE).unwrap();
        }
        let text = archive::write(&session, PHONE);
        let back = archive::read(&text).map(|incoming| incoming.session);
        assert_eq!(back, Ok(session), "2^{bits}");
    }
}
