//! Session → text of version 1.

use super::{KEPT_SECTIONS, SOURCE};
use crate::archive::text::{check_sum, lines, object, quoted};
use crate::archive::{APP, FORMAT, VERSION};
use crate::session::{Field, Gauge, Reading, Register, Replica, Session, Setting, Stamp};

/// A section under way: key and text of each record.
type Records = Vec<(String, String)>;

pub(in crate::archive) fn file(session: &Session, replica: Replica) -> String {
    let body = body(session);
    let mut fields = vec![
        ("format", quoted(FORMAT)),
        ("version", VERSION.to_string()),
        ("app", quoted(APP)),
        ("replica", quoted(&format!("{:x}", replica.number()))),
        ("check", quoted(&check_sum(&body))),
        ("session", body),
    ];
    for ((section, key), text) in &session.extras {
        if section.is_empty() {
            fields.push((key, text.clone()));
        }
    }
    let owned: Records = fields
        .into_iter()
        .map(|(key, text)| (key.to_owned(), text))
        .collect();
    lines(&owned)
}

fn body(session: &Session) -> String {
    let mut set_up = Records::new();
    let mut limits = Records::new();
    for register in session.fields.values() {
        let (in_limits, key, value) = field(&register.value);
        let section = if in_limits { &mut limits } else { &mut set_up };
        section.push((key, stamped(value, register)));
    }
    let gauges = session
        .gauges
        .iter()
        .map(|(id, gauge)| record(id, gauge, gauge_fields));
    let settings = session
        .settings
        .iter()
        .map(|(id, s)| record(id, s, setting_fields));
    let readings = session
        .readings
        .iter()
        .map(|(id, r)| (id.to_string(), reading(r)));
    let mut sections: Vec<(&str, Records)> = vec![
        ("set_up", set_up),
        ("limits", limits),
        ("gauges", gauges.collect()),
        ("settings", settings.collect()),
        ("readings", readings.collect()),
    ];
    sections.extend(KEPT_SECTIONS.map(|name| (name, Records::new())));
    let mut fields: Records = vec![("id".to_owned(), quoted(session.id.as_str()))];
    for (name, mut records) in sections {
        // What this version set itself displaces what it did not know there.
        let displaced = |key: &String| records.iter().any(|(known, _)| known == key);
        let kept: Records = unknown(session, name)
            .filter(|(key, _)| !displaced(key))
            .collect();
        records.extend(kept);
        fields.push((name.to_owned(), lines_or_empty(&records)));
    }
    fields.extend(unknown(session, "session"));
    lines(&fields)
}

fn unknown<'a>(session: &'a Session, section: &'a str) -> impl Iterator<Item = (String, String)> {
    session
        .extras
        .iter()
        .filter(move |((of, _), _)| of == section)
        .map(|((_, key), text)| (key.clone(), text.clone()))
}

fn lines_or_empty(records: &[(String, String)]) -> String {
    if records.is_empty() {
        "{}".to_owned()
    } else {
        lines(records)
    }
}

/// Whether a field belongs to the limits, its key, and its value fields.
fn field(field: &Field) -> (bool, String, Vec<(&'static str, String)>) {
    let value = |text: String| vec![("value", text)];
    let (key, fields) = match field {
        Field::Name(name) => ("name", value(quoted(name))),
        Field::Cylinders(n) => ("cylinders", value(n.to_string())),
        Field::Arrangement(a) => ("arrangement", value(quoted(a.key()))),
        Field::Mains(n) => ("main_journals", value(n.to_string())),
        Field::RodsPerThrow(n) => ("rods_per_throw", value(n.to_string())),
        Field::DisplayUnit(unit) => ("display_unit", value(quoted(unit.sign()))),
        Field::Route(route) => ("route", value(quoted(route.key()))),
        Field::Limit(key, None) => return (true, key.to_string(), value("null".to_owned())),
        Field::Limit(key, Some(limit)) => {
            let mut fields = value(quoted(limit.text()));
            fields.push(("unit", quoted(limit.unit().sign())));
            return (true, key.to_string(), fields);
        }
        Field::LimitSource(kind, source) => {
            let key = format!("{}/{SOURCE}", kind.key());
            return (true, key, value(quoted(source)));
        }
    };
    (false, key.to_owned(), fields)
}

fn stamped<T>(mut fields: Vec<(&'static str, String)>, register: &Register<T>) -> String {
    fields.push(("at", quoted(&register.stamp.to_string())));
    object(&fields, &register.extra)
}

fn record<T>(
    id: &Stamp,
    register: &Register<T>,
    fields: fn(&T) -> Vec<(&'static str, String)>,
) -> (String, String) {
    (id.to_string(), stamped(fields(&register.value), register))
}

fn gauge_fields(gauge: &Gauge) -> Vec<(&'static str, String)> {
    vec![
        ("kind", quoted(gauge.kind.key())),
        ("graduation", quoted(gauge.graduation.text())),
        ("unit", quoted(gauge.unit().sign())),
    ]
}

fn setting_fields(setting: &Setting) -> Vec<(&'static str, String)> {
    vec![
        ("gauge", quoted(&setting.gauge.to_string())),
        ("note", quoted(&setting.note)),
    ]
}

fn reading(reading: &Reading) -> String {
    let fields = [
        ("station", quoted(&reading.station.to_string())),
        ("value", quoted(reading.entered.text())),
        ("unit", quoted(reading.entered.unit().sign())),
        ("gauge", quoted(&reading.gauge.to_string())),
        ("setting", quoted(&reading.setting.to_string())),
        ("taken", quoted(&reading.taken)),
        ("strikes", reading.strikes.to_string()),
    ];
    object(&fields, &reading.extra)
}

/// Kept in step with the reader by a test: every field key has one text.
#[cfg(test)]
pub(super) fn key_text(key: crate::session::FieldKey) -> String {
    field(&key.default()).1
}
