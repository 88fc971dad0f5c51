//! Session → text of version 1.

use super::{
    AGAIN, GAUGE, HIGH_SPOT, IndicationKeys, KEPT_SECTIONS, LENGTH, LOOKS, MATERIAL, MEASURE,
    NOMINAL, NOT_SEEN, SEEN, SHOWS, SOURCE, STOCK, STUDY, VALUE, VOLUME, look_key,
};
use crate::archive::text::{check_sum, lines, object, quoted};
use crate::archive::{APP, FORMAT, VERSION};
use crate::quantity::{Entered, Unit};
use crate::session::{
    Against, Field, Gauge, Indication, Reading, Register, Replica, Session, Setting, Stamp,
};
use crate::verdict::DecisionRule;

/// Keys and texts of the fields of a record.
type Fields = Vec<(&'static str, String)>;

/// A section under way: key and text of each record.
type Records = Vec<(String, String)>;

pub(in crate::archive) fn file(session: &Session, replica: Replica) -> String {
    let body = body(session);
    let mut fields = vec![
        ("format", quoted(FORMAT)),
        ("version", VERSION.to_string()),
        ("app", quoted(APP)),
        ("rule", quoted(DecisionRule::ONE_SIDED_95.name)),
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
    let mut fields: Vec<(&str, Records)> = FIELD_SECTIONS.map(|name| (name, Records::new())).into();
    for register in session.fields.values() {
        let (section, key, value) = field(&register.value);
        let section = fields.iter_mut().find(|(name, _)| *name == section);
        if let Some((_, records)) = section {
            records.push((key, stamped(value, register)));
        }
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
    let facts: [(&str, Records); 3] = [
        ("gauges", gauges.collect()),
        ("settings", settings.collect()),
        ("readings", readings.collect()),
    ];
    // In the order of the format.
    let rest = fields.split_off(2);
    let mut sections = fields;
    sections.extend(facts);
    sections.extend(rest);
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

/// The sections that hold fields; the first two stand before the facts.
const FIELD_SECTIONS: [&str; 3] = [SET_UP, LIMITS, LOOKS];
const SET_UP: &str = "set_up";
const LIMITS: &str = "limits";

/// The section of a field, its key, and its value fields.
fn field(field: &Field) -> (&'static str, String, Fields) {
    let value = |text: String| vec![("value", text)];
    let (key, fields) = match field {
        Field::Name(name) => ("name", value(quoted(name))),
        Field::Cylinders(n) => ("cylinders", value(n.to_string())),
        Field::Arrangement(a) => ("arrangement", value(quoted(a.key()))),
        Field::Mains(n) => ("main_journals", value(n.to_string())),
        Field::RodsPerThrow(n) => ("rods_per_throw", value(n.to_string())),
        Field::DisplayUnit(unit) => ("display_unit", value(quoted(unit.sign()))),
        Field::Route(route) => ("route", value(quoted(route.key()))),
        Field::Use(machine_use) => ("use", value(quoted(machine_use.key()))),
        Field::FirstEnd(end) => ("first_end", value(quoted(end.key()))),
        Field::Counting(counting) => ("counting", value(quoted(counting.key()))),
        Field::Climate(climate) => ("climate", value(quoted(&climate.to_string()))),
        Field::Nominal(kind, size) => {
            let key = format!("{NOMINAL}/{}", kind.key());
            return (SET_UP, key, length_or_null(size.as_ref()));
        }
        Field::GaugeOf(kind, chosen) => {
            let key = format!("{GAUGE}/{}", kind.key());
            let chosen = chosen.map(|id| quoted(&id.to_string()));
            return (
                SET_UP,
                key,
                value(chosen.unwrap_or_else(|| NULL.to_owned())),
            );
        }
        Field::Material(kind, material) => {
            let key = format!("{MATERIAL}/{}", kind.key());
            return (SET_UP, key, value(quoted(material.key())));
        }
        Field::Study(kind, study) => {
            let key = format!("{STUDY}/{}", kind.key());
            return (SET_UP, key, value(study.to_string()));
        }
        Field::Measure(kind, asked) => {
            let key = format!("{MEASURE}/{}", kind.key());
            return (SET_UP, key, value(asked.to_string()));
        }
        Field::Stock(kind, steps) => {
            let key = format!("{STOCK}/{}", kind.key());
            return (SET_UP, key, list_or_null(steps.as_deref()));
        }
        Field::HighSpot(main, hour) => {
            let hour = hour.unwrap_or(0).to_string();
            return (SET_UP, format!("{HIGH_SPOT}/{main}"), value(hour));
        }
        Field::Length(name, length) => {
            let key = format!("{LENGTH}/{}", name.key());
            return (SET_UP, key, length_or_null(length.as_ref()));
        }
        Field::Volume(name, volume) => {
            let key = format!("{VOLUME}/{}", name.key());
            let volume = volume.map(|volume| quoted(&volume.to_string()));
            return (
                SET_UP,
                key,
                value(volume.unwrap_or_else(|| NULL.to_owned())),
            );
        }
        Field::DeckClearance(clearance) => {
            let text = clearance.as_ref().map(|c| (c.text(), c.unit()));
            ("deck_clearance", in_unit_or_null(text))
        }
        Field::Look(spot, look, seen) => {
            let word = |seen: &bool| quoted(if *seen { SEEN } else { NOT_SEEN });
            let seen = seen.as_ref().map_or_else(|| NULL.to_owned(), word);
            return (LOOKS, look_key(*spot, *look), value(seen));
        }
        Field::Limit(key, limit) => {
            return (LIMITS, key.to_string(), length_or_null(limit.as_ref()));
        }
        Field::LimitSource(kind, source) => {
            let key = format!("{}/{SOURCE}", kind.key());
            return (LIMITS, key, value(quoted(source)));
        }
    };
    (SET_UP, key.to_owned(), fields)
}

const NULL: &str = "null";

fn length_or_null(length: Option<&Entered>) -> Fields {
    in_unit_or_null(length.map(|length| (length.text(), length.unit())))
}

/// Lengths one after the other, in the unit of the first.
fn list_or_null(lengths: Option<&[Entered]>) -> Fields {
    let texts = lengths.map(|all| all.iter().map(Entered::text).collect::<Vec<_>>().join(" "));
    let unit = lengths
        .and_then(|all| all.first())
        .map_or(Unit::Millimetre, Entered::unit);
    in_unit_or_null(texts.as_deref().map(|text| (text, unit)))
}

fn in_unit_or_null(length: Option<(&str, Unit)>) -> Fields {
    match length {
        None => vec![("value", NULL.to_owned())],
        Some((text, unit)) => vec![("value", quoted(text)), ("unit", quoted(unit.sign()))],
    }
}

fn stamped<T>(mut fields: Fields, register: &Register<T>) -> String {
    fields.push(("at", quoted(&register.stamp.to_string())));
    object(&fields, &register.extra)
}

fn record<T>(id: &Stamp, register: &Register<T>, fields: fn(&T) -> Fields) -> (String, String) {
    (id.to_string(), stamped(fields(&register.value), register))
}

fn gauge_fields(gauge: &Gauge) -> Fields {
    let mut fields = vec![
        ("kind", quoted(gauge.kind.key())),
        ("graduation", quoted(gauge.graduation.text())),
        ("unit", quoted(gauge.unit().sign())),
    ];
    if let Some((least, greatest)) = &gauge.range {
        fields.push(("least", quoted(least.text())));
        fields.push(("greatest", quoted(greatest.text())));
    }
    push_if(&mut fields, "away", gauge.away);
    fields
}

fn setting_fields(setting: &Setting) -> Fields {
    let mut fields = vec![
        ("gauge", quoted(&setting.gauge.to_string())),
        ("note", quoted(&setting.note)),
    ];
    if let Some(set) = &setting.set {
        fields.push(("against", quoted(set.against.key())));
        if let Against::Feature(feature) = set.against {
            fields.push(("feature", quoted(&feature.to_string())));
        }
        fields.push(("size", quoted(set.size.text())));
        fields.push(("unit", quoted(set.size.unit().sign())));
        fields.push(shown(SHOWS, &set.shows));
        fields.extend(set.again.as_ref().map(|again| shown(AGAIN, again)));
        fields.push(("sense", quoted(set.sense.key())));
    }
    push_if(&mut fields, "away", setting.away);
    fields
}

fn shown(keys: IndicationKeys, indication: &Indication) -> (&'static str, String) {
    match indication {
        Indication::Size(size) => (keys.size, quoted(size.text())),
        Indication::Deviation(by) => (keys.deviation, quoted(by.text())),
    }
}

/// A flag is written only where it is up.
fn push_if(fields: &mut Fields, key: &'static str, flag: bool) {
    if flag {
        fields.push((key, "true".to_owned()));
    }
}

fn reading(reading: &Reading) -> String {
    let mut fields = vec![
        ("station", quoted(&reading.station.to_string())),
        shown(VALUE, &reading.entered),
        ("unit", quoted(reading.entered.unit().sign())),
        ("gauge", quoted(&reading.gauge.to_string())),
        ("setting", quoted(&reading.setting.to_string())),
        ("taken", quoted(&reading.taken)),
        ("strikes", reading.strikes.to_string()),
    ];
    push_if(&mut fields, "kept", reading.kept);
    object(&fields, &reading.extra)
}

/// Kept in step with the reader by a test: every field key has one text.
#[cfg(test)]
pub(super) fn key_text(key: crate::session::FieldKey) -> String {
    field(&key.default()).1
}
