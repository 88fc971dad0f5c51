//! The document: facts about one engine on one bench, edits with their
//! inverses, and which stations exist.
//!
//! Facts merge: two sessions of one engine, or a session and a part of it,
//! give the same result in whatever order they meet, and meeting twice
//! changes nothing. What is stored, exported and imported is always a
//! session, whole or in part. No results, clock, randomness or storage here.

mod bound;
mod document;
mod edit;
mod feature;
mod gauge;
mod given;
mod kind;
mod layout;
mod limits;
mod merge;
mod model;
mod reading;
mod setting;
mod setup;
mod stamp;
mod station;

pub use bound::{
    CYLINDERS_MAX, DEGREES_MAX, DEGREES_MIN, MAINS_MAX, NOTE_MAX, READINGS_MAX, STEPS_MAX,
};
pub use document::Document;
pub use edit::{Edit, Refused};
pub use feature::Feature;
pub use gauge::{Gauge, GaugeKind};
pub use given::{Dimension, Pin, Space, VOLUME_MAX, Volume, usual_steps};
pub use kind::Kind;
pub use limits::{Bound, LimitKey, Quantity, limit_keys, wears};
pub use merge::ordered;
pub use model::{Extra, Register, Session, SessionId};
pub use reading::{Indication, Reading};
pub use setting::{Against, Sense, SetTo, Setting};
pub use setup::{Arrangement, Counting, Field, FieldKey, FirstEnd, RouteChoice, Use};
pub use stamp::{Replica, Stamp};
pub use station::{Direction, Level, Part, Station};
