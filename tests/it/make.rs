//! Sessions made by hand.

use std::fs;
use std::path::Path;

use fenderbench::archive;
use fenderbench::assess::{Assessment, FindingKey, Which, assess};
use fenderbench::quantity::{Entered, Exact, Size, Unit};
use fenderbench::session::{
    Bound, Document, Edit, Extra, Feature, Field, Indication, Kind, LimitKey, Quantity, Reading,
    Replica, Session, SessionId, Station,
};

pub const MM: Unit = Unit::Millimetre;
pub const INCH: Unit = Unit::Inch;

/// The devices of the tests.
pub const PHONE: Replica = Replica::new(0xa1);
pub const TABLET: Replica = Replica::new(0xb2);
pub const DESK: Replica = Replica::new(0xc3);

pub fn unit(sign: &str) -> Unit {
    Unit::from_sign(sign).expect("in or mm")
}

/// A length with its unit, such as `82.004 mm`.
pub fn length(text: &str) -> Entered {
    let (number, sign) = text.split_once(' ').expect("a number and a unit");
    Entered::parse(number, unit(sign)).expect("a length")
}

pub fn size(text: &str) -> Size {
    length(text).size()
}

pub fn exact(text: &str) -> Exact {
    match text.strip_prefix('-') {
        Some(rest) => -Exact::from(size(rest)),
        None => size(text).into(),
    }
}

pub fn station(text: &str) -> Station {
    Station::parse(text).unwrap_or_else(|| panic!("no station: {text}"))
}

pub fn feature(kind: Kind, position: u8) -> Feature {
    Feature { kind, position }
}

/// A session of the phone with these fields and the default gauges.
pub fn session(fields: Vec<Field>) -> Session {
    Session::create(SessionId::from_number(0xf00d), fields, PHONE)
}

pub fn document(fields: Vec<Field>) -> Document {
    Document::open(session(fields), PHONE, &[PHONE])
}

/// Fields that this version does not know, each a name and a text.
pub fn unknown<'a>(fields: impl IntoIterator<Item = (&'a str, &'a str)>) -> Extra {
    let mut fields: Vec<_> = fields.into_iter().collect();
    fields.sort_unstable();
    let quoted = |name: &str| serde_json::Value::from(name).to_string();
    let fields = fields
        .iter()
        .map(|(name, text)| format!("{}:{text}", quoted(name)));
    fields.collect::<Vec<_>>().join(",")
}

/// One limit, such as `main_journal/size/new_low`, as a field.
pub fn limit(key: &str, text: &str) -> Field {
    let key = LimitKey::parse(key).unwrap_or_else(|| panic!("no limit: {key}"));
    Field::Limit(key, Some(length(text)))
}

pub fn limit_key(kind: Kind, quantity: Quantity, bound: Bound) -> LimitKey {
    LimitKey {
        kind,
        quantity,
        bound,
    }
}

/// A reading at a station with the gauge the session has for it.
pub fn reading(session: &Session, station: Station, entered: impl Into<Indication>) -> Reading {
    let at_hand = || session.gauge_for(Kind::Bore);
    let (gauge, _, setting) = session
        .gauge_for(station.kind)
        .or_else(at_hand)
        .expect("a gauge");
    Reading {
        station,
        entered: entered.into(),
        gauge,
        setting,
        taken: "2025-05-04T10:00:00Z".to_owned(),
        kept: false,
        strikes: 0,
        extra: Extra::new(),
    }
}

pub fn add(session: &Session, at: &str, text: &str) -> Edit {
    Edit::Add(reading(session, station(at), length(text)))
}

/// Enters readings one after the other, each a station and a length.
pub fn read(document: &mut Document, readings: &[(&str, &str)]) {
    for (at, text) in readings {
        let edit = add(document.session(), at, text);
        document.dispatch(&edit).expect("a reading");
    }
}

/// A session with these fields and readings.
pub fn measured(fields: Vec<Field>, readings: &[(&str, &str)]) -> Session {
    let mut document = document(fields);
    read(&mut document, readings);
    document.session().clone()
}

/// A sample that comes with the app.
pub fn sample(name: &str) -> Session {
    let ours = Path::new(env!("CARGO_MANIFEST_DIR"));
    let file = ours
        .join("public/samples")
        .join(name)
        .with_extension("json");
    let text = fs::read_to_string(file).expect("a sample");
    archive::import(&text).expect("a session").session
}

/// A session with these edits.
pub fn edited(mut session: Session, edits: Vec<Edit>) -> Session {
    let edit = Edit::Batch(edits);
    session.apply(&edit, PHONE).expect("edits");
    session
}

/// Takes back everything that was read at a station.
pub fn unread(session: &Session, at: &str) -> Edit {
    let there = session.standing();
    let there = there.filter(|(_, reading)| reading.station == station(at));
    Edit::Batch(there.map(|(id, _)| Edit::Strike(id)).collect())
}

/// What a session says of one quantity of a feature.
pub fn value(
    assessment: &Assessment,
    feature: Feature,
    quantity: Quantity,
    which: Which,
) -> Option<Exact> {
    let key = FindingKey {
        feature,
        quantity,
        which,
    };
    let finding = assessment.get(key);
    finding
        .unwrap_or_else(|| panic!("no finding: {key:?}"))
        .value()
}

/// Everything an assessment says, without the ids of the readings.
pub fn said(session: &Session) -> Vec<String> {
    let assessment = assess(session);
    let findings = assessment.findings.iter().map(|f| {
        let (limits, missing) = (&f.limits, &f.missing);
        format!(
            "{:?} {:?} {:?} {limits:?} {:?} {missing:?}",
            f.key, f.outcome, f.detail, f.guide
        )
    });
    let repeats = assessment
        .repeats
        .iter()
        .map(|repeats| format!("{repeats:?}"));
    findings.chain(repeats).collect()
}

/// The kinds that every engine is measured at.
pub const USUAL: [Kind; 4] = [
    Kind::Bore,
    Kind::Piston,
    Kind::MainJournal,
    Kind::RodJournal,
];
