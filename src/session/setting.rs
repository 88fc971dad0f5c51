//! Zeroings of gauges, and the sizes they make of what a gauge shows.

use super::{Feature, Indication, Stamp};
use crate::quantity::{Deviation, Entered, Size};

/// One zeroing of a gauge.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct Setting {
    /// The gauge that was set.
    pub gauge: Stamp,
    /// A word about it, as told; may be empty.
    pub note: String,
    /// What it was set to; `None` for "as found": nobody checked it.
    pub set: Option<SetTo>,
    /// True if nothing more is read in it. What was read stays.
    pub away: bool,
}

/// What a gauge was set to and what it showed there.
#[derive(Clone, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub struct SetTo {
    /// Against what.
    pub against: Against,
    /// The size of that.
    pub size: Entered,
    /// What the gauge showed on it: for a gauge that reads sizes its zero
    /// error and that size, for one that reads deviations mostly nothing.
    pub shows: Indication,
    /// What it showed on the same when it was checked again at the end of its
    /// use; `None` where nobody did.
    pub again: Option<Indication>,
    /// Which way the dial goes; of no matter for a gauge that reads sizes.
    pub sense: Sense,
}

/// Against what a gauge was set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Against {
    /// A setting standard, gauge block or ring.
    Standard,
    /// A micrometer set to the size and locked.
    Micrometer,
    /// The micrometer still locked as it stood on this piston or journal, so
    /// that its error cancels in a clearance.
    Feature(Feature),
}

/// Which way the dial of a gauge goes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub enum Sense {
    /// Plus is larger than the setting.
    PlusLarger,
    /// Plus is smaller than the setting: the dial shows how far the contact
    /// is pushed in.
    PlusSmaller,
}

impl Setting {
    /// A gauge as it was found.
    #[must_use]
    pub const fn as_found(gauge: Stamp) -> Self {
        Self {
            gauge,
            note: String::new(),
            set: None,
            away: false,
        }
    }
}

impl SetTo {
    /// The size at which the gauge shows this; `None` where it was set by
    /// the other sort of indication.
    #[must_use]
    pub fn size_at(&self, indication: &Indication) -> Option<Size> {
        let beyond = match (indication, &self.shows) {
            (Indication::Size(now), Indication::Size(then)) => now.size() - then.size(),
            (Indication::Deviation(now), Indication::Deviation(then)) => {
                let (now, then) = (now.deviation().quanta(), then.deviation().quanta());
                let beyond = Deviation::from_quanta(now.saturating_sub(then));
                match self.sense {
                    Sense::PlusLarger => beyond,
                    Sense::PlusSmaller => -beyond,
                }
            }
            _ => return None,
        };
        Some(self.size.size() + beyond)
    }

    /// How much larger one size reads at the end of the use than at its
    /// start: below zero where the gauge has come to read less, whichever way
    /// its dial goes. `None` where it was not checked again, or by the other
    /// sort of indication.
    #[must_use]
    pub fn drift(&self) -> Option<Deviation> {
        let at_the_end = self.size_at(self.again.as_ref()?)?;
        Some(at_the_end - self.size.size())
    }
}

impl Against {
    /// The word in files; a feature stands behind it.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::Standard => "standard",
            Self::Micrometer => "micrometer",
            Self::Feature(_) => "feature",
        }
    }
}

impl Sense {
    /// Both.
    pub const ALL: [Self; 2] = [Self::PlusLarger, Self::PlusSmaller];

    /// The word in files.
    #[must_use]
    pub const fn key(self) -> &'static str {
        match self {
            Self::PlusLarger => "plus_is_larger",
            Self::PlusSmaller => "plus_is_smaller",
        }
    }

    /// The sense of this word.
    #[must_use]
    pub fn from_key(key: &str) -> Option<Self> {
        Self::ALL.into_iter().find(|sense| sense.key() == key)
    }
}
