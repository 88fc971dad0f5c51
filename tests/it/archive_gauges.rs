//! Gauges, settings and deviations in a file: what the frozen one says, and
//! what opens although it contradicts itself.

use fenderbench::archive::{import, write};
use fenderbench::assess::{Which, assess};
use fenderbench::present::{findings, gauges, route};
use fenderbench::quantity::{EnteredDeviation, Size};
use fenderbench::report;
use fenderbench::session::{
    Edit, GaugeKind, Indication, Kind, Quantity, Reading, Session, Setting, Stamp,
};

use crate::archive_flips::check_flips;
use crate::make::{INCH, PHONE, exact, feature, length, size, value};

fn file() -> &'static str {
    include_str!("../sessions/v1/gauges.json")
}

fn session() -> Session {
    import(file()).unwrap().session
}

fn id(counter: u64) -> Stamp {
    Stamp::parse(&format!("{counter}@fe0d000000000017")).unwrap()
}

/// The file with one piece of text changed and no check sum.
pub fn changed(from: &str, to: &str) -> String {
    assert!(file().contains(from), "{from}");
    file()
        .replacen("\"check\":", "\"old_check\":", 1)
        .replacen(from, to, 1)
}

/// Opens the changed file, which is then handed on as it came and can be
/// shown and reported.
fn opened(from: &str, to: &str) -> Session {
    let session = import(&changed(from, to)).unwrap().session;
    let again = import(&write(&session, PHONE)).unwrap().session;
    assert_eq!(again, session, "{to}");
    let assessment = assess(&session);
    assert!(report::json(&session, &assessment).is_ok());
    assert_eq!(findings(&session, &assessment).kinds.len(), 4);
    assert!(!gauges(&session, &assess(&session)).gauges.is_empty());
    assert!(!route(&session, &assessment).is_empty());
    session
}

/// What each reading counts as.
fn sizes(session: &Session) -> Vec<Option<Size>> {
    let readings = session.readings.values();
    readings.map(|reading| session.size_of(reading)).collect()
}

/// Set at 3.0000 in, where it shows −0.0002, and plus is smaller: −0.0012 is
/// 3.0010, and 0.0000 is 2.9998. On the piston 2.9975 and 0.0040. In a ring
/// of 75.000 mm, where it shows 0.004, 1.231 is 76.227. Two as they stand.
/// The micrometer shows 0.0001 in too little.
const SIZES: [&str; 7] = [
    "3.0010 in",
    "2.9998 in",
    "3.0015 in",
    "76.227 mm",
    "3.001 in",
    "76.14 mm",
    "1.9986 in",
];

const NAMES: [&str; 3] = [
    "bore/1/whole/top/0",
    "bore/1/whole/top/90",
    "bore/2/whole/top/0",
];

#[test]
fn the_frozen_file_says_what_it_said() {
    let session = session();
    let mut kinds: Vec<_> = session.gauges.values().map(|g| g.value.kind).collect();
    let mut all = GaugeKind::ALL;
    kinds.sort_unstable();
    all.sort_unstable();
    assert_eq!(kinds, all);
    assert_eq!(sizes(&session), SIZES.map(|text| Some(size(text))));
    let clearance = value(
        &assess(&session),
        feature(Kind::Piston, 2),
        Quantity::Clearance,
        Which::Smallest,
    );
    assert_eq!(clearance, Some(exact("0.0040 in")));
    assert_eq!(session.nominal(Kind::Bore), Some(size("3.0000 in")));
    assert_eq!(session.nominal(Kind::Piston), None);
    let (gauge, _, setting) = session.gauge_for(Kind::Bore).unwrap();
    // The later settings are put away.
    assert_eq!((gauge, setting), (id(15), id(25)));
}

#[test]
fn a_changed_byte_of_gauges_and_settings_is_noticed() {
    check_flips(&session(), |text| 0..text.len());
}

#[test]
fn words_of_a_later_version_are_kept_whole() {
    for (from, to) in [
        ("\"against\":\"micrometer\"", "\"against\":\"a_laser\""),
        ("\"feature\":\"piston/2\"", "\"feature\":\"cam_lobe/2\""),
        ("\"sense\":\"plus_is_smaller\"", "\"sense\":\"by_colour\""),
        ("\"kind\":\"depth_gauge\"", "\"kind\":\"air_gauge\""),
        ("\"value\":\"boosted\"", "\"value\":\"hill_climb\""),
        ("\"value\":\"flywheel\"", "\"value\":\"left\""),
        ("\"value\":\"along_banks\"", "\"value\":\"by_firing\""),
        ("\"nominal/bore\"", "\"nominal/cam_lobe\""),
    ] {
        let before = session();
        let session = opened(from, to);
        let whole = session.extras.iter().find(|(_, text)| text.contains(to));
        // The change was in the text of the record, or its key was.
        let key = session
            .extras
            .keys()
            .any(|(_, key)| to.contains(key.as_str()));
        assert!(whole.is_some() || key, "{to}");
        assert_eq!(session.readings, before.readings);
    }
    // Beside what is known, a field stays what it was.
    let session = opened(
        "\"against\":\"micrometer\"",
        "\"against\":\"micrometer\",\"feature\":\"piston/9\"",
    );
    assert_eq!(session.settings[&id(25)].extra, "\"feature\":\"piston/9\"");
    let session = opened(
        "\"deviation\":\"-0.0012\"",
        "\"deviation\":\"-0.0012\",\"value\":\"3.0010\"",
    );
    assert_eq!(session.readings[&id(30)].extra, "\"value\":\"3.0010\"");
}

/// What is not counted of bore 1 is asked for again.
fn missing(session: &Session) -> Vec<String> {
    let assessment = assess(session);
    let bore = assessment.of(feature(Kind::Bore, 1)).next().unwrap();
    let missing = bore.missing.iter().map(ToString::to_string);
    missing
        .filter(|text| NAMES.contains(&text.as_str()))
        .collect()
}

#[test]
fn deviations_in_a_setting_that_is_none_open_and_count_nowhere() {
    let set = ",\"against\":\"micrometer\",\"size\":\"3.0000\",\"unit\":\"in\",\"shows_deviation\":\"-0.0002\",\"sense\":\"plus_is_smaller\"";
    let by_sizes = "\"shows\":\"3.0002\"";
    for (from, to) in [
        // As found: nobody set it.
        (set, ""),
        // Set by sizes, as no dial is.
        ("\"shows_deviation\":\"-0.0002\"", by_sizes),
        // In a setting that only a later version knows.
        ("\"sense\":\"plus_is_smaller\"", "\"sense\":\"by_colour\""),
    ] {
        let session = opened(from, to);
        let mut expected = SIZES.map(|text| Some(size(text)));
        expected[0] = None;
        expected[1] = None;
        assert_eq!(sizes(&session), expected, "{to}");
        assert_eq!(missing(&session), NAMES[..2]);
        assert_eq!(session.standing().count(), SIZES.len());
    }
}

#[test]
fn a_size_in_a_setting_by_deviations_opens_and_counts_nowhere() {
    let session = opened("\"shows\":\"0.9999\"", "\"shows_deviation\":\"-0.0001\"");
    assert_eq!(sizes(&session).pop(), Some(None));
}

#[test]
fn a_reading_outside_the_range_of_its_gauge_opens_and_counts() {
    // The micrometer reads from 1 to 2 in; this one gives 2.1986 in.
    let from = "\"value\":\"1.9985\"";
    let mut session = opened(from, "\"value\":\"2.1985\"");
    assert_eq!(sizes(&session).pop(), Some(Some(size("2.1986 in"))));
    let outside = session.readings[&id(36)].clone();
    let again = session.apply(&Edit::Add(outside), PHONE);
    let why = again.unwrap_err().to_string();
    assert_eq!(
        why,
        "This gauge reads from 1 in to 2 in: take another, or read again."
    );
    // It stops nobody from going on, and it can be struck.
    let inside = self::session().readings[&id(36)].clone();
    session.apply(&Edit::Add(inside), PHONE).unwrap();
    session.apply(&Edit::Strike(id(36)), PHONE).unwrap();
    assert!(session.readings[&id(36)].is_struck());
}

#[test]
fn a_deviation_below_nothing_opens() {
    // 3.0000 less 9.0000: no bore, and nobody could have entered it.
    let session = opened("\"deviation\":\"-0.0012\"", "\"deviation\":\"9.0000\"");
    assert!(sizes(&session)[0] < Some(Size::from_quanta(0)));
    let reading = session.readings[&id(30)].clone();
    let mut again = session.clone();
    let why = again.apply(&Edit::Add(reading), PHONE).unwrap_err();
    assert_eq!(
        why.to_string(),
        "Zero or less is no size: type one above zero."
    );
    assert_eq!(again, session);
}

#[test]
fn what_a_gauge_cannot_have_read_is_refused_at_enter() {
    let mut session = session();
    let unset = Setting::as_found(id(15));
    session.apply(&Edit::AddSetting(unset), PHONE).unwrap();
    let unset = *session.settings.last().unwrap().0;
    let before = session.clone();
    let dial = |text| EnteredDeviation::parse(text, INCH).map(Indication::Deviation);
    let range = "This gauge reads from 2 in to 6 in: take another, or read again.";
    let not_set = "A gauge that shows deviations has to be set first: in Set-up, Gauges.";
    for (setting, shown, sentence) in [
        // From 3 in, smaller by a plus: 1.9998 and 6.0001.
        (id(25), dial("1.0000"), range),
        (id(25), dial("-3.0003"), range),
        (
            id(25),
            dial("2.9998"),
            "Zero or less is no size: type one above zero.",
        ),
        (unset, dial("0.0010"), not_set),
        // The dial is set by deviations, the micrometer by sizes.
        (id(25), Ok(length("3.0010 in").into()), not_set),
        (id(24), dial("0.0010"), not_set),
    ] {
        let reading = Reading {
            entered: shown.unwrap(),
            setting,
            ..session.readings[&id(30)].clone()
        };
        let why = session.apply(&Edit::Add(reading), PHONE).unwrap_err();
        assert_eq!(why.to_string(), sentence);
        assert_eq!(session, before);
    }
    // The ends of the range are inside it: 2.0000 and 6.0000.
    for text in ["0.9998", "-3.0002"] {
        let reading = Reading {
            entered: dial(text).unwrap(),
            ..session.readings[&id(30)].clone()
        };
        session.apply(&Edit::Add(reading), PHONE).unwrap();
    }
}
