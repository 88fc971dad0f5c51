//! What may be said under an uncertainty: an interval, a guard band, the
//! probability of lying within limits.

use core::cell::RefCell;

use super::{Combined, float, student};
use crate::quantity::Exact;

/// A probability, always from 0 to 1.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd)]
pub struct Probability(f64);

impl Probability {
    /// Half of the cases: no better than guessing.
    pub const HALF: Self = Self(0.5);

    /// What is less than 0 or more than 1 counts as that; what is not a
    /// number as one half.
    #[must_use]
    pub const fn new(p: f64) -> Self {
        if p.is_nan() {
            return Self::HALF;
        }
        Self(p.clamp(0.0, 1.0))
    }

    /// So many thousandths; 950 is 95 %.
    #[must_use]
    pub fn per_mille(thousandths: u16) -> Self {
        Self::new(f64::from(thousandths) / 1_000.0)
    }

    /// So many millionths; 950 000 is 95 %.
    #[must_use]
    pub fn per_million(millionths: u32) -> Self {
        Self::new(f64::from(millionths) / 1_000_000.0)
    }

    /// In how many of a hundred cases, rounded towards the middle: what is not
    /// certain is never told as 0 or 100.
    #[must_use]
    pub fn of_a_hundred(self) -> u8 {
        let cases = float::whole_number(100.0 * self.0);
        if self.0 <= 0.0 || 1.0 <= self.0 {
            cases
        } else {
            cases.clamp(1, 99)
        }
    }

    /// From 0 to 1.
    #[must_use]
    pub const fn value(self) -> f64 {
        self.0
    }
}

/// One-sided factors by degrees of freedom and confidence, each computed once:
/// a session has a thousand values and few of either.
#[derive(Debug, Default)]
pub struct Factors(RefCell<Vec<(f64, f64, f64)>>);

impl Factors {
    /// As [`Combined::one_sided`].
    #[must_use]
    pub fn one_sided(&self, combined: &Combined, confidence: Probability) -> f64 {
        let (nu, p) = (combined.nu_of_table(), confidence.value());
        let mut known = self.0.borrow_mut();
        let same = known.iter().find(|(of, with, _)| *of == nu && *with == p);
        if let Some((.., factor)) = same {
            return *factor;
        }
        let factor = combined.one_sided(confidence);
        known.push((nu, p, factor));
        factor
    }

    /// As [`Combined::guard_band`].
    #[must_use]
    pub fn guard_band(&self, combined: &Combined, confidence: Probability) -> Exact {
        float::rounded_up(self.one_sided(combined, confidence) * combined.u())
    }
}

impl Combined {
    /// The degrees of freedom a table is entered with: to one decimal as they
    /// are printed, then down to a whole number (JCGM 100 G.4.1 and H.1.6),
    /// so that 16.74 is 16 and 18.9987 is 19.
    #[must_use]
    pub fn nu_of_table(&self) -> f64 {
        float::dof(libm::floor(self.nu() + 0.05))
    }

    /// The factor k of the interval that holds the value with probability
    /// `coverage`.
    #[must_use]
    pub fn factor(&self, coverage: Probability) -> f64 {
        self.quantile(0.5 + coverage.value() / 2.0)
    }

    /// The expanded uncertainty U = k u, in quanta of 0.1 nm.
    #[must_use]
    pub fn expanded(&self, coverage: Probability) -> f64 {
        self.factor(coverage) * self.u()
    }

    /// How far inside a limit a value must lie for it to be within that limit
    /// with this probability (JCGM 106 8.3.3), rounded up to a whole quantum.
    /// Below nothing where less than one half is asked for.
    #[must_use]
    pub fn guard_band(&self, confidence: Probability) -> Exact {
        float::rounded_up(self.quantile(confidence.value()) * self.u())
    }

    /// The probability that what was measured as `value` lies within limits,
    /// a missing one being open (JCGM 106 7.3 and 7.4, with Student's t where
    /// u is an estimate). Without any uncertainty 1 or 0, a value equal to a
    /// limit being inside.
    #[must_use]
    pub fn within(&self, value: Exact, low: Option<Exact>, high: Option<Exact>) -> Probability {
        let below = low.map_or(0.0, |low| self.beyond(value - low));
        let above = high.map_or(0.0, |high| self.beyond(high - value));
        Probability::new(1.0 - below - above)
    }

    /// The probability of an error of more than `distance`.
    fn beyond(&self, distance: Exact) -> f64 {
        let is_outside = distance.is_negative();
        let tail = if 0.0 < self.u() {
            let t = float::quanta(distance.abs()) / self.u();
            student::upper_tail(t, self.nu_of_table())
        } else {
            0.0
        };
        if is_outside { 1.0 - tail } else { tail }
    }

    /// How many u a value must lie inside a limit to be within it with this
    /// probability: the normal quantile, or Student's where u is an estimate.
    #[must_use]
    pub fn one_sided(&self, confidence: Probability) -> f64 {
        self.quantile(confidence.value())
    }

    fn quantile(&self, p: f64) -> f64 {
        student::t_quantile(p, self.nu_of_table())
    }
}
