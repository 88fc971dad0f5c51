//! What the screen of looks shows.

use expect_test::expect;
use fenderbench::present::{
    BEFORE_STRIP_DOWN, aftermath, looks, looks_at, open_looks, spot_name, spots,
};
use fenderbench::remedy::{Aftermath, Fact, Known, Look, Number, Sight, Spot, Subject};
use fenderbench::session::{Arrangement, Field, Session};

use crate::make::measured;

fn vee() -> Session {
    let fields = vec![
        Field::Arrangement(Arrangement::Vee),
        Field::Cylinders(4),
        Field::RodsPerThrow(2),
        Field::Mains(3),
    ];
    measured(fields, &[])
}

const fn spot(subject: Subject, position: u8) -> Spot {
    Spot { subject, position }
}

const fn seen(subject: Subject, position: u8, look: Look) -> Sight {
    let spot = spot(subject, position);
    Sight {
        spot,
        look,
        seen: true,
    }
}

#[test]
fn every_part_of_the_layout_is_asked_for_before_strip_down_first() {
    let session = vee();
    let view = looks(&session, &[], &[]);
    let told: Vec<String> = view
        .groups
        .iter()
        .map(|group| {
            let names: Vec<_> = group.spots.iter().map(|row| row.name.as_str()).collect();
            format!("{} {}", group.before, names.join(", "))
        })
        .collect();
    expect![[r#"
        true How it ran
        true Cylinder 1, Cylinder 2, Cylinder 3, Cylinder 4
        true Oil and filter
        false Main shells 1, Main shells 2, Main shells 3
        false Rod shells 1, Rod shells 2, Rod shells 3, Rod shells 4
        false Piston 1, Piston 2, Piston 3, Piston 4
        false Bore 1, Bore 2, Bore 3, Bore 4
        false Main journal 1, Main journal 2, Main journal 3
        false Rod journal 1, Rod journal 2
        false Rod 1, Rod 2, Rod 3, Rod 4
        false Block and main line
        false Head 1, Head 2"#]]
    .assert_eq(&told.join("\n"));
    assert_eq!(spots(&session).len(), 33);
    let rows = view.groups.iter().flat_map(|group| &group.spots);
    assert!(
        rows.into_iter()
            .all(|row| row.told == "not looked at" && !row.answered)
    );
    assert!(view.causes.is_empty() && view.debris.is_empty() && view.clashes.is_empty());
}

#[test]
fn a_part_shows_its_looks_with_drawings_and_answers() {
    let shell = spot(Subject::RodShell, 2);
    let mut sights = vec![seen(Subject::RodShell, 2, Look::Spun)];
    sights.push(Sight {
        spot: shell,
        look: Look::Specks,
        seen: false,
    });
    let rows = looks_at(&sights, shell);
    assert!(
        rows.iter().all(|row| row.look != Look::ThrustFace),
        "a rod has no flange"
    );
    let row = |look| rows.iter().find(|row| row.look == look).unwrap();
    assert_eq!(row(Look::Spun).answer, Some(true));
    assert_eq!(row(Look::Specks).answer, Some(false));
    assert_eq!(row(Look::Wiped).answer, None);
    let drawing = row(Look::Spun).drawing.as_deref();
    assert_eq!(drawing, Some("drawings.svg#spun"));
    // Engines and journals are not drawn.
    let journal = looks_at(&sights, spot(Subject::RodJournal, 1));
    assert!(journal.iter().all(|row| row.drawing.is_none()));
    // A crack takes a test: it is not answered along with the rest.
    let open = open_looks(&sights, spot(Subject::RodJournal, 1));
    assert_eq!(open.len() + 1, journal.len());
    assert!(!open.contains(&Look::JournalCrack));
    assert_eq!(open_looks(&sights, shell).len() + 2, rows.len());
}

/// The causes as a person reads them.
fn told(session: &Session, sights: &[Sight], numbers: &[Number]) -> String {
    let view = looks(session, sights, numbers);
    let mut text = String::new();
    for cause in view.causes {
        text += &format!("{} ({})\n", cause.title, cause.word);
        for said in cause.supports {
            text += &format!("  + {} [{}]\n", said.text, said.source);
        }
        for said in cause.contradicts {
            text += &format!("  - {} [{}]\n", said.text, said.source);
        }
        if let Some(needs) = cause.needs {
            text += &format!("  ? {needs}\n");
        }
        text += &format!("  check: {}\n", cause.check.text);
    }
    text
}

#[test]
fn causes_are_told_with_what_supports_contradicts_and_is_needed() {
    let session = vee();
    let sights = [
        seen(Subject::Engine, 1, Look::KnockRap),
        seen(Subject::RodShell, 3, Look::Wiped),
        // Throw 2 carries rods 3 and 4.
        seen(Subject::RodJournal, 2, Look::HeatBlue),
    ];
    let number = |position, fact, known| Number {
        spot: spot(Subject::RodShell, position),
        fact,
        known,
    };
    let numbers = [
        number(3, Fact::OilClearanceSmall, Known::Excluded),
        number(3, Fact::OilClearanceLarge, Known::Proved),
        number(4, Fact::OilClearanceLarge, Known::Unknown),
    ];
    expect![[r#"
        Cylinder 3: A rod bearing is loose (measured)
          + How it ran: A light double rap off load, less with one plug shorted [common practice]
          + Rod shells 3, measured: oil clearance too large [common practice]
          check: its oil clearance
        Cylinder 3: No film of oil (likely: clues from two kinds of part agree)
          + Rod shells 3: Wiped or smeared, worst at the centre [common practice]
          + Rod journal 2: Blue with heat [common practice]
          check: feed holes; pump; pickup; priming; thinned oil
        Cylinder 3: Too little oil clearance (a measurement says no: look again)
          + Rod shells 3: Wiped or smeared, worst at the centre [common practice]
          - Rod shells 3, measured, and not so: oil clearance too small [common practice]
          check: in this order: dirt; cap mixed up or turned; wrong undersize; too much crush
    "#]]
    .assert_eq(&told(&session, &sights, &numbers));
    // What is not in the layout is not used.
    let beyond = [seen(Subject::RodShell, 9, Look::Wiped)];
    assert_eq!(told(&session, &beyond, &[]), "");
}

#[test]
fn contradicting_answers_and_metal_are_told() {
    let session = vee();
    let sights = [
        seen(Subject::Bore, 1, Look::Hatch),
        seen(Subject::Bore, 1, Look::Glazed),
        seen(Subject::Oil, 1, Look::DebrisCopper),
    ];
    let view = looks(&session, &sights, &[]);
    expect![
        "Bore 1: “The hatch still to be seen” and “A shiny mirror” cannot both be. Look again."
    ]
    .assert_eq(&view.clashes.join("\n"));
    assert_eq!(view.debris, ["Oil and filter: Copper or bronze"]);
    let group = view
        .groups
        .iter()
        .find(|group| group.title == "Bore")
        .unwrap();
    let told = &group.spots[0].told;
    assert_eq!(told, "The hatch still to be seen; A shiny mirror");
}

#[test]
fn one_of_a_kind_has_no_number_but_a_cylinder_has() {
    let fields = vec![
        Field::Arrangement(Arrangement::Single),
        Field::Cylinders(1),
        Field::Mains(2),
    ];
    let session = measured(fields, &[]);
    let names = spots(&session);
    let names: Vec<_> = names
        .iter()
        .map(|spot| spot_name(&session, *spot))
        .collect();
    assert!(names.contains(&"Piston 1".to_owned()));
    assert!(names.contains(&"Head".to_owned()));
}

#[test]
fn advice_names_who_says_so() {
    for (text, source) in BEFORE_STRIP_DOWN {
        assert!(text.ends_with('.') && !source.text().is_empty());
    }
    let told = aftermath();
    assert_eq!(told.len(), Aftermath::ALL.len());
    assert!(
        told.iter()
            .all(|said| said.source.starts_with("common practice"))
    );
    assert!(told[6].source.contains("14076"));
}
