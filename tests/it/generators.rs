//! Sessions by chance: edits of several devices that meet now and then, and
//! fields that only a newer version would know.

use std::collections::BTreeMap;

use fenderbench::quantity::{Entered, Unit};
use fenderbench::session::{
    Arrangement, Direction, Document, Edit, Field, Gauge, GaugeKind, Kind, LimitKey, Refused,
    RouteChoice, Session, Stamp, Station, limit_keys,
};
use proptest::prelude::*;
use proptest::sample::{Index, select};

use crate::make::{self, DESK, INCH, MM, PHONE, TABLET, reading, session};

/// Laws leave nothing behind in the source tree when they fail.
pub fn config(cases: u32) -> ProptestConfig {
    ProptestConfig {
        cases,
        failure_persistence: None,
        ..ProptestConfig::default()
    }
}

pub fn any_unit() -> impl Strategy<Value = Unit> {
    select(&[MM, INCH][..])
}

/// A length a gauge on an engine could read, in any decimals.
pub fn entered() -> impl Strategy<Value = Entered> {
    (any_unit(), 1_u32..390, "[0-9]{0,6}").prop_map(|(unit, whole, decimals)| {
        let text = match decimals.len() {
            0 => whole.to_string(),
            _ => format!("{whole}.{decimals}"),
        };
        Entered::parse(&text, unit).unwrap()
    })
}

pub fn any_station() -> impl Strategy<Value = Station> {
    (
        select(&Kind::ALL[..]),
        1_u8..7,
        any::<Index>(),
        select(&Direction::ALL[..]),
    )
        .prop_map(|(kind, position, level, direction)| {
            Station::new(kind, position, *level.get(kind.levels()), direction)
        })
}

fn limit_name() -> impl Strategy<Value = LimitKey> {
    let names = Kind::ALL.into_iter().flat_map(|kind| {
        let of_kind = limit_keys(kind).iter();
        of_kind.flat_map(move |&(quantity, bounds)| {
            bounds.iter().map(move |&bound| LimitKey {
                kind,
                quantity,
                bound,
            })
        })
    });
    select(names.collect::<Vec<_>>())
}

/// Limits near each other, so that many stand and many do not.
fn limit() -> impl Strategy<Value = Option<Entered>> {
    let text =
        (any_unit(), 0_u32..6).prop_map(|(unit, n)| Entered::parse(&format!("2.00{n}"), unit).ok());
    prop_oneof![1 => Just(None), 4 => text, 1 => Just(Entered::parse("0.0", MM).ok())]
}

/// A set-up field; some are out of range and must be refused.
pub fn field() -> impl Strategy<Value = Field> {
    let text = || prop_oneof![8 => ".{0,30}", 1 => "[a-zé]{195,205}"];
    prop_oneof![
        text().prop_map(Field::Name),
        (0_u8..20).prop_map(Field::Cylinders),
        (0_u8..40).prop_map(Field::Mains),
        (0_u8..4).prop_map(Field::RodsPerThrow),
        select(&Arrangement::ALL[..]).prop_map(Field::Arrangement),
        select(&RouteChoice::ALL[..]).prop_map(Field::Route),
        any_unit().prop_map(Field::DisplayUnit),
        (limit_name(), limit()).prop_map(|(key, limit)| Field::Limit(key, limit)),
        (limit_name(), limit()).prop_map(|(key, limit)| Field::Limit(key, limit)),
        (select(&Kind::ALL[..]), text()).prop_map(|(kind, text)| Field::LimitSource(kind, text)),
    ]
}

fn gauge() -> impl Strategy<Value = Gauge> {
    (select(&GaugeKind::ALL[..]), any_unit(), any::<Index>()).prop_map(|(kind, unit, index)| {
        let text = *index.get(&Gauge::graduations(unit)[..]);
        let graduation = Entered::parse(text, unit).unwrap();
        Gauge { kind, graduation }
    })
}

/// Something a person does; it becomes an [`Edit`] when the session it meets
/// is known.
#[derive(Clone, Debug)]
pub enum Act {
    Read(Station, Entered),
    Strike(Index),
    StrikeNothing,
    Set(Field),
    Gauge(Index, Gauge),
    Several(Vec<Self>),
}

pub fn act() -> impl Strategy<Value = Act> {
    let one = prop_oneof![
        6 => (any_station(), entered()).prop_map(|(at, entered)| Act::Read(at, entered)),
        3 => any::<Index>().prop_map(Act::Strike),
        1 => Just(Act::StrikeNothing),
        4 => field().prop_map(Act::Set),
        1 => (any::<Index>(), gauge()).prop_map(|(index, gauge)| Act::Gauge(index, gauge)),
    ];
    one.prop_recursive(2, 8, 4, |one| {
        prop::collection::vec(one, 0..5).prop_map(Act::Several)
    })
}

impl Act {
    /// The edit this is in a session.
    pub fn edit(&self, session: &Session) -> Edit {
        let nothing = Stamp {
            counter: u64::from(u32::MAX),
            replica: DESK,
        };
        match self {
            Self::Read(at, entered) => Edit::Add(reading(session, *at, entered.clone())),
            Self::Strike(index) => {
                let ids: Vec<_> = session.readings.keys().copied().collect();
                let id = if ids.is_empty() {
                    nothing
                } else {
                    *index.get(&ids)
                };
                Edit::Strike(id)
            }
            Self::StrikeNothing => Edit::Strike(nothing),
            Self::Set(field) => Edit::Set(field.clone()),
            Self::Gauge(index, gauge) => {
                let ids: Vec<_> = session.gauges.keys().copied().collect();
                let id = *index.get(&ids);
                // A gauge stays of its kind, or readings would find none.
                let kind = session.gauges[&id].value.kind;
                Edit::Gauge(
                    id,
                    Gauge {
                        kind,
                        ..gauge.clone()
                    },
                )
            }
            Self::Several(acts) => Edit::Batch(acts.iter().map(|act| act.edit(session)).collect()),
        }
    }

    pub fn on(&self, document: &mut Document) -> Result<Session, Refused> {
        let edit = self.edit(document.session());
        document.dispatch(&edit)
    }
}

/// What happens on the devices.
#[derive(Clone, Debug)]
pub enum Event {
    /// A person does something on one of them.
    Act(usize, Act),
    Undo(usize),
    Redo(usize),
    /// The first takes in what the second has.
    Meet(usize, usize),
}

pub fn event() -> impl Strategy<Value = Event> {
    prop_oneof![
        8 => (0..3_usize, act()).prop_map(|(device, act)| Event::Act(device, act)),
        2 => (0..3_usize).prop_map(Event::Undo),
        1 => (0..3_usize).prop_map(Event::Redo),
        1 => (0..3_usize, 0..3_usize).prop_map(|(to, from)| Event::Meet(to, from)),
    ]
}

/// Three devices that start from one session.
pub fn devices() -> [Document; 3] {
    let first = session(vec![Field::Cylinders(3), Field::Name("Three".to_owned())]);
    [PHONE, TABLET, DESK].map(|replica| Document::open(first.clone(), replica, &[replica]))
}

/// Lets the event happen; refusals are part of life.
pub fn happen(devices: &mut [Document; 3], event: &Event) {
    match event {
        Event::Act(device, act) => drop(act.on(&mut devices[*device])),
        Event::Undo(device) => drop(devices[*device].undo()),
        Event::Redo(device) => drop(devices[*device].redo()),
        Event::Meet(to, from) => {
            let facts = devices[*from].session().clone();
            devices[*to].merge(&facts);
        }
    }
}

/// The sessions of three devices after some time.
pub fn three() -> impl Strategy<Value = [Session; 3]> {
    prop::collection::vec(event(), 0..40).prop_map(|events| {
        let mut devices = devices();
        for event in &events {
            happen(&mut devices, event);
        }
        devices.map(|device| device.session().clone())
    })
}

/// A name no version uses, some of them nasty.
fn unknown_name() -> impl Strategy<Value = String> {
    prop_oneof![
        Just("__proto__".to_owned()),
        Just("constructor".to_owned()),
        "x [a-z\"\\\\é\\n]{0,6}",
    ]
}

/// JSON text that must be kept to the letter.
fn unknown_text() -> impl Strategy<Value = String> {
    select(
        &[
            "null",
            "1e400",
            "-0.10",
            "\"\"",
            "\"\\u00e9 \\/ é\"",
            "[ 1,2 , {\"a\" : [] } ]",
            "{\"b\":1, \"a\" :2,\"unit\":\"mm\"}",
            "123456789012345678901234567890",
        ][..],
    )
    .prop_map(str::to_owned)
}

fn unknown() -> impl Strategy<Value = BTreeMap<String, String>> {
    prop::collection::btree_map(unknown_name(), unknown_text(), 0..3)
}

/// What a newer version could have written beside what this one knows: in
/// the file, in the session, in a section, in each record, and whole records.
pub fn newer() -> impl Strategy<Value = Newer> {
    let records = prop::collection::vec((any_record(), 500_u64..600), 0..4);
    (
        unknown(),
        unknown(),
        prop::collection::vec(unknown(), 4),
        records,
    )
        .prop_map(|(file, session, records, whole)| Newer {
            file,
            session,
            records,
            whole,
        })
}

#[derive(Clone, Debug)]
pub struct Newer {
    file: BTreeMap<String, String>,
    session: BTreeMap<String, String>,
    records: Vec<BTreeMap<String, String>>,
    whole: Vec<((String, String), u64)>,
}

/// A section and a record in it that this version does not know.
fn any_record() -> impl Strategy<Value = (String, String)> {
    select(
        &[
            (
                "readings",
                r#"{"station":"housing/1/whole/first/0","value":"1e9"}"#,
            ),
            (
                "gauges",
                r#"{"kind":"bore_gauge", "graduation":"0.01","unit":"mm","at":"1@b2"}"#,
            ),
            ("set_up", r#"{"value":"diesel","at":"2@b2"}"#),
            ("limits", r#"{"value":"0.1","unit":"mm","at":"3@b2"}"#),
            ("visual_checks", r#"{"seen": "crack"}"#),
            ("prices", "{}"),
            ("choices", r#"{"__proto__":{"a":1}}"#),
        ][..],
    )
    .prop_map(|(section, text)| (section.to_owned(), text.to_owned()))
}

impl Newer {
    /// The session with all this in it.
    pub fn into_session(self, mut session: Session) -> Session {
        let mut records = self.records.iter().cycle();
        let mut next = || {
            let fields = records.next().into_iter().flatten();
            make::unknown(fields.map(|(name, text)| (name.as_str(), text.as_str())))
        };
        session
            .fields
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        session
            .gauges
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        session
            .settings
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        session
            .readings
            .iter_mut()
            .for_each(|(_, r)| r.extra = next());
        for (place, extra) in [("", self.file), ("session", self.session)] {
            for (name, text) in extra {
                session.extras.insert((place.to_owned(), name), text);
            }
        }
        for ((section, text), counter) in self.whole {
            let key = match section.as_str() {
                "readings" | "gauges" => format!("{counter}@ee"),
                _ => format!("new/{counter}"),
            };
            session.extras.insert((section, key), text);
        }
        session
    }
}
