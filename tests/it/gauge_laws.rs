//! What hangs neither on the unit nor on the order nor on whether a gauge
//! shows sizes or deviations.

use fenderbench::assess::assess;
use fenderbench::quantity::{Entered, EnteredDeviation, Unit};
use fenderbench::session::{
    Against, Edit, Feature, Field, Gauge, GaugeKind, Indication, Kind, LimitKey, Reading, Sense,
    Session, SetTo, Setting, Stamp, Station,
};
use proptest::prelude::*;
use proptest::sample::{Index, select};

use crate::generators::{any_station, config, deviation, entered};
use crate::make::{INCH, MM, PHONE, reading, said, session};

/// A length of so many ten-thousandths of an inch, in either unit: 0.0001 in
/// is 0.00254 mm.
fn text(tenths: i64, unit: Unit) -> String {
    let sign = if tenths < 0 { "-" } else { "" };
    let tenths = tenths.abs();
    match unit {
        Unit::Inch => format!("{sign}{}.{:04}", tenths / 10_000, tenths % 10_000),
        Unit::Millimetre => {
            let count = tenths * 254;
            format!("{sign}{}.{:05}", count / 100_000, count % 100_000)
        }
    }
}

fn long(tenths: i64, unit: Unit) -> Entered {
    Entered::parse(&text(tenths, unit), unit).unwrap()
}

fn by(tenths: i64, unit: Unit) -> Indication {
    Indication::Deviation(EnteredDeviation::parse(&text(tenths, unit), unit).unwrap())
}

/// Everything a person can say in a unit, in ten-thousandths of an inch.
#[derive(Clone, Debug)]
struct Bench {
    sense: Sense,
    /// Size and what the dial shows there; the second on piston 1.
    dial: [(i64, i64); 2],
    /// Size and what the micrometer shows too much there.
    micrometer: (i64, i64),
    nominal: i64,
    limits: Vec<(LimitKey, i64)>,
    /// Where, how far from 3 in, and in which setting of a dial.
    readings: Vec<(Station, i64, bool)>,
}

fn bench() -> impl Strategy<Value = Bench> {
    const KEYS: [&str; 7] = [
        "bore/size/service",
        "bore/wear/service",
        "bore/out_of_round/new_high",
        "bore/taper/service",
        "piston/clearance/new_high",
        "main_journal/size/service",
        "rod_journal/taper/new_high",
    ];
    let limit = (
        select(&KEYS[..]).prop_map(|key| LimitKey::parse(key).unwrap()),
        prop_oneof![1..60_i64, 29_950..30_060_i64],
    );
    let small = || -40..40_i64;
    let set = || (29_900..30_100_i64, small());
    (
        select(&Sense::ALL[..]),
        [set(), set()],
        (29_000..31_000_i64, small()),
        29_950..30_050_i64,
        prop::collection::vec(limit, 0..5),
        prop::collection::vec((any_station(), small(), any::<bool>()), 0..30),
    )
        .prop_map(
            |(sense, dial, micrometer, nominal, limits, readings)| Bench {
                sense,
                dial,
                micrometer,
                nominal,
                limits,
                readings,
            },
        )
}

fn bench_fields(unit: Unit) -> Vec<Field> {
    vec![
        Field::Cylinders(4),
        Field::Mains(5),
        Field::DisplayUnit(unit),
    ]
}

/// A session with a dial bore gauge, and its two settings.
fn with_dial(unit: Unit, sets: [SetTo; 2]) -> (Session, Stamp, [Stamp; 2]) {
    let mut session = session(bench_fields(unit));
    let gauge = Gauge::usual(GaugeKind::DialBoreGauge, unit).unwrap();
    session.apply(&Edit::AddGauge(gauge), PHONE).unwrap();
    let id = *session.gauges.last().unwrap().0;
    let settings = sets.map(|set| {
        let set = Setting {
            set: Some(set),
            ..Setting::as_found(id)
        };
        session.apply(&Edit::AddSetting(set), PHONE).unwrap();
        *session.settings.last().unwrap().0
    });
    (session, id, settings)
}

const PISTON_1: Feature = Feature {
    kind: Kind::Piston,
    position: 1,
};

impl Bench {
    /// Says the size as made and the limits.
    fn say(&self, session: &mut Session, unit: Unit) {
        let nominal = Field::Nominal(Kind::Bore, Some(long(self.nominal, unit)));
        let limits = self.limits.iter();
        let limits = limits.map(|(key, limit)| Field::Limit(*key, Some(long(*limit, unit))));
        for field in limits.chain([nominal]) {
            session.apply(&Edit::Set(field), PHONE).unwrap();
        }
    }

    /// The session of somebody who has all instruments in one unit.
    fn session(&self, unit: Unit) -> Session {
        let [on_micrometer, on_piston] = self.dial.map(|(size, shows)| SetTo {
            against: Against::Micrometer,
            size: long(size, unit),
            shows: by(shows, unit),
            again: None,
            sense: self.sense,
        });
        let on_piston = SetTo {
            against: Against::Feature(PISTON_1),
            ..on_piston
        };
        let (mut session, dial, settings) = with_dial(unit, [on_micrometer, on_piston]);
        let (size, error) = self.micrometer;
        let micrometer = session.gauge_for(Kind::Piston).unwrap().0;
        let checked = Setting {
            set: Some(SetTo {
                against: Against::Standard,
                size: long(size, unit),
                shows: long(size + error, unit).into(),
                again: None,
                sense: Sense::PlusLarger,
            }),
            ..Setting::as_found(micrometer)
        };
        session.apply(&Edit::AddSetting(checked), PHONE).unwrap();
        self.say(&mut session, unit);
        for (station, off, second) in &self.readings {
            let one = if station.kind == Kind::Bore {
                Reading {
                    gauge: dial,
                    setting: settings[usize::from(*second)],
                    ..reading(&session, *station, by(*off, unit))
                }
            } else {
                reading(&session, *station, long(30_000 + off, unit))
            };
            session.apply(&Edit::Add(one), PHONE).unwrap();
        }
        session
    }
}

/// What is found, without the text of the limits and the ids of readings.
fn found(session: &Session) -> Vec<String> {
    let findings = assess(session).findings;
    let found = findings.iter();
    found
        .map(|f| format!("{:?} {:?} {:?}", f.key, f.outcome, f.missing))
        .collect()
}

proptest! {
    #![proptest_config(config(192))]

    #[test]
    fn inch_and_millimetre_gauges_find_the_same(bench in bench()) {
        let (inch, mm) = (bench.session(INCH), bench.session(MM));
        prop_assert_eq!(found(&inch), found(&mm));
        for (one, other) in inch.readings.values().zip(mm.readings.values()) {
            prop_assert_eq!(inch.size_of(one), mm.size_of(other));
        }
    }

    #[test]
    fn a_dial_and_a_checked_micrometer_find_what_true_sizes_find(bench in bench()) {
        let mut bench = bench;
        // What was read on the piston is a clearance of its own.
        bench.readings.retain(|(_, _, second)| !second);
        let mut true_sizes = session(bench_fields(MM));
        bench.say(&mut true_sizes, MM);
        for (station, off, _) in &bench.readings {
            let (at, shows) = bench.dial[0];
            let size = match (station.kind, bench.sense) {
                (Kind::Bore, Sense::PlusLarger) => at + (off - shows),
                (Kind::Bore, Sense::PlusSmaller) => at - (off - shows),
                _ => 30_000 + off - bench.micrometer.1,
            };
            let one = reading(&true_sizes, *station, long(size, MM));
            true_sizes.apply(&Edit::Add(one), PHONE).unwrap();
        }
        prop_assert_eq!(found(&bench.session(INCH)), found(&true_sizes));
    }

    #[test]
    fn readings_of_a_dial_do_not_hang_on_their_order(
        sets in [(entered(), deviation()), (entered(), deviation())],
        sense in select(&Sense::ALL[..]),
        readings in prop::collection::vec(
            (any_station(), entered(), deviation(), any::<Index>()), 0..30,
        ).prop_flat_map(|all| (Just(all.clone()), Just(all).prop_shuffle())),
    ) {
        let sets = sets.map(|(size, shows)| SetTo {
            against: Against::Micrometer,
            shows: Indication::Deviation(EnteredDeviation::parse(shows.text(), size.unit()).unwrap()),
            again: None,
            size,
            sense,
        });
        let [first, second] = sets;
        let second = SetTo { against: Against::Feature(PISTON_1), ..second };
        let all = [first, second];
        let [one, other] = [readings.0, readings.1].map(|readings| {
            let (mut session, dial, settings) = with_dial(MM, all.clone());
            for (station, size, by, index) in readings {
                let one = if station.kind == Kind::Bore {
                    Reading {
                        gauge: dial,
                        setting: *index.get(&settings),
                        ..reading(&session, station, Indication::Deviation(by))
                    }
                } else {
                    reading(&session, station, size)
                };
                // A size of less than nothing is refused, whenever it comes.
                let _ = session.apply(&Edit::Add(one), PHONE);
            }
            said(&session)
        });
        prop_assert_eq!(one, other);
    }
}
