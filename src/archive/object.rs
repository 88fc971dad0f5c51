//! A JSON object field by field: what is known is taken, the rest is kept.

use core::fmt;

use litemap::LiteMap;
use serde::de::{Deserialize, Deserializer, MapAccess, Visitor};
use serde_json::value::RawValue;

use super::ImportError;
use super::text::field;
use crate::session::Extra;

/// Longest unknown text that is kept of one object, in bytes.
const EXTRA_BYTES_MAX: usize = 4096;

/// The fields of a JSON object in a text, each as its own text.
pub(super) struct Object<'a> {
    place: String,
    fields: LiteMap<String, &'a RawValue>,
}

impl<'a> Object<'a> {
    /// Reads the object in a text; `place` is where it is, in words.
    pub(super) fn parse(text: &'a str, place: &str) -> Result<Self, ImportError> {
        let found = serde_json::from_str(text).map_err(|e| fault(&e, place))?;
        let Fields { fields, twice } = found;
        if let Some(key) = twice {
            return Err(ImportError::damaged(
                place,
                format!("“{key}” appears twice."),
            ));
        }
        Ok(Self {
            place: place.to_owned(),
            fields,
        })
    }

    /// Where the object is, in words.
    pub(super) fn place(&self) -> &str {
        &self.place
    }

    /// Takes the text of a field.
    pub(super) fn take(&mut self, key: &str) -> Option<&'a str> {
        self.fields.remove(key).map(RawValue::get)
    }

    /// Takes an object that may be absent.
    pub(super) fn section(&mut self, key: &str) -> Result<Object<'a>, ImportError> {
        Object::parse(self.take(key).unwrap_or("{}"), key)
    }

    /// Takes a string.
    pub(super) fn text(&mut self, key: &str) -> Result<String, ImportError> {
        let text = self.need(key)?;
        serde_json::from_str(text).map_err(|_| self.wrong(key, "is not a text"))
    }

    /// Takes a string that may be absent.
    pub(super) fn text_if_any(&mut self, key: &str) -> Result<Option<String>, ImportError> {
        let text = self.take(key);
        let read = |text| serde_json::from_str(text).map_err(|_| self.wrong(key, "is not a text"));
        text.map(read).transpose()
    }

    /// Takes a truth that is absent where it does not hold.
    pub(super) fn flag(&mut self, key: &str) -> Result<bool, ImportError> {
        if self.fields.contains_key(key) {
            self.truth(key)
        } else {
            Ok(false)
        }
    }

    /// Takes a truth.
    pub(super) fn truth(&mut self, key: &str) -> Result<bool, ImportError> {
        match self.need(key)? {
            "false" => Ok(false),
            "true" => Ok(true),
            _ => Err(self.wrong(key, "is neither true nor false")),
        }
    }

    /// Takes a string or null.
    pub(super) fn text_or_null(&mut self, key: &str) -> Result<Option<String>, ImportError> {
        let text = self.need(key)?;
        serde_json::from_str(text).map_err(|_| self.wrong(key, "is not a text"))
    }

    /// Takes a whole number of zero or more.
    pub(super) fn count(&mut self, key: &str) -> Result<u64, ImportError> {
        let text = self.need(key)?;
        // The JSON parser would bring its floats along.
        text.parse()
            .map_err(|_| self.wrong(key, "is not a whole number"))
    }

    /// A fault of a field of this object.
    pub(super) fn wrong(&self, key: &str, why: &str) -> ImportError {
        ImportError::damaged(&self.place, format!("“{key}” {why}."))
    }

    /// The entries that are left, in the order of their keys.
    pub(super) fn entries(self) -> impl Iterator<Item = (String, &'a str)> {
        self.fields.into_iter().map(|(key, raw)| (key, raw.get()))
    }

    /// What is left is unknown and kept as it stands, within bounds.
    pub(super) fn rest(self) -> Result<Extra, ImportError> {
        let fields: Vec<_> = self
            .fields
            .iter()
            .map(|(key, raw)| field(key, raw.get()))
            .collect();
        let text = fields.join(",");
        check_extra(&self.place, &text)?;
        Ok(text)
    }

    fn need(&mut self, key: &str) -> Result<&'a str, ImportError> {
        let found = self.take(key);
        found.ok_or_else(|| self.wrong(key, "is missing"))
    }
}

/// Refuses unknown text too long to be kept.
pub(super) fn check_extra(place: &str, text: &str) -> Result<(), ImportError> {
    if EXTRA_BYTES_MAX < text.len() {
        let why =
            format!("what this version does not know is longer than {EXTRA_BYTES_MAX} bytes.");
        return Err(ImportError::damaged(place, why));
    }
    Ok(())
}

/// What a text is that is no object. (The parser's own words are left out:
/// they would bring every message of the standard library along.)
fn fault(error: &serde_json::Error, place: &str) -> ImportError {
    use serde_json::error::Category;
    match error.classify() {
        Category::Data => ImportError::damaged(place, "there is no object."),
        category => ImportError::NotJson {
            line: error.line(),
            column: error.column(),
            cut_off: category == Category::Eof,
        },
    }
}

/// The fields of an object, and the first key that stands there twice.
#[derive(Default)]
struct Fields<'a> {
    fields: LiteMap<String, &'a RawValue>,
    twice: Option<String>,
}

impl<'de> Deserialize<'de> for Fields<'de> {
    fn deserialize<D: Deserializer<'de>>(deserializer: D) -> Result<Self, D::Error> {
        deserializer.deserialize_map(FieldsVisitor)
    }
}

struct FieldsVisitor;

impl<'de> Visitor<'de> for FieldsVisitor {
    type Value = Fields<'de>;

    fn expecting(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str("an object")
    }

    fn visit_map<A: MapAccess<'de>>(self, mut map: A) -> Result<Self::Value, A::Error> {
        let mut found = Fields::default();
        while let Some((key, value)) = map.next_entry::<String, &RawValue>()? {
            if found.fields.insert(key.clone(), value).is_some() {
                found.twice.get_or_insert(key);
            }
        }
        Ok(found)
    }
}
