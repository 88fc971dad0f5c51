//! The form for what is given besides sizes, and the file that has all of it.

use expect_test::{Expect, expect};
use fenderbench::archive::import;
use fenderbench::present::{given_edit, given_form};
use fenderbench::remedy::{Look, Subject};
use fenderbench::session::{
    Dimension, Edit, Feature, Field, FieldKey, Kind, Session, Space, Volume, usual_steps,
};

use crate::archive_flips::check_flips;
use crate::make::{INCH, MM, document, length, session};

fn frozen() -> Session {
    import(include_str!("../sessions/v1/every-kind.json"))
        .unwrap()
        .session
}

fn lines(session: &Session) -> String {
    let rows = given_form(session);
    let rows = rows.iter();
    let rows = rows.map(|row| format!("{}: {} ({})", row.label, row.text, row.told));
    rows.collect::<Vec<_>>().join("\n")
}

#[test]
fn the_form_asks_what_nobody_measures() {
    expect![[r#"
        Stroke, mm:  (With bores it gives what they displace.)
        Head gasket, its bore, mm:  ()
        Head gasket, thickness, mm:  (As it is when torqued.)
        Crown below the deck, mm:  (At the top, in line with the pin; with a minus where it stands proud.)
        Chamber in the head, cm³:  ()
        Dish of the piston, cm³:  (A dome with a minus.)
        Piston oversizes you can buy, mm:  (One after the other. Blank: common practice, 0.25 0.50 0.75 1.00.)
        Main shell undersizes you can buy, mm:  (One after the other. Blank: common practice, 0.25 0.50 0.75.)
        Rod shell undersizes you can buy, mm:  (One after the other. Blank: common practice, 0.25 0.50 0.75.)
        Left for the hone, mm:  (On diameter. Blank until the shop has said.)
        Boring bar off the axis, mm:  (How far it may stand off the bore. Blank until the shop has said.)
        Greatest bore, mm:  (That wall and gasket allow. Blank where you do not know.)"#]].assert_eq(&lines(&session(vec![])));
}

#[test]
fn the_form_shows_what_the_file_says() {
    let rows = given_form(&frozen());
    let texts: Vec<_> = rows.iter().map(|row| row.text.as_str()).collect();
    assert_eq!(
        texts,
        [
            "88.90",
            "104.14",
            "1.016",
            "-0.15",
            "64",
            "-5.25",
            "0.25 0.50 0.75 1.00",
            "0.010 0.020 in",
            "",
            "0.08",
            "0",
            "",
        ]
    );
    // What it shows is what stands.
    assert_eq!(given_edit(&frozen(), &rows), Ok(Edit::Batch(Vec::new())));
    // In inches the same, each with its unit.
    let mut inches = frozen();
    let edit = Edit::Set(Field::DisplayUnit(INCH));
    inches.apply(&edit, crate::make::PHONE).unwrap();
    let rows = given_form(&inches);
    assert_eq!(rows[0].text, "88.90 mm");
    assert_eq!(rows[3].text, "-0.15 mm");
    assert_eq!(rows[6].text, "0.25 0.50 0.75 1.00 mm");
    assert_eq!(rows[7].text, "0.010 0.020");
    assert_eq!(given_edit(&inches, &rows), Ok(Edit::Batch(Vec::new())));
}

fn typed(key: FieldKey, text: &str) -> Result<Field, String> {
    let mut document = document(vec![]);
    let mut rows = given_form(document.session());
    let row = rows.iter_mut().find(|row| row.key == key).unwrap();
    row.text = text.to_owned();
    let edit = given_edit(document.session(), &rows)?;
    document.dispatch(&edit).unwrap();
    Ok(document.session().field(key))
}

#[test]
fn what_is_typed_is_kept_with_its_unit() {
    let stroke = Dimension::Stroke;
    assert_eq!(
        typed(FieldKey::Length(stroke), " 3.5in "),
        Ok(Field::Length(stroke, Some(length("3.5 in"))))
    );
    let offset = Dimension::BarOffset;
    assert_eq!(
        typed(FieldKey::Length(offset), "0"),
        Ok(Field::Length(offset, Some(length("0 mm"))))
    );
    let dome = Volume::cubic_millimetres(-5_250);
    assert_eq!(
        typed(FieldKey::Volume(Space::PistonTop), "−5,25"),
        Ok(Field::Volume(Space::PistonTop, dome))
    );
    let steps = ["0.25 mm", "0.50 mm"].map(length).to_vec();
    assert_eq!(
        typed(FieldKey::Stock(Kind::Piston), "0,25,  0.50; mm"),
        Ok(Field::Stock(Kind::Piston, Some(steps)))
    );
    let Ok(Field::DeckClearance(Some(proud))) = typed(FieldKey::DeckClearance, "-0.01 in") else {
        panic!("a clearance")
    };
    assert_eq!((proud.text(), proud.unit()), ("-0.01", INCH));
    // Taken back.
    let mut rows = given_form(&frozen());
    rows[0].text.clear();
    let edit = Edit::Batch(vec![Edit::Set(Field::Length(stroke, None))]);
    assert_eq!(given_edit(&frozen(), &rows), Ok(edit));
}

fn refused(key: FieldKey, text: &str, expect: &Expect) {
    expect.assert_eq(&typed(key, text).unwrap_err());
}

#[test]
fn a_refusal_names_its_line() {
    refused(
        FieldKey::Length(Dimension::Stroke),
        "0",
        &expect!["Stroke, mm: Zero or less is no size: type one above zero."],
    );
    refused(
        FieldKey::Length(Dimension::Stroke),
        "long",
        &expect!["Stroke, mm: “long” is not a number: digits and one point only."],
    );
    refused(
        FieldKey::Volume(Space::Chamber),
        "64.1234",
        &expect!["Chamber in the head, cm³: type cubic centimetres, as 64.5."],
    );
    refused(
        FieldKey::Volume(Space::Chamber),
        "3000",
        &expect!["Chamber in the head, cm³: type cubic centimetres, as 64.5."],
    );
    refused(
        FieldKey::DeckClearance,
        "below",
        &expect!["Crown below the deck, mm: “below” is not a number: digits and one point only."],
    );
    refused(
        FieldKey::Stock(Kind::Piston),
        "0.25 0.00",
        &expect!["Piston oversizes you can buy, mm: Zero or less is no size: type one above zero."],
    );
    refused(
        FieldKey::Stock(Kind::MainShell),
        "1 2 3 4 5 6 7 8 9 10 11 12 13",
        &expect![
            "Main shell undersizes you can buy, mm: At most 12 sizes of one part can be listed: leave out what you would not buy."
        ],
    );
}

#[test]
fn usual_steps_are_lengths_and_rise() {
    for kind in [Kind::Piston, Kind::MainShell, Kind::RodShell] {
        for unit in [MM, INCH] {
            let text = usual_steps(kind, unit).join(" ");
            let Ok(Field::Stock(_, Some(steps))) =
                typed(FieldKey::Stock(kind), &format!("{text} {}", unit.sign()))
            else {
                panic!("{text}")
            };
            assert!(steps.windows(2).all(|two| two[0].size() < two[1].size()));
        }
    }
}

#[test]
fn the_frozen_file_says_what_it_said() {
    let session = frozen();
    assert!(session.is_asked(Kind::Head) && !session.is_asked(Kind::RodJournal));
    let spots = [1, 2, 3].map(|main| session.high_spot(main));
    assert_eq!(spots, [None, Some(5), None]);
    assert_eq!(session.length(Dimension::GreatestBore), None);
    assert_eq!(session.stock(Kind::RodShell), None);
    let mut read: Vec<_> = session.standing().map(|(_, r)| r.station.kind).collect();
    read.dedup();
    // Every kind but the four usual ones.
    assert_eq!(
        Kind::ALL.iter().filter(|kind| !kind.is_usual()).count(),
        Kind::ALL.iter().filter(|kind| read.contains(kind)).count()
    );
    assert!(
        session
            .standing()
            .all(|(_, r)| session.has(Feature::of(r.station)))
    );
    let seen: Vec<_> = session
        .sights()
        .map(|sight| (sight.look, sight.spot.subject, sight.seen))
        .collect();
    assert_eq!(
        seen,
        [
            (Look::DebrisSoft, Subject::Oil, true),
            (Look::Wiped, Subject::MainShell, true),
            (Look::Hatch, Subject::Bore, false),
        ]
    );
    check_flips(&session, |text| 0..text.len());
}
