//! Which facts the readings prove, for the causes of what was seen.

use fenderbench::assess::{assess, facts};
use fenderbench::present::looks;
use fenderbench::remedy::{Fact, Known, Look, Sight, Spot, Standing, Subject};
use fenderbench::session::{Arrangement, Field, Session};

use crate::make::{limit, measured};

/// What is known of a fact at a spot; the strongest of what is told.
fn known(session: &Session, subject: Subject, position: u8, fact: Fact) -> Vec<Known> {
    let spot = Spot { subject, position };
    let all = facts(session, &assess(session));
    let mut of: Vec<_> = all
        .into_iter()
        .filter(|number| number.spot == spot && number.fact == fact)
        .map(|number| number.known)
        .collect();
    of.sort_unstable();
    of.dedup();
    of
}

/// Two bores, the first tapered by 0.3 mm against a limit of 0.1 mm.
fn tapered() -> Session {
    let fields = vec![
        Field::Cylinders(2),
        limit("bore/taper/service", "0.1 mm"),
        limit("bore/out_of_round/service", "0.1 mm"),
    ];
    let readings = [
        ("bore/1/whole/top/0", "80.300 mm"),
        ("bore/1/whole/top/90", "80.300 mm"),
        ("bore/1/whole/bottom/0", "80.000 mm"),
        ("bore/1/whole/bottom/90", "80.000 mm"),
        ("bore/2/whole/top/0", "80.000 mm"),
        ("bore/2/whole/top/90", "80.000 mm"),
        ("bore/2/whole/bottom/0", "80.000 mm"),
        ("bore/2/whole/bottom/90", "80.000 mm"),
    ];
    measured(fields, &readings)
}

#[test]
fn a_proved_taper_is_a_fact_and_what_was_not_read_is_not_known() {
    let session = tapered();
    let taper = |bore| known(&session, Subject::Bore, bore, Fact::BoreTapered);
    assert_eq!(taper(1), [Known::Proved]);
    assert_eq!(taper(2), [Known::Excluded]);
    let journal = known(&session, Subject::MainJournal, 1, Fact::JournalTapered);
    assert_eq!(journal, [Known::Unknown]);
    let wall = known(&session, Subject::Piston, 1, Fact::WallClearanceLarge);
    assert_eq!(wall, [Known::Unknown]);
}

#[test]
fn a_measured_bore_decides_where_the_oil_went() {
    let session = tapered();
    let spot = Spot {
        subject: Subject::Engine,
        position: 1,
    };
    let smoke = [Sight {
        spot,
        look: Look::SmokeUnderLoad,
        seen: true,
    }];
    let view = looks(&session, &smoke, &facts(&session, &assess(&session)));
    let first = &view.causes[0];
    assert_eq!(
        first.title,
        "Cylinder 1: Rings or bore let oil and gas past"
    );
    assert_eq!(first.standing, Standing::Measured);
    let measured = "Bore 1, measured: the bore tapered";
    assert!(first.supports.iter().any(|said| said.text == measured));
}

#[test]
fn a_rod_journal_tells_of_both_its_rods_and_a_barrel_has_a_side() {
    let fields = vec![
        Field::Arrangement(Arrangement::Vee),
        Field::Cylinders(4),
        Field::RodsPerThrow(2),
        Field::Mains(3),
        limit("rod_journal/taper/service", "0.020 mm"),
    ];
    let at = |level: &str, degrees: &str| format!("rod_journal/2/whole/{level}/{degrees}");
    let places: Vec<_> = ["first", "centre", "last"]
        .into_iter()
        .flat_map(|level| ["0", "90"].map(|degrees| (level, at(level, degrees))))
        .collect();
    let with = |centre: &str| {
        let value = |level: &str| {
            if level == "centre" {
                centre
            } else {
                "50.000 mm"
            }
            .to_owned()
        };
        let values: Vec<_> = places
            .iter()
            .map(|(level, at)| (at, value(level)))
            .collect();
        let readings: Vec<_> = values
            .iter()
            .map(|(at, v)| (at.as_str(), v.as_str()))
            .collect();
        measured(fields.clone(), &readings)
    };
    let barrel = with("50.200 mm");
    for rod in [3, 4] {
        let of = |fact| known(&barrel, Subject::RodJournal, rod, fact);
        assert_eq!(of(Fact::JournalBarrel), [Known::Proved]);
        assert_eq!(of(Fact::JournalHourGlass), [Known::Excluded]);
        assert_eq!(of(Fact::JournalTapered), [Known::Excluded]);
    }
    let hour_glass = with("49.800 mm");
    let of = |fact| known(&hour_glass, Subject::RodJournal, 3, fact);
    assert_eq!(of(Fact::JournalBarrel), [Known::Excluded]);
    assert_eq!(of(Fact::JournalHourGlass), [Known::Proved]);
    let unread = known(&barrel, Subject::RodJournal, 1, Fact::JournalTapered);
    assert_eq!(unread, [Known::Unknown]);
}
