//! Readings, and the sizes they give.

use core::fmt;

use super::{Extra, Session, Stamp, Station};
use crate::quantity::{Entered, EnteredDeviation, Size, Unit};

/// What a gauge showed (VIM 4.1).
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Indication {
    /// The size itself.
    Size(Entered),
    /// A signed deviation from what the gauge was set to.
    Deviation(EnteredDeviation),
}

impl Indication {
    /// The unit it was typed in.
    #[must_use]
    pub const fn unit(&self) -> Unit {
        match self {
            Self::Size(size) => size.unit(),
            Self::Deviation(deviation) => deviation.unit(),
        }
    }
}

impl From<Entered> for Indication {
    fn from(size: Entered) -> Self {
        Self::Size(size)
    }
}

impl fmt::Display for Indication {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Self::Size(size) => size.fmt(f),
            Self::Deviation(deviation) => deviation.fmt(f),
        }
    }
}

/// One value read at one station with one gauge in one setting. A fact.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Reading {
    /// Where.
    pub station: Station,
    /// What was read, as typed.
    pub entered: Indication,
    /// With which gauge.
    pub gauge: Stamp,
    /// In which setting of it.
    pub setting: Stamp,
    /// When, as the device's clock told it: RFC 3339 text. For the person
    /// only; nothing is ordered by it.
    pub taken: String,
    /// True if it was asked whether this is a slip, and the person stood by it.
    pub kept: bool,
    /// How often it was struck or put back: odd is struck.
    pub strikes: u32,
    /// Unknown fields.
    pub extra: Extra,
}

impl Reading {
    /// True if the reading does not count any more.
    #[must_use]
    pub const fn is_struck(&self) -> bool {
        self.strikes % 2 == 1
    }
}

impl Session {
    /// The size a reading gives in its setting: what was read less what the
    /// gauge showed too much when it was set, or what it was set to and the
    /// deviation from it. `None` for a deviation from nothing.
    #[must_use]
    pub fn size_of(&self, reading: &Reading) -> Option<Size> {
        let setting = self.settings.get(&reading.setting);
        let set = setting.and_then(|setting| setting.value.set.as_ref());
        match (&reading.entered, set) {
            (Indication::Size(size), None) => Some(size.size()),
            (indication, Some(set)) => set.size_at(indication),
            (Indication::Deviation(_), None) => None,
        }
    }
}
