//! The session that comes with the app: the in-line six of a hill-climb car.
//!
//! Engine, limits and readings are invented, and the session says so in its
//! name and beside its limits. What it tells: the engine burned oil and had
//! metal in it. Bore 5 is worn beyond its limit, most at the top. Rod
//! journal 2 is oval at 45°: in the two usual directions it reads within
//! its service limit, and only the staggered end shows it.

use std::collections::BTreeMap;

use fenderbench::archive;
use fenderbench::assess::assess;
use fenderbench::present::{NewSession, next_open, route};
use fenderbench::quantity::{Entered, Unit};
use fenderbench::session::{
    Arrangement, Edit, Feature, Field, Kind, LimitKey, Reading, Replica, RouteChoice, Session,
    SessionId, Station,
};

const NAME: &str = "Sample: hill-climb six (invented)";
const SOURCE: &str = "Invented for this sample; no real engine";
const UNIT: Unit = Unit::Millimetre;

/// Fixed, so that the file is the same whenever and wherever it is made.
const ID: u64 = 0x5a3b_1e00_0000_0001;
const REPLICA: Replica = Replica::new(0x5a3b_1e00);

/// The hour of the first reading, and the seconds each takes: about what
/// telescoping gauge and micrometer need (common practice).
const FIRST_HOUR: u64 = 9;
const SECONDS_EACH: u64 = 50;

/// In millimetres, invented.
const LIMITS: [(&str, &str); 28] = [
    ("bore/size/new_low", "82.000"),
    ("bore/size/new_high", "82.020"),
    ("bore/size/service", "82.100"),
    ("bore/wear/service", "0.080"),
    ("bore/out_of_round/new_high", "0.010"),
    ("bore/out_of_round/service", "0.040"),
    ("bore/taper/new_high", "0.010"),
    ("bore/taper/service", "0.040"),
    ("piston/size/new_low", "81.950"),
    ("piston/size/new_high", "81.970"),
    ("piston/size/service", "81.920"),
    ("piston/clearance/new_low", "0.030"),
    ("piston/clearance/new_high", "0.070"),
    ("piston/clearance/service", "0.140"),
    ("main_journal/size/new_low", "59.982"),
    ("main_journal/size/new_high", "60.000"),
    ("main_journal/size/service", "59.960"),
    ("main_journal/out_of_round/new_high", "0.005"),
    ("main_journal/out_of_round/service", "0.015"),
    ("main_journal/taper/new_high", "0.005"),
    ("main_journal/taper/service", "0.015"),
    ("rod_journal/size/new_low", "49.984"),
    ("rod_journal/size/new_high", "50.000"),
    ("rod_journal/size/service", "49.960"),
    ("rod_journal/out_of_round/new_high", "0.005"),
    ("rod_journal/out_of_round/service", "0.015"),
    ("rod_journal/taper/new_high", "0.005"),
    ("rod_journal/taper/service", "0.015"),
];

/// What every feature of a kind reads, a row a feature, in the order in
/// which the standard route goes round it.
const BORES: [&[&str]; 6] = [
    &["82.019", "82.015", "82.011", "82.012"],
    &["82.044", "82.032", "82.019", "82.017"],
    &["82.037", "82.028", "82.018", "82.015"],
    &["82.063", "82.047", "82.026", "82.021"],
    &["82.128", "82.097", "82.034", "82.026"],
    &["82.041", "82.031", "82.017", "82.018"],
];
const PISTONS: [&[&str]; 6] = [
    &["81.958"],
    &["81.954"],
    &["81.957"],
    &["81.952"],
    &["81.941"],
    &["81.956"],
];
const MAIN_JOURNALS: [&[&str]; 7] = [
    &["59.994", "59.993", "59.992", "59.994"],
    &["59.986", "59.984", "59.985", "59.982"],
    &["59.979", "59.974", "59.980", "59.976"],
    &["59.988", "59.987", "59.987", "59.989"],
    &["59.985", "59.981", "59.984", "59.983"],
    &["59.990", "59.989", "59.991", "59.989"],
    &["59.993", "59.995", "59.993", "59.992"],
];
const ROD_JOURNALS: [&[&str]; 6] = [
    &["49.991", "49.988", "49.990", "49.989"],
    &["49.964", "49.961", "49.986", "49.938"],
    &["49.987", "49.984", "49.985", "49.986"],
    &["49.990", "49.987", "49.988", "49.989"],
    &["49.982", "49.979", "49.981", "49.980"],
    &["49.992", "49.990", "49.991", "49.989"],
];

/// What only the worst of a kind are asked for.
const OF_THE_WORST: [(&str, &str); 10] = [
    ("bore/5/whole/middle/0", "82.071"),
    ("bore/5/whole/middle/90", "82.058"),
    ("bore/5/whole/reference/0", "82.011"),
    ("bore/5/whole/reference/90", "82.009"),
    ("bore/4/whole/reference/0", "82.010"),
    ("bore/4/whole/reference/90", "82.008"),
    ("main_journal/3/whole/centre/0", "59.977"),
    ("main_journal/3/whole/centre/90", "59.972"),
    ("rod_journal/2/whole/centre/0", "49.963"),
    ("rod_journal/2/whole/centre/90", "49.962"),
];

/// A slip of one thimble turn, half a millimetre: struck, and read again.
const SLIP: (&str, &str) = ("main_journal/4/whole/last/45", "59.487");

/// The sample as the app would export it.
pub fn text() -> Result<String, String> {
    Ok(archive::write(&session()?, REPLICA))
}

/// The edit that sets the sample's limits.
pub fn limits() -> Result<Edit, String> {
    let mut edits = Vec::new();
    for (key, value) in LIMITS {
        let key = LimitKey::parse(key).ok_or_else(|| format!("{key} is no limit."))?;
        edits.push(Edit::Set(Field::Limit(key, Some(length(value)?))));
    }
    for kind in Kind::ALL {
        let source = Field::LimitSource(kind, SOURCE.to_owned());
        edits.push(Edit::Set(source));
    }
    Ok(Edit::Batch(edits))
}

/// The sample, entered as a person would: station by station as the route
/// asks, until it asks for nothing more.
fn session() -> Result<Session, String> {
    let set_up = NewSession {
        name: NAME.to_owned(),
        cylinders: 6,
        arrangement: Arrangement::InLine,
        mains: 7,
        rods_per_throw: 1,
        unit: UNIT,
        route: RouteChoice::Standard,
    };
    let id = SessionId::from_number(ID);
    let mut session = Session::create(id, set_up.fields()?, REPLICA);
    apply(&mut session, &limits()?)?;

    let slip = place(SLIP.0)?;
    let mut values = values()?;
    let mut at = None;
    while let Some(station) = next_open(&route(&session, &assess(&session)), at) {
        let value = values.remove(&station);
        let value = value.ok_or_else(|| format!("{station} has no value."))?;
        if station == slip {
            let wrong = reading(&session, station, SLIP.1)?;
            let strike = apply(&mut session, &Edit::Add(wrong))?;
            let right = Edit::Add(reading(&session, station, value)?);
            apply(&mut session, &Edit::Batch(vec![strike, right]))?;
        } else {
            let reading = reading(&session, station, value)?;
            apply(&mut session, &Edit::Add(reading))?;
        }
        at = Some(station);
    }
    match values.first_key_value() {
        Some((station, _)) => Err(format!("The route never asks for {station}.")),
        None => Ok(session),
    }
}

/// Every value by its station.
fn values() -> Result<BTreeMap<Station, &'static str>, String> {
    let mut values = BTreeMap::new();
    let tables: [(Kind, &[&[&'static str]]); 4] = [
        (Kind::Bore, &BORES),
        (Kind::Piston, &PISTONS),
        (Kind::MainJournal, &MAIN_JOURNALS),
        (Kind::RodJournal, &ROD_JOURNALS),
    ];
    for (kind, rows) in tables {
        for (position, row) in (1..).zip(rows) {
            let stations = Feature { kind, position }.stations(RouteChoice::Standard);
            values.extend(stations.into_iter().zip(row.iter().copied()));
        }
    }
    for (station, value) in OF_THE_WORST {
        values.insert(place(station)?, value);
    }
    Ok(values)
}

fn reading(session: &Session, station: Station, value: &str) -> Result<Reading, String> {
    let gauge = session.gauge_for(station.kind);
    let (gauge, _, setting) = gauge.ok_or_else(|| format!("{station} has no gauge."))?;
    Ok(Reading {
        station,
        entered: length(value)?,
        gauge,
        setting,
        taken: taken(session.readings.len()),
        strikes: 0,
        extra: String::new(),
    })
}

/// When the reading of this number was taken. No clock: a made-up morning.
fn taken(number: usize) -> String {
    let seconds = u64::try_from(number).unwrap_or(0) * SECONDS_EACH;
    let (hour, minute, second) = (seconds / 3600, seconds / 60 % 60, seconds % 60);
    let hour = FIRST_HOUR + hour;
    format!("2026-05-09T{hour:02}:{minute:02}:{second:02}.000Z")
}

fn place(text: &str) -> Result<Station, String> {
    Station::parse(text).ok_or_else(|| format!("{text} is no station."))
}

fn length(text: &str) -> Result<Entered, String> {
    Entered::parse(text, UNIT).map_err(|why| why.to_string())
}

fn apply(session: &mut Session, edit: &Edit) -> Result<Edit, String> {
    session.apply(edit, REPLICA).map_err(|why| why.to_string())
}

#[cfg(test)]
mod tests {
    use super::*;
    use fenderbench::assess::{Assessment, FindingKey, Which};
    use fenderbench::quantity::show;
    use fenderbench::report::comparison_key;
    use fenderbench::session::{Direction, Level, Quantity};

    /// The value and the comparison of a finding.
    fn told(
        session: &Session,
        (kind, position): (Kind, u8),
        quantity: Quantity,
        which: Which,
    ) -> (String, &'static str) {
        let key = FindingKey {
            feature: Feature { kind, position },
            quantity,
            which,
        };
        let assessment = assess(session);
        let finding = assessment.get(key).unwrap();
        let value = show(finding.value().unwrap(), UNIT, 3).text;
        (value, comparison_key(finding.comparison()))
    }

    fn beyond(assessment: &Assessment) -> Vec<(Kind, u8)> {
        let mut features: Vec<_> = assessment
            .findings
            .iter()
            .filter(|finding| comparison_key(finding.comparison()) == "beyond_limit")
            .map(|finding| (finding.key.feature.kind, finding.key.feature.position))
            .collect();
        features.dedup();
        features
    }

    #[test]
    fn the_route_is_complete_and_the_layout_holds_every_reading() {
        let session = session().unwrap();
        let assessment = assess(&session);
        assert_eq!(next_open(&route(&session, &assessment), None), None);
        assert!(assessment.outside_layout.is_empty());
        let rows = [
            BORES.len(),
            PISTONS.len(),
            MAIN_JOURNALS.len(),
            ROD_JOURNALS.len(),
        ];
        assert_eq!(rows, [6, 6, 7, 6]);
        // Four to a bore and to a journal, one to a piston, ten of the worst.
        assert_eq!(session.standing().count(), 4 * (6 + 7 + 6) + 6 + 10);
    }

    #[test]
    fn only_bore_5_its_piston_in_it_and_rod_journal_2_read_beyond_their_limits() {
        let session = session().unwrap();
        let worst = [(Kind::Bore, 5), (Kind::Piston, 5), (Kind::RodJournal, 2)];
        assert_eq!(beyond(&assess(&session)), worst);
        let told = |feature, quantity, which| told(&session, feature, quantity, which);
        let is = |value: &str, comparison| (value.to_owned(), comparison);

        let bore = (Kind::Bore, 5);
        let largest = told(bore, Quantity::Size, Which::Largest);
        assert_eq!(largest, is("82.128", "beyond_limit"));
        let wear = told(bore, Quantity::Wear, Which::Largest);
        assert_eq!(wear, is("0.118", "beyond_limit"));
        // Above zero: larger at the top.
        let taper = told(bore, Quantity::Taper, Which::Largest);
        assert_eq!(taper, is("0.094", "beyond_limit"));
        let wall = told((Kind::Piston, 5), Quantity::Clearance, Which::Largest);
        assert_eq!(wall, is("0.187", "beyond_limit"));
        let piston = told((Kind::Piston, 5), Quantity::Size, Which::Mean);
        assert_eq!(piston, is("81.941", "inside_service_limit"));
    }

    #[test]
    fn the_oval_rod_journal_shows_at_45_degrees_and_nowhere_else() {
        let session = session().unwrap();
        let at = |level, direction| {
            let which = Which::At(level, direction);
            told(&session, (Kind::RodJournal, 2), Quantity::OutOfRound, which)
        };
        let (across, turned) = (Direction::D0, Direction::D45);
        assert_eq!(at(Level::First, across).1, "inside_new_limits");
        assert_eq!(at(Level::Centre, across).1, "inside_new_limits");
        assert_eq!(
            at(Level::Last, turned),
            ("0.048".to_owned(), "beyond_limit")
        );
    }

    #[test]
    fn the_slip_is_struck_and_read_again() {
        let session = session().unwrap();
        let struck: Vec<_> = session
            .readings
            .values()
            .filter(|r| r.is_struck())
            .collect();
        let [slip] = struck[..] else {
            panic!("one reading is struck: {struck:?}");
        };
        let mut standing = session.standing();
        let right = standing.find(|(_, r)| r.station == slip.station).unwrap().1;
        let apart = right.entered.size() - slip.entered.size();
        assert_eq!(apart.quanta(), length("0.500").unwrap().size().quanta());
    }

    #[test]
    fn the_sample_says_that_it_is_invented() {
        let session = session().unwrap();
        assert!(session.name().contains("invented"));
        for finding in assess(&session).findings {
            assert_eq!(finding.limits.source, SOURCE);
        }
    }
}
