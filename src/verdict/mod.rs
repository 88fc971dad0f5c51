//! Limits and the exact comparison of a value with them.
//!
//! This room compares numbers as they stand. It knows nothing of stations,
//! features or engines.

mod decide;
mod oval;
mod settle;

pub use decide::{Decision, DecisionRule, Verdict};
pub use oval::{ALONG, Oval, OvalLevel, Ovals, Part};
pub use settle::{Ask, Repeats, Round, Share, ask, never};

use core::fmt;

use crate::quantity::{Exact, Size};

/// A band of allowed values. Both ends belong to it; a missing end is open.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Band {
    /// Least allowed value.
    pub low: Option<Exact>,
    /// Greatest allowed value.
    pub high: Option<Exact>,
}

impl Band {
    /// The band between two limits.
    #[must_use]
    pub const fn new(low: Option<Exact>, high: Option<Exact>) -> Self {
        Self { low, high }
    }

    /// The band from −limit to +limit, for a signed shape.
    #[must_use]
    pub fn either_way(limit: Option<Exact>) -> Self {
        Self::new(limit.map(|l| -l), limit)
    }

    /// True if neither end is given.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        self.low.is_none() && self.high.is_none()
    }

    /// How far `value` lies outside: negative below, positive above, `None`
    /// inside. A value equal to a limit is inside.
    #[must_use]
    pub fn excess(&self, value: Exact) -> Option<Exact> {
        match (self.low, self.high) {
            (Some(low), _) if value < low => Some(value - low),
            (_, Some(high)) if high < value => Some(value - high),
            _ => None,
        }
    }

    /// The distance to the nearest end, negative outside; `None` if open.
    #[must_use]
    pub fn margin(&self, value: Exact) -> Option<Exact> {
        let below = self.low.map(|low| value - low);
        let above = self.high.map(|high| high - value);
        match (below, above) {
            (Some(a), Some(b)) => Some(a.min(b)),
            (a, b) => a.or(b),
        }
    }
}

/// The two sets of limits of a manual.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct Limits {
    /// As made.
    pub new: Band,
    /// As far as wear may go. Where only the worn side is given, the other
    /// end of the new band goes on counting.
    pub service: Band,
}

/// What a value reads against its limits: exact arithmetic on what was
/// read, without any statement of how sure the reading is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Comparison {
    /// Inside the limits as made.
    InsideNew,
    /// Outside the limits as made or none given, inside the service limit.
    InsideService,
    /// Beyond the service limit, by this much (negative: too small).
    BeyondLimit(Exact),
    /// Outside the limits as made, and no service limit is given.
    OutsideNew(Exact),
    /// Nothing to compare with.
    NoLimit,
}

/// Compares a value with its limits.
///
/// ```
/// use fenderbench::quantity::Exact;
/// use fenderbench::verdict::{compare, Band, Comparison, Limits};
/// let mm = |n: i128| Some(Exact::new(n * 10_000, 1));
/// let limits = Limits {
///     new: Band::new(mm(82_000), mm(82_020)),
///     service: Band::new(mm(82_000), mm(82_100)),
/// };
/// assert_eq!(compare(Exact::new(820_200_000, 1), &limits), Comparison::InsideNew);
/// assert_eq!(compare(Exact::new(820_200_001, 1), &limits), Comparison::InsideService);
/// ```
#[must_use]
pub fn compare(value: Exact, limits: &Limits) -> Comparison {
    // A new band may be open on the side that wears: then only the service
    // limit bounds it, so that is asked first.
    let new = !limits.new.is_open() && limits.new.excess(value).is_none();
    if new && limits.service.excess(value).is_none() {
        return Comparison::InsideNew;
    }
    if !limits.service.is_open() {
        return match limits.service.excess(value) {
            None => Comparison::InsideService,
            Some(by) => Comparison::BeyondLimit(by),
        };
    }
    match limits.new.excess(value) {
        Some(by) => Comparison::OutsideNew(by),
        None => Comparison::NoLimit,
    }
}

/// Why two or three limits cannot stand together. The display is a sentence.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum LimitsRefused {
    /// The low limit is above the high one.
    LowAboveHigh,
    /// The service limit lies inside the band as made.
    ServiceInsideNew,
    /// A limit of zero leaves nothing.
    Zero,
}

impl fmt::Display for LimitsRefused {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(match self {
            Self::LowAboveHigh => {
                "the low limit is above the high limit: look both up again, and their unit"
            }
            Self::ServiceInsideNew => {
                "the service limit lies inside the limits as made, so a new part would be worn out: \
                 look them up again"
            }
            Self::Zero => {
                "a limit of zero cannot be: leave blank what the manual does not give"
            }
        })
    }
}

impl core::error::Error for LimitsRefused {}

/// On which side a part wears.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Wear {
    /// It grows: a bore, a clearance, an out-of-round.
    Larger,
    /// It shrinks: a journal, a piston.
    Smaller,
}

/// Checks the limits a person gives for one quantity.
///
/// # Errors
/// [`LimitsRefused`] says which of them cannot stand.
pub fn check(
    low: Option<Size>,
    high: Option<Size>,
    service: Option<Size>,
    wear: Wear,
) -> Result<(), LimitsRefused> {
    let zero = |limit: Option<Size>| limit.is_some_and(|l| l.quanta() == 0);
    if zero(low) || zero(high) || zero(service) {
        return Err(LimitsRefused::Zero);
    }
    if let (Some(low), Some(high)) = (low, high)
        && high < low
    {
        return Err(LimitsRefused::LowAboveHigh);
    }
    let inside = match wear {
        Wear::Larger => high.or(low).zip(service).is_some_and(|(new, s)| s < new),
        Wear::Smaller => low.or(high).zip(service).is_some_and(|(new, s)| new < s),
    };
    if inside {
        return Err(LimitsRefused::ServiceInsideNew);
    }
    Ok(())
}
