//! Format version 1, described by `public/session-v1.schema.json`.
//!
//! Once a version has reached a user it is never changed: whatever an older
//! program wrote must open for ever. New optional fields and new records do
//! not need a new version, because unknown ones are kept and handed on.

use crate::remedy::{Look, Spot};

pub(super) mod read;
mod set_up;
mod value;
pub(super) mod write;

/// Sections whose records this version keeps without reading them.
const KEPT_SECTIONS: [&str; 2] = ["prices", "choices"];

/// The section of what was looked for.
const LOOKS: &str = "visual_checks";

/// The word for a source note in the limits section, after the kind.
const SOURCE: &str = "source";

/// The words, before the kind, of the set-up fields that each kind has.
const NOMINAL: &str = "nominal";
const GAUGE: &str = "gauge";
const MATERIAL: &str = "material";
const STUDY: &str = "study";
const MEASURE: &str = "measure";
const STOCK: &str = "stock";

/// The words, before a number or another word, of further set-up fields.
const HIGH_SPOT: &str = "high_spot";
const LENGTH: &str = "length";
const VOLUME: &str = "volume";

/// The answers to a look.
const SEEN: &str = "seen";
const NOT_SEEN: &str = "not_seen";

/// The key of a look at a spot.
fn look_key(spot: Spot, look: Look) -> String {
    format!("{}/{}/{}", look.key(), spot.subject.key(), spot.position)
}

/// The keys under which a record says what a gauge showed, one of the two.
#[derive(Clone, Copy)]
struct IndicationKeys {
    size: &'static str,
    deviation: &'static str,
}

/// Of a reading.
const VALUE: IndicationKeys = IndicationKeys {
    size: "value",
    deviation: "deviation",
};

/// Of a setting, when the gauge was set and when it was checked again.
const SHOWS: IndicationKeys = IndicationKeys {
    size: "shows",
    deviation: "shows_deviation",
};
const AGAIN: IndicationKeys = IndicationKeys {
    size: "again",
    deviation: "again_deviation",
};
