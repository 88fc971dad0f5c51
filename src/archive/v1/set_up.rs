//! Set-up fields of version 1.

use super::read::put_field;
use super::value::{deviation, parsed, small, unit};
use super::{
    GAUGE, HIGH_SPOT, LENGTH, MATERIAL, MEASURE, NOMINAL, NOT_SEEN, SEEN, STOCK, STUDY, VOLUME,
    look_key,
};
use crate::archive::ImportError;
use crate::archive::object::Object;
use crate::quantity::{Entered, EnteredDeviation};
use crate::remedy::{Look, Spot, Subject};
use crate::session::{
    Arrangement, Counting, Dimension, Field, FirstEnd, Kind, RouteChoice, Session, Space, Stamp,
    Use, Volume,
};
use crate::uncertainty::{Climate, Material};

pub(super) fn set_up(
    session: &mut Session,
    key: &str,
    mut record: Object<'_>,
) -> Result<bool, ImportError> {
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
        "use" => Use::from_key(&record.text("value")?).map(Field::Use),
        "first_end" => FirstEnd::from_key(&record.text("value")?).map(Field::FirstEnd),
        "counting" => Counting::from_key(&record.text("value")?).map(Field::Counting),
        "climate" => Climate::parse(&record.text("value")?).map(Field::Climate),
        "deck_clearance" => Some(Field::DeckClearance(deviation_or_null(&mut record)?)),
        _ => named(key, &mut record)?,
    };
    put_field(session, field, record)
}

/// A set-up field of which there are several by name.
fn named(key: &str, record: &mut Object<'_>) -> Result<Option<Field>, ImportError> {
    let Some((word, name)) = key.split_once('/') else {
        return Ok(None);
    };
    let field = match word {
        HIGH_SPOT => match name.parse().ok().filter(|n: &u8| n.to_string() == name) {
            Some(main) => {
                let hour = small(record)?;
                Some(Field::HighSpot(main, (0 < hour).then_some(hour)))
            }
            None => None,
        },
        LENGTH => match Dimension::from_key(name) {
            Some(name) => Some(Field::Length(name, length_or_null(record)?)),
            None => None,
        },
        VOLUME => match Space::from_key(name) {
            Some(name) => {
                let text = record.text_or_null("value")?;
                let volume = text.map(|text| {
                    let volume = Volume::parse(&text).filter(|v| v.to_string() == text);
                    volume.ok_or_else(|| record.wrong("value", "is no volume"))
                });
                Some(Field::Volume(name, volume.transpose()?))
            }
            None => None,
        },
        _ => of_kind(word, name, record)?,
    };
    Ok(field)
}

fn deviation_or_null(record: &mut Object<'_>) -> Result<Option<EnteredDeviation>, ImportError> {
    let text = record.text_or_null("value")?;
    let length = text.map(|text| {
        let unit = unit(record, "unit")?;
        deviation(record, "value", &text, unit)
    });
    length.transpose()
}

/// What was looked for: the look and where, as in `wiped/main_shell/3`.
pub(super) fn look(
    session: &mut Session,
    key: &str,
    mut record: Object<'_>,
) -> Result<bool, ImportError> {
    let mut words = key.split('/');
    let mut spot = || {
        let look = Look::from_key(words.next()?)?;
        let subject = Subject::from_key(words.next()?)?;
        let position = words.next()?.parse().ok().filter(|p| 1 <= *p)?;
        let spot = Spot { subject, position };
        let is_it = look_key(spot, look) == key && look.subjects().contains(&subject);
        is_it.then_some((spot, look))
    };
    let field = match spot() {
        None => None,
        Some((spot, look)) => {
            let seen = record.text_or_null("value")?;
            let seen = seen.map(|word| match word.as_str() {
                SEEN => Ok(true),
                NOT_SEEN => Ok(false),
                _ => Err(record.wrong("value", "is neither “seen” nor “not_seen”")),
            });
            Some(Field::Look(spot, look, seen.transpose()?))
        }
    };
    put_field(session, field, record)
}

/// The steps in which parts can be had, one after the other in one text.
fn steps(record: &mut Object<'_>) -> Result<Option<Vec<Entered>>, ImportError> {
    let text = record.text_or_null("value")?;
    let steps = text.map(|text| {
        let unit = unit(record, "unit")?;
        let each = text.split(' ').filter(|step| !step.is_empty());
        each.map(|step| parsed(record, "value", step, unit))
            .collect()
    });
    steps.transpose()
}

/// A set-up field that each kind has.
fn of_kind(word: &str, kind: &str, record: &mut Object<'_>) -> Result<Option<Field>, ImportError> {
    let Some(kind) = Kind::from_key(kind) else {
        return Ok(None);
    };
    Ok(match word {
        NOMINAL => Some(Field::Nominal(kind, length_or_null(record)?)),
        GAUGE => {
            let chosen = record.text_or_null("value")?;
            let chosen = chosen.map(|text| {
                Stamp::parse(&text).ok_or_else(|| record.wrong("value", "is not an id"))
            });
            Some(Field::GaugeOf(kind, chosen.transpose()?))
        }
        MATERIAL => {
            let material = Material::from_key(&record.text("value")?);
            material.map(|material| Field::Material(kind, material))
        }
        STUDY => Some(Field::Study(kind, record.truth("value")?)),
        MEASURE => Some(Field::Measure(kind, record.truth("value")?)),
        STOCK => Some(Field::Stock(kind, steps(record)?)),
        _ => None,
    })
}

pub(super) fn length_or_null(record: &mut Object<'_>) -> Result<Option<Entered>, ImportError> {
    let text = record.text_or_null("value")?;
    let length = text.map(|text| {
        let unit = unit(record, "unit")?;
        parsed(record, "value", &text, unit)
    });
    length.transpose()
}
