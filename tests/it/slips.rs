//! Slips: what each kind of them looks like, and what does not look like one.

use fenderbench::quantity::{EnteredDeviation, Unit};
use fenderbench::session::{
    Against, Edit, Field, Gauge, GaugeKind, Indication, Kind, Sense, Session, SetTo, Setting,
};
use fenderbench::slip::{Looks, Slip, likeliest, new_nominal, review, suspect};

use crate::make::{INCH, MM, PHONE, feature, length, measured, reading, session, station};

/// Three rod journals of which each place but one is read, in inches. Of two
/// it could not be told which differs from the other.
const INCHES: [(&str, &str); 11] = [
    ("rod_journal/1/whole/first/0", "2.1243 in"),
    ("rod_journal/1/whole/first/90", "2.1241 in"),
    ("rod_journal/1/whole/last/45", "2.1242 in"),
    ("rod_journal/1/whole/last/135", "2.1240 in"),
    ("rod_journal/2/whole/first/0", "2.1244 in"),
    ("rod_journal/2/whole/first/90", "2.1242 in"),
    ("rod_journal/2/whole/last/45", "2.1242 in"),
    ("rod_journal/3/whole/first/0", "2.1242 in"),
    ("rod_journal/3/whole/first/90", "2.1241 in"),
    ("rod_journal/3/whole/last/45", "2.1243 in"),
    ("rod_journal/3/whole/last/135", "2.1240 in"),
];

/// The same, in millimetres.
const MILLIMETRES: [(&str, &str); 11] = [
    ("rod_journal/1/whole/first/0", "53.958 mm"),
    ("rod_journal/1/whole/first/90", "53.953 mm"),
    ("rod_journal/1/whole/last/45", "53.955 mm"),
    ("rod_journal/1/whole/last/135", "53.950 mm"),
    ("rod_journal/2/whole/first/0", "53.960 mm"),
    ("rod_journal/2/whole/first/90", "53.955 mm"),
    ("rod_journal/2/whole/last/45", "53.955 mm"),
    ("rod_journal/3/whole/first/0", "53.955 mm"),
    ("rod_journal/3/whole/first/90", "53.952 mm"),
    ("rod_journal/3/whole/last/45", "53.957 mm"),
    ("rod_journal/3/whole/last/135", "53.950 mm"),
];

/// The place that is not read there.
const OPEN: &str = "rod_journal/2/whole/last/135";

fn journals(unit: Unit) -> Session {
    let readings = if unit == INCH { INCHES } else { MILLIMETRES };
    measured(vec![Field::DisplayUnit(unit)], &readings)
}

fn asked(session: &Session, at: &str, entered: impl Into<Indication>) -> Option<Slip> {
    let reading = reading(session, station(at), entered);
    suspect(session, &reading, false)
}

fn looks(session: &Session, at: &str, text: &str) -> Option<Looks> {
    asked(session, at, length(text)).map(|slip| slip.looks)
}

fn reviewed(session: &Session) -> Vec<(String, Looks)> {
    let slips = review(session);
    let named = slips.iter().map(|(id, slip)| {
        let reading = session.readings.get(id).unwrap();
        (reading.station.to_string(), slip.looks)
    });
    named.collect()
}

#[test]
fn a_slip_on_sleeve_or_thimble_is_named_with_what_it_would_be() {
    for (wrong, expected, right) in [
        ("2.1491 in", Looks::Turn, "2.1241 in"),
        ("2.0991 in", Looks::Turn, "2.1241 in"),
        ("2.1741 in", Looks::SleeveLines, "2.1241 in"),
        ("2.0491 in", Looks::SleeveLines, "2.1241 in"),
        ("2.2241 in", Looks::NumberLine, "2.1241 in"),
        ("3.1241 in", Looks::Range, "2.1241 in"),
        ("2.1421 in", Looks::Digits, "2.1241 in"),
        ("54.453 mm", Looks::Turn, "53.953 mm"),
        ("53.453 mm", Looks::Turn, "53.953 mm"),
        ("54.953 mm", Looks::SleeveLines, "53.953 mm"),
        ("58.953 mm", Looks::NumberLine, "53.953 mm"),
        ("78.953 mm", Looks::Range, "53.953 mm"),
        ("53.593 mm", Looks::Digits, "53.953 mm"),
    ] {
        let session = journals(length(wrong).unit());
        let slip = asked(&session, OPEN, length(wrong)).expect(wrong);
        assert_eq!(slip.looks, expected, "{wrong}");
        let would_be = slip.would_be.map(|would_be| would_be.to_string());
        assert_eq!(would_be.as_deref(), Some(right), "{wrong}");
    }
}

#[test]
fn the_thimble_line_beside_shows_where_the_vernier_wraps() {
    let session = journals(INCH);
    let slip = asked(&session, OPEN, length("2.1231 in"));
    let wrap = |text: &str| Slip {
        looks: Looks::Wrap,
        would_be: Some(length(text).into()),
    };
    assert_eq!(slip, Some(wrap("2.1241 in")));
    assert_eq!(
        asked(&session, OPEN, length("2.1249 in")),
        None,
        "near enough to be true"
    );
}

#[test]
fn a_number_in_the_other_unit_is_named() {
    let slip = asked(&journals(MM), OPEN, length("53.953 in")).unwrap();
    assert_eq!(slip.looks, Looks::Unit);
    assert_eq!(slip.would_be, Some(length("53.953 mm").into()));
}

#[test]
fn a_sign_is_missed_on_a_dial_only() {
    let mut session = session(vec![Field::DisplayUnit(MM)]);
    let apply = |session: &mut Session, edit: Edit| {
        session.apply(&edit, PHONE).unwrap();
    };
    let dial = Gauge::usual(GaugeKind::DialBoreGauge, MM).unwrap();
    apply(&mut session, Edit::AddGauge(dial));
    let is_dial = |g: &Gauge| g.kind == GaugeKind::DialBoreGauge;
    let mut gauges = session.gauges.iter();
    let id = *gauges.find(|(_, g)| is_dial(&g.value)).unwrap().0;
    let by = |text: &str| Indication::Deviation(EnteredDeviation::parse(text, MM).unwrap());
    let set = SetTo {
        against: Against::Micrometer,
        size: length("82.000 mm"),
        shows: by("0.000"),
        again: None,
        sense: Sense::PlusLarger,
    };
    let setting = Setting {
        set: Some(set),
        ..Setting::as_found(id)
    };
    apply(&mut session, Edit::AddSetting(setting));
    apply(
        &mut session,
        Edit::Set(Field::GaugeOf(Kind::Bore, Some(id))),
    );
    for at in ["1/whole/top/0", "1/whole/top/90", "2/whole/top/0"] {
        let at = station(&format!("bore/{at}"));
        let read = reading(&session, at, by("0.083"));
        apply(&mut session, Edit::Add(read));
    }
    let open = "bore/2/whole/top/90";
    assert_eq!(asked(&session, open, by("0.080")), None);
    let slip = asked(&session, open, by("-0.083")).unwrap();
    assert_eq!(slip.looks, Looks::Sign);
    assert_eq!(slip.would_be, Some(by("0.083")));
}

#[test]
fn a_reading_of_something_else_names_what_it_reads_like() {
    let mut readings = INCHES.to_vec();
    readings.extend([
        ("main_journal/1/whole/first/0", "2.4973 in"),
        ("main_journal/1/whole/first/90", "2.4971 in"),
    ]);
    let session = measured(vec![Field::DisplayUnit(INCH)], &readings);
    let main = Some(Looks::Elsewhere(Kind::MainJournal));
    assert_eq!(looks(&session, OPEN, "2.4972 in"), main);

    // One journal has run dry.
    let mut readings = INCHES.to_vec();
    readings.extend([
        ("rod_journal/4/whole/first/0", "2.1083 in"),
        ("rod_journal/4/whole/first/90", "2.1081 in"),
    ]);
    let session = measured(vec![Field::DisplayUnit(INCH)], &readings);
    let fourth = Some(Looks::Neighbour(feature(Kind::RodJournal, 4)));
    assert_eq!(looks(&session, OPEN, "2.1082 in"), fourth);
}

#[test]
fn the_fifth_that_is_the_same_to_the_last_digit_is_a_copy() {
    let same: Vec<(&str, &str)> = INCHES.iter().map(|(at, _)| (*at, "2.1242 in")).collect();
    let of = |count: usize| measured(vec![Field::DisplayUnit(INCH)], &same[..count]);
    assert_eq!(looks(&of(3), OPEN, "2.1242 in"), None);
    assert_eq!(looks(&of(4), OPEN, "2.1242 in"), Some(Looks::Copies));
    assert_eq!(looks(&of(4), OPEN, "2.1243 in"), None);
}

#[test]
fn what_cannot_have_been_made_is_impossible() {
    let nominal = Field::Nominal(Kind::RodJournal, Some(length("2.1250 in")));
    let made = session(vec![Field::DisplayUnit(INCH), nominal]);
    assert_eq!(looks(&made, OPEN, "2.1245 in"), None);
    assert_eq!(looks(&made, OPEN, "2.1288 in"), Some(Looks::Impossible));

    // A piston larger than the bore it is to run in.
    let bore = [("bore/1/whole/top/0", "3.5013 in")];
    let session = measured(vec![Field::DisplayUnit(INCH)], &bore);
    let piston = "piston/1/skirt/gauge_point/0";
    assert_eq!(looks(&session, piston, "3.4988 in"), None);
    assert_eq!(
        looks(&session, piston, "3.5044 in"),
        Some(Looks::Impossible)
    );
}

#[test]
fn honest_readings_are_not_asked_about() {
    for unit in [INCH, MM] {
        assert_eq!(reviewed(&journals(unit)), []);
    }
    for honest in ["2.1240 in", "2.1244 in", "2.1238 in", "2.1235 in"] {
        assert_eq!(looks(&journals(INCH), OPEN, honest), None, "{honest}");
    }
    for honest in ["53.950 mm", "53.960 mm", "53.940 mm"] {
        assert_eq!(looks(&journals(MM), OPEN, honest), None, "{honest}");
    }
}

#[test]
fn where_nothing_is_known_nothing_is_said() {
    let empty = session(vec![Field::DisplayUnit(INCH)]);
    for any in ["2.1241 in", "0.0001 in", "9.9999 in"] {
        let reading = reading(&empty, station(OPEN), length(any));
        assert_eq!(suspect(&empty, &reading, false), None);
        assert_eq!(likeliest(&empty, &reading), None);
    }
    assert_eq!(reviewed(&empty), []);
}

#[test]
fn the_order_of_entry_does_not_matter_to_the_review() {
    let mut readings = INCHES.to_vec();
    readings.push((OPEN, "2.1491 in"));
    let expected = vec![(OPEN.to_owned(), Looks::Turn)];
    for turn in 0..readings.len() {
        readings.rotate_left(1);
        let session = measured(vec![Field::DisplayUnit(INCH)], &readings);
        assert_eq!(reviewed(&session), expected, "{turn}");
    }
    readings.reverse();
    let session = measured(vec![Field::DisplayUnit(INCH)], &readings);
    assert_eq!(reviewed(&session), expected);
}

#[test]
fn what_the_person_stood_by_is_not_asked_about_again() {
    let mut session = journals(INCH);
    let mut slip = reading(&session, station(OPEN), length("2.1491 in"));
    slip.kept = true;
    session.apply(&Edit::Add(slip), PHONE).unwrap();
    assert_eq!(reviewed(&session), []);
}

#[test]
fn a_new_nominal_is_witnessed_by_a_caliper_only() {
    // All are half a millimetre small: an undersize, and a turn.
    let nominal = Field::Nominal(Kind::RodJournal, Some(length("54.000 mm")));
    let readings = [
        ("rod_journal/1/whole/first/0", "53.488 mm"),
        ("rod_journal/2/whole/first/0", "53.490 mm"),
    ];
    let fields = || vec![Field::DisplayUnit(MM), nominal.clone()];
    let one = measured(fields(), &readings[..1]);
    assert_eq!(new_nominal(&one, Kind::RodJournal), None);

    let mut session = measured(fields(), &readings);
    let found = new_nominal(&session, Kind::RodJournal).unwrap();
    assert_eq!(found.size.size(), length("53.500 mm").size());
    assert!(!found.witnessed);

    // A further reading of the same micrometer is no witness.
    let again = reading(
        &session,
        station("rod_journal/3/whole/first/0"),
        length("53.489 mm"),
    );
    session.apply(&Edit::Add(again), PHONE).unwrap();
    assert!(!new_nominal(&session, Kind::RodJournal).unwrap().witnessed);

    let caliper = Gauge::usual(GaugeKind::Caliper, MM).unwrap();
    session.apply(&Edit::AddGauge(caliper), PHONE).unwrap();
    let is_caliper = |g: &Gauge| g.kind == GaugeKind::Caliper;
    let mut gauges = session.gauges.iter();
    let id = *gauges.find(|(_, g)| is_caliper(&g.value)).unwrap().0;
    let used = Field::GaugeOf(Kind::RodJournal, Some(id));
    session.apply(&Edit::Set(used), PHONE).unwrap();
    let at = station("rod_journal/3/whole/last/45");
    let read = reading(&session, at, length("53.490 mm"));
    session.apply(&Edit::Add(read), PHONE).unwrap();
    assert!(new_nominal(&session, Kind::RodJournal).unwrap().witnessed);
}
