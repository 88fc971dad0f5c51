//! The two-cylinder of a stationary pump, in inches, half done on the plain
//! route.
//!
//! Engine, limits and readings are invented; the readings scatter like those
//! of an amateur with a telescoping gauge. Old cast iron, of which only part
//! of a manual is left: sizes have limits, shapes and clearances none,
//! so there is nothing but common rules to hold them against. Both bores are
//! worn, the second beyond its limit, and its piston has collapsed. The last main journal and the rod
//! journals are still to be read, and the micrometer they are read with was
//! never checked.

use fenderbench::quantity::Unit;
use fenderbench::session::{Arrangement, Edit, Field, FirstEnd, GaugeKind, Kind, RouteChoice, Use};

use super::hand::{self, Hand, Morning, gauge, length, on_standard, rows};

const NAME: &str = "Sample: pump twin (invented)";
const UNIT: Unit = Unit::Inch;
const ID: u64 = 0x5a3b_1e00_0000_0006;
const REPLICA: u64 = 0x5a3b_1e02;

/// A telescoping gauge is set and read with the micrometer each time.
const MORNING: Morning = Morning {
    day: "2026-06-13",
    first_hour: 14,
    seconds_each: 70,
};

/// In inches, invented. What is not here is not in what is left of the
/// manual.
const LIMITS: [(&str, &str); 10] = [
    ("bore/size/new_low", "3.2500"),
    ("bore/size/new_high", "3.2510"),
    ("bore/size/service", "3.2560"),
    ("piston/size/new_low", "3.2450"),
    ("piston/size/new_high", "3.2460"),
    ("main_journal/size/new_low", "1.7480"),
    ("main_journal/size/new_high", "1.7490"),
    ("main_journal/size/service", "1.7460"),
    ("rod_journal/size/new_low", "1.6230"),
    ("rod_journal/size/new_high", "1.6240"),
];

/// New shells, as the merchant has them, in inches, invented.
const SHELL_WALLS: [(Kind, &str); 2] = [(Kind::MainShell, "0.0935"), (Kind::RodShell, "0.0622")];

/// What can be had, in steps from standard.
const STOCK: [(Kind, &[&str]); 3] = [
    (Kind::Piston, &["0.020", "0.030", "0.040"]),
    (Kind::MainShell, &["0.010", "0.020"]),
    (Kind::RodShell, &["0.010", "0.020"]),
];

/// As shown by a micrometer that shows 0.0003 in too much: top and bottom of
/// ring travel, each across the crank and along it. The largest was not
/// believed and read three times.
const BORES: [&[&str]; 2] = [
    &["3.2554", "3.2530", "3.2524", "3.2511"],
    &["3.2576 3.2582 3.2576", "3.2547", "3.2521", "3.2516"],
];
const PISTONS: [&[&str]; 2] = [&["3.2461"], &["3.2437"]];
const MAIN_JOURNALS: [&[&str]; 2] = [
    &["1.7485", "1.7483", "1.7484", "1.7483"],
    &["1.7477", "1.7471"],
];

/// The sample.
pub fn sample() -> Result<Hand, String> {
    let set_up = vec![
        Field::Name(NAME.to_owned()),
        Field::Cylinders(2),
        Field::Arrangement(Arrangement::InLine),
        Field::Mains(3),
        Field::RodsPerThrow(1),
        Field::DisplayUnit(UNIT),
        Field::Route(RouteChoice::Plain),
        Field::Use(Use::Towing),
        Field::FirstEnd(FirstEnd::Flywheel),
        Field::Nominal(Kind::Bore, Some(length("3.2500", UNIT)?)),
    ];
    let mut hand = Hand::new(ID, REPLICA, set_up, MORNING);
    hand.apply(&hand::limits(&LIMITS, UNIT)?)?;
    gauges(&mut hand)?;

    let session = &hand.session;
    let mut values = rows(session, Kind::Bore, &BORES);
    values.extend(rows(session, Kind::Piston, &PISTONS));
    values.extend(rows(session, Kind::MainJournal, &MAIN_JOURNALS));
    hand.follow(values)?;
    for (kind, wall) in SHELL_WALLS {
        let wall = length(wall, UNIT)?;
        hand.apply(&Edit::Set(Field::Nominal(kind, Some(wall))))?;
    }
    hand.apply(&hand::stock(&STOCK, UNIT)?)?;
    Ok(hand)
}

/// A large micrometer, checked, the telescoping gauge that is read with it,
/// and a small micrometer as it was found.
fn gauges(hand: &mut Hand) -> Result<(), String> {
    use GaugeKind::{OutsideMicrometer, TelescopingGauge};
    for (kind, range, note) in [
        (OutsideMicrometer, ("3", "4"), "its own setting standard"),
        (
            TelescopingGauge,
            ("2.125", "3.5"),
            "read with the 3-4 in micrometer on its setting standard",
        ),
    ] {
        let id = hand.first(kind)?;
        let described = gauge(kind, "0.0001", range, UNIT)?;
        hand.apply(&Edit::Gauge(id, described))?;
        hand.set(id, note, on_standard("3.0000", "3.0003", UNIT)?)?;
    }
    let small = gauge(OutsideMicrometer, "0.0001", ("1", "2"), UNIT)?;
    hand.take(small, &[Kind::MainJournal, Kind::RodJournal])?;
    Ok(())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::tests::{beyond, is, told};
    use fenderbench::assess::{Which, assess};
    use fenderbench::report::comparison_key;
    use fenderbench::session::{Quantity, Session, Station};

    fn session() -> Session {
        sample().unwrap().session
    }

    #[test]
    fn the_route_stops_in_the_middle_of_the_second_main_journal() {
        let hand = sample().unwrap();
        let next = Station::parse("main_journal/2/whole/last/0");
        assert_eq!(hand.asked(), next);
        // Four to a bore, one to a piston, four and two to a main journal,
        // and two more where one was not believed.
        let standing = hand.session.standing();
        assert_eq!(standing.count(), 4 * 2 + 2 + 4 + 2 + 2);
    }

    #[test]
    fn only_the_second_bore_reads_beyond_a_limit() {
        let session = session();
        let told =
            |kind, position, quantity, which| told(&session, (kind, position), quantity, which);
        assert_eq!(beyond(&session), [(Kind::Bore, 2)]);
        // The mean of 3.2576, 3.2582 and 3.2576, less 0.0003.
        let second = told(Kind::Bore, 2, Quantity::Size, Which::Largest);
        assert_eq!(second, is("3.2575", "beyond_limit"));
        // 3.2554 less 0.0003.
        let first = told(Kind::Bore, 1, Quantity::Size, Which::Largest);
        assert_eq!(first, is("3.2551", "inside_service_limit"));
        // Less 3.2500, which it was made to.
        let wear = told(Kind::Bore, 2, Quantity::Wear, Which::Largest);
        assert_eq!(wear, is("0.0075", "no_limit_given"));
        // 3.2575 less 3.2437, which is 3.2434.
        let wall = told(Kind::Piston, 2, Quantity::Clearance, Which::Largest);
        assert_eq!(wall, is("0.0141", "no_limit_given"));
        // 1.7477 less 1.7471, with a micrometer that nobody checked.
        let oval = told(Kind::MainJournal, 2, Quantity::OutOfRound, Which::Largest);
        assert_eq!(oval, is("0.0006", "no_limit_given"));
    }

    #[test]
    fn sizes_alone_have_limits() {
        for finding in assess(&session()).findings {
            let size = finding.key.quantity == Quantity::Size;
            assert_eq!(!finding.limits.given.is_empty(), size, "{:?}", finding.key);
            let told = comparison_key(finding.comparison());
            let open = ["no_limit_given", "not_measured"].contains(&told);
            assert!(size || open, "{:?}: {told}", finding.key);
        }
    }
}
