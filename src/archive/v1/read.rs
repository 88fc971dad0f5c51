//! Text of version 1 → session.

use super::{KEPT_SECTIONS, SOURCE};
use crate::archive::object::{Object, check_extra};
use crate::archive::text::{check_sum, quoted};
use crate::archive::{ImportError, Incoming};
use crate::quantity::{Entered, Unit};
use crate::session::{
    Arrangement, Extra, Field, Gauge, GaugeKind, Kind, LimitKey, NOTE_MAX, READINGS_MAX, Reading,
    Register, RouteChoice, Session, SessionId, Setting, Stamp, Station,
};

/// Reads the rest of a file whose format and version have been taken.
pub(in crate::archive) fn file(mut file: Object<'_>) -> Result<Incoming, ImportError> {
    file.text("app")?;
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

fn set_up(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let field = match key {
        "name" => Some(Field::Name(record.text("value")?)),
        "cylinders" => Some(Field::Cylinders(small(&mut record)?)),
        "main_journals" => Some(Field::Mains(small(&mut record)?)),
        "rods_per_throw" => Some(Field::RodsPerThrow(small(&mut record)?)),
        "display_unit" => {
            let unit = unit(&mut record, "value")?;
            Some(Field::DisplayUnit(unit))
        }
        "arrangement" => Arrangement::from_key(&record.text("value")?).map(Field::Arrangement),
        "route" => RouteChoice::from_key(&record.text("value")?).map(Field::Route),
        _ => None,
    };
    put_field(session, field, record)
}

fn limit(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let source_of = key
        .strip_suffix(SOURCE)
        .and_then(|start| Kind::from_key(start.strip_suffix('/')?));
    let field = if let Some(kind) = source_of {
        Some(Field::LimitSource(kind, record.text("value")?))
    } else if let Some(key) = LimitKey::parse(key) {
        let text = record.text_or_null("value")?;
        let limit = match text {
            Some(text) => Some(length(&mut record, &text)?),
            None => None,
        };
        Some(Field::Limit(key, limit))
    } else {
        None
    };
    put_field(session, field, record)
}

fn put_field(
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
    let text = record.text("graduation")?;
    let graduation = length(&mut record, &text)?;
    if graduation.size().quanta() == 0 {
        return Err(record.wrong("graduation", "is zero"));
    }
    let register = register(Gauge { kind, graduation }, record)?;
    session.gauges.insert(id, register);
    Ok(true)
}

fn setting(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let id = id(key, &record)?;
    let gauge = stamp(&mut record, "gauge")?;
    let note = note(&mut record, "note")?;
    let register = register(Setting { gauge, note }, record)?;
    session.settings.insert(id, register);
    Ok(true)
}

fn reading(session: &mut Session, key: &str, mut record: Object<'_>) -> Result<bool, ImportError> {
    let id = id(key, &record)?;
    let Some(station) = Station::parse(&record.text("station")?) else {
        return Ok(false);
    };
    let text = record.text("value")?;
    let entered = length(&mut record, &text)?;
    if entered.size().quanta() == 0 {
        return Err(record.wrong("value", "is zero, which is no size"));
    }
    let gauge = stamp(&mut record, "gauge")?;
    let setting = stamp(&mut record, "setting")?;
    let taken = note(&mut record, "taken")?;
    let strikes = u32::try_from(record.count("strikes")?)
        .map_err(|_| record.wrong("strikes", "is too large"))?;
    let reading = Reading {
        station,
        entered,
        gauge,
        setting,
        taken,
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

fn id(key: &str, record: &Object<'_>) -> Result<Stamp, ImportError> {
    Stamp::parse(key).ok_or_else(|| record.wrong(key, "is not an id"))
}

fn stamp(record: &mut Object<'_>, key: &str) -> Result<Stamp, ImportError> {
    let text = record.text(key)?;
    Stamp::parse(&text).ok_or_else(|| record.wrong(key, "is not an id"))
}

fn unit(record: &mut Object<'_>, key: &str) -> Result<Unit, ImportError> {
    let text = record.text(key)?;
    Unit::from_sign(&text).ok_or_else(|| record.wrong(key, "is neither “mm” nor “in”"))
}

fn length(record: &mut Object<'_>, text: &str) -> Result<Entered, ImportError> {
    let unit = unit(record, "unit")?;
    let entered =
        Entered::parse(text, unit).map_err(|why| ImportError::damaged(record.place(), why))?;
    // A stored decimal has the point and nothing round it, so that one value
    // has one text.
    if entered.text() == text {
        Ok(entered)
    } else {
        Err(record.wrong("value", "is not written as a plain decimal"))
    }
}

fn note(record: &mut Object<'_>, key: &str) -> Result<String, ImportError> {
    let text = record.text(key)?;
    if NOTE_MAX < text.chars().count() {
        return Err(record.wrong(key, "is too long"));
    }
    Ok(text)
}

fn small(record: &mut Object<'_>) -> Result<u8, ImportError> {
    let count = record.count("value")?;
    u8::try_from(count).map_err(|_| record.wrong("value", "is too large"))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::archive::v1::write;
    use crate::session::{FieldKey, Replica};

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
        ];
        for key in plain.into_iter().chain(sources).chain(limits) {
            let replica = Replica::new(1);
            let id = SessionId::from_number(1);
            let session = Session::create(id, vec![key.default()], replica);
            let text = crate::archive::write(&session, replica);
            let back = crate::archive::read(&text).map(|incoming| incoming.session);
            assert_eq!(back.as_ref(), Ok(&session), "{}", write::key_text(key));
        }
    }
}
