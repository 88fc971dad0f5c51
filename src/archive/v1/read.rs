//! Text of version 1 → session.

use super::set_up::{length_or_null, look, set_up};
use super::value::{id, indication, indication_if_any, length, note, parsed, stamp, unit};
use super::{AGAIN, KEPT_SECTIONS, LOOKS, SHOWS, SOURCE, VALUE};
use crate::archive::object::{Object, check_extra};
use crate::archive::text::{check_sum, quoted};
use crate::archive::{ImportError, Incoming};
use crate::session::{
    Against, Extra, Feature, Field, Gauge, GaugeKind, Indication, Kind, LimitKey, READINGS_MAX,
    Reading, Register, Sense, Session, SessionId, SetTo, Setting, Station,
};

const ZERO: &str = "is zero, which is no size";

/// Reads the rest of a file whose format and version have been taken.
pub(in crate::archive) fn file(mut file: Object<'_>) -> Result<Incoming, ImportError> {
    file.text("app")?;
    // There is one so far; a file tells by which its writer judged.
    file.text_if_any("rule")?;
    file.text("replica")?;
    let check = file.take("check");
    let body = file
        .take("session")
        .ok_or_else(|| file.wrong("session", "is missing"))?;
    let untouched = check.is_none_or(|sum| sum == quoted(&check_sum(body)));
    let mut session = body_of(Object::parse(body, "session")?)?;
    keep(&mut session, "", file)?;
    Ok(Incoming { session, untouched })
}

fn body_of(mut body: Object<'_>) -> Result<Session, ImportError> {
    let id = body.text("id")?;
    let id = SessionId::parse(&id).ok_or_else(|| body.wrong("id", "is not 16 hex digits"))?;
    let mut session = Session::empty(id);
    read_section(&mut session, body.section("set_up")?, set_up)?;
    read_section(&mut session, body.section("limits")?, limit)?;
    read_section(&mut session, body.section("gauges")?, gauge)?;
    read_section(&mut session, body.section("settings")?, setting)?;
    read_section(&mut session, body.section("readings")?, reading)?;
    read_section(&mut session, body.section(LOOKS)?, look)?;
    for name in KEPT_SECTIONS {
        read_section(&mut session, body.section(name)?, |_, _, _| Ok(false))?;
    }
    if READINGS_MAX < session.readings.len() {
        let why = format!("more than {READINGS_MAX} readings.");
        return Err(ImportError::damaged("readings", why));
    }
    keep(&mut session, "session", body)?;
    Ok(session)
}

/// Keeps the fields that this version does not know.
fn keep(session: &mut Session, section: &str, unknown: Object<'_>) -> Result<(), ImportError> {
    let place = unknown.place().to_owned();
    for (key, text) in unknown.entries() {
        check_extra(&place, text)?;
        session
            .extras
            .insert((section.to_owned(), key), text.to_owned());
    }
    Ok(())
}

/// Reads a record into the session; false if this version does not know it.
type ReadRecord = fn(&mut Session, &str, Object<'_>) -> Result<bool, ImportError>;

fn read_section(
    session: &mut Session,
    section: Object<'_>,
    read: ReadRecord,
) -> Result<(), ImportError> {
    let name = section.place().to_owned();
    for (key, text) in section.entries() {
        let place = format!("{name}, {key}");
        if !read(session, &key, Object::parse(text, &place)?)? {
            check_extra(&format!("{name}, {key}"), text)?;
            let kept = (name.clone(), key);
            session.extras.insert(kept, text.to_owned());
        }
    }
    Ok(())
}

fn limit(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let source_of = key
        .strip_suffix(SOURCE)
        .and_then(|start| Kind::from_key(start.strip_suffix('/')?));
    let field = if let Some(kind) = source_of {
        Some(Field::LimitSource(kind, record.text("value")?))
    } else if let Some(key) = LimitKey::parse(key) {
        Some(Field::Limit(key, length_or_null(&mut record)?))
    } else {
        None
    };
    put_field(session, field, record)
}

pub(super) fn put_field(
    session: &mut Session,
    field: Option<Field>,
    record: Object<'_>,
) -> Result<bool, ImportError> {
    let Some(field) = field else {
        return Ok(false);
    };
    let place = record.place().to_owned();
    field
        .check()
        .map_err(|why| ImportError::damaged(&place, why))?;
    let register = register(field, record)?;
    session.fields.insert(register.value.key(), register);
    Ok(true)
}

fn gauge(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let id = id(key, &record)?;
    let Some(kind) = GaugeKind::from_key(&record.text("kind")?) else {
        return Ok(false);
    };
    let unit = unit(&mut record, "unit")?;
    let graduation = length(&mut record, "graduation", unit)?;
    let range = match record.text_if_any("least")? {
        None => None,
        Some(least) => Some((
            parsed(&record, "least", &least, unit)?,
            length(&mut record, "greatest", unit)?,
        )),
    };
    let gauge = Gauge {
        kind,
        graduation,
        range,
        away: record.flag("away")?,
    };
    gauge
        .check()
        .map_err(|why| ImportError::damaged(record.place(), why))?;
    session.gauges.insert(id, register(gauge, record)?);
    Ok(true)
}

fn setting(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let id = id(key, &record)?;
    let set = match record.text_if_any("against")? {
        None => None,
        Some(against) => match set_to(&against, &mut record)? {
            None => return Ok(false),
            set => set,
        },
    };
    let setting = Setting {
        gauge: stamp(&mut record, "gauge")?,
        note: note(&mut record, "note")?,
        set,
        away: record.flag("away")?,
    };
    session.settings.insert(id, register(setting, record)?);
    Ok(true)
}

/// What a gauge was set to; `None` for words of a newer version.
fn set_to(against: &str, record: &mut Object<'_>) -> Result<Option<SetTo>, ImportError> {
    let against = match against {
        "standard" => Some(Against::Standard),
        "micrometer" => Some(Against::Micrometer),
        "feature" => Feature::parse(&record.text("feature")?).map(Against::Feature),
        _ => None,
    };
    let Some(against) = against else {
        return Ok(None);
    };
    let Some(sense) = Sense::from_key(&record.text("sense")?) else {
        return Ok(None);
    };
    let unit = unit(record, "unit")?;
    let size = length(record, "size", unit)?;
    if size.size().quanta() == 0 {
        return Err(record.wrong("size", ZERO));
    }
    let shows = indication(record, SHOWS, unit)?;
    let again = indication_if_any(record, AGAIN, unit)?;
    Ok(Some(SetTo {
        against,
        size,
        shows,
        again,
        sense,
    }))
}

fn reading(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let id = id(key, &record)?;
    let Some(station) = Station::parse(&record.text("station")?) else {
        return Ok(false);
    };
    let unit = unit(&mut record, "unit")?;
    let entered = indication(&mut record, VALUE, unit)?;
    let is_nothing = matches!(&entered, Indication::Size(size) if size.size().quanta() == 0);
    if is_nothing && !station.kind.is_amount() {
        return Err(record.wrong("value", ZERO));
    }
    let gauge = stamp(&mut record, "gauge")?;
    let setting = stamp(&mut record, "setting")?;
    let taken = note(&mut record, "taken")?;
    let kept = record.flag("kept")?;
    let strikes = u32::try_from(record.count("strikes")?)
        .map_err(|_| record.wrong("strikes", "is too large"))?;
    let reading = Reading {
        station,
        entered,
        gauge,
        setting,
        taken,
        kept,
        strikes,
        extra: record.rest()?,
    };
    session.readings.insert(id, reading);
    Ok(true)
}

fn register<T>(value: T, mut record: Object<'_>) -> Result<Register<T>, ImportError> {
    let stamp = stamp(&mut record, "at")?;
    let extra: Extra = record.rest()?;
    Ok(Register {
        value,
        stamp,
        extra,
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::archive::v1::write;
    use crate::remedy::{Spot, Subject};
    use crate::session::{Dimension, FieldKey, Replica, Space};

    #[test]
    fn every_field_key_reads_back_as_itself() {
        let limits = Kind::ALL.into_iter().flat_map(|kind| {
            let of_kind = crate::session::limit_keys(kind).iter();
            of_kind.flat_map(move |(quantity, bounds)| {
                bounds.iter().map(move |bound| {
                    FieldKey::Limit(LimitKey {
                        kind,
                        quantity: *quantity,
                        bound: *bound,
                    })
                })
            })
        });
        let sources = Kind::ALL.into_iter().map(FieldKey::LimitSource);
        let plain = [
            FieldKey::Name,
            FieldKey::Cylinders,
            FieldKey::Arrangement,
            FieldKey::Mains,
            FieldKey::RodsPerThrow,
            FieldKey::DisplayUnit,
            FieldKey::Route,
            FieldKey::Use,
            FieldKey::FirstEnd,
            FieldKey::Counting,
            FieldKey::Climate,
            FieldKey::DeckClearance,
            FieldKey::HighSpot(3),
        ];
        let given = Dimension::ALL.map(FieldKey::Length).into_iter();
        let given = given.chain(Space::ALL.map(FieldKey::Volume));
        let looks = Subject::ALL.into_iter().flat_map(|subject| {
            let spot = Spot {
                subject,
                position: 2,
            };
            subject.looks().map(move |look| FieldKey::Look(spot, look))
        });
        let given = given.chain(looks);
        let of_kinds = Kind::ALL.into_iter().flat_map(|kind| {
            [
                FieldKey::Nominal(kind),
                FieldKey::GaugeOf(kind),
                FieldKey::Material(kind),
                FieldKey::Study(kind),
                FieldKey::Measure(kind),
                FieldKey::Stock(kind),
            ]
        });
        let keys = plain.into_iter().chain(given).chain(of_kinds);
        for key in keys.chain(sources).chain(limits) {
            let replica = Replica::new(1);
            let id = SessionId::from_number(1);
            let session = Session::create(id, vec![key.default()], replica);
            let text = crate::archive::write(&session, replica);
            let back = crate::archive::read(&text).map(|incoming| incoming.session);
            assert_eq!(back.as_ref(), Ok(&session), "{}", write::key_text(key));
        }
    }
}
