//! How warm the shop is, what the parts are made of, and which kinds are read
//! five times.

use expect_test::{Expect, expect};
use fenderbench::archive::{import, write};
use fenderbench::session::{Edit, Field, Kind, Session};
use fenderbench::uncertainty::{Climate, Material};
use proptest::prelude::*;

use crate::archive_bad::check;
use crate::archive_flips::check_flips;
use crate::generators::config;
use crate::make::{PHONE, session};

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

#[test]
fn the_frozen_file_says_what_it_said() {
    let session = frozen();
    assert_eq!(session.climate(), Climate::Degrees(-3_500));
    let materials = Kind::ALL.map(|kind| session.material(kind));
    assert_eq!(
        materials,
        [
            Material::CastAluminium,
            Material::PistonAlloy,
            Material::DuctileIron,
            Material::Steel,
        ]
    );
    let studies = Kind::ALL.map(|kind| session.study(kind));
    assert_eq!(studies, [true, false, false, false]);
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
    let materials = Kind::ALL.map(|kind| session.material(kind));
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
}
