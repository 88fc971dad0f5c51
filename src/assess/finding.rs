//! A computed quantity and its comparison.

use super::{Guide, Sure};
use crate::quantity::{Entered, Exact};
use crate::session::{Bound, Direction, Feature, Level, Quantity, Stamp, Station};
use crate::verdict::{Comparison, Limits, Verdict};

/// Which of several values of a quantity a finding is.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Which {
    /// The mean over all places.
    Mean,
    /// The smallest; of a clearance, the least.
    Smallest,
    /// The largest; of signed values, the largest either way.
    Largest,
    /// At one level, starting from one direction.
    At(Level, Direction),
    /// Along one direction; without one, between the means of levels.
    Along(Option<Direction>),
    /// Of the oval fitted to all directions.
    Fitted,
    /// An oil clearance by one way; the surest decides.
    By(Way),
    /// An oil clearance by the surest of the ways that were taken.
    Surest,
}

/// A way to an oil clearance.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Way {
    /// By arithmetic: housing less both walls less journal.
    Parts,
    /// Direct: the bore of the fitted shells less the journal.
    Fitted,
    /// By plastic strip.
    Strip,
}

impl Which {
    /// True unless it is one of those of which the largest or the surest
    /// decides.
    #[must_use]
    pub const fn decides(self) -> bool {
        self.is_weighed() && !matches!(self, Self::By(_))
    }

    /// True if it is told how sure the value is.
    pub(super) const fn is_weighed(self) -> bool {
        !matches!(self, Self::At(..) | Self::Along(Some(_)))
    }
}

/// The address of a finding.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub struct FindingKey {
    /// Of which feature.
    pub feature: Feature,
    /// What was computed.
    pub quantity: Quantity,
    /// Which of its values.
    pub which: Which,
}

impl FindingKey {
    /// The address of one finding.
    #[must_use]
    pub const fn new(feature: Feature, quantity: Quantity, which: Which) -> Self {
        Self {
            feature,
            quantity,
            which,
        }
    }
}

/// The limits a value was compared with, and as the manual prints them.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct UsedLimits {
    /// As bands in the sense of the quantity.
    pub limits: Limits,
    /// Those given, as typed.
    pub given: Vec<(Bound, Entered)>,
    /// Where they come from, as told.
    pub source: String,
}

/// What a finding found.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Outcome {
    /// Not enough was read.
    NotMeasured,
    /// A value.
    Value {
        /// The exact value.
        value: Exact,
        /// What it reads against its limits.
        comparison: Comparison,
        /// Distance to the nearest end of the band that decided, negative
        /// outside; `None` without limits.
        margin: Option<Exact>,
    },
}

/// What a finding tells besides its value.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Detail {
    /// Of a fitted oval.
    Oval {
        /// Direction of the longest diameter in whole degrees, below 180, on
        /// the feature's own scale; `None` where it is round.
        axis: Option<u16>,
        /// Whether the value is the whole truth: a root is rounded, to a
        /// thousandth of a quantum.
        exact: bool,
        /// The level it lies at; `None` where it is one along the whole axis.
        level: Option<Level>,
    },
    /// By how much the end gap of a ring changes between top and bottom of a
    /// bore, by the mean of its tapers.
    RingGap(Exact),
    /// Of a root: whether the value is the whole truth, not rounded to a
    /// thousandth of a quantum.
    Root(bool),
    /// Of a value to which two ways were taken.
    TwoWays(TwoWays),
    /// A clearance that no bearing has and no wear makes: see
    /// [`IMPOSSIBLE_CLEARANCE`](crate::remedy::IMPOSSIBLE_CLEARANCE).
    Impossible,
}

/// Two ways to one value: of several those that stand furthest out.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct TwoWays {
    /// By how much the two differ at 20 °C.
    pub apart: Exact,
    /// How much of that the doubts of both allow.
    pub allowed: Exact,
}

impl TwoWays {
    /// Whether they agree. Otherwise there is an error somewhere.
    #[must_use]
    pub fn agree(&self) -> bool {
        self.apart <= self.allowed
    }
}

/// A computed quantity of a feature, compared with its limits.
#[derive(Clone, Debug, PartialEq)]
pub struct Finding {
    /// Its address.
    pub key: FindingKey,
    /// What was found.
    pub outcome: Outcome,
    /// How sure the value is, and what is proved.
    pub sure: Option<Box<Sure>>,
    /// What it tells besides.
    pub detail: Option<Detail>,
    /// The limits of the manual for it.
    pub limits: UsedLimits,
    /// What the common rules say of it, where the manual gives no limit.
    pub guide: Option<Guide>,
    /// The readings it rests on.
    pub readings: Vec<Stamp>,
    /// Stations that were not read and belong to it.
    pub missing: Vec<Station>,
}

/// What repeated readings at one station say of each other.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Repeats {
    /// Where.
    pub station: Station,
    /// How many readings stand there, at least two.
    pub count: usize,
    /// The largest less the smallest.
    pub spread: Exact,
}

impl Finding {
    /// The value, if there is one.
    #[must_use]
    pub const fn value(&self) -> Option<Exact> {
        match &self.outcome {
            Outcome::Value { value, .. } => Some(*value),
            Outcome::NotMeasured => None,
        }
    }

    /// The verdict, if there is a value and it decides.
    #[must_use]
    pub fn decided(&self) -> Option<Verdict> {
        let sure = self.sure.as_ref().filter(|_| self.key.which.decides());
        sure.map(|sure| sure.verdict)
    }

    /// The comparison, if there is a value.
    #[must_use]
    pub const fn comparison(&self) -> Option<Comparison> {
        match &self.outcome {
            Outcome::Value { comparison, .. } => Some(*comparison),
            Outcome::NotMeasured => None,
        }
    }
}
