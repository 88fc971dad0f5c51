//! What readings prove about limits: the decision rule and its words.

use super::{Band, Limits};
use crate::quantity::Exact;

/// How sure a statement must be before it is made.
///
/// A guard band is the factor of the rule times the standard uncertainty u:
/// normal where u is known, Student's t where it was estimated. *Tolerance
/// limits* are those of the manual; *acceptance limits* lie a guard band
/// inside them (JCGM 106:2012, 8.3). A value in between is open: nobody has
/// to prove anything, so the doubt counts for neither side.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct DecisionRule {
    /// The name, in files and reports.
    pub name: &'static str,
    /// How sure, in millionths: of a value on the limit, at most the rest is
    /// wrongly passed, and at most the rest wrongly rejected.
    pub millionths: u32,
}

impl DecisionRule {
    /// 95 % on one side, whichever side is stated: 1.645 u, or t.
    pub const ONE_SIDED_95: Self = Self {
        name: "one-sided-95",
        millionths: 950_000,
    };

    /// How sure each of several must be for one of them to convict the whole:
    /// the permitted error is shared out (Bonferroni), or the worst of enough
    /// good ones would always be convicted. To pass, all must be in, and the
    /// rule holds for each as it is.
    #[must_use]
    pub const fn to_convict_by_one_of(self, several: u32) -> u32 {
        let several = if several == 0 { 1 } else { several };
        1_000_000 - (1_000_000 - self.millionths) / several
    }
}

/// What is proved about one band of limits.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Decision {
    /// Inside it.
    In,
    /// Outside it.
    Out,
    /// Neither.
    Open,
}

impl Decision {
    /// Of two that must both be in.
    #[must_use]
    pub const fn and(self, other: Self) -> Self {
        match (self, other) {
            (Self::Out, _) | (_, Self::Out) => Self::Out,
            (Self::In, Self::In) => Self::In,
            _ => Self::Open,
        }
    }
}

impl Band {
    /// The acceptance limits: a guard band inside the tolerance limits. They
    /// may cross, and then nothing can be proved inside.
    #[must_use]
    pub fn acceptance(&self, guard: Exact) -> Self {
        Self::new(
            self.low.map(|low| low + guard),
            self.high.map(|high| high - guard),
        )
    }

    /// Decides on a value with its guard band, zero or more; `None` without
    /// limits. Without doubt a value equal to a limit is inside.
    ///
    /// ```
    /// use fenderbench::quantity::Exact;
    /// use fenderbench::verdict::{Band, Decision};
    /// let microns = |n: i128| Exact::new(n * 10_000, 1);
    /// let band = Band::new(Some(microns(0)), Some(microns(20)));
    /// let decide = |n| band.decide(microns(n), microns(3)).unwrap();
    /// assert_eq!([17, 18, 23, 24].map(decide), [
    ///     Decision::In, Decision::Open, Decision::Open, Decision::Out,
    /// ]);
    /// ```
    #[must_use]
    pub fn decide(&self, value: Exact, guard: Exact) -> Option<Decision> {
        if self.is_open() {
            return None;
        }
        Some(if self.acceptance(guard).holds(value) {
            Decision::In
        } else if self.acceptance(-guard).holds(value) {
            Decision::Open
        } else {
            Decision::Out
        })
    }

    /// Decides on several values of which the worst counts: in if each is in,
    /// out if one is out. Each comes with its guard band to pass and the
    /// larger one to convict, see [`DecisionRule::to_convict_by_one_of`].
    /// `None` without limits or values.
    #[must_use]
    pub fn decide_worst(&self, values: &[(Exact, Exact, Exact)]) -> Option<Decision> {
        let each = |&(value, pass, convict): &(Exact, Exact, Exact)| match (
            self.decide(value, pass)?,
            self.decide(value, convict)?,
        ) {
            (Decision::In, _) => Some(Decision::In),
            (_, Decision::Out) => Some(Decision::Out),
            _ => Some(Decision::Open),
        };
        let mut worst = None;
        for value in values {
            let one = each(value)?;
            worst = Some(worst.map_or(one, |so_far: Decision| so_far.and(one)));
        }
        worst
    }

    /// Whether a value is within both ends.
    #[must_use]
    pub fn holds(&self, value: Exact) -> bool {
        self.low.is_none_or(|low| low <= value) && self.high.is_none_or(|high| value <= high)
    }
}

/// The strongest statement that is proved.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Verdict {
    /// Inside the limits as made.
    WithinNew,
    /// Inside the service limit.
    WithinService,
    /// Beyond the service limit.
    BeyondLimit,
    /// Outside the limits as made, and no service limit is given.
    OutsideNew,
    /// Nothing of the above.
    TooClose,
    /// Nothing of a shape, because it was read in two directions only and may
    /// lie between them.
    NotSeen,
    /// The same, before a limit on which lives or the engine hang: not to be
    /// assembled until somebody can tell.
    DoNotAssemble,
    /// Nothing to compare with.
    NoLimit,
}

impl Verdict {
    /// The word for what is proved about the limits as made and about the
    /// service limit, each `None` where none is given. `critical` limits do
    /// not leave anything to the person where it is too close to call.
    ///
    /// Limits as made may be open on the side that wears; what is in there
    /// and not within the service limit is no better than that.
    #[must_use]
    pub const fn of(new: Option<Decision>, service: Option<Decision>, critical: bool) -> Self {
        use Decision::{In, Out};
        match (new, service) {
            (Some(In), None | Some(In)) => Self::WithinNew,
            (_, Some(In)) => Self::WithinService,
            (_, Some(Out)) => Self::BeyondLimit,
            (Some(Out), None) => Self::OutsideNew,
            (None, None) => Self::NoLimit,
            _ if critical => Self::DoNotAssemble,
            _ => Self::TooClose,
        }
    }
}

impl Limits {
    /// Within which a part may run again: as far as wear may go, or where
    /// nobody says that, as made.
    #[must_use]
    pub const fn service_or_new(&self) -> Band {
        if self.service.is_open() {
            self.new
        } else {
            self.service
        }
    }

    /// Whether there are none.
    #[must_use]
    pub const fn is_open(&self) -> bool {
        self.new.is_open() && self.service.is_open()
    }

    /// The verdict on a value with its guard band.
    #[must_use]
    pub fn verdict(&self, value: Exact, guard: Exact, critical: bool) -> Verdict {
        let decide = |band: &Band| band.decide(value, guard);
        Verdict::of(decide(&self.new), decide(&self.service), critical)
    }
}
