//! Is an oval within a limit?
//!
//! An oval of the diameter, D = mean + A cos 2t + B sin 2t, is the point
//! (2A, 2B) of a plane, and its size, the longest less the shortest diameter,
//! is how far that point lies from the middle. The limit is a circle. Doubt
//! makes an ellipse of the point.
#![allow(
    clippy::float_arithmetic,
    reason = "no length, but how far a doubt reaches; only + - * / and sqrt, so that every \
              device decides alike"
)]

use super::Decision;
use crate::quantity::Exact;
use crate::uncertainty::{Combined, quanta};

/// How much each part of an oval is taken to change from the first level to
/// the last, as a share of the limit: one standard deviation.
///
/// An assumption. At nothing, a journal of which one end is out and the other
/// round would be judged by the mean of both; at much, what was read at one
/// end would say nothing of the other, and four readings could prove nothing.
pub const ALONG: f64 = 0.174;

/// The least variance of a part, in quanta²: nothing is read without doubt.
const VARIANCE_MIN: f64 = 1.0;

/// One part of the oval at one level: the difference of two diameters square
/// to each other.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Part {
    /// First less second, in quanta.
    pub value: f64,
    /// The square of its standard uncertainty, in quanta².
    pub variance: f64,
    /// How often the pair was read. At zero the rest does not count.
    pub looks: u16,
}

/// What was seen of the oval at one level.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct OvalLevel {
    /// Where along: −1 at the first level, 1 at the last.
    pub at: f64,
    /// 2A, from 0° and 90°; 2B, from 45° and 135°.
    pub parts: [Part; 2],
}

/// The oval of one feature, level by level, before a limit.
#[derive(Clone, Copy, Debug)]
pub struct Ovals<'a> {
    /// In order along the feature.
    pub levels: &'a [OvalLevel],
    /// Largest out-of-round allowed, in quanta.
    pub limit: f64,
    /// The factor of the rule: normal, or Student's t of the parts.
    pub factor: f64,
}

/// The oval at one level, by all that was read.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Oval {
    /// 2A and 2B, in quanta.
    pub value: [f64; 2],
    /// Their variances, in quanta²; `None` where that part was read nowhere.
    pub variance: [Option<f64>; 2],
}

impl Part {
    /// A difference that was read so often, with its uncertainty.
    #[must_use]
    pub fn new(value: Exact, combined: &Combined, looks: u16) -> Self {
        Self {
            value: quanta(value),
            variance: combined.variance(),
            looks,
        }
    }
}

impl OvalLevel {
    /// A level by its rank among those from 0 to `last`, nothing read yet.
    #[must_use]
    pub fn at_rank(rank: u8, last: u8) -> Self {
        let at = 2.0 * f64::from(rank) / f64::from(last.max(1)) - 1.0;
        Self {
            at,
            ..Self::default()
        }
    }
}

impl<'a> Ovals<'a> {
    /// The ovals of levels before a limit, with the factor of the rule.
    #[must_use]
    pub fn new(levels: &'a [OvalLevel], limit: Exact, factor: f64) -> Self {
        Self {
            levels,
            limit: quanta(limit),
            factor,
        }
    }
}

impl Ovals<'_> {
    /// The oval at each level: each part a straight line along the feature
    /// through what was read, as steep as the readings make it and
    /// [`ALONG`] lets it be. Levels that were read in two directions only
    /// have the other part from the others, with that much doubt.
    #[must_use]
    pub fn at_levels(&self) -> Vec<Oval> {
        let lines = [0, 1].map(|part| self.line(part));
        let at = |level: &OvalLevel| Oval {
            value: lines.map(|line| line.map_or(0.0, |line| line.value(level.at))),
            variance: lines.map(|line| line.map(|line| line.variance(level.at))),
        };
        self.levels.iter().map(at).collect()
    }

    /// In where at every level the whole ellipse of doubt lies within the
    /// limit, and no level by its own readings is beyond it; out where at one
    /// level the ellipse lies beyond.
    ///
    /// Looking for the longest diameter finds noise as well, so that the size
    /// of what was read is more than that of what is there. That can only
    /// keep an oval from passing; for the other way it is taken off first,
    /// see [`Oval::at_least`].
    #[must_use]
    pub fn decide(&self) -> Decision {
        let ovals = self.at_levels();
        let is_in = |oval: &Oval| oval.at_most(self.factor) <= self.limit;
        let is_out = |oval: &Oval| self.limit < oval.at_least(self.factor);
        let reads_in = |level: &OvalLevel| level.as_read() <= self.limit;
        if ovals.iter().any(is_out) || is_out(&self.together()) {
            Decision::Out
        } else if !ovals.is_empty() && ovals.iter().all(is_in) && self.levels.iter().all(reads_in) {
            Decision::In
        } else {
            Decision::Open
        }
    }

    /// One oval for the whole length.
    pub(super) fn together(&self) -> Oval {
        let parts = [0, 1].map(|part| {
            let (mut s, mut sy) = (0.0, 0.0);
            for level in self.levels {
                if let Some(part) = level.parts.get(part)
                    && 0 < part.looks
                {
                    let weight = 1.0 / part.variance.max(VARIANCE_MIN);
                    s += weight;
                    sy += weight * part.value;
                }
            }
            (0.0 < s).then(|| (sy / s, 1.0 / s))
        });
        Oval {
            value: parts.map(|part| part.map_or(0.0, |part| part.0)),
            variance: parts.map(|part| part.map(|part| part.1)),
        }
    }

    /// Least squares with one more observation: a slope of nothing, with the
    /// standard deviation that [`ALONG`] gives. `None` if nothing was read.
    fn line(&self, part: usize) -> Option<Line> {
        let slope = self.limit * ALONG / 2.0;
        let (mut s, mut sx, mut sy, mut sxy) = (0.0, 0.0, 0.0, 0.0);
        let mut sxx = 1.0 / (slope * slope).max(VARIANCE_MIN);
        for level in self.levels {
            if let Some(part) = level.parts.get(part)
                && 0 < part.looks
            {
                let weight = 1.0 / part.variance.max(VARIANCE_MIN);
                s += weight;
                sx += weight * level.at;
                sxx += weight * level.at * level.at;
                sy += weight * part.value;
                sxy += weight * part.value * level.at;
            }
        }
        let determinant = s * sxx - sx * sx;
        (0.0 < s).then(|| Line {
            middle: (sxx * sy - sx * sxy) / determinant,
            slope: (s * sxy - sx * sy) / determinant,
            variances: [sxx, sx, s].map(|sum| sum / determinant),
        })
    }
}

/// A part of an oval along a feature.
#[derive(Clone, Copy)]
struct Line {
    middle: f64,
    slope: f64,
    /// Of the middle, the covariance with the slope less its sign, of the slope.
    variances: [f64; 3],
}

impl Line {
    fn value(&self, at: f64) -> f64 {
        self.middle + self.slope * at
    }

    fn variance(&self, at: f64) -> f64 {
        let [middle, both, slope] = self.variances;
        middle - 2.0 * both * at + slope * at * at
    }
}

impl OvalLevel {
    /// The size by what was read here and nothing else, in quanta.
    pub(super) fn as_read(&self) -> f64 {
        let read = self.parts.iter().filter(|part| 0 < part.looks);
        let squares = read.map(|part| part.value * part.value);
        squares.sum::<f64>().sqrt()
    }
}

impl Oval {
    /// Longest less shortest diameter, in quanta; of what was seen.
    #[must_use]
    pub fn size(&self) -> f64 {
        let [a, b] = self.value;
        (a * a + b * b).sqrt()
    }

    /// The standard uncertainty of the size, in quanta; that of what was seen.
    #[must_use]
    pub fn u(&self) -> f64 {
        self.variances()[0].sqrt()
    }

    /// The size it may have at most, in quanta: the farthest point of the
    /// ellipse with the half axes `factor` times the standard uncertainties.
    /// Infinite where a part was read nowhere.
    ///
    /// Whatever the true direction, what was read along it is right but for
    /// its own noise, and the farthest point is nowhere nearer than that: so
    /// too small by chance no more often than one plain number would be.
    #[must_use]
    pub fn at_most(&self, factor: f64) -> f64 {
        let [Some(va), Some(vb)] = self.variance else {
            return f64::INFINITY;
        };
        let [a, b] = self.value.map(f64::abs);
        let (va, vb) = (factor * factor * va, factor * factor * vb);
        // Towards the normal of each point found. Between the axes there is
        // one farthest point, and every step goes farther.
        let (mut x, mut y) = (1.0, 1.0);
        for _ in 0..STEPS {
            let length: f64 = (va * x * x + vb * y * y).sqrt();
            let by = if 0.0 < length { 1.0 / length } else { 0.0 };
            (x, y) = (a + va * x * by, b + vb * y * by);
        }
        (x * x + y * y).sqrt()
    }

    /// The size it has at least, in quanta: the noise across the axis, which
    /// can only lengthen, is taken off, and `factor` times the uncertainty
    /// along it.
    #[must_use]
    pub fn at_least(&self, factor: f64) -> f64 {
        let [along, across] = self.variances();
        let square = self.size() * self.size() - across;
        square.max(0.0).sqrt() - factor * along.sqrt()
    }

    /// Along the axis and across it. An unread part is none: what it would
    /// add can only be more.
    fn variances(&self) -> [f64; 2] {
        let [a, b] = self.value;
        let [va, vb] = self.variance.map(Option::unwrap_or_default);
        let square = a * a + b * b;
        if square <= 0.0 {
            return [va.max(vb); 2];
        }
        [a * a * va + b * b * vb, b * b * va + a * a * vb].map(|v| v / square)
    }
}

/// More than enough for the last digit anybody sees.
const STEPS: u8 = 16;
