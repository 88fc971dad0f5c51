//! Sessions by chance: edits of several devices that meet now and then.

use fenderbench::quantity::{Entered, EnteredDeviation, Unit};
use fenderbench::session::{
    Against, Arrangement, Counting, Document, Edit, Feature, Field, FirstEnd, Gauge, GaugeKind,
    Indication, Kind, LimitKey, Reading, Refused, RouteChoice, Sense, Session, SetTo, Setting,
    Stamp, Station, Use, limit_keys,
};
use fenderbench::uncertainty::{Climate, Material};
use proptest::prelude::*;
use proptest::sample::{Index, select};

use crate::given::given;
use crate::make::{DESK, INCH, MM, PHONE, TABLET, USUAL, session};

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

/// A place on one of the parts that every engine is measured at.
pub fn any_station() -> impl Strategy<Value = Station> {
    place_on(&USUAL)
}

fn place_on(kinds: &'static [Kind]) -> impl Strategy<Value = Station> {
    (
        select(kinds),
        1_u8..7,
        any::<Index>(),
        any::<Index>(),
        any::<Index>(),
    )
        .prop_map(|(kind, position, level, direction, part)| {
            let direction = *direction.get(kind.directions());
            let station = Station::new(kind, position, *level.get(kind.levels()), direction);
            station.on(*part.get(kind.parts()))
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
pub fn limit() -> impl Strategy<Value = Option<Entered>> {
    let text =
        (any_unit(), 0_u32..6).prop_map(|(unit, n)| Entered::parse(&format!("2.00{n}"), unit).ok());
    prop_oneof![1 => Just(None), 4 => text, 1 => Just(Entered::parse("0.0", MM).ok())]
}

fn climate() -> impl Strategy<Value = Climate> {
    prop_oneof![
        select(&[Climate::Cold, Climate::Mild, Climate::Hot][..]),
        (-50_000..70_000_i32).prop_map(Climate::Degrees),
        (-5..7_i32).prop_map(|tens| Climate::Degrees(tens * 10_000)),
    ]
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
        select(&Use::ALL[..]).prop_map(Field::Use),
        select(&FirstEnd::ALL[..]).prop_map(Field::FirstEnd),
        select(&Counting::ALL[..]).prop_map(Field::Counting),
        climate().prop_map(Field::Climate),
        (select(&Kind::ALL[..]), select(&Material::ALL[..]))
            .prop_map(|(kind, material)| Field::Material(kind, material)),
        (select(&Kind::ALL[..]), any::<bool>()).prop_map(|(kind, study)| Field::Study(kind, study)),
        (select(&Kind::ALL[..]), limit()).prop_map(|(kind, size)| Field::Nominal(kind, size)),
        given(),
        (limit_name(), limit()).prop_map(|(key, limit)| Field::Limit(key, limit)),
        (limit_name(), limit()).prop_map(|(key, limit)| Field::Limit(key, limit)),
        (select(&Kind::ALL[..]), text()).prop_map(|(kind, text)| Field::LimitSource(kind, text)),
    ]
}

/// A gauge; some have a range, and some of those end before they start.
fn gauge() -> impl Strategy<Value = Gauge> {
    let range = prop::option::weighted(0.2, (entered(), entered()));
    (
        select(&GaugeKind::ALL[..]),
        any_unit(),
        any::<Index>(),
        range,
        prop::bool::weighted(0.1),
    )
        .prop_map(|(kind, unit, index, range, away)| {
            let text = *index.get(&Gauge::graduations(unit)[..]);
            let in_unit = |end: Entered| Entered::parse(end.text(), unit);
            let ends = range.map(|(a, b)| (in_unit(a), in_unit(b)));
            Gauge {
                kind,
                graduation: Entered::parse(text, unit).unwrap(),
                range: ends.and_then(|(a, b)| a.ok().zip(b.ok())),
                away,
            }
        })
}

pub fn deviation() -> impl Strategy<Value = EnteredDeviation> {
    (any_unit(), "[+-]?[0-2]", "[0-9]{0,6}").prop_map(|(unit, whole, decimals)| {
        let text = match decimals.len() {
            0 => whole,
            _ => format!("{whole}.{decimals}"),
        };
        EnteredDeviation::parse(&text, unit).unwrap()
    })
}

/// What a gauge can be set to, by sizes and by deviations.
pub fn set_to() -> impl Strategy<Value = SetTo> {
    let against = prop_oneof![
        Just(Against::Standard),
        Just(Against::Micrometer),
        (select(&Kind::ALL[..]), 1_u8..5)
            .prop_map(|(kind, position)| Against::Feature(Feature { kind, position })),
    ];
    let sense = select(&Sense::ALL[..]);
    let again = prop::option::of(indication());
    (against, entered(), indication(), again, sense).prop_map(
        |(against, size, shows, again, sense)| SetTo {
            shows: in_unit(shows, size.unit()),
            again: again.map(|again| in_unit(again, size.unit())),
            against,
            size,
            sense,
        },
    )
}

fn indication() -> impl Strategy<Value = Indication> {
    prop_oneof![
        entered().prop_map(Indication::Size),
        deviation().prop_map(Indication::Deviation),
    ]
}

/// One unit for all of a setting, as a form has it.
fn in_unit(shown: Indication, unit: Unit) -> Indication {
    match shown {
        Indication::Size(s) => Indication::Size(Entered::parse(s.text(), unit).unwrap()),
        Indication::Deviation(d) => {
            Indication::Deviation(EnteredDeviation::parse(d.text(), unit).unwrap())
        }
    }
}

/// A reading with the gauge the session has for it; the first gauge where
/// all that would do are put away.
fn reading_in(session: &Session, at: Station, entered: Indication) -> Reading {
    let first = || {
        let id = session.gauges.keys().next().copied().expect("a gauge");
        (id, session.setting_of(id).unwrap_or(id))
    };
    let at_hand = session
        .gauge_for(at.kind)
        .map(|(gauge, _, setting)| (gauge, setting));
    let (gauge, setting) = at_hand.unwrap_or_else(first);
    Reading {
        station: at,
        entered,
        gauge,
        setting,
        taken: "2025-05-04T10:00:00Z".to_owned(),
        kept: false,
        strikes: 0,
        extra: String::new(),
    }
}

/// Something a person does; it becomes an [`Edit`] when the session it meets
/// is known.
#[derive(Clone, Debug)]
pub enum Act {
    /// A reading; the person may have stood by it.
    Read(Station, Entered, bool),
    Strike(Index),
    StrikeNothing,
    Set(Field),
    Gauge(Index, Gauge),
    AddGauge(Gauge),
    /// Sets a gauge; a reading by deviation makes sense after that.
    SetGauge(Index, Option<SetTo>),
    AwaySetting(Index, bool),
    /// Checks a setting again at the end.
    CheckAgain(Index, Option<Indication>),
    /// Measures a kind with a gauge.
    Choose(Kind, Index),
    Dial(Station, EnteredDeviation),
    Several(Vec<Self>),
}

pub fn act() -> impl Strategy<Value = Act> {
    let one = prop_oneof![
        6 => (place_on(&Kind::ALL), entered(), prop::bool::weighted(0.1))
            .prop_map(|(at, entered, kept)| Act::Read(at, entered, kept)),
        3 => any::<Index>().prop_map(Act::Strike),
        1 => Just(Act::StrikeNothing),
        4 => field().prop_map(Act::Set),
        1 => (any::<Index>(), gauge()).prop_map(|(index, gauge)| Act::Gauge(index, gauge)),
        1 => gauge().prop_map(Act::AddGauge),
        2 => (any::<Index>(), prop::option::of(set_to()))
            .prop_map(|(index, set)| Act::SetGauge(index, set)),
        1 => (any::<Index>(), any::<bool>())
            .prop_map(|(index, away)| Act::AwaySetting(index, away)),
        1 => (any::<Index>(), prop::option::of(indication()))
            .prop_map(|(index, shown)| Act::CheckAgain(index, shown)),
        1 => (select(&Kind::ALL[..]), any::<Index>())
            .prop_map(|(kind, index)| Act::Choose(kind, index)),
        2 => (place_on(&Kind::ALL), deviation()).prop_map(|(at, by)| Act::Dial(at, by)),
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
            Self::Read(at, entered, kept) => Edit::Add(Reading {
                kept: *kept,
                ..reading_in(session, *at, entered.clone().into())
            }),
            Self::Dial(at, by) => {
                Edit::Add(reading_in(session, *at, Indication::Deviation(by.clone())))
            }
            Self::AddGauge(gauge) => Edit::AddGauge(gauge.clone()),
            Self::SetGauge(index, set) => {
                let gauges: Vec<_> = session.gauges.keys().copied().collect();
                Edit::AddSetting(Setting {
                    set: set.clone(),
                    ..Setting::as_found(*index.get(&gauges))
                })
            }
            Self::AwaySetting(index, away) => {
                let settings: Vec<_> = session.settings.iter().collect();
                let (id, setting) = index.get(&settings);
                let setting = Setting {
                    away: *away,
                    ..setting.value.clone()
                };
                Edit::Setting(**id, setting)
            }
            Self::CheckAgain(index, shown) => {
                let settings: Vec<_> = session.settings.iter().collect();
                let (id, setting) = index.get(&settings);
                let mut setting = setting.value.clone();
                if let Some(set) = &mut setting.set {
                    let unit = set.size.unit();
                    set.again = shown.clone().map(|shown| in_unit(shown, unit));
                }
                Edit::Setting(**id, setting)
            }
            Self::Choose(kind, index) => {
                let gauges: Vec<_> = session.gauges.keys().copied().collect();
                Edit::Set(Field::GaugeOf(*kind, Some(*index.get(&gauges))))
            }
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
