//! Values in the records of version 1.

use super::IndicationKeys;
use crate::archive::ImportError;
use crate::archive::object::Object;
use crate::quantity::{Entered, EnteredDeviation, Unit};
use crate::session::{Indication, NOTE_MAX, Stamp};

const PLAIN: &str = "is not written as a plain decimal";

/// What a gauge showed: a size under one key or a deviation under the other.
pub(super) fn indication(
    record: &mut Object<'_>,
    keys: IndicationKeys,
    unit: Unit,
) -> Result<Indication, ImportError> {
    let found = indication_if_any(record, keys, unit)?;
    found.ok_or_else(|| record.wrong(keys.size, "is missing"))
}

/// The same where it may be absent.
pub(super) fn indication_if_any(
    record: &mut Object<'_>,
    keys: IndicationKeys,
    unit: Unit,
) -> Result<Option<Indication>, ImportError> {
    let Some(text) = record.text_if_any(keys.deviation)? else {
        let size = record.text_if_any(keys.size)?;
        let size = size.map(|text| parsed(record, keys.size, &text, unit));
        return Ok(size.transpose()?.map(Indication::Size));
    };
    let deviation = deviation(record, keys.deviation, &text, unit)?;
    Ok(Some(Indication::Deviation(deviation)))
}

pub(super) fn deviation(
    record: &Object<'_>,
    key: &str,
    text: &str,
    unit: Unit,
) -> Result<EnteredDeviation, ImportError> {
    let deviation = EnteredDeviation::parse(text, unit)
        .map_err(|why| ImportError::damaged(record.place(), why))?;
    if deviation.text() == text {
        Ok(deviation)
    } else {
        Err(record.wrong(key, PLAIN))
    }
}

pub(super) fn id(key: &str, record: &Object<'_>) -> Result<Stamp, ImportError> {
    Stamp::parse(key).ok_or_else(|| record.wrong(key, "is not an id"))
}

pub(super) fn stamp(record: &mut Object<'_>, key: &str) -> Result<Stamp, ImportError> {
    let text = record.text(key)?;
    Stamp::parse(&text).ok_or_else(|| record.wrong(key, "is not an id"))
}

pub(super) fn unit(record: &mut Object<'_>, key: &str) -> Result<Unit, ImportError> {
    let text = record.text(key)?;
    Unit::from_sign(&text).ok_or_else(|| record.wrong(key, "is neither “mm” nor “in”"))
}

pub(super) fn length(
    record: &mut Object<'_>,
    key: &str,
    unit: Unit,
) -> Result<Entered, ImportError> {
    let text = record.text(key)?;
    parsed(record, key, &text, unit)
}

pub(super) fn parsed(
    record: &Object<'_>,
    key: &str,
    text: &str,
    unit: Unit,
) -> Result<Entered, ImportError> {
    let entered =
        Entered::parse(text, unit).map_err(|why| ImportError::damaged(record.place(), why))?;
    // A stored decimal has the point and nothing round it, so that one value
    // has one text.
    if entered.text() == text {
        Ok(entered)
    } else {
        Err(record.wrong(key, PLAIN))
    }
}

pub(super) fn note(record: &mut Object<'_>, key: &str) -> Result<String, ImportError> {
    let text = record.text(key)?;
    if NOTE_MAX < text.chars().count() {
        return Err(record.wrong(key, "is too long"));
    }
    Ok(text)
}

pub(super) fn small(record: &mut Object<'_>) -> Result<u8, ImportError> {
    let count = record.count("value")?;
    u8::try_from(count).map_err(|_| record.wrong("value", "is too large"))
}
