//! How warm the shop is, what the parts are made of, which kinds are read
//! five times, and gauges that were checked again.

use expect_test::{Expect, expect};
use fenderbench::archive::{import, write};
use fenderbench::quantity::{Deviation, EnteredDeviation};
use fenderbench::session::{
    Against, Edit, Field, Indication, Kind, Refused, Sense, Session, SetTo, Setting, Stamp,
};
use fenderbench::uncertainty::{Climate, Material};
use proptest::prelude::*;

use crate::archive_bad::check;
use crate::archive_flips::check_flips;
use crate::generators::{config, set_to};
use crate::make::{MM, PHONE, length, session, size};

fn file() -> &'static str {
    include_str!("../sessions/v1/conditions.json")
}

fn frozen() -> Session {
    import(file()).unwrap().session
}

/// The file with one piece of text changed and no check sum.
fn changed(from: &str, to: &str) -> String {
    assert!(file().contains(from), "{from}");
    file()
        .replacen("\"check\":", "\"old_check\":", 1)
        .replacen(from, to, 1)
}

fn drifts(session: &Session) -> Vec<Option<Deviation>> {
    let settings = session.settings.values();
    settings
        .filter_map(|setting| setting.value.set.as_ref().map(SetTo::drift))
        .collect()
}

fn difference(greater: &str, smaller: &str) -> Deviation {
    size(greater) - size(smaller)
}

#[test]
fn the_frozen_file_says_what_it_said() {
    let session = frozen();
    assert_eq!(session.climate(), Climate::Degrees(-3_500));
    let materials = crate::make::USUAL.map(|kind| session.material(kind));
    assert_eq!(
        materials,
        [
            Material::CastAluminium,
            Material::PistonAlloy,
            Material::DuctileIron,
            Material::Steel,
        ]
    );
    let studies = crate::make::USUAL.map(|kind| session.study(kind));
    assert_eq!(studies, [true, false, false, false]);
    // From 0.002 to 0.001 mm too much; a plus is smaller, so from −0.0002 to
    // 0.0003 in the dial has come to read 0.0005 in too little.
    let dial = difference("1.9995 in", "2.0000 in");
    let micrometer = difference("50.001 mm", "50.002 mm");
    assert_eq!(drifts(&session), [Some(micrometer), Some(dial), None]);
    // No size hangs on it: 2.0000 in and 0.0010 more, 50.752 less 0.002 mm.
    let readings = session.readings.values();
    let sizes: Vec<_> = readings.map(|r| session.size_of(r)).collect();
    assert_eq!(sizes, [Some(size("2.0010 in")), Some(size("50.750 mm"))]);
}

#[test]
fn a_changed_byte_is_noticed() {
    check_flips(&frozen(), |text| 0..text.len());
}

#[test]
fn nobody_has_to_say_anything() {
    let session = session(vec![]);
    assert_eq!(session.climate(), Climate::default());
    assert_eq!(session.climate(), Climate::Mild);
    let materials = crate::make::USUAL.map(|kind| session.material(kind));
    assert_eq!(
        materials,
        [
            Material::GreyIron,
            Material::PistonAlloy,
            Material::Steel,
            Material::Steel,
        ]
    );
    assert!(Kind::ALL.into_iter().all(|kind| !session.study(kind)));
}

#[test]
fn a_climate_has_one_text() {
    for (text, climate) in [
        ("cold", Climate::Cold),
        ("mild", Climate::Mild),
        ("hot", Climate::Hot),
        ("0", Climate::Degrees(0)),
        ("20", Climate::Degrees(20_000)),
        ("21.5", Climate::Degrees(21_500)),
        ("-0.05", Climate::Degrees(-50)),
        ("-40", Climate::Degrees(-40_000)),
        ("8.125", Climate::Degrees(8_125)),
    ] {
        assert_eq!(climate.to_string(), text);
        assert_eq!(Climate::parse(text), Some(climate), "{text}");
    }
    for text in [
        "", "-", ".", "warm", "Cold", "-0", "+5", "05", "5.", ".5", "5.0", "5.50", "5,5", "−5",
        " 5", "5.-5", "5.+5", "1.2345", "1e1", "5 °C", "NaN", "99999999",
    ] {
        assert_eq!(Climate::parse(text), None, "{text}");
    }
}

#[test]
fn only_what_a_shop_can_be_is_taken() {
    let mut session = session(vec![]);
    let mut before = Climate::Mild;
    for degrees in [-40_000, 60_000, 0] {
        let climate = Climate::Degrees(degrees);
        let inverse = session.apply(&Edit::Set(Field::Climate(climate)), PHONE);
        assert_eq!(inverse, Ok(Edit::Set(Field::Climate(before))));
        before = climate;
    }
    for degrees in [-80_000, -40_001, 60_001, i32::MIN, i32::MAX] {
        let edit = Edit::Set(Field::Climate(Climate::Degrees(degrees)));
        let why = session.apply(&edit, PHONE).unwrap_err();
        assert_eq!(
            why.to_string(),
            "The shop must be from −40 to 60 °C: read the thermometer again."
        );
        assert_eq!(session.climate(), before);
    }
}

#[test]
fn every_material_has_a_word() {
    let words = Material::ALL.map(Material::key);
    expect![[r#"["steel", "grey_iron", "ductile_iron", "piston_alloy", "cast_aluminium"]"#]]
        .assert_eq(&format!("{words:?}"));
    let back = words.map(Material::from_key);
    assert_eq!(back, Material::ALL.map(Some));
    assert_eq!(Material::from_key("Steel"), None);
}

#[test]
fn what_a_file_cannot_say() {
    let refused = |from: &str, to: &str, expect: &Expect| check(&changed(from, to), expect);
    let climate = "\"value\":\"-3.5\"";
    refused(
        climate,
        "\"value\":\"-80\"",
        &expect![
            "In set_up, climate: The shop must be from −40 to 60 °C: read the thermometer again."
        ],
    );
    refused(
        climate,
        "\"value\":-3.5",
        &expect!["In set_up, climate: “value” is not a text."],
    );
    refused(
        "\"value\":\"ductile_iron\"",
        "\"value\":null",
        &expect!["In set_up, material/main_journal: “value” is not a text."],
    );
    let study = "\"value\":true";
    for other in ["1", "null", "\"true\""] {
        refused(
            study,
            &format!("\"value\":{other}"),
            &expect!["In set_up, study/bore: “value” is neither true nor false."],
        );
    }
    refused(
        study,
        "\"times\":5",
        &expect!["In set_up, study/bore: “value” is missing."],
    );
    let again = "\"again_deviation\":\"0.0003\"";
    refused(
        again,
        "\"again_deviation\":\"+0.0003\"",
        &expect![
            "In settings, 17@fe0d000000000019: “again_deviation” is not written as a plain decimal."
        ],
    );
    refused(
        again,
        "\"again_deviation\":null",
        &expect!["In settings, 17@fe0d000000000019: “again_deviation” is not a text."],
    );
    refused(
        "\"again\":\"50.001\"",
        "\"again\":\"-50.001\"",
        &expect![
            "In settings, 16@fe0d000000000019: “-50.001” is not a number: digits and one point only."
        ],
    );
}

#[test]
fn words_of_a_later_version_are_kept_and_not_used() {
    let check = |from: &str, to: &str, is_default: fn(&Session) -> bool| {
        assert!(!is_default(&frozen()), "{to}");
        let session = import(&changed(from, to)).unwrap().session;
        assert!(is_default(&session), "{to}");
        let text = write(&session, PHONE);
        assert!(text.contains(to), "{to}");
        assert_eq!(import(&text).unwrap().session, session);
    };
    let climate = "\"value\":\"-3.5\"";
    check(climate, "\"value\":\"by_the_sea\"", |s| {
        s.climate() == Climate::Mild
    });
    check(climate, "\"value\":\"-3.50\"", |s| {
        s.climate() == Climate::Mild
    });
    let ductile = "\"value\":\"ductile_iron\"";
    check(ductile, "\"value\":\"titanium\"", |s| {
        s.material(Kind::MainJournal) == Material::Steel
    });
    check("\"material/bore\"", "\"material/cam_lobe\"", |s| {
        s.material(Kind::Bore) == Material::GreyIron
    });
    check("\"study/bore\"", "\"study/cam_lobe\"", |s| {
        !s.study(Kind::Bore)
    });
}

#[test]
fn a_check_of_the_other_sort_in_a_file_is_kept_and_is_no_drift() {
    let (from, to) = ("\"again\":\"50.001\"", "\"again_deviation\":\"-0.001\"");
    let session = import(&changed(from, to)).unwrap().session;
    assert_eq!(drifts(&session)[0], None);
    assert!(write(&session, PHONE).contains(to));
}

fn by(text: &str) -> Indication {
    Indication::Deviation(EnteredDeviation::parse(text, MM).unwrap())
}

/// The setting of this number in the frozen session, checked again so.
fn checked(session: &Session, number: usize, again: Option<Indication>) -> (Stamp, Setting) {
    let (id, setting) = session.settings.iter().nth(number).unwrap();
    let mut setting = setting.value.clone();
    if let Some(set) = &mut setting.set {
        set.again = again;
    }
    (*id, setting)
}

#[test]
fn checking_again_is_an_edit_that_can_be_taken_back() {
    let mut session = frozen();
    let (id, setting) = checked(&session, 3, Some(length("50.000 mm").into()));
    let edit = Edit::Setting(id, setting);
    let inverse = session.apply(&edit, PHONE).unwrap();
    let drift = difference("50.000 mm", "50.002 mm");
    assert_eq!(drifts(&session)[2], Some(drift));
    session.apply(&inverse, PHONE).unwrap();
    assert_eq!(drifts(&session), drifts(&frozen()));
}

#[test]
fn checking_again_shows_what_the_gauge_shows() {
    let mut session = frozen();
    let before = session.clone();
    let sizes = Some(length("50.000 mm").into());
    for (number, again) in [(1, Some(by("0.001"))), (2, sizes)] {
        let (id, setting) = checked(&session, number, again);
        for edit in [
            Edit::Setting(id, setting.clone()),
            Edit::AddSetting(setting),
        ] {
            assert_eq!(session.apply(&edit, PHONE), Err(Refused::NotSet));
            assert_eq!(session, before);
        }
    }
}

#[test]
fn what_a_gauge_shows_is_in_the_unit_of_its_setting() {
    let mut session = frozen();
    let (id, mut setting) = checked(&session, 1, Some(length("1.9685 in").into()));
    let mut refused = |setting: &Setting| {
        let edit = Edit::Setting(id, setting.clone());
        session.apply(&edit, PHONE).unwrap_err().to_string()
    };
    let sentence = "The gauge was set in mm: say in mm too what it shows.";
    assert_eq!(refused(&setting), sentence);
    if let Some(set) = &mut setting.set {
        set.shows = set.again.take().unwrap();
    }
    assert_eq!(refused(&setting), sentence);
}

#[test]
fn the_way_of_the_dial_is_the_way_of_the_drift() {
    let set = SetTo {
        against: Against::Standard,
        size: length("82.000 mm"),
        shows: by("0.001"),
        again: Some(by("0.004")),
        sense: Sense::PlusLarger,
    };
    let more = difference("82.003 mm", "82.000 mm");
    assert_eq!(set.drift(), Some(more));
    let sense = Sense::PlusSmaller;
    assert_eq!(
        SetTo {
            sense,
            ..set.clone()
        }
        .drift(),
        Some(-more)
    );
    // What is set to 82 mm reads a bore of 82 mm as 82 mm and the drift.
    let again = set.again.clone().unwrap();
    assert_eq!(set.size_at(&again), Some(size("82.003 mm")));
    assert_eq!(SetTo { again: None, ..set }.drift(), None);
}

proptest! {
    #![proptest_config(config(512))]

    #[test]
    fn any_temperature_reads_back(thousandths: i32) {
        let climate = Climate::Degrees(thousandths);
        prop_assert_eq!(Climate::parse(&climate.to_string()), Some(climate));
    }

    #[test]
    fn no_text_reads_as_another(text in "-?[0-9.]{0,6}") {
        let back = Climate::parse(&text).map(|climate| climate.to_string());
        prop_assert!(back.is_none_or(|back| back == text));
    }

    #[test]
    fn a_drift_back_is_the_drift_below_nothing(set in set_to()) {
        let Some(again) = set.again.clone() else {
            prop_assert_eq!(set.drift(), None);
            return Ok(());
        };
        let back = SetTo { shows: again, again: Some(set.shows.clone()), ..set.clone() };
        prop_assert_eq!(back.drift(), set.drift().map(|drift| -drift));
        // A reading of what it showed then is the size and the drift.
        let read = set.again.as_ref().and_then(|again| set.size_at(again));
        prop_assert_eq!(read, set.drift().map(|drift| set.size.size() + drift));
    }
}
