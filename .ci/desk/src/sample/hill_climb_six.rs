//! The in-line six of a hill-climb car, complete on the standard route.
//!
//! Engine, limits and readings are invented; the readings scatter like those
//! of a careful amateur. What they tell: the engine burned oil and had metal
//! in it. Bore 5 is worn beyond its limit, most at the top. Rod journal 2 is
//! oval at 45°: in the two usual directions it reads within its service
//! limit, and only the staggered end shows it. Main journal 3 is hour-glass.
//!
//! The bores are read with a dial bore gauge set in the pistons' micrometer;
//! for piston-to-wall in bore 5 it is set on piston 5 itself.

use fenderbench::quantity::{EnteredDeviation, Unit};
use fenderbench::session::{
    Against, Arrangement, Edit, Feature, Field, FirstEnd, Gauge, GaugeKind, Indication, Kind,
    RouteChoice, Sense, SetTo, Stamp, Use,
};

use super::hand::{self, Hand, Morning, gauge, length, on_standard, places, rows};

const NAME: &str = "Sample: hill-climb six (invented)";
const UNIT: Unit = Unit::Millimetre;
const ID: u64 = 0x5a3b_1e00_0000_0001;
const REPLICA: u64 = 0x5a3b_1e01;

/// A dial bore gauge is rocked once and a micrometer closed once.
const MORNING: Morning = Morning {
    day: "2026-05-09",
    first_hour: 9,
    seconds_each: 40,
};

/// In millimetres, invented.
const LIMITS: [(&str, &str); 28] = [
    ("bore/size/new_low", "82.000"),
    ("bore/size/new_high", "82.020"),
    ("bore/size/service", "82.100"),
    ("bore/wear/service", "0.080"),
    ("bore/out_of_round/new_high", "0.010"),
    ("bore/out_of_round/service", "0.040"),
    ("bore/taper/new_high", "0.020"),
    ("bore/taper/service", "0.040"),
    ("piston/size/new_low", "81.950"),
    ("piston/size/new_high", "81.970"),
    ("piston/size/service", "81.920"),
    ("piston/clearance/new_low", "0.040"),
    ("piston/clearance/new_high", "0.070"),
    ("piston/clearance/service", "0.140"),
    ("main_journal/size/new_low", "59.982"),
    ("main_journal/size/new_high", "60.000"),
    ("main_journal/size/service", "59.960"),
    ("main_journal/out_of_round/new_high", "0.005"),
    ("main_journal/out_of_round/service", "0.015"),
    ("main_journal/taper/new_high", "0.008"),
    ("main_journal/taper/service", "0.015"),
    ("rod_journal/size/new_low", "49.984"),
    ("rod_journal/size/new_high", "50.000"),
    ("rod_journal/size/service", "49.960"),
    ("rod_journal/out_of_round/new_high", "0.005"),
    ("rod_journal/out_of_round/service", "0.015"),
    ("rod_journal/taper/new_high", "0.005"),
    ("rod_journal/taper/service", "0.015"),
];

/// What the plan wants to know of the bearings, which nobody measured yet: in
/// millimetres, invented.
const BEARINGS: [(&str, &str); 18] = [
    ("main_housing/size/new_low", "63.990"),
    ("main_housing/size/new_high", "64.010"),
    ("main_housing/out_of_round/service", "0.025"),
    ("main_shell/size/new_low", "1.980"),
    ("main_shell/size/new_high", "1.985"),
    ("main_shell/clearance/new_low", "0.025"),
    ("main_shell/clearance/new_high", "0.065"),
    ("main_shell/clearance/service", "0.090"),
    ("big_end/size/new_low", "52.990"),
    ("big_end/size/new_high", "53.010"),
    ("big_end/out_of_round/service", "0.025"),
    ("rod_shell/size/new_low", "1.480"),
    ("rod_shell/size/new_high", "1.485"),
    ("rod_shell/clearance/new_low", "0.020"),
    ("rod_shell/clearance/new_high", "0.060"),
    ("rod_shell/clearance/service", "0.085"),
    ("run_out/size/new_high", "0.020"),
    ("run_out/size/service", "0.040"),
];

/// What can be had, in steps from standard.
const STOCK: [(Kind, &[&str]); 3] = [
    (Kind::Piston, &["0.25", "0.50", "0.75", "1.00"]),
    (Kind::MainShell, &["0.025", "0.25", "0.50"]),
    (Kind::RodShell, &["0.025", "0.25", "0.50"]),
];

/// What the dial showed in each bore, from 82.000 mm: top and bottom of ring
/// travel, each across the crank and along it.
const BORES: [&[&str]; 6] = [
    &["0.021", "0.018", "0.011", "0.009"],
    &["0.041", "0.032", "0.017", "0.013"],
    &["0.036", "0.028", "0.018", "0.013"],
    &["0.062", "0.047", "0.022", "0.022"],
    &["0.129", "0.102", "0.034", "0.026"],
    &["0.042", "0.031", "0.019", "0.016"],
];
const PISTONS: [&[&str]; 6] = [
    &["81.957"],
    &["81.957"],
    &["81.957"],
    &["81.952"],
    &["81.939"],
    &["81.957"],
];
/// As shown by a micrometer that shows 0.002 mm too much. One slip of a turn
/// of the thimble, half a millimetre, is struck and read again.
const MAIN_JOURNALS: [&[&str]; 7] = [
    &["59.995", "59.996", "59.995", "59.997"],
    &["59.987", "59.985", "59.987", "59.984"],
    &["59.980", "59.975", "59.982", "59.978"],
    &["59.991", "59.991", "59.489x 59.989", "59.987"],
    &["59.988", "59.983", "59.986", "59.982"],
    &["59.991", "59.995", "59.995", "59.989"],
    &["59.992", "59.996", "59.997", "59.996"],
];
/// As shown by a micrometer that shows 0.001 mm too little.
const ROD_JOURNALS: [&[&str]; 6] = [
    &["49.990", "49.986", "49.990", "49.991"],
    &["49.961", "49.959", "49.984", "49.939"],
    &["49.982", "49.984", "49.983", "49.984"],
    &["49.988", "49.987", "49.991", "49.988"],
    &["49.983", "49.979", "49.979", "49.980"],
    &["49.984", "49.989", "49.990", "49.987"],
];

/// What only the worst of a kind are asked for.
const OF_THE_WORST: [(&str, &str); 10] = [
    ("bore/5/whole/middle/0", "0.072"),
    ("bore/5/whole/middle/90", "0.055"),
    ("bore/5/whole/reference/0", "0.011"),
    ("bore/5/whole/reference/90", "0.009"),
    ("bore/4/whole/reference/0", "0.009"),
    ("bore/4/whole/reference/90", "0.008"),
    ("main_journal/3/whole/centre/0", "59.968"),
    ("main_journal/3/whole/centre/90", "59.964"),
    ("rod_journal/2/whole/centre/0", "49.962"),
    ("rod_journal/2/whole/centre/90", "49.961"),
];

/// Taken again at the end, in this order: a tenth of all, and the worst place
/// of bores, mains and rods. Before the worst place of the bores the gauge is
/// set on piston 5, and afterwards it goes on as before.
const AGAIN: [(&str, &str); 2] = [
    ("bore/2/whole/top/90", "0.030"),
    ("bore/4/whole/bottom/90", "0.021"),
];
const AGAIN_ON_PISTON: [(&str, &str); 1] = [("bore/5/whole/top/0", "0.187")];
const AGAIN_AFTERWARDS: [(&str, &str); 8] = [
    ("bore/5/whole/middle/90", "0.058"),
    ("piston/6/skirt/gauge_point/0", "81.956"),
    ("main_journal/3/whole/first/90", "59.977"),
    ("main_journal/5/whole/last/135", "59.984"),
    ("main_journal/3/whole/centre/90", "59.966"),
    ("rod_journal/2/whole/last/135", "49.937"),
    ("rod_journal/3/whole/first/90", "49.986"),
    ("rod_journal/5/whole/last/135", "49.979"),
];

/// The sample.
pub fn sample() -> Result<Hand, String> {
    let set_up = vec![
        Field::Name(NAME.to_owned()),
        Field::Cylinders(6),
        Field::Arrangement(Arrangement::InLine),
        Field::Mains(7),
        Field::RodsPerThrow(1),
        Field::DisplayUnit(UNIT),
        Field::Route(RouteChoice::Standard),
        Field::Use(Use::Track),
        Field::FirstEnd(FirstEnd::Timing),
        Field::Nominal(Kind::Bore, Some(length("82.000", UNIT)?)),
    ];
    let mut hand = Hand::new(ID, REPLICA, set_up, MORNING);
    hand.apply(&limits()?)?;
    let dial = gauges(&mut hand)?;

    let session = &hand.session;
    let mut first = rows(session, Kind::Bore, &BORES);
    first.extend(rows(session, Kind::Piston, &PISTONS));
    first.extend(rows(session, Kind::MainJournal, &MAIN_JOURNALS));
    first.extend(rows(session, Kind::RodJournal, &ROD_JOURNALS));
    first.extend(places(&OF_THE_WORST)?);
    hand.follow(first)?;

    hand.follow(places(&AGAIN)?)?;
    let piston_5 = Feature {
        kind: Kind::Piston,
        position: 5,
    };
    let on_piston = hand.set(
        dial,
        "75-100 mm micrometer still locked on piston 5",
        dial_at(Against::Feature(piston_5), "81.940")?,
    )?;
    hand.follow(places(&AGAIN_ON_PISTON)?)?;
    hand.apply(&on_piston)?;
    hand.follow(places(&AGAIN_AFTERWARDS)?)?;
    hand.apply(&hand::limits(&BEARINGS, UNIT)?)?;
    hand.apply(&hand::stock(&STOCK, UNIT)?)?;
    Ok(hand)
}

/// Three micrometers, each checked on its standard, and the dial bore gauge,
/// which is given back.
fn gauges(hand: &mut Hand) -> Result<Stamp, String> {
    use GaugeKind::{DialBoreGauge, OutsideMicrometer, TelescopingGauge};
    // The two that every session starts with: one is at hand, one is not.
    let large = hand.first(OutsideMicrometer)?;
    let range = ("75", "100");
    let described = gauge(OutsideMicrometer, "0.001", range, UNIT)?;
    hand.apply(&Edit::Gauge(large, described))?;
    let telescoping = hand.first(TelescopingGauge)?;
    let put_away = Gauge {
        away: true,
        ..gauge(TelescopingGauge, "0.001", ("54", "90"), UNIT)?
    };
    hand.apply(&Edit::Gauge(telescoping, put_away))?;

    let micrometer = |range| gauge(OutsideMicrometer, "0.001", range, UNIT);
    let middle = hand.take(micrometer(("50", "75"))?, &[Kind::MainJournal])?;
    let small = hand.take(micrometer(("25", "50"))?, &[Kind::RodJournal])?;
    for (id, size, shows) in [
        (large, "75.000", "75.000"),
        (middle, "50.000", "50.002"),
        (small, "25.000", "24.999"),
    ] {
        hand.set(
            id,
            "its own setting standard",
            on_standard(size, shows, UNIT)?,
        )?;
    }
    let dial = gauge(DialBoreGauge, "0.001", ("50", "150"), UNIT)?;
    let dial = hand.take(dial, &[Kind::Bore])?;
    let set = dial_at(Against::Micrometer, "82.000")?;
    hand.set(dial, "75-100 mm micrometer locked at 82.000 mm", set)?;
    Ok(dial)
}

/// The dial turned to zero at a size.
fn dial_at(against: Against, size: &str) -> Result<SetTo, String> {
    let zero = EnteredDeviation::parse("0.000", UNIT).map_err(|why| why.to_string())?;
    Ok(SetTo {
        against,
        size: length(size, UNIT)?,
        shows: Indication::Deviation(zero),
        again: None,
        sense: Sense::PlusLarger,
    })
}

/// The edit that sets the sample's limits.
pub fn limits() -> Result<Edit, String> {
    hand::limits(&LIMITS, UNIT)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::sample::tests::{beyond, is, told};
    use fenderbench::assess::{Which, assess};
    use fenderbench::present::{Why, route};
    use fenderbench::session::{Direction, Level, Quantity, Session, Setting};

    const BORE_5: (Kind, u8) = (Kind::Bore, 5);
    const PISTON_5: (Kind, u8) = (Kind::Piston, 5);
    const ROD_2: (Kind, u8) = (Kind::RodJournal, 2);
    const MAIN_3: (Kind, u8) = (Kind::MainJournal, 3);

    fn session() -> Session {
        sample().unwrap().session
    }

    #[test]
    fn the_route_is_complete_with_its_repeats() {
        let hand = sample().unwrap();
        // Nothing but what would settle what is too close to call.
        let stops = route(&hand.session, &assess(&hand.session));
        let open = stops.iter().filter(|stop| !stop.is_read());
        assert!(open.clone().all(|stop| matches!(stop.why, Why::Settle(..))));
        assert!(0 < open.count());
        // Four to a bore and to a journal, one to a piston, ten of the worst.
        let first = 4 * (6 + 7 + 6) + 6 + 10;
        // Every tenth from the sixth on, and the worst of three kinds, of
        // which one is a tenth anyway.
        let again = 9 + 3 - 1;
        assert_eq!(hand.session.standing().count(), first + again);
    }

    #[test]
    fn only_bore_5_its_piston_in_it_and_rod_journal_2_read_beyond_their_limits() {
        let session = session();
        assert_eq!(beyond(&session), [BORE_5, PISTON_5, ROD_2]);
        let told = |feature, quantity, which| told(&session, feature, quantity, which);

        // 82.000 + 0.129 and, on the piston, 81.940 + 0.187: their mean.
        let largest = told(BORE_5, Quantity::Size, Which::Largest);
        assert_eq!(largest, is("82.128", "beyond_limit"));
        // Less the mean of the unworn 82.011 and 82.009.
        let wear = told(BORE_5, Quantity::Wear, Which::Largest);
        assert_eq!(wear, is("0.118", "beyond_limit"));
        // Less 82.034. Above zero: larger at the top.
        let taper = told(BORE_5, Quantity::Taper, Which::Largest);
        assert_eq!(taper, is("0.094", "beyond_limit"));
        // What the dial showed from the piston; the sizes would give 0.189.
        let wall = told(PISTON_5, Quantity::Clearance, Which::Largest);
        assert_eq!(wall, is("0.187", "beyond_limit"));
        let piston = told(PISTON_5, Quantity::Size, Which::Mean);
        assert_eq!(piston, is("81.939", "inside_service_limit"));
    }

    #[test]
    fn the_error_of_a_micrometer_is_taken_off() {
        let session = session();
        let smallest = |kind, position| {
            let feature = (kind, position);
            told(&session, feature, Quantity::Size, Which::Smallest)
        };
        // 59.964 and 59.966 less 0.002.
        let main = smallest(Kind::MainJournal, 3);
        assert_eq!(main, is("59.963", "inside_service_limit"));
        // 49.939 and 49.937 and 0.001 more.
        let rod = smallest(Kind::RodJournal, 2);
        assert_eq!(rod, is("49.939", "beyond_limit"));
    }

    #[test]
    fn the_oval_rod_journal_shows_at_45_degrees_and_nowhere_else() {
        let session = session();
        let at = |level, direction| {
            let which = Which::At(level, direction);
            told(&session, ROD_2, Quantity::OutOfRound, which)
        };
        let (across, turned) = (Direction::D0, Direction::D45);
        assert_eq!(at(Level::First, across).1, "inside_new_limits");
        assert_eq!(at(Level::Centre, across).1, "inside_new_limits");
        // 49.984 less the mean of 49.939 and 49.937.
        assert_eq!(at(Level::Last, turned), is("0.046", "beyond_limit"));
    }

    #[test]
    fn main_journal_3_is_hour_glass() {
        let which = Which::Along(None);
        let barrel = told(&session(), MAIN_3, Quantity::Barrel, which);
        // The mean of 59.966 and 59.963 less that of 59.976 and 59.978, which
        // are the means of the ends. A manual says nothing of it.
        assert_eq!(barrel, is("-0.0125", "no_limit_given"));
    }

    #[test]
    fn the_slip_is_struck_and_read_again() {
        let session = session();
        let readings = session.readings.values();
        let struck: Vec<_> = readings.filter(|r| r.is_struck()).collect();
        let [slip] = struck[..] else {
            panic!("one reading is struck: {struck:?}");
        };
        let mut standing = session.standing();
        let right = standing.find(|(_, r)| r.station == slip.station).unwrap().1;
        let size = |reading| session.size_of(reading).unwrap();
        // One turn of the thimble.
        let turn = length("0.500", UNIT).unwrap().size();
        assert_eq!((size(right) - size(slip)).quanta(), turn.quanta());
    }

    #[test]
    fn the_gauge_goes_back_from_the_piston() {
        let session = session();
        let (_, gauge, setting) = session.gauge_for(Kind::Bore).unwrap();
        assert_eq!(gauge.kind, GaugeKind::DialBoreGauge);
        let on_piston = |setting: &Setting| {
            let set = setting.set.as_ref();
            set.is_some_and(|set| matches!(set.against, Against::Feature(_)))
        };
        assert!(!on_piston(&session.settings[&setting].value));
        let there = session.standing().filter(|(_, reading)| {
            let setting = &session.settings[&reading.setting].value;
            on_piston(setting) && setting.away
        });
        assert_eq!(there.count(), 1);
    }
}
